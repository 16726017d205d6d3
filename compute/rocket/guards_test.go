package rocket_test

import (
	"math"
	"strings"
	"testing"

	"noonbook/compute/quantity"
	"noonbook/compute/rocket"
)

// Both sides of what a flight takes; the error names the quantity.
func TestFlightBounds(t *testing.T) {
	r := rocket.Rocket{Mass: grams(5), Diameter: mm(23), Drag: 0.6}
	l := rocket.Launch{Speed: 20, Elevation: deg(60), Height: m(0.3)}
	air := rocket.Air{Density: 1.2}
	for _, c := range []struct {
		change func(*rocket.Rocket, *rocket.Launch, *rocket.Air)
		names  string // "" where it flies
	}{
		{func(r *rocket.Rocket, l *rocket.Launch, a *rocket.Air) { r.Mass = 0 }, "mass"},
		{func(r *rocket.Rocket, l *rocket.Launch, a *rocket.Air) { r.Mass = rocket.Mass(math.Inf(1)) }, "mass"},
		{func(r *rocket.Rocket, l *rocket.Launch, a *rocket.Air) { r.Mass = rocket.Mass(math.NaN()) }, "mass"},
		{func(r *rocket.Rocket, l *rocket.Launch, a *rocket.Air) { r.Mass = grams(0.5) }, ""},
		{func(r *rocket.Rocket, l *rocket.Launch, a *rocket.Air) { a.Density = 10 }, ""},
		{func(r *rocket.Rocket, l *rocket.Launch, a *rocket.Air) { a.Density = 10.1 }, "air of"},
		{func(r *rocket.Rocket, l *rocket.Launch, a *rocket.Air) { a.Density = 0 }, ""},
		{func(r *rocket.Rocket, l *rocket.Launch, a *rocket.Air) { a.Density = -0.1 }, "air of"},
	} {
		rr, ll, aa := r, l, air
		c.change(&rr, &ll, &aa)
		_, err := rocket.Fly(rr, ll, aa)
		if c.names == "" && err != nil || c.names != "" && (err == nil || !strings.Contains(err.Error(), c.names)) {
			t.Errorf("want a fault of %q: %v", c.names, err)
		}
	}
}

// Two stations 100 m apart see a rocket 40 m along and 30 m aside; one of them reads an
// elevation whose tangent is 20 % too large. Their own heights differ by that, of the
// mean of both: 0.2 / 1.1. The sine rule finds the same places.
func TestDisagreementByHand(t *testing.T) {
	const up = 50.0
	one, two := math.Hypot(40, 30), math.Hypot(60, 30)
	angle := func(y, x float64) quantity.Angle { return quantity.Angle(math.Atan2(y, x)) }
	first := rocket.Sighting{Elevation: angle(1.2*up, one), Bearing: angle(30, 40)}
	second := rocket.Sighting{Elevation: angle(up, two), Bearing: angle(30, 60)}
	part, ok := rocket.Disagreement(first, second)
	if !ok || math.Abs(part-0.2/1.1) > 1e-9 {
		t.Errorf("they disagree by %v, %v; want %v", part, ok, 0.2/1.1)
	}
	second.Elevation = angle(1.2*up, two)
	if part, ok := rocket.Disagreement(first, second); !ok || part > 1e-9 {
		t.Errorf("both read alike and disagree by %v, %v", part, ok)
	}
}

// Baselines: the height that is farthest up is seen at most at `most`, the lowest at
// least at `least`; a low height that the eye looks down on, or heights that are too
// far apart, have none.
func TestBaselinesOnBothSides(t *testing.T) {
	for _, c := range []struct {
		low, high, eye float64
		ok             bool
	}{
		{6, 10, 1.2, true}, {1.2, 10, 1.2, false}, {1.1, 10, 1.2, false}, {10, 6, 1.2, false},
		// tan 60° is three times tan 30°: from (10 − 1.2)/3 + 1.2 = 4.133 m up
		{4.14, 10, 1.2, true}, {4.12, 10, 1.2, false},
	} {
		from, to, ok := rocket.Baselines(m(c.low), m(c.high), m(c.eye), deg(30), deg(60))
		if ok != c.ok {
			t.Errorf("%v to %v m: %v", c.low, c.high, ok)
		}
		if ok {
			near(t, "from", from.Metres(), (c.high-c.eye)/math.Tan(math.Pi/3), 1e-9)
			near(t, "to", to.Metres(), (c.low-c.eye)/math.Tan(math.Pi/6), 1e-9)
		}
	}
}
