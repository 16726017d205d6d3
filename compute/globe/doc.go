// Package globe knows the named places of the Moon and Mars and where they lie on
// their globes: seas, craters and mountains, and the sites where people and machines
// landed.
//
//	tycho, ok := globe.Find(globe.Moon, "Tycho")
//	site, _ := globe.Find(globe.Moon, "Apollo 11")
//	way := globe.Moon.Apart(tycho.At, site.At) // along the great circle
//
// Frame: latitude planetocentric, north positive; longitude east positive, −180° to
// 180°. Of the Moon both are in the mean-Earth/polar-axis frame, on a sphere of
// 1737.4 km; of Mars planetographic latitudes, which old lists print, are up to 0.34°
// larger.
//
// Accuracy: features to 0.01°, which is 300 m on the Moon and 590 m on Mars. The
// place of a feature is the middle of the box round it: that of a long or bent one,
// such as Oceanus Procellarum, can lie where nobody would write its name. Landing
// sites carry the digits of their source; Luna 2 and Luna 9 were never found for
// certain, which Spot.Unseen says.
//
// Distances are along great circles of a sphere. Mars is flattened by 1 part in 170,
// so a distance on it is good to 0.3 %.
//
// Sources: Gazetteer of Planetary Nomenclature, International Astronomical Union
// Working Group for Planetary System Nomenclature and U.S. Geological Survey, export
// of 22 September 2015, each name approved in its list of 7 November 2024; landing
// sites as gazetteer.csv says of each. Which rover a lander carried, and that a crew
// or samples came back: NSSDCA spacecraft catalogue, in part from memory.
package globe
