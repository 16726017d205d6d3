package placeholder

import (
	"time"

	"noonbook/build/form"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

func seasonDates() Entry {
	return Entry{
		Name:      "season-dates",
		Summary:   "When the four seasons of a year begin by the school's clock.",
		Arguments: form.Form{onDate, inYear},
		Settings:  where,
		Facts: []Fact{
			{"march_equinox", "", "moment of the equinox in March"},
			{"june_solstice", "", "moment of the solstice in June"},
			{"september_equinox", "", "moment of the equinox in September"},
			{"december_solstice", "", "moment of the solstice in December"},
			{"spring_begins", "", "moment at which spring begins in the school's hemisphere"},
			{"summer_begins", "", "moment at which summer begins there"},
			{"autumn_begins", "", "moment at which autumn begins there"},
			{"winter_begins", "", "moment at which winter begins there"},
			{"season", "", "the school's season on the date"},
			{"next", "", "the moment at which the next season begins after the date"},
			{"next_season", "", "which season that is"},
		},
		Sources: []string{sourceSun, "Seasons: the moments at which the Sun's apparent geocentric longitude is 0°, 90°, 180° and 270°", sourceIANA},
		Reckon:  reckonSeasons,
	}
}

func reckonSeasons(v form.Values) (result.Result, error) {
	p, date := Place(v), v.Date("date")
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
		Title: say.Line("season-dates.title", yearValue(year)),
		Columns: []result.Column{
			{Name: "turn"}, {Name: "begins"}, {Name: "season"}, {Name: "day_length", Unit: "s"}, {Name: "noon_altitude", Unit: "deg"},
		},
	}
	r := result.Result{Facts: make([]result.Fact, 8)}
	for i, at := range moments {
		turn, season := almanac.Season(i), (i+southern(p))%4
		begins := moment(p, at)
		r.Facts[i] = result.Fact{Name: [...]string{"march_equinox", "june_solstice", "september_equinox", "december_solstice"}[i], Value: begins}
		local := result.Fact{Name: [...]string{"spring_begins", "summer_begins", "autumn_begins", "winter_begins"}[season], Value: begins}
		if p.Latitude == 0 {
			local.Value = say.None("season.none")
		}
		r.Facts[4+season] = local
		s := sunOn(p, p.DateAt(at))
		altitude := say.None("sun-day.no_noon")
		if s.noons {
			altitude = altitudeOf(s.noon)
		}
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
			turnName(turn), begins, seasonName(p, turn), say.Minutes(s.up), altitude,
		}})
	}
	r.Tables = []result.Table{table}
	r.Notes = seasonNotes(p)
	r.Facts = append(r.Facts, seasonAround(p, date)...)
	return r, nil
}

// seasonNotes say what the names of the seasons are worth at a place.
func seasonNotes(p place.Place) []say.Phrase {
	switch latitude := p.Latitude.Degrees(); {
	case latitude == 0:
		return []say.Phrase{say.Line("season-dates.equator")}
	case latitude > -tropic && latitude < tropic:
		return []say.Phrase{say.Line("season-dates.tropics")}
	}
	return nil
}

// tropic is the latitude in degrees up to which the Sun can stand overhead, the
// obliquity of the ecliptic: Meeus, Astronomical Algorithms, 2nd ed. 1998, ch. 22.
const tropic = 23.44

// seasonAround says which season the date's noon falls in and which comes next.
func seasonAround(p place.Place, date place.Date) []result.Fact {
	noon := p.Clock(date, 12, 0)
	// The Sun's longitude counts the turns: 0° at the March equinox, 90° in June.
	turn := almanac.Season(int(almanac.SunAt(noon).Longitude/(quantity.Turn/4)) % 4)
	next := say.None("sky.unknown")
	if at, ok := nextTurn(noon); ok {
		next = moment(p, at)
	}
	return []result.Fact{
		{Name: "season", Value: seasonName(p, turn)},
		{Name: "next", Value: next},
		{Name: "next_season", Value: seasonName(p, (turn+1)%4)},
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

// southern is by how many seasons a place is ahead of the northern year.
func southern(p place.Place) int {
	if p.Latitude < 0 {
		return 2
	}
	return 0
}

func turnName(s almanac.Season) say.Value {
	return say.Words([...]string{
		"season.march_equinox", "season.june_solstice", "season.september_equinox", "season.december_solstice",
	}[s])
}

// seasonName is the season that the turn begins at the place. On the equator
// both halves of the year are alike and have no such names.
func seasonName(p place.Place, s almanac.Season) say.Value {
	if p.Latitude == 0 {
		return say.None("season.none")
	}
	return say.Words([...]string{"season.spring", "season.summer", "season.autumn", "season.winter"}[(int(s)+southern(p))%4])
}
