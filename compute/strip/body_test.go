package strip_test

import (
	"math"
	"testing"
	"time"

	"noonbook/compute/quantity"
	"noonbook/compute/strip"
)

// near fails unless got is within tolerance of want.
func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %.10g, want %.10g ± %g", what, got, want, tolerance)
	}
}

// body returns one of the Bodies.
func body(t *testing.T, name string) strip.Body {
	t.Helper()
	for _, b := range strip.Bodies() {
		if b.Name == name {
			return b
		}
	}
	t.Fatalf("no body %q", name)
	return strip.Body{}
}

// Semi-major axes in au: the table of Astronomy Notes. Half of its last digit,
// and 0.01 %: its Uranus and Neptune are from an earlier fit of Standish's
// (19.1913 and 30.0690 where table 1 has 19.1892 and 30.0699).
func TestOrbitsAgainstPublishedTable(t *testing.T) {
	for name, want := range map[string]float64{
		"mercury": 0.387, "venus": 0.723, "earth": 1.000, "mars": 1.524, "jupiter": 5.203,
		"saturn": 9.537, "uranus": 19.191, "neptune": 30.069, "pluto": 39.482,
	} {
		near(t, name, body(t, name).AU(), want, 0.0005+1e-4*want)
	}
}

// Semi-major axes in au of the orbits that the planets follow at J2000, from
// their heliocentric position and velocity by ERFA 2.0.0 (routine plan94, after
// Simon et al. 1994; axis 1/(2/r − v²/k²) with Gauss's k). The pull of the other
// planets swings these by up to 0.3 % for the giants about the mean that Standish
// fitted, and by less than 0.01 % for the inner four.
func TestOrbitsAgainstERFA(t *testing.T) {
	for name, c := range map[string]struct{ want, tolerance float64 }{
		"mercury": {0.387097, 1e-4}, "venus": {0.723316, 1e-4}, "earth": {1.000001, 1e-4}, "mars": {1.523765, 1e-4},
		"jupiter": {5.206443, 3e-3}, "saturn": {9.561004, 3e-3}, "uranus": {19.224811, 3e-3}, "neptune": {30.054891, 3e-3},
	} {
		near(t, name, body(t, name).AU(), c.want, c.tolerance*c.want)
	}
}

// Kepler's third law: periods in years from the axes, sidereal periods from
// memory. 0.2 % of the axis is 0.3 % of the period.
func TestThirdLaw(t *testing.T) {
	for name, years := range map[string]float64{
		"mercury": 0.2408, "venus": 0.6152, "earth": 1.0000, "mars": 1.8808, "ceres": 4.60,
		"jupiter": 11.862, "saturn": 29.457, "uranus": 84.01, "neptune": 164.8, "pluto": 247.9,
	} {
		near(t, name, math.Pow(body(t, name).AU(), 1.5), years, 0.003*years)
	}
}

// Mean diameters are those of the sphere with the body's volume: from the radii
// across the equator and through the poles, in km, of the IAU working group on
// cartographic coordinates 2015 (Archinal et al. 2018, tables 4 and 5), from
// memory; Ceres after Park et al. 2016. 1 km: both sides are rounded to about that.
func TestDiametersHoldTheVolume(t *testing.T) {
	for name, r := range map[string]struct{ equator, pole float64 }{
		"sun": {695700, 695700}, "mercury": {2440.5, 2438.3}, "venus": {6051.8, 6051.8}, "earth": {6378.14, 6356.75},
		"mars": {3396.19, 3376.20}, "ceres": {482.05, 445.9}, "jupiter": {71492, 66854}, "saturn": {60268, 54364},
		"uranus": {25559, 24973}, "neptune": {24764, 24341}, "pluto": {1188.3, 1188.3},
	} {
		near(t, name, body(t, name).Diameter.Kilometres(), 2*math.Cbrt(r.equator*r.equator*r.pole), 1)
	}
}

// The series as usually given, 0.4 to 77.2 au, the terms in order and none
// skipped. It comes within 6 % up to Uranus (Mars and Saturn are the worst, 5 %)
// and fails at Neptune and Pluto.
func TestTitiusBode(t *testing.T) {
	series := []float64{0.4, 0.7, 1.0, 1.6, 2.8, 5.2, 10.0, 19.6, 38.8, 77.2}
	for i, b := range strip.Bodies()[1:] {
		rule, ok := b.Bode()
		if !ok {
			t.Fatalf("%s has no term", b.Name)
		}
		near(t, b.Name, float64(rule/quantity.AstronomicalUnit), series[i], 1e-12)
		percent, _ := b.BodeExcess()
		near(t, b.Name+" excess", percent, 100*(series[i]-b.AU())/b.AU(), 1e-9)
		switch works := math.Abs(percent) < 6; b.Name {
		case "neptune":
			near(t, "neptune excess", percent, 29, 0.5) // 38.8/30.07
		case "pluto":
			near(t, "pluto excess", percent, 96, 0.5) // 77.2/39.48
		default:
			if !works {
				t.Errorf("%s: the rule is off by %.1f %%", b.Name, percent)
			}
		}
	}
	sun := body(t, "sun")
	if _, ok := sun.Bode(); ok {
		t.Error("the Sun has a term")
	}
	if _, ok := sun.BodeExcess(); ok {
		t.Error("the Sun has an excess")
	}
}

func TestBodiesAreInOrderAndTheCallersOwn(t *testing.T) {
	bodies := strip.Bodies()
	for i := 1; i < len(bodies); i++ {
		if bodies[i].Orbit <= bodies[i-1].Orbit {
			t.Errorf("%s comes after %s", bodies[i].Name, bodies[i-1].Name)
		}
	}
	bodies[3].Orbit = 0
	if strip.Bodies()[3].Orbit == 0 {
		t.Error("a caller changed the bodies of everyone")
	}
}

// Light takes 499.0 s for an astronomical unit (from memory), so 8 min 19 s to
// Earth; 4 h 10 min to Neptune is 30.07 times that.
func TestLightTime(t *testing.T) {
	near(t, "an au", strip.LightTime(quantity.AstronomicalUnit).Seconds(), 499.0, 0.05)
	if got := strip.LightTime(body(t, "neptune").Orbit).Round(time.Minute); got != 4*time.Hour+10*time.Minute {
		t.Errorf("to Neptune %v", got)
	}
	if got := strip.LightTime(0); got != 0 {
		t.Errorf("to the Sun %v", got)
	}
}
