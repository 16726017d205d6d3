package placeholder_test

import (
	"strings"
	"testing"

	"noonbook/build/form"
	"noonbook/build/placeholder"
	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/place"
)

// Years that are not computed, days that did not exist and ranges the wrong way
// round come back as errors or as answers, never as a panic.
func TestOddDatesOfTheSky(t *testing.T) {
	sky := []string{"dial-plate", "eclipse-list", "moon-map", "moon-month", "moon-ring", "moon-school", "planets-week", "season-dates", "sun-path", "sun-year"}
	try := func(where, name, date string, given ...string) error {
		e, _ := entry.Find(placeholder.Catalogue(), name)
		values, complaint := entrytest.Pairs(e, given)
		if complaint != "" {
			t.Fatal(complaint)
		}
		if name == "moon-school" {
			for _, key := range []form.Key[place.Date]{entry.From, entry.To} {
				if !key.In(values) {
					values[key.Name()] = entrytest.Day(t, date)
				}
			}
		}
		_, err := e.Reckon(e.Complete(entrytest.Settings(t, where), values, entrytest.Day(t, date)))
		return err
	}
	for _, name := range sky {
		for _, date := range []string{"1949-12-31", "2101-01-01", "0001-01-01", "9999-12-31"} {
			if try("alder reach", name, date) == nil {
				t.Errorf("%s answers for %s", name, date)
			}
		}
		for _, date := range []string{"1950-01-01", "2094-12-31"} {
			for school := range entrytest.Schools {
				if err := try(school, name, date); err != nil {
					t.Errorf("%s at %s: %v", name, school, err)
				}
			}
		}
		if err := try("alder reach", name, "2011-12-30", "school.time_zone=Pacific/Apia"); err != nil {
			t.Errorf("%s on a date that was skipped: %v", name, err)
		}
	}
	for date, fails := range map[string]bool{"1949-12-31": true, "1950-01-01": false, "2100-12-31": false, "2101-01-01": true} {
		for school := range entrytest.Schools {
			if err := try(school, "rocket-zone", "2027-04-20", "day="+date); (err != nil) != fails {
				t.Errorf("rocket-zone at %s on %s: %v", school, date, err)
			}
		}
	}
	for _, name := range append(sky, "moon-diary", "moon-diary-key") {
		for _, date := range []string{"2096-04-20", "2100-12-10", "2100-12-31"} {
			if err := try("alder reach", name, date); err != nil {
				t.Errorf("%s on %s: %v", name, date, err)
			}
		}
	}
	for _, given := range [][]string{{"from=2027-04-20", "to=2027-04-19"}, {"from=2027-01-01", "to=2029-01-01"}} {
		if try("alder reach", "moon-school", "2027-04-20", given...) == nil {
			t.Errorf("moon-school answers for %v", given)
		}
	}
}

// No evaluation may take more than about 20 ms.
func BenchmarkSky(b *testing.B) {
	for _, e := range placeholder.Catalogue() {
		values := entrytest.Settings(b, "alder reach")
		b.Run(e.Name, func(b *testing.B) {
			for b.Loop() {
				if _, err := e.Reckon(e.Complete(values, form.Values{}, school.TermFirstDay.Of(values))); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// What a page looks ahead by itself stops where the almanac does, 31 December 2100, and
// the page says so; before that nothing is said.
func TestDefaultsStopAtTheEdge(t *testing.T) {
	for _, c := range []struct {
		name, date string
		cut        bool
	}{
		{"eclipse-list", "2095-12-31", false}, {"eclipse-list", "2096-01-01", false}, {"eclipse-list", "2096-01-02", true},
		{"moon-diary", "2100-12-04", false}, {"moon-diary", "2100-12-05", true}, {"moon-diary", "2100-12-31", true},
	} {
		r := reckon(t, "alder reach", c.name, c.date)
		if got := entrytest.Says(r.Notes, "sky.edge"); got != c.cut {
			t.Errorf("%s on %s: says that it stops: %v", c.name, c.date, got)
		}
		if c.cut {
			entrytest.Tells(t, r.Notes, "sky.edge", "the end of 2100")
		}
	}
	if got := entrytest.Shown(t, reckon(t, "alder reach", "moon-diary", "2100-12-20"), "last_day"); got != "31 December 2100" {
		t.Errorf("the diary ends on %s", got)
	}
	list := reckon(t, "alder reach", "eclipse-list", "2098-01-01")
	for _, table := range list.Tables {
		if text := entrytest.Lines(t, []say.Phrase{table.Title}); !strings.HasSuffix(text, "to the end of 2100") {
			t.Errorf("the title is %q", text)
		}
	}
}
