package dial_test

import (
	"fmt"
	"math"
	"testing"

	"noonbook/build/drawing"
	"noonbook/build/placeholder/entrytest"
)

// The large picture is true: upright side and base of its triangle are in the ratio of the
// latitude's tangent, and the shadow of nine o'clock lies on the line of nine, which is
// drawn from the formula for hour lines and not from the Sun. The projection is written out
// again from its definition (parallel, seen from 28° above, 55° to the side of the noon line).
func TestPictureOfTheDialIsTrue(t *testing.T) {
	sin, cos := math.Sincos(28 * degree)
	along := math.Hypot(math.Sin(55*degree), math.Cos(55*degree)*sin) // of a length on the noon line, as seen
	for _, latitude := range []float64{20, 46.09, -45.87, 69.6, -75} {
		r := reckon(t, "alder reach", "dial-plate", "2027-03-21", "school.latitude="+fmt.Sprint(latitude))
		entrytest.Near(t, "style", entrytest.Fact(t, r, "style_angle").Number, math.Abs(latitude), 1e-9)
		card := entrytest.Path(t, r.Drawings[0], "card") // toe, foot, tip
		base, upright := entrytest.Apart(card[0], card[1])/along, entrytest.Apart(card[1], card[2])/cos
		entrytest.Near(t, fmt.Sprint(latitude)+": leaning", math.Atan2(upright, base)/degree, math.Abs(latitude), 1e-6)
		shadow := entrytest.Path(t, r.Drawings[0], "shadow")
		nearest := 180.0
		for _, s := range r.Drawings[0].Shapes {
			if s.Role == "hour" {
				nearest = min(nearest, math.Abs(turnOf(s.Points)-turnOf(shadow)))
			}
		}
		entrytest.Near(t, fmt.Sprint(latitude)+": shadow from an hour line", nearest, 0, 1e-6)
		// The morning's shadow is west of the noon line, on the side on which the style leans
		// away: left as seen from the south-west, right as seen from the north-west.
		if side := shadow[len(shadow)-1].X - card[0].X; side*latitude > 0 {
			t.Errorf("%v: the shadow falls to %v", latitude, side)
		}
	}
}

// Near the equator the plate is tilted by the latitude and the shadow is parallel to the style.
func TestPictureOfThePolarDialIsTrue(t *testing.T) {
	for _, latitude := range []float64{0, 8, -12.5} {
		r := reckon(t, "alder reach", "dial-plate", "2027-06-21", "school.latitude="+fmt.Sprint(latitude))
		entrytest.Near(t, "style", entrytest.Fact(t, r, "style_angle").Number, 0, 0)
		style, shadow := entrytest.Path(t, r.Drawings[0], "accent"), entrytest.Path(t, r.Drawings[0], "shadow")
		entrytest.Near(t, fmt.Sprint(latitude)+": style and shadow", turnOf(style)-turnOf(shadow), 0, 1e-6)
		sin, cos := math.Sincos(28 * degree)
		slope := math.Abs(latitude) * degree
		// A length on the noon line of a tilted plate goes level by its cosine, up by its sine.
		x, y := math.Cos(slope)*math.Sin(55*degree), math.Cos(slope)*math.Cos(55*degree)*sin+math.Sin(slope)*cos
		if math.Abs(latitude) < 1 {
			x, y = math.Sin(55*degree), math.Cos(55*degree)*sin
		}
		entrytest.Near(t, fmt.Sprint(latitude)+": slope as seen", math.Atan2(style[0].Y-style[1].Y, math.Abs(style[1].X-style[0].X)), math.Atan2(y, x), 1e-6)
	}
}

// In polar night there is no shadow to draw, and the picture says so.
func TestPictureWithoutSun(t *testing.T) {
	r := reckon(t, "arctic", "dial-plate", "2027-12-21")
	for _, s := range r.Drawings[0].Shapes {
		if s.Role == "sun" || s.Role == "shadow" || s.Role == "shade" || s.Role == "ray" {
			t.Errorf("a %s is drawn", s.Role)
		}
	}
	if got := entrytest.Shown(t, r, "casts"); got != "no" {
		t.Errorf("a shadow is drawn: %s", got)
	}
}

// turnOf is the angle of a path on the drawing, in degrees.
func turnOf(points []drawing.Point) float64 {
	a, b := points[0], points[len(points)-1]
	return math.Atan2(b.Y-a.Y, b.X-a.X) / degree
}
