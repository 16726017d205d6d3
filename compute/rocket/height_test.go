package rocket_test

import (
	"fmt"
	"math"
	"testing"

	"noonbook/compute/quantity"
	"noonbook/compute/rocket"
)

var care = rocket.Care{Angle: deg(1), Length: m(0.1)}

const foot = 0.3048 // m exactly, International Yard and Pound Agreement 1959

// NASA's Altitude Tracking: 35° seen from 5, 15 and 30 m is 3.5, 10.5 and 21 m
// above the eye.
func ExampleOneStation() {
	for _, baseline := range []float64{5, 15, 30} {
		h, err := rocket.OneStation(quantity.Degrees(35), quantity.Metres(baseline), 0, rocket.Care{})
		if err != nil {
			fmt.Println(err)
		}
		fmt.Printf("%.1f m\n", h.Value.Metres())
	}
	// Output:
	// 3.5 m
	// 10.5 m
	// 21.0 m
}

// A published classroom note: 85° from 33 feet is 377 feet, and one degree more
// adds almost 100 feet.
func TestSteepAnglesAreWorthLittle(t *testing.T) {
	h, err := rocket.OneStation(deg(85), m(33*foot), 0, care)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "height in feet", h.Value.Metres()/foot, 377, 0.5)
	if more := h.ByAngle.Metres() / foot; more < 90 || more >= 100 {
		t.Errorf("one degree more adds %.1f feet", more)
	}
}

func TestOneStationCare(t *testing.T) {
	h, err := rocket.OneStation(deg(45), m(20), m(1.4), care)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "height", h.Value.Metres(), 21.4, 1e-12)
	near(t, "by an angle", h.ByAngle.Metres(), 20*(math.Tan(46*math.Pi/180)-1), 1e-12)
	near(t, "by a length", h.ByLength.Metres(), 0.1, 1e-12)
	near(t, "together", h.Spread().Metres(), math.Hypot(h.ByAngle.Metres(), 0.1), 1e-12)
	h, err = rocket.OneStation(deg(89.5), m(20), 0, care)
	if err != nil || !math.IsInf(h.Spread().Metres(), 1) {
		t.Errorf("one degree from 89.5° is %v, %v", h, err)
	}
	for _, c := range []struct{ angle, baseline, eye float64 }{
		{0, 20, 1}, {90, 20, 1}, {-5, 20, 1}, {120, 20, 1}, {math.NaN(), 20, 1}, {45, 0, 1}, {45, -3, 1}, {45, math.Inf(1), 1}, {45, 20, -1}, {45, 20, 50},
	} {
		if _, err := rocket.OneStation(deg(c.angle), m(c.baseline), m(c.eye), care); err == nil {
			t.Errorf("%v: no error", c)
		}
	}
}

// A rocket put at a place in space, seen from both ends of a baseline: NASA's
// formula must find its height wherever it is. Rounding, 1e-9.
func TestTwoStationsFindTheRocket(t *testing.T) {
	for _, at := range []struct{ along, aside, up float64 }{
		{20, 0, 15}, {5, 12, 15}, {25, -8, 30}, {40, 0, 9}, {30, 20, 3},
	} {
		const baseline = 50.0
		see := func(from float64) rocket.Sighting {
			ahead := math.Abs(at.along - from)
			return rocket.Sighting{
				Elevation: quantity.Atan2(at.up, math.Hypot(ahead, at.aside)),
				Bearing:   quantity.Atan2(math.Abs(at.aside), ahead),
			}
		}
		h, err := rocket.TwoStations(see(0), see(baseline), m(baseline), m(1.3), care)
		if err != nil {
			t.Fatal(err)
		}
		near(t, fmt.Sprint(at), h.Value.Metres(), at.up+1.3, 1e-9)
		apart, ok := rocket.Disagreement(see(0), see(baseline))
		if ok != (at.aside != 0) || apart > 1e-9 {
			t.Errorf("%v: the stations disagree by %v, %v", at, apart, ok)
		}
	}
}

// NASA's formula as it is printed, with one worked sum by hand: L = 100, a = 30°,
// d = 45°, b = c = 0: 100 · tan 30 · tan 45/(tan 45 + tan 30) = 36.603.
func TestTwoStationsAsPrinted(t *testing.T) {
	h, err := rocket.TwoStations(rocket.Sighting{Elevation: deg(30)}, rocket.Sighting{Elevation: deg(45)}, m(100), 0, rocket.Care{})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "by hand", h.Value.Metres(), 36.603, 0.0005)
	for _, c := range [][4]float64{{30, 10, 45, 20}, {62, 35, 48, 5}, {12, -8, 80, 60}} {
		a, b, d, e := c[0]*math.Pi/180, c[1]*math.Pi/180, c[2]*math.Pi/180, c[3]*math.Pi/180
		want := 100 * math.Tan(a) * math.Tan(d) / (math.Cos(b)*math.Tan(d) + math.Cos(e)*math.Tan(a))
		h, err := rocket.TwoStations(rocket.Sighting{deg(c[0]), deg(c[1])}, rocket.Sighting{deg(c[2]), deg(c[3])}, m(100), 0, rocket.Care{})
		if err != nil {
			t.Fatal(err)
		}
		near(t, fmt.Sprint(c), h.Value.Metres(), want, 1e-9*want)
	}
}

// The care of two stations against heights tried at both ends of each mistake.
func TestTwoStationsCare(t *testing.T) {
	a, b := rocket.Sighting{deg(40), deg(20)}, rocket.Sighting{deg(50), deg(30)}
	h, err := rocket.TwoStations(a, b, m(40), m(1), care)
	if err != nil {
		t.Fatal(err)
	}
	sum := 0.0
	for _, c := range [][2]rocket.Sighting{
		{{deg(41), deg(20)}, b}, {{deg(40), deg(21)}, b}, {a, {deg(51), deg(30)}}, {a, {deg(50), deg(31)}},
	} {
		other, err := rocket.TwoStations(c[0], c[1], m(40), m(1), rocket.Care{})
		if err != nil {
			t.Fatal(err)
		}
		d := (other.Value - h.Value).Metres()
		sum += d * d
	}
	near(t, "by the angles", h.ByAngle.Metres(), math.Sqrt(sum), 0.02*math.Sqrt(sum)) // up and down differ a little
	// Where a steep and a low sight meet, an angle too small changes the height more than
	// one too large: h = L / (cot a + cot d) with bearings of 0, both sides tried here.
	cot := func(x float64) float64 { return 1 / math.Tan(x*math.Pi/180) }
	height := func(a, d float64) float64 { return 40 / (cot(a) + cot(d)) }
	worst := func(a, d float64, by func(float64) float64) float64 {
		return math.Max(math.Abs(by(1)-height(a, d)), math.Abs(by(-1)-height(a, d)))
	}
	steep, low := worst(45, 20, func(x float64) float64 { return height(45+x, 20) }), worst(45, 20, func(x float64) float64 { return height(45, 20+x) })
	if up := math.Abs(height(46, 20) - height(45, 20)); up >= steep {
		t.Errorf("the larger angle changes most: %v", up)
	}
	one, err := rocket.TwoStations(rocket.Sighting{Elevation: deg(45)}, rocket.Sighting{Elevation: deg(20)}, m(40), m(1), rocket.Care{Angle: deg(1)})
	if err != nil {
		t.Fatal(err)
	}
	bearing := math.Abs(40/(cot(45)*math.Cos(math.Pi/180)+cot(20)) - height(45, 20))
	other := math.Abs(40/(cot(45)+cot(20)*math.Cos(math.Pi/180)) - height(45, 20))
	near(t, "the side that changes more", one.ByAngle.Metres(), math.Sqrt(steep*steep+low*low+bearing*bearing+other*other), 1e-9)
	for _, c := range [][2]rocket.Sighting{
		{{0, 0}, b}, {{deg(90), 0}, b}, {{deg(40), deg(90)}, b}, {a, {deg(40), deg(-95)}},
	} {
		if _, err := rocket.TwoStations(c[0], c[1], m(40), m(1), care); err == nil {
			t.Errorf("%v: no error", c)
		}
	}
	if _, err := rocket.TwoStations(a, b, 0, m(1), care); err == nil {
		t.Error("no baseline, no error")
	}
}

// A flight's own duration must give back its own height; without air the height
// is g t²/8. 1e-7: the search.
func TestHeightFromTime(t *testing.T) {
	l := rocket.Launch{Speed: 20, Elevation: deg(90), Height: m(0.3)}
	air := rocket.Air{Density: 1.2}
	f := fly(t, paper, l, air)
	h, err := rocket.FromTime(paper, l, air, f.Landing.Time, rocket.Care{Time: sec(0.2)})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "height", h.Value.Metres(), f.Apogee.Up.Metres(), 1e-7)
	if h.ByTime < m(1) || h.ByTime > m(3) { // dh/dt is g t/4 without air, 8 m/s at 3.3 s, and less with it
		t.Errorf("0.2 s are worth %v m", h.ByTime.Metres())
	}
	l.Height = 0
	h, err = rocket.FromTime(paper, l, rocket.Air{}, sec(3), rocket.Care{})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "without air", h.Value.Metres(), rocket.NoAirHeight(sec(3)).Metres(), 1e-7)
	for _, s := range []float64{0, -1, 0.1, 500} {
		if _, err := rocket.FromTime(paper, rocket.Launch{Elevation: deg(90), Height: m(0.3)}, air, sec(s), care); err == nil {
			t.Errorf("a flight of %g s: no error", s)
		}
	}
}

func TestBaselines(t *testing.T) {
	from, to, ok := rocket.Baselines(m(11.4), m(21.4), m(1.4), deg(30), deg(60))
	near(t, "from", from.Metres(), 20/math.Sqrt(3), 1e-9)
	near(t, "to", to.Metres(), 10*math.Sqrt(3), 1e-9)
	if !ok {
		t.Error("no baseline")
	}
	if _, _, ok := rocket.Baselines(m(5), m(30), m(1.4), deg(30), deg(60)); ok {
		t.Error("heights of 5 and 30 m from one baseline")
	}
	if _, _, ok := rocket.Baselines(m(1), m(2), m(1.4), deg(30), deg(60)); ok {
		t.Error("a height below the eye")
	}
}

func TestSpeedsOutOfReach(t *testing.T) {
	air := rocket.Air{Density: 1.2}
	l := rocket.Launch{Elevation: deg(90), Height: m(0.3)}
	for _, h := range []float64{0.3, 0, -2, 1000, math.NaN()} {
		if _, err := rocket.SpeedForHeight(paper, l, air, m(h)); err == nil {
			t.Errorf("height of %g m: no error", h)
		}
	}
	l.Elevation = 0
	if _, err := rocket.SpeedForHeight(paper, l, air, m(5)); err == nil {
		t.Error("a level launch that climbs")
	}
}
