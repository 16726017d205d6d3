package drawing

import (
	"math"
	"testing"
)

// A circle of a thousand corners, thinned, is still one to a hundredth of a millimetre:
// by Pythagoras a chord is r − √(r² − c²/4) inside the circle.
func TestThinCircle(t *testing.T) {
	const r, within = 90.0, 0.01
	var circle []Point
	for i := range 1001 {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / 1000)
		circle = append(circle, Point{r * cos, r * sin})
	}
	thinned := Thin(circle, within)
	fewest := math.Pi / math.Acos(1-within/r) // 211 chords
	if n := float64(len(thinned)); n < fewest || n > 2*fewest {
		t.Errorf("%d of 1001 corners stay", len(thinned))
	}
	if thinned[0] != circle[0] || thinned[len(thinned)-1] != circle[1000] {
		t.Error("an end has gone")
	}
	for i, p := range thinned[1:] {
		chord := math.Hypot(p.X-thinned[i].X, p.Y-thinned[i].Y)
		if inside := r - math.Sqrt(r*r-chord*chord/4); inside > within {
			t.Errorf("chord %d is %.4f mm inside the circle", i, inside)
		}
	}
}

// A corner stays, however the path comes back, and what lies on a line goes.
func TestThinCorners(t *testing.T) {
	for name, c := range map[string]struct{ path, want []Point }{
		"straight":       {[]Point{{0, 0}, {1, 0}, {2, 0}, {5, 0}}, []Point{{0, 0}, {5, 0}}},
		"corner":         {[]Point{{0, 0}, {1, 0}, {2, 0}, {2, 1}, {2, 2}}, []Point{{0, 0}, {2, 0}, {2, 2}}},
		"there and back": {[]Point{{0, 0}, {4, 0}, {1, 0}}, []Point{{0, 0}, {4, 0}, {1, 0}}},
		"closed":         {[]Point{{0, 0}, {3, 0}, {0, 0}}, []Point{{0, 0}, {3, 0}, {0, 0}}},
		"two":            {[]Point{{0, 0}, {0, 0}}, []Point{{0, 0}, {0, 0}}},
	} {
		got := Thin(c.path, 0.01)
		if len(got) != len(c.want) {
			t.Errorf("%s: %v, want %v", name, got, c.want)
			continue
		}
		for i := range got {
			if got[i] != c.want[i] {
				t.Errorf("%s: %v, want %v", name, got, c.want)
			}
		}
	}
}
