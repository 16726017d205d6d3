package placeholder

import (
	"math"
	"time"

	"noonbook/build/form"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

func planetsWeek() Entry {
	facts := []Fact{
		{"evening", "", "the planets of the evening sky"},
		{"morning", "", "the planets of the morning sky"},
		{"all_night", "", "the planets that are up from dusk to dawn"},
		{"lost", "", "the planets that are lost in the Sun's glare"},
		{"brightest", "", "the brightest planet that can be seen in the night after the date"},
		{"dusk", "", "when it is dark enough for the fainter planets after the date's sunset"},
		{"dawn", "", "when it stops being so before the next sunrise"},
	}
	for _, b := range almanac.NakedEye() {
		name := bodyName(b)
		facts = append(facts,
			Fact{name + "_when", "", "when " + b.String() + " can be seen, in words"},
			Fact{name + "_altitude", "deg", "how high it stands at the time of the table, as seen"},
			Fact{name + "_direction", "", "where it then stands, in words"},
			Fact{name + "_magnitude", "", "its magnitude; smaller is brighter"})
	}
	return Entry{
		Name:    "planets-week",
		Summary: "Where each planet is to be found in the week of a date: evening, morning, all night or lost in the Sun's glare.",
		Arguments: form.Form{onDate,
			{Name: "time", Kind: form.Clock, Assumed: "for each planet dusk, or dawn if it is a planet of the morning", Doc: "Time by the school's clock for height and direction; before noon it is the morning after the date."},
		},
		Settings: where,
		Facts:    facts,
		Sources:  []string{sourcePlanets, sourceMagnitudes, sourceRefraction, sourceIANA, "What counts as seen (planet 5° high, the Sun 3° below the horizon for Venus, 6° for others that outshine Sirius, 9° for the rest): common practice, no source"},
		Reckon:   reckonPlanets,
	}
}

// bodyName is the name of a planet in facts and words.
func bodyName(b almanac.Body) string {
	return [...]string{"sun", "moon", "mercury", "venus", "mars", "jupiter", "saturn"}[b]
}

func bodyWord(b almanac.Body) say.Value {
	return say.Words([...]string{"body.sun", "body.moon", "body.mercury", "body.venus", "body.mars", "body.jupiter", "body.saturn"}[b])
}

func reckonPlanets(v form.Values) (result.Result, error) {
	p, date := Place(v), v.Date("date")
	if err := rangeOf(date); err != nil {
		return result.Result{}, err
	}
	n := nightOf(p, date)
	table := result.Table{
		Name:  "planets",
		Title: say.Line("planets-week.title", say.Date(date)),
		Columns: []result.Column{
			{Name: "planet"}, {Name: "when"}, {Name: "at"}, {Name: "altitude", Unit: "deg"}, {Name: "bearing", Unit: "deg"}, {Name: "direction"},
			{Name: "brightness"}, {Name: "magnitude"}, {Name: "sun_distance", Unit: "deg"},
		},
	}
	var facts []result.Fact
	var seen []sighting
	for _, b := range almanac.NakedEye() {
		s := sightingIn(n, b)
		if v.Has("time") {
			s.at = n.clock(v.Clock("time"))
			s.stands = b.From(p, s.at)
		}
		seen = append(seen, s)
		altitude, bearing, direction := altitudeOf(s.stands), say.Bearing(s.stands.Azimuth, 0), toward(s.stands.Azimuth)
		if asSeen(s.stands.Altitude) < 0 {
			direction = say.None("sky.below")
		}
		magnitude := say.Number(s.aspect.Magnitude, "", 1)
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
			bodyWord(b), s.when(p), say.Clock(s.at.In(p.Zone)), altitude, bearing, direction,
			brightness(s.aspect.Magnitude), magnitude, say.Number(s.aspect.Elongation.Degrees(), "deg", 0),
		}})
		name := bodyName(b)
		facts = append(facts,
			result.Fact{Name: name + "_when", Value: s.when(p)},
			result.Fact{Name: name + "_altitude", Value: altitude},
			result.Fact{Name: name + "_direction", Value: direction},
			result.Fact{Name: name + "_magnitude", Value: magnitude})
	}
	r := result.Result{
		Facts:    append(nightFacts(n, seen), facts...),
		Tables:   []result.Table{table},
		Notes:    []say.Phrase{say.Line("planets-week.note"), say.Line("sky.fist")},
		Cautions: []say.Phrase{say.Line("planets-week.caution")},
	}
	if best, ok := brightest(seen); ok {
		times := math.Pow(10, 0.4*(sirius-best.aspect.Magnitude))
		r.Working = []say.Phrase{say.Line("planets-week.working", bodyWord(best.body), say.Number(best.aspect.Magnitude, "", 1),
			say.Number(sirius-best.aspect.Magnitude, "", 2), say.Number(times, "", 1))}
	}
	return r, nil
}

func nightFacts(n night, seen []sighting) []result.Fact {
	group := func(c course) say.Value {
		var names []say.Value
		for _, s := range seen {
			if s.course == c || s.course == bothEnds && (c == evening || c == morning) {
				names = append(names, bodyWord(s.body))
			}
		}
		return listed(names)
	}
	bright := say.None("sky.nothing")
	if s, ok := brightest(seen); ok {
		bright = bodyWord(s.body)
	}
	dusk, dawn := say.None("planets-week.no_dusk"), say.None("planets-week.no_dusk")
	if from, to, ok := n.dark(faintDepth); ok {
		dusk, dawn = say.Clock(from.In(n.p.Zone)), say.Clock(to.In(n.p.Zone))
		if from.Equal(n.noon) {
			dusk, dawn = say.None("planets-week.dark_all_day"), say.None("planets-week.dark_all_day")
		}
	}
	return []result.Fact{
		{Name: "evening", Value: group(evening)},
		{Name: "morning", Value: group(morning)},
		{Name: "all_night", Value: group(allNight)},
		{Name: "lost", Value: group(inGlare)},
		{Name: "brightest", Value: bright},
		{Name: "dusk", Value: dusk},
		{Name: "dawn", Value: dawn},
	}
}

func brightest(seen []sighting) (best sighting, ok bool) {
	for _, s := range seen {
		if s.course.visible() && (!ok || s.aspect.Magnitude < best.aspect.Magnitude) {
			best, ok = s, true
		}
	}
	return best, ok
}

// brightness puts a magnitude in words, beside stars that a class can find.
func brightness(magnitude float64) say.Value {
	switch {
	case magnitude < -3.5:
		return say.Words("brightness.far_brighter")
	case magnitude < -1.5: // Sirius −1.46
		return say.Words("brightness.brighter")
	case magnitude < 0.5: // Vega, Arcturus, Rigel: about 0
		return say.Words("brightness.brightest_stars")
	case magnitude < 1.5: // Spica, Antares, Aldebaran: about 1
		return say.Words("brightness.bright_star")
	case magnitude < 2.5: // the stars of Orion's belt: about 2
		return say.Words("brightness.middling")
	case magnitude < 4.5:
		return say.Words("brightness.faint")
	}
	return say.Words("brightness.too_faint")
}

// A night runs from the Sun's noon on a date to the next.
type night struct {
	p          place.Place
	date       place.Date
	noon, next time.Time
}

func nightOf(p place.Place, d place.Date) night {
	return night{p, d, noonOr(p, d), noonOr(p, d.Add(1))}
}

// noonOr is the Sun's noon, or midday by the clock on a date without one.
func noonOr(p place.Place, d place.Date) time.Time {
	if t, ok := localNoon(p, d); ok {
		return t
	}
	return p.Clock(d, 12, 0)
}

// clock returns when the clock shows a time during the night.
func (n night) clock(at time.Duration) time.Time {
	d := n.date
	if at < 12*time.Hour {
		d = d.Add(1)
	}
	return n.p.Clock(d, int(at.Hours()), int(at.Minutes())%60)
}

// dark returns from when to when the Sun is deeper than that below the horizon:
// the whole span where it is so even at noon. ok is false where it never is.
func (n night) dark(depth quantity.Angle) (from, to time.Time, ok bool) {
	rises, sets := n.passes(almanac.Sun, -depth)
	from, to = n.noon, n.next
	if len(rises)+len(sets) == 0 {
		return from, to, almanac.SunFrom(n.p, n.noon).Altitude < -depth
	}
	if len(sets) > 0 {
		from = sets[0]
	}
	if len(rises) > 0 {
		to = rises[len(rises)-1]
	}
	return from, to, from.Before(to)
}

// passes returns when a body passes an altitude during the night, upwards and
// downwards.
func (n night) passes(b almanac.Body, altitude quantity.Angle) (up, down []time.Time) {
	within := func(times []time.Time) (list []time.Time) {
		for _, t := range times {
			if !t.Before(n.noon) && t.Before(n.next) {
				list = append(list, t)
			}
		}
		return list
	}
	// The noons of two dates lie within these dates, so no third one is asked.
	for _, d := range []place.Date{n.date, n.date.Add(1)} {
		day := b.Past(n.p, d, altitude)
		up, down = append(up, within(day.Rises)...), append(down, within(day.Sets)...)
	}
	return up, down
}
