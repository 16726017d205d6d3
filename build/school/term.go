package school

import (
	"cmp"
	"slices"
	"strings"
	"time"

	"noonbook/build/form"
	"noonbook/compute/classroom"
)

// CalendarSettings are the settings that the calendar of the unit depends on. An
// entry that reads lessons lists them among its own.
func CalendarSettings() []string {
	return append(slices.Clone(Where()),
		"term.first_day", "term.last_day", "term.school_days", "term.days_off", "term.lesson_times", "term.lessons_a_day")
}

// Calendar arranges the lessons by the settings.
func Calendar(v form.Values, lessons []classroom.Lesson) classroom.Calendar {
	if v.Zone("school.time_zone") == nil {
		return classroom.Arrange(lessons, Term(v), classroom.Sky{})
	}
	return classroom.Arrange(lessons, Term(v), classroom.Over(Place(v)))
}

// UsualTimes stands in where a school gives no lesson times.
var UsualTimes = []form.TimeSpan{{From: 9 * time.Hour, To: 9*time.Hour + 50*time.Minute}}

// Term returns the term that the settings describe.
func Term(v form.Values) classroom.Term {
	term := classroom.Term{
		First:   v.Date("term.first_day"),
		Last:    v.Date("term.last_day"),
		DaysOff: v.Dates("term.days_off"),
		Daily:   v.Whole("term.lessons_a_day"),
	}
	for day := time.Sunday; day <= time.Saturday; day++ {
		if slices.Contains(v.Texts("term.school_days"), strings.ToLower(day.String())) {
			term.Weekdays = append(term.Weekdays, day)
		}
	}
	spans := v.Spans("term.lesson_times")
	if len(spans) == 0 {
		spans, term.Open = UsualTimes, true
	}
	for _, s := range slices.SortedFunc(slices.Values(spans), func(a, b form.TimeSpan) int { return cmp.Compare(a.From, b.From) }) {
		if n := len(term.Times); n == 0 || term.Times[n-1].To <= s.From { // source reports the others
			term.Times = append(term.Times, classroom.Span(s))
		}
	}
	return term
}

// OpenDay stands in where no lesson times are entered: common practice.
func OpenDay() form.TimeSpan { return form.TimeSpan{From: 9 * time.Hour, To: 15 * time.Hour} }
