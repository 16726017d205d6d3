package lens

import (
	"math"

	"noonbook/compute/quantity"
)

// A Tube is a kind of cardboard tube in stock.
type Tube struct{ Inside, Outside, Length quantity.Length }

// A Demand is what the tubes of a telescope must serve.
type Demand struct {
	Nearest quantity.Length // target
	Eyes    Power           // accommodation either way
}

// Measures of the work in millimetres: common practice, no source.
const (
	grip      = quantity.Length(0.020) // of the inner tube that always sticks out, for fingers
	clearance = quantity.Length(0.005) // from the front lens to the inner tube pushed in
	lashes    = quantity.Length(0.015) // from the end of the eye tube to the pupil
	loosest   = quantity.Length(0.004) // play between tubes that paper can still fill
	sawing    = quantity.Length(0.002) // that whole millimetres of two tubes may take
	mostTubes = 4                      // in one telescope before it sags
)

// A Fit says whether tubes serve, and if not, why.
type Fit int

const (
	Fits     Fit = iota
	TooWide      // the inner tube does not go into the outer one
	TooLoose     // it rattles beyond what paper can fill
	TooShort     // lenses stand so near that tubes of this width cannot overlap by one diameter
	TooLong      // more than four tubes would go into one telescope
)

// A Cut is where to cut the tubes of a telescope. The front lens closes the front
// end of the outer tube, the eye lens the rear end of the inner one, which slides
// in the outer one; the eye tube stands behind the eye lens and keeps the eye where
// the beams cross.
type Cut struct {
	Outer, Inner, EyeTube  quantity.Length
	OuterTubes, InnerTubes int             // from the stock, joined end to end; the eye tube is of the second kind
	Least, Most            quantity.Length // separation that must be served
	Overlap                quantity.Length // with the tubes drawn out furthest
	Play                   quantity.Length // between the tubes, to be filled with paper
}

// Slit reports whether one kind of tube can be made to slide in itself: cut open
// along its length and closed so that its edges lap by the returned width.
func (t Tube) Slit() quantity.Length { return math.Pi * (t.Outside - t.Inside) }

// Lapped returns the tube after that.
func (t Tube) Lapped() Tube {
	wall := (t.Outside - t.Inside) / 2
	return Tube{t.Inside - 2*wall, t.Inside, t.Length}
}

// CutTubes returns the lengths for tubes that can be drawn out and pushed in over
// the whole travel, overlap by at least one diameter at the furthest and leave a
// grip at the nearest. It takes as few tubes as it can, then as long an outer one,
// in steps of 5 mm where that goes. It fails where Travel does. Where the tubes do
// not serve, Fit says why, and Least, Most and the overlap asked for are still
// filled in.
func (t Telescope) CutTubes(d Demand, outer, inner Tube) (Cut, Fit, error) {
	var c Cut
	var err error
	if c.Least, c.Most, err = t.Travel(d.Nearest, d.Eyes); err != nil {
		return Cut{}, Fits, err
	}
	c.Overlap, c.Play = outer.Inside, outer.Inside-inner.Outside
	switch {
	case c.Play < 0:
		return c, TooWide, nil
	case c.Play > loosest:
		return c, TooLoose, nil
	case 2*c.Least-grip-clearance < c.Most+c.Overlap+sawing:
		return c, TooShort, nil
	}
	if relief, ok := t.EyeRelief(t.Front.Focal + t.Eye.Focal); ok {
		c.EyeTube = max(0, down(relief-lashes, 0.005))
	}
	for tubes := 2; tubes <= mostTubes; tubes++ {
		for c.OuterTubes = 1; c.OuterTubes < tubes; c.OuterTubes++ {
			c.InnerTubes = tubes - c.OuterTubes
			if c.divide(outer, inner) {
				return c, Fits, nil
			}
		}
	}
	return c, TooLong, nil
}

// divide shares the length out between so many tubes of either kind.
func (c *Cut) divide(outer, inner Tube) bool {
	asked := c.Overlap
	for _, step := range []quantity.Length{0.005, 0.001} {
		c.Outer = down(min(c.Least-grip, quantity.Length(c.OuterTubes)*outer.Length), step)
		c.Inner = up(c.Most+asked-c.Outer, step)
		if c.Outer > 0 && c.Inner <= c.Least-clearance && c.Inner+c.EyeTube <= quantity.Length(c.InnerTubes)*inner.Length {
			c.Overlap = c.Outer + c.Inner - c.Most
			return true
		}
	}
	c.Outer, c.Inner = 0, 0
	return false
}

// OutOf returns how far the inner tube, up to its lens, sticks out of the outer one
// at a separation.
func (c Cut) OutOf(separation quantity.Length) quantity.Length { return separation - c.Outer }

const rounding = 1e-9 // of a step: a length that is whole stays what it is

func down(l, step quantity.Length) quantity.Length {
	return quantity.Length(math.Floor(float64(l/step)+rounding)) * step
}

func up(l, step quantity.Length) quantity.Length {
	return quantity.Length(math.Ceil(float64(l/step)-rounding)) * step
}
