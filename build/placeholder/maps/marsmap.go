package maps

import (
	"math"
	"slices"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/globe"
	"noonbook/compute/quantity"
)

const (
	marsShow form.Key[[]string] = "show"
	marsFrom form.Key[string]   = "from"
	marsTo   form.Key[string]   = "to"
)

var marsParts = []string{"map", "features", "sites"}

// What a rover does.
const (
	roverTopMH = 152.0 // m/h on flat, hard ground: NASA, Perseverance; from memory
	roverDayM  = 400.0 // m in one of its longest days: NASA, Perseverance; from memory
)

const (
	sourceMarsFlat  = "Map: plate carrée projection (J. P. Snyder, Map Projections, USGS Professional Paper 1395, 1987, equations 12-1 and 12-2) of a sphere of 3389.5 km"
	sourceMarsHand  = "Courses of Valles Marineris, Kasei Valles and Ares Vallis between their ends: by hand, from memory, to a few degrees"
	sourceMarsRover = "Rover: 152 m in an hour at most and about 400 m on one of its longest days (NASA, Perseverance; both from memory)"
)

func marsMap() entry.Entry {
	return entry.Entry{
		Name:    "mars-map",
		Summary: "A map of Mars with plains, mountains, craters and landing sites, tables of them, and how far it is from one to another.",
		Arguments: form.Form{
			{Key: marsShow, Choices: marsParts, Default: marsParts, Doc: "What to show: the map, the named places, the landing sites."},
			{Key: marsFrom, Default: "Curiosity", Doc: "A named place or a landing site of Mars where the way begins."},
			{Key: marsTo, Default: "Perseverance", Doc: "Where the way leads."},
		},
		Settings: entry.KnownWaySettings(),
		Facts: []entry.Fact{
			{Name: "way", Unit: "km", Doc: "the way from `from` to `to` along the ground of Mars, by a great circle"},
			{Name: "toward", Doc: "in which direction that way sets out, in words"},
			{Name: "arrives", Doc: "in which direction it arrives, in words"},
			{Name: "strip", Unit: "km", Doc: "the same way by a straight strip on the map and the scale bar"},
			{Name: "strip_excess", Unit: "percent", Doc: "how much longer that is than the way"},
			{Name: "known", Doc: "the way in ways that the class knows"},
			entry.Truth("knows_way", "whether the school names a way that the class knows"),
			{Name: "known_name", Doc: "what the way that the class knows is called"},
			{Name: "walk", Unit: "days", Doc: "how many days that takes on foot, at 4 km in an hour, six hours a day"},
			{Name: "drive_nonstop", Unit: "days", Doc: "how many days a rover takes at its top speed, if it never stops"},
			{Name: "drive", Unit: "years", Doc: "how many years it takes, if every day is one of its longest"},
			{Name: "rover_speed", Unit: "m", Doc: "how far a rover gets in an hour at most"},
			{Name: "rover_day", Unit: "m", Doc: "how far it gets on one of its longest days"},
			{Name: "bar", Unit: "km", Doc: "how long the scale bar is"},
			{Name: "bar_drive", Unit: "years", Doc: "how many years a rover takes for so far"},
			{Name: "from_across", Unit: "km", Doc: "how wide `from` is, or how long; 0 for a landing site"},
			{Name: "from_known", Doc: "the same in ways that the class knows"},
			{Name: "round", Unit: "km", Doc: "the way round Mars, along its equator"},
			{Name: "round_known", Doc: "the same in ways that the class knows"},
			{Name: "round_drive", Unit: "years", Doc: "how many years a rover takes for that"},
			{Name: "stretch", Doc: "how many times too long an east-west way is on the map at the latitude of `from`"},
			{Name: "features", Doc: "how many named places the map of Mars has"},
			{Name: "sites", Doc: "how many landing sites the map of Mars has"},
		},
		Sources:  []string{sourceNames, sourceSites, sourceMarsFlat, sourceMarsHand, sourceWay, sourceMarsRover},
		Harmless: "A map to read and to measure on, at a table.",
		Reckon:   reckonMarsMap,
	}
}

func reckonMarsMap(v form.Values) (result.Result, error) {
	from, err := findSpot(globe.Mars, marsFrom.Name(), marsFrom.Of(v))
	if err != nil {
		return result.Result{}, err
	}
	to, err := findSpot(globe.Mars, marsTo.Name(), marsTo.Of(v))
	if err != nil {
		return result.Result{}, err
	}
	known, w := entry.KnownWayOf(v), wayBetween(from, to)
	r := result.Result{Facts: marsFacts(w, known)}
	shows := func(part string) bool { return slices.Contains(marsShow.Of(v), part) }
	if shows("map") {
		d, on := marsPage(w, known)
		r.Drawings, r.Walks = []drawing.Drawing{d}, []result.Walk{on.walk(known)}
		r.Notes = append(r.Notes,
			say.Line("mars-map.note_up"), say.Line("mars-map.note_flat"), say.Line("mars-map.note_wide"),
			say.Line("mars-map.note_way", spotName(from), spotName(to), w.lengthValue(), entry.Toward(w.toward)))
	}
	if shows("features") {
		r.Tables = append(r.Tables, marsFeatures(known))
	}
	if shows("sites") {
		r.Tables = append(r.Tables, marsSites(from))
	}
	if shows("features") || shows("sites") {
		r.Notes = append(r.Notes, say.Line("mars-map.note_pace", say.Number(walkKmH, "km", 0)))
	}
	r.Working = marsWorking(w)
	return r, nil
}

func marsFacts(w way, known entry.KnownWay) []result.Fact {
	strip := globe.Mars.Strip(w.from.At, w.to.At)
	excess := 0.0
	if w.length > 0 {
		excess = float64(strip/w.length) - 1
	}
	round := quantity.Length(quantity.Turn.Radians()) * globe.Mars.Radius()
	features := 0
	spots := globe.Spots(globe.Mars)
	for _, s := range spots {
		if s.Kind != globe.Site {
			features++
		}
	}
	return []result.Fact{
		{Name: "way", Value: w.lengthValue()},
		{Name: "toward", Value: entry.Toward(w.toward)},
		{Name: "arrives", Value: entry.Toward(w.to.At.Toward(w.from.At) + quantity.Turn/2)},
		{Name: "strip", Value: way{length: strip}.lengthValue()},
		{Name: "strip_excess", Value: entry.Percent(excess)},
		{Name: "known", Value: known.Measure(w.length)},
		entry.True("knows_way", known.Is()),
		{Name: "known_name", Value: known.Name()},
		{Name: "walk", Value: marsDays(w.walkDays())},
		{Name: "drive_nonstop", Value: marsDays(w.length.Metres() / roverTopMH / 24)},
		{Name: "drive", Value: entry.Years(roverYears(w.length))},
		{Name: "rover_speed", Value: say.Number(roverTopMH, "m", 0)},
		{Name: "rover_day", Value: say.Number(roverDayM, "m", 0)},
		{Name: "bar", Value: say.Number(barLength.Kilometres(), "km", 0)},
		{Name: "bar_drive", Value: entry.Years(roverYears(barLength))},
		{Name: "from_across", Value: spotAcross(w.from).IfAny()},
		{Name: "from_known", Value: known.Measure(w.from.Across).IfAny()},
		{Name: "round", Value: say.Number(round.Kilometres(), "km", 0)},
		{Name: "round_known", Value: known.Measure(round)},
		{Name: "round_drive", Value: entry.Years(roverYears(round))},
		{Name: "stretch", Value: say.Number(1/max(w.from.At.Latitude.Cos(), 1e-3), "", 1)},
		{Name: "features", Value: say.Count(features)},
		{Name: "sites", Value: say.Count(len(spots) - features)},
	}
}

// roverYears is how many years of the Earth a rover takes, if every day is one of its
// longest. A day of Mars is 2.7 % longer than ours, which is left out.
func roverYears(l quantity.Length) float64 { return l.Metres() / roverDayM / 365.25 }

// marsDays is a number of days, with a decimal where they are few.
func marsDays(days float64) say.Value {
	decimals := 0
	if days < 10 {
		decimals = 1
	}
	return say.Number(days, "days", decimals)
}

// marsWorking is the way by the spherical law of cosines, in steps for a calculator.
func marsWorking(w way) []say.Phrase {
	a, b := w.from.At, w.to.At
	apart, across := a.Angle(b), quantity.Angle(math.Abs((b.Longitude - a.Longitude).Signed().Radians()))
	return []say.Phrase{
		say.Line("mars-map.working_angle",
			say.Degrees(a.Latitude, 4), say.Degrees(b.Latitude, 4), say.Degrees(across, 4), say.Number(apart.Cos(), "", 6)),
		say.Line("mars-map.working_way", say.Number(apart.Cos(), "", 6), say.Degrees(apart, 2), w.lengthValue()),
	}
}

// Measures of the map on a page in millimetres.
const (
	marsScale = 0.5 // mm a degree
	marsLeft  = 16.0
	marsTop   = 3.0
	marsFoot  = 38.0
)

// marsPage is the map for the page, with its scales and its key below.
func marsPage(w way, known entry.KnownWay) (drawing.Drawing, *marsPicture) {
	d := drawing.Drawing{
		Name: "mars-map", Width: marsLeft + 360*marsScale + 4, Height: marsTop + 180*marsScale + marsFoot,
		Title: say.Line("mars-map.title"), Description: say.Line("mars-map.description"),
	}
	m := &marsPicture{d: &d, corner: drawing.Point{X: marsLeft, Y: marsTop}, scale: marsScale, mark: 0.9}
	m.ground()
	if w.length > 0 {
		m.way(w)
	}
	m.sites()
	m.names()
	m.figures()
	foot := marsTop + m.height()
	m.scales(known, drawing.Point{X: marsLeft, Y: foot + 9}, 0, 8)
	m.key(drawing.Point{X: marsLeft, Y: foot + 26}, 3, 60, 8, 1)
	m.d = nil
	return d, m
}
