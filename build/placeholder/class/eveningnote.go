package class

import (
	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/classroom"
)

func eveningNote() entry.Entry {
	return entry.Entry{
		Name:      "evening-note",
		Summary:   "A letter to families about the evening under the sky, with a slip.",
		Printable: true, For: entry.EachPupil,
		Settings: append(eveningSettings(), school.Paper, school.UnitTitle, school.SuppliesHomeDays, school.SuppliesNoteDays),
		Facts: []entry.Fact{
			{Name: "send_by", Doc: "the day on which the letter should go out"},
			{Name: "slip_by", Doc: "the day by which the slip should be back"},
		},
		Sources:  []string{sourceEvening, entry.SourceIANA},
		Cautions: []string{entry.CareFamilyEvening},
		Reckon:   reckonEveningNote,
	}
}

func reckonEveningNote(v form.Values) (result.Result, error) {
	term := school.Term(v)
	if err := entry.SchoolRange(term.First, term.Last); err != nil {
		return result.Result{}, err
	}
	o := outingOf(v)
	if o.found == 0 {
		none := say.None("evening-plan.no_evening")
		return result.Result{
			Facts:    []result.Fact{{Name: "send_by", Value: none}, {Name: "slip_by", Value: none}},
			Warnings: []say.Phrase{say.Line("evening-plan.none", asSentence(NoEvening(v)))},
			Sheets:   o.letterSheet(v, append(o.letter(), say.Line("evening-note.slip", blank)), blank), // to fill in for another term
		}, nil
	}
	back := term.Before(o.night.Date, school.SuppliesHomeDays.Of(v))
	send := term.Before(back, school.SuppliesNoteDays.Of(v))
	letter := append(o.letter(), say.Line("evening-note.slip", say.Date(back)))
	return result.Result{
		Facts:  []result.Fact{{Name: "send_by", Value: say.Date(send)}, {Name: "slip_by", Value: say.Date(back)}},
		Notes:  letter,
		Sheets: o.letterSheet(v, letter, say.Date(back)),
	}, nil
}

// blank is room to write a date or a time.
var blank = say.Text("______")

// times are the day of an evening, its begin and its end, or room to write them.
func (o outing) times(e classroom.Evening, found bool) []say.Value {
	if !found {
		return []say.Value{blank, blank, blank}
	}
	from, to := e.Moments(o.p)
	return []say.Value{entry.Weekday(e.Date), o.clock(from), o.clock(to)}
}

// letter is what families read.
func (o outing) letter() []say.Phrase {
	notes := []say.Phrase{say.Line("evening-note.dear", o.times(o.night, o.found > 0)...), say.Line("evening-note.seen", entry.Listed(o.sights()))}
	if o.found == 1 {
		notes = append(notes, say.Line("evening-note.cloud"))
	} else {
		notes = append(notes, say.Line("evening-note.reserve", o.times(o.reserve, o.found > 0)...))
	}
	return append(notes, say.Line("evening-note.told"), say.Line("evening-note.wear"), say.Line("evening-note.bring"), say.Line("evening-note.way"), say.Line("evening-note.help"))
}

// sights are what the night shows besides the stars.
func (o outing) sights() (seen []say.Value) {
	if o.night.Moon {
		seen = append(seen, say.Words("evening-note.moon"))
	}
	if o.night.HasPlanet {
		seen = append(seen, entry.BodyWord(o.night.Planet))
	}
	return append(seen, say.Words("evening-note.stars"))
}

// slip asks whether the child comes, how it gets home and whom to call.
func (o outing) slip(v form.Values, back say.Value) slip {
	asks := []say.Value{say.Words("evening-note.slip_night", o.times(o.night, o.found > 0)[0])}
	if o.found != 1 {
		asks = append(asks, say.Words("evening-note.slip_reserve", o.times(o.reserve, o.found > 0)[0]))
	}
	return slip{school.UnitTitle.Of(v), back, append(asks, say.Words("evening-note.slip_help")),
		[]string{"evening-note.slip_fetched", "evening-note.slip_phone", "family-note.slip_know"}}
}

// Measures of the letter in millimetres.
const (
	letterStep = 14.0 // from paragraph to paragraph; a longer one pushes the next on
	letterLine = 4.9
	letterSlip = 86.0 // at the foot of the sheet
)

// letterSheet is the letter with its slip below, a sheet for each pupil.
func (o outing) letterSheet(v form.Values, letter []say.Phrase, back say.Value) []drawing.Sheet {
	paper := drawing.PaperOf(school.Paper.Of(v))
	width, height := paper.Area()
	d := drawing.Drawing{
		Name: "letter", Width: width, Height: height,
		Title:       say.Line("evening-note.name"),
		Description: say.Line("evening-note.sheet_description"),
	}
	y := 6.0
	for i, line := range letter {
		p := d.Paragraph("ask", drawing.Point{X: 0, Y: y}, width-4, letterLine, asSentence(line))
		p.After, p.Floor = i > 0, height-letterSlip
		y += letterStep
	}
	top := height - letterSlip
	d.Line("cut", drawing.Point{X: 0, Y: top}, drawing.Point{X: width, Y: top})
	o.slip(v, back).draw(&d, top, width)
	return []drawing.Sheet{{Paper: paper, Drawing: d, Row: 1, Column: 1, Rows: 1, Columns: 1}}
}
