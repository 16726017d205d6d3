package space

import (
	"math"

	"noonbook/compute/quantity"
)

// A Vector has rectangular coordinates in right-handed axes.
type Vector struct{ X, Y, Z float64 }

// At returns the vector of the length r in a direction.
func At(lon, lat quantity.Angle, r float64) Vector {
	sinLon, cosLon := math.Sincos(float64(lon))
	sinLat, cosLat := math.Sincos(float64(lat))
	return Vector{r * cosLat * cosLon, r * cosLat * sinLon, r * sinLat}
}

// Spherical is the inverse of At; the longitude is −half a turn to half a turn.
func (v Vector) Spherical() (lon, lat quantity.Angle, r float64) {
	return quantity.Atan2(v.Y, v.X), quantity.Atan2(v.Z, math.Hypot(v.X, v.Y)), v.Norm()
}

// Plus returns v + w.
func (v Vector) Plus(w Vector) Vector { return Vector{v.X + w.X, v.Y + w.Y, v.Z + w.Z} }

// Minus returns v − w: the way from w to v.
func (v Vector) Minus(w Vector) Vector { return Vector{v.X - w.X, v.Y - w.Y, v.Z - w.Z} }

// Times returns v made s times as long.
func (v Vector) Times(s float64) Vector { return Vector{s * v.X, s * v.Y, s * v.Z} }

// Along returns v moved by s times w.
func (v Vector) Along(s float64, w Vector) Vector {
	return Vector{v.X + s*w.X, v.Y + s*w.Y, v.Z + s*w.Z}
}

// Dot returns the scalar product.
func (v Vector) Dot(w Vector) float64 { return v.X*w.X + v.Y*w.Y + v.Z*w.Z }

// Cross returns the vector product, at right angles to both.
func (v Vector) Cross(w Vector) Vector {
	return Vector{v.Y*w.Z - v.Z*w.Y, v.Z*w.X - v.X*w.Z, v.X*w.Y - v.Y*w.X}
}

// Norm returns the length of v.
func (v Vector) Norm() float64 { return math.Sqrt(v.Dot(v)) }

// Unit returns the direction of v as a vector of length 1, and the zero vector for
// a zero vector.
func (v Vector) Unit() Vector {
	if r := v.Norm(); r > 0 {
		return Vector{v.X / r, v.Y / r, v.Z / r}
	}
	return Vector{}
}

// Angle returns the angle between two vectors, 0 to half a turn, exact near both
// ends too.
func (v Vector) Angle(w Vector) quantity.Angle {
	return quantity.Atan2(v.Cross(w).Norm(), v.Dot(w))
}
