package plan

import (
	"crypto/sha256"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"

	"noonbook/build/form"
	"noonbook/build/placeholder/class"
	"noonbook/build/problem"
	"noonbook/build/school"
	"noonbook/build/source"
	"noonbook/compute/classroom"
	"noonbook/compute/place"
)

// calendar arranges the lessons and reports what is wrong with their days.
func (p *Plan) calendar(settings form.Values) (classroom.Calendar, problem.List) {
	_, calendar, problems := p.arranged(settings)
	return calendar, problems
}

// arranged is calendar with the lessons, each with its date where it names a day.
func (p *Plan) arranged(settings form.Values) ([]classroom.Lesson, classroom.Calendar, problem.List) {
	lessons, calendar, problems := p.dated(settings)
	if problems.Faults() > 0 { // the rest follows from a day that is none
		return lessons, calendar, problems
	}
	term := school.Term(settings)
	if term.First.IsZero() || term.Last.IsZero() || len(term.Days()) == 0 {
		return lessons, calendar, nil // source reported the term; no lesson is to blame
	}
	taught := p.taught()
	spared := sync.OnceValue(func() string { return p.spared(lessons, term) }) // the same for every lesson without room
	roomier := sync.OnceValue(func() string { return p.roomier(lessons, term, spared()) })
	for i, h := range calendar.Held {
		l, date := taught[i], lessons[i].Date
		switch dated := !date.IsZero(); {
		case dated && (date.Before(term.First) || date.After(term.Last)):
			problems.Add(l.Place(source.BlockDate), "lesson: date %s is outside the term, %s to %s", dateWritten(l, date), term.First, term.Last)
		case dated && !term.Holds(date):
			problems.Add(l.Place(source.BlockDate), "lesson: date %s is a %s, not a school day", dateWritten(l, date), date.Weekday())
		case !h.Placed && lessons[i].Evening:
			problems.Add(l.Place(source.BlockEvening), `lesson: %s; want another term, or only = "evening-plan.stands" for a term without it`, p.words.Line(class.NoEvening(settings)))
		case !h.Placed && !term.Fits(lessons[i]):
			problems.Add(l.Place(source.BlockTitle), "lesson: no school day has lesson times enough for it")
		case !h.Placed:
			problems.Add(l.Place(source.BlockTitle), "lesson: no school day is left for it before term.last_day %s%s", term.Last, roomier())
		}
	}
	p.offTimes(&problems, term, calendar)
	for _, r := range calendar.Dropped {
		l := taught[r.Lesson-1]
		switch other := taught[max(1, r.Other)-1]; {
		case r.Kind == classroom.ForEvening: // reported: it has no night
		case r.Kind == classroom.ForOrder && lessons[r.Lesson-1].Date.IsZero():
			problems.Add(l.Place(source.BlockTitle), "lesson: no school day is left for it after %q and before %s%s", other.Title(), nextDated(lessons, r.Lesson), spared())
		case r.Kind == classroom.ForOrder:
			problems.Add(other.Place(source.BlockTitle), "lesson: no school day is left for it before %q%s", l.Title(), spared())
		default:
			problems.Warn(l.Place(ruleKey(l, r)), "lesson: %s", p.words.Line(class.Conflict(settings, lessons, calendar, r)))
		}
	}
	overlaps(&problems, taught, calendar.Held)
	return lessons, calendar, problems
}

// nextDated names what a lesson without a date must come before: the next lesson that
// has one, or the end of the term.
func nextDated(lessons []classroom.Lesson, number int) string {
	for _, l := range lessons[number:] {
		if !l.Date.IsZero() {
			return strconv.Quote(l.Title)
		}
	}
	return "the end of the term"
}

// ruleKey is the key of the lesson block that a dropped rule comes from.
func ruleKey(l *source.Lesson, r classroom.Rule) form.AnyKey {
	key := map[classroom.RuleKind]form.AnyKey{
		classroom.ForNeed: source.BlockNeeds, classroom.ForLeast: source.BlockDaysAfter, classroom.ForMost: source.BlockDaysWithin,
		classroom.ForClock: source.BlockSameClock, classroom.ForKept: source.BlockIfWet, classroom.ForOrder: source.BlockTitle,
	}[r.Kind]
	switch r.Need.Kind {
	case classroom.DarkBy:
		key = source.BlockDarkBy
	case classroom.HourMarks:
		key = source.BlockHourlyMarks
	}
	return key
}

// roomier says what would make room for every lesson.
func (p *Plan) roomier(lessons []classroom.Lesson, term classroom.Term, spared string) string {
	days, daily := term.Enough(lessons)
	var ways []string
	if days == 1 {
		ways = append(ways, "one more school day")
	} else if days > 1 {
		ways = append(ways, fmt.Sprintf("%d more school days", days))
	}
	if daily > 0 {
		ways = append(ways, fmt.Sprintf("term.lessons_a_day = %d", daily))
	}
	if len(ways) == 0 {
		return spared
	}
	return "; " + strings.Join(ways, " or ") + " would do" + strings.Replace(spared, "; leave", "; or leave", 1)
}

// taught returns the lessons among the pages.
func (p *Plan) taught() []*source.Lesson {
	var taught []*source.Lesson
	for _, l := range p.unit.Lessons {
		if l.Number > 0 {
			taught = append(taught, l)
		}
	}
	return taught
}

// overlaps warns of two lessons at one time.
func overlaps(problems *problem.List, taught []*source.Lesson, held []classroom.Held) {
	for i, a := range held {
		for j, b := range held[:i] {
			if a.Date == b.Date && a.From < b.To && b.From < a.To {
				problems.Warn(taught[i].Place(source.BlockTitle), "lesson: it is held while %q is, on %s", taught[j].Title(), a.Date)
			}
		}
	}
}

// dayOf returns the day whose numbers a page shows: that of its lesson, or the
// first of the term.
func (p *Plan) dayOf(page int, s *pressing) place.Date {
	if n := p.unit.Lessons[page].Number; n > 0 && n <= len(s.calendar.Held) && s.calendar.Held[n-1].Placed {
		return s.calendar.Held[n-1].Date
	}
	return school.TermFirstDay.Of(s.settings)
}

// calendarFor returns the lessons and the calendar for a use of a placeholder: the school's,
// unless the use has settings of its own that the calendar depends on; with their mark.
func (p *Plan) calendarFor(s *pressing, given, complete form.Values) (lessons []classroom.Lesson, calendar classroom.Calendar, mark string) {
	if slices.ContainsFunc(school.CalendarSettings(), func(key form.AnyKey) bool { return key.In(given) }) {
		lessons, calendar, _ := s.course.Arrange(complete)
		lessons = p.withSheets(s.settings, lessons)
		return lessons, calendar, markOf(lessons, calendar)
	}
	return s.lessons, s.calendar, s.held
}

// markOf stands for lessons with their days in the keys of what is evaluated once:
// written out for each use, they took a seventh of a press.
func markOf(lessons []classroom.Lesson, calendar classroom.Calendar) string {
	return fmt.Sprintf("%x", sha256.Sum256([]byte(fmt.Sprint(lessons, calendar))))
}
