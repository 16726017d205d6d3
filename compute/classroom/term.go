package classroom

import (
	"slices"
	"time"

	"noonbook/compute/place"
)

// A Term says on which days there is school, and when lessons can be.
type Term struct {
	First, Last place.Date // both included
	Weekdays    []time.Weekday
	DaysOff     []place.Date
	Times       []Span // the lesson times of a school day, in order, none over another
	Open        bool   // Times are a guess, and a lesson may run past the last of them
	Daily       int    // most lessons of the unit on one day; 0 and 1 are the same
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
		for _, span := range t.Times {
			slots = append(slots, Slot{d, span})
		}
	}
	return slots
}

// Enough returns how many more school days, and how many lessons a day at most,
// would each make room for all the lessons, apart from what they need of the
// sky; 0 where that alone does not.
func (t Term) Enough(lessons []Lesson) (days, daily int) {
	room := func(t Term) bool {
		return !slices.Contains(newPuzzle(lessons, t, Sky{}, make([]bool, len(lessons))).mostHeld(), true)
	}
	longer := t
	for range LongestTerm {
		longer.Last = longer.Last.Add(1)
		if !longer.Holds(longer.Last) {
			continue
		}
		if days++; room(longer) {
			break
		}
		if days > len(lessons) {
			days = 0
			break
		}
	}
	denser := t
	for daily = 1; daily <= len(lessons); daily++ {
		if denser.Daily = daily; daily > t.Daily && room(denser) {
			return days, daily
		}
	}
	return days, 0
}
