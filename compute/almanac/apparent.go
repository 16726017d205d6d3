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

// equatorial turns apparent ecliptic coordinates (radians, au) into a vector.
func equatorial(lon, lat, r float64, f frame) space.Vector {
	sinLon, cosLon := math.Sincos(lon)
	sinLat, cosLat := math.Sincos(lat)
	r *= kilometresPerAU
	y, z := r*cosLat*sinLon, r*sinLat
	return space.Vector{X: r * cosLat * cosLon, Y: y*f.cosEps - z*f.sinEps, Z: y*f.sinEps + z*f.cosEps}
}

func apparent(lon, lat, r float64, f frame) Apparent {
	v := equatorial(lon, lat, r, f)
	return Apparent{
		Longitude:      quantity.Angle(turn(lon)),
		Latitude:       quantity.Angle(lat),
		RightAscension: quantity.Angle(turn(math.Atan2(v.Y, v.X))),
		Declination:    quantity.Atan2(v.Z, math.Hypot(v.X, v.Y)),
		Distance:       quantity.Kilometres(v.Norm()),
	}
}
