package search_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"noonbook/compute/search"
)

// Newton's cubic x³ − 2x − 5, on which he showed his method in 1669; the root is
// 2.0945514815423265… (The On-Line Encyclopedia of Integer Sequences, A007493).
func ExampleRoot() {
	fmt.Printf("%.12f\n", search.Root(func(x float64) float64 { return x*x*x - 2*x - 5 }, 2, 3, 1e-14))
	// Output: 2.094551481542
}

// Meeus, Astronomical Algorithms, 2nd ed. 1998, example 30.a: Kepler's equation for
// M = 5°, e = 0.1 has E = 5.554589°.
func ExampleBetween() {
	kepler := func(degrees float64) float64 { return degrees - 0.1*180/math.Pi*math.Sin(degrees*math.Pi/180) - 5 }
	fmt.Printf("%.6f°\n", search.Between(kepler, 0, -5, 180, 175, 1e-9))
	// Output: 5.554589°
}

// The first square of a whole number above a million is 1001², by hand.
func ExampleHalve() {
	_, from := search.Halve(int64(0), 1_000_000, 1, func(n int64) bool { return n*n > 1_000_000 })
	fmt.Println(from * from)
	// Output: 1002001
}

// The gamma function is least at 1.46163 21449 68362 (Abramowitz & Stegun, Handbook
// of Mathematical Functions, section 6.1; from memory).
func ExampleLowest() {
	fmt.Printf("%.6f\n", search.Lowest(math.Gamma, 1, 2, 1e-8))
	// Output: 1.461632
}

// Curves that lead false position astray: flat at one end, steep at the other, bent,
// a step. The root is known; the answer must lie within, on b's side, from either
// side, and cost no more than thrice the halvings that it takes.
func TestRootOnHardCurves(t *testing.T) {
	for name, c := range map[string]struct {
		f          func(float64) float64
		a, b, root float64
	}{
		"flat":    {func(x float64) float64 { return math.Pow(x, 9) }, -1, 1.7, 0},
		"steep":   {func(x float64) float64 { return math.Exp(20*x) - 1 }, -1, 1, 0},
		"pole":    {func(x float64) float64 { return 1 - 1/x }, 1e-6, 5, 1},
		"cosine":  {math.Cos, 0, 3, math.Pi / 2},
		"step":    {func(x float64) float64 { return math.Copysign(1, x-0.3) }, 0, 1, 0.3},
		"tiny":    {func(x float64) float64 { return 1e-300 * (x - 0.7) }, 0, 1, 0.7},
		"large":   {func(x float64) float64 { return x*x - 1e16 }, 0, 1e9, 1e8},
		"line":    {func(x float64) float64 { return 3 - x }, 1, 20, 3},
		"at an a": {func(x float64) float64 { return x - 1 }, 1, 2, 1},
		"at a b":  {func(x float64) float64 { return x - 2 }, 1, 2, 2},
	} {
		for _, within := range []float64{0.1, 1e-6, 1e-12} {
			within *= max(1, c.root)
			for _, ends := range [][2]float64{{c.a, c.b}, {c.b, c.a}} {
				calls := 0
				f := func(x float64) float64 { calls++; return c.f(x) }
				x := search.Root(f, ends[0], ends[1], within)
				if math.Abs(x-c.root) > within {
					t.Errorf("%s from %g: %g, off by %g, not within %g", name, ends[0], x, x-c.root, within)
				}
				if y := c.f(x); y != 0 && c.f(ends[1]) != 0 && (y < 0) != (c.f(ends[1]) < 0) {
					t.Errorf("%s from %g: %g lies on the wrong side", name, ends[0], x)
				}
				if most := 3 * (3 + int(math.Log2(math.Abs(c.b-c.a)/within))); calls > most {
					t.Errorf("%s from %g within %g: %d evaluations, more than %d", name, ends[0], within, calls, most)
				}
			}
		}
	}
}

// Against plain halving on random sines from either side, where Root must be the
// quicker: 31 evaluations are what halving takes.
func TestRootAgainstHalving(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 14))
	most, total := 0, 0
	const curves, within = 2000, 1e-9
	for range curves {
		tilt, phase := 0.9*random.Float64(), random.Float64()-0.5
		calls := 0
		f := func(x float64) float64 { calls++; return math.Sin(x-phase) + tilt*(x-phase)*(x-phase)*math.Cos(x) }
		a, b := phase-0.5, phase+0.6
		if f(a) > 0 || f(b) < 0 {
			continue
		}
		calls = 0
		got := search.Root(f, a, b, within)
		back := search.Root(f, b, a, within)
		most, total = max(most, calls), total+calls
		for range 60 {
			if middle := (a + b) / 2; f(middle) < 0 {
				a = middle
			} else {
				b = middle
			}
		}
		if math.Abs(got-b) > within || math.Abs(back-b) > within {
			t.Errorf("tilt %g, phase %g: %g and %g, halving has %g", tilt, phase, got, back, b)
		}
	}
	t.Logf("both sides: %.1f evaluations on the mean, %d at most", float64(total)/curves, most)
	if most > 2*12 || total > 2*10*curves {
		t.Errorf("%.1f evaluations on the mean, %d at most", float64(total)/curves, most)
	}
}

// A zero that is hit ends the search, on either side.
func TestRootThatIsHit(t *testing.T) {
	for _, ends := range [][2]float64{{1, 20}, {20, 1}} {
		calls := 0
		x := search.Root(func(x float64) float64 { calls++; return 3 - x }, ends[0], ends[1], 1e-9)
		if x != 3 || calls != 3 {
			t.Errorf("%g after %d evaluations", x, calls)
		}
	}
}

// With no room left between two numbers the search is over.
func TestRootToTheLastBit(t *testing.T) {
	x := search.Root(func(x float64) float64 { return x*x*x - 2 }, 1, 2, 0)
	if math.Abs(x-math.Cbrt(2)) > 3e-16 {
		t.Errorf("%.17g, want %.17g", x, math.Cbrt(2))
	}
}

func TestNaN(t *testing.T) {
	nan := math.NaN()
	for name, f := range map[string]func(float64) float64{
		"everywhere": func(float64) float64 { return nan },
		"at an end":  func(x float64) float64 { return math.Log(x) }, // of −1
		"between":    func(x float64) float64 { return math.Copysign(math.Sqrt(x*x-1), x) + 0.1*x },
	} {
		if x := search.Root(f, -1, 3, 1e-9); !math.IsNaN(x) {
			t.Errorf("NaN %s gives %g", name, x)
		}
	}
	search.Lowest(func(float64) float64 { return nan }, 0, 1, 0) // comes to an end
}

// Both sides of a turn, in either direction, and for numbers that cannot be halved
// any further.
func TestHalve(t *testing.T) {
	for _, ends := range [][2]float64{{0, 1}, {1, 0}, {-5, 0.5}} {
		up := ends[0] < ends[1]
		before, from := search.Halve(ends[0], ends[1], 1e-9, func(x float64) bool { return (x >= 0.3) == up })
		if math.Abs(before-from) > 1e-9 || min(before, from) > 0.3 || max(before, from) < 0.3 || (before < from) != up {
			t.Errorf("%v: %.12g and %.12g", ends, before, from)
		}
	}
	before, from := search.Halve(time.Duration(0), time.Hour, time.Second, func(d time.Duration) bool { return d >= 20*time.Minute })
	if before >= 20*time.Minute || from < 20*time.Minute || from-before > time.Second {
		t.Errorf("%v and %v", before, from)
	}
	if before, from := search.Halve(0, 1, 0.0, func(x float64) bool { return x > 0.3 }); from != math.Nextafter(before, 1) {
		t.Errorf("%v and %v", before, from)
	}
}

// Lowest against a parabola's vertex, and at an end where the function only falls.
func TestLowest(t *testing.T) {
	for _, vertex := range []float64{0.001, 0.3, 0.999} {
		if x := search.Lowest(func(x float64) float64 { return (x - vertex) * (x - vertex) }, 0, 1, 1e-7); math.Abs(x-vertex) > 1e-7 {
			t.Errorf("%g, want %g", x, vertex)
		}
	}
	if x := search.Lowest(func(x float64) float64 { return -x }, 0, 1, 1e-6); 1-x > 1e-6 {
		t.Errorf("falling to the end: %g", x)
	}
}
