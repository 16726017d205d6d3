package almanac

import (
	"testing"
	"time"

	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// Sides go round the disc clockwise from the top, an eighth of a turn each, as
// one who faces it sees them.
func TestSidesAreNamedClockwise(t *testing.T) {
	for i, want := range []string{"top", "upper right", "right", "lower right", "bottom", "lower left", "left", "upper left"} {
		if got := (Top + Side(i)).String(); got != want {
			t.Errorf("%d° clockwise from the top is %q, want %q", 45*i, got, want)
		}
	}
	if NoSide.String() != "none" || AllSides.String() != "all" {
		t.Errorf("a new Moon is lit on %q, a full one on %q", NoSide, AllSides)
	}
}

// The Moon is up from the moment at which MoonDay has it rise, which reference
// tables hold: its upper limb is then on the horizon, its centre below.
func TestMoonIsUpFromItsRise(t *testing.T) {
	zone, err := time.LoadLocation("America/Moncton")
	if err != nil {
		t.Fatal(err)
	}
	p := place.Place{Latitude: quantity.Degrees(46.09), Longitude: quantity.Degrees(-64.77), Zone: zone}
	for d, n := (place.Date{Year: 2027, Month: time.April, Day: 1}), 0; n < 20; d, n = d.Add(1), n+1 {
		for _, rise := range MoonDay(p, d).Rises {
			if at := rise.Add(30 * time.Second); !moonUp(p, at, at) {
				t.Errorf("%s: not up half a minute after its rise", at)
			}
			if at := rise.Add(-90 * time.Second); moonUp(p, at.Add(-time.Minute), at) {
				t.Errorf("%s: up a minute and a half before its rise", at)
			}
		}
	}
}
