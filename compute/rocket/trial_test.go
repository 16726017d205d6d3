package rocket_test

import (
	"math"
	"testing"

	"noonbook/compute/quantity"
	"noonbook/compute/rocket"
)

func series(metres ...float64) rocket.Series {
	var s rocket.Series
	for _, h := range metres {
		s = append(s, quantity.Metres(h))
	}
	return s
}

// Student's t-test of scipy 1.10.1 (scipy.stats.ttest_ind, t.ppf): the pooled
// standard deviation, and half of the 95 % interval of the difference. 1e-3 of
// the value: Student's table has four digits.
func TestDoubtAgainstScipy(t *testing.T) {
	for _, c := range []struct {
		a, b           rocket.Series
		scatter, doubt float64
	}{
		{series(11, 14, 12), series(13, 12, 15), 1.5275252316, 3.4628354456},
		{series(10.2, 11.4, 9.9, 10.8), series(12.1, 12.9, 11.7), 0.6440755650, 1.2645227719},
	} {
		scatter, freedom := rocket.Scatter(c.a, c.b)
		near(t, "scatter", scatter.Metres(), c.scatter, 1e-9)
		doubt := rocket.Doubt(scatter, freedom, len(c.a), len(c.b)).Metres()
		near(t, "doubt", doubt, c.doubt, 1e-3*c.doubt)
	}
	// Points of Student's distribution, from scipy: with a scatter of 1/√2 m and one
	// flight each the doubt is the point itself.
	for freedom, want := range map[int]float64{1: 12.7062, 4: 2.7764, 10: 2.2281, 11: 2.2010, 16: 2.1199, 30: 2.0423, 100: 1.9840} {
		near(t, "point", rocket.Doubt(quantity.Length(math.Sqrt(0.5)), freedom, 1, 1).Metres(), want, 0.001)
	}
}

func TestSeries(t *testing.T) {
	s := series(12, 9, 15)
	near(t, "mean", s.Mean().Metres(), 12, 1e-12)
	near(t, "spread", s.Spread().Metres(), 6, 1e-12)
	var none rocket.Series
	if none.Mean() != 0 || none.Spread() != 0 {
		t.Error("no flights have a height")
	}
	if scatter, freedom := rocket.Scatter(series(3), none, series(4)); scatter != 0 || freedom != 0 {
		t.Errorf("flights that were not repeated scatter by %v, %d", scatter, freedom)
	}
	if !math.IsInf(rocket.Doubt(0, 0, 1, 1).Metres(), 1) {
		t.Error("without repeats there is no doubt")
	}
}
