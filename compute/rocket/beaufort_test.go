package rocket_test

import (
	"math"
	"testing"

	"noonbook/compute/rocket"
)

// The formula of the Beaufort scale, speed = 0.836 m/s × force^1.5 (adopted by the
// International Meteorological Organization in 1926 and used by the Met Office's table
// since; from memory), puts the border between two forces halfway between their
// numbers. The printed table rounds those borders to a tenth, up or down.
func TestForcesFollowTheirFormula(t *testing.T) {
	for f := rocket.Force(1); f <= rocket.MostForce; f++ {
		border := 0.836 * math.Pow(float64(f)-0.5, 1.5)
		if off := math.Abs(float64(f.From()) - border); off > 0.11 {
			t.Errorf("force %d begins at %v m/s, by the formula at %.2f", f, f.From(), border)
		}
	}
}

// Rows of the printed table: force 2 ends at 3.3 m/s, force 3 at 5.4, force 6 at 13.8.
// A limit within a force cannot be told from that force; one at its end can.
func TestTooStrong(t *testing.T) {
	for limit, want := range map[rocket.Speed]rocket.Force{0: 1, 0.2: 1, 1.4: 1, 1.5: 2, 3.2: 2, 3.3: 3, 4: 3, 5.3: 3, 5.4: 4, 13.8: 7, 15: 7} {
		if got := rocket.TooStrong(limit); got != want {
			t.Errorf("limit %v m/s: force %d may be too strong, want %d", limit, got, want)
		}
	}
}
