package strip

import (
	"fmt"
	"math"
	"strings"

	"noonbook/compute/quantity"
)

// DefaultOutermost is the body that lands on the last seam unless the school
// wants another.
const DefaultOutermost = "neptune"

// A Strip is a roll of paper squares and the scale it is used at. New makes the
// usual one; any other scale is a Strip written out.
type Strip struct {
	Squares int             // on the roll
	Square  quantity.Length // of one square, along the roll
	Scale   quantity.Length // in space, that one square stands for
}

// New returns a strip whose last seam is the mean distance of the outermost
// body, named as in Bodies. It fails when there is no square, when the square's
// length is not a positive one, and for a name that is no body with an orbit.
func New(squares int, square quantity.Length, outermost string) (Strip, error) {
	if squares <= 0 {
		return Strip{}, fmt.Errorf("strip of %d squares: at least one is needed", squares)
	}
	if mm := square.Millimetres(); !(mm > 0) || math.IsInf(mm, 1) {
		return Strip{}, fmt.Errorf("square of %g mm: its length must be positive", mm)
	}
	var orbits []string
	for _, b := range Bodies()[1:] { // the Sun is the strip's beginning
		if b.Name == outermost {
			return Strip{squares, square, b.Orbit / quantity.Length(squares)}, nil
		}
		orbits = append(orbits, b.Name)
	}
	return Strip{}, fmt.Errorf("outermost body %q is none of %s", outermost, strings.Join(orbits, ", "))
}

// Length returns the length of the whole strip.
func (s Strip) Length() quantity.Length { return quantity.Length(s.Squares) * s.Square }

// SquaresTo returns how many squares from the Sun a distance in space ends.
func (s Strip) SquaresTo(distance quantity.Length) float64 { return float64(distance / s.Scale) }

// OnPaper returns the length on paper of a distance in space, or the thickness
// there of a body with that diameter.
func (s Strip) OnPaper(distance quantity.Length) quantity.Length {
	return quantity.Length(s.SquaresTo(distance)) * s.Square
}

// Fits reports whether a distance in space ends on the strip, its last seam
// included.
func (s Strip) Fits(distance quantity.Length) bool {
	const rounding = 1e-9 // relative: the outermost body is on the last seam, not beyond it
	return s.SquaresTo(distance) <= float64(s.Squares)*(1+rounding)
}

// A Mark is a body's place on a strip.
type Mark struct {
	Body
	Squares   float64         // from the Sun
	Paper     quantity.Length // from the Sun, on paper
	Thickness quantity.Length // mean diameter, on paper
	Fits      bool            // false: the strip ends before it
}

// Marks returns the places of all Bodies, those beyond the strip's end too.
func (s Strip) Marks() []Mark {
	bodies := Bodies()
	marks := make([]Mark, len(bodies))
	for i, b := range bodies {
		marks[i] = Mark{
			Body:      b,
			Squares:   s.SquaresTo(b.Orbit),
			Paper:     s.OnPaper(b.Orbit),
			Thickness: s.OnPaper(b.Diameter),
			Fits:      s.Fits(b.Orbit),
		}
	}
	return marks
}
