package lens

import (
	"cmp"
	"math"
	"slices"

	"noonbook/compute/quantity"
)

// A Kind is a kind of lens in the box and how many there are.
type Kind struct {
	Lens
	Count int
}

// A Verdict says what is the matter with a pair.
type Verdict int

const (
	Usable   Verdict = iota
	Bulky            // longer than can be held still
	Narrow           // the Moon hardly goes into the field
	Coloured         // magnifies the colours of its front lens more than an eye forgives
	Dim              // the beam is so thin that the picture is dark and soft
	Weak             // magnifies less than twice
	Equal            // lenses of one focal length do not magnify
	Shrinks          // the stronger lens is in front
)

// A Pair is two kinds of the box, by their places in it, as a telescope.
type Pair struct {
	FrontAt, EyeAt int
	View           View // in the evening, with the mask on where one is of use
	Verdict        Verdict
}

// Limits of a verdict: common practice, no source.
const (
	leastGain = 2.0
	thinnest  = quantity.Length(0.0007)                // beam
	widest    = quantity.Angle(8 * math.Pi / 180 / 60) // coloured rim, as it looks
	narrowest = 1.2 * MoonWidth                        // field
)

// SameFocal is the share within which two focal lengths are taken for one: no label
// is better.
const SameFocal = 0.02

// Pairs returns every pair that can be taken from the box, the usable ones first
// and among them first what shows the finest detail, then the rest in the order of
// verdicts. A kind with one lens makes no pair with itself. Longest is the greatest
// distance from lens to lens that a class can hold.
func Pairs(box []Kind, longest quantity.Length) ([]Pair, error) {
	var pairs []Pair
	for i, front := range box {
		for j, eye := range box {
			if front.Count < 1 || eye.Count < 1 || i == j && front.Count < 2 {
				continue
			}
			t, err := NewTelescope(front.Lens, eye.Lens)
			if err != nil {
				return nil, err
			}
			pairs = append(pairs, Pair{i, j, t.Masked(NightPupil), t.Verdict(longest)})
		}
	}
	slices.SortStableFunc(pairs, func(a, b Pair) int {
		return cmp.Or(cmp.Compare(a.Verdict, b.Verdict), cmp.Compare(a.View.Detail(), b.View.Detail()))
	})
	return pairs, nil
}

// Verdict says what is the matter with a telescope as Pairs judges it.
func (t Telescope) Verdict(longest quantity.Length) Verdict {
	gain, v := t.Magnification(), t.Masked(NightPupil)
	switch {
	case gain < 1-SameFocal:
		return Shrinks
	case gain <= 1+SameFocal:
		return Equal
	case gain < leastGain:
		return Weak
	case v.ExitPupil() < thinnest:
		return Dim
	case v.Fringe() > widest:
		return Coloured
	case v.Field() < narrowest:
		return Narrow
	case t.Front.Focal+t.Eye.Focal > longest:
		return Bulky
	}
	return Usable
}
