package school

import (
	"cmp"
	"slices"
	"time"

	"noonbook/build/form"
	"noonbook/compute/classroom"
	"noonbook/compute/place"
)

// The keys of a timetable whose days are not alike.
const (
	TermTimesMonday    form.Key[[]form.TimeSpan] = "term.times.monday"
	TermTimesTuesday   form.Key[[]form.TimeSpan] = "term.times.tuesday"
	TermTimesWednesday form.Key[[]form.TimeSpan] = "term.times.wednesday"
	TermTimesThursday  form.Key[[]form.TimeSpan] = "term.times.thursday"
	TermTimesFriday    form.Key[[]form.TimeSpan] = "term.times.friday"
	TermTimesSaturday  form.Key[[]form.TimeSpan] = "term.times.saturday"
	TermTimesSunday    form.Key[[]form.TimeSpan] = "term.times.sunday"

	TermCycleDays  form.Key[int]             = "term.cycle_days"
	TermCycleFirst form.Key[int]             = "term.cycle_first"
	TermCycle      form.Key[[]form.Values]   = "term.cycle"
	CycleDay       form.Key[int]             = "day"
	CycleTimes     form.Key[[]form.TimeSpan] = "times"
	TermStormDays  form.Key[[]place.Date]    = "term.storm_days"

	TermHalfDays     form.Key[[]place.Date]  = "term.half_days"
	TermHalfDayUntil form.Key[time.Duration] = "term.half_day_until"
)

// MostCycleDays is the longest cycle of school days.
const MostCycleDays = 20

// weekdayTimes are the keys of the weekdays' own lesson times, by time.Weekday.
func weekdayTimes() []form.Key[[]form.TimeSpan] {
	return []form.Key[[]form.TimeSpan]{TermTimesSunday, TermTimesMonday, TermTimesTuesday, TermTimesWednesday, TermTimesThursday, TermTimesFriday, TermTimesSaturday}
}

// timetable describes the settings of a timetable whose days are not alike.
func timetable() form.Form {
	weekday := func(key form.Key[[]form.TimeSpan]) form.Field {
		return form.Field{Key: key, Max: 24, Assumed: "term.lesson_times", Doc: "Lesson times of this weekday, where it has its own; an empty list where it has none."}
	}
	return form.Form{
		weekday(TermTimesMonday), weekday(TermTimesTuesday), weekday(TermTimesWednesday), weekday(TermTimesThursday),
		weekday(TermTimesFriday), weekday(TermTimesSaturday), weekday(TermTimesSunday),
		{Key: TermCycleDays, Min: 2, Max: MostCycleDays, Assumed: "no cycle", Doc: "School days that the timetable counts before it begins again with day 1. A day off has no number, and the next school day takes it."},
		{Key: TermCycleFirst, Min: 1, Max: MostCycleDays, Default: 1, Doc: "Number of the first school day of the term in the cycle."},
		{Key: TermCycle, Max: MostCycleDays, Assumed: "the times of the weekday", Doc: "Days of the cycle that have their own lesson times, whatever weekday they fall on.", Fields: form.Form{
			{Key: CycleDay, Min: 1, Max: MostCycleDays, Required: true, Doc: "Number of the day in the cycle."},
			{Key: CycleTimes, Max: 24, Required: true, Doc: "Its lesson times; an empty list where it has none."},
		}},
		{Key: TermStormDays, Max: 400, Doc: "Dates on which the school had to close, as for a storm. They are days off, and their number in the cycle is lost: the printed calendar goes on as it was."},
		{Key: TermHalfDays, Max: 400, Doc: "Dates on which school ends early."},
		{Key: TermHalfDayUntil, Assumed: "12:00", Doc: "Time at which school ends on a half day; lesson times that end later are not held."},
	}
}

// TimetableSettings are the settings that say on which days there is school, and
// when its lessons are.
func TimetableSettings() form.Keys {
	keys := form.Keys{TermFirstDay, TermLastDay, TermSchoolDays, TermDaysOff, TermLessonTimes}
	for _, key := range weekdayTimes() {
		keys = append(keys, key)
	}
	return append(keys, TermCycleDays, TermCycleFirst, TermCycle, TermStormDays, TermHalfDays, TermHalfDayUntil)
}

// LessonTimesOn returns the lesson times of a date, as if it were a school day.
func LessonTimesOn(term classroom.Term, d place.Date) []form.TimeSpan {
	var times []form.TimeSpan
	for _, s := range term.TimesOn(d) {
		times = append(times, form.TimeSpan(s))
	}
	return times
}

// EnteredTimesOn returns the lesson times of a date, as if it were a school day; none
// where the school enters no times.
func EnteredTimesOn(v form.Values, d place.Date) []form.TimeSpan {
	term := Term(v)
	if _, entered := LessonTimes(v); !entered && len(term.Weekly) == 0 && len(term.Cycle.Times) == 0 {
		return nil
	}
	return LessonTimesOn(term, d)
}

// ordered sorts lesson times, without those that lie over one another, which source
// reports.
func ordered(spans []form.TimeSpan) []classroom.Span {
	var times []classroom.Span
	for _, s := range slices.SortedFunc(slices.Values(spans), func(a, b form.TimeSpan) int { return cmp.Compare(a.From, b.From) }) {
		if n := len(times); n == 0 || times[n-1].To <= s.From {
			times = append(times, classroom.Span(s))
		}
	}
	return times
}

// vary adds to a term in what its days are not alike.
func vary(term *classroom.Term, v form.Values) {
	for day, key := range weekdayTimes() {
		if key.In(v) {
			if term.Weekly == nil {
				term.Weekly = map[time.Weekday][]classroom.Span{}
			}
			term.Weekly[time.Weekday(day)] = ordered(key.Of(v))
		}
	}
	if storms := TermStormDays.Of(v); len(storms) > 0 {
		term.DaysOff = slices.Concat(term.DaysOff, storms)
	}
	if n := TermCycleDays.Of(v); n > 0 {
		term.Cycle = classroom.Cycle{Days: n, First: TermCycleFirst.Of(v), Lost: TermStormDays.Of(v)}
		for _, row := range TermCycle.Of(v) {
			if term.Cycle.Times == nil {
				term.Cycle.Times = map[int][]classroom.Span{}
			}
			term.Cycle.Times[CycleDay.Of(row)] = ordered(CycleTimes.Of(row))
		}
	}
	for _, d := range TermHalfDays.Of(v) {
		if term.Until == nil {
			term.Until = map[place.Date]time.Duration{}
		}
		term.Until[d] = HalfDayUntil(v)
	}
}

// HalfDayUntil is when school ends on a half day.
func HalfDayUntil(v form.Values) time.Duration {
	if TermHalfDayUntil.In(v) {
		return TermHalfDayUntil.Of(v)
	}
	return 12 * time.Hour
}
