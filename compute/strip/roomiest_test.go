package strip_test

import (
	"math"
	"testing"

	"noonbook/compute/quantity"
	"noonbook/compute/strip"
)

// Inscribed circles by plane geometry: half the short side of a rectangle, area
// over half the perimeter of a triangle, and in an L of arms 20 m wide the one that
// touches both outer sides and the inner corner, r from the sides with
// (20 − r)·√2 = r, so r = 20·(2 − √2). Limit: a centimetre, as stated.
func TestRoomiest(t *testing.T) {
	corner := func(east, north float64) strip.Spot {
		return strip.Spot{East: quantity.Metres(east), North: quantity.Metres(north)}
	}
	for name, c := range map[string]struct {
		field strip.Outline
		room  float64
	}{
		"rectangle":        {strip.Rectangle(118, 92, 0), 46},
		"turned rectangle": {strip.Rectangle(60, 40, quantity.Degrees(33)), 20},
		"triangle 3 4 5":   {strip.Outline{corner(0, 0), corner(40, 0), corner(0, 30)}, 10},
		"an L": {strip.Outline{corner(0, 0), corner(100, 0), corner(100, 20), corner(20, 20), corner(20, 100), corner(0, 100)},
			20 * (2 - math.Sqrt2)},
	} {
		spot, room := c.field.Roomiest()
		near(t, name, room.Metres(), c.room, 0.01)
		if !c.field.Holds(spot) {
			t.Errorf("%s: %v is not on the field", name, spot)
		}
	}
	if spot, _ := strip.Rectangle(118, 92, 0).Roomiest(); math.Hypot(spot.East.Metres()-46, spot.North.Metres()-59) > 1e-6 {
		t.Errorf("a rectangle's launcher stands at %v", spot)
	}
}
