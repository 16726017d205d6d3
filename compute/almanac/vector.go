package almanac

import (
	"noonbook/compute/quantity"
	"noonbook/compute/space"
)

// Vectors are equatorial of date (x to the equinox, z to the north pole) or ecliptic
// of date (z to its pole), in kilometres or astronomical units as the name that
// holds one says.

// rectangular and spherical take and give radians, in which the series are.
func rectangular(lon, lat, r float64) space.Vector {
	return space.At(quantity.Angle(lon), quantity.Angle(lat), r)
}

func spherical(v space.Vector) (lon, lat, r float64) {
	x, y, r := v.Spherical()
	return float64(x), float64(y), r
}
