package lens

import (
	"fmt"
	"math"

	"noonbook/compute/quantity"
)

// A Label is a convention for the "×" printed on a magnifier.
type Label int

const (
	// OverNear: the near distance of 25 cm over the focal length, with the relaxed
	// eye behind the lens. Most labels, from memory.
	OverNear Label = iota
	// OverNearAndOne: one more, for an eye that looks at 25 cm through the lens.
	// Some labels, from memory.
	OverNearAndOne
)

// NearDistance is where an eye is taken to look at small things: 25 cm, the
// optician's convention (OpenStax, College Physics, ch. 26.4).
const NearDistance = quantity.Length(0.25)

// FocalOfLabel returns the focal length of a magnifier that bears "times ×". It
// fails where the label cannot be of that convention: zero and below, or, with
// the one added, one and below.
func FocalOfLabel(times float64, label Label) (quantity.Length, error) {
	if label == OverNearAndOne {
		times--
	}
	if !(times > 0) || math.IsInf(times, 1) {
		return 0, fmt.Errorf("a label of %g× belongs to no magnifier under this convention", times+float64(label))
	}
	return NearDistance / quantity.Length(times), nil
}

// Times returns what a magnifier's label would say under the convention.
func (l Lens) Times(label Label) float64 {
	return float64(NearDistance/l.Focal) + float64(label)
}
