package almanac

import (
	"math"
	"testing"
	"time"

	"noonbook/compute/space"
)

// The fast cosine against the standard library's, over the arguments that the
// series meet (τ·77713 in a thousand years) and beyond.
func TestCosine(t *testing.T) {
	worst := 0.0
	for i := range 2_000_000 {
		x := -1e6 + float64(i)*1.000003
		worst = max(worst, math.Abs(cosine(x)-math.Cos(x)))
	}
	for x := -10.0; x < 10; x += 1e-4 {
		worst = max(worst, math.Abs(cosine(x)-math.Cos(x)))
	}
	t.Logf("worst %.2g", worst)
	if worst > 3e-9 {
		t.Errorf("off by %g", worst)
	}
}

// The interpolated day against the whole theory, every twenty minutes of days
// through three years, for every body: 0.1″ for the Sun, 0.3″ for the Moon, 2″ for
// the rest, as its documentation says.
func TestTrackAgainstTheWholeTheory(t *testing.T) {
	for b := Sun; b <= Pluto; b++ {
		worst := 0.0
		for day := 0; day < 1095; day += 7 {
			from := time.Date(2026, 1, 1+day, 4, 0, 0, 0, time.UTC)
			k := trackOf(b, from, from.Add(25*time.Hour))
			for i := range 76 {
				at := float64(i) / 72
				m := momentAt(momentOf(from).ut + at)
				f := frameOf(m)
				// Seen against the turning Earth: place and sidereal time together.
				turned := func(v space.Vector, sidereal float64) space.Vector {
					sin, cos := math.Sincos(sidereal)
					return space.Vector{X: v.X*cos + v.Y*sin, Y: v.Y*cos - v.X*sin, Z: v.Z}
				}
				whole := turned(b.vector(m, f), apparentSidereal(m, f))
				fast := turned(k.place(at), k.sidereal+siderealRate*at)
				worst = max(worst, whole.Angle(fast).ArcSeconds())
			}
		}
		limit := 2.0
		switch b {
		case Sun:
			limit = 0.1
		case Moon:
			limit = 0.3
		}
		t.Logf("%s: worst %.3f″", b, worst)
		if worst > limit {
			t.Errorf("%s: %.3f″", b, worst)
		}
	}
}
