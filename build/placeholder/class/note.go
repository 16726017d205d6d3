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

// What the entry takes.
const (
	argEvenings    form.Key[bool] = "evenings"
	argPhotographs form.Key[bool] = "photographs"
)

func familyNote() entry.Entry {
	return entry.Entry{
		Name:      "family-note",
		Summary:   "A note to families: what the class will do and when, what to send to school by which day, how everyone stays safe, and a slip to cut off and send back.",
		Printable: true, Lessons: true, For: entry.EachPupil, OnSheet: func(form.Values) int { return slipsDown },
		Arguments: form.Form{
			{Key: argLesson, Min: 0, Max: 1000, Default: 0, Doc: "Number of the one lesson that the note is about, from 1; 0 for the whole unit."},
			{Key: argEvenings, Assumed: "true where a lesson of it needs the dark", Doc: "It is about evenings at home too, as for a diary of the Moon, and its slip asks for a yes to them."},
			{Key: argPhotographs, Default: true, Doc: "Its slip asks whether the child may be in photographs. Without a yes there is none of the child."},
		},
		Settings: append(school.CalendarSettings(), school.Paper, school.UnitTitle, school.ClassPupils, school.ClassGroupSize, school.SuppliesHomeDays, school.SuppliesNoteDays),
		Facts: []entry.Fact{
			{Name: "things", Doc: "how many kinds of things are asked for"},
			{Name: "send_by", Doc: "the day on which the note should go out"},
			{Name: "first_by", Doc: "the day by which the first thing is wanted"},
			{Name: "slip_by", Doc: "the day by which the slip should be back"},
			{Name: "outside", Doc: "how many lessons go out into the Sun"},
			{Name: "evenings", Doc: "how many need the dark"},
		},
		Sources:   []string{"Counts and dates: the lessons' kit and calendar", entry.SourceIANA},
		Cautions:  []string{entry.CareFamilySun},
		Sometimes: []string{entry.CareFamilyOutside, entry.CareFamilyEvening},
		Reckon:    reckonFamilyNote,
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
	outside, evenings, asked := 0, 0, askedFor{photograph: argPhotographs.Of(v)}
	atHome := argEvenings.In(v) && argEvenings.Of(v)
	for i, l := range lessons {
		if !told(i) {
			continue
		}
		counted[i] = l
		outside += count(l.Needs, classroom.SunUp, classroom.HourMarks)
		evenings += inTheDark(l)
		atHome = atHome || inTheDark(l) > 0 && !l.Evening
		asked.outing = asked.outing || count(l.Needs, classroom.SunUp, classroom.HourMarks, classroom.MoonUp, classroom.Dry) > 0
	}
	asked.evening = evenings > 0 || atHome
	var askings []asking
	for _, line := range classroom.List(counted, school.ClassPupils.Of(v), classroom.Groups(school.ClassPupils.Of(v), school.ClassGroupSize.Of(v))) {
		if by, ok := neededBy(v, line, held); ok && line.Source == classroom.FromHome && line.Need > 0 {
			askings = append(askings, asking{line, by})
		}
	}
	slices.SortStableFunc(askings, func(a, b asking) int { return cmp.Compare(b.by.DaysUntil(a.by), 0) })
	back := say.None("family-note.no_day")
	first := firstDay(held, told)
	if !first.IsZero() {
		first = school.Term(v).Before(first, school.SuppliesHomeDays.Of(v))
		back = say.Date(first)
	}
	r := result.Result{
		Facts:    familyFacts(v, askings, first, outside, evenings),
		Cautions: familySafety(outside, asked.evening),
		Notes:    []say.Phrase{say.Line("family-note.dear", say.Text(school.UnitTitle.Of(v)))},
	}
	if len(askings) > 0 {
		r.Tables = append(r.Tables, askingTable(askings))
		r.Notes = append(r.Notes, say.Line("family-note.please"))
	} else {
		r.Notes = append(r.Notes, say.Line("family-note.nothing"))
	}
	if dates := familyDates(v, lessons, held, told); len(dates.Rows) > 0 {
		r.Tables = append(r.Tables, dates)
	}
	r.Notes = append(r.Notes, eveningNotes(v, counted, atHome)...)
	if back.Kind == say.Nothing {
		r.Notes = append(r.Notes, say.Line("family-note.slip"))
		back = say.Text("______")
	} else {
		r.Notes = append(r.Notes, say.Line("family-note.slip_until", back))
	}
	if asked.photograph {
		r.Notes = append(r.Notes, say.Line("family-note.photographs"))
	}
	r.Sheets = slipSheets(v, slip{school.UnitTitle.Of(v), back, asked.lines(), []string{"family-note.slip_send", "family-note.slip_know"}})
	return r, nil
}

// eveningNotes tell families how evenings at home go, and by when it is dark where the
// calendar found such a day.
func eveningNotes(v form.Values, lessons []classroom.Lesson, evening bool) (notes []say.Phrase) {
	calendar := entry.HeldOn(v)
	if !evening {
		return nil
	}
	notes = append(notes, say.Line("family-note.evenings"))
	for i, l := range lessons {
		for _, n := range l.Needs {
			if n.Kind == classroom.DarkBy && len(calendar.Lacks(i+1)) == 0 {
				day := calendar.Held[i].Date
				notes = append(notes, say.Line("family-note.dark_by", entry.Weekday(day), say.Clock(classroom.Moment(school.Place(v), day, n.By))))
			}
		}
	}
	return notes
}

// inTheDark is 1 for a lesson that is held in the dark, or has homework then.
func inTheDark(l classroom.Lesson) int {
	if l.Evening {
		return 1
	}
	return count(l.Needs, classroom.Dark, classroom.DarkBy)
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
func familySafety(outside int, evening bool) []say.Phrase {
	var safety []say.Phrase
	if outside > 0 {
		safety = append(safety, entry.Caution(entry.CareFamilyOutside))
	}
	if evening {
		safety = append(safety, entry.Caution(entry.CareFamilyEvening))
	}
	return safety
}

// familyFacts are those of a note whose slip should be back by a day; the zero day is
// none.
func familyFacts(v form.Values, askings []asking, back place.Date, outside, evenings int) []result.Fact {
	send, first, slip := say.None("family-note.no_day"), say.None("family-note.no_day"), say.None("family-note.no_day")
	earliest := back
	if !back.IsZero() {
		slip = say.Date(back)
	}
	if len(askings) > 0 {
		first = say.Date(askings[0].by)
		if earliest.IsZero() || askings[0].by.Before(earliest) {
			earliest = askings[0].by
		}
	}
	if !earliest.IsZero() {
		send = say.Date(school.Term(v).Before(earliest, school.SuppliesNoteDays.Of(v)))
	}
	return []result.Fact{
		{Name: "things", Value: say.Count(len(askings))}, {Name: "send_by", Value: send}, {Name: "first_by", Value: first}, {Name: "slip_by", Value: slip},
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
func familyDates(v form.Values, lessons []classroom.Lesson, held []classroom.Held, told func(int) bool) result.Table {
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
		case l.Evening:
			p := school.Place(v)
			from, to := held[i].Moments(p)
			wear = say.Words("family-note.wear_at_school", say.Clock(from), say.Clock(to))
		case inTheDark(l) > 0:
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
