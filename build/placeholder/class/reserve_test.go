package class_test

import (
	"testing"
	"time"

	"noonbook/build/form"
	"noonbook/build/placeholder/entrytest"
	"noonbook/compute/classroom"
)

// Lessons that rain can spoil, counted by hand: with one lesson time a day, a term as long
// as the unit leaves no day over, and one day more serves a lesson that must be dry. One
// that needs no weather counts in neither, one that goes on inside has its reserve there.
func TestLessonsWithAndWithoutAReserve(t *testing.T) {
	dry := []classroom.Need{{Kind: classroom.Dry}}
	outside, inside := classroom.Lesson{Title: "Out", Start: classroom.AnyTime, Needs: dry}, classroom.Lesson{Title: "In", Start: classroom.AnyTime}
	either := classroom.Lesson{Title: "Either", Start: classroom.AnyTime, Needs: dry, Wet: classroom.Inside}
	oneTime := []form.TimeSpan{{From: 9 * time.Hour, To: 10 * time.Hour}}
	for _, c := range []struct {
		what                  string
		unit                  []classroom.Lesson
		last                  string // the term begins on Monday 12 April
		reserves, unprotected float64
	}{
		{"one day for one lesson", []classroom.Lesson{outside}, "2027-04-12", 0, 1},
		{"a day to spare", []classroom.Lesson{outside}, "2027-04-13", 1, 0},
		{"no weather needed", []classroom.Lesson{inside}, "2027-04-12", 0, 0},
		{"two lessons, two days", []classroom.Lesson{outside, outside}, "2027-04-13", 0, 2},
		{"it goes on inside", []classroom.Lesson{outside, either}, "2027-04-13", 1, 1},
		{"the last one has no day", []classroom.Lesson{inside, outside}, "2027-04-13", 0, 1},
	} {
		r := withUnit(t, "unit-plan", c.unit, map[string]any{"term.last_day": entrytest.Day(t, c.last), "term.lesson_times": oneTime})
		entrytest.Near(t, c.what+": reserves", entrytest.Fact(t, r, "reserves").Number, c.reserves, 0)
		entrytest.Near(t, c.what+": unprotected", entrytest.Fact(t, r, "unprotected").Number, c.unprotected, 0)
		// The plan says so lesson by lesson.
		without := 0.0
		for _, wet := range entrytest.Cells(t, r, "plan", "wet") {
			if wet.Phrase.Key == "unit-plan.no_reserve" {
				without++
			}
		}
		entrytest.Near(t, c.what+": none in the plan", without, c.unprotected, 0)
	}
}
