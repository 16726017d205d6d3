package plan

import (
	"slices"
	"strings"
	"time"

	"noonbook/build/form"
	"noonbook/build/problem"
	"noonbook/build/source"
	"noonbook/compute/place"
)

// calendar gives each lesson its day. A lesson with a date keeps it; one marked
// "auto" takes the next school day after the lesson before it. Pages that are
// no lessons take the first day of the term, for what they compute.
func calendar(unit *source.Unit, settings form.Values) ([]day, problem.List) {
	var problems problem.List
	days := make([]day, len(unit.Lessons))
	first, last := settings.Date("term.first_day"), settings.Date("term.last_day")
	next := first
	for i, l := range unit.Lessons {
		days[i] = day{date: first}
		if l.Part() != source.PartLesson {
			continue
		}
		date := l.Block.Date("date")
		at := l.Place("date")
		if date.IsZero() {
			for date = next; !schoolDay(settings, date) && !date.After(last); {
				date = date.Add(1)
			}
			at = l.Place("title")
		}
		switch {
		case last.IsZero() || first.IsZero():
		case date.After(last) && l.Block.Date("date").IsZero():
			problems.Add(at, "lesson: no school day is left for it before term.last_day %s", last)
		case date.Before(first) || date.After(last):
			problems.Add(at, "lesson: date %s is outside the term, %s to %s", date, first, last)
		case !schoolDay(settings, date):
			problems.Add(at, "lesson: date %s is no school day (%s)", date, date.Weekday())
		}
		next = date.Add(1)
		days[i] = day{date, start(l, settings), length(l, settings)}
	}
	overlaps(&problems, unit, days)
	return days, problems
}

// overlaps warns of two lessons at one time.
func overlaps(problems *problem.List, unit *source.Unit, days []day) {
	for i, l := range unit.Lessons {
		for j, other := range unit.Lessons[:i] {
			a, b := days[i], days[j]
			if l.Part() == source.PartLesson && other.Part() == source.PartLesson && a.date == b.date &&
				a.start < b.start+b.length && b.start < a.start+a.length {
				problems.Warn(l.Place("title"), "lesson: it is held while %q is, on %s", other.Title(), a.date)
			}
		}
	}
}

func schoolDay(settings form.Values, d place.Date) bool {
	if slices.Contains(settings.Dates("term.days_off"), d) {
		return false
	}
	return slices.Contains(settings.Texts("term.school_days"), strings.ToLower(d.Weekday().String()))
}

// start and length return when in the day a lesson begins and how long it
// lasts: as its block says, or as the first lesson time of the term.
func start(l *source.Lesson, settings form.Values) time.Duration {
	if l.Block.Has("start") {
		return l.Block.Clock("start")
	}
	if spans := settings.Spans("term.lesson_times"); len(spans) > 0 {
		return spans[0].From
	}
	return 9 * time.Hour
}

func length(l *source.Lesson, settings form.Values) time.Duration {
	if l.Block.Has("minutes") {
		return time.Duration(l.Block.Whole("minutes")) * time.Minute
	}
	if spans := settings.Spans("term.lesson_times"); len(spans) > 0 {
		return spans[0].To - spans[0].From
	}
	return 50 * time.Minute
}
