package lens

import (
	"fmt"
	"math"

	"noonbook/compute/quantity"
)

// A Lens is a thin converging lens.
type Lens struct {
	Focal    quantity.Length
	Diameter quantity.Length // of the part that light passes
}

// A Power is that of a lens, or of an eye that accommodates, in dioptres: one
// over metres.
type Power float64

// Infinity is the distance of the sky.
const Infinity = quantity.Length(math.MaxFloat64)

// Power returns the power of a lens of that focal length.
func (l Lens) Power() Power { return Power(1 / l.Focal.Metres()) }

// Focal returns the focal length that belongs to a power. It fails unless the
// power is positive: a lens that is thinner in the middle spreads light.
func Focal(p Power) (quantity.Length, error) {
	if !(p > 0) || math.IsInf(float64(p), 1) {
		return 0, fmt.Errorf("power of %g dioptres is not positive: take a lens that is thicker in the middle than at its edge", float64(p))
	}
	return quantity.Metres(1 / float64(p)), nil
}

// Image returns how far behind the lens the image of a thing lies that stands at
// the given distance before it, negative for a virtual image on the thing's side.
// ok is false where the light leaves parallel and meets nowhere: the thing stands
// at the focal length.
func (l Lens) Image(object quantity.Length) (image quantity.Length, ok bool) {
	if object >= Infinity {
		return l.Focal, true
	}
	if object == l.Focal {
		return 0, false
	}
	return l.Focal * object / (object - l.Focal), true
}

// FocalOfDistances returns the focal length of a lens that throws an image on a
// screen: 1/f = 1/o + 1/i. It fails unless both distances are positive; the thing
// may be at Infinity.
func FocalOfDistances(object, image quantity.Length) (quantity.Length, error) {
	if err := positive("distance from the thing to the lens", object); err != nil {
		return 0, err
	}
	if err := positive("distance from the lens to its image", image); err != nil {
		return 0, err
	}
	if object >= Infinity {
		return image, nil
	}
	return object * image / (object + image), nil
}

// positive wants a length above zero, and takes NaN and infinity for the errors
// that they are.
func positive(what string, l quantity.Length) error {
	if !(l > 0) || math.IsInf(float64(l), 1) {
		return fmt.Errorf("%s of %g mm is not a positive length", what, l.Millimetres())
	}
	return nil
}
