package almanac_test

import (
	"math"
	"testing"
	"time"

	"noonbook/compute/almanac"
)

func utc(t *testing.T, s string) time.Time {
	t.Helper()
	at, err := time.Parse(time.RFC3339, s)
	if err != nil {
		t.Fatal(err)
	}
	return at
}

// dynamical reads an instant of TT (TD), as Meeus's examples are dated.
func dynamical(t *testing.T, s string) time.Time {
	t.Helper()
	tt := utc(t, s)
	return tt.Add(-almanac.DeltaT(tt.Add(-almanac.DeltaT(tt))))
}

func TestDeltaT(t *testing.T) {
	for _, c := range []struct {
		at        string
		want, tol float64
		source    string
	}{
		{"2027-04-20T12:00:00Z", 69.184, 0, "32.184 s + 37 s, IERS Bulletin C"},
		{"2016-12-31T23:59:59Z", 68.184, 0, "the second before the last leap second"},
		{"1972-01-01T00:00:00Z", 42.184, 0, "32.184 s + 10 s"},
		{"1999-06-01T00:00:00Z", 64.184, 0, "32.184 s + 32 s"},
		// Meeus, Astronomical Algorithms, table 10.A, to 0.1 s; 0.3 s for the
		// polynomials.
		{"1950-01-01T00:00:00Z", 29.1, 0.3, "Meeus table 10.A, from memory"},
		{"1960-01-01T00:00:00Z", 33.1, 0.3, "Meeus table 10.A, from memory"},
		{"1970-01-01T00:00:00Z", 40.2, 0.3, "Meeus table 10.A, from memory"},
	} {
		if got := almanac.DeltaT(utc(t, c.at)).Seconds(); math.Abs(got-c.want) > c.tol+1e-9 {
			t.Errorf("%s: ΔT %.3f s, want %.3f s (%s)", c.at, got, c.want, c.source)
		}
	}
}

// Meeus, Astronomical Algorithms, examples 12.a and 12.b: IAU 1982 sidereal
// time; the IAU 2006 expression, with the precession of 2000 and another origin, runs
// 0.0033 s ahead of it in 1987, which is added to the book's seconds.
func TestSiderealTime(t *testing.T) {
	for _, c := range []struct {
		at      string
		mean    bool
		h, m, s float64
	}{
		{"1987-04-10T00:00:00Z", true, 13, 10, 46.3668 + 0.0033},
		{"1987-04-10T19:21:00Z", true, 8, 34, 57.0896 + 0.0033},
		{"1987-04-10T00:00:00Z", false, 13, 10, 46.1351 + 0.0033},
	} {
		got := almanac.SiderealTime(utc(t, c.at))
		if c.mean {
			got = almanac.MeanSiderealTime(utc(t, c.at))
		}
		want := c.h*3600 + c.m*60 + c.s
		if d := got.Hours()*3600 - want; math.Abs(d) > siderealTimeLimit {
			t.Errorf("%s mean %v: off by %.4f s", c.at, c.mean, d)
		}
	}
}
