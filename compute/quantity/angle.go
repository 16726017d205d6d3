package quantity

import "math"

// An Angle is a plane angle in radians.
type Angle float64

// Turn is one whole revolution.
const Turn Angle = 2 * math.Pi

// Degrees returns the angle of d degrees.
func Degrees(d float64) Angle { return Angle(d * math.Pi / 180) }

// ArcSeconds returns the angle of s seconds of arc.
func ArcSeconds(s float64) Angle { return Degrees(s / 3600) }

// Hours returns the angle that the sky turns through in h sidereal hours,
// 15 degrees each.
func Hours(h float64) Angle { return Degrees(15 * h) }

// Asin, Acos and Atan2 return angles; Asin and Acos take a sine or cosine that
// rounding may have carried a little beyond ±1.
func Asin(x float64) Angle     { return Angle(math.Asin(max(-1, min(1, x)))) }
func Acos(x float64) Angle     { return Angle(math.Acos(max(-1, min(1, x)))) }
func Atan2(y, x float64) Angle { return Angle(math.Atan2(y, x)) }

// Radians returns the angle in radians.
func (a Angle) Radians() float64 { return float64(a) }

// Degrees returns the angle in degrees.
func (a Angle) Degrees() float64 { return float64(a) * 180 / math.Pi }

// ArcSeconds returns the angle in seconds of arc.
func (a Angle) ArcSeconds() float64 { return a.Degrees() * 3600 }

// Hours returns the angle in hours of 15 degrees.
func (a Angle) Hours() float64 { return a.Degrees() / 15 }

// Sin returns the sine of a.
func (a Angle) Sin() float64 { return math.Sin(float64(a)) }

// Cos returns the cosine of a.
func (a Angle) Cos() float64 { return math.Cos(float64(a)) }

// Tan returns the tangent of a.
func (a Angle) Tan() float64 { return math.Tan(float64(a)) }

// Bearing returns a brought into 0 ≤ a < one turn, as bearings and right
// ascensions are written.
func (a Angle) Bearing() Angle {
	b := Angle(math.Mod(float64(a), float64(Turn)))
	if b < 0 {
		b += Turn
	}
	if b >= Turn { // a tiny negative angle rounds up to a whole turn
		b = 0
	}
	return b
}

// Signed returns a brought into −half a turn < a ≤ half a turn, as hour angles
// and differences of bearings are written.
func (a Angle) Signed() Angle {
	b := a.Bearing()
	if b > Turn/2 {
		b -= Turn
	}
	return b
}
