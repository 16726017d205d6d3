package almanac_test

import (
	"math"
	"testing"

	"noonbook/compute/almanac"
)

// Meeus, Astronomical Algorithms, 2nd ed. 1998, example 47.a, 1992 April 12 at
// 0h TD. The book's own series is good to 10″ in longitude and 4″ in latitude.
func TestMoonOfMeeus(t *testing.T) {
	moon := almanac.MoonAt(dynamical(t, "1992-04-12T00:00:00Z"))
	for _, c := range []struct {
		name           string
		got, want, tol float64
	}{
		// 133.162655° of the mean equinox and 16.595″ of nutation, without the
		// 0.7″ of light time that the book's mean longitude already has.
		{"longitude ″", moon.Longitude.ArcSeconds(), 133.162655*3600 + 16.595, 10},
		{"latitude ″", moon.Latitude.ArcSeconds(), -3.229126 * 3600, 4},
		{"right ascension ″", moon.RightAscension.ArcSeconds(), 134.68847 * 3600, 10},
		{"declination ″", moon.Declination.ArcSeconds(), 13.768368 * 3600, 5},
		{"distance km", moon.Distance.Kilometres(), 368409.7, 10},
	} {
		t.Logf("%s: %.4f from the book's", c.name, c.got-c.want)
		if math.Abs(c.got-c.want) > c.tol {
			t.Errorf("%s: got %.4f, want %.4f", c.name, c.got, c.want)
		}
	}
}

// The Moon's day is 50 minutes longer than ours, so that about once a month a
// day goes without a rise, another without a set and a third without a transit,
// and at middle latitudes none has two.
func TestMoonsOwnDays(t *testing.T) {
	p := at(t, 46.09, -64.77, "America/Moncton")
	var rises, sets, noRise, noSet, noTransit int
	for d := date(t, "2027-01-01"); d.Year == 2027; d = d.Add(1) {
		day := almanac.MoonDay(p, d)
		rises += len(day.Rises)
		sets += len(day.Sets)
		for _, c := range []struct {
			n     int
			count *int
		}{{len(day.Rises), &noRise}, {len(day.Sets), &noSet}, {len(day.Transits), &noTransit}} {
			switch c.n {
			case 0:
				*c.count++
			case 1:
			default:
				t.Errorf("%s: %+v", d, day)
			}
		}
	}
	// 365 days hold 365·(1 − 1/29.53) = 352.6 lunar days.
	for _, n := range []int{noRise, noSet, noTransit} {
		if n != 12 && n != 13 {
			t.Errorf("days without an event %d, 12 or 13 expected", n)
		}
	}
}

// A Moon seen from the South Pole is up for about two weeks on end.
func TestMoonAtThePole(t *testing.T) {
	p := at(t, -90, 0, "UTC")
	states := map[almanac.State]int{}
	for d := date(t, "2027-01-01"); d.Year == 2027; d = d.Add(1) {
		day := almanac.MoonDay(p, d)
		states[day.State]++
		middle := day.From.Add(day.To.Sub(day.From) / 2)
		up := almanac.MoonFrom(p, middle).Altitude > 0
		if day.State == almanac.UpAllDay && !up || day.State == almanac.DownAllDay && almanac.MoonFrom(p, middle).Altitude.Degrees() > -0.5 {
			t.Errorf("%s is %s at %v", d, day.State, almanac.MoonFrom(p, middle))
		}
	}
	// 365.25/27.32 = 13.4 rises and as many sets in a year.
	if n := states[almanac.Crosses]; n < 26 || n > 28 {
		t.Errorf("crosses the horizon on %d days", n)
	}
}
