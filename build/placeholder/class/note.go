package class

import (
	"cmp"
	"slices"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/classroom"
	"noonbook/compute/place"
)

func familyNote() entry.Entry {
	return entry.Entry{
		Name:    "family-note",
		Summary: "A note to families: what the class will do and when, what to send to school by which day, and how everyone stays safe.",
		Lessons: true,
		Arguments: form.Form{
			{Key: argLesson, Min: 0, Max: 1000, Default: 0, Doc: "Number of the one lesson that the note is about, from 1; 0 for the whole unit."},
		},
		Settings: append(school.CalendarSettings(), school.UnitTitle, school.ClassPupils, school.ClassGroupSize, school.SuppliesHomeDays, school.SuppliesNoteDays),
		Facts: []entry.Fact{
			{Name: "things", Doc: "how many kinds of things are asked for"},
			{Name: "send_by", Doc: "the day on which the note should go out"},
			{Name: "first_by", Doc: "the day by which the first thing is wanted"},
			{Name: "outside", Doc: "how many lessons go out into the Sun"},
			{Name: "evenings", Doc: "how many need the dark"},
		},
		Sources:  []string{"Counts and dates: the lessons' kit and calendar", entry.SourceIANA},
		Cautions: []string{entry.CareFamilySun},
		Reckon:   reckonFamilyNote,
	}
}

// An asking is one thing that families are asked for.
type asking struct {
	classroom.Line
	by place.Date
}

func reckonFamilyNote(v form.Values) (result.Result, error) {
	lessons, held, only := entry.Lessons(v), entry.HeldOn(v).Held, argLesson.Of(v)
	if only > len(lessons) {
		return result.Result{}, entry.LessonRange(only, len(lessons))
	}
	told := func(i int) bool { return (only == 0 || only == i+1) && held[i].Placed }
	counted := make([]classroom.Lesson, len(lessons)) // those that are not told have no kit
	outside, evenings := 0, 0
	for i, l := range lessons {
		if !told(i) {
			continue
		}
		counted[i] = l
		outside += count(l.Needs, classroom.SunUp, classroom.HourMarks)
		evenings += count(l.Needs, classroom.Dark, classroom.DarkBy)
	}
	var askings []asking
	for _, line := range classroom.List(counted, school.ClassPupils.Of(v), classroom.Groups(school.ClassPupils.Of(v), school.ClassGroupSize.Of(v))) {
		if by, ok := neededBy(v, line, held); ok && line.Source == classroom.FromHome && line.Need > 0 {
			askings = append(askings, asking{line, by})
		}
	}
	slices.SortStableFunc(askings, func(a, b asking) int { return cmp.Compare(b.by.DaysUntil(a.by), 0) })
	r := result.Result{
		Facts:    familyFacts(v, askings, outside, evenings),
		Cautions: familySafety(outside, evenings),
		Notes:    []say.Phrase{say.Line("family-note.dear", say.Text(school.UnitTitle.Of(v)))},
	}
	if len(askings) > 0 {
		r.Tables = append(r.Tables, askingTable(askings))
		r.Notes = append(r.Notes, say.Line("family-note.please"))
	} else {
		r.Notes = append(r.Notes, say.Line("family-note.nothing"))
	}
	if dates := familyDates(lessons, held, told); len(dates.Rows) > 0 {
		r.Tables = append(r.Tables, dates)
	}
	r.Notes = append(r.Notes, say.Line("family-note.slip"))
	return r, nil
}

// count is 1 where some of the needs are of the kinds, else 0.
func count(needs []classroom.Need, kinds ...classroom.NeedKind) int {
	if slices.ContainsFunc(needs, func(n classroom.Need) bool { return slices.Contains(kinds, n.Kind) }) {
		return 1
	}
	return 0
}

// familySafety is what families must know first, besides the Sun's line, which is always
// there: whoever hears of a space unit looks up at home.
func familySafety(outside, evenings int) []say.Phrase {
	var safety []say.Phrase
	if outside > 0 {
		safety = append(safety, entry.Caution(entry.CareFamilyOutside))
	}
	if evenings > 0 {
		safety = append(safety, entry.Caution(entry.CareFamilyEvening))
	}
	return safety
}

func familyFacts(v form.Values, askings []asking, outside, evenings int) []result.Fact {
	send, first := say.None("family-note.no_day"), say.None("family-note.no_day")
	if len(askings) > 0 {
		first = say.Date(askings[0].by)
		send = say.Date(school.Term(v).Before(askings[0].by, school.SuppliesNoteDays.Of(v)))
	}
	return []result.Fact{
		{Name: "things", Value: say.Count(len(askings))}, {Name: "send_by", Value: send}, {Name: "first_by", Value: first},
		{Name: "outside", Value: say.Count(outside)}, {Name: "evenings", Value: say.Count(evenings)},
	}
}

func askingTable(askings []asking) result.Table {
	table := result.Table{
		Name: "things", Title: say.Line("family-note.things_title"),
		Columns: []result.Column{{Name: "thing"}, {Name: "count"}, {Name: "by"}},
	}
	for _, a := range askings {
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{say.Text(a.Item), say.Count(a.Need), entry.Weekday(a.by)}})
	}
	return table
}

// familyDates lists what the class does when, and what that means at home.
func familyDates(lessons []classroom.Lesson, held []classroom.Held, told func(int) bool) result.Table {
	table := result.Table{
		Name: "days", Title: say.Line("family-note.days_title"),
		Columns: []result.Column{{Name: "day"}, {Name: "lesson"}, {Name: "wear"}},
	}
	for i, l := range lessons {
		if !told(i) {
			continue
		}
		wear := say.None("sky.dash")
		switch {
		case count(l.Needs, classroom.Dark, classroom.DarkBy) > 0:
			wear = say.Words("family-note.wear_evening")
		case count(l.Needs, classroom.SunUp, classroom.HourMarks) > 0:
			wear = say.Words("family-note.wear_sun")
		case count(l.Needs, classroom.Dry) > 0:
			wear = say.Words("family-note.wear_out")
		}
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{entry.Weekday(held[i].Date), say.Text(l.Title), wear}})
	}
	return table
}
