package strip

import (
	"fmt"
	"math"

	"noonbook/compute/quantity"
)

// A Plan puts the planets of a moment on a field round a peg for the Sun.
type Plan struct {
	Outline Outline
	Sun     Spot
	Scale   quantity.Length // in space, that one metre on the field stands for
	Turn    quantity.Angle  // true bearing of the ecliptic longitude 0
	Pegs    []Peg
}

// A Peg is where a planet stands on the field.
type Peg struct {
	Standing
	Bearing quantity.Angle  // true, from the Sun's peg
	Field   quantity.Length // from the Sun's peg
	Spot    Spot
	Fits    bool // false: the field ends before it
}

// A Layout says how a plan is to be laid.
type Layout struct {
	Outline   Outline
	Sun       Spot
	Outermost string          // the farthest body that must be on the field
	Margin    quantity.Length // kept free along the edge
	South     bool            // seen as from the south, where the planets run clockwise
	Turn      *quantity.Angle // nil: the whole degree with which the plan becomes largest
}

// Lay returns the largest plan on which every body up to the outermost one is on
// the field. Seen from above the planets run anticlockwise, as they do for
// people of the northern hemisphere, for whom a planet east of the Sun is to the
// left of it; for the south the plan is the mirror image.
//
// It fails when the Sun's peg is not on the field, when the outermost body is
// none of the standings, and when the margin leaves no field.
func (l Layout) Lay(standings []Standing) (Plan, error) {
	if err := l.Outline.Check(); err != nil {
		return Plan{}, err
	}
	if !l.Outline.Holds(l.Sun) {
		return Plan{}, fmt.Errorf("the Sun's peg is not on the field")
	}
	last := -1
	for i, s := range standings {
		if s.Name == l.Outermost {
			last = i
		}
	}
	if last < 0 {
		return Plan{}, fmt.Errorf("outermost body %q has no place on the date", l.Outermost)
	}
	turn, size := quantity.Angle(0), quantity.Length(-1) // size: metres an astronomical unit
	if l.Turn != nil {
		turn, size = *l.Turn, l.size(standings[:last+1], *l.Turn)
	} else {
		for d := range 360 {
			if s := l.size(standings[:last+1], quantity.Degrees(float64(d))); s > size*(1+1e-9) {
				turn, size = quantity.Degrees(float64(d)), s
			}
		}
	}
	if !(size > 0) {
		return Plan{}, fmt.Errorf("the margin of %.1f m leaves no field", l.Margin.Metres())
	}
	p := Plan{Outline: l.Outline, Sun: l.Sun, Scale: quantity.AstronomicalUnit / size, Turn: turn}
	for i, s := range standings {
		bearing := l.bearing(s, turn)
		far := s.Distance / p.Scale
		p.Pegs = append(p.Pegs, Peg{s, bearing.Bearing(), far, l.Sun.From(bearing, far), i <= last || far <= l.Outline.Reach(l.Sun, bearing)})
	}
	return p, nil
}

// size returns the metres an astronomical unit that the field allows.
func (l Layout) size(standings []Standing, turn quantity.Angle) quantity.Length {
	size := math.Inf(1)
	for _, s := range standings {
		room := l.Outline.Reach(l.Sun, l.bearing(s, turn)) - l.Margin
		size = min(size, float64(room/(s.Distance/quantity.AstronomicalUnit)))
	}
	return quantity.Length(size)
}

func (l Layout) bearing(s Standing, turn quantity.Angle) quantity.Angle {
	if l.South {
		return turn + s.Longitude
	}
	return turn - s.Longitude
}
