package dial

import (
	"math"
	"testing"
	"time"

	"noonbook/compute/quantity"
)

// slowly hides that a dial is a Dial, so that MostOff asks Off everywhere.
type slowly struct{ Laid }

// The quick search finds what the slow one finds, to the nanosecond: from pole to pole,
// turned by any compass, as a whole or the face alone, and drawn for another latitude.
func TestMostOffQuickly(t *testing.T) {
	quick := 0
	for latitude := -90.0; latitude <= 90; latitude += 4.5 {
		phi := quantity.Degrees(latitude)
		for _, by := range []float64{0, 0.3, -2.7, 16, -31, 90, 179.5} {
			turn := quantity.Degrees(by)
			for name, d := range map[string]Dial{
				"whole": True(phi).Turned(turn), "face": True(phi).FaceTurned(turn), "elsewhere": True(phi + quantity.Degrees(7)).Turned(turn),
			} {
				want, wantOK := MostOff(slowly{d}, phi)
				got, ok := MostOff(d, phi)
				if got != want || ok != wantOK {
					t.Errorf("%s at %g°, turned by %g°: %v %v, want %v %v", name, latitude, by, got, ok, want, wantOK)
				}
				if _, ok := d.mostOffQuickly(phi); ok {
					quick++
				}
			}
		}
	}
	if quick < 700 {
		t.Errorf("only %d dials of 861 are searched quickly", quick)
	}
}

// A dial that is laid right is never off by more than rounding; one whose drawn latitude
// is its own and that is turned by 15° at the pole, where all hour lines are 15° apart, is
// an hour off all year, by hand.
func TestMostOff(t *testing.T) {
	if most, _ := MostOff(True(quantity.Degrees(46)), quantity.Degrees(46)); most.Abs() > time.Millisecond {
		t.Errorf("a dial laid right is off by %v", most)
	}
	most, ok := MostOff(True(quantity.Degrees(90)).Turned(quantity.Degrees(15)), quantity.Degrees(90))
	if !ok || math.Abs(most.Abs().Hours()-1) > 1e-6 {
		t.Errorf("turned by 15° at the pole: off by %v", most)
	}
}
