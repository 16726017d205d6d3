package almanac_test

import (
	"errors"
	"fmt"
	"math"
	"testing"
	"time"

	"noonbook/compute/almanac"
)

// Meeus, Astronomical Algorithms, 2nd ed. 1998, examples 49.a and 49.b; the
// method there is a fit, good to 17 s at most (the book's words).
func TestPhasesOfMeeus(t *testing.T) {
	for _, c := range []struct {
		phase almanac.Phase
		want  string // TD
	}{
		{almanac.NewMoon, "1977-02-18T03:37:42Z"},
		{almanac.LastQuarter, "2044-01-21T23:48:17Z"},
	} {
		want := dynamical(t, c.want)
		list, err := almanac.Phases(want.AddDate(0, 0, -3), want.AddDate(0, 0, 3))
		if err != nil || len(list) != 1 || list[0].Phase != c.phase {
			t.Fatalf("%v %v", list, err)
		}
		if d := list[0].At.Sub(want).Seconds(); math.Abs(d) > 17 {
			t.Errorf("%s: %.1f s off", c.phase, d)
		}
	}
}

// April 2027 on the clock of the demo school, by the Swiss Ephemeris: its moments in
// testdata/reference/phases.csv less 69.184 s and three hours.
func TestPhasesOfApril2027(t *testing.T) {
	p := at(t, 46.09, -64.77, "America/Moncton")
	from, _ := p.Day(date(t, "2027-04-01"))
	to, _ := p.Day(date(t, "2027-05-01"))
	list, err := almanac.Phases(from, to)
	if err != nil {
		t.Fatal(err)
	}
	want := []string{
		"new Moon 2027-04-06T20:51:08-03:00",
		"first quarter 2027-04-13T19:56:39-03:00",
		"full Moon 2027-04-20T19:27:11-03:00",
		"last quarter 2027-04-28T17:17:52-03:00",
	}
	if len(list) != len(want) {
		t.Fatalf("%v", list)
	}
	for i, w := range want {
		name := list[i].Phase.String()
		if d := list[i].At.Sub(utc(t, w[len(name)+1:])).Seconds(); w[:len(name)] != name || math.Abs(d) > phasesLimit {
			t.Errorf("%s %s, want %s", name, list[i].At.In(p.Zone).Format(time.RFC3339), w)
		}
	}
}

// At each phase the difference of apparent longitudes is a multiple of 90°, the
// phases follow one another, and none is missed in 151 years: 1867.6 lunations
// of 29.530589 days (Meeus, chapter 49).
func TestPhasesAreWhole(t *testing.T) {
	from, to := utc(t, "1950-01-01T00:00:00Z"), utc(t, "2101-01-01T00:00:00Z")
	list, err := almanac.Phases(from, to)
	if err != nil {
		t.Fatal(err)
	}
	if want := to.Sub(from).Hours() / 24 / 29.530589 * 4; math.Abs(float64(len(list))-want) > 2 {
		t.Errorf("%d phases, %.1f expected", len(list), want)
	}
	for i, e := range list {
		if i > 0 && e.Phase != (list[i-1].Phase+1)%4 {
			t.Fatalf("%s after %s at %s", e.Phase, list[i-1].Phase, e.At)
		}
		ahead := (almanac.MoonAt(e.At).Longitude - almanac.SunAt(e.At).Longitude).Bearing()
		// The times are to the microsecond; 0.01″ is 0.02 s.
		if off := math.Remainder(ahead.ArcSeconds()-float64(e.Phase)*90*3600, 360*3600); math.Abs(off) > 0.01 {
			t.Fatalf("%s at %s: %.4f″ off", e.Phase, e.At, off)
		}
	}
}

func TestRangeErrors(t *testing.T) {
	var outside *almanac.RangeError
	_, err := almanac.Phases(utc(t, "1949-12-30T00:00:00Z"), utc(t, "1950-03-01T00:00:00Z"))
	if !errors.As(err, &outside) || outside.Year != 1949 {
		t.Errorf("phases: %v", err)
	}
	auckland := at(t, -45.87, 170.5, "Pacific/Auckland")
	from, to := auckland.Clock(date(t, "1950-01-01"), 0, 0), auckland.Clock(date(t, "1950-02-01"), 0, 0)
	if list, err := almanac.Phases(from, to); err != nil || len(list) < 4 {
		t.Errorf("the first month of the range in New Zealand: %v %v", list, err)
	}
	if _, err := almanac.Seasons(2101); !errors.As(err, &outside) || outside.Year != 2101 {
		t.Errorf("seasons: %v", err)
	}
	if _, err := almanac.SolarEclipses(1900); !errors.As(err, &outside) {
		t.Errorf("solar eclipses: %v", err)
	}
	if _, err := almanac.LunarEclipses(-1 << 40); !errors.As(err, &outside) {
		t.Errorf("lunar eclipses: %v", err)
	}
	if list, err := almanac.Phases(utc(t, "2027-02-01T00:00:00Z"), utc(t, "2027-01-01T00:00:00Z")); err != nil || list != nil {
		t.Errorf("backwards: %v %v", list, err)
	}
}

func ExampleRangeError() {
	_, err := almanac.Seasons(1800)
	fmt.Println(err)
	// Output: the year 1800 is outside 1950 to 2100
}
