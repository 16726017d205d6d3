package almanac_test

import (
	"math"
	"testing"
	"time"
	_ "time/tzdata" // the test must not depend on the machine's zones

	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

func at(t *testing.T, lat, lon float64, zone string) place.Place {
	t.Helper()
	z, err := time.LoadLocation(zone)
	if err != nil {
		t.Fatal(err)
	}
	return place.Place{Latitude: quantity.Degrees(lat), Longitude: quantity.Degrees(lon), Zone: z}
}

func date(t *testing.T, s string) place.Date {
	t.Helper()
	d, err := place.ParseDate(s)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// rising is the topocentric altitude that belongs to −50′ from the Earth's centre.
const rising = (-50*60 - 8.794) * quantity.Turn / 360 / 3600

// The oracle: the Sun's altitude computed from the whole theory every ten
// minutes of the day must pass the altitude as often as there are events (a
// shorter visit is for the almanac alone to see), and at each event the Sun
// must stand on that altitude to 0.0002°, 0.05 s of its motion.
func TestSunPastAgainstPlainSearch(t *testing.T) {
	for _, p := range []place.Place{
		at(t, 46.09, -64.77, "America/Moncton"),
		at(t, -0.18, -78.47, "America/Guayaquil"),
		at(t, 64.15, -21.94, "Atlantic/Reykjavik"),
		at(t, 65.8, 24.1, "Europe/Helsinki"),
		at(t, 69.65, 18.96, "Europe/Oslo"),
		at(t, -77.85, 166.67, "Antarctica/McMurdo"),
		at(t, 90, 0, "UTC"),
		at(t, -90, 0, "UTC"),
		at(t, -13.83, -171.77, "Pacific/Apia"),
	} {
		d := date(t, "2027-01-01")
		for range 73 {
			for _, altitude := range []quantity.Angle{rising, almanac.CivilTwilight} {
				comparePlain(t, p, d, altitude)
			}
			d = d.Add(5)
		}
	}
}

func comparePlain(t *testing.T, p place.Place, d place.Date, altitude quantity.Angle) {
	t.Helper()
	day := almanac.Sun.Past(p, d, altitude)
	const step = 10 * time.Minute
	var ups, downs int
	above := func(x time.Time) bool { return almanac.SunFrom(p, x).Altitude >= altitude }
	was := above(day.From)
	for x := day.From; x.Before(day.To); x = x.Add(step) {
		end := x.Add(step)
		if end.After(day.To) {
			end = day.To
		}
		if now := above(end); now != was {
			if now {
				ups++
			} else {
				downs++
			}
			was = now
		}
	}
	if len(day.Rises) < ups || len(day.Sets) < downs || len(day.Rises)-ups != len(day.Sets)-downs {
		t.Errorf("%.2f° %s past %.2f°: rises %v sets %v, plainly %d and %d",
			p.Latitude.Degrees(), d, altitude.Degrees(), day.Rises, day.Sets, ups, downs)
	}
	for _, x := range append(day.Rises, day.Sets...) {
		if off := almanac.SunFrom(p, x).Altitude - altitude; math.Abs(off.Degrees()) > 0.0002 {
			t.Errorf("%.2f° %s: %s is %.5f° off", p.Latitude.Degrees(), d, x, off.Degrees())
		}
	}
	if want := state(ups+downs+len(day.Rises), was); day.State != want {
		t.Errorf("%.2f° %s past %.2f°: %s, want %s", p.Latitude.Degrees(), d, altitude.Degrees(), day.State, want)
	}
}

func state(events int, above bool) almanac.State {
	switch {
	case events > 0:
		return almanac.Crosses
	case above:
		return almanac.UpAllDay
	}
	return almanac.DownAllDay
}

func TestDaysOutOfTheOrdinary(t *testing.T) {
	for _, c := range []struct {
		name        string
		p           place.Place
		date        string
		rises, sets int
		state       almanac.State
	}{
		{"23 hours", at(t, 46.09, -64.77, "America/Moncton"), "2027-03-14", 1, 1, almanac.Crosses},
		{"25 hours", at(t, 46.09, -64.77, "America/Moncton"), "2027-11-07", 1, 1, almanac.Crosses},
		{"half hour's change", at(t, -31.5, 159.1, "Australia/Lord_Howe"), "2026-10-04", 1, 1, almanac.Crosses},
		{"quarter hours", at(t, 27.7, 85.3, "Asia/Kathmandu"), "2027-04-20", 1, 1, almanac.Crosses},
		{"skipped", at(t, -13.83, -171.77, "Pacific/Apia"), "2011-12-30", 0, 0, almanac.NoDay},
		{"midnight sun", at(t, 69.65, 18.96, "Europe/Oslo"), "2027-06-21", 0, 0, almanac.UpAllDay},
		{"polar night", at(t, 69.65, 18.96, "Europe/Oslo"), "2027-12-21", 0, 0, almanac.DownAllDay},
		{"north pole in June", at(t, 90, 0, "UTC"), "2027-06-21", 0, 0, almanac.UpAllDay},
		{"south pole in June", at(t, -90, 0, "UTC"), "2027-06-21", 0, 0, almanac.DownAllDay},
	} {
		t.Run(c.name, func(t *testing.T) {
			day := almanac.SunDay(c.p, date(t, c.date))
			if len(day.Rises) != c.rises || len(day.Sets) != c.sets || day.State != c.state {
				t.Errorf("got %v %v %s", day.Rises, day.Sets, day.State)
			}
		})
	}
}

// Sunset runs later each day in a northern spring; where it crosses midnight
// by the clock, one date has two sunsets or, in autumn, none: 65.6° N keeping
// Greenwich time 22° west of it.
func TestTwoSunsetsInADay(t *testing.T) {
	p := at(t, 65.6, -22, "Atlantic/Reykjavik")
	counts := map[int]int{}
	for d := date(t, "2027-01-01"); d.Year == 2027; d = d.Add(1) {
		day := almanac.SunDay(p, d)
		counts[len(day.Sets)]++
		if day.State != almanac.Crosses {
			t.Errorf("%s: %s", d, day.State)
		}
	}
	if counts[2] != 1 || counts[0] != 1 || counts[1] != 363 {
		t.Errorf("days by number of sunsets: %v", counts)
	}
}

// At the pole the Sun rises once a year: some 30 to 33 hours before the March
// equinox (2027-03-20 20:25 UT), when its declination passes −50′, at 59″ an hour.
func TestSunriseAtThePole(t *testing.T) {
	p := at(t, 90, 0, "UTC")
	var rises []time.Time
	for d := date(t, "2027-01-01"); d.Year == 2027; d = d.Add(1) {
		rises = append(rises, almanac.SunDay(p, d).Rises...)
	}
	if len(rises) != 1 {
		t.Fatalf("rises %v", rises)
	}
	want := utc(t, "2027-03-20T20:25:00Z").Add(-50 * time.Hour)
	if d := rises[0].Sub(want); d.Abs() > 2*time.Hour {
		t.Errorf("rises %s, about %s wanted", rises[0], want)
	}
}

// The spans in which a body is up agree with its altitude, whatever the day.
func TestSpans(t *testing.T) {
	for _, p := range []place.Place{
		at(t, 46.09, -64.77, "America/Moncton"),
		at(t, 69.65, 18.96, "Europe/Oslo"),
		at(t, 90, 0, "UTC"),
	} {
		for d := date(t, "2027-01-01"); d.Year == 2027; d = d.Add(3) {
			day := almanac.Moon.Past(p, d, quantity.Degrees(10))
			for x := day.From; x.Before(day.To); x = x.Add(47 * time.Minute) {
				inside := false
				for _, s := range day.Spans() {
					inside = inside || !x.Before(s.From) && x.Before(s.To)
				}
				high := almanac.MoonFrom(p, x).Altitude.Degrees()
				if math.Abs(high-10) > 0.01 && inside != (high > 10) {
					t.Errorf("%s: altitude %.3f° in %v", x, high, day.Spans())
				}
			}
		}
	}
	if spans := almanac.SunDay(at(t, -13.83, -171.77, "Pacific/Apia"), date(t, "2011-12-30")).Spans(); spans != nil {
		t.Errorf("a day that was not has %v", spans)
	}
}

// Nothing that a caller can pass may panic or hang; far dates and coordinates
// that are no places give an answer of some kind.
func TestNothingPanics(t *testing.T) {
	far := []time.Time{{}, time.Unix(1<<62, 0), time.Unix(-1<<62, 0), time.Unix(math.MinInt64, 0), time.Date(9999, 12, 31, 0, 0, 0, 0, time.UTC)}
	odd := []float64{0, 90, -90, 1000, math.NaN(), math.Inf(1), math.Inf(-1)}
	var places []place.Place
	for _, lat := range odd {
		for _, lon := range odd {
			places = append(places, place.Place{Latitude: quantity.Degrees(lat), Longitude: quantity.Degrees(lon)})
		}
	}
	solar, err := almanac.SolarEclipses(2027)
	if err != nil {
		t.Fatal(err)
	}
	lunar, err := almanac.LunarEclipses(2027)
	if err != nil {
		t.Fatal(err)
	}
	for _, x := range far {
		almanac.EquationOfTime(x)
		almanac.SiderealTime(x)
		almanac.DeltaT(x)
		almanac.Phases(x, x.Add(time.Hour))
		almanac.SolarEclipse{Greatest: x}.From(places[0])
		almanac.LunarEclipse{Greatest: x}.From(places[0])
	}
	for b := almanac.Body(-1); b <= almanac.Pluto+1; b++ {
		_ = b.String()
		for _, x := range far {
			b.At(x)
			b.AspectAt(x)
			b.HeliocentricAt(x)
		}
		for _, p := range places {
			b.LimbFrom(p, far[4])
			for _, year := range []int{-1 << 40, -5000, 1, 2027, 9999, 1 << 40} {
				b.Day(p, place.Date{Year: year, Month: 5, Day: 1})
			}
			b.Past(p, place.Date{Year: 2027, Month: 77, Day: -400}, quantity.Degrees(math.NaN()))
		}
	}
	for _, p := range places {
		for _, e := range solar {
			e.From(p)
		}
		for _, e := range lunar {
			e.From(p)
		}
	}
}
