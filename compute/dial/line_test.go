package dial_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"noonbook/compute/dial"
	"noonbook/compute/quantity"
)

var deg = quantity.Degrees

// near fails unless got is within tolerance of want.
func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %.10g, want %.10g ± %g", what, got, want, tolerance)
	}
}

func hourLines(t *testing.T, latitude float64, from, to, step time.Duration) []dial.HourLine {
	t.Helper()
	lines, err := dial.HourLines(deg(latitude), from, to, step)
	if err != nil {
		t.Fatal(err)
	}
	return lines
}

// A published worked dial for 54.8° N, one to six hours after noon.
func ExampleHourLines() {
	lines, err := dial.HourLines(quantity.Degrees(54.8), 13*time.Hour, 18*time.Hour, time.Hour)
	if err != nil {
		fmt.Println(err)
	}
	for _, l := range lines {
		fmt.Printf("%2.0f h %5.2f°\n", l.SunTime.Hours(), l.Angle.Degrees())
	}
	// Output:
	// 13 h 12.35°
	// 14 h 25.26°
	// 15 h 39.25°
	// 16 h 54.76°
	// 17 h 71.85°
	// 18 h 90.00°
}

// Three hours from noon at 35°: 29°50′ (Waugh, Sundials, second-hand); the
// tolerance is half of the last digit.
func TestWaughThreeHours(t *testing.T) {
	got := dial.LineAt(deg(35), deg(45)).Angle.Degrees()
	near(t, "35°, 3 h", got, 29+50.0/60, 0.5/60)
}

// Chords between the noon line and the hours on a circle 10 inches across: The
// Boy Mechanic vol. 1, 1913, "How to Lay Out a Sundial", table 2. Tolerance
// 0.01 in: the table's last digit is not always rounded to the nearest. Its row
// "20°" is for 25°, and at 50° its 2:30 and 5:30 are misprinted; the formula
// gives 2.63 and 6.44, as the rows around them ask.
func TestBoyMechanicChords(t *testing.T) {
	for _, row := range []struct {
		latitude float64
		chords   [5]float64
	}{
		{40, [5]float64{0.85, 1.77, 2.82, 4.07, 5.55}},
		{60, [5]float64{1.14, 2.30, 3.49, 4.72, 5.93}},
	} {
		for i, want := range row.chords {
			x := dial.LineAt(deg(row.latitude), deg(15*float64(i+1))).Angle
			near(t, fmt.Sprintf("%g°, %d h", row.latitude, i+1), 10*(x/2).Sin(), want, 0.01)
		}
	}
	for hours, want := range map[float64]float64{2.5: 2.63, 5.5: 6.44} {
		x := dial.LineAt(deg(50), deg(15*hours)).Angle
		near(t, fmt.Sprintf("50°, %g h", hours), 10*(x/2).Sin(), want, 0.005)
	}
}

// The standard formula tan X = sin φ · tan h, freed of its poles, with X and h
// on the same side of noon and of the six o'clock line. 1e-12: a few roundings
// of numbers near one.
func TestFormulaInEveryQuadrant(t *testing.T) {
	for _, latitude := range []float64{90, 69.6, 46.09, 23.44, 1.4, 0.2, -0.2, -45.87, -90} {
		for _, l := range hourLines(t, latitude, 0, 24*time.Hour, 10*time.Minute) {
			s := math.Abs(deg(latitude).Sin())
			x, h := l.Angle, l.HourAngle
			near(t, fmt.Sprintf("%g° at %v", latitude, l.SunTime), x.Sin()*h.Cos(), s*h.Sin()*x.Cos(), 1e-12)
			if x.Sin()*h.Sin() < -1e-12 || x.Cos()*h.Cos() < -1e-12 {
				t.Errorf("%g° at %v: line %g° is in another quadrant than %g°", latitude, l.SunTime, x.Degrees(), h.Degrees())
			}
			back, ok := dial.HourAngleOf(deg(latitude), x)
			if !ok {
				t.Fatalf("%g°: no hour angle", latitude)
			}
			near(t, "back to the hour", (back - h).Signed().Degrees(), 0, 1e-9) // lines crowd 300 to 1 at 0.2°
		}
	}
}

// Six o'clock lines run due east and west, the noon line north (south below the
// equator), hours clockwise (anticlockwise): common practice, no source.
func TestBearings(t *testing.T) {
	for _, c := range []struct {
		name     string
		latitude float64
		sunTime  time.Duration
		angle    float64
		bearing  float64
	}{
		{"north, noon", 46.09, 12 * time.Hour, 0, 0},
		{"north, morning six", 46.09, 6 * time.Hour, -90, 270},
		{"north, evening six", 46.09, 18 * time.Hour, 90, 90},
		{"north, midnight", 69.6, 24 * time.Hour, 180, 180},
		{"south, noon", -45.87, 12 * time.Hour, 0, 180},
		{"south, morning six", -45.87, 6 * time.Hour, -90, 270},
		{"south, evening six", -45.87, 18 * time.Hour, 90, 90},
		{"south, midnight", -69.6, 0, -180, 0},
		{"north pole, three", 90, 15 * time.Hour, 45, 45},
		{"north pole, five in the morning", 90, 5 * time.Hour, -105, 255},
		{"south pole, three", -90, 15 * time.Hour, 45, 135},
		{"equator, three", 0, 15 * time.Hour, 0, 0},
		{"equator, seven in the evening", 0, 19 * time.Hour, 180, 180},
	} {
		t.Run(c.name, func(t *testing.T) {
			l := hourLines(t, c.latitude, c.sunTime, c.sunTime, time.Hour)[0]
			near(t, "angle", l.Angle.Degrees(), c.angle, 1e-9)
			near(t, "bearing", (l.Bearing - deg(c.bearing)).Signed().Degrees(), 0, 1e-9)
			if l.Bearing < 0 || l.Bearing >= quantity.Turn {
				t.Errorf("bearing %g° is outside 0° to 360°", l.Bearing.Degrees())
			}
		})
	}
	before5 := dial.LineAt(deg(46.09), deg(-105)) // five in the morning
	if before5.Angle > deg(-90) || before5.Bearing > deg(270) {
		t.Errorf("five in the morning lies at %g°, bearing %g°, not behind the six o'clock line",
			before5.Angle.Degrees(), before5.Bearing.Degrees())
	}
}

func TestLinesStandAtWholeSteps(t *testing.T) {
	lines := hourLines(t, 46.09, 4*time.Hour+13*time.Minute, 19*time.Hour+47*time.Minute, 30*time.Minute)
	first, last := lines[0], lines[len(lines)-1]
	if first.SunTime != 4*time.Hour+30*time.Minute || last.SunTime != 19*time.Hour+30*time.Minute || len(lines) != 31 {
		t.Errorf("%d lines from %v to %v", len(lines), first.SunTime, last.SunTime)
	}
	if got := dial.LineAt(deg(46.09), first.HourAngle).SunTime; got != first.SunTime {
		t.Errorf("its hour angle is that of %v", got)
	}
}

func TestHourLinesRefuses(t *testing.T) {
	for _, c := range []struct {
		name           string
		latitude       float64
		from, to, step time.Duration
		want           string
	}{
		{"latitude", 95, 0, 1, time.Hour, "latitude 95°"},
		{"no latitude", math.NaN(), 0, 1, time.Hour, "latitude NaN°"},
		{"backward", 45, 2, 1, time.Hour, "sun times"},
		{"before midnight", 45, -1, 1, time.Hour, "sun times"},
		{"past midnight", 45, 0, 25 * time.Hour, time.Hour, "sun times"},
		{"step", 45, 0, time.Hour, 0, "step"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := dial.HourLines(deg(c.latitude), c.from, c.to, c.step)
			if err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("got %v, want it to speak of %q", err, c.want)
			}
		})
	}
}
