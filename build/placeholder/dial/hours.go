package dial

import (
	"slices"
	"time"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/classroom"
	"noonbook/compute/dial"
	"noonbook/compute/place"
)

// What the entry takes.
const (
	argFrom      form.Key[time.Duration] = "from"
	argTo        form.Key[time.Duration] = "to"
	argShowLines form.Key[bool]          = "lines"
)

func dialHours() entry.Entry {
	return entry.Entry{
		Name:    "dial-hours",
		Summary: "The marking day hour by hour: which group goes out when, and where the mark of a true dial lies.",
		Arguments: form.Form{entry.OnDate(),
			{Key: argFrom, Assumed: "the whole hour before the first of term.lesson_times", Doc: "First hour that is marked."},
			{Key: argTo, Assumed: "the whole hour after the last of term.lesson_times", Doc: "Last hour that is marked."},
			{Key: argShowLines, Default: true, Doc: "Whether the table says where the lines of a true dial lie; pupils are to find that out."},
		},
		Settings: slices.Concat(school.Where(), form.Keys{school.StockPolarHeightMM, school.ClassPupils, school.ClassGroupSize}, school.TimetableSettings()),
		Facts: []entry.Fact{
			{Name: "rounds", Doc: "how many whole hours of the clock can be marked"},
			{Name: "first", Doc: "the first of them"},
			{Name: "last", Doc: "the last of them"},
			{Name: "in_lessons", Doc: "how many of them fall within a lesson time"},
		},
		Sources:  []string{entry.SourceSun, sourceDial, sourcePolar, entry.SourceIANA},
		Cautions: []string{entry.CareSun, entry.CareHourKeepers},
		Reckon:   reckonDialHours,
	}
}

func reckonDialHours(v form.Values) (result.Result, error) {
	p, date := school.Place(v), entry.Date.Of(v)
	slots := school.EnteredTimesOn(v, date)
	groups := len(classroom.Groups(school.ClassPupils.Of(v), school.ClassGroupSize.Of(v)))
	table := result.Table{
		Name: "hours", Title: say.Line("dial-hours.title", say.Date(date)),
		Columns: []result.Column{{Name: "clock"}, {Name: "group"}, {Name: "during"}, {Name: "sun_time", Unit: "h"}, {Name: "line_angle", Unit: "deg"}},
	}
	polar := builds(v) == dial.Polar
	if polar {
		table.Columns[4] = result.Column{Name: "distance", Unit: "mm"}
	}
	from, to := markingHours(v)
	var hours []time.Time
	inLessons := 0
	for hour := from; hour <= to; hour += time.Hour {
		at := p.Clock(date, int(hour/time.Hour), 0).In(p.Zone)
		angle, declination := dial.SunAt(p, at)
		line, lit := dial.True(p.Latitude).Line(dial.SunDirection(p.Latitude, declination, angle))
		if !lit {
			continue
		}
		where := say.Number(line.Degrees(), "deg", 1)
		if polar {
			where = polarDistance(polarHeight(v), angle)
		}
		during := say.Words("dial-hours.between")
		if slot := slotAt(slots, hour); slot > 0 {
			during = say.Words("dial-hours.lesson", say.Count(slot))
			inLessons++
		}
		group := say.Words("dial-hours.anyone")
		if groups > 0 {
			group = say.Words("dial-hours.group", say.Count(len(hours)%groups+1))
		}
		hours = append(hours, at)
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
			say.Clock(at), group, during,
			sunTime(12*time.Hour + time.Duration(angle.Hours()*float64(time.Hour))),
			where,
		}})
	}
	first, last := say.None("dial-hours.no_sun"), say.None("dial-hours.no_sun")
	r := result.Result{}
	if !argShowLines.Of(v) {
		table.Columns = table.Columns[:3]
		for i := range table.Rows {
			table.Rows[i].Cells = table.Rows[i].Cells[:3]
		}
	}
	if len(hours) > 0 {
		first, last = say.Clock(hours[0]), say.Clock(hours[len(hours)-1])
		r.Tables = []result.Table{table}
		if argShowLines.Of(v) {
			r.Notes = []say.Phrase{say.Line("dial-hours.note")}
		}
	} else {
		r.Warnings = []say.Phrase{say.Line("dial-hours.dark", say.Date(date))}
	}
	if _, jump, ok := changeOn(p, date); ok {
		r.Warnings = append(r.Warnings, say.Line("dial-hours.clock_change", say.Minutes(jump.Abs())))
	}
	r.Facts = []result.Fact{
		{Name: "rounds", Value: say.Count(len(hours))},
		{Name: "first", Value: first},
		{Name: "last", Value: last},
		{Name: "in_lessons", Value: say.Count(inLessons)},
	}
	return r, nil
}

// markingHours are the first and last whole hours of the marking day.
func markingHours(v form.Values) (from, to time.Duration) {
	from, to = 9*time.Hour, 15*time.Hour // a school day, where no lesson times are given
	for i, slot := range school.EnteredTimesOn(v, entry.Date.Of(v)) {
		begin, end := slot.From.Truncate(time.Hour), (slot.To + time.Hour - 1).Truncate(time.Hour)
		if i == 0 {
			from, to = begin, end
		}
		from, to = min(from, begin), max(to, end)
	}
	if argFrom.In(v) {
		from = (argFrom.Of(v) + time.Hour - 1).Truncate(time.Hour)
	}
	if argTo.In(v) {
		to = argTo.Of(v).Truncate(time.Hour)
	}
	return from, min(to, 23*time.Hour)
}

// slotAt is the number of the lesson time that a moment falls in, from 1.
func slotAt(slots []form.TimeSpan, at time.Duration) int {
	return 1 + slices.IndexFunc(slots, func(s form.TimeSpan) bool { return s.From <= at && at < s.To })
}

// changeOn is the clock change of a day, if it has one.
func changeOn(p place.Place, d place.Date) (at time.Time, jump time.Duration, ok bool) {
	from, to := p.Day(d)
	at, jump, ok = p.NextChange(from.Add(-time.Second))
	return at, jump, ok && at.Before(to)
}
