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
}

// Holds reports whether there is school on the date.
func (t Term) Holds(d place.Date) bool {
	return !d.Before(t.First) && !d.After(t.Last) && t.weekday(d) && !slices.Contains(t.DaysOff, d)
}

func (t Term) weekday(d place.Date) bool { return slices.Contains(t.Weekdays, d.Weekday()) }

// longestTerm bounds the days that a term is looked at, 20 years.
const longestTerm = 7305

// Days returns the school days in order.
func (t Term) Days() []place.Date {
	var days []place.Date
	for d, n := t.First, 0; !d.After(t.Last) && n < longestTerm; d, n = d.Add(1), n+1 {
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
