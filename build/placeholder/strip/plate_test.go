package strip_test

import (
	"math"
	"testing"

	"noonbook/build/placeholder/entrytest"
)

// The large picture has the two ends of the strip and none of the bodies that pupils place,
// and as many tags as there are tens; rows run to and fro without a gap.
func TestLargeStripTellsNoPlace(t *testing.T) {
	for squares, tags := range map[string]int{"1": 0, "40": 4, "95": 9, "240": 24, "600": 60, "997": 99} {
		r := reckon(t, "alder reach", "strip-plate", "2027-04-16", "stock.strip_squares="+squares)
		d := r.Drawings[0]
		if got := len(entrytest.Roled(d, "tag")); got != tags {
			t.Errorf("%s squares have %d tags", squares, got)
		}
		if got := len(entrytest.Roled(d, "body")); got != 1 {
			t.Errorf("%s squares: %d bodies besides the Sun", squares, got)
		}
		labels := entrytest.Labels(t, d)
		for _, name := range []string{"Mercury", "Earth", "Mars", "Jupiter", "Saturn", "Uranus"} {
			if _, ok := labels[name]; ok {
				t.Errorf("%s squares: %s has its place", squares, name)
			}
		}
		for _, s := range d.Shapes {
			for _, p := range s.Points {
				if p.X < 0 || p.X > d.Width || p.Y < 0 || p.Y > d.Height || math.IsNaN(p.X) {
					t.Fatalf("%s squares: %s at %v", squares, s.Role, p)
				}
			}
		}
	}
}
