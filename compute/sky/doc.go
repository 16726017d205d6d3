// Package sky holds the bright stars and the figures that are seen in them, says
// where they stand over a place, and lays the sky out on charts and on a wheel
// that is turned to the date and the hour.
//
//	dome := sky.DomeAt(school, t)
//	vega, _ := sky.Find("α Lyr")
//	h := sky.Seen(dome.Star(vega))          // azimuth, altitude with refraction
//	at := sky.Equidistant.At(h)             // on a chart held overhead, east on the left
//	wheel := sky.WheelOf(school, 2027, sky.North)
//
// # Frames and signs
//
// Stars are given in the ICRS at J2000. Their places of date are mean places: with
// proper motion and precession (IAU 2006), without nutation, aberration and
// parallax. A Direction is right ascension and declination of the mean equator and
// equinox of date; horizontal places are those of compute/almanac, azimuth from
// true north through east, altitude geometric unless Seen lifts it by refraction.
//
// Charts have the zenith in the middle and the horizon at radius 1, y towards north
// and x towards west, as the sky is when it is faced lying on the back with the
// head to the north: east is on the left.
//
// The wheel's angles run clockwise, as its printed side is seen, from the ray that
// points down; its lengths are in units of the radius of the star map.
//
// # Accuracy and range
//
// 1950 to 2100: 1″ against ERFA's mean places, 40″ against apparent ones (17″ of
// nutation, 21″ of aberration), a tenth of what a chart of a hand's breadth shows.
// Magnitudes are to 0.1, and stars that vary are given at one brightness. The table
// is complete to about magnitude 4.0; below, to 4.5, stars are missing. Refraction
// is that of compute/almanac, in ordinary air.
//
// The wheel takes the mean Sun of its year for its dates. Within three years it is
// wrong by three quarters of a day's turn, 0.75°, at most, as leap years have it,
// and within 20 by 0.9°; its stars by 0.3° in 20 years, by precession.
//
// # What it does not do
//
// Nutation, aberration, parallax, orbits of double stars, changes of brightness, the
// Milky Way, nebulae and clusters.
//
// # Sources
//
// Stars: SIMBAD through Debian's swe-basic-data (stars.txt says more). Figures: our
// own drawing. Precession: Capitaine, Wallace & Chapront 2003, Astron. Astrophys.
// 412, 567, equation 40 (IAU 2006). Projections: J. P. Snyder, Map Projections, a
// Working Manual, USGS Professional Paper 1395, 1987, chapters 21 and 25.
package sky
