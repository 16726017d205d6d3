package almanac

import (
	"math"

	"noonbook/compute/quantity"
	"noonbook/compute/space"
)

// An Apparent is a geocentric place as the sky shows it: true equator, ecliptic
// and equinox of date, with light time, aberration and nutation. It is airless.
type Apparent struct {
	Longitude      quantity.Angle // ecliptic, 0 to one turn
	Latitude       quantity.Angle // ecliptic, north positive
	RightAscension quantity.Angle // 0 to one turn
	Declination    quantity.Angle // north positive
	Distance       quantity.Length
}

const kilometresPerAU = float64(quantity.AstronomicalUnit) / 1000

// turned turns a vector about the ecliptic's pole by a small angle in radians:
// aberration and nutation are 0.0002 together at most, whose fourth power is beyond
// the last digit.
func turned(v space.Vector, by float64) space.Vector {
	sin, cos := by-by*by*by/6, 1-by*by/2
	return space.Vector{X: v.X*cos - v.Y*sin, Y: v.X*sin + v.Y*cos, Z: v.Z}
}

// equatorial turns a place of the mean ecliptic and equinox (au) into one of the true
// equator and equinox (km).
func equatorial(v space.Vector, f frame) space.Vector {
	v = turned(v, f.dpsi).Times(kilometresPerAU)
	return space.Vector{X: v.X, Y: v.Y*f.cosEps - v.Z*f.sinEps, Z: v.Y*f.sinEps + v.Z*f.cosEps}
}

// apparent describes a place of the mean ecliptic and equinox, au.
func apparent(sight space.Vector, f frame) Apparent {
	lon, lat, _ := spherical(turned(sight, f.dpsi))
	v := equatorial(sight, f)
	return Apparent{
		Longitude:      quantity.Angle(turn(lon)),
		Latitude:       quantity.Angle(lat),
		RightAscension: quantity.Angle(turn(math.Atan2(v.Y, v.X))),
		Declination:    quantity.Atan2(v.Z, math.Hypot(v.X, v.Y)),
		Distance:       quantity.Kilometres(v.Norm()),
	}
}
