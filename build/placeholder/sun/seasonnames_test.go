package sun_test

import (
	"testing"
	"time"

	"noonbook/build/placeholder/entrytest"
	"noonbook/build/say"
)

// What season a date is in, by hemisphere and reckoning. By the sky: seasons.csv. By the
// calendar, three whole months each: World Meteorological Organization, WMO-No. 1203,
// 2017; for the south the Bureau of Meteorology of Australia, whose autumn begins on
// 1 March (both from memory). Between the tropics no season is said of the place.
func TestSeasonNames(t *testing.T) {
	const calendar, sky = "school.seasons=calendar", "school.seasons=astronomical"
	for _, c := range []struct{ school, date, reckoning, season, next, when string }{
		{"alder reach", "2027-02-28", calendar, "winter", "spring", "2027-03-01"},
		{"alder reach", "2027-03-01", calendar, "spring", "summer", "2027-06-01"},
		{"alder reach", "2027-03-01", sky, "winter", "spring", "2027-03-20"},
		{"alder reach", "2027-05-31", calendar, "spring", "summer", "2027-06-01"},
		{"alder reach", "2027-06-10", calendar, "summer", "autumn", "2027-09-01"},
		{"alder reach", "2027-06-10", sky, "spring", "summer", "2027-06-21"},
		{"alder reach", "2027-12-01", calendar, "winter", "spring", "2028-03-01"},
		{"alder reach", "2027-12-01", sky, "autumn", "winter", "2027-12-21"},
		{"south", "2027-02-28", calendar, "summer", "autumn", "2027-03-01"},
		{"south", "2027-03-01", calendar, "autumn", "winter", "2027-06-01"},
		{"south", "2027-03-01", sky, "summer", "autumn", "2027-03-21"},
		{"south", "2027-06-10", calendar, "winter", "spring", "2027-09-01"},
		{"south", "2027-06-10", sky, "autumn", "winter", "2027-06-22"},
		{"south", "2027-12-31", calendar, "summer", "autumn", "2028-03-01"},
		{"line north", "2027-03-01", calendar, "since the December solstice", "March equinox", "2027-03-21"},
		{"line north", "2027-06-10", sky, "since the March equinox", "June solstice", "2027-06-21"},
		{"equator", "2027-06-10", calendar, "since the March equinox", "June solstice", "2027-06-21"},
	} {
		name := c.school + " " + c.date + " " + c.reckoning
		r := reckon(t, c.school, "season-dates", c.date, c.reckoning)
		for fact, want := range map[string]string{"season": c.season, "next_season": c.next} {
			if got := entrytest.Shown(t, r, fact); got != want {
				t.Errorf("%s: %s is %s, want %s", name, fact, got, want)
			}
		}
		if got := entrytest.Fact(t, r, "next").Time.Format(time.DateOnly); got != c.when {
			t.Errorf("%s: the next begins on %s, want %s", name, got, c.when)
		}
	}
}

// The four first days of the calendar's seasons, and what the table says of them.
func TestCalendarSeasonsBegin(t *testing.T) {
	for school, days := range map[string][4]string{
		"alder reach": {"2027-03-01", "2027-06-01", "2027-09-01", "2027-12-01"},
		"south":       {"2027-09-01", "2027-12-01", "2027-03-01", "2027-06-01"},
	} {
		r := reckon(t, school, "season-dates", "2027-04-20", "school.seasons=calendar")
		for i, name := range []string{"spring_begins", "summer_begins", "autumn_begins", "winter_begins"} {
			if v := entrytest.Fact(t, r, name); v.Kind != say.CalendarDay || v.Time.Format(time.DateOnly) != days[i] {
				t.Errorf("%s: %s on %v", school, name, v.Time)
			}
		}
		// 1 March is 19 days before the equinox of 20 March, 1 June 20 before the solstice.
		entrytest.Tells(t, r.Notes, "season-dates.calendar", "three whole months", "begins about three weeks before an equinox or a solstice")
		for _, name := range []string{"season-dates", "season-model"} {
			table := reckon(t, school, name, "2027-04-20", "school.seasons=calendar").Tables[0]
			heads := map[string]bool{}
			for _, c := range table.Columns {
				heads[c.Name] = true
			}
			if heads["season"] || !heads["within"] {
				t.Errorf("%s, %s: the equinox still begins a season by the calendar", school, name)
			}
		}
	}
	for _, name := range []string{"spring_begins", "summer_begins", "autumn_begins", "winter_begins"} {
		if v := entrytest.Fact(t, reckon(t, "line south", "season-dates", "2027-04-20", "school.seasons=calendar"), name); v.Kind != say.Nothing {
			t.Errorf("between the tropics: %s", name)
		}
	}
}
