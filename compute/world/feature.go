package world

import "noonbook/compute/quantity"

// A Feature is something with a name to look for on a world.
type Feature struct {
	Name      string // as it is written in every language
	Key       string // of its description in the words files
	Latitude  quantity.Angle
	Longitude quantity.Angle // east positive, −180° to 180°; no meaning where Drifts
	Size      quantity.Length
	Drifts    bool // clouds and rings: no longitude
	Placed    bool // whether the latitude is known
	Gazetteer bool // named by the IAU
}

// FeatureSource names the list that the names and places of Gazetteer features
// come from, centres in whole degrees; the list itself changes as maps get better.
// Wright Mons, whose name is of 30 May 2019, is from memory.
const FeatureSource = "Gazetteer of Planetary Nomenclature (IAU and US Geological Survey, as of September 2025; centres in whole degrees)"

// Features returns three features of the world. Names of the IAU on the Earth do
// not exist, clouds and rings have no place in its list, and those of comet 67P
// were given by the Rosetta team.
func (w World) Features() []Feature {
	switch w.Name {
	case "mercury":
		return []Feature{
			named("Caloris Planitia", "mercury_1", 32, 162, 1500),
			named("Discovery Rupes", "mercury_2", -56, -38, 650),
			named("Hokusai", "mercury_3", 58, 17, 114),
		}
	case "venus":
		return []Feature{
			named("Maxwell Montes", "venus_1", 65, 3, 797),
			named("Maat Mons", "venus_2", 0.5, -165, 395),
			named("Mead", "venus_3", 12.5, 57, 268.7),
		}
	case "earth":
		return []Feature{
			ours(named("Manicouagan", "earth_1", 51, -69, 100)),
			ours(named("Mauna Kea", "earth_2", 20, -155, 120)),
			ours(named("Þingvellir", "earth_3", 64, -21, 7)),
		}
	case "moon":
		return []Feature{
			named("Mare Tranquillitatis", "moon_1", 8, 31, 876),
			named("Tycho", "moon_2", -43, -11, 85),
			named("Copernicus", "moon_3", 10, -20, 96),
		}
	case "mars":
		return []Feature{
			named("Olympus Mons", "mars_1", 19, -134, 610),
			named("Valles Marineris", "mars_2", -14, -59, 3760),
			named("Jezero", "mars_3", 18, 78, 48),
		}
	case "ceres":
		return []Feature{
			named("Occator", "ceres_1", 20, -121, 92),
			named("Ahuna Mons", "ceres_2", -10, -44, 20),
			named("Kerwan", "ceres_3", -11, 124, 280),
		}
	case "jupiter":
		return []Feature{
			cloud("Great Red Spot", "jupiter_1", -22, 16000),
			cloud("North Equatorial Belt", "jupiter_2", 12, 0),
			cloud("Oval BA", "jupiter_3", -33, 8000),
		}
	case "saturn":
		return []Feature{
			cloud("Hexagon", "saturn_1", 78, 29000),
			ring("Cassini Division", "saturn_2", 4700),
			ring("B Ring", "saturn_3", 25500),
		}
	case "uranus":
		return []Feature{
			cloud("North Polar Cap", "uranus_1", 80, 0),
			ring("Epsilon Ring", "uranus_2", 60),
			cloud("Bright clouds", "uranus_3", 35, 0),
		}
	case "neptune":
		return []Feature{
			cloud("Great Dark Spot", "neptune_1", -22, 13000),
			cloud("Scooter", "neptune_2", -42, 0),
			ring("Adams Ring", "neptune_3", 35),
		}
	case "pluto":
		return []Feature{
			named("Sputnik Planitia", "pluto_1", 20, 179, 1490),
			named("Wright Mons", "pluto_2", -21, 173, 155),
			named("Elliot", "pluto_3", 12, 139, 96),
		}
	case "comet":
		return []Feature{
			{Name: "Hapi", Key: "comet_1"},
			{Name: "Imhotep", Key: "comet_2"},
			{Name: "Abydos", Key: "comet_3"},
		}
	}
	return nil
}

// named is a feature of the gazetteer: degrees north and east, size in km.
func named(name, key string, north, east, km float64) Feature {
	return Feature{
		Name: name, Key: key,
		Latitude: quantity.Degrees(north), Longitude: quantity.Degrees(east), Size: quantity.Kilometres(km),
		Placed: true, Gazetteer: true,
	}
}

// ours takes a feature out of the gazetteer.
func ours(f Feature) Feature {
	f.Gazetteer = false
	return f
}

// cloud is a feature of the air, which drifts round at about its latitude.
func cloud(name, key string, north, km float64) Feature {
	return Feature{Name: name, Key: key, Latitude: quantity.Degrees(north), Size: quantity.Kilometres(km), Placed: true, Drifts: true}
}

// ring lies in the plane of the equator; km is how wide it is.
func ring(name, key string, km float64) Feature {
	return Feature{Name: name, Key: key, Size: quantity.Kilometres(km), Drifts: true}
}
