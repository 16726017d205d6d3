package strip_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"noonbook/compute/quantity"
	"noonbook/compute/strip"
)

func mmBalls(sizes ...float64) []strip.Ball {
	var balls []strip.Ball
	for _, mm := range sizes {
		balls = append(balls, strip.Ball{Name: "ball", Diameter: quantity.Millimetres(mm)})
	}
	return balls
}

// worth is the sum that CastBalls makes small, from a cast's own numbers.
func worth(c strip.Cast, balls []strip.Ball) float64 {
	sum, limit := 0.0, math.Log(strip.MostExcess)
	for _, p := range c.Parts {
		off := limit
		if p.Ball >= 0 {
			off = math.Log(float64(balls[p.Ball].Diameter) * c.Shrunk / float64(p.Diameter))
		}
		sum += off * off
	}
	return sum
}

// smallest tries every way to give balls to bodies, each at its own best scale,
// the mean of ln(ball/body).
func smallest(bodies []strip.Body, balls []strip.Ball) float64 {
	best, limit := math.Inf(1), math.Log(strip.MostExcess)
	var shifts []float64
	used := make([]bool, len(balls))
	var try func(i int)
	try = func(i int) {
		if i == len(bodies) {
			mean, sum := 0.0, limit*limit*float64(len(bodies)-len(shifts))
			for _, s := range shifts {
				mean += s / float64(len(shifts))
			}
			for _, s := range shifts {
				sum += (s - mean) * (s - mean)
			}
			best = min(best, sum)
			return
		}
		try(i + 1)
		for j := range balls {
			if !used[j] {
				used[j] = true
				shifts = append(shifts, math.Log(float64(balls[j].Diameter/bodies[i].Diameter)))
				try(i + 1)
				shifts, used[j] = shifts[:len(shifts)-1], false
			}
		}
	}
	try(0)
	return best
}

// No way of giving balls to bodies is better, by trying them all on sets of up
// to five bodies and five balls: 1e-7 is the preference for
// the Earth and the documented slack.
func TestCastIsTheBest(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	worst := 0.0
	for range 300 {
		bodies := strip.Bodies()
		random.Shuffle(len(bodies), func(i, j int) { bodies[i], bodies[j] = bodies[j], bodies[i] })
		bodies = bodies[:1+random.IntN(5)]
		var sizes []float64
		for range 1 + random.IntN(5) {
			sizes = append(sizes, 2*math.Exp(5*random.Float64()))
		}
		balls := mmBalls(sizes...)
		c, err := strip.CastBalls(bodies, balls)
		if err != nil {
			t.Fatal(err)
		}
		more := worth(c, balls) - smallest(bodies, balls)
		if worst = max(worst, math.Abs(more)); math.Abs(more) > 1e-7 {
			t.Errorf("%v from %v mm: %g above the smallest", bodies, sizes, more)
		}
		seen := map[int]bool{}
		for _, p := range c.Parts {
			if p.Ball >= 0 && seen[p.Ball] {
				t.Errorf("a ball plays two bodies: %v", c.Parts)
			}
			seen[p.Ball] = true
		}
	}
	t.Logf("worst %.1g above the smallest", worst)
}

// Balls made to one scale are given back without error, the odd ones left over.
func TestCastOfTrueModels(t *testing.T) {
	planets := slices.DeleteFunc(strip.Bodies(), func(b strip.Body) bool { return b.Name == "sun" || b.Name == "ceres" || b.Name == "pluto" })
	balls := mmBalls(1, 1000, 77)
	for _, p := range planets {
		balls = append(balls, strip.Ball{Name: p.Name, Diameter: p.Diameter / 5e8})
	}
	slices.Reverse(balls)
	c, err := strip.CastBalls(planets, balls)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "shrunk", c.Shrunk, 5e8, 5e8*1e-9)
	for _, p := range c.Parts {
		if p.Ball < 0 || balls[p.Ball].Name != p.Name {
			t.Errorf("%s is played by %d", p.Name, p.Ball)
			continue
		}
		near(t, p.Name, p.Excess, 0, 1e-6)
	}
}

// One ball is the Earth, whatever its size; of two, one the size of the other,
// Venus and the Earth make the smaller error than any other pair but Uranus and
// Neptune (3 % apart, where Venus and the Earth are 5 %).
func TestCastOfFewBalls(t *testing.T) {
	for _, mm := range []float64{3, 40, 240} {
		c, err := strip.CastBalls(strip.Bodies(), mmBalls(mm))
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range c.Parts {
			if (p.Ball == 0) != (p.Name == "earth") {
				t.Errorf("one ball of %v mm plays %s", mm, p.Name)
			}
		}
	}
	// Of two balls for two bodies of one size the larger is too large, by as much as it
	// is over what the scale asks.
	twins := []strip.Body{{Name: "one", Diameter: quantity.Kilometres(1000)}, {Name: "two", Diameter: quantity.Kilometres(1000)}}
	two, err := strip.CastBalls(twins, mmBalls(44, 40))
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range two.Parts {
		ball := []float64{44, 40}[p.Ball]
		if want := 100 * (ball - p.Model.Millimetres()) / p.Model.Millimetres(); math.Abs(p.Excess-want) > 1e-9 || (ball == 44) != (p.Excess > 0) {
			t.Errorf("a ball of %v mm for %v mm is over by %v %%", ball, p.Model.Millimetres(), p.Excess)
		}
	}
	c, err := strip.CastBalls(strip.Bodies(), mmBalls(50.7, 49.2))
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range c.Parts {
		if want := map[string]int{"uranus": 0, "neptune": 1}; p.Ball >= 0 && p.Ball != want[p.Name] {
			t.Errorf("%s is played by %d", p.Name, p.Ball)
		}
	}
}

func TestCastRefuses(t *testing.T) {
	for want, balls := range map[string][]strip.Ball{"no balls": nil, "of 0 mm": mmBalls(0), "of NaN mm": mmBalls(math.NaN()), "of +Inf mm": mmBalls(math.Inf(1))} {
		if _, err := strip.CastBalls(strip.Bodies(), balls); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("got %v, want it to speak of %q", err, want)
		}
	}
}

func BenchmarkCastBalls(b *testing.B) {
	balls := mmBalls(40, 40, 42.67, 42.67, 67, 67, 72.5, 72.5, 220, 220, 241, 241, 16, 16, 12.7, 19, 74, 97, 207, 57.15, 30, 35, 21, 22, 8, 9, 11)
	for b.Loop() {
		if _, err := strip.CastBalls(strip.Bodies(), balls); err != nil {
			b.Fatal(err)
		}
	}
}
