package dial_test

import (
	"fmt"
	"math"
	"testing"
	"time"
	_ "time/tzdata" // the test must not depend on the machine's zones

	"noonbook/compute/dial"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

func school(t *testing.T, latitude, longitude float64, zone string) place.Place {
	t.Helper()
	z, err := time.LoadLocation(zone)
	if err != nil {
		t.Fatal(err)
	}
	return place.Place{Latitude: deg(latitude), Longitude: deg(longitude), Zone: z}
}

func date(t *testing.T, s string) place.Date {
	t.Helper()
	d, err := place.ParseDate(s)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// Four minutes a degree from the zone's meridian, and the saving of the zone's
// law: an hour in Moncton, half an hour on Lord Howe Island, an hour in Dublin's
// summer although Irish law calls that the standard, none in Kathmandu (IANA
// time zone database). Equation of time: about −14 min on 11 February and +16 min
// on 3 November, National Physical Laboratory FAQ, to its half minute.
func TestCorrection(t *testing.T) {
	for _, c := range []struct {
		zone, date        string
		longitude         float64
		fixed, saving, of float64 // minutes
	}{
		{"America/Moncton", "2027-02-11", -64.77, 4 * 4.77, 0, -14.2},
		{"America/Moncton", "2027-11-03", -64.77, 4 * 4.77, 60, 16.4},
		{"Europe/Dublin", "2027-02-11", -6.26, 4 * 6.26, 0, -14.2},
		{"Europe/Dublin", "2027-04-15", -6.26, 4 * 6.26, 60, 0},
		{"Australia/Lord_Howe", "2027-02-11", 159.08, 4 * (157.5 - 159.08), 30, -14.2},
		{"Asia/Kathmandu", "2027-11-03", 85.3, 4 * (86.25 - 85.3), 0, 16.4},
		{"Pacific/Auckland", "2027-02-11", 170.5, 4 * (180 - 170.5), 60, -14.2},
		{"UTC", "2027-04-15", 0, 0, 0, 0},
	} {
		got := dial.CorrectionOn(school(t, 40, c.longitude, c.zone), date(t, c.date))
		name := c.zone + " " + c.date
		near(t, name+": longitude", got.Longitude.Minutes(), c.fixed, 1e-6)
		near(t, name+": saving", got.Saving.Minutes(), c.saving, 0)
		near(t, name+": equation of time", got.Equation.Minutes(), c.of, 0.5)
		near(t, name+": total", got.Total().Minutes(), got.Fixed().Minutes()-got.Equation.Minutes(), 1e-9)
	}
}

// A line of the clock is the line of the Sun's time that much earlier; round
// hours of the clock, none outside the Sun's, midnight passed over.
func TestClockLines(t *testing.T) {
	fixed := 79*time.Minute + 5*time.Second
	lines, err := dial.ClockLines(deg(46.09), 5*time.Hour, 19*time.Hour, time.Hour, fixed)
	if err != nil || len(lines) != 14 {
		t.Fatalf("%d lines, %v", len(lines), err)
	}
	for i, l := range lines {
		if l.Clock != time.Duration(7+i)*time.Hour || l.SunTime != l.Clock-fixed {
			t.Errorf("line %d: clock %v, Sun %v", i, l.Clock, l.SunTime)
		}
		sin, h := math.Sin(46.09*math.Pi/180), (l.Clock-fixed).Hours()*15-180
		want := math.Atan2(sin*math.Sin(h*math.Pi/180), math.Cos(h*math.Pi/180)) * 180 / math.Pi
		near(t, l.Clock.String(), l.Angle.Degrees(), want, 1e-9)
	}
	arctic, err := dial.ClockLines(deg(69.6), 0, 24*time.Hour, time.Hour, -16*time.Minute)
	if err != nil || len(arctic) != 24 || arctic[0].Clock != 0 || arctic[23].Clock != 23*time.Hour {
		t.Errorf("polar day: %d lines, %v", len(arctic), err)
	}
	if _, err := dial.ClockLines(deg(46), 0, time.Hour, time.Hour, 50*time.Hour); err == nil {
		t.Error("a clock more than two days from the Sun was taken")
	}
	if _, err := dial.ClockLines(deg(46), 0, time.Hour, 0, 0); err == nil {
		t.Error("a step of nothing was taken")
	}
}

// The almanac's Sun through a year, by vectors, on the line of its hour angle:
// the tangent formula and the sky agree to the 1e-12 rad of doc.go for a style that
// points to the pole.
func TestAlmanacSunFallsOnHourLines(t *testing.T) {
	worst := 0.0
	for _, p := range []place.Place{school(t, 46.09, -64.77, "UTC"), school(t, -45.87, 170.5, "UTC"), school(t, 69.6, 18.9, "UTC"), school(t, 1.4, 103.8, "UTC")} {
		d := dial.True(p.Latitude)
		for at := time.Date(2027, 1, 1, 0, 0, 0, 0, time.UTC); at.Year() == 2027; at = at.Add(5*24*time.Hour + 70*time.Minute) {
			hour, declination := dial.SunAt(p, at)
			if line, ok := d.Line(dial.SunDirection(p.Latitude, declination, hour)); ok {
				worst = max(worst, math.Abs((line - dial.LineAt(p.Latitude, hour).Angle).Signed().Degrees()))
			}
		}
	}
	t.Logf("worst: %.2g°", worst)
	if worst > 1e-12*180/math.Pi {
		t.Errorf("worst is %.2g°", worst)
	}
}

// Shadows of right and wrong styles on level and tilted plates, from the almanac's
// Sun, against ERFA's Sun and another geometry (testdata/reference). The table
// has the Sun from the Earth's surface, we from its centre: 8.8″ of parallax and
// its rounding are small against the limit of 0.01°, but where the style points
// within 5° of the Sun, which the table leaves out, they would not be.
func TestShadowsAgainstReference(t *testing.T) {
	rows := reference(t, "dial-shadows.csv")
	const limit = 0.01 // as doc.go promises
	worst, stands := 0.0, map[string]int{}
	for _, row := range rows {
		number := func(column int) float64 { return row.number(t, column) }
		at, p := row.at(t)
		hour, declination := dial.SunAt(p, at)
		style := dial.Style{Azimuth: deg(number(5)), Elevation: deg(number(6))}
		tilt := dial.Tilt{Toward: deg(number(7)), By: deg(number(8))}
		bearing, ok := style.Shadow(tilt.Sees(dial.SunDirection(p.Latitude, declination, hour)))
		if !ok {
			t.Fatalf("%v: no shadow", row)
		}
		off := math.Abs((bearing - deg(number(9))).Signed().Degrees())
		if off > limit {
			t.Errorf("%v: got %.4f°", row, bearing.Degrees())
		}
		worst = max(worst, off)
		stands[row[4]]++
	}
	t.Logf("worst of %d: %.4f°, %v", len(rows), worst, stands)
	if len(stands) < 8 || len(rows) < 1000 {
		t.Errorf("the table has only %v", stands)
	}
}

func ExampleClockLines() {
	fixed := 79 * time.Minute // 19 for the longitude, 60 for daylight saving
	lines, _ := dial.ClockLines(quantity.Degrees(46.09), 11*time.Hour, 13*time.Hour, time.Hour, fixed)
	for _, l := range lines {
		fmt.Printf("%v is %v by the Sun, %.1f° from the noon line\n", l.Clock, l.SunTime, l.Angle.Degrees())
	}
	// Output:
	// 13h0m0s is 11h41m0s by the Sun, -3.4° from the noon line
	// 14h0m0s is 12h41m0s by the Sun, 7.4° from the noon line
}
