package sky_test

import (
	"slices"
	"strings"
	"testing"

	"noonbook/build/placeholder/class"

	"noonbook/build/placeholder/entrytest"
)

// A shower is looked for at its best hour nearest to the peak: half a day and a few
// minutes away at most, wherever the peak falls by the clock. Moments at which the
// Sun's longitude for J2000 is that of the International Meteor Organization's list (as
// in the code, from memory): pyephem 4.1.4, to the minute.
func TestShowersAreNearTheirPeaks(t *testing.T) {
	peaks := map[string]string{
		"Quadrantids": "2027-01-04T03:25:00Z", "Lyrids": "2027-04-23T01:41:00Z", "Eta Aquariids": "2027-05-06T15:11:00Z",
		"Southern Delta Aquariids": "2027-07-31T19:37:00Z", "Perseids": "2027-08-13T08:11:00Z", "Orionids": "2027-10-22T00:37:00Z",
		"Leonids": "2027-11-18T05:59:00Z", "Geminids": "2027-12-14T19:53:00Z", "Ursids": "2027-12-23T04:21:00Z",
	}
	for _, longitude := range []string{"-157", "-65", "13", "85", "175"} {
		r := reckon(t, "alder reach", "sky-alerts", "2027-01-01", "from=2027-01-01", "to=2027-12-31",
			"school.latitude=20", "school.longitude="+longitude, "school.time_zone=UTC")
		found, at := 0, entrytest.Cells(t, r, "days", "time")
		for i, what := range entrytest.TextsOf(t, r, "days", "what") {
			if name, ok := strings.CutSuffix(what, ": shooting stars"); ok {
				found++
				entrytest.Near(t, name+" at "+longitude+"°, hours from the peak", at[i].Time.Sub(entrytest.Instant(t, peaks[name])).Hours(), 0, 12.3)
			}
		}
		if found != len(peaks) {
			t.Errorf("%d showers at %s°", found, longitude)
		}
	}
}

// The dial is at its most ahead or behind on a turn of the equation of time, about 11
// February, 14 May, 26 July and 3 November (Meeus, Astronomical Algorithms, 2nd ed. 1998,
// ch. 28), and not on the first of April because that is where somebody begins.
func TestDialDayIsATurn(t *testing.T) {
	for _, c := range []struct {
		from, to string
		want     []string // two dates: time zones, and turns are flat
	}{
		{"2027-04-01", "2027-04-30", nil}, {"2027-04-01", "2027-06-30", []string{"Friday 14 May", "Saturday 15 May"}},
		{"2027-06-01", "2027-09-30", []string{"Monday 26 July", "Tuesday 27 July"}},
		{"2027-01-01", "2027-12-31", []string{"Wednesday 3 November", "Thursday 4 November"}},
	} {
		for _, school := range []string{"alder reach", "south", "far east"} {
			r := reckon(t, school, "sky-alerts", c.from, "from="+c.from, "to="+c.to)
			i := slices.IndexFunc(entrytest.TextsOf(t, r, "days", "what"), func(s string) bool { return strings.HasPrefix(s, "the dial") })
			switch {
			case i < 0 && c.want != nil:
				t.Errorf("%s, %s to %s: no dial day", school, c.from, c.to)
			case i >= 0 && !slices.Contains(c.want, entrytest.TextsOf(t, r, "days", "date")[i]):
				t.Errorf("%s, %s to %s: the dial day is %s, want %q", school, c.from, c.to, entrytest.TextsOf(t, r, "days", "date")[i], c.want)
			}
		}
	}
}

// Clocks that change at midnight: in Chile from Saturday to Sunday, 4 April and 5
// September 2027 (IANA time zone database, rule Chile: Apr Sun>=2 3:00u, Sep Sun>=2
// 4:00u). By the old clock it is 0:00 of the Sunday: the alerts have it there, and so
// have the facts of the place.
func TestClocksThatChangeAtMidnight(t *testing.T) {
	santiago := []string{"school.latitude=-33.45", "school.longitude=-70.67", "school.time_zone=America/Santiago"}
	for sunday, want := range map[string]string{
		"2027-04-04": "on 4 April 2027 at 0:00 the clocks go back by 1\u00a0h",
		"2027-09-05": "on 5 September 2027 at 0:00 the clocks go forward by 1\u00a0h",
	} {
		r := reckon(t, "alder reach", "sky-alerts", sunday, append([]string{"from=" + sunday, "to=" + sunday}, santiago...)...)
		i := slices.IndexFunc(entrytest.TextsOf(t, r, "days", "what"), func(s string) bool { return strings.HasPrefix(s, "clocks go") })
		if i < 0 {
			t.Errorf("%s: no clock change in %q", sunday, entrytest.TextsOf(t, r, "days", "what"))
			continue
		}
		if day, clock := entrytest.TextsOf(t, r, "days", "date")[i], entrytest.TextsOf(t, r, "days", "time")[i]; !strings.HasPrefix(day, "Sunday") || clock != "0:00" {
			t.Errorf("%s: the clocks change on %s at %s", sunday, day, clock)
		}
		facts := entrytest.Reckon(t, class.Entries(), "alder reach", "place-facts", sunday[:8]+"01", santiago...)
		if got := entrytest.English(t).Text(entrytest.Fact(t, facts, "next_clock_change")); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// What the sky does: the Moon's shadow crosses the Atlantic on 12
// August 2026 (NASA eclipse catalogue), daylight-saving time in New Brunswick begins on
// the second Sunday of March (IANA), the Perseids peak on 12 or 13 August (IMO),
// and Saturn is opposite the Sun on 4 October 2026 (from memory).
func TestSkyAlerts(t *testing.T) {
	r := reckon(t, "alder reach", "sky-alerts", "2026-08-01", "from=2026-08-01", "to=2027-03-31")
	dates, what := entrytest.TextsOf(t, r, "days", "date"), entrytest.TextsOf(t, r, "days", "what")
	find := func(part string, want ...string) {
		t.Helper()
		for i, w := range what {
			if strings.Contains(w, part) {
				if !slices.Contains(want, dates[i]) {
					t.Errorf("%s is on %s, want %s", part, dates[i], want)
				}
				return
			}
		}
		t.Errorf("no %s in %q", part, what)
	}
	find("clocks go forward", "Sunday 14 March")
	find("clocks go back", "Sunday 1 November")
	find("Perseids", "Wednesday 12 August", "Thursday 13 August")
	find("Geminids", "Sunday 13 December", "Monday 14 December")
	find("Saturn opposite", "Saturday 3 October", "Sunday 4 October", "Monday 5 October")
	find("eclipse of the Sun", "Wednesday 12 August")
	find("December solstice", "Monday 21 December")
	if len(r.Cautions) == 0 {
		t.Error("an eclipse of the Sun without its caution")
	}
	find("the dial most ahead", "Tuesday 3 November")
}

// The last day of the almanac's years is looked at too, east and west of Greenwich,
// where it ends in the next year.
func TestSkyAlertsOnTheLastDay(t *testing.T) {
	for school := range entrytest.Schools {
		if facts := reckon(t, school, "sky-alerts", "2100-12-01", "from=2100-12-01", "to=2100-12-31").Facts; len(facts) != 4 {
			t.Errorf("%s: %d facts", school, len(facts))
		}
	}
}
