package lens

import (
	"fmt"

	"noonbook/compute/quantity"
)

// A Telescope has two converging lenses and nothing between them.
type Telescope struct{ Front, Eye Lens }

// NewTelescope returns the telescope of two lenses. It fails where a focal length
// or a diameter is not positive. A pair that shrinks is a telescope too, looked
// through from the wrong end; Magnification tells.
func NewTelescope(front, eye Lens) (Telescope, error) {
	for _, one := range []struct {
		name string
		lens Lens
	}{{"front lens", front}, {"eye lens", eye}} {
		if err := positive("focal length of the "+one.name, one.lens.Focal); err != nil {
			return Telescope{}, fmt.Errorf("%w: take a lens that is thicker in the middle than at its edge", err)
		}
		if err := positive("diameter of the "+one.name, one.lens.Diameter); err != nil {
			return Telescope{}, err
		}
	}
	return Telescope{front, eye}, nil
}

// Swapped returns the telescope turned round. It magnifies by the reciprocal.
func (t Telescope) Swapped() Telescope { return Telescope{t.Eye, t.Front} }

// Magnification returns how many times larger a far thing looks to a relaxed eye,
// F/e. Below one it looks smaller.
func (t Telescope) Magnification() float64 { return float64(t.Front.Focal / t.Eye.Focal) }

// Separation returns the distance from lens to lens at which an eye that
// accommodates by so many dioptres sees a thing sharply that stands at the given
// distance before the front lens. It fails for a thing within the focal length of
// the front lens, whose image is nowhere, and for an eye so long of sight that the
// eye lens cannot serve it.
func (t Telescope) Separation(object quantity.Length, eye Power) (quantity.Length, error) {
	if object <= t.Front.Focal {
		return 0, fmt.Errorf("target at %.0f mm is not beyond the focal length of the front lens, %.0f mm: step back, or take a stronger front lens",
			object.Millimetres(), t.Front.Focal.Millimetres())
	}
	image, _ := t.Front.Image(object)
	before, ok := t.beforeEye(eye)
	if !ok {
		return 0, fmt.Errorf("an eye lens of %.0f mm is too weak for an eye of %g dioptres: take a stronger eye lens, or put glasses on",
			t.Eye.Focal.Millimetres(), float64(eye))
	}
	return image + before, nil
}

// beforeEye returns how far before the eye lens the image must lie.
func (t Telescope) beforeEye(eye Power) (quantity.Length, bool) {
	turned := 1 + float64(eye)*t.Eye.Focal.Metres()
	if turned <= 0 {
		return 0, false
	}
	return t.Eye.Focal / quantity.Length(turned), true
}

// Travel returns the least and the greatest separation that serve every target from
// the nearest one to infinity and every eye within ± the given dioptres. It fails
// as Separation does.
func (t Telescope) Travel(nearest quantity.Length, eyes Power) (least, most quantity.Length, err error) {
	if least, err = t.Separation(Infinity, eyes); err != nil {
		return 0, 0, err
	}
	most, err = t.Separation(nearest, -eyes)
	return least, most, err
}

// EyeRelief returns how far behind the eye lens the beams of all directions cross,
// which is where the pupil of the eye should be: the image of the front lens in the
// eye lens. ok is false for lenses that stand no further apart than the eye lens's
// focal length.
func (t Telescope) EyeRelief(separation quantity.Length) (relief quantity.Length, ok bool) {
	if separation <= t.Eye.Focal {
		return 0, false
	}
	return t.Eye.Image(separation)
}
