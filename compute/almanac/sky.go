package almanac

import "noonbook/compute/space"

// One sky for all who ask: where the Moon stands from the Earth's middle depends on no
// place. The theories are fitted, not the answers; light time, aberration,
// nutation, parallax and limbs are reckoned from them each time as ever.
//
// How long a piece is and of what degree: pieces as short as they can be while a year
// of them costs less than asking the theory for each of its days, and the degree at
// which the fit comes down to the noise of the theories' own cosine, 0.0002″ as seen
// from the Earth; one degree less leaves up to 0.001″. The Earth's way wobbles with the
// Moon's month, so it takes 16 days where Venus's takes 64. All of them are 43 kB a
// year that is asked for, 6.5 MB for the whole range; at rest 190 kB of pointers.
var (
	earthSky    = newSheet(16, 9, seriesOf(earthSeries.at))
	moonSky     = newSheet(8, 13, seriesOf(func(t float64) (lon, lat, r float64) { return moonPlace(moment{centuries: t}) }))
	nutationSky = newSheet(8, 7, orientation)

	// From Mercury outward. What is farther out moves more slowly.
	planetSky = [...]*sheet{
		newSheet(16, 12, seriesOf(mercurySeries.at)),
		newSheet(64, 10, seriesOf(venusSeries.at)),
		newSheet(64, 9, seriesOf(marsSeries.at)),
		newSheet(128, 7, seriesOf(jupiterSeries.at)),
		newSheet(256, 6, seriesOf(saturnSeries.at)),
		newSheet(256, 6, seriesOf(uranusSeries.at)),
		newSheet(256, 6, seriesOf(neptuneSeries.at)),
		newSheet(256, 6, seriesOf(plutoPlace)),
	}
)

// seriesOf makes rectangular coordinates of a theory's, in which nothing jumps where a
// longitude begins anew.
func seriesOf(theory func(centuries float64) (lon, lat, r float64)) func(float64) space.Vector {
	return func(centuries float64) space.Vector { return rectangular(theory(centuries)) }
}

// orientation is a frame as a vector. Nutation has a sheet of its own, since within
// the places of the planets its waves of a few days would cut Pluto's pieces short.
func orientation(centuries float64) space.Vector {
	f := frameBySeries(moment{centuries: centuries})
	return space.Vector{X: f.dpsi, Y: f.sinEps, Z: f.cosEps}
}

func frameOf(m moment) frame {
	v := nutationSky.at(m.centuries)
	return frame{v.X, v.Y, v.Z}
}

// heliocentric returns where a planet is from the Sun, mean ecliptic and equinox of
// date, au. Of the Sun, the Moon and anything else it returns the zero vector.
func (b Body) heliocentric(centuries float64) space.Vector {
	if b < Mercury || b > Pluto {
		return space.Vector{}
	}
	return planetSky[b-Mercury].at(centuries)
}

// sight returns the body's geocentric place with light time and aberration, mean
// ecliptic and equinox of date, au.
func (b Body) sight(m moment) space.Vector {
	switch b {
	case Sun:
		return sunFrom(earthSky.at(m.centuries))
	case Moon:
		return moonSky.at(m.centuries)
	case Mercury, Venus, Mars, Jupiter, Saturn, Uranus, Neptune, Pluto:
		s := b.triangleOf(m)
		return s.sight()
	}
	return space.Vector{}
}

// vector returns the body's apparent geocentric place in kilometres.
func (b Body) vector(m moment, f frame) space.Vector { return equatorial(b.sight(m), f) }
