package class

import (
	"slices"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/almanac"
	"noonbook/compute/classroom"
	"noonbook/compute/place"
)

func unitPlan() entry.Entry {
	return entry.Entry{
		Name:      "unit-plan",
		Summary:   "The unit's calendar: when each lesson is held, what the sky does then, what happens when it rains, and what could not be had.",
		Settings:  append(school.CalendarSettings(), school.Paper, school.UnitTitle),
		Printable: true, Lessons: true, For: entry.OneClass,
		Facts: []entry.Fact{
			{Name: "lessons", Doc: "number of lessons"},
			{Name: "first", Doc: "day of the first lesson"},
			{Name: "last", Doc: "day of the last lesson"},
			{Name: "school_days", Doc: "school days of the term"},
			{Name: "lesson_times", Doc: "lesson times of the term"},
			{Name: "conflicts", Doc: "how many needs could not be met, lessons without room included"},
			{Name: "reserves", Doc: "lessons that the weather can spoil and that have a reserve"},
			{Name: "unprotected", Doc: "lessons that the weather can spoil and that have none"},
		},
		Sources: []string{"Days: the earliest that meet every need, or a smallest set of needs left unmet, as compute/classroom documents", entry.SourceSun, entry.SourceMoon, entry.SourceIANA,
			"Needs of the sky: Sun and Moon 10° high, as seen, where the lesson says nothing else, the Moon at least 35° from the Sun; dark is civil twilight's end, the Sun 6° down: common practice, no source"},
		Harmless: "Days of the lessons, to read.",
		Reckon:   reckonPlan,
	}
}

func reckonPlan(v form.Values) (result.Result, error) {
	lessons, calendar, term := entry.Lessons(v), entry.HeldOn(v), school.Term(v)
	if err := entry.SchoolRange(term.First, term.Last); err != nil {
		return result.Result{}, err
	}
	r := result.Result{}
	if len(lessons) > 0 {
		r.Tables = append(r.Tables, planTable(v, lessons, calendar))
	}
	conflicts := conflictRows(v, lessons, calendar)
	if len(conflicts) > 0 {
		r.Tables = append(r.Tables, result.Table{
			Name: "conflicts", Title: say.Line("unit-plan.conflict_title"),
			Columns: []result.Column{{Name: "lesson"}, {Name: "what"}}, Rows: conflicts,
		})
		if !calendar.Smallest {
			r.Notes = append(r.Notes, say.Line("unit-plan.not_smallest"))
		}
	}
	reserves, none := 0, 0
	var held []classroom.Held
	for _, h := range calendar.Held {
		switch h.Reserve.Kind {
		case classroom.NoTime:
			none++
		case classroom.NotNeeded:
		default:
			reserves++
		}
		if h.Placed {
			held = append(held, h)
		}
	}
	first, last := say.None("unit-plan.no_lessons"), say.None("unit-plan.no_lessons")
	if len(held) > 0 {
		day := func(a, b classroom.Held) int { return a.Date.UTC().Compare(b.Date.UTC()) }
		first, last = say.Date(slices.MinFunc(held, day).Date), say.Date(slices.MaxFunc(held, day).Date)
	}
	r.Notes = append(r.Notes, say.Line("unit-plan.note"))
	if slices.ContainsFunc(lessons, func(l classroom.Lesson) bool { return l.Evening }) {
		r.Notes = append(r.Notes, say.Line("unit-plan.evening"))
	}
	r.Sheets = planSheets(v, lessons, calendar)
	r.Facts = []result.Fact{
		{Name: "lessons", Value: say.Count(len(lessons))},
		{Name: "first", Value: first},
		{Name: "last", Value: last},
		{Name: "school_days", Value: say.Count(len(term.Days()))},
		{Name: "lesson_times", Value: say.Count(len(term.Slots()))},
		{Name: "conflicts", Value: say.Count(len(conflicts))},
		{Name: "reserves", Value: say.Count(reserves)},
		{Name: "unprotected", Value: say.Count(none)},
	}
	return r, nil
}

func planTable(v form.Values, lessons []classroom.Lesson, calendar classroom.Calendar) result.Table {
	p, term := school.Place(v), school.Term(v)
	table := result.Table{
		Name: "plan", Title: say.Line("unit-plan.title"),
		Columns: []result.Column{{Name: "lesson"}, {Name: "date"}, {Name: "begins"}, {Name: "ends"}, {Name: "sky"}, {Name: "wet"}},
	}
	for i, h := range calendar.Held {
		l := lessons[i]
		cells := []say.Value{numbered(i+1, l)}
		if !h.Placed {
			none := say.None("unit-plan.no_room")
			cells = append(cells, none, none, none, none, none)
			table.Rows = append(table.Rows, result.Row{Cells: cells, Marked: true})
			continue
		}
		from, _ := h.Moments(p)
		_, to := h.End().Moments(p)
		sky := skyDuring(p, h.Slot)
		for _, more := range h.More {
			begins, _ := more.Moments(p)
			sky = say.Words("unit-plan.again", sky, say.Clock(begins))
		}
		cells = append(cells, inCycle(term, h.Date), say.Clock(from), say.Clock(to), sky, wetWords(p, term, lessons, h))
		table.Rows = append(table.Rows, result.Row{Cells: cells, Marked: len(calendar.Lacks(i+1)) > 0 || astray(term, h.Date) != ""})
	}
	return table
}

// inCycle is a date, with its day of the cycle where the school has one.
func inCycle(term classroom.Term, d place.Date) say.Value {
	date := entry.Weekday(d)
	if day := term.CycleDay(d); day > 0 {
		return date.As("page.cycle_day", date, say.Count(day))
	}
	return date
}

// numbered is a lesson's name with its number.
func numbered(number int, l classroom.Lesson) say.Value {
	return say.Text(l.Title).As("unit-plan.numbered", say.Count(number), say.Text(l.Title))
}

// skyDuring says what Sun and Moon do during a lesson.
func skyDuring(p place.Place, s classroom.Slot) say.Value {
	from, to := s.Moments(p)
	begin, end := almanac.SunFrom(p, from), almanac.SunFrom(p, to)
	high := max(begin.Altitude, end.Altitude)
	var sky say.Value
	switch {
	case min(begin.Altitude, end.Altitude) > entry.SunRise():
		sky = say.Words("unit-plan.sun", heightOf(begin), heightOf(end))
	case high <= almanac.CivilTwilight:
		sky = say.Words("unit-plan.dark")
	default:
		sky = say.Words("unit-plan.twilight")
	}
	middle := from.Add(to.Sub(from) / 2)
	if limb := almanac.Moon.LimbFrom(p, middle); entry.MoonUp(p, middle) && !classroom.MoonTooNear(p, middle) {
		where := almanac.MoonFrom(p, middle)
		return say.Words("unit-plan.moon", sky, entry.Toward(where.Azimuth), entry.Percent(limb.Lit))
	}
	return sky
}

func heightOf(h almanac.Horizontal) say.Value {
	return say.Degrees(entry.AsSeen(h.Altitude), 0)
}

// wetWords says what becomes of a lesson when the weather spoils it.
func wetWords(p place.Place, term classroom.Term, lessons []classroom.Lesson, h classroom.Held) say.Value {
	switch r := h.Reserve; r.Kind {
	case classroom.AtAnotherTime:
		from, _ := r.Moments(p)
		when := say.Words("unit-plan.reserve", inCycle(term, r.Date), say.Clock(from))
		if r.Late {
			when = say.Words("unit-plan.reserve_late", inCycle(term, r.Date), say.Clock(from))
		}
		return when
	case classroom.InExchange:
		from, _ := r.Moments(p)
		return say.Words("unit-plan.exchange", numbered(r.With, lessons[r.With-1]), inCycle(term, r.Date), say.Clock(from))
	case classroom.StaysIn:
		return say.Words("unit-plan.inside")
	case classroom.NoTime:
		return say.None("unit-plan.no_reserve")
	}
	return say.None("unit-plan.any_weather")
}

// astray names the line that says why a lesson cannot be held on a day that its
// page asks for; none when it can.
func astray(term classroom.Term, d place.Date) string {
	switch {
	case d.Before(term.First) || d.After(term.Last):
		return "unit-plan.outside"
	case !term.Holds(d):
		return "unit-plan.no_school"
	}
	return ""
}

// conflictRows says what the calendar could not give, and what would help.
func conflictRows(v form.Values, lessons []classroom.Lesson, calendar classroom.Calendar) []result.Row {
	var rows []result.Row
	row := func(i int, what say.Phrase) {
		rows = append(rows, result.Row{Cells: []say.Value{numbered(i+1, lessons[i]), {Kind: say.Wording, Phrase: what}}})
	}
	term := school.Term(v)
	for i, h := range calendar.Held {
		if h.Placed {
			if key := astray(term, h.Date); key != "" {
				row(i, say.Line(key, entry.Weekday(h.Date)))
			}
			continue
		}
		if lessons[i].Evening { // its rule says why
			continue
		}
		if !term.Fits(lessons[i]) {
			row(i, say.Line("unit-plan.too_long"))
			continue
		}
		switch days, daily := term.Enough(lessons); {
		case days > 0 && daily > 0:
			row(i, say.Line("unit-plan.more_either", say.Count(days), say.Count(daily)))
		case days > 0:
			row(i, say.Line("unit-plan.more_days", say.Count(days)))
		default:
			row(i, say.Line("unit-plan.no_way"))
		}
	}
	for _, rule := range calendar.Dropped {
		row(rule.Lesson-1, Conflict(v, lessons, calendar, rule))
	}
	return rows
}
