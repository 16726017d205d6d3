package entry_test

import (
	"testing"

	"noonbook/build/placeholder/entry"
)

// Three scatters by hand: of 1, −1, 2, −2, 9 the median size is 2, 3 × 1.4826 × 2 = 8.8956;
// of 1, −1, 2, −2, 8.8 it is the same, and 8.8 is less.
func TestOutlier(t *testing.T) {
	for name, c := range map[string]struct {
		off   []float64
		least float64
		at    int
		ok    bool
	}{
		"none":               {nil, 1, 0, false},
		"one":                {[]float64{50}, 1, 0, false},
		"four":               {[]float64{0, 0, 0, 50}, 1, 0, false},
		"all equal":          {[]float64{3, 3, 3, 3, 3, 3}, 1, 0, false},
		"all right":          {[]float64{0, 0, 0, 0, 0}, 1, 0, false},
		"above":              {[]float64{1, -1, 2, -2, 9}, 1, 4, true},
		"below":              {[]float64{1, -9, 1, 2, -2}, 1, 1, true},
		"just not":           {[]float64{1, -1, 2, -2, 8.8}, 1, 0, false},
		"careful":            {[]float64{0, 0, 0, 0, 0.9}, 1, 0, false},
		"the others agree":   {[]float64{0, 0, 0, 0, 1.1}, 1, 4, true},
		"one right, all off": {[]float64{10, 10, 0, 10, 10}, 1, 0, false},
		"the first of two":   {[]float64{1, 30, 1, 1, -30}, 1, 1, true},
	} {
		at, ok := entry.Outlier(c.off, c.least)
		if ok != c.ok || ok && at != c.at {
			t.Errorf("%s: %d, %v", name, at, ok)
		}
	}
}
