package entry_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/school"
	"noonbook/compute/classroom"
	"noonbook/compute/place"
)

// named returns the date of a name at a school, counted from a date.
func named(t *testing.T, where, text, here string) (place.Date, error) {
	t.Helper()
	day, meant, ok := form.ParseDay(text)
	if !ok {
		t.Fatalf("%q is no day; meant %q", text, meant)
	}
	days := entry.Days{Settings: entrytest.Settings(t, where), Here: entrytest.Day(t, here)}
	return days.Date(day)
}

// From every day of two years the last and the next of each phase are the days of the
// Swiss Ephemeris's moments by the clock of the school, which the IANA zones give: at a
// southern school, at one on the other side of the date line, and where the day is that
// of Greenwich.
func TestPhasesByName(t *testing.T) {
	events := map[string]string{"new": "new Moon", "first-quarter": "first-quarter Moon", "full": "full Moon", "last-quarter": "last-quarter Moon"}
	rows := entrytest.Reference(t, "phases.csv", "swisseph")
	checked := 0
	for _, where := range []string{"south", "far east", "alder reach", "north pole"} {
		zone := school.TimeZone.Of(entrytest.Settings(t, where))
		dates := map[string][]place.Date{}
		for _, row := range rows {
			if at := entrytest.FromTT(t, row["tt"]); at.Year() <= 2029 {
				dates[row["phase"]] = append(dates[row["phase"]], place.Place{Zone: zone}.DateAt(at))
			}
		}
		for phase, event := range events {
			list := dates[phase]
			if len(list) < 40 {
				t.Fatalf("%d moments of %s", len(list), phase)
			}
			for i := 1; i < 26; i++ {
				for _, c := range []struct {
					from       place.Date
					last, next int
				}{{list[i], i, i + 1}, {list[i].Add(-1), i - 1, i}, {list[i].Add(1), i, i + 1}, {list[i].Add(15), i, i + 1}} {
					last, err1 := named(t, where, "last "+event, c.from.String())
					next, err2 := named(t, where, "next "+event, c.from.String())
					if last != list[c.last] || next != list[c.next] || err1 != nil || err2 != nil {
						t.Errorf("%s, %s: from %s last %s, next %s (%v, %v), want %s and %s", where, event, c.from, last, next, err1, err2, list[c.last], list[c.next])
					}
					checked++
				}
			}
		}
	}
	t.Logf("%d days", checked)
}

// The equinoxes and solstices are those of the Swiss Ephemeris by the clock of the school.
func TestSeasonsByName(t *testing.T) {
	events := map[string]string{"march-equinox": "March equinox", "june-solstice": "June solstice", "september-equinox": "September equinox", "december-solstice": "December solstice"}
	checked := 0
	for _, where := range []string{"south", "far east", "alder reach"} {
		p := place.Place{Zone: school.TimeZone.Of(entrytest.Settings(t, where))}
		for _, row := range entrytest.Reference(t, "seasons.csv", "erfa") {
			year := row["tt"][:4]
			if year < "2026" || year > "2034" {
				continue
			}
			date := p.DateAt(entrytest.FromTT(t, row["tt"]))
			event := events[row["season"]]
			either := "solstice"
			if strings.HasSuffix(event, "equinox") {
				either = "equinox"
			}
			for _, name := range []string{event, either} {
				for from, word := range map[place.Date]string{date.Add(-1): "next ", date: "last ", date.Add(-100): "next ", date.Add(100): "last "} {
					got, err := named(t, where, word+name, from.String())
					if got != date || err != nil {
						t.Errorf("%s: %s%s from %s is %s (%v), want %s", where, word, name, from, got, err, date)
					}
					checked++
				}
			}
		}
	}
	if checked < 3*9*4*2*3 {
		t.Errorf("%d days only", checked)
	}
}

// Clocks change at Moncton on 14 March and 7 November 2027, at Auckland on 4 April and
// 26 September 2027 (IANA time zone database); at Nairobi and on Kiritimati they do not.
func TestClockChangeByName(t *testing.T) {
	for _, c := range []struct{ where, name, from, want string }{
		{"alder reach", "next clock change", "2027-03-13", "2027-03-14"},
		{"alder reach", "next clock change", "2027-03-14", "2027-11-07"},
		{"alder reach", "last clock change", "2027-03-14", "2027-03-14"},
		{"alder reach", "last clock change", "2027-11-06", "2027-03-14"},
		{"south", "last clock change", "2027-09-25", "2027-04-04"},
		{"south", "next clock change after last day of term", "2027-01-01", "2027-09-26"},
		{"far east", "next clock change", "2027-03-13", "the school's clock does not change in the two years after 2027-03-13"},
		{"equator", "last clock change", "2027-03-13", "the school's clock does not change in the two years before 2027-03-13"},
	} {
		got, err := named(t, c.where, c.name, c.from)
		if fmt.Sprint(got) != c.want && fmt.Sprint(err) != c.want {
			t.Errorf("%s: %s from %s is %s (%v), want %s", c.where, c.name, c.from, got, err, c.want)
		}
	}
}

// The full Moons of spring 2027 are on 20 April, 22:28 TT, and 20 May, 11:00 TT (Swiss
// Ephemeris, testdata/reference/phases.csv); the term is from 12 to 30 April.
func TestCountedByName(t *testing.T) {
	for _, c := range []struct{ where, name, want string }{
		{"alder reach", "this lesson", "2027-04-15"},
		{"alder reach", "first day of term", "2027-04-12"},
		{"alder reach", "2 weeks after next full Moon", "2027-05-04"},
		{"south", "2 weeks after next full Moon", "2027-05-05"},
		{"alder reach", "next full Moon after next full Moon", "2027-05-20"},
		{"alder reach", "last full Moon before last day of term", "2027-04-20"},
		{"alder reach", "1 month before first day of term", "2027-03-12"},
		{"alder reach", "next full Moon after 9999 weeks after this lesson", "year 2218 is outside 1950 to 2100, for which the sky is computed"},
		{"alder reach", "9999 months after 9999 months before this lesson", "2027-04-15"},
		{"alder reach", strings.Repeat("9999 months after ", 10) + "this lesson", "that day is too far away"},
	} {
		got, err := named(t, c.where, c.name, "2027-04-15")
		if fmt.Sprint(got) != c.want && fmt.Sprint(err) != c.want {
			t.Errorf("%s: %s is %s (%v), want %s", c.where, c.name, got, err, c.want)
		}
	}
	for text, at := range map[string]string{
		"next full Moon": "2100-12-20", "last full Moon": "1950-01-02", "next March equinox": "2100-04-01", "last solstice": "1950-03-01",
	} {
		if got, err := named(t, "alder reach", text, at); err == nil || !strings.Contains(err.Error(), "outside 1950 to 2100") {
			t.Errorf("%s from %s is %s (%v)", text, at, got, err)
		}
	}
}

// course is a unit of lessons in order, each dated by a name, by a date or not at all.
func course(t *testing.T, dates ...string) entry.Course {
	t.Helper()
	c := entry.Course{Named: map[int]form.Day{}, Files: map[string]int{}}
	for i, date := range dates {
		l := classroom.Lesson{Title: string(rune('a' + i)), Start: classroom.AnyTime, Length: 50 * time.Minute}
		c.Files[l.Title] = i + 1
		if d, err := place.ParseDate(date); err == nil {
			l.Date = d
		} else if day, _, ok := form.ParseDay(date); ok {
			c.Named[i] = day
		}
		c.Lessons = append(c.Lessons, l)
	}
	return c
}

// Lessons that name days: the term begins on Monday, 12 April 2027, and has one lesson a
// day, Monday to Friday, to 30 April.
func TestArrangeNamedLessons(t *testing.T) {
	for _, c := range []struct {
		name  string
		dates []string
		held  string
	}{
		{"none", []string{"", "", ""}, "12 13 14"},
		{"the sky", []string{"", "next full Moon", ""}, "12 20 21"},
		{"the term", []string{"", "last day of term"}, "12 30"},
		{"a lesson before it", []string{"", "", "1 week after b"}, "12 13 20"},
		{"a lesson that the sky dates", []string{"next full Moon", "2 days after a", "1 day after b"}, "20 22 23"},
		{"a chain the other way", []string{"1 week before b", "1 week before c", "2027-04-28"}, "14 21 28"},
		{"a typed lesson after it", []string{"", "1 day before c", "2027-04-23"}, "12 22 23"},
		{"an event after a lesson", []string{"", "next full Moon after a"}, "12 20"},
		{"a lesson that waits for another's named day", []string{"next full Moon", "", "1 week after b"}, "20 21 28"},
	} {
		lessons, calendar, faults := course(t, c.dates...).Arrange(entrytest.Settings(t, "alder reach"))
		var held []string
		for i, h := range calendar.Held {
			held = append(held, fmt.Sprint(h.Date.Day))
			if !h.Placed || !lessons[i].Date.IsZero() && lessons[i].Date != h.Date {
				t.Errorf("%s: lesson %d is on %s, held %v", c.name, i+1, lessons[i].Date, h)
			}
		}
		if got := strings.Join(held, " "); got != c.held || len(faults) > 0 {
			t.Errorf("%s: held on %s (%v), want %s", c.name, got, faults, c.held)
		}
	}
}

// A lesson a week before one that must come right after it pushes that one on, and is
// pushed by it.
func TestArrangeWithoutEnd(t *testing.T) {
	_, _, faults := course(t, "1 day after b", "").Arrange(entrytest.Settings(t, "alder reach"))
	if len(faults) != 1 || !strings.Contains(faults[0].Error(), "push each other on without end") {
		t.Errorf("faults are %v", faults)
	}
	_, _, faults = course(t, "next full Moon after 9999 weeks after this lesson", "").Arrange(entrytest.Settings(t, "alder reach"))
	if len(faults) != 1 || !strings.Contains(faults[0].Error(), "outside 1950 to 2100") {
		t.Errorf("faults are %v", faults)
	}
}
