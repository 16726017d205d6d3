package maps

import (
	"math"
	"slices"
	"time"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/globe"
)

const (
	moonShow form.Key[[]string] = "show"
	moonFrom form.Key[string]   = "from"
	moonTo   form.Key[string]   = "to"

	moonPower form.Key[float64] = "power"
)

var moonParts = []string{"map", "tonight", "features", "sites"}

// lunokhod is the top speed of the two Lunokhods, 2 km/h: NSSDCA spacecraft catalogue, from
// memory. Nothing without a driver has gone faster on another world.
const lunokhodKmH = 2.0

func moonMap() entry.Entry {
	return entry.Entry{
		Name:    "moon-map",
		Summary: "The Moon's face as a map, turned and lit as it is seen, what is worth looking at, named places and landing sites, and ways between them.",
		Arguments: form.Form{entry.OnDate(),
			{Key: moonTime, Assumed: "the time of the evening at which the Moon stands highest, from the end of bright twilight to 21:30; 21:30 where it is bright for longer", Doc: "Time on that date by the school's clock."},
			{Key: moonFace, Choices: []string{"moment", "mean"}, Default: "moment", Doc: "The face of the moment, with its night side, or the mean face, all of it lit."},
			turnField("north", "south", "seen"),
			{Key: moonShow, Choices: moonParts, Default: moonParts, Doc: "What to show: the map, the list of what is worth looking at, the named places, the landing sites."},
			{Key: moonPower, Unit: "times", Min: 1, Max: 500, Assumed: "the focal length of the front lens of the stock over that of its eye lens, where both are set", Doc: "How many times the class's telescope magnifies."},
			{Key: moonFrom, Default: "Apollo 11", Doc: "A named place or a landing site from which ways are measured."},
			{Key: moonTo, Default: "Apollo 17", Doc: "Where the way of the facts leads."},
		},
		Settings: slices.Concat(form.Keys{school.StockFrontLensFocalMM, school.StockEyeLensFocalMM}, entry.KnownWaySettings(), school.Where()),
		Facts: []entry.Fact{
			{Name: "time", Doc: "the moment of the map, by the school's clock"},
			{Name: "up", Doc: "what of the Moon is up on the map"},
			{Name: "north", Doc: "on which side of the map the Moon's north is"},
			{Name: "east", Doc: "on which side of the map the Moon's east is, where Mare Crisium is"},
			{Name: "lit", Unit: "percent", Doc: "how much of the disc is lit"},
			entry.Truth("moon_up", "whether the Moon is above the horizon then"),
			entry.Truth("sun_up", "whether the Sun is"),
			entry.Truth("worth", "whether it can be looked at with a telescope then: the Moon is up, no new Moon, and the Sun is down"),
			{Name: "moon_altitude", Unit: "deg", Doc: "height of the Moon; below the horizon negative"},
			{Name: "moon_direction", Doc: "where the Moon stands, in words"},
			{Name: "colongitude", Unit: "deg", Doc: "the Sun's selenographic colongitude: where the Sun rises on the Moon's equator, counted westward"},
			{Name: "centre_latitude", Unit: "deg", Doc: "selenographic latitude of the middle of the disc"},
			{Name: "centre_longitude", Unit: "deg", Doc: "its longitude, east positive"},
			{Name: "near_line", Doc: "what to begin with: the widest crater over which the Sun is low"},
			{Name: "near_count", Doc: "how many features of the map have the Sun so low"},
			{Name: "power", Unit: "times", Doc: "how many times the class's telescope magnifies"},
			{Name: "way", Unit: "km", Doc: "the way from `from` to `to` along the Moon's ground"},
			{Name: "way_toward", Doc: "the direction in which it sets out, in words"},
			{Name: "way_walk", Unit: "days", Doc: "how many days a walk takes, at 4 km in an hour, six hours a day"},
			{Name: "way_drive", Unit: "h", Doc: "how many hours a rover drives at 2 km in an hour, without a stop"},
			{Name: "features", Doc: "how many named features the map has"},
			{Name: "sites", Doc: "how many landing sites"},
		},
		Sources:  []string{sourceNames, sourceMeanings, sourceSites, sourceSketch, entry.SourceMoon, entry.SourceRefraction, sourceFace, sourceClear, sourceWay, "Rover: 2 km/h, the top speed of the Lunokhods (NSSDCA spacecraft catalogue, from memory)"},
		Cautions: []string{entry.CareEvening, entry.CareMoonByDay, entry.CareTelescope},
		Reckon:   reckonMoonMap,
	}
}

const (
	sourceFace  = "Libration and the Sun over the Moon: J. Meeus, Astronomical Algorithms (2nd ed. 1998), chapter 53, after D. H. Eckhardt (1981), as compute/almanac documents"
	sourceClear = "What shows with which tool: two minutes of arc, twice what a good eye tells apart; mountains five times as long as wide, cliffs, valleys and rilles forty times; long shadows with the Sun 10° high or lower; binoculars that magnify 8 times: common practice, no source"
)

func reckonMoonMap(v form.Values) (result.Result, error) {
	m, err := moonViewOf(v)
	if err != nil {
		return result.Result{}, err
	}
	from, err := findSpot(globe.Moon, moonFrom.Name(), moonFrom.Of(v))
	if err != nil {
		return result.Result{}, err
	}
	to, err := findSpot(globe.Moon, moonTo.Name(), moonTo.Of(v))
	if err != nil {
		return result.Result{}, err
	}
	low := m.tonight()
	w := wayBetween(from, to)
	r := result.Result{Facts: slices.Concat(m.facts(v, low), wayFacts(w)), Warnings: m.warnings()}
	shows := func(part string) bool { return slices.Contains(moonShow.Of(v), part) }
	if shows("map") {
		drawn := m.drawn(entry.KnownWayOf(v))
		r.Drawings, r.Walks = []drawing.Drawing{drawn.picture}, []result.Walk{drawn.walk}
		r.Notes = append(r.Notes, m.howToRead()...)
	}
	if shows("tonight") && !m.mean {
		if len(low) > 0 {
			r.Tables = append(r.Tables, tonightTable(v, &m, low))
			r.Notes = append(r.Notes, say.Line("moon-map.note_tonight", say.Number(binoculars, "times", 0)))
		} else {
			r.Notes = append(r.Notes, say.Line("moon-map.note_nothing"))
		}
	}
	if shows("features") {
		r.Tables = append(r.Tables, featureTable())
	}
	if shows("sites") {
		r.Tables = append(r.Tables, sitesTable(from))
		r.Notes = append(r.Notes, say.Line("moon-map.note_way", spotName(from), spotName(to), w.lengthValue(), entry.Toward(w.toward), daysOf(w.walkDays())))
	}
	if shows("tonight") && !m.mean {
		step := "moon-map.working_colongitude"
		if m.face.SunLongitude > quarter {
			step = "moon-map.working_round"
		}
		r.Working = []say.Phrase{say.Line(step, say.Degrees(m.face.SunLongitude, 1), say.Bearing(m.face.Colongitude(), 1))}
	}
	return r, nil
}

// A moonDrawn is a map with the walk through it.
type moonDrawn struct {
	picture drawing.Drawing
	walk    result.Walk
}

type moonKeyOf struct {
	view       globe.View
	sunLon     float64
	at         int64
	turn       string
	mean       bool
	zoneOffset int
	known      entry.KnownWay
}

// A handbook has the face of an evening more than once, with one table and another. It is
// drawn once; two schools at a time are many.
var moonMaps = entry.Memory[moonKeyOf, moonDrawn]{Most: 8}

func (m moonView) drawn(known entry.KnownWay) moonDrawn {
	at := m.at.In(m.place.Zone)
	_, offset := at.Zone()
	drawn, _ := moonMaps.Of(moonKeyOf{m.View, m.face.SunLongitude.Radians(), at.UnixNano(), m.turn, m.mean, offset, known}, func() (moonDrawn, error) {
		d, on := m.picture()
		return moonDrawn{d, on.walk(known)}, nil
	})
	return drawn
}

// howToRead says how the map is turned, where its east is, and what a telescope does to it.
func (m *moonView) howToRead() []say.Phrase {
	notes := []say.Phrase{say.Line("moon-map.note_turn", m.upWord(), m.sideToward(0), m.sideToward(quarter)), say.Line("moon-map.note_east")}
	if !m.mean {
		notes = append(notes, say.Line("moon-map.note_line"))
	}
	return append(notes, say.Line("moon-map.note_telescope"), say.Line("moon-map.note_seas"))
}

// moment is when the map is for.
func (m *moonView) moment() say.Value { return entry.Moment(m.place, m.at) }

func (m *moonView) facts(v form.Values, low []nearLine) []result.Fact {
	near := say.None("moon-map.nothing")
	if n, ok := best(low); ok {
		near = spotName(n.Spot)
	}
	power := say.None("moon-map.no_telescope")
	if times, known := telescopePower(v); known {
		power = say.Number(times, "times", 0)
	}
	moonWay := entry.Toward(m.where.Azimuth)
	if !m.up() {
		moonWay = say.None("sky.below")
	}
	altitude := entry.AltitudeOf(m.where)
	altitude.Decimals = 0
	features := 0
	spots := globe.Spots(globe.Moon)
	for _, s := range spots {
		if s.Kind != globe.Site {
			features++
		}
	}
	return []result.Fact{
		{Name: "time", Value: m.moment()},
		{Name: "up", Value: m.upWord()},
		{Name: "north", Value: m.sideToward(0)},
		{Name: "east", Value: m.sideToward(quarter)},
		{Name: "lit", Value: entry.Percent(m.face.Lit())},
		entry.True("moon_up", m.up()),
		entry.True("sun_up", m.day()),
		entry.True("worth", m.up() && !m.day() && m.face.Lit() >= newMoon),
		{Name: "moon_altitude", Value: altitude},
		{Name: "moon_direction", Value: moonWay},
		{Name: "colongitude", Value: say.Bearing(m.face.Colongitude(), 1)},
		{Name: "centre_latitude", Value: say.Degrees(m.face.Latitude, 1)},
		{Name: "centre_longitude", Value: say.Degrees(m.face.Longitude, 1)},
		{Name: "near_line", Value: near},
		{Name: "near_count", Value: say.Count(len(low))},
		{Name: "power", Value: power},
		{Name: "features", Value: say.Count(features)},
		{Name: "sites", Value: say.Count(len(spots) - features)},
	}
}

func wayFacts(w way) []result.Fact {
	return []result.Fact{
		{Name: "way", Value: w.lengthValue()},
		{Name: "way_toward", Value: entry.Toward(w.toward)},
		{Name: "way_walk", Value: daysOf(w.walkDays())},
		{Name: "way_drive", Value: say.Number(w.length.Kilometres()/lunokhodKmH, "h", 0)},
	}
}

// daysOf is a number of days of walking, with a decimal where they are few; less than one is
// told in hours of walking.
func daysOf(days float64) say.Value {
	v := say.Number(days, "days", 0)
	switch {
	case days < 1:
		return v.As("moon-map.plain", say.Minutes(time.Duration(math.Round(days*walkHours*60))*time.Minute))
	case days < 10:
		v.Decimals = 1
	}
	return v
}
