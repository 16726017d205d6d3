package plan

import (
	"fmt"

	"noonbook/build/form"
	"noonbook/build/problem"
	"noonbook/build/source"
	"noonbook/compute/classroom"
	"noonbook/compute/place"
)

// dated arranges the lessons of the unit, with a date for each that names its day, and
// reports the names that are none at this school.
func (p *Plan) dated(settings form.Values) ([]classroom.Lesson, classroom.Calendar, problem.List) {
	lessons, calendar, faults := p.course.Arrange(settings)
	var problems problem.List
	taught := p.taught()
	for i := range taught {
		if err := faults[i]; err != nil {
			problems.Add(taught[i].Place(source.BlockDate), "lesson: date is %q: %v", taught[i].DayName(), err)
		}
	}
	return lessons, calendar, problems
}

// dateWritten is the date of a lesson with the name that its author gave it.
func dateWritten(l *source.Lesson, date place.Date) string {
	if name := l.DayName(); name != "" {
		return fmt.Sprintf("%q, %s,", name, date)
	}
	return date.String()
}

// onDays returns what the author gave with dates in place of the days by name. The error
// says that a name is no day at this school, or is entry.ErrNoDay where it cannot be told
// because something else is wrong.
func (p *Plan) onDays(s *pressing, given form.Values, lesson int) (form.Values, error) {
	if len(given.Days()) == 0 {
		return given, nil
	}
	return given.OnDays(s.course.Of(s.settings.With(given), s.lessons, s.calendar, p.unit.Lessons[lesson].Number).Date)
}
