package classroom

import (
	"slices"
	"sort"
	"time"

	"noonbook/compute/place"
)

// A Term says on which days there is school, and when lessons can be.
type Term struct {
	First, Last place.Date // both included
	Weekdays    []time.Weekday
	DaysOff     []place.Date
	Times       []Span                       // the lesson times of a school day, in order, none over another
	Weekly      map[time.Weekday][]Span      // of the weekdays that have their own; an empty list is a day without lessons
	Cycle       Cycle                        // of numbered school days, and the times of those that have their own
	Until       map[place.Date]time.Duration // half days: lesson times that end later are not held
	Open        bool                         // Times are a guess, and a lesson may run past the last of them
	Daily       int                          // most lessons of the unit on one day; 0 and 1 are the same
	Outing      Outing                       // how an evening under the sky is held
}

// Holds reports whether the date is a school day of the term.
func (t Term) Holds(d place.Date) bool {
	return !d.Before(t.First) && !d.After(t.Last) && t.Teaches(d)
}

// Teaches reports whether the date, within the term or not, is of a weekday with
// school and no day off.
func (t Term) Teaches(d place.Date) bool {
	return slices.Contains(t.Weekdays, d.Weekday()) && !slices.Contains(t.DaysOff, d)
}

// Before returns the day that lies so many school days before the date, by the
// weekdays and days off also where that is before the term; with none, the date itself
// or the last school day before it. Where a whole year has no such day, the date
// stays.
func (t Term) Before(date place.Date, days int) place.Date {
	if days <= 0 && t.Teaches(date) {
		return date
	}
	days = max(1, days)
	d, last := date, date
	for without := 0; without < LongestTerm; without++ {
		if d = d.Add(-1); !t.Teaches(d) {
			continue
		}
		last, without = d, 0
		if days--; days == 0 {
			break
		}
	}
	return last
}

// LongestTerm is the number of days after which a term is cut off, a little more
// than a school year.
const LongestTerm = 400

// Days returns the school days in order.
func (t Term) Days() []place.Date {
	var days []place.Date
	for d, n := t.First, 0; !d.After(t.Last) && n < LongestTerm; d, n = d.Add(1), n+1 {
		if t.Holds(d) {
			days = append(days, d)
		}
	}
	return days
}

// Slots returns every lesson time of every school day in order.
func (t Term) Slots() []Slot {
	var slots []Slot
	for _, d := range t.Days() {
		for _, span := range t.TimesOn(d) {
			slots = append(slots, Slot{d, span})
		}
	}
	return slots
}

// Enough returns how many more school days, and how many lessons a day at most,
// would each make room for all the lessons, apart from what they need of the
// sky; 0 where that alone does not.
func (t Term) Enough(lessons []Lesson) (days, daily int) {
	lessons, _ = inSchool(lessons)
	var ends []place.Date // of the school days behind the term
	for d, n := t.Last, 0; n < LongestTerm && len(ends) <= len(lessons); n++ {
		d = d.Add(1)
		if longer := (Term{First: t.First, Last: d, Weekdays: t.Weekdays, DaysOff: t.DaysOff}); longer.Holds(d) {
			ends = append(ends, d)
		}
	}
	// A term that is longer or denser by one more makes room for all that had it.
	days = 1 + sort.Search(len(ends), func(i int) bool {
		longer := t
		longer.Last = ends[i]
		return longer.room(lessons)
	})
	if days > len(ends) {
		days = 0
	}
	first := max(1, t.Daily+1)
	daily = first + sort.Search(max(0, len(lessons)-first+1), func(i int) bool {
		denser := t
		denser.Daily = first + i
		return denser.room(lessons)
	})
	if daily > len(lessons) {
		daily = 0
	}
	return days, daily
}

// room reports whether the term has room for all the lessons, apart from what
// they need.
func (t Term) room(lessons []Lesson) bool { return newOptions(lessons, t, false).holdsAll() }
