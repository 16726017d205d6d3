package class

import (
	"time"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/almanac"
	"noonbook/compute/classroom"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// Conflict says in words what a calendar could not give a lesson, as a sentence
// whose subject is the lesson.
func Conflict(v form.Values, lessons []classroom.Lesson, calendar classroom.Calendar, r classroom.Rule) say.Phrase {
	if r.Kind == classroom.ForEvening {
		return NoEvening(v)
	}
	held := calendar.Held[r.Lesson-1]
	other, otherTitle := classroom.Held{}, say.Text("")
	if r.Other > 0 {
		other, otherTitle = calendar.Held[r.Other-1], say.Text(lessons[r.Other-1].Title)
	}
	gap := lessons[r.Lesson-1].After
	between := say.Count(other.Date.DaysUntil(held.Date))
	switch r.Kind {
	case classroom.ForLeast:
		return say.Line("calendar.least", otherTitle, say.Count(gap.Least), between)
	case classroom.ForMost:
		return say.Line("calendar.most", otherTitle, say.Count(gap.Most), between)
	case classroom.ForClock:
		p := school.Place(v)
		from, _ := other.Moments(p)
		change, _, _ := p.NextChange(from)
		return say.Line("calendar.clock", otherTitle, say.Date(entry.BeforeChange(p, change).DateAt(change)))
	case classroom.ForKept:
		return say.Line("calendar.kept")
	case classroom.ForOrder:
		return say.Line("calendar.order", otherTitle)
	}
	return whenNext(v, lessons[r.Lesson-1], r.Need, held, skyConflict(school.Place(v), r.Need, held))
}

// nextDays is how far behind a lesson, or the begin of a term, the next day is looked
// for on which the sky gives what the lesson needs: more than a year.
const nextDays = classroom.LongestTerm

// whenNext adds to what the sky does not give the next school day that does.
func whenNext(v form.Values, l classroom.Lesson, n classroom.Need, held classroom.Held, line say.Phrase) say.Phrase {
	term, sky := school.Term(v), classroom.Over(school.Place(v))
	what := say.Value{Kind: say.Wording, Phrase: line}
	if l.Date.IsZero() {
		first, found := term.Next(l, n, sky, term.First.Add(-1), nextDays)
		switch {
		case !found:
			return say.Line("calendar.never", what)
		case first.After(term.Last):
			return say.Line("calendar.no_time", what, say.Date(first))
		}
		what = say.Value{Kind: say.Wording, Phrase: say.Line("calendar.nowhere", what)}
	}
	if next, found := term.Next(l, n, sky, held.Date, nextDays); found {
		return say.Line("calendar.next", what, say.Date(next))
	}
	return say.Line("calendar.not_next", what)
}

// skyConflict names the first moment at which the sky does not give what the
// lesson needs.
func skyConflict(p place.Place, n classroom.Need, held classroom.Held) say.Phrase {
	day := say.Date(held.Date)
	sun := func(t time.Time) quantity.Angle { return classroom.SunHeight(p, t) }
	moon := func(t time.Time) quantity.Angle { return classroom.MoonHeight(p, t) }
	line := func(key string, t time.Time, height say.Value) say.Phrase {
		return say.Line(key, height, say.Clock(t.In(p.Zone)), day, heightNeeded(n))
	}
	low := func(key string, t time.Time, h almanac.Horizontal) say.Phrase { return line(key, t, tooLow(h, n)) }
	light := func(key string, t time.Time) say.Phrase {
		return line(key, t, say.Degrees(almanac.SunFrom(p, t).Altitude, 0))
	}
	first := func(bad func(time.Time) bool) (time.Time, bool) {
		for _, s := range append([]classroom.Slot{held.Slot}, held.More...) {
			from, to := s.Moments(p)
			for t := from; !t.After(to); t = t.Add(5 * time.Minute) {
				if bad(t) {
					return t, true
				}
			}
		}
		return time.Time{}, false
	}
	switch n.Kind {
	case classroom.SunUp:
		t, _ := first(func(t time.Time) bool { return sun(t) < n.Height })
		return low("calendar.sun", t, almanac.SunFrom(p, t))
	case classroom.MoonUp:
		if t, ok := first(func(t time.Time) bool { return moon(t) < n.Height }); ok {
			return low("calendar.moon", t, almanac.MoonFrom(p, t))
		}
		return say.Line("calendar.moon_near", day)
	case classroom.DarkBy:
		t := classroom.Moment(p, held.Date, n.By)
		return light("calendar.dark_by", t)
	case classroom.HourMarks:
		for _, hour := range n.Marks.FullHours() {
			if t := classroom.Moment(p, held.Date, hour); sun(t) < n.Height {
				return low("calendar.marks", t, almanac.SunFrom(p, t))
			}
		}
	}
	t, _ := first(func(t time.Time) bool { return almanac.SunFrom(p, t).Altitude > almanac.CivilTwilight })
	return light("calendar.dark", t)
}

// heightNeeded is how high a lesson needs Sun or Moon.
func heightNeeded(n classroom.Need) say.Value {
	return say.Degrees(n.Height, entry.WholeOrTenth(n.Height.Degrees()))
}

// tooLow is how high a body stands that a lesson needs higher, as pages print it: whole,
// or to a tenth and finer where it would round to what is needed.
func tooLow(h almanac.Horizontal, n classroom.Need) say.Value {
	height := entry.AltitudeOf(h)
	height.Decimals = 0
	return entry.OnItsSide(height, entry.AsShown(heightNeeded(n)))
}
