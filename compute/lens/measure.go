package lens

import (
	"fmt"
	"math"

	"noonbook/compute/quantity"
)

// A Measurement is one throw of an image on a screen, with how far either
// distance may be wrong.
type Measurement struct {
	Object, Image           quantity.Length
	ObjectError, ImageError quantity.Length // half widths, not negative
}

// A Focus is a focal length and the least and most that it can be.
type Focus struct {
	Focal, Least, Most quantity.Length
}

// Error returns half of the width from least to most.
func (f Focus) Error() quantity.Length { return (f.Most - f.Least) / 2 }

// Focus returns the focal length. It grows with both distances, so its limits are
// those of both at once; they are exact, not expanded. It fails unless both
// distances stay positive over their errors.
func (m Measurement) Focus() (Focus, error) {
	if m.ObjectError < 0 || m.ImageError < 0 {
		return Focus{}, fmt.Errorf("errors of %g and %g mm: neither may be negative", m.ObjectError.Millimetres(), m.ImageError.Millimetres())
	}
	var f Focus
	for _, one := range []struct {
		to   *quantity.Length
		side quantity.Length
	}{{&f.Focal, 0}, {&f.Least, -1}, {&f.Most, 1}} {
		object := m.Object
		if object < Infinity {
			object += one.side * m.ObjectError
		}
		focal, err := FocalOfDistances(object, m.Image+one.side*m.ImageError)
		if err != nil {
			return Focus{}, err
		}
		*one.to = focal
	}
	return f, nil
}

// DioptreFocus returns the focal length of a lens sold as so many dioptres, with
// the limits of a label that is rounded to quarters: an optician's steps, common
// practice, no source.
func DioptreFocus(p Power) (Focus, error) {
	const half = Power(0.125)
	if p <= half {
		return Focus{}, fmt.Errorf("%g dioptres is too weak for a label in quarters: measure the focal length", float64(p))
	}
	var f Focus
	var err error
	for _, one := range []struct {
		to *quantity.Length
		p  Power
	}{{&f.Focal, p}, {&f.Least, p + half}, {&f.Most, p - half}} {
		if *one.to, err = Focal(one.p); err != nil {
			return Focus{}, err
		}
	}
	return f, nil
}

// LabelFocus returns the focal length of a magnifier that bears "times ×". Nobody
// writes the convention on the handle, so the limits reach from one to the other;
// where only the first can be meant, as for 1×, they are the same.
func LabelFocus(times float64) (Focus, error) {
	least, err := FocalOfLabel(times, OverNear)
	if err != nil {
		return Focus{}, err
	}
	f := Focus{least, least, least}
	if most, err := FocalOfLabel(times, OverNearAndOne); err == nil {
		f.Most = most
	}
	return f, nil
}

// Overlap reports whether two foci can be of one lens.
func (f Focus) Overlap(g Focus) bool {
	return math.Max(float64(f.Least), float64(g.Least)) <= math.Min(float64(f.Most), float64(g.Most))
}
