package class

import (
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/classroom"
	"noonbook/compute/place"
)

func printList() entry.Entry {
	return entry.Entry{
		Name:    "print-list",
		Summary: "What to print for the unit or for one lesson: which sheets, by when, how many copies, on what paper, and which must come out at true size.",
		Arguments: form.Form{
			{Key: argLesson, Min: 0, Max: 1000, Default: 0, Doc: "Number of one lesson, from 1; 0 for the whole unit."},
		},
		Settings: append(school.CalendarSettings(), school.ClassPupils, school.ClassGroupSize, school.Paper),
		Lessons:  true,
		Facts: []entry.Fact{
			{Name: "papers", Doc: "number of things to print, counted for each lesson"},
			{Name: "copies", Doc: "copies of all of them together, as far as lessons say how many"},
			{Name: "first_by", Doc: "day by which the first of them should be printed"},
			{Name: "true_size", Doc: "how many of them must come out at true size"},
		},
		Sources:  []string{"Copies: the things of the lessons' kit that are printed, for the pupils and groups of the class"},
		Harmless: "A list of sheets to print; each placeholder and lesson tells the care of its own.",
		Reckon:   reckonPrints,
	}
}

func reckonPrints(v form.Values) (result.Result, error) {
	lessons, held, only := entry.Lessons(v), entry.HeldOn(v).Held, argLesson.Of(v)
	if only > len(lessons) {
		return result.Result{}, entry.LessonRange(only, len(lessons))
	}
	pupils := school.ClassPupils.Of(v)
	groups := classroom.Groups(pupils, school.ClassGroupSize.Of(v))
	table := result.Table{
		Name: "list", Title: say.Line("print-list.title"),
		Columns: []result.Column{{Name: "lesson"}, {Name: "paper"}, {Name: "by"}, {Name: "copies"}, {Name: "format"}, {Name: "size"}},
	}
	copies, trueSize, uncounted := 0, 0, 0
	var first place.Date
	for i, l := range lessons {
		if only > 0 && only != i+1 {
			continue
		}
		by, day := say.None("unit-plan.no_room"), place.Date{}
		if held[i].Placed {
			day = school.Term(v).Before(held[i].Date, 1)
			by = entry.Weekday(day)
		}
		for _, p := range l.Papers(pupils, groups) {
			if !day.IsZero() && (first.IsZero() || day.Before(first)) {
				first = day
			}
			count := say.None("sky.dash")
			if p.Counted() {
				count, copies = say.Count(p.Copies), copies+p.Copies
			} else {
				uncounted++
			}
			size := say.Words("print-list.any_size")
			if p.TrueSize() {
				size, trueSize = say.Words("print-list.to_size"), trueSize+1
			}
			table.Rows = append(table.Rows, result.Row{Cells: []say.Value{numbered(i+1, l), paperName(p), by, count, paperFormat(v), size}})
		}
	}
	r := result.Result{}
	firstBy := say.None("print-list.nothing")
	if len(table.Rows) > 0 {
		r.Tables = []result.Table{table}
		if !first.IsZero() {
			firstBy = say.Date(first)
		}
		r.Notes = append(r.Notes, say.Line("print-list.sheets"))
		if trueSize > 0 {
			r.Notes = append(r.Notes, say.Line("print-list.note"))
		}
		if uncounted > 0 {
			r.Notes = append(r.Notes, say.Line("print-list.uncounted"))
		}
		if pupils == 0 {
			r.Warnings = append(r.Warnings, say.Line("kit-list.no_pupils"))
		}
	} else {
		r.Notes = append(r.Notes, say.Line("print-list.nothing"))
	}
	r.Facts = []result.Fact{
		{Name: "papers", Value: say.Count(len(table.Rows))},
		{Name: "copies", Value: say.Count(copies)},
		{Name: "first_by", Value: firstBy},
		{Name: "true_size", Value: say.Count(trueSize)},
	}
	return r, nil
}

// paperName names a paper as the pages do on which it is, with the thing that is printed
// where it is not the only one.
func paperName(p classroom.Papers) say.Value {
	name := say.Words(p.Print + ".name")
	switch p.Print {
	case classroom.PupilSheet:
		name = say.Words("pupil-sheet.name")
	case classroom.BuildCard:
		name = say.Words("card-sheet.name")
	}
	if p.Several {
		return say.Words("print-list.part", name, say.Text(p.Item))
	}
	return name
}

func paperFormat(v form.Values) say.Value {
	if school.Paper.Of(v) == "Letter" {
		return say.Words("sheet.letter")
	}
	return say.Words("sheet.a4")
}
