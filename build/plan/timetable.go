package plan

import (
	"noonbook/build/problem"
	"noonbook/build/source"
	"noonbook/compute/classroom"
)

// offTimes warns of lessons whose dates of their own put them on a day that has no
// lesson times, or after the end of a half day.
func (p *Plan) offTimes(problems *problem.List, term classroom.Term, calendar classroom.Calendar) {
	taught := p.taught()
	for i, h := range calendar.Held {
		if p.course.Lessons[i].Date.IsZero() || !h.Placed || !term.Holds(h.Date) {
			continue
		}
		until, half := term.Until[h.Date]
		switch {
		case len(term.TimesOn(h.Date)) == 0:
			problems.Warn(taught[i].Place(source.BlockDate), "lesson: %s, a %s, has no lesson times", h.Date, h.Date.Weekday())
		case half && h.End().To > until:
			problems.Warn(taught[i].Place(source.BlockDate), "lesson: %s is a half day, and school ends before the lesson does", h.Date)
		}
	}
}
