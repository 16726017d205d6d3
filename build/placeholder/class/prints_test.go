package class_test

import (
	"slices"
	"testing"
	"time"

	"noonbook/build/placeholder/entrytest"
	"noonbook/build/say"
	"noonbook/compute/classroom"
	"noonbook/compute/place"
)

// What to print for 27 pupils in groups of three, by hand. The lessons are on Monday 12,
// Tuesday 13 and Wednesday 14 April 2027; the school day before the first is a Friday.
func TestPrintList(t *testing.T) {
	unit := []classroom.Lesson{
		{Title: "A", Start: classroom.AnyTime, Prints: []string{"dial-gnomon", "dial-face", classroom.BuildCard}, Kit: []classroom.Thing{
			{Item: "gnomons", Count: 1, Share: classroom.PerGroup, Spare: 1, Print: "dial-gnomon"},
			{Item: "cards", Count: 1, Share: classroom.PerGroup, Print: classroom.BuildCard},
		}},
		{Title: "B", Start: classroom.AnyTime, Kit: []classroom.Thing{{Item: "pencils", Count: 1, Share: classroom.PerPupil}}},
		{Title: "C", Start: classroom.AnyTime, Kit: []classroom.Thing{{Item: "sheets", Count: 1, Share: classroom.PerPupil, Print: classroom.PupilSheet}}},
	}
	for _, c := range []struct {
		name   string
		lesson int
		given  map[string]any
		rows   map[string][]string
		copies float64
		by     string
	}{
		{"the unit", 0, map[string]any{"school.paper": "A4"}, map[string][]string{
			"lesson": {"1 A", "1 A", "1 A", "3 C"},
			"paper":  {"The gnomon to cut out", "Build card", "The dial’s face", "Pupils’ sheet"},
			"by":     {"Friday 9 April", "Friday 9 April", "Friday 9 April", "Tuesday 13 April"},
			"copies": {"10", "9", "–", "27"},
			"format": {"A4", "A4", "A4", "A4"},
			"size":   {"true size", "any", "true size", "any"},
		}, 46, "2027-04-09"},
		{"one lesson", 3, map[string]any{"school.paper": "Letter"}, map[string][]string{
			"lesson": {"3 C"}, "copies": {"27"}, "by": {"Tuesday 13 April"}, "format": {"Letter"}, "size": {"any"},
		}, 27, "2027-04-13"},
		{"a day off before it", 3, map[string]any{"term.days_off": []place.Date{entrytest.Day(t, "2027-04-13")}}, map[string][]string{ // then C is on Thursday the 15th
			"copies": {"27"}, "by": {"Wednesday 14 April"},
		}, 27, "2027-04-14"},
	} {
		given := map[string]any{"class.pupils": 27, "class.group_size": 3, "lesson": c.lesson}
		for key, v := range c.given {
			given[key] = v
		}
		r := withUnit(t, "print-list", unit, given)
		for column, want := range c.rows {
			if got := entrytest.TextsOf(t, r, "list", column); !slices.Equal(got, want) {
				t.Errorf("%s: %s is %q, want %q", c.name, column, got, want)
			}
		}
		if got := entrytest.Fact(t, r, "copies"); got.Number != c.copies {
			t.Errorf("%s: %v copies, want %v", c.name, got.Number, c.copies)
		}
		if by := entrytest.Fact(t, r, "first_by"); by.Kind != say.CalendarDay || by.Time.Format(time.DateOnly) != c.by {
			t.Errorf("%s: printed by %v, want %s", c.name, by.Time, c.by)
		}
		if told := entrytest.Says(r.Notes, "print-list.uncounted"); told != (c.lesson == 0) {
			t.Errorf("%s: it is told that copies are not counted: %v", c.name, told)
		}
	}
	r := withUnit(t, "print-list", unit, map[string]any{"class.pupils": 27, "class.group_size": 3, "lesson": 2})
	if len(r.Tables) != 0 || entrytest.Fact(t, r, "first_by").Kind != say.Nothing || entrytest.Fact(t, r, "papers").Number != 0 || !entrytest.Says(r.Notes, "print-list.nothing") {
		t.Errorf("of a lesson without papers: %+v", r)
	}
}
