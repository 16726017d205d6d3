package sun

import (
	"time"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// What the entry takes.
const argYear form.Key[int] = "year"

func seasonDates() entry.Entry {
	return entry.Entry{
		Name:      "season-dates",
		Summary:   "When the four seasons of a year begin by the school's clock.",
		Arguments: form.Form{entry.OnDate(), inYear},
		Settings:  append(school.Where(), school.Seasons),
		Facts: []entry.Fact{
			{Name: "march_equinox", Doc: "moment of the equinox in March"},
			{Name: "june_solstice", Doc: "moment of the solstice in June"},
			{Name: "september_equinox", Doc: "moment of the equinox in September"},
			{Name: "december_solstice", Doc: "moment of the solstice in December"},
			{Name: "spring_begins", Doc: "moment at which spring begins in the school's hemisphere, or by the calendar its first day"},
			{Name: "summer_begins", Doc: "moment at which summer begins there"},
			{Name: "autumn_begins", Doc: "moment at which autumn begins there"},
			{Name: "winter_begins", Doc: "moment at which winter begins there"},
			{Name: "season", Doc: "the school's season on the date; between the tropics the last equinox or solstice before it"},
			{Name: "next", Doc: "the moment or the first day at which the next season begins after the date"},
			{Name: "next_season", Doc: "which season that is; between the tropics which equinox or solstice"},
		},
		Sources:  []string{entry.SourceSun, "Seasons: the moments at which the Sun's apparent geocentric longitude is 0°, 90°, 180° and 270°", entry.SourceIANA},
		Harmless: "Dates and how long seasons last, to read.",
		Reckon:   reckonSeasons,
	}
}

func reckonSeasons(v form.Values) (result.Result, error) {
	p, date := school.Place(v), entry.Date.Of(v)
	year, err := yearOf(v)
	if err != nil {
		return result.Result{}, err
	}
	moments, err := almanac.Seasons(year)
	if err != nil {
		return result.Result{}, err
	}
	table := result.Table{
		Name:  "year",
		Title: say.Line("season-dates.title", entry.YearValue(year)),
		Columns: []result.Column{
			{Name: "turn"}, {Name: "begins"}, seasonColumn(v), {Name: "day_length", Unit: "s"}, {Name: "noon_altitude", Unit: "deg"},
		},
	}
	r := result.Result{Facts: make([]result.Fact, 8)}
	for i, at := range moments {
		turn, season := almanac.Season(i), (i+entry.Southern(p))%4
		begins := entry.Moment(p, at)
		r.Facts[i] = result.Fact{Name: [...]string{"march_equinox", "june_solstice", "september_equinox", "december_solstice"}[i], Value: begins}
		local := result.Fact{Name: [...]string{"spring_begins", "summer_begins", "autumn_begins", "winter_begins"}[season], Value: begins}
		switch {
		case entry.Tropical(p.Latitude):
			local.Value = say.None("season.none")
		case entry.ByCalendar(v):
			local.Value = say.Date(entry.CalendarBegin(year, turn))
		}
		r.Facts[4+season] = local
		s := sunOn(p, p.DateAt(at))
		altitude := say.None("sun-day.no_noon")
		if s.noons {
			altitude = entry.AltitudeOf(s.noon)
		}
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
			entry.TurnName(turn), begins, entry.SeasonName(p, turn), say.Minutes(s.up), altitude,
		}})
	}
	r.Tables = []result.Table{table}
	r.Notes = seasonNotes(p)
	if entry.ByCalendar(v) && !entry.Tropical(p.Latitude) {
		r.Notes = append(r.Notes, say.Line("season-dates.calendar"))
		r.Facts = append(r.Facts, calendarAround(p, date)...)
	} else {
		r.Facts = append(r.Facts, seasonAround(p, date)...)
	}
	return r, nil
}

// seasonNotes say what the names of the seasons are worth at a place.
func seasonNotes(p place.Place) []say.Phrase {
	switch latitude := p.Latitude.Degrees(); {
	case latitude == 0:
		return []say.Phrase{say.Line("season-dates.equator")}
	case entry.Tropical(p.Latitude):
		return []say.Phrase{say.Line("season-dates.tropics")}
	}
	return nil
}

// seasonColumn is the column for the season of a turn. By the calendar the season begins
// before it.
func seasonColumn(v form.Values) result.Column {
	if entry.ByCalendar(v) {
		return result.Column{Name: "within"}
	}
	return result.Column{Name: "season"}
}

// calendarAround is seasonAround where seasons are three whole months.
func calendarAround(p place.Place, date place.Date) []result.Fact {
	now := entry.CalendarSeason(date)
	next := (now + 1) % 4
	begins := entry.CalendarBegin(date.Year, next)
	if !begins.After(date) {
		begins.Year++
	}
	return []result.Fact{
		{Name: "season", Value: entry.SeasonName(p, now)},
		{Name: "next", Value: say.Date(begins)},
		{Name: "next_season", Value: entry.SeasonName(p, next)},
	}
}

// seasonAround says which season the date's noon falls in and which comes next.
func seasonAround(p place.Place, date place.Date) []result.Fact {
	noon := p.Clock(date, 12, 0)
	// The Sun's longitude counts the turns: 0° at the March equinox, 90° in June.
	turn := almanac.Season(int(almanac.SunAt(noon).Longitude/(quantity.Turn/4)) % 4)
	next := say.None("sky.unknown")
	if at, ok := nextTurn(noon); ok {
		next = entry.Moment(p, at)
	}
	now, then := entry.SeasonName(p, turn), entry.SeasonName(p, (turn+1)%4)
	if entry.Tropical(p.Latitude) {
		now, then = say.Words("season.since", entry.TurnName(turn)), entry.TurnName((turn+1)%4)
	}
	return []result.Fact{
		{Name: "season", Value: now},
		{Name: "next", Value: next},
		{Name: "next_season", Value: then},
	}
}

// nextTurn returns the first equinox or solstice after t, if it is in the range
// of the almanac.
func nextTurn(t time.Time) (time.Time, bool) {
	for year := t.UTC().Year(); ; year++ {
		moments, err := almanac.Seasons(year)
		if err != nil {
			return time.Time{}, false
		}
		for _, at := range moments {
			if at.After(t) {
				return at, true
			}
		}
	}
}

// inYear is the argument of what covers a year.
var inYear = form.Field{Key: argYear, Min: almanac.FirstYear, Max: almanac.LastYear, Assumed: "the year of the date", Doc: "Year that the numbers are for."}

// yearOf returns the year that the values ask for. Within the almanac's range
// every number of the sky can be trusted; outside, the error says so.
func yearOf(v form.Values) (int, error) {
	year := argYear.Of(v)
	if year == 0 {
		year = entry.Date.Of(v).Year
	}
	return year, entry.InRange(year)
}
