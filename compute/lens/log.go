package lens

import (
	"errors"
	"math"

	"noonbook/compute/quantity"
)

// A Summary is what several measurements of one lens come to.
type Summary struct {
	Mean, Spread quantity.Length // spread: standard deviation of one measurement; zero for a single one
	Middle       quantity.Length // median
	Misread      []int           // places of the measurements that the others do not bear out
}

// careful is the share of a focal length by which a class that measures with care differs;
// what is off by less is not misread. Common practice, no source.
const careful = 0.03

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
	s := Summary{Middle: quantity.Median(measured)}
	var off []quantity.Length
	for _, m := range measured {
		off = append(off, quantity.Length(math.Abs(float64(m-s.Middle))))
	}
	limit := max(quantity.ClearlyOff(off), careful*s.Middle)
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
