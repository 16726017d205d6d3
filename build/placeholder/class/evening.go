package class

import (
	"slices"
	"time"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/stars"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/almanac"
	"noonbook/compute/classroom"
	"noonbook/compute/place"
	"noonbook/compute/sky"
)

const sourceEvening = "Which evening will do (Sun 9° and 12° below the horizon for the stars, the Moon 15 % to 85 % lit, Moon and planet 10° high, over by the school's hour), its parts and its adults: common practice, no source"

// What the entry takes, and the parts of its result.
const (
	argShow form.Key[[]string] = "show"

	showStations = "stations"
	showCount    = "count"
	showReserve  = "reserve"
)

func eveningPlan() entry.Entry {
	parts := []string{showStations, showCount, showReserve}
	return entry.Entry{
		Name:    "evening-plan",
		Summary: "The evening under the sky: its nights, stations and adults.",
		Arguments: form.Form{
			{Key: argShow, Choices: parts, Default: parts, Doc: "What to show: the stations of the night, the figure whose stars are counted, the stations of the night in reserve. Cautions and warnings are always shown."},
		},
		Settings: eveningSettings(),
		Facts: []entry.Fact{
			entry.Truth("stands", "whether some evening of the term gets dark enough in time"),
			entry.Truth("moon", "whether the Moon is high enough that night, and neither too thin nor too full"),
			entry.Truth("planet_up", "whether a bright planet is high enough"),
			entry.Truth("has_reserve", "whether a later evening is in reserve"),
			entry.Truth("counts", "whether a figure is high enough to count its stars"),
			{Name: "night", Doc: "day of the evening"},
			{Name: "reserve", Doc: "day of the one in reserve"},
			{Name: "begins", Doc: "when it begins"},
			{Name: "ends", Doc: "when it ends"},
			{Name: "reserve_begins", Doc: "when the one in reserve begins"},
			{Name: "sunset", Doc: "when the Sun has set that day"},
			{Name: "dusk", Doc: "when the brighter stars are out"},
			{Name: "moon_lit", Unit: "percent", Doc: "how much of the Moon's disc is lit"},
			{Name: "planet", Doc: "the planet that is looked at"},
			{Name: "count_figure", Doc: "the figure whose stars are counted"},
			{Name: "count_stars", Doc: "how many stars that figure has on our charts"},
			{Name: "adults", Doc: "adults who go with the groups"},
			{Name: "adults_all", Doc: "adults in all, with one who is free"},
			{Name: "next", Doc: "where no evening does: the first day after the term whose evening does"},
		},
		Sources:   []string{entry.SourceSun, entry.SourceMoon, entry.SourcePlanets, entry.SourceRefraction, stars.Source, sourceEvening, entry.SourceIANA},
		Sometimes: []string{entry.CareEveningAtSchool},
		Harmless:  "A line to read where no evening will do; with one the caution of evenings comes with it.",
		Reckon:    reckonEvening,
	}
}

func eveningSettings() form.Keys {
	return append(append(append(school.Where(), school.TimetableSettings()...), school.EveningSettings()...), school.ClassPupils)
}

// An outing is an evening of the school with one in reserve, none to two of them found.
type outing struct {
	p              place.Place
	term           classroom.Term
	night, reserve classroom.Evening
	found          int
}

func outingOf(v form.Values) outing {
	o := outing{p: school.Place(v), term: school.Term(v)}
	o.night, o.reserve, o.found = classroom.ChooseEvening(o.term.Evenings(o.p))
	return o
}

// NoEvening says that no evening of the term does, and which later one is the first that
// does.
func NoEvening(v form.Values) say.Phrase {
	o := outingOf(v)
	ends := say.Clock(classroom.Moment(o.p, o.term.Last, o.term.Outing.EndsBy))
	if next, ok := o.next(); ok {
		return say.Line("calendar.evening", ends, say.Date(next.Date))
	}
	return say.Line("calendar.evening_never", ends)
}

// next is the first evening after the term that does, within a year or so and as far as the
// sky is computed.
func (o outing) next() (classroom.Evening, bool) {
	days := min(nextDays, o.term.Last.DaysUntil(entry.LastDay())-1)
	return o.term.NextEvening(o.p, o.term.Last, days)
}

func reckonEvening(v form.Values) (result.Result, error) {
	term := school.Term(v)
	if err := entry.SchoolRange(term.First, term.Last); err != nil {
		return result.Result{}, err
	}
	o := outingOf(v)
	if o.found == 0 {
		next := say.None("evening-plan.no_next")
		if e, ok := o.next(); ok {
			next = say.Date(e.Date)
		}
		return result.Result{Facts: noEvening(next), Warnings: []say.Phrase{say.Line("evening-plan.none", asSentence(NoEvening(v)))}}, nil
	}
	pupils := school.ClassPupils.Of(v)
	figure, counts := o.toCount(o.night)
	r := result.Result{Facts: o.facts(pupils, figure, counts), Warnings: o.warnings(), Cautions: entry.CautionsOf(entry.CareEveningAtSchool)}
	show := argShow.Of(v)
	if slices.Contains(show, showStations) {
		r.Tables = append(r.Tables, o.stations("stations", "evening-plan.stations_title", o.night, pupils))
		r.Notes = append(r.Notes, say.Line("evening-plan.note"), say.Line("sky.fist"))
	}
	if counts && slices.Contains(show, showCount) {
		r.Tables = append(r.Tables, countTable(figure))
		r.Drawings = append(r.Drawings, countDrawing(figure, sky.DomeAt(o.p, o.middle(o.night, classroom.Counting))))
		r.Notes = append(r.Notes, say.Line("evening-plan.count_note"))
	}
	if o.found == 2 && slices.Contains(show, showReserve) {
		r.Tables = append(r.Tables, o.stations("reserve", "evening-plan.reserve_title", o.reserve, pupils))
	}
	return r, nil
}

func asSentence(line say.Phrase) say.Value { return say.Value{Kind: say.Wording, Phrase: line} }

// warnings are what the night lacks.
func (o outing) warnings() (list []say.Phrase) {
	night := say.Date(o.night.Date)
	if !o.night.Moon {
		list = append(list, say.Line("evening-plan.no_moon", night))
	}
	if !o.night.HasPlanet {
		list = append(list, say.Line("evening-plan.no_planet", night))
	}
	if o.found < 2 {
		list = append(list, say.Line("evening-plan.no_reserve"))
	}
	return list
}

func (o outing) clock(t time.Time) say.Value { return say.Clock(t.In(o.p.Zone)) }

// at is the moment at which a part begins.
func (o outing) at(e classroom.Evening, part classroom.EveningPart) time.Time {
	from, _ := e.Part(part).Moments(o.p)
	return from
}

func (o outing) middle(e classroom.Evening, part classroom.EveningPart) time.Time {
	from, to := e.Part(part).Moments(o.p)
	return from.Add(to.Sub(from) / 2)
}

func (o outing) facts(pupils int, figure sky.Figure, counts bool) []result.Fact {
	e := o.night
	from, to := e.Moments(o.p)
	reserve, again := say.None("evening-plan.no_second"), say.None("evening-plan.no_second")
	if o.found == 2 {
		begins, _ := o.reserve.Moments(o.p)
		reserve, again = entry.Weekday(o.reserve.Date), o.clock(begins)
	}
	moon, planet := say.None("evening-plan.not_up"), say.None("evening-plan.not_up")
	if e.Moon {
		moon = entry.Percent(almanac.Moon.LimbFrom(o.p, o.middle(e, classroom.MoonLook)).Lit)
	}
	if e.HasPlanet {
		planet = entry.BodyWord(e.Planet)
	}
	name, number := say.None("evening-plan.no_figure"), say.None("evening-plan.no_figure")
	if counts {
		name, number = stars.FigureWord(figure), say.Count(len(figure.Stars()))
	}
	sunset, dusk := say.None("evening-plan.no_sunset"), say.None("evening-plan.no_sunset")
	if sets := entry.SunDay(o.p, e.Date).Sets; len(sets) > 0 {
		sunset = o.clock(sets[len(sets)-1])
	}
	n := entry.NightOf(o.p, e.Date)
	if dark, _, ok := n.Dark(entry.FaintDepth()); ok && dark.After(n.Noon) {
		dusk = o.clock(dark)
	}
	return []result.Fact{
		entry.True("stands", true), entry.True("moon", e.Moon), entry.True("planet_up", e.HasPlanet), entry.True("has_reserve", o.found == 2), entry.True("counts", counts),
		{Name: "night", Value: entry.Weekday(e.Date)}, {Name: "reserve", Value: reserve},
		{Name: "begins", Value: o.clock(from)}, {Name: "ends", Value: o.clock(to)}, {Name: "reserve_begins", Value: again},
		{Name: "sunset", Value: sunset}, {Name: "dusk", Value: dusk},
		{Name: "moon_lit", Value: moon}, {Name: "planet", Value: planet},
		{Name: "count_figure", Value: name}, {Name: "count_stars", Value: number},
		{Name: "adults", Value: say.Count(classroom.EveningAdults(pupils))}, {Name: "adults_all", Value: say.Count(classroom.EveningAdults(pupils) + 1)},
		{Name: "next", Value: say.None("evening-plan.this_term")},
	}
}

// noEvening are the facts where no evening of the term does.
func noEvening(next say.Value) []result.Fact {
	var facts []result.Fact
	for _, f := range eveningPlan().Facts {
		switch {
		case f.Truth:
			facts = append(facts, entry.True(f.Name, false))
		case f.Name == "next":
			facts = append(facts, result.Fact{Name: f.Name, Value: next})
		default:
			facts = append(facts, result.Fact{Name: f.Name, Value: say.None("evening-plan.no_evening")})
		}
	}
	return facts
}
