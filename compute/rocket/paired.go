package rocket

import (
	"math"

	"noonbook/compute/quantity"
)

// Pairs are the differences of paired flights: of each group, the height of the one
// rocket less that of the other, flown one right after the other by the same foot. What
// differs between groups, stamp, wind and bottle, is in both heights and drops out.
type Pairs []quantity.Length

// Mean returns the mean difference, 0 of none.
func (p Pairs) Mean() quantity.Length { return Series(p).Mean() }

// Doubt returns how far the mean difference may be wrong: in 95 of 100 such tests the
// true difference lies within it (Student's paired test). It is +Inf of fewer than two
// pairs.
func (p Pairs) Doubt() quantity.Length {
	scatter, freedom := Scatter(Series(p))
	if freedom < 1 {
		return quantity.Length(math.Inf(1))
	}
	return quantity.Length(student(freedom) * scatter.Metres() / math.Sqrt(float64(len(p))))
}

// Ways counts the pairs in which the one rocket went higher, and those in which the
// other did. Equal heights count for neither.
func (p Pairs) Ways() (up, down int) {
	for _, d := range p {
		switch {
		case d > 0:
			up++
		case d < 0:
			down++
		}
	}
	return up, down
}

// Luck returns in what share of tests without any difference at least so many pairs
// go the same way, whichever it is: the sign test. It is 1 of no pairs.
func (p Pairs) Luck() float64 {
	up, down := p.Ways()
	n, most := up+down, max(up, down)
	share, ways := 0.0, 1.0 // n over k, from k = n down
	for k := n; k >= most && n > 0; k-- {
		share += ways
		ways *= float64(k) / float64(n-k+1)
	}
	if n == 0 {
		return 1
	}
	return min(1, 2*share/math.Pow(2, float64(n)))
}
