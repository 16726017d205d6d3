package moon

import (
	"slices"
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

const sourceMoonClear = "35° from the Sun as a bound for looking for the Moon by day, 20° in twilight: common practice, no source"

func moonSchool() entry.Entry {
	return entry.Entry{
		Name:    "moon-school",
		Summary: "When the Moon can be seen in lesson time: days and times, direction, lit side.",
		Arguments: form.Form{
			{Key: entry.From, Assumed: "term.first_day", Doc: "First day to look at."},
			{Key: entry.To, Assumed: "term.last_day", Doc: "Last day to look at, at most 400 days later."},
			{Key: argAltitudeDeg, Unit: "deg", Min: 0, Max: 89, Default: entry.LeastMoon(), Doc: "How high the Moon has to stand, as seen."},
		},
		Settings: slices.Concat(school.Where(), school.TimetableSettings()),
		Facts: []entry.Fact{
			entry.Truth("some", "whether the Moon can be looked for in a lesson at all"),
			{Name: "days", Doc: "school days on which the Moon stands high enough in some lesson, safely far from the Sun"},
			{Name: "first", Doc: "the first moment at which it does"},
			{Name: "first_direction", Doc: "where it then stands, in words"},
			{Name: "last", Doc: "the last such moment"},
			{Name: "best", Doc: "the moment, on one of these days, at which the Moon stands highest in a lesson"},
			{Name: "best_altitude", Unit: "deg", Doc: "how high that is"},
			{Name: "best_direction", Doc: "where it then stands, in words"},
			{Name: "best_side", Doc: "which side of it is then lit"},
			{Name: "near_sun", Doc: "school days on which it stands high enough only too near the Sun to be searched for"},
		},
		Sources:  []string{entry.SourceMoon, entry.SourceRefraction, entry.SourceIANA, sourceMoonClear},
		Cautions: []string{entry.CareMoonByDay},
		Reckon:   reckonMoonSchool,
	}
}

func reckonMoonSchool(v form.Values) (result.Result, error) {
	p := school.Place(v)
	from, to, err := entry.DaysAsked(v)
	if err != nil {
		return result.Result{}, err
	}
	lessons, entered := school.LessonTimes(v)
	r := result.Result{}
	if !entered {
		r.Warnings = []say.Phrase{say.Line("moon-school.no_lessons", clockFace(lessons[0].From), clockFace(lessons[len(lessons)-1].To))}
	}
	term := school.Term(v)
	var chances []entry.Chance
	for d := from; !d.After(to); d = d.Add(1) {
		if term.Teaches(d) {
			chances = append(chances, entry.ChancesOn(p, d, school.LessonTimesOn(term, d), quantity.Degrees(argAltitudeDeg.Of(v)))...)
		}
	}
	r.Facts = moonSchoolFacts(p, chances)
	high := say.Number(argAltitudeDeg.Of(v), "deg", 0)
	if len(chances) == 0 {
		r.Notes = []say.Phrase{say.Line("moon-school.no_chance", say.Date(from), say.Date(to), high)}
		return r, nil
	}
	r.Tables = []result.Table{chanceTable(p, chances, say.Line("moon-school.title", say.Date(from), say.Date(to), high))}
	r.Notes = []say.Phrase{say.Line("moon-school.note"), say.Line("sky.fist")}
	return r, nil
}

func clockFace(d time.Duration) say.Value {
	return say.Clock(time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC).Add(d))
}

func chanceTable(p place.Place, chances []entry.Chance, title say.Phrase) result.Table {
	table := result.Table{
		Name:  "chances",
		Title: title,
		Columns: []result.Column{
			{Name: "date"}, {Name: "from"}, {Name: "to"}, {Name: "altitude", Unit: "deg"}, {Name: "bearing", Unit: "deg"}, {Name: "direction"},
			{Name: "lit", Unit: "percent"}, {Name: "lit_side"}, {Name: "sun_distance", Unit: "deg"}, {Name: "safe"},
		},
	}
	for _, c := range chances {
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
			entry.Weekday(c.Date), say.Clock(c.From), say.Clock(c.To),
			entry.AltitudeOf(c.Where), say.Bearing(c.Where.Azimuth, 0), entry.Toward(c.Where.Azimuth),
			entry.Percent(c.Limb.Lit), entry.LitSide(c.Limb.Side),
			say.Number(c.SunApart.Degrees(), "deg", 0),
			say.Yes(c.Safe, "moon-school.safe", "moon-school.unsafe"),
		}})
	}
	return table
}

func moonSchoolFacts(p place.Place, chances []entry.Chance) []result.Fact {
	days, near := map[place.Date]bool{}, map[place.Date]bool{}
	var safe []entry.Chance
	for _, c := range chances {
		if c.Safe {
			safe = append(safe, c)
			days[c.Date] = true
		} else {
			near[c.Date] = true
		}
	}
	for d := range days {
		delete(near, d)
	}
	none := say.None("moon-school.none")
	first, firstDirection, last, best := none, none, none, none
	altitude, direction, side := none, none, none
	if len(safe) > 0 {
		top := safe[0]
		for _, c := range safe {
			if c.Where.Altitude > top.Where.Altitude {
				top = c
			}
		}
		firstDirection = entry.Toward(almanac.MoonFrom(p, safe[0].From).Azimuth)
		first, last, best = entry.Moment(p, safe[0].From), entry.Moment(p, safe[len(safe)-1].To), entry.Moment(p, top.Best)
		altitude, direction, side = entry.AltitudeOf(top.Where), entry.Toward(top.Where.Azimuth), entry.LitSide(top.Limb.Side)
	}
	return []result.Fact{
		entry.True("some", len(safe) > 0),
		{Name: "days", Value: say.Count(len(days))},
		{Name: "first", Value: first},
		{Name: "first_direction", Value: firstDirection},
		{Name: "last", Value: last},
		{Name: "best", Value: best},
		{Name: "best_altitude", Value: altitude},
		{Name: "best_direction", Value: direction},
		{Name: "best_side", Value: side},
		{Name: "near_sun", Value: say.Count(len(near))},
	}
}
