package almanac

import "math"

// A vector has rectangular coordinates in right-handed axes: equatorial of date
// (x to the equinox, z to the north pole) or ecliptic of date (z to its pole),
// in kilometres or astronomical units as the name that holds it says.
type vector struct{ x, y, z float64 }

func (v vector) norm() float64 { return math.Sqrt(v.dot(v)) }

func (v vector) dot(w vector) float64 { return v.x*w.x + v.y*w.y + v.z*w.z }

func (v vector) minus(w vector) vector { return vector{v.x - w.x, v.y - w.y, v.z - w.z} }

// along returns v moved by s times w.
func (v vector) along(s float64, w vector) vector {
	return vector{v.x + s*w.x, v.y + s*w.y, v.z + s*w.z}
}

func (v vector) cross(w vector) vector {
	return vector{v.y*w.z - v.z*w.y, v.z*w.x - v.x*w.z, v.x*w.y - v.y*w.x}
}

// unit returns the direction of v, and the zero vector for a zero vector.
func (v vector) unit() vector {
	if r := v.norm(); r > 0 {
		return vector{v.x / r, v.y / r, v.z / r}
	}
	return vector{}
}

func rectangular(lon, lat, r float64) vector {
	sinLon, cosLon := math.Sincos(lon)
	sinLat, cosLat := math.Sincos(lat)
	return vector{r * cosLat * cosLon, r * cosLat * sinLon, r * sinLat}
}

func (v vector) spherical() (lon, lat, r float64) {
	return math.Atan2(v.y, v.x), math.Atan2(v.z, math.Hypot(v.x, v.y)), v.norm()
}
