package dial

import (
	"errors"
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

// tooSlender is the ratio of two sides beyond which nobody cuts a triangle: it
// is passed within 0.06° of the equator or a pole.
const tooSlender = 1000

// GnomonOnBase returns the triangle that stands on a base of the given length.
// On the equator its height is zero: the style lies in the plate and casts no
// line. It fails within 0.06° of a pole, where the style stands upright and no base can carry
// it, for a latitude beyond ±90° and for a base that is not a positive length.
func GnomonOnBase(latitude quantity.Angle, base quantity.Length) (Gnomon, error) {
	angle, err := styleAngle(latitude, "base", base)
	if err != nil {
		return Gnomon{}, err
	}
	if angle.Cos()*tooSlender < angle.Sin() {
		return Gnomon{}, errors.New("this near a pole the style stands upright and has no base: give a height")
	}
	return Gnomon{
		Angle:  angle,
		Base:   base,
		Height: base * quantity.Length(angle.Tan()),
		Style:  base / quantity.Length(angle.Cos()),
	}, nil
}

// GnomonOfHeight returns the triangle whose upright side has the given height.
// At a pole its base is zero: the style is an upright rod. It fails within
// 0.06° of the
// equator, where the style lies flat and reaches no height, for a latitude
// beyond ±90° and for a height that is not a positive length.
func GnomonOfHeight(latitude quantity.Angle, height quantity.Length) (Gnomon, error) {
	angle, err := styleAngle(latitude, "height", height)
	if err != nil {
		return Gnomon{}, err
	}
	if angle.Sin()*tooSlender < angle.Cos() {
		return Gnomon{}, errors.New("this near the equator the style lies flat and reaches no height: give a base")
	}
	return Gnomon{
		Angle:  angle,
		Base:   height * quantity.Length(angle.Cos()/angle.Sin()),
		Height: height,
		Style:  height / quantity.Length(angle.Sin()),
	}, nil
}

// styleAngle returns |φ| when the latitude and the given side make sense.
func styleAngle(latitude quantity.Angle, side string, length quantity.Length) (quantity.Angle, error) {
	if err := checkLatitude(latitude); err != nil {
		return 0, err
	}
	if mm := length.Millimetres(); !(mm > 0) || math.IsInf(mm, 1) {
		return 0, fmt.Errorf("gnomon %s of %g mm is not a positive length", side, mm)
	}
	return quantity.Angle(math.Abs(latitude.Radians())), nil
}

// GnomonOfStyle returns the triangle whose sloping side has the given length.
// It is defined at every latitude: flat on the equator, upright at a pole. It
// fails for a latitude beyond ±90° and for a length that is not positive.
func GnomonOfStyle(latitude quantity.Angle, style quantity.Length) (Gnomon, error) {
	angle, err := styleAngle(latitude, "style", style)
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
