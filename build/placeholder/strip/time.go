package strip

import (
	"math"
	"slices"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/quantity"
	"noonbook/compute/strip"
)

var timeParts = []string{"story", "space"}

func stripTime() entry.Entry {
	facts := []entry.Fact{
		{Name: "years_a_square", Unit: "million years", Doc: "how long one square lasts when the strip is the long story"},
		{Name: "years_a_millimetre", Unit: "years", Doc: "how long a millimetre lasts"},
		{Name: "people_mm", Unit: "mm", Doc: "how far before the end of the strip people begin"},
		{Name: "farming_mm", Unit: "mm", Doc: "how far before the end farming begins"},
		{Name: "writing_mm", Unit: "mm", Doc: "how far before the end writing begins"},
		{Name: "lifetime_mm", Unit: "mm", Doc: "a life of eighty years on the strip"},
		{Name: "fossils_squares", Doc: "squares from the beginning to the first fossils"},
		{Name: "oxygen_squares", Doc: "squares to oxygen in the air"},
		{Name: "animals_squares", Doc: "squares to the first time of many animals"},
		{Name: "dinosaurs_squares", Doc: "squares to the first dinosaurs"},
		{Name: "dinosaurs_end_squares", Doc: "squares to their end"},
		{Name: "last_square", Doc: "the events within the last square"},
		{Name: "space_first", Doc: "first year on the strip of the space age"},
		{Name: "space_last", Doc: "last year on it"},
		{Name: "space_years_a_square", Unit: "years", Doc: "how long one of its squares lasts"},
		{Name: "space_squares", Doc: "how many squares it needs"},
		{Name: "space_missions", Doc: "how many missions are on it"},
		{Name: "space_as_of", Doc: "the day up to which missions are listed"},
	}
	return entry.Entry{
		Name:    "strip-time",
		Summary: "The strip as a clock: from the first solids to now, and a second strip for the space age.",
		Arguments: form.Form{entry.OnDate(),
			{Key: argShow, Choices: timeParts, Default: timeParts, Doc: "What to show: the long story, the space age."},
			{Key: argRows, Min: 1, Max: 12, Assumed: "rows of at most a hundred squares, and no more than six", Doc: "Rows that the picture is folded in."},
		},
		Settings: append(form.Keys{school.TermFirstDay}, roll...),
		Facts:    facts,
		Sources:  []string{"Ages: the publications that the table names", "Missions: dates published by the space agencies, Universal Time"},
		Cautions: []string{entry.CarePaperOnFloor},
		Reckon:   reckonTime,
	}
}

func reckonTime(v form.Values) (result.Result, error) {
	s, err := stripOf(v.With(form.Values{"to": strip.DefaultOutermost}))
	if err != nil {
		return result.Result{}, err
	}
	moments := s.Moments(school.TermFirstDay.Of(v))
	r := result.Result{Facts: storyFacts(s, moments)}
	if slices.Contains(argShow.Of(v), "story") {
		r.Tables = append(r.Tables, storyTable(s, moments))
		r.Drawings = append(r.Drawings, storyPicture(v, s, moments))
		r.Notes = append(r.Notes, say.Line("strip-time.note"))
		r.Working = storyWorking(s, moments)
	}
	era, ok := s.SpaceAge(entry.Date.Of(v).Year)
	r.Facts = append(r.Facts, spaceFacts(era, ok)...)
	if !ok {
		r.Warnings = append(r.Warnings, say.Line("strip-time.before_space"))
	} else if slices.Contains(argShow.Of(v), "space") {
		r.Tables = append(r.Tables, spaceTable(era))
		r.Drawings = append(r.Drawings, spacePicture(v, era))
		r.Notes = append(r.Notes, say.Line("strip-time.space_note", say.Date(strip.MissionsAsOf())))
	}
	return r, nil
}

func storyWorking(s strip.Strip, moments []strip.Moment) []say.Phrase {
	people := moments[slices.IndexFunc(moments, func(m strip.Moment) bool { return m.Name == "people" })]
	years, before := say.Number(s.Years()/1e6, "million_years", 2), thickness(people.Before)
	a := entry.Enough(years, func(x []float64) float64 { return x[0] / x[1] }, say.Number(strip.Beginning/1e6, "million_years", 1), say.Count(s.Squares))
	p := entry.Enough(before, func(x []float64) float64 { return x[0] / x[1] * x[2] },
		say.Number(people.Years, "years", 0), say.Number(strip.Beginning, "years", 0), say.Number(s.Length().Millimetres(), "mm", 0))
	return []say.Phrase{say.Line("strip-time.working_scale", a[0], a[1], years), say.Line("strip-time.working_people", p[0], p[1], p[2], before)}
}

func storyFacts(s strip.Strip, moments []strip.Moment) []result.Fact {
	by := map[string]strip.Moment{}
	var recent []say.Value
	for _, m := range moments {
		by[m.Name] = m
		if m.Squares >= float64(s.Squares)-1 {
			recent = append(recent, eventWord(m.Name))
		}
	}
	squares := func(name string) say.Value { return say.Number(by[name].Squares, "", 1) }
	return []result.Fact{
		{Name: "years_a_square", Value: say.Number(s.Years()/1e6, "million_years", 1)},
		{Name: "years_a_millimetre", Value: say.Number(strip.Beginning/s.Length().Millimetres(), "years", 0)},
		{Name: "people_mm", Value: thickness(by["people"].Before)},
		{Name: "farming_mm", Value: thickness(by["farming"].Before)},
		{Name: "writing_mm", Value: thickness(by["writing"].Before)},
		{Name: "lifetime_mm", Value: thickness(s.Ago(80))},
		{Name: "fossils_squares", Value: squares("first_fossils")},
		{Name: "oxygen_squares", Value: squares("oxygen")},
		{Name: "animals_squares", Value: squares("many_animals")},
		{Name: "dinosaurs_squares", Value: squares("dinosaurs")},
		{Name: "dinosaurs_end_squares", Value: squares("dinosaurs_end")},
		{Name: "last_square", Value: entry.Listed(recent)},
	}
}

func eventWord(name string) say.Value {
	return map[string]say.Value{
		"first_solids": say.Words("event.first_solids"), "moon": say.Words("event.moon"),
		"oldest_grain": say.Words("event.oldest_grain"), "oldest_rock": say.Words("event.oldest_rock"),
		"first_fossils": say.Words("event.first_fossils"), "oxygen": say.Words("event.oxygen"),
		"cells_with_kernel": say.Words("event.cells_with_kernel"), "many_animals": say.Words("event.many_animals"),
		"land_plants": say.Words("event.land_plants"), "walking_fish": say.Words("event.walking_fish"),
		"dinosaurs": say.Words("event.dinosaurs"), "dinosaurs_end": say.Words("event.dinosaurs_end"),
		"people": say.Words("event.people"), "farming": say.Words("event.farming"),
		"writing": say.Words("event.writing"), "telescope": say.Words("event.telescope"),
	}[name]
}

// ago is an age, in millions of years where that is easier to read.
func ago(years float64) say.Value {
	v := say.Number(years, "years", 0)
	switch {
	case years >= 1e8:
		return v.As("strip-time.ago", say.Number(years/1e6, "million_years", 0))
	case years >= 1e6:
		return v.As("strip-time.ago", say.Number(years/1e6, "million_years", entry.WholeOrTenth(years/1e6)))
	}
	return v
}

func storyTable(s strip.Strip, moments []strip.Moment) result.Table {
	table := result.Table{
		Name:  "story",
		Title: say.Line("strip-time.title", say.Count(s.Squares)),
		Columns: []result.Column{
			{Name: "event"}, {Name: "number"}, {Name: "age", Unit: "years"}, {Name: "error", Unit: "years"},
			{Name: "squares"}, {Name: "before_mm", Unit: "mm"}, {Name: "source"},
		},
	}
	for i, m := range moments {
		off := say.None("sky.dash")
		if m.Error > 0 {
			off = ago(m.Error)
		}
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
			eventWord(m.Name), say.Count(i + 1), ago(m.Years), off, say.Number(m.Squares, "", 1), beforeEnd(m.Before), say.Text(m.Source),
		}})
	}
	return table
}

// beforeEnd is a distance from the end of the strip, from metres to what no ruler
// shows.
func beforeEnd(l quantity.Length) say.Value {
	if mm := l.Millimetres(); mm >= 1000 {
		return say.Number(mm, "mm", 0).As("strip-time.ago", say.Number(l.Metres(), "m", 2))
	}
	return thickness(l).As("strip-time.ago", thickness(l))
}

// storyPicture draws the events as the numbers of the table.
func storyPicture(v form.Values, s strip.Strip, moments []strip.Moment) drawing.Drawing {
	var flags []flag
	for i, m := range moments {
		role, radius := "body", 0.7
		if i == 0 {
			role, radius = "sun", 1.6
		}
		flags = append(flags, flag{squares: m.Squares, name: say.Count(i + 1), role: role, radius: radius})
	}
	d := drawing.Drawing{
		Name: "strip", Width: entry.PictureWidth,
		Title:       say.Line("strip-time.picture", say.Count(s.Squares)),
		Description: say.Line("strip-time.description"),
	}
	fold(s.Squares, argRows.Of(v), asideNumbers).draw(&d, flags)
	return d
}

func spaceFacts(e strip.Era, ok bool) []result.Fact {
	none := say.None("strip-time.no_space")
	facts := []result.Fact{
		{Name: "space_first", Value: none}, {Name: "space_last", Value: none}, {Name: "space_years_a_square", Value: none},
		{Name: "space_squares", Value: none}, {Name: "space_missions", Value: none}, {Name: "space_as_of", Value: say.Date(strip.MissionsAsOf())},
	}
	if ok {
		facts[0].Value, facts[1].Value = entry.YearValue(e.First), entry.YearValue(e.Last)
		facts[2].Value = yearsASquare(e)
		facts[3].Value = say.Number(e.SquaresNeeded, "", entry.WholeOrTenth(e.SquaresNeeded))
		facts[4].Value = say.Count(len(missionsIn(e)))
	}
	return facts
}

func yearsASquare(e strip.Era) say.Value {
	v := say.Number(e.YearsASquare, "years", 0)
	if e.YearsASquare == 1 {
		return v.As("strip-time.one_year")
	}
	return v
}

func missionsIn(e strip.Era) []strip.Mission {
	return slices.DeleteFunc(strip.Missions(), func(m strip.Mission) bool { return m.Date.Year > e.Last })
}

func spaceTable(e strip.Era) result.Table {
	table := result.Table{
		Name:    "space",
		Title:   say.Line("strip-time.space_title", entry.YearValue(e.First), entry.YearValue(e.Last), yearsASquare(e)),
		Columns: []result.Column{{Name: "mission"}, {Name: "number"}, {Name: "date"}, {Name: "squares"}},
	}
	for i, m := range missionsIn(e) {
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
			missionWord(m.Name), say.Count(i + 1), say.Date(m.Date), say.Number(e.Squares(m.Date), "", 1),
		}})
	}
	return table
}

// spacePicture draws the missions as the numbers of the table.
func spacePicture(v form.Values, e strip.Era) drawing.Drawing {
	var flags []flag
	for i, m := range missionsIn(e) {
		flags = append(flags, flag{squares: e.Squares(m.Date), name: say.Count(i + 1), role: "body", radius: 0.7})
	}
	d := drawing.Drawing{
		Name: "strip", Width: entry.PictureWidth,
		Title:       say.Line("strip-time.space_picture", entry.YearValue(e.First), entry.YearValue(e.Last)),
		Description: say.Line("strip-time.space_description"),
	}
	fold(int(math.Ceil(e.SquaresNeeded)), argRows.Of(v), asideNumbers).draw(&d, flags)
	return d
}

func missionWord(name string) say.Value {
	return map[string]say.Value{
		"sputnik_1": say.Words("mission.sputnik_1"), "luna_2": say.Words("mission.luna_2"), "vostok_1": say.Words("mission.vostok_1"),
		"mariner_2": say.Words("mission.mariner_2"), "vostok_6": say.Words("mission.vostok_6"), "mariner_4": say.Words("mission.mariner_4"),
		"apollo_11": say.Words("mission.apollo_11"), "venera_7": say.Words("mission.venera_7"), "pioneer_10": say.Words("mission.pioneer_10"),
		"mariner_10": say.Words("mission.mariner_10"), "viking_1": say.Words("mission.viking_1"), "pioneer_11": say.Words("mission.pioneer_11"),
		"voyager_uranus": say.Words("mission.voyager_uranus"), "giotto": say.Words("mission.giotto"),
		"voyager_neptune": say.Words("mission.voyager_neptune"), "hubble": say.Words("mission.hubble"),
		"pathfinder": say.Words("mission.pathfinder"), "station": say.Words("mission.station"), "cassini": say.Words("mission.cassini"),
		"huygens": say.Words("mission.huygens"), "voyager_1": say.Words("mission.voyager_1"), "philae": say.Words("mission.philae"),
		"dawn": say.Words("mission.dawn"), "new_horizons": say.Words("mission.new_horizons"), "ingenuity": say.Words("mission.ingenuity"),
		"webb": say.Words("mission.webb"), "dart": say.Words("mission.dart"), "chandrayaan_3": say.Words("mission.chandrayaan_3"),
		"change_6": say.Words("mission.change_6"),
	}[name]
}
