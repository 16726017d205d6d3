package school

import (
	"slices"
	"strings"
	"time"

	"noonbook/build/form"
	"noonbook/compute/classroom"
)

// CalendarSettings are the settings that the calendar of the unit depends on. An
// entry that reads lessons lists them among its own.
func CalendarSettings() form.Keys {
	return append(append(append(Where(), TimetableSettings()...), TermLessonsADay), EveningSettings()...)
}

// Calendar arranges the lessons by the settings.
func Calendar(v form.Values, lessons []classroom.Lesson) classroom.Calendar {
	if TimeZone.Of(v) == nil {
		return classroom.Arrange(lessons, Term(v), classroom.Sky{})
	}
	return classroom.Arrange(lessons, Term(v), classroom.Over(Place(v)))
}

// LessonTimes returns the lesson times of a school day. Where the school gives
// none, entered is false and five lessons stand in, with a long break at noon:
// common practice, no source.
func LessonTimes(v form.Values) (times []form.TimeSpan, entered bool) {
	if times := TermLessonTimes.Of(v); len(times) > 0 {
		return times, true
	}
	for _, hour := range []time.Duration{9, 10, 11, 13, 14} {
		times = append(times, form.TimeSpan{From: hour * time.Hour, To: hour*time.Hour + 50*time.Minute})
	}
	return times, false
}

// Term returns the term that the settings describe.
func Term(v form.Values) classroom.Term {
	term := classroom.Term{
		First:   TermFirstDay.Of(v),
		Last:    TermLastDay.Of(v),
		DaysOff: TermDaysOff.Of(v),
		Daily:   TermLessonsADay.Of(v),
		Outing:  outing(v),
	}
	for day := time.Sunday; day <= time.Saturday; day++ {
		if slices.Contains(TermSchoolDays.Of(v), strings.ToLower(day.String())) {
			term.Weekdays = append(term.Weekdays, day)
		}
	}
	spans, entered := LessonTimes(v)
	term.Times = ordered(spans)
	vary(&term, v)
	term.Open = !entered && len(term.Weekly) == 0 && len(term.Cycle.Times) == 0
	return term
}
