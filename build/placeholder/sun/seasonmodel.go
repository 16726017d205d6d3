package sun

import (
	"math"
	"time"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// argAnswers leaves out, where it is false, what pupils are to find with the ball.
const argAnswers form.Key[bool] = "answers"

func seasonModel() entry.Entry {
	facts := []entry.Fact{
		{Name: "tilt", Unit: "deg", Doc: "angle by which the Earth's axis leans from upright on its way"},
		{Name: "latitude", Unit: "deg", Doc: "latitude to mark on the ball"},
		{Name: "from_end", Unit: "deg", Doc: "how far that is from the nearer end of the axis"},
		{Name: "march_noon", Unit: "deg", Doc: "the Sun's height at noon at the equinox in March, as seen"},
		{Name: "june_noon", Unit: "deg", Doc: "the same at the solstice in June"},
		{Name: "september_noon", Unit: "deg", Doc: "the same at the equinox in September"},
		{Name: "december_noon", Unit: "deg", Doc: "the same at the solstice in December"},
		{Name: "march_day", Unit: "s", Doc: "length of the day at the equinox in March"},
		{Name: "june_day", Unit: "s", Doc: "the same in June"},
		{Name: "september_day", Unit: "s", Doc: "the same in September"},
		{Name: "december_day", Unit: "s", Doc: "the same in December"},
		{Name: "june_season", Doc: "the season that begins in June at the school"},
		{Name: "december_season", Doc: "the season that begins in December"},
		{Name: "overhead", Doc: "the dates on which the Sun stands overhead at noon, or why there are none"},
		{Name: "polar", Doc: "whether there are polar days and nights"},
		{Name: "nearest", Unit: "million km", Doc: "distance of the Sun in early January, when it is nearest"},
		{Name: "farthest", Unit: "million km", Doc: "distance of the Sun in early July, when it is farthest"},
	}
	return entry.Entry{
		Name:    "season-model",
		Summary: "A lamp and a ball as Sun and Earth: where the ball stands on four dates, how its axis leans, and what that makes of noon and day here.",
		Arguments: form.Form{
			entry.OnDate(), inYear,
			{Key: argAnswers, Default: true, Doc: "Whether it says what pupils are to find with the ball; without that it says where the ball stands and no more."},
		},
		Settings: append(school.Where(), school.Seasons),
		Facts:    facts,
		Sources:  []string{entry.SourceSun, entry.SourceRise, entry.SourceRefraction, "Tilt of the axis: obliquity of the ecliptic, 23.44° (IAU 2006; Meeus, Astronomical Algorithms, ch. 22)", entry.SourceIANA},
		Cautions: []string{entry.CareLamp, entry.CareDarkRoom},
		Reckon:   reckonSeasonModel,
	}
}

// A station is where the ball stands at one turn of the seasons.
type station struct {
	turn     almanac.Season
	at       time.Time
	sun      sunDate
	overhead quantity.Angle // latitude where the Sun stands overhead
	distance quantity.Length
}

func reckonSeasonModel(v form.Values) (result.Result, error) {
	p := school.Place(v)
	year, err := yearOf(v)
	if err != nil {
		return result.Result{}, err
	}
	moments, err := almanac.Seasons(year)
	if err != nil {
		return result.Result{}, err
	}
	var stations [4]station
	for i, at := range moments {
		sun := almanac.SunAt(at)
		stations[i] = station{almanac.Season(i), at, sunOn(p, p.DateAt(at)), sun.Declination, sun.Distance}
	}
	if !argAnswers.Of(v) {
		return result.Result{
			Facts:    seasonModelFacts(p, year, stations),
			Drawings: []drawing.Drawing{lampPlan()},
			Tables:   []result.Table{placesTable(stationTable(p, year, stations, seasonColumn(v)), year)},
			Notes:    []say.Phrase{say.Line("season-model.note_places")},
		}, nil
	}
	r := result.Result{
		Facts:    seasonModelFacts(p, year, stations),
		Drawings: []drawing.Drawing{lampPlan(), lampSide(p, stations)},
		Tables:   []result.Table{stationTable(p, year, stations, seasonColumn(v))},
		Notes:    []say.Phrase{say.Line("season-model.note_wall"), say.Line("season-model.note_turn"), say.Line("season-model.note_distance", sunAway(year, time.January), sunAway(year, time.July))},
	}
	if p.Latitude < 0 && !entry.Tropical(p.Latitude) {
		r.Notes = append(r.Notes, say.Line("season-model.note_south"))
	}
	r.Notes = append(r.Notes, seasonNotes(p)...)
	phi := p.Latitude.Degrees()
	for _, s := range []station{stations[almanac.JuneSolstice], stations[almanac.DecemberSolstice]} {
		dec := s.overhead.Degrees()
		apart := max(phi-dec, dec-phi)
		noon := say.Number(90-apart, "deg", 1)
		a := entry.Enough(noon, func(x []float64) float64 { return 90 - x[0] }, say.Number(apart, "deg", 1))
		o := entry.Enough(a[0], func(x []float64) float64 { return math.Abs(x[0] - x[1]) }, say.Number(dec, "deg", 1), say.Number(phi, "deg", 1))
		larger, smaller := o[0], o[1]
		if phi > dec {
			larger, smaller = o[1], o[0]
		}
		r.Working = append(r.Working, say.Line("season-model.working", entry.TurnName(s.turn), o[0], o[1], a[0], noon, larger, smaller))
	}
	return r, nil
}

// placesTable is the first three columns: the turn of the year, its date, and where the
// ball stands.
func placesTable(whole result.Table, year int) result.Table {
	const places = 3
	whole.Title, whole.Columns = say.Line("season-model.places", entry.YearValue(year)), whole.Columns[:places]
	for i := range whole.Rows {
		whole.Rows[i].Cells = whole.Rows[i].Cells[:places]
	}
	return whole
}

// sunAway is the Sun's distance about its least and greatest, which fall on the
// first days of January and July: 3 January and 5 July within three days, in which it
// changes by 4000 km at most.
func sunAway(year int, month time.Month) say.Value {
	day := 3
	if month == time.July {
		day = 5
	}
	return say.Number(almanac.SunAt(time.Date(year, month, day, 12, 0, 0, 0, time.UTC)).Distance.Kilometres()/1e6, "million_km", 1)
}

func (s station) noon() say.Value {
	if !s.sun.noons {
		return say.None("sun-day.no_noon")
	}
	return entry.AltitudeOf(s.sun.noon)
}

func seasonModelFacts(p place.Place, year int, stations [4]station) []result.Fact {
	phi := p.Latitude.Degrees()
	fromEnd := 90 - max(phi, -phi)
	polar := say.Words("season-model.no_polar")
	june, december := stations[almanac.JuneSolstice].sun.day.State, stations[almanac.DecemberSolstice].sun.day.State
	switch {
	case (june == almanac.UpAllDay || december == almanac.UpAllDay) && (june == almanac.DownAllDay || december == almanac.DownAllDay):
		polar = say.Words("season-model.polar_both")
	case june == almanac.UpAllDay || december == almanac.UpAllDay: // the air lifts the Sun
		polar = say.Words("season-model.polar_day")
	}
	facts := []result.Fact{
		{Name: "tilt", Value: say.Number(entry.Tropic, "deg", 1)},
		{Name: "latitude", Value: entry.Sided(phi, 1, "compass.north_of", "compass.south_of")},
		{Name: "from_end", Value: say.Number(fromEnd, "deg", 1)},
		{Name: "june_season", Value: entry.SeasonName(p, almanac.JuneSolstice)},
		{Name: "december_season", Value: entry.SeasonName(p, almanac.DecemberSolstice)},
		{Name: "overhead", Value: overheadDates(p, year)},
		{Name: "polar", Value: polar},
		{Name: "nearest", Value: sunAway(year, time.January)},
		{Name: "farthest", Value: sunAway(year, time.July)},
	}
	for i, month := range []string{"march", "june", "september", "december"} {
		facts = append(facts,
			result.Fact{Name: month + "_noon", Value: stations[i].noon()},
			result.Fact{Name: month + "_day", Value: say.Minutes(stations[i].sun.up)})
	}
	return facts
}

// overheadDates lists the dates whose noon comes nearest to a Sun straight overhead:
// where its declination passes the latitude.
func overheadDates(p place.Place, year int) say.Value {
	off := func(d place.Date) quantity.Angle {
		return almanac.SunAt(entry.NoonOr(p, d)).Declination - p.Latitude
	}
	if phi := p.Latitude.Degrees(); phi > entry.Tropic || phi < -entry.Tropic {
		return say.None("season-model.never_overhead")
	}
	var dates []say.Value
	d := place.Date{Year: year, Month: time.January, Day: 1}
	for last := off(d); d.Year == year; d = d.Add(1) {
		next := off(d.Add(1))
		if last*next <= 0 && last != 0 {
			on := d
			if max(next, -next) < max(last, -last) {
				on = d.Add(1)
			}
			dates = append(dates, dayMonth(on))
		}
		last = next
	}
	if dates == nil {
		return say.None("season-model.never_overhead")
	}
	return entry.Listed(dates)
}

// dayMonth is a date without its year, for lists within one year.
func dayMonth(d place.Date) say.Value {
	return say.Date(d).As("format.day_month", say.Count(d.Day), say.Words(entry.MonthKey(d.Month)))
}

func stationTable(p place.Place, year int, stations [4]station, season result.Column) result.Table {
	table := result.Table{
		Name: "stations", Title: say.Line("season-model.title", entry.YearValue(year)),
		Columns: []result.Column{{Name: "turn"}, {Name: "date"}, {Name: "ball"}, {Name: "axis"}, season, {Name: "noon_altitude", Unit: "deg"}, {Name: "day_length", Unit: "s"}, {Name: "overhead", Unit: "deg"}},
	}
	for i, s := range stations {
		ball := [...]say.Value{say.Words("season-model.ball_march"), say.Words("season-model.ball_june"), say.Words("season-model.ball_september"), say.Words("season-model.ball_december")}[i]
		axis := [...]say.Value{say.Words("season-model.axis_aside"), say.Words("season-model.axis_toward"), say.Words("season-model.axis_aside"), say.Words("season-model.axis_away")}[i]
		overhead := say.Number(s.overhead.Degrees(), "deg", 1)
		if i%2 == 0 {
			overhead = overhead.As("season-model.equator")
		} else {
			overhead = entry.Sided(s.overhead.Degrees(), 1, "world.north", "world.south")
		}
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
			entry.TurnName(s.turn), say.Date(p.DateAt(s.at)), ball, axis, entry.SeasonName(p, s.turn), s.noon(), say.Minutes(s.sun.up), overhead,
		}})
	}
	return table
}
