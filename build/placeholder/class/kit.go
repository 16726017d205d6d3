package class

import (
	"slices"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/classroom"
	"noonbook/compute/place"
)

// What the entry takes.
const (
	argLesson   form.Key[int]  = "lesson"
	argByLesson form.Key[bool] = "by_lesson"
)

func kitList() entry.Entry {
	return entry.Entry{
		Name:    "kit-list",
		Summary: "What the unit needs, lesson by lesson and in all: what the school has, what to buy and what it costs, what pupils bring from home and by when.",
		Arguments: form.Form{
			{Key: argLesson, Min: 0, Max: 1000, Default: 0, Doc: "Number of one lesson, from 1; 0 for the whole unit."},
			{Key: argByLesson, Default: false, Doc: "Also list the things lesson by lesson."},
		},
		Settings: append(school.CalendarSettings(), school.ClassPupils, school.ClassGroupSize, school.SuppliesCurrency, school.SuppliesHomeDays, school.SuppliesNoteDays),
		Lessons:  true,
		Facts: []entry.Fact{
			{Name: "things", Doc: "number of things"},
			{Name: "at_school", Doc: "how many of them the school has"},
			{Name: "to_buy", Doc: "how many are bought"},
			{Name: "from_home", Doc: "how many come from home"},
			{Name: "cost", Doc: "what the bought ones with a price cost together"},
			{Name: "home_by", Doc: "day by which the first thing from home should be there"},
			{Name: "note_by", Doc: "day by which the note to families should go out"},
		},
		Sources:  []string{"Counts: the lessons' kit, for the pupils and groups of the class; what is used up adds up, of what serves again the most that one lesson needs is enough"},
		Harmless: "A list of things to get; each placeholder and lesson tells the care of its own things.",
		Reckon:   reckonKit,
	}
}

func reckonKit(v form.Values) (result.Result, error) {
	lessons, calendar := entry.Lessons(v), entry.HeldOn(v)
	if n := argLesson.Of(v); n > len(lessons) {
		return result.Result{}, entry.LessonRange(n, len(lessons))
	}
	pupils := school.ClassPupils.Of(v)
	groups := classroom.Groups(pupils, school.ClassGroupSize.Of(v))
	counted := lessons
	if n := argLesson.Of(v); n > 0 {
		counted = make([]classroom.Lesson, len(lessons)) // the others have no kit
		counted[n-1] = lessons[n-1]
	}
	lines := slices.DeleteFunc(classroom.List(counted, pupils, groups), func(l classroom.Line) bool { return l.Need == 0 })
	r := result.Result{}
	if len(lines) > 0 {
		r.Tables = append(r.Tables, kitTable(v, lines, calendar))
	}
	if argByLesson.Of(v) && len(lines) > 0 {
		r.Tables = append(r.Tables, lessonKitTable(counted, calendar, pupils, groups))
	}
	var count [3]int
	cost, priced := 0.0, false
	var home place.Date
	for _, line := range lines {
		count[line.Source]++
		if line.Source == classroom.ToBuy && line.Packs > 0 {
			cost, priced = cost+line.Cost, true
		}
		if by, ok := neededBy(v, line, calendar.Held); ok && line.Source == classroom.FromHome && (home.IsZero() || by.Before(home)) {
			home = by
		}
	}
	price := say.None("kit-list.no_price")
	if priced {
		price = money(v, cost)
	}
	homeBy, noteBy := say.None("kit-list.nothing_home"), say.None("kit-list.nothing_home")
	if !home.IsZero() {
		note := school.Term(v).Before(home, school.SuppliesNoteDays.Of(v))
		homeBy, noteBy = say.Date(home), say.Date(note)
		r.Notes = append(r.Notes, say.Line("kit-list.note_home", noteBy))
		if first := school.TermFirstDay.Of(v); note.Before(first) {
			r.Notes = append(r.Notes, say.Line("kit-list.before_term", say.Date(first)))
		}
	}
	if pupils == 0 {
		r.Warnings = append(r.Warnings, say.Line("kit-list.no_pupils"))
	}
	r.Notes = append(r.Notes, say.Line("kit-list.note"))
	r.Facts = []result.Fact{
		{Name: "things", Value: say.Count(len(lines))},
		{Name: "at_school", Value: say.Count(count[classroom.AtSchool])},
		{Name: "to_buy", Value: say.Count(count[classroom.ToBuy])},
		{Name: "from_home", Value: say.Count(count[classroom.FromHome])},
		{Name: "cost", Value: price},
		{Name: "home_by", Value: homeBy},
		{Name: "note_by", Value: noteBy},
	}
	return r, nil
}

// neededBy is the day by which a thing has to be at school. Lessons with dates of
// their own need not be held in their order, so the first in the unit may not be
// the first on which it is needed.
func neededBy(v form.Values, line classroom.Line, held []classroom.Held) (place.Date, bool) {
	var first place.Date
	for _, n := range line.Lessons {
		if h := held[n-1]; h.Placed && (first.IsZero() || h.Date.Before(first)) {
			first = h.Date
		}
	}
	if line.Source == classroom.FromHome && !first.IsZero() {
		first = school.Term(v).Before(first, school.SuppliesHomeDays.Of(v))
	}
	return first, !first.IsZero()
}

// money is a sum in the school's currency.
func money(v form.Values, sum float64) say.Value {
	value := say.Number(sum, "", 2)
	if sum == float64(int(sum)) {
		value.Decimals = 0
	}
	if currency := school.SuppliesCurrency.Of(v); currency != "" {
		return value.As("kit-list.money", value, say.Text(currency))
	}
	return value
}

func kitTable(v form.Values, lines []classroom.Line, calendar classroom.Calendar) result.Table {
	table := result.Table{
		Name: "list", Title: say.Line("kit-list.title"),
		Columns: []result.Column{{Name: "thing"}, {Name: "count"}, {Name: "source"}, {Name: "by"}, {Name: "lessons"}, {Name: "cost"}},
	}
	for _, source := range []classroom.Source{classroom.ToBuy, classroom.FromHome, classroom.AtSchool} {
		for _, line := range lines {
			if line.Source != source {
				continue
			}
			by := say.None("unit-plan.no_room")
			if date, ok := neededBy(v, line, calendar.Held); ok {
				by = say.Date(date).As("format.day_month", say.Count(date.Day), entry.ShortMonth(date.Month))
			}
			cost := say.None("sky.dash")
			if line.Packs > 0 && source == classroom.ToBuy {
				cost = money(v, line.Cost)
			}
			var in []say.Value
			for _, n := range line.Lessons {
				in = append(in, say.Count(n))
			}
			table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
				say.Text(line.Item), say.Count(line.Need), sourceWord(source), by, entry.Listed(in), cost,
			}})
		}
	}
	return table
}

func sourceWord(s classroom.Source) say.Value {
	return say.Words([...]string{"kit-list.have", "kit-list.buy", "kit-list.home"}[s])
}

func lessonKitTable(lessons []classroom.Lesson, calendar classroom.Calendar, pupils int, groups []int) result.Table {
	table := result.Table{
		Name: "lessons", Title: say.Line("kit-list.lessons_title"),
		Columns: []result.Column{{Name: "lesson"}, {Name: "date"}, {Name: "count"}, {Name: "thing"}, {Name: "source"}},
	}
	for i, l := range lessons {
		date := say.None("unit-plan.no_room")
		if calendar.Held[i].Placed {
			date = entry.Weekday(calendar.Held[i].Date)
		}
		for _, t := range l.Kit {
			table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
				numbered(i+1, l), date, say.Count(t.Need(pupils, groups)), say.Text(t.Item), sourceWord(t.Source),
			}})
		}
	}
	return table
}
