package class

import (
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/almanac"
)

func eveningNote() entry.Entry {
	return entry.Entry{
		Name:      "evening-note",
		Summary:   "A letter to families about the evening at school under the sky: when, what to wear, the way home, what happens under cloud, and a slip to cut off and send back.",
		Printable: true, For: entry.EachPupil, OnSheet: func(form.Values) int { return slipsDown },
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
			Sheets:   slipSheets(v, o.slip(v, blank)), // for an evening in another term
		}, nil
	}
	back := term.Before(o.night.Date, school.SuppliesHomeDays.Of(v))
	send := term.Before(back, school.SuppliesNoteDays.Of(v))
	return result.Result{
		Facts:  []result.Fact{{Name: "send_by", Value: say.Date(send)}, {Name: "slip_by", Value: say.Date(back)}},
		Notes:  append(o.letter(), say.Line("evening-note.slip", say.Date(back))),
		Sheets: slipSheets(v, o.slip(v, say.Date(back))),
	}, nil
}

// blank is room to write a date.
var blank = say.Text("______")

// letter is what families read.
func (o outing) letter() []say.Phrase {
	from, to := o.night.Moments(o.p)
	notes := []say.Phrase{say.Line("evening-note.dear", entry.Weekday(o.night.Date), o.clock(from), o.clock(to))}
	if seen := o.sights(); len(seen) > 0 {
		notes = append(notes, say.Line("evening-note.seen", entry.Listed(seen)))
	}
	if o.found == 2 {
		from, to := o.reserve.Moments(o.p)
		notes = append(notes, say.Line("evening-note.reserve", entry.Weekday(o.reserve.Date), o.clock(from), o.clock(to)))
	} else {
		notes = append(notes, say.Line("evening-note.cloud"))
	}
	return append(notes, say.Line("evening-note.told"), say.Line("evening-note.wear"), say.Line("evening-note.bring"), say.Line("evening-note.way"), say.Line("evening-note.help"))
}

// sights are what the night shows besides the stars.
func (o outing) sights() (seen []say.Value) {
	if o.night.Moon {
		seen = append(seen, entry.BodyWord(almanac.Moon).As("evening-note.moon"))
	}
	if o.night.HasPlanet {
		seen = append(seen, entry.BodyWord(o.night.Planet))
	}
	return append(seen, say.Words("evening-note.stars"))
}

// slip asks whether the child comes, how it gets home and whom to call.
func (o outing) slip(v form.Values, back say.Value) slip {
	night := blank
	if o.found > 0 {
		night = entry.Weekday(o.night.Date)
	}
	asks := []say.Value{say.Words("evening-note.slip_night", night)}
	if o.found == 2 {
		asks = append(asks, say.Words("evening-note.slip_reserve", entry.Weekday(o.reserve.Date)))
	}
	return slip{school.UnitTitle.Of(v), back, append(asks, say.Words("evening-note.slip_help")),
		[]string{"evening-note.slip_fetched", "evening-note.slip_phone", "family-note.slip_know"}}
}
