package dial_test

import (
	"errors"
	"fmt"
	"math"
	"testing"
	"time"

	"noonbook/compute/almanac"
	"noonbook/compute/dial"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// Lines of a style 20 mm high: 20 × tan 15° = 5.4 mm for one o'clock, 74.6 mm for
// five.
func ExamplePolarDistance() {
	for hour := 1.0; hour <= 5; hour++ {
		line, _ := dial.PolarDistance(quantity.Millimetres(20), quantity.Hours(hour))
		fmt.Printf("%.1f ", line.Millimetres())
	}
	// Output: 5.4 11.5 20.0 34.6 74.6
}

// Tangents in surds: tan 15° = 2 − √3, tan 30° = 1/√3, tan 45° = 1, tan 60° = √3,
// tan 75° = 2 + √3. Morning carries a minus, and six o'clock has no line.
func TestPolarDistances(t *testing.T) {
	for hour, tangent := range map[float64]float64{0: 0, 1: 2 - math.Sqrt(3), 2: 1 / math.Sqrt(3), 3: 1, 4: math.Sqrt(3), 5: 2 + math.Sqrt(3)} {
		for _, side := range []float64{1, -1} {
			line, ok := dial.PolarDistance(quantity.Millimetres(24), quantity.Hours(side*hour))
			if !ok {
				t.Fatalf("no line %v hours from noon", side*hour)
			}
			near(t, fmt.Sprint(side*hour, " hours"), line.Millimetres(), side*24*tangent, 1e-9)
			near(t, fmt.Sprint(side*hour, " hours, back"), dial.PolarHourAngle(quantity.Millimetres(24), line).Degrees(), side*hour*15, 1e-9)
		}
	}
	for _, hour := range []float64{6, -6, 7, 12} {
		if line, ok := dial.PolarDistance(quantity.Millimetres(24), quantity.Hours(hour)); ok {
			t.Errorf("%v hours from noon the line is at %v mm", hour, line.Millimetres())
		}
	}
}

// What the plate's width decides: 20 mm × tan 75° = 74.64 mm. Reach shows no line
// after 17:15, however wide the plate is.
func TestPolarHours(t *testing.T) {
	for reach, want := range map[float64]float64{20: 3, 34.642: 4.00001, 74.65: 5, 1e6: 5.25, 0: 0, -3: 0} {
		from, to := dial.PolarHours(quantity.Millimetres(20), quantity.Millimetres(reach))
		near(t, fmt.Sprint(reach, " mm"), to.Hours()-12, want, 0.001)
		near(t, fmt.Sprint(reach, " mm, before noon"), 12-from.Hours(), want, 0.001)
	}
}

// A plate that is out of place, by its own three directions in east, north and up.
type polarPlate struct{ across, along, square [3]float64 }

// plateAt slopes with its north edge up by the slope and is then turned clockwise.
func plateAt(slope, turn float64) polarPlate {
	s, c := math.Sincos(slope * math.Pi / 180)
	e, n := math.Sincos(turn * math.Pi / 180)
	return polarPlate{
		across: [3]float64{n, -e, 0},
		along:  [3]float64{c * e, c * n, s},
		square: [3]float64{-s * e, -s * n, c},
	}
}

// shadow is where the ray through a point of the style, one above the plate's
// middle, meets the plate: across, to the east positive. ok is false where the Sun is
// behind it.
func (p polarPlate) shadow(azimuth, altitude float64) (across float64, ok bool) {
	a, h := azimuth*math.Pi/180, altitude*math.Pi/180
	sun := [3]float64{math.Cos(h) * math.Sin(a), math.Cos(h) * math.Cos(a), math.Sin(h)}
	dot := func(v [3]float64) float64 { return sun[0]*v[0] + sun[1]*v[1] + sun[2]*v[2] }
	return -dot(p.across) / dot(p.square), dot(p.square) > 0.02 && h > 0
}

// The shadow of the style under the almanac's Sun falls on the line of the hour, in
// both hemispheres and on the equator, at equinoxes and solstices, and the dial shows
// that hour. The Sun's parallax is 0.0024°, so 0.005° is twice that.
func TestPolarShadowFallsOnItsLine(t *testing.T) {
	shadows := 0
	for _, latitude := range []float64{13.5, 1.4, 0, -0.2, -12.4, 46.09, -45.87} {
		p := place.Place{Latitude: deg(latitude), Longitude: deg(20), Zone: time.UTC}
		for _, day := range []time.Time{
			time.Date(2027, 3, 20, 0, 0, 0, 0, time.UTC), time.Date(2027, 6, 21, 0, 0, 0, 0, time.UTC),
			time.Date(2027, 9, 23, 0, 0, 0, 0, time.UTC), time.Date(2027, 12, 22, 0, 0, 0, 0, time.UTC),
		} {
			for minutes := 0; minutes < 24*60; minutes += 40 {
				at := day.Add(time.Duration(minutes) * time.Minute)
				sun := almanac.SunFrom(p, at)
				across, lit := plateAt(latitude, 0).shadow(sun.Azimuth.Degrees(), sun.Altitude.Degrees())
				hour, _ := dial.SunAt(p, at)
				if !lit || math.Abs(hour.Degrees()) > 85 {
					continue
				}
				shadows++
				name := fmt.Sprintf("%g° at %v", latitude, at)
				near(t, name, math.Atan(across)*180/math.Pi, hour.Degrees(), 0.005)
				line, ok := dial.PolarDistance(quantity.Metres(1), hour)
				if !ok || math.Abs(line.Metres()-across) > 0.0001*(1+across*across) || line.Metres()*hour.Degrees() < 0 {
					t.Errorf("%s: the shadow is at %v, the line at %v", name, across, line.Metres())
				}
				shown, ok := dial.PolarAt(deg(latitude)).Shown(sun.Azimuth, sun.Altitude)
				if !ok {
					t.Errorf("%s: no shadow", name)
				}
				near(t, name+": shown", shown.Degrees(), hour.Degrees(), 0.005)
			}
		}
	}
	if shadows < 350 {
		t.Errorf("only %d shadows fell", shadows)
	}
}

// erfa's Sun (testdata/reference/shadow-bearings.csv), from the two schools near the
// equator: its shadow's bearing is the Sun's and half a turn. Altitudes are printed to
// 0.001°.
func TestPolarDialUnderAnotherSun(t *testing.T) {
	compared := 0
	for _, row := range reference(t, "shadow-bearings.csv") {
		if row[0] != "equator-south" && row[0] != "equator-north" {
			continue
		}
		at, p := row.at(t)
		across, lit := plateAt(p.Latitude.Degrees(), 0).shadow(row.number(t, 5)+180, row.number(t, 4))
		hour, _ := dial.SunAt(p, at)
		if !lit || math.Abs(hour.Degrees()) > 80 {
			continue
		}
		compared++
		near(t, row[0]+" "+row[3], math.Atan(across)*180/math.Pi, hour.Degrees(), 0.01)
	}
	if compared < 100 {
		t.Errorf("only %d shadows were compared", compared)
	}
}

// A plate that is turned, too steep or leaning shows what its own vectors say;
// steeper raises the edge toward the pole that is up, on the equator the north one.
func TestPolarDialOutOfPlace(t *testing.T) {
	for _, latitude := range []float64{12, 0, -8} {
		north := 1.0
		if latitude < 0 {
			north = -1
		}
		for _, c := range []struct{ steep, turn float64 }{{0, 0}, {4, 0}, {-3, 0}, {0, 16}, {0, -7}, {5, 25}} {
			d := dial.PolarAt(deg(latitude)).Steeper(deg(c.steep))
			d.Turn = deg(c.turn)
			for _, declination := range []float64{-23.44, 0, 11.5} {
				for hour := -75.0; hour <= 75; hour += 15 {
					azimuth, altitude := dial.SunDirection(deg(latitude), deg(declination), deg(hour))
					across, lit := plateAt(latitude+north*c.steep, c.turn).shadow(azimuth.Degrees(), altitude.Degrees())
					shown, ok := d.Shown(azimuth, altitude)
					if !lit {
						continue
					}
					name := fmt.Sprintf("%v at %g°, declination %g°, %g°", c, latitude, declination, hour)
					if !ok {
						t.Fatal(name, "no shadow")
					}
					near(t, name, shown.Degrees(), math.Atan(across)*180/math.Pi, 1e-9)
					fast, ok := d.Off(deg(latitude), deg(declination), deg(hour))
					near(t, name+": minutes fast", fast.Minutes(), 4*(math.Atan(across)*180/math.Pi-hour), 1e-6)
					if !ok {
						t.Error(name, "no reading")
					}
				}
			}
		}
		// With the ground's east side low by a small angle a dial meets the Sun sooner: its
		// noon comes when the Sun is still in the east, so at noon it is fast, by 4 min ×
		// cos φ a degree.
		leaning := dial.PolarAt(deg(latitude))
		leaning.Lean = dial.Tilt{Toward: deg(90), By: deg(1)}
		fast, _ := leaning.Off(deg(latitude), 0, 0)
		near(t, "leaning", fast.Minutes(), 4*math.Cos(latitude*math.Pi/180), 0.01)
	}
	if _, ok := dial.PolarAt(deg(5)).Shown(deg(90), deg(-3)); ok {
		t.Error("a Sun that is down casts a shadow")
	}
}

// Marks of plates that are out of place, by the test's own vectors and to 0.1 mm on a
// style 20 mm high, tell what is wrong; those of an equinox on the equator do not.
func TestFitPolarMarks(t *testing.T) {
	marks := func(latitude, declination, slope, turn float64) []dial.Mark {
		var list []dial.Mark
		for hour := -67.5; hour <= 67.5; hour += 15 {
			azimuth, altitude := dial.SunDirection(deg(latitude), deg(declination), deg(hour))
			across, lit := plateAt(slope, turn).shadow(azimuth.Degrees(), altitude.Degrees())
			if lit {
				at := math.Round(across*200) / 10
				list = append(list, dial.Mark{Line: dial.PolarHourAngle(quantity.Millimetres(20), quantity.Millimetres(at)), HourAngle: deg(hour), Declination: deg(declination)})
			}
		}
		return list
	}
	all := dial.Unknown{Turn: true, Gnomon: true, Watch: true, WatchWithin: time.Minute}
	for _, c := range []struct{ latitude, declination, steep, turn float64 }{
		{13.5, -20, 0, 0}, {13.5, -20, 5, 0}, {13.5, 20, 0, -12}, {-12.4, 20, 4, 9}, {0, 22, 0, 15}, {0, -22, 6, 0},
	} {
		slope := c.latitude + c.steep
		if c.latitude < 0 {
			slope = c.latitude - c.steep
		}
		fit, err := dial.FitPolarMarks(deg(c.latitude), marks(c.latitude, c.declination, slope, c.turn), all)
		if err != nil {
			t.Fatalf("%v: %v", c, err)
		}
		near(t, fmt.Sprint(c, ": turn"), fit.Turn.Degrees(), c.turn, max(fit.TurnMargin.Degrees(), 0.5))
		near(t, fmt.Sprint(c, ": steep"), fit.Gnomon.Degrees(), c.steep, max(fit.GnomonMargin.Degrees(), 0.5))
		if fit.TurnMargin > deg(6) || fit.GnomonMargin > deg(6) {
			t.Errorf("%v: margins of %.1f° and %.1f°", c, fit.TurnMargin.Degrees(), fit.GnomonMargin.Degrees())
		}
	}
	var undecided *dial.Undecided
	fit, err := dial.FitPolarMarks(0, marks(0, 0, 0, 0), dial.Unknown{Turn: true, Gnomon: true})
	if !errors.As(err, &undecided) && fit.TurnMargin < deg(5) {
		t.Errorf("at an equinox on the equator the turn is known to ± %.1f°: %v", fit.TurnMargin.Degrees(), err)
	}
	var few *dial.TooFew
	if _, err := dial.FitPolarMarks(0, nil, all); !errors.As(err, &few) {
		t.Error(err)
	}
}

// The shadow after the Sun has got ahead lies further east: 20 × (tan 48.75° − tan 45°)
// = 2.81 mm for a quarter of an hour at the mark of three.
func TestPolarMoved(t *testing.T) {
	d := dial.Drift{Equation: 15 * time.Minute}
	moved, ok := d.PolarMoved(quantity.Millimetres(20), quantity.Hours(3))
	near(t, "three o'clock", moved.Millimetres(), 2.81, 0.005)
	moved, okNoon := d.PolarMoved(quantity.Millimetres(20), 0)
	near(t, "noon", moved.Millimetres(), 20*math.Tan(3.75*math.Pi/180), 1e-9)
	if _, six := d.PolarMoved(quantity.Millimetres(20), quantity.Hours(5.9)); !ok || !okNoon || six {
		t.Error("a shadow past six", ok, okNoon, six)
	}
}

func TestFaceFor(t *testing.T) {
	for latitude, want := range map[float64]dial.Face{0: dial.Polar, 14.9: dial.Polar, -14.9: dial.Polar, 15.1: dial.Level, -15.1: dial.Level, 90: dial.Level} {
		if got := dial.FaceFor(deg(latitude)); got != want {
			t.Errorf("%g°: face %d, want %d", latitude, got, want)
		}
	}
}
