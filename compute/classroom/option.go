package classroom

import (
	"slices"
	"time"

	"noonbook/compute/place"
)

// An option is one way to hold a lesson: its visits of one day, in order.
type option []Slot

func (o option) first() Slot { return o[0] }
func (o option) last() Slot  { return o[len(o)-1] }

// meets reports whether every visit has what is needed.
func (o option) meets(n Need, sky Sky) bool {
	if n.Kind == DarkBy || n.Kind == HourMarks { // of the day, not of the visit
		return sky.gives(n, o.first())
	}
	return !slices.ContainsFunc(o, func(s Slot) bool { return !sky.gives(n, s) })
}

func (o option) overlaps(p option) bool {
	return slices.ContainsFunc(o, func(s Slot) bool { return slices.ContainsFunc(p, s.overlaps) })
}

// options lists the ways to hold the lesson on the days, earliest first. They
// begin and end in the same order, which the search rests on.
func (t Term) options(l Lesson, days []place.Date) []option {
	list := make([]option, 0, len(days)) // of a lesson with a start; others have more
	for _, d := range days {
		if l.Start != AnyTime {
			if o := t.from(l, d); o != nil {
				list = append(list, o)
			}
			continue
		}
		times := t.TimesOn(d)
		for k := range times {
			if o := t.at(l, d, times, k); o != nil {
				list = append(list, o)
			}
		}
	}
	return list
}

// anytime frees a lesson whose wanted start is that of a lesson time: in
// reserve, another lesson time is as good.
func (t Term) anytime(l Lesson) Lesson {
	if l.Start != AnyTime && t.begins(l.Start) {
		l.Start = AnyTime
	}
	return l
}

// from is the option that begins at the time that the lesson wants.
func (t Term) from(l Lesson, d place.Date) option {
	times := t.TimesOn(d)
	length := l.Length
	if length == 0 {
		length = lengthAt(times, l)
	}
	if !t.plain() && !t.holdsFrom(times, l, d, length) {
		return nil
	}
	o := append(make(option, 0, max(1, l.Visits)), Slot{d, Span{l.Start, l.Start + length}})
	for i, s := range times {
		if len(o) < l.Visits && s.From >= o.last().To {
			o = append(o, Slot{d, visit(l, times, i)})
		}
	}
	if len(o) < l.Visits {
		return nil
	}
	return o
}

// holdsFrom reports whether a lesson that wants a start can have it on a day whose
// lesson times may be others than yesterday's. A start that is a lesson time on some
// day must be one on this day; one that is never a lesson time, as in the evening,
// only wants lessons on the day, and a half day to be long enough.
func (t Term) holdsFrom(times []Span, l Lesson, d place.Date, length time.Duration) bool {
	if until, half := t.Until[d]; len(times) == 0 || half && l.Start+length > until {
		return false
	}
	return !t.begins(l.Start) || slices.ContainsFunc(times, func(s Span) bool { return s.From == l.Start })
}

// at is the option that begins with the lesson time of that number of the day's.
func (t Term) at(l Lesson, d place.Date, times []Span, k int) option {
	o := make(option, 0, max(1, l.Visits))
	for i := k; i < len(times); i++ {
		s := times[i]
		if len(o) > 0 && s.From < o.last().To {
			continue
		}
		if !t.fits(l, times, i) {
			if len(o) == 0 {
				return nil
			}
			continue
		}
		o = append(o, Slot{d, visit(l, times, i)})
		if len(o) >= l.Visits {
			break
		}
	}
	if len(o) < l.Visits {
		return nil
	}
	return o
}

// visit is the lesson where it begins with the lesson time of that number. One that
// takes more lesson times than are left ends with the last.
func visit(l Lesson, times []Span, k int) Span {
	from := times[k].From
	if l.Length > 0 {
		return Span{from, from + l.Length}
	}
	return Span{from, times[min(k+max(1, l.Times), len(times))-1].To}
}

// lengthAt is how long a lesson without a length of its own lasts that begins at its
// start: as in the lesson time that holds the start, or in the first one.
func lengthAt(times []Span, l Lesson) time.Duration {
	if len(times) == 0 {
		return 0
	}
	k := max(0, slices.IndexFunc(times, func(s Span) bool { return s.From <= l.Start && l.Start < s.To }))
	v := visit(l, times, k)
	return v.To - v.From
}

// wanted lists the options of a lesson by what it wants itself: on its date, or
// on any school day. On a date of its own a lesson is held in any case, by the
// times of any day where that day has none.
func (t Term) wanted(l Lesson, days []place.Date) []option {
	if l.Date.IsZero() {
		return t.options(l, days)
	}
	list := t.options(l, []place.Date{l.Date})
	if len(list) == 0 {
		times := t.TimesOn(l.Date)
		if len(times) == 0 {
			times = t.Times
		}
		s := Span{l.Start, l.Start + l.Length}
		switch {
		case l.Start == AnyTime && len(times) > 0:
			s = visit(l, times, 0)
		case l.Length == 0:
			s.To = l.Start + lengthAt(times, l)
		}
		list = []option{{{l.Date, s}}}
	}
	return list
}
