package placeholder

import (
	"fmt"
	"slices"
	"time"

	"noonbook/build/form"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

func moonSchool() Entry {
	return Entry{
		Name:    "moon-school",
		Summary: "When the Moon can be seen in lesson time: days and times, direction, lit side.",
		Arguments: form.Form{
			{Name: "from", Kind: form.Date, Assumed: "term.first_day", Doc: "First day to look at."},
			{Name: "to", Kind: form.Date, Assumed: "term.last_day", Doc: "Last day to look at, at most 400 days later."},
			{Name: "altitude_deg", Kind: form.Number, Unit: "deg", Min: 0, Max: 89, Default: 15.0, Doc: "How high the Moon has to stand, as seen."},
		},
		Settings: slices.Concat(where, []string{"term.first_day", "term.last_day", "term.school_days", "term.days_off", "term.lesson_times"}),
		Facts: []Fact{
			{"days", "", "school days on which the Moon stands high enough in some lesson, safely far from the Sun"},
			{"first", "", "the first moment at which it does"},
			{"first_direction", "", "where it then stands, in words"},
			{"last", "", "the last such moment"},
			{"best", "", "the moment, on one of these days, at which the Moon stands highest in a lesson"},
			{"best_altitude", "deg", "how high that is"},
			{"best_direction", "", "where it then stands, in words"},
			{"best_side", "", "which side of it is then lit"},
			{"near_sun", "", "school days on which it stands high enough only too near the Sun to be searched for"},
		},
		Sources: []string{sourceMoon, sourceRefraction, sourceIANA, "20° from the Sun as a bound for searching the Moon: common practice, no source"},
		Reckon:  reckonMoonSchool,
	}
}

// nearSun is how far from the Sun the Moon must stand to be searched for:
// two fists at the end of the arm, common practice, no source.
var nearSun = quantity.Degrees(20)

// A chance is a stretch of a lesson in which the Moon stands high enough.
type chance struct {
	date     place.Date
	from, to time.Time
	best     time.Time // when it stands highest within
	where    almanac.Horizontal
	limb     almanac.Limb
	sunApart quantity.Angle
}

func (c chance) safe() bool { return c.sunApart >= nearSun }

func reckonMoonSchool(v form.Values) (result.Result, error) {
	p := Place(v)
	from, to, err := daysAsked(v)
	if err != nil {
		return result.Result{}, err
	}
	lessons := v.Spans("term.lesson_times")
	r := result.Result{Cautions: []say.Phrase{say.Line("moon-school.caution", say.Number(nearSun.Degrees(), "deg", 0))}}
	if len(lessons) == 0 {
		lessons = []form.TimeSpan{schoolDay}
		r.Warnings = []say.Phrase{say.Line("moon-school.no_lessons", clockFace(schoolDay.From), clockFace(schoolDay.To))}
	}
	term := Term(v)
	var chances []chance
	for d := from; !d.After(to); d = d.Add(1) {
		if term.Teaches(d) {
			chances = append(chances, chancesOn(p, d, lessons, quantity.Degrees(v.Number("altitude_deg")))...)
		}
	}
	r.Facts = moonSchoolFacts(p, chances)
	high := say.Number(v.Number("altitude_deg"), "deg", 0)
	if len(chances) == 0 {
		r.Notes = []say.Phrase{say.Line("moon-school.no_chance", say.Date(from), say.Date(to), high)}
		return r, nil
	}
	r.Tables = []result.Table{chanceTable(p, chances, say.Line("moon-school.title", say.Date(from), say.Date(to), high))}
	r.Notes = []say.Phrase{say.Line("moon-school.note"), say.Line("sky.fist")}
	return r, nil
}

// schoolDay stands in where no lesson times are entered: common practice.
var schoolDay = form.TimeSpan{From: 9 * time.Hour, To: 15 * time.Hour}

func clockFace(d time.Duration) say.Value {
	return say.Clock(time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC).Add(d))
}

// daysAsked are the first and the last of the days asked for; of the term where
// nothing is said.
func daysAsked(v form.Values) (from, to place.Date, err error) {
	from, to = v.Date("term.first_day"), v.Date("term.last_day")
	if v.Has("from") {
		from = v.Date("from")
	}
	if v.Has("to") {
		to = v.Date("to")
	}
	return from, to, schoolRange(from, to)
}

func schoolRange(from, to place.Date) error {
	switch {
	case to.Before(from):
		return fmt.Errorf("the last day, %s, is before the first, %s", to, from)
	case from.DaysUntil(to) > 400:
		return fmt.Errorf("%s to %s is %d days, more than 400", from, to, from.DaysUntil(to))
	}
	if err := rangeOf(from); err != nil {
		return err
	}
	return rangeOf(to)
}

// chancesOn returns the stretches of the lessons in which the Moon's centre is
// seen at the altitude or higher.
func chancesOn(p place.Place, d place.Date, lessons []form.TimeSpan, altitude quantity.Angle) []chance {
	day := almanac.Moon.Past(p, d, asStands(altitude))
	if day.State == almanac.DownAllDay || day.State == almanac.NoDay {
		return nil
	}
	var list []chance
	for _, high := range between(day) {
		for _, lesson := range lessons {
			from, to := at(p, d, lesson.From), at(p, d, lesson.To)
			from, to = later(from, high.from), earlier(to, high.to)
			if from.Before(to) {
				list = append(list, chanceIn(p, d, from, to))
			}
		}
	}
	slices.SortFunc(list, func(a, b chance) int { return a.from.Compare(b.from) })
	return list
}

func at(p place.Place, d place.Date, clock time.Duration) time.Time {
	return p.Clock(d, int(clock.Hours()), int(clock.Minutes())%60)
}

func earlier(a, b time.Time) time.Time {
	if b.Before(a) {
		return b
	}
	return a
}

// A stretch is a part of a day.
type stretch struct{ from, to time.Time }

// between returns when a body is above the altitude of the day's crossings.
func between(day almanac.Day) []stretch {
	if day.State == almanac.UpAllDay {
		return []stretch{{day.From, day.To}}
	}
	var list []stretch
	sets := day.Sets
	if len(sets) > 0 && (len(day.Rises) == 0 || sets[0].Before(day.Rises[0])) {
		list = append(list, stretch{day.From, sets[0]})
		sets = sets[1:]
	}
	for i, rise := range day.Rises {
		end := day.To
		if i < len(sets) {
			end = sets[i]
		}
		list = append(list, stretch{rise, end})
	}
	return list
}

// chanceIn finds the highest moment of a stretch, to the minute or so: at an end
// or where the Moon crosses the meridian.
func chanceIn(p place.Place, d place.Date, from, to time.Time) chance {
	c := chance{date: d, from: from, to: to}
	for _, t := range append(almanac.MoonDay(p, d).Transits, from, to) {
		if t.Before(from) || t.After(to) {
			continue
		}
		if h := almanac.MoonFrom(p, t); c.best.IsZero() || h.Altitude > c.where.Altitude {
			c.best, c.where = t, h
		}
	}
	c.limb = almanac.Moon.LimbFrom(p, c.best)
	c.sunApart = almanac.Moon.AspectAt(c.best).Elongation
	return c
}

func chanceTable(p place.Place, chances []chance, title say.Phrase) result.Table {
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
			weekday(c.date), say.Clock(c.from), say.Clock(c.to),
			altitudeOf(c.where), say.Bearing(c.where.Azimuth, 0), toward(c.where.Azimuth),
			percent(c.limb.Lit), litSide(c.limb.Side),
			say.Number(c.sunApart.Degrees(), "deg", 0),
			say.Yes(c.safe(), "moon-school.safe", "moon-school.unsafe"),
		}})
	}
	return table
}

// weekday is a date with its day of the week, for lists of school days.
func weekday(d place.Date) say.Value {
	return say.Date(d).As("format.weekday", say.Words(weekdayKey(d)), say.Count(d.Day), say.Words(monthKey(d.Month)))
}

func moonSchoolFacts(p place.Place, chances []chance) []result.Fact {
	days, near := map[place.Date]bool{}, map[place.Date]bool{}
	var safe []chance
	for _, c := range chances {
		if c.safe() {
			safe = append(safe, c)
			days[c.date] = true
		} else {
			near[c.date] = true
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
			if c.where.Altitude > top.where.Altitude {
				top = c
			}
		}
		firstDirection = toward(almanac.MoonFrom(p, safe[0].from).Azimuth)
		first, last, best = moment(p, safe[0].from), moment(p, safe[len(safe)-1].to), moment(p, top.best)
		altitude, direction, side = altitudeOf(top.where), toward(top.where.Azimuth), litSide(top.limb.Side)
	}
	return []result.Fact{
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
