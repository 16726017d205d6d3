package classroom

import (
	"slices"
	"time"

	"noonbook/compute/place"
)

// A Cycle is a round of numbered school days, day 1 to day 6 say, that goes on
// over the weeks: a day without school has no number, and the next school day takes
// the one that it would have had.
type Cycle struct {
	Days  int            // how many there are; 0 for no cycle
	First int            // the number of the term's first school day; 0 and 1 are the same
	Lost  []place.Date   // days off whose number is lost all the same, as on a printed calendar after a storm
	Times map[int][]Span // of the cycle days that have lesson times of their own; they go before those of a weekday
}

// longestBreak is how long two lesson times may lie apart for one lesson to go on
// from the first to the second. A longer break is a meal, for which a class goes
// away. Common practice, no source. Where no day of the timetable has lesson times
// enough so near to each other, a lesson goes on behind the meal.
const longestBreak = 30 * time.Minute

// breakOf is how long a break within the lesson may be.
func (t Term) breakOf(l Lesson) time.Duration {
	if l.Length > 0 { // its minutes count the breaks, which would eat them up
		return longestBreak
	}
	tables := [][]Span{t.Times}
	for _, times := range t.Weekly {
		tables = append(tables, times)
	}
	for _, times := range t.Cycle.Times {
		tables = append(tables, times)
	}
	for _, times := range tables {
		for k := range times {
			if runs(l, times, k, longestBreak) {
				return longestBreak
			}
		}
	}
	return 24 * time.Hour
}

// runs reports whether a lesson that begins with the lesson time of that number has
// lesson times enough behind it, with no longer breaks between them.
func runs(l Lesson, times []Span, k int, longest time.Duration) bool {
	if l.Length == 0 && k+l.Times > len(times) {
		return false
	}
	end := visit(l, times, k).To
	for ; times[k].To < end; k++ {
		if k+1 == len(times) || times[k+1].From-times[k].To > longest {
			return false
		}
	}
	return true
}

// CycleDay returns the number of a school day in the cycle; 0 where there is no
// cycle, no school, or the term has not begun. It goes on behind the term.
func (t Term) CycleDay(d place.Date) int {
	n := t.Cycle.Days
	if n <= 0 || d.Before(t.First) || !t.Teaches(d) {
		return 0
	}
	return (max(1, t.Cycle.First)-1+t.counted(d))%n + 1
}

// counted is how many days from the first of the term to the one before the date
// have a number in the cycle.
func (t Term) counted(d place.Date) int {
	days := t.First.DaysUntil(d)
	count := days / 7 * len(t.Weekdays)
	for k := range days % 7 {
		if slices.Contains(t.Weekdays, t.First.Add(k).Weekday()) {
			count++
		}
	}
	for i, off := range t.DaysOff {
		if !off.Before(t.First) && off.Before(d) && slices.Contains(t.Weekdays, off.Weekday()) &&
			!slices.Contains(t.Cycle.Lost, off) && !slices.Contains(t.DaysOff[:i], off) {
			count--
		}
	}
	return count
}

// TimesOn returns the lesson times of a date, in order, as if it were a school day:
// those of its cycle day, else of its weekday, else of any day, and of a half day
// those that end in time.
func (t Term) TimesOn(d place.Date) []Span {
	times := t.Times
	if own, ok := t.Weekly[d.Weekday()]; ok {
		times = own
	}
	if len(t.Cycle.Times) > 0 {
		if own, ok := t.Cycle.Times[t.CycleDay(d)]; ok {
			times = own
		}
	}
	if until, half := t.Until[d]; half {
		times = slices.DeleteFunc(slices.Clone(times), func(s Span) bool { return s.To > until })
	}
	return times
}

// Clock returns the time of day that is that long after a lesson has begun, not counting
// the breaks between the lesson times that it takes. The moment at which a lesson time
// ends is the beginning of the next, or the break before it.
func (t Term) Clock(l Lesson, h Held, after time.Duration, inBreak bool) time.Duration {
	clock := h.From + after
	if l.Length > 0 {
		return clock
	}
	for _, s := range t.TimesOn(h.Date) {
		next := s.From > h.From && s.From < h.To
		if !next {
			continue
		}
		previous := t.endBefore(h.Date, s.From)
		if clock < previous || clock == previous && inBreak {
			break
		}
		clock += s.From - previous
	}
	return clock
}

// Lasts returns how long a lesson is with all its visits, not counting the breaks between
// the lesson times that it takes.
func (t Term) Lasts(l Lesson, h Held) time.Duration {
	length := time.Duration(0)
	for _, visit := range append([]Slot{h.Slot}, h.More...) {
		length += visit.To - visit.From
		for _, s := range t.TimesOn(visit.Date) {
			if l.Length == 0 && s.From > visit.From && s.From < visit.To {
				length -= s.From - t.endBefore(visit.Date, s.From)
			}
		}
	}
	return length
}

// endBefore is when the last lesson time before a time of day ends.
func (t Term) endBefore(d place.Date, clock time.Duration) time.Duration {
	end := clock
	for _, s := range t.TimesOn(d) {
		if s.To <= clock {
			end = s.To
		}
	}
	return end
}

// plain reports whether all school days have the same lesson times.
func (t Term) plain() bool {
	return len(t.Weekly) == 0 && len(t.Cycle.Times) == 0 && len(t.Until) == 0
}

// begins reports whether some day has a lesson time that begins then.
func (t Term) begins(start time.Duration) bool {
	at := func(s Span) bool { return s.From == start }
	if slices.ContainsFunc(t.Times, at) {
		return true
	}
	for _, times := range t.Weekly {
		if slices.ContainsFunc(times, at) {
			return true
		}
	}
	for _, times := range t.Cycle.Times {
		if slices.ContainsFunc(times, at) {
			return true
		}
	}
	return false
}

// fits reports whether a lesson can begin with the lesson time of that number. It takes
// as many lesson times as it needs, one after the other, with no more than a break
// between them, and ends with the last of them at the latest.
func (t Term) fits(l Lesson, times []Span, k int) bool {
	if t.Open && (l.Length > 0 || k+l.Times <= len(times)) { // the breaks are a guess too
		return true
	}
	return runs(l, times, k, longestBreak) || runs(l, times, k, t.breakOf(l))
}
