package strip

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"noonbook/compute/quantity"
)

// A Ball is a ball at hand, one for each of them: a box with two tennis balls
// has two Balls.
type Ball struct {
	Name     string
	Diameter quantity.Length
}

// MostExcess is the factor by which a ball may be too large or too small before
// its body had better go without: a choice of ours, somewhat less than the 1.39
// from Mercury to Mars, the two nearest rocky planets that should look unequal.
const MostExcess = 1.3

// A Cast says which ball plays which body, and at what scale.
type Cast struct {
	Shrunk float64 // how many times smaller than in space the models are
	Parts  []Part  // one a body, in the order of the bodies
	cost   float64
}

// A Part is what one body becomes.
type Part struct {
	Body
	Model  quantity.Length // the diameter that the scale asks for
	Ball   int             // which of the balls, −1 for none
	Excess float64         // of the ball over the model, per cent; 0 without a ball
}

// CastBalls gives balls to bodies, each ball once at most, and chooses the scale
// along with them. The best cast is the one with the smallest sum of squares of
// ln(ball/model), where a body without a ball counts as one whose ball is wrong
// by MostExcess; so nearly all bodies are served and the errors are small. Of
// casts that are equally good one with the Earth in it is taken. The sum is
// smallest to within 1e-9.
//
// It fails without balls, and for a body or ball without a positive size.
func CastBalls(bodies []Body, balls []Ball) (Cast, error) {
	if len(balls) == 0 {
		return Cast{}, fmt.Errorf("no balls: at least one is needed")
	}
	m := matching{}
	for i, b := range bodies {
		if !(b.Diameter > 0) {
			return Cast{}, fmt.Errorf("%s has no size", b.Name)
		}
		missing := math.Pow(math.Log(MostExcess), 2)
		if b.Name == "earth" {
			missing *= 1 + 1e-6
		}
		m.bodies = append(m.bodies, sized{i, math.Log(b.Diameter.Metres()), missing})
	}
	for i, b := range balls {
		if mm := b.Diameter.Millimetres(); !(mm > 0) || math.IsInf(mm, 1) {
			return Cast{}, fmt.Errorf("ball %q of %g mm: its diameter must be positive", b.Name, mm)
		}
		m.balls = append(m.balls, sized{i, math.Log(b.Diameter.Metres()), 0})
	}
	bySize := func(a, b sized) int { return cmp.Compare(a.size, b.size) }
	slices.SortStableFunc(m.bodies, bySize)
	slices.SortStableFunc(m.balls, bySize)
	shift, pairs, cost := m.best()

	c := Cast{Shrunk: math.Exp(-shift), cost: cost}
	for _, b := range bodies {
		c.Parts = append(c.Parts, Part{Body: b, Model: b.Diameter / quantity.Length(c.Shrunk), Ball: -1})
	}
	for _, p := range pairs {
		part := &c.Parts[m.bodies[p.body].index]
		part.Ball = m.balls[p.ball].index
		part.Excess = 100 * float64(balls[part.Ball].Diameter/part.Model-1)
	}
	return c, nil
}
