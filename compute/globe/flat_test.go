package globe

import (
	"math"
	"testing"

	"noonbook/compute/quantity"
)

// Snyder (1987), equations 12-1 and 12-2: x = R(λ − λ0) cos φ1, y = Rφ, so that a degree is as
// long across as up, everywhere.
func TestStripIsByTheEquator(t *testing.T) {
	at := func(north, east float64) Point {
		return Point{Latitude: quantity.Degrees(north), Longitude: quantity.Degrees(east)}
	}
	degree := 2 * math.Pi * 3389.5 / 360
	for _, c := range []struct {
		from, to   Point
		strip, way float64 // degrees
	}{
		{at(0, 10), at(0, 40), 30, 30},    // true along the equator
		{at(-20, 10), at(40, 10), 60, 60}, // and along a meridian
		{at(60, 0), at(60, 2), 2, 1.0000}, // twice too long at 60°, where cos φ is a half
		{at(0, -179), at(0, 179), 358, 2}, // no strip goes over the edge
	} {
		if got := Mars.Strip(c.from, c.to).Kilometres() / degree; math.Abs(got-c.strip) > 1e-9 {
			t.Errorf("%v to %v: a strip of %v°, want %v°", c.from, c.to, got, c.strip)
		}
		if got := Mars.Apart(c.from, c.to).Kilometres() / degree; math.Abs(got-c.way) > 1e-3 {
			t.Errorf("%v to %v: a way of %v°, want %v°", c.from, c.to, got, c.way)
		}
	}
}

// The area of a circle on the globe is 2πR²(1 − cos r); what its pieces on the map cover is
// that, when each strip of them is made narrower again by cos φ.
func TestFlatRingCoversTheCircle(t *testing.T) {
	for _, c := range []struct{ north, east, radius float64 }{{0, 0, 10}, {25, -162, 24}, {3, 155, 25}, {48, 178, 20}, {87.7, 32, 17}, {-83, 158, 12}, {-42, 70, 19}} {
		p := Point{Latitude: quantity.Degrees(c.north), Longitude: quantity.Degrees(c.east)}
		area := 0.0 // in steradians: the integral of sin φ dλ round each piece
		for _, piece := range FlatRing(p, quantity.Degrees(c.radius), 720) {
			sum := 0.0
			for i, b := range piece {
				a := piece[(i+len(piece)-1)%len(piece)]
				if math.Abs(a.East) > 180+1e-9 || math.Abs(a.North) > 90+1e-9 {
					t.Fatalf("%v leaves the map", a)
				}
				sum += quantity.Degrees(b.East-a.East).Radians() * (quantity.Degrees(a.North).Sin() + quantity.Degrees(b.North).Sin()) / 2
			}
			area += math.Abs(sum)
		}
		want := 2 * math.Pi * (1 - quantity.Degrees(c.radius).Cos())
		if math.Abs(area/want-1) > 0.003 {
			t.Errorf("round %v: %.4f steradians, want %.4f", c, area, want)
		}
	}
}

// A way over the edge comes in at the other side at the same latitude.
func TestFlatWayOverTheEdge(t *testing.T) {
	a, _ := Find(Mars, "Amazonis Planitia")
	b, _ := Find(Mars, "Elysium Mons")
	pieces := FlatWay(a.At, b.At, 60)
	if len(pieces) != 2 {
		t.Fatalf("%d pieces", len(pieces))
	}
	out, in := pieces[0][len(pieces[0])-1], pieces[1][0]
	if out.East != -180 || in.East != 180 || out.North != in.North || out.North < 20 || out.North > 40 {
		t.Errorf("it leaves at %v and comes in at %v", out, in)
	}
	if last := pieces[1][len(pieces[1])-1]; math.Abs(last.East-b.At.Longitude.Degrees()) > 1e-6 || math.Abs(last.North-b.At.Latitude.Degrees()) > 1e-6 {
		t.Errorf("it ends at %v", last)
	}
	c, _ := Find(Mars, "Curiosity")
	d, _ := Find(Mars, "Perseverance")
	if len(FlatWay(c.At, d.At, 20)) != 1 {
		t.Error("a way inside the map is in pieces")
	}
}
