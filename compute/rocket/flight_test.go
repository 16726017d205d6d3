package rocket_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"noonbook/compute/quantity"
	"noonbook/compute/rocket"
)

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %.12g, want %.12g ± %g", what, got, want, tolerance)
	}
}

func deg(d float64) quantity.Angle   { return quantity.Degrees(d) }
func mm(x float64) quantity.Length   { return quantity.Millimetres(x) }
func m(x float64) quantity.Length    { return quantity.Metres(x) }
func sec(s float64) time.Duration    { return time.Duration(math.Round(s * 1e9)) }
func grams(g float64) rocket.Mass    { return rocket.Grams(g) }
func speed(v float64) rocket.Speed   { return rocket.Speed(v) }
func dense(d float64) rocket.Density { return rocket.Density(d) }

func fly(t *testing.T, r rocket.Rocket, l rocket.Launch, air rocket.Air) rocket.Flight {
	t.Helper()
	f, err := rocket.Fly(r, l, air)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

var paper = rocket.Rocket{Mass: grams(5), Diameter: mm(23), Drag: 0.6}

// OpenStax University Physics 1, example 4.7: 70.0 m/s at 75° with g = 9.80 m/s²
// and no air reaches 233 m after 6.90 s, 125 m along. Standard gravity is 0.07 %
// more, below half of the last digits printed.
func ExampleNoAir() {
	f := rocket.NoAir(rocket.Launch{Speed: 70, Elevation: quantity.Degrees(75)})
	fmt.Printf("%.0f m high after %.2f s, %.0f m along\n", f.Apogee.Up.Metres(), f.Apogee.Time.Seconds(), f.Apogee.Along.Metres())
	// Output: 233 m high after 6.89 s, 125 m along
}

// The book prints 6.90 s with its g of 9.80: 67.6/9.80 = 6.90.
func TestOpenStaxExample(t *testing.T) {
	f := rocket.NoAir(rocket.Launch{Speed: 70, Elevation: deg(75)})
	g := rocket.Gravity / 9.80
	near(t, "height", f.Apogee.Up.Metres()*g, 233, 0.5)
	near(t, "time", f.Apogee.Time.Seconds()*g, 6.90, 0.005)
	near(t, "along", f.Apogee.Along.Metres()*g, 125, 0.5)
}

// The integrator without drag against the closed form: 1e-8 m, its tolerance
// over a dozen steps.
func TestFlightWithoutAirIsNoAir(t *testing.T) {
	for _, c := range []struct{ speed, elevation, height float64 }{
		{20, 45, 0}, {20, 90, 0.3}, {70, 75, 0}, {3, 1, 2}, {0, 90, 1}, {15, 0, 1.5}, {99, 30, 0},
	} {
		l := rocket.Launch{Speed: speed(c.speed), Elevation: deg(c.elevation), Height: m(c.height)}
		got, want := fly(t, paper, l, rocket.Air{}), rocket.NoAir(l)
		name := fmt.Sprint(c)
		near(t, name+" height", got.Apogee.Up.Metres(), want.Apogee.Up.Metres(), 1e-8)
		near(t, name+" time up", got.Apogee.Time.Seconds(), want.Apogee.Time.Seconds(), 1e-8)
		near(t, name+" reach", got.Reach().Metres(), want.Reach().Metres(), 2e-8)
		near(t, name+" time", got.Landing.Time.Seconds(), want.Landing.Time.Seconds(), 1e-8)
		near(t, name+" impact", float64(got.Impact), float64(want.Impact), 1e-8)
	}
}

// Straight up with quadratic drag, in closed form. With c = √(g/k), the speed of
// steady fall: up h = ln(1 + v²/c²)/2k in c/g · atan(v/c), down in
// c/g · arcosh(e^kh), landing at c √(1 − e^(−2kh)).
func TestVerticalFlightInClosedForm(t *testing.T) {
	for _, v := range []float64{1, 5, 20, 40, 95} {
		for _, drag := range []float64{0.1, 0.6, 2} {
			r := rocket.Rocket{Mass: grams(4), Diameter: mm(24), Drag: drag}
			f := fly(t, r, rocket.Launch{Speed: speed(v), Elevation: deg(90)}, rocket.Air{Density: 1.2})
			k := 1.2 * drag * math.Pi * 0.024 * 0.024 / 4 / (2 * 0.004)
			c := math.Sqrt(rocket.Gravity / k)
			h := math.Log1p(v*v/(c*c)) / (2 * k)
			name := fmt.Sprintf("%g m/s, C %g", v, drag)
			near(t, name+" height", f.Apogee.Up.Metres(), h, 1e-7*h)
			near(t, name+" time up", f.Apogee.Time.Seconds(), c/rocket.Gravity*math.Atan(v/c), 1e-7)
			near(t, name+" time", f.Landing.Time.Seconds(), c/rocket.Gravity*(math.Atan(v/c)+math.Acosh(math.Exp(k*h))), 1e-7)
			near(t, name+" impact", float64(f.Impact), c*math.Sqrt(-math.Expm1(-2*k*h)), 1e-7*v)
			near(t, name+" reach", f.Reach().Metres(), 0, 1e-9)
		}
	}
}

// In the frame of the air a steady wind is a launch in still air with another
// velocity, seen from moving ground. 1e-7: both flights are integrated.
func TestWindIsMovingGround(t *testing.T) {
	l := rocket.Launch{Speed: 20, Elevation: deg(60), Height: m(0.3)}
	windy := fly(t, paper, l, rocket.Air{Density: 1.2, Along: 4})
	u, w := 20*math.Cos(deg(60).Radians())-4, 20*math.Sin(deg(60).Radians())
	seen := rocket.Launch{Speed: speed(math.Hypot(u, w)), Elevation: quantity.Atan2(w, u), Height: l.Height}
	still := fly(t, paper, seen, rocket.Air{Density: 1.2})
	near(t, "time", windy.Landing.Time.Seconds(), still.Landing.Time.Seconds(), 1e-7)
	near(t, "height", windy.Apogee.Up.Metres(), still.Apogee.Up.Metres(), 1e-7)
	near(t, "reach", windy.Landing.Along.Metres(), still.Landing.Along.Metres()+4*still.Landing.Time.Seconds(), 1e-6)

	// A wind from the side counts for how far off it lands: Pythagoras.
	beside := fly(t, paper, l, rocket.Air{Density: 1.2, Across: 4})
	along, across := beside.Landing.Along.Metres(), beside.Landing.Across.Metres()
	if math.Abs(across) < 1 {
		t.Errorf("a side wind of 4 m/s drifts it by %v m", across)
	}
	near(t, "reach beside", beside.Reach().Metres(), math.Sqrt(along*along+across*across), 1e-9)
}

func TestPathRunsFromPipeToGround(t *testing.T) {
	f := fly(t, paper, rocket.Launch{Speed: 20, Elevation: deg(70), Height: m(0.4)}, rocket.Air{Density: 1.2, Across: 3})
	first, last := f.Path[0], f.Path[len(f.Path)-1]
	if first.Up != m(0.4) || first.Time != 0 || last != f.Landing || last.Up != 0 || last.Across <= 0 {
		t.Errorf("path from %+v to %+v", first, last)
	}
	highest := quantity.Length(0)
	for i, p := range f.Path {
		highest = max(highest, p.Up)
		if i > 0 && p.Time < f.Path[i-1].Time {
			t.Errorf("point %d is before the one before it", i)
		}
	}
	if highest != f.Apogee.Up || len(f.Path) < 20 {
		t.Errorf("path of %d points rises to %v, want %v", len(f.Path), highest, f.Apogee.Up)
	}
}

// Air of ISO 2533:1975, table 5 (from memory): 1.2250 kg/m³ at sea level, 1.1117
// at 1000 m, 0.9093 at 3000 m, 0.7364 at 5000 m, half of the last digit and 0.1 %
// for geopotential against geometric height. Its temperature is 15 °C at sea level
// and falls by 6.5 °C a kilometre.
func TestStandardAtmosphere(t *testing.T) {
	for h, want := range map[float64]float64{0: 1.2250, 1000: 1.1117, 3000: 0.9093, 5000: 0.7364} {
		air, err := rocket.Still(m(h), 15-0.0065*h)
		if err != nil {
			t.Fatal(err)
		}
		near(t, fmt.Sprintf("%g m", h), float64(air.Density), want, 0.00005+0.001*want*h/5000)
	}
	// 0 °C at 1013.25 hPa: 1.2922 kg/m³, 20 °C: 1.2041, tables of dry air, from memory.
	for celsius, want := range map[float64]float64{0: 1.2922, 20: 1.2041} {
		air, _ := rocket.Still(0, celsius)
		near(t, fmt.Sprintf("%g °C", celsius), float64(air.Density), want, 0.0001)
	}
}

func TestFlightsOutOfRange(t *testing.T) {
	good := rocket.Launch{Speed: 20, Elevation: deg(75)}
	nan := math.NaN()
	for name, c := range map[string]struct {
		r rocket.Rocket
		l rocket.Launch
		a rocket.Air
	}{
		"no mass":        {rocket.Rocket{Mass: 0, Diameter: mm(23)}, good, rocket.Air{}},
		"no width":       {rocket.Rocket{Mass: grams(5)}, good, rocket.Air{}},
		"drag below 0":   {rocket.Rocket{Mass: grams(5), Diameter: mm(23), Drag: -1}, good, rocket.Air{}},
		"a feather":      {rocket.Rocket{Mass: grams(1e-6), Diameter: mm(23), Drag: 1}, good, rocket.Air{Density: 1.2}},
		"no mass at all": {rocket.Rocket{Mass: rocket.Mass(nan), Diameter: mm(23)}, good, rocket.Air{}},
		"too fast":       {paper, rocket.Launch{Speed: 101, Elevation: deg(75)}, rocket.Air{}},
		"no speed":       {paper, rocket.Launch{Speed: speed(nan), Elevation: deg(75)}, rocket.Air{}},
		"backward":       {paper, rocket.Launch{Speed: 20, Elevation: deg(91)}, rocket.Air{}},
		"downward":       {paper, rocket.Launch{Speed: 20, Elevation: deg(-1)}, rocket.Air{}},
		"underground":    {paper, rocket.Launch{Speed: 20, Elevation: deg(75), Height: m(-1)}, rocket.Air{}},
		"hurricane":      {paper, good, rocket.Air{Along: 60}},
		"no wind":        {paper, good, rocket.Air{Across: speed(nan)}},
		"water":          {paper, good, rocket.Air{Density: dense(1000)}},
	} {
		if _, err := rocket.Fly(c.r, c.l, c.a); err == nil {
			t.Errorf("%s: no error", name)
		}
		if _, _, err := rocket.Farthest(c.r, c.l, c.a, 0, c.l.Elevation); err == nil {
			t.Errorf("%s: no error from Farthest", name)
		}
	}
	for _, c := range []struct{ height, celsius float64 }{{-600, 10}, {20000, 10}, {0, 100}, {nan, 10}, {0, nan}} {
		if _, err := rocket.Still(m(c.height), c.celsius); err == nil {
			t.Errorf("air at %g m and %g °C: no error", c.height, c.celsius)
		}
	}
}
