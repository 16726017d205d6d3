package sky

import (
	"math"

	"noonbook/compute/almanac"
	"noonbook/compute/quantity"
)

// A Projection lays the sky about a point of it flat.
type Projection int

const (
	// Equidistant keeps distances from the middle: equal steps of altitude are equal
	// on the chart. Snyder 1987, equations 25-2 and 25-15 for a polar centre.
	Equidistant Projection = iota
	// Stereographic keeps angles, and so the shapes of figures: Snyder 1987,
	// equations 21-2 to 21-4.
	Stereographic
)

// A Point of a chart is in units of the radius of its horizon.
type Point struct {
	X float64 // towards the right, which is west where north is up
	Y float64 // upwards, towards north
}

// Radius returns how far from the middle a point lies that is an angle away from it;
// 90° has the radius 1. The point opposite the middle has no end on a stereographic
// chart and is held at 100.
func (p Projection) Radius(away quantity.Angle) float64 {
	if p == Stereographic {
		return min(100, math.Tan(min(away.Radians(), math.Pi-1e-9)/2))
	}
	return away.Radians() / (math.Pi / 2)
}

// At returns where a place in the sky lies on a chart of the whole sky that is held
// overhead: the zenith in the middle, north up, east on the left.
func (p Projection) At(h almanac.Horizontal) Point {
	r := p.Radius(quantity.Turn/4 - h.Altitude)
	return Point{X: -r * h.Azimuth.Sin(), Y: r * h.Azimuth.Cos()}
}
