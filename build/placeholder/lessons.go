package placeholder

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"noonbook/build/form"
	"noonbook/compute/classroom"
)

// CalendarSettings are the settings that the calendar of the unit depends on. An
// entry that reads lessons lists them among its own.
func CalendarSettings() []string {
	return append(slices.Clone(where),
		"term.first_day", "term.last_day", "term.school_days", "term.days_off", "term.lesson_times", "term.lessons_a_day")
}

// ofLesson is the argument of what tells of one lesson.
var ofLesson = form.Field{Name: "lesson", Kind: form.Whole, Min: 0, Max: 1000, Assumed: "the lesson that it stands in", Doc: "Number of the lesson in the unit, from 1."}

// The names under which values hold what only entries with Lessons are given.
const (
	lessonsKey  = "unit.lessons"
	calendarKey = "unit.calendar"
)

// WithLessons adds to complete values what an entry that reads lessons is
// given: the lessons of the unit, the calendar that follows from them and the
// values, and, where the argument lesson is left open, the number of the lesson
// that the entry is used in, 0 for none.
func (e Entry) WithLessons(values form.Values, lessons []classroom.Lesson, calendar classroom.Calendar, number int) form.Values {
	if !e.Lessons {
		return values
	}
	full := values.With(form.Values{lessonsKey: lessons, calendarKey: calendar})
	if _, takes := e.Arguments.Field("lesson"); takes && !full.Has("lesson") {
		full["lesson"] = number
	}
	return full
}

// Lessons returns the lessons of the unit, in its order.
func Lessons(v form.Values) []classroom.Lesson {
	lessons, _ := v[lessonsKey].([]classroom.Lesson)
	return lessons
}

// HeldOn returns the calendar of the lessons.
func HeldOn(v form.Values) classroom.Calendar {
	calendar, _ := v[calendarKey].(classroom.Calendar)
	return calendar
}

// Calendar arranges the lessons by the settings.
func Calendar(v form.Values, lessons []classroom.Lesson) classroom.Calendar {
	if v.Zone("school.time_zone") == nil {
		return classroom.Arrange(lessons, Term(v), classroom.Sky{})
	}
	return classroom.Arrange(lessons, Term(v), classroom.Over(Place(v)))
}

// usualTimes stands in where a school gives no lesson times.
var usualTimes = []form.TimeSpan{{From: 9 * time.Hour, To: 9*time.Hour + 50*time.Minute}}

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
		spans, term.Open = usualTimes, true
	}
	for _, s := range slices.SortedFunc(slices.Values(spans), func(a, b form.TimeSpan) int { return cmp.Compare(a.From, b.From) }) {
		if n := len(term.Times); n == 0 || term.Times[n-1].To <= s.From { // source reports the others
			term.Times = append(term.Times, classroom.Span(s))
		}
	}
	return term
}

// lessonRange says that the unit has no lesson of the number.
func lessonRange(number, lessons int) error {
	return fmt.Errorf("lesson %d is not in the unit, which has %d", number, lessons)
}
