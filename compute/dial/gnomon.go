package dial

import (
	"fmt"
	"math"

	"noonbook/compute/quantity"
)

// A Gnomon is a right triangle that stands upright on the noon line. Its
// sloping side is the style, whose edge casts the shadow; the style meets the
// base at the dial centre.
type Gnomon struct {
	Angle  quantity.Angle  // between style and base: the latitude without its sign
	Base   quantity.Length // along the noon line
	Height quantity.Length // of the upright side, at the end away from the centre
	Style  quantity.Length // the sloping side
}

// GnomonOfStyle returns the triangle whose sloping side has the given length.
// It is defined at every latitude: flat on the equator, upright at a pole. It
// fails for a latitude beyond ±90° and for a length that is not positive.
func GnomonOfStyle(latitude quantity.Angle, style quantity.Length) (Gnomon, error) {
	angle, err := styleAngle(latitude, style)
	if err != nil {
		return Gnomon{}, err
	}
	return Gnomon{
		Angle:  angle,
		Base:   style * quantity.Length(angle.Cos()),
		Height: style * quantity.Length(angle.Sin()),
		Style:  style,
	}, nil
}

// styleAngle returns |φ| when the latitude and the length make sense.
func styleAngle(latitude quantity.Angle, style quantity.Length) (quantity.Angle, error) {
	if err := checkLatitude(latitude); err != nil {
		return 0, err
	}
	if mm := style.Millimetres(); !(mm > 0) || math.IsInf(mm, 1) {
		return 0, fmt.Errorf("gnomon style of %g mm is not a positive length", mm)
	}
	return quantity.Angle(math.Abs(latitude.Radians())), nil
}
