package lens

import (
	"errors"
	"math"
	"slices"

	"noonbook/compute/quantity"
)

// A Summary is what several measurements of one lens come to.
type Summary struct {
	Mean, Spread quantity.Length // spread: standard deviation of one measurement; zero for a single one
	Middle       quantity.Length // median
	Misread      []int           // places of the measurements that the others do not bear out
}

// Limits of a misreading: common practice, no source. The spread of honest
// measurements is read off their median deviation, times 1.4826 for a normal
// distribution; three spreads away one is taken for misread, but never for less
// than 3 % of the lens, which is what a class that measures with care differs by.
const (
	normal  = 1.4826
	spreads = 3
	careful = 0.03
)

// Summarise returns the mean and spread of measured focal lengths, those that seem
// misread left out of both. Two or fewer measurements cannot tell which one is
// misread. It fails for none, and for one that is not positive.
func Summarise(measured []quantity.Length) (Summary, error) {
	if len(measured) == 0 {
		return Summary{}, errors.New("no measurements to summarise")
	}
	for _, m := range measured {
		if err := positive("measured focal length", m); err != nil {
			return Summary{}, err
		}
	}
	s := Summary{Middle: median(measured)}
	var off []quantity.Length
	for _, m := range measured {
		off = append(off, quantity.Length(math.Abs(float64(m-s.Middle))))
	}
	limit := max(spreads*normal*median(off), careful*s.Middle)
	var kept []quantity.Length
	for i, m := range measured {
		if len(measured) > 2 && off[i] > limit {
			s.Misread = append(s.Misread, i)
			continue
		}
		kept = append(kept, m)
	}
	for _, m := range kept {
		s.Mean += m / quantity.Length(len(kept))
	}
	if len(kept) > 1 {
		var squares float64
		for _, m := range kept {
			squares += float64((m - s.Mean) * (m - s.Mean))
		}
		s.Spread = quantity.Length(math.Sqrt(squares / float64(len(kept)-1)))
	}
	return s, nil
}

func median(lengths []quantity.Length) quantity.Length {
	sorted := slices.Sorted(slices.Values(lengths))
	n := len(sorted)
	return (sorted[(n-1)/2] + sorted[n/2]) / 2
}
