package sky

import (
	"math"
	"time"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/almanac"
)

// What the entry takes.
const argTime form.Key[time.Duration] = "time"

func planetsWeek() entry.Entry {
	facts := []entry.Fact{
		{Name: "evening", Doc: "the planets of the evening sky"},
		{Name: "morning", Doc: "the planets of the morning sky"},
		{Name: "all_night", Doc: "the planets that are up from dusk to dawn"},
		{Name: "lost", Doc: "the planets that are lost in the Sun's glare"},
		{Name: "brightest", Doc: "the brightest planet that can be seen in the night after the date"},
		entry.Truth("dark", "whether the night after the date gets dark enough for the fainter planets"),
		{Name: "dusk", Doc: "when it is dark enough for the fainter planets after the date's sunset"},
		{Name: "dawn", Doc: "when it stops being so before the next sunrise"},
	}
	for _, b := range almanac.NakedEye() {
		name := bodyName(b)
		facts = append(facts,
			entry.Fact{Name: name + "_when", Doc: "when " + b.String() + " can be seen, in words"},
			entry.Fact{Name: name + "_altitude", Unit: "deg", Doc: "how high it stands at the time of the table, as seen"},
			entry.Fact{Name: name + "_direction", Doc: "where it then stands, in words"},
			entry.Fact{Name: name + "_magnitude", Doc: "its magnitude; smaller is brighter"})
	}
	return entry.Entry{
		Name:    "planets-week",
		Summary: "Where each planet is to be found in the week of a date: evening, morning, all night or lost in the Sun's glare.",
		Arguments: form.Form{entry.OnDate(),
			{Key: argTime, Assumed: "for each planet dusk, or dawn if it is a planet of the morning", Doc: "Time by the school's clock for height and direction; before noon it is the morning after the date."},
		},
		Settings: school.Where(),
		Facts:    facts,
		Sources:  []string{entry.SourcePlanets, sourceMagnitudes, entry.SourceRefraction, entry.SourceIANA, "What counts as seen (planet 5° high, the Sun 3° below the horizon for Venus, 6° for others that outshine Sirius, 9° for the rest): common practice, no source"},
		Cautions: []string{entry.CarePlanets},
		Reckon:   reckonPlanets,
	}
}

// bodyName is the name of a planet in facts and words.
func bodyName(b almanac.Body) string {
	return [...]string{"sun", "moon", "mercury", "venus", "mars", "jupiter", "saturn"}[b]
}

func reckonPlanets(v form.Values) (result.Result, error) {
	p, date := school.Place(v), entry.Date.Of(v)
	if err := entry.RangeOf(date); err != nil {
		return result.Result{}, err
	}
	n := entry.NightOf(p, date)
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
		if argTime.In(v) {
			s.at = n.Clock(argTime.Of(v))
			s.stands = b.From(p, s.at)
		}
		seen = append(seen, s)
		altitude, bearing, direction := entry.AltitudeOf(s.stands), say.Bearing(s.stands.Azimuth, 0), entry.Toward(s.stands.Azimuth)
		if entry.AsSeen(s.stands.Altitude) < 0 {
			direction = say.None("sky.below")
		}
		magnitude := say.Number(s.aspect.Magnitude, "", 1)
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
			entry.BodyWord(b), s.when(p), say.Clock(s.at.In(p.Zone)), altitude, bearing, direction,
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
		Facts:  append(nightFacts(n, seen), facts...),
		Tables: []result.Table{table},
		Notes:  []say.Phrase{say.Line("planets-week.note"), say.Line("sky.fist")},
	}
	if best, ok := brightest(seen); ok {
		steps := say.Number(sirius-best.aspect.Magnitude, "", 2)
		o := entry.Enough(steps, func(x []float64) float64 { return sirius - x[0] }, say.Number(best.aspect.Magnitude, "", 1))
		// By the rounded 2.512 and the steps as shown, so that it comes out alike.
		times := say.Number(math.Pow(2.512, entry.AsShown(steps)), "", 1)
		r.Working = []say.Phrase{say.Line("planets-week.working", entry.BodyWord(best.body), o[0], steps, times)}
	}
	return r, nil
}

func nightFacts(n entry.Night, seen []sighting) []result.Fact {
	group := func(c course) say.Value {
		var names []say.Value
		for _, s := range seen {
			if s.course == c || s.course == bothEnds && (c == evening || c == morning) {
				names = append(names, entry.BodyWord(s.body))
			}
		}
		return entry.Listed(names)
	}
	bright := say.None("sky.nothing")
	if s, ok := brightest(seen); ok {
		bright = entry.BodyWord(s.body)
	}
	dusk, dawn := say.None("planets-week.no_dusk"), say.None("planets-week.no_dusk")
	from, to, dark := n.Dark(entry.FaintDepth())
	if dark {
		dusk, dawn = say.Clock(from.In(n.Place.Zone)), say.Clock(to.In(n.Place.Zone))
		if from.Equal(n.Noon) {
			dusk, dawn = say.None("planets-week.dark_all_day"), say.None("planets-week.dark_all_day")
		}
	}
	return []result.Fact{
		{Name: "evening", Value: group(evening)},
		{Name: "morning", Value: group(morning)},
		{Name: "all_night", Value: group(allNight)},
		{Name: "lost", Value: group(inGlare)},
		{Name: "brightest", Value: bright},
		entry.True("dark", dark),
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

const sourceMagnitudes = "Magnitudes: A. Mallama and J. L. Hilton, 2018, Computing apparent planetary magnitudes for the Astronomical Almanac"
