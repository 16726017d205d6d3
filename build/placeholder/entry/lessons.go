package entry

import (
	"fmt"
	"maps"

	"noonbook/build/form"
	"noonbook/compute/classroom"
)

// Lesson is the number of a lesson in the unit, from 1.
const Lesson form.Key[int] = "lesson"

// OfLesson is the argument of what tells of one lesson.
func OfLesson() form.Field {
	return form.Field{Key: Lesson, Min: 0, Max: 1000, Assumed: "the lesson that it stands in", Doc: "Number of the lesson in the unit, from 1."}
}

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
	if e.Arguments.Takes(Lesson) && !Lesson.In(full) {
		full = full.With(Lesson.Is(number))
	}
	return full
}

// Key stands for an evaluation with these values: two with one key have equal values. For
// the lessons and the calendar among them, which take long to write, stands their mark.
func (e Entry) Key(values form.Values, mark string) string {
	if e.Lessons {
		values = maps.Clone(values)
		delete(values, lessonsKey)
		delete(values, calendarKey)
	}
	key := make([]byte, 0, 512) // most are shorter
	return string(values.Append(append(key, e.Name+" "+mark+" "...)))
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

// LessonRange says that the unit has no lesson of the number.
func LessonRange(number, lessons int) error {
	return fmt.Errorf("lesson %d is not in the unit, which has %d", number, lessons)
}
