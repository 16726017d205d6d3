package stars

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
	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
	"noonbook/compute/sky"
)

// What the entry takes.
const (
	argTime       form.Key[time.Duration] = "time"
	argLimit      form.Key[float64]       = "limit"
	argStars      form.Key[int]           = "stars"
	argProjection form.Key[string]        = "projection"
)

const (
	// Source is that of the stars.
	Source        = "Stars: SIMBAD (Centre de Données astronomiques de Strasbourg), with proper motion and IAU 2006 precession, as compute/sky documents"
	sourceFigures = "Star figures: drawn for this book"
)

func skyMap() entry.Entry {
	return entry.Entry{
		Name:      "sky-map",
		Summary:   "The sky over the school at a date and time: chart, and what is up with its height and direction.",
		Printable: true, For: entry.EachGroup,
		Arguments: form.Form{entry.OnDate(),
			{Key: argTime, Assumed: "21:30, or the first moment after it that is dark", Doc: "Time on that date by the school's clock."},
			{Key: argLimit, Min: 1, Max: 4.5, Default: 4.0, Doc: "Magnitude of the faintest stars that are drawn, besides those of the figures; a town needs 3."},
			{Key: argStars, Min: 1, Max: 60, Default: 12, Doc: "Stars with a name in the table, the brightest that are up."},
			{Key: argProjection, Choices: []string{"even", "shapes"}, Default: "even", Doc: "How the dome is laid flat: even steps of height, or true shapes of the figures."},
		},
		Settings: append(form.Keys{school.Name, school.Paper}, school.Where()...),
		Facts: []entry.Fact{
			{Name: "time", Doc: "the moment of the chart, by the school's clock"},
			{Name: "dark", Doc: "how dark it is then, in words"},
			entry.Truth("stars_out", "whether it is dark enough then for the brighter stars"),
			{Name: "sun_altitude", Unit: "deg", Doc: "height of the Sun's centre then; below the horizon negative"},
			{Name: "planets", Doc: "the planets that are up"},
			{Name: "planets_up", Doc: "how many of the five bright planets are up"},
			{Name: "moon_up", Doc: "whether the Moon is up", Truth: true},
			{Name: "moon_altitude", Unit: "deg", Doc: "height of the Moon; below the horizon negative"},
			{Name: "moon_direction", Doc: "where the Moon stands, in words"},
			{Name: "moon_lit", Unit: "percent", Doc: "how much of the Moon's disc is lit"},
			{Name: "brightest_star", Doc: "the brightest star that is up"},
			{Name: "brightest_star_altitude", Unit: "deg", Doc: "its height"},
			{Name: "brightest_star_direction", Doc: "where it stands, in words"},
			{Name: "highest_star", Doc: "the bright star that stands highest"},
			{Name: "highest_star_altitude", Unit: "deg", Doc: "its height"},
			{Name: "figures", Doc: "star figures that stand high, more than halfway up"},
			{Name: "pole_height", Unit: "deg", Doc: "height of the celestial pole that is up: the latitude"},
			{Name: "pole_direction", Doc: "where that pole stands"},
			{Name: "find_pole", Doc: "how to find it then, in words"},
		},
		Sources:  []string{Source, sourceFigures, entry.SourceMoon, entry.SourcePlanets, entry.SourceRefraction},
		Cautions: []string{entry.CareEvening},
		Reckon:   reckonSkyMap,
	}
}

func reckonSkyMap(v form.Values) (result.Result, error) {
	p, date := school.Place(v), entry.Date.Of(v)
	if err := entry.RangeOf(date); err != nil {
		return result.Result{}, err
	}
	at, warnings := chartMoment(v, p, date)
	c := starChart{p: p, dome: sky.DomeAt(p, at), limit: argLimit.Of(v), bodies: bodiesUp(p, at)}
	c.stars = starsSeen(c.dome)
	if argProjection.Of(v) == "shapes" {
		c.projection = sky.Stereographic
	}
	up := c.namedStars()
	r := result.Result{
		Facts:    c.facts(p, at, up),
		Warnings: warnings,
		Notes:    []say.Phrase{say.Line("sky-map.note"), say.Line("sky.fist")},
		Working: []say.Phrase{
			say.Line("sky-map.working_sidereal", say.Number(c.dome.Sidereal.Hours(), "", 2)),
			say.Line("sky-map.working_pole", entry.Sided(p.Latitude.Degrees(), 1, "compass.north_of", "compass.south_of")),
		},
	}
	if math.Abs(p.Latitude.Degrees()) > 89.9 {
		r.Notes = append(r.Notes, say.Line("sky-map.at_pole", entry.Sided(p.Longitude.Degrees(), 1, "compass.east_of", "compass.west_of")))
	}
	if table := c.bodyTable(p, at); len(table.Rows) > 0 {
		r.Tables = append(r.Tables, table)
	}
	r.Tables = append(r.Tables, namedTable(up[:min(len(up), argStars.Of(v))]))
	paper := drawing.PaperOf(school.Paper.Of(v))
	drawn, _ := charts.Of(chartKey{p, at.UnixNano(), c.limit, c.projection, school.Name.Of(v), paper}, func() (chart, error) {
		picture := c.picture(p, at)
		return chart{picture, c.walk(picture, at), paper.Sheets(c.sheet(v, p, at))}, nil
	})
	r.Drawings, r.Sheets, r.Walks = []drawing.Drawing{drawn.picture}, slices.Clip(drawn.sheets), []result.Walk{drawn.walk}
	return r, nil
}

// A handbook has the chart of an evening more than once, with tables of more and of fewer
// stars. It is drawn once; two schools at a time are many.
var charts = entry.Memory[chartKey, chart]{Most: 8}

type chartKey struct {
	place      place.Place
	at         int64 // Unix, in ns
	limit      float64
	projection sky.Projection
	school     string
	paper      drawing.Paper
}

type chart struct {
	picture drawing.Drawing
	walk    result.Walk
	sheets  []drawing.Sheet
}

// chartMoment returns the moment that the values ask for, or one that is dark, and
// what must be said about it.
func chartMoment(v form.Values, p place.Place, date place.Date) (time.Time, []say.Phrase) {
	var warnings []say.Phrase
	at := p.Clock(date, 21, 30)
	if argTime.In(v) {
		clock := argTime.Of(v)
		at = p.Clock(date, int(clock.Hours()), int(clock.Minutes())%60)
	} else {
		n := entry.NightOf(p, date)
		from, to, ok := n.Dark(entry.FaintDepth())
		switch {
		case !ok:
			at = n.Noon.Add(n.Next.Sub(n.Noon) / 2).Round(5 * time.Minute)
			warnings = append(warnings, say.Line("sky-map.never_dark", say.Clock(at.In(p.Zone))))
		case from.Equal(n.Noon): // dark all day
		case at.Before(from):
			at = from.Add(5*time.Minute - 1).Truncate(5 * time.Minute)
		case at.After(to):
			at = from.Add(to.Sub(from) / 2).Round(5 * time.Minute)
		}
	}
	switch altitude := almanac.SunFrom(p, at).Altitude.Degrees(); {
	case entry.AsSeen(quantity.Degrees(altitude)) > 0:
		warnings = append(warnings, say.Line("sky-map.sun_is_up"))
	case altitude > -6:
		warnings = append(warnings, say.Line("sky-map.bright_sky"))
	}
	return at, warnings
}

// darkness is how dark the sky is, in words, by the usual limits of the twilights.
func darkness(sun quantity.Angle) say.Value {
	switch h := sun.Degrees(); {
	case entry.AsSeen(sun) > 0:
		return say.Words("sky-map.day")
	case h > -6:
		return say.Words("sky-map.twilight_bright")
	case h > -12:
		return say.Words("sky-map.twilight")
	}
	return say.Words("sky-map.night")
}

// bodiesUp returns the bodies that are up, as seen: the Moon, then planets from the
// brightest, then the Sun.
func bodiesUp(p place.Place, at time.Time) []stander {
	planets := almanac.NakedEye()
	var list []stander
	for _, b := range append(slices.Clone(planets[:]), almanac.Moon, almanac.Sun) {
		h := sky.Seen(b.From(p, at))
		if h.Altitude <= 0 {
			continue
		}
		list = append(list, stander{b, h, b.AspectAt(at), b.LimbFrom(p, at)})
	}
	rank := func(s stander) float64 {
		switch s.body {
		case almanac.Moon:
			return -100
		case almanac.Sun:
			return 100
		}
		return s.aspect.Magnitude
	}
	slices.SortStableFunc(list, func(a, b stander) int {
		if rank(a) < rank(b) {
			return -1
		}
		return 1
	})
	return list
}

// An upStar is a star above the horizon, as seen.
type upStar struct {
	star   sky.Star
	stands almanac.Horizontal
}

// namedStars returns the stars with a name that are up, brightest first.
func (c *starChart) namedStars() []upStar {
	var up []upStar
	for i, s := range sky.Stars() {
		if h := c.stars[i]; s.Name != "" && h.Altitude > 0 {
			up = append(up, upStar{s, h})
		}
	}
	return up
}

// heightAndWay are the cells that say where something stands.
func heightAndWay(h almanac.Horizontal) []say.Value {
	return []say.Value{say.Number(h.Altitude.Degrees(), "deg", 0), say.Bearing(h.Azimuth, 0), entry.Toward(h.Azimuth)}
}

func (c *starChart) bodyTable(p place.Place, at time.Time) result.Table {
	table := result.Table{
		Name:    "bodies",
		Title:   say.Line("sky-map.bodies_title", entry.Moment(p, at)),
		Columns: []result.Column{{Name: "body"}, {Name: "altitude", Unit: "deg"}, {Name: "bearing", Unit: "deg"}, {Name: "direction"}, {Name: "magnitude"}},
	}
	for _, s := range c.bodies {
		cells := append([]say.Value{entry.BodyWord(s.body)}, heightAndWay(s.stands)...)
		table.Rows = append(table.Rows, result.Row{Cells: append(cells, say.Number(s.aspect.Magnitude, "", 1))})
	}
	return table
}

func namedTable(up []upStar) result.Table {
	table := result.Table{
		Name:    "stars",
		Title:   say.Line("sky-map.stars_title"),
		Columns: []result.Column{{Name: "star"}, {Name: "altitude", Unit: "deg"}, {Name: "bearing", Unit: "deg"}, {Name: "direction"}, {Name: "magnitude"}},
	}
	for _, s := range up {
		cells := append([]say.Value{StarWord(s.star)}, heightAndWay(s.stands)...)
		table.Rows = append(table.Rows, result.Row{Cells: append(cells, say.Number(s.star.Magnitude, "", 1))})
	}
	return table
}

// highest returns the highest of the stars of the first magnitude, of which some are up
// everywhere and always, and so the first of the list is one.
func highest(up []upStar) upStar {
	best := up[0]
	for _, s := range up {
		if s.star.Magnitude <= brightLimit && s.stands.Altitude > best.stands.Altitude {
			best = s
		}
	}
	return best
}

func (c *starChart) facts(p place.Place, at time.Time, up []upStar) []result.Fact {
	sun, moon := almanac.SunFrom(p, at), almanac.MoonFrom(p, at)
	var planets []say.Value
	for _, s := range c.bodies {
		if s.body != almanac.Moon && s.body != almanac.Sun {
			planets = append(planets, entry.BodyWord(s.body))
		}
	}
	moonWay := entry.Toward(moon.Azimuth)
	moonUp := entry.AsSeen(moon.Altitude) > 0
	if !moonUp {
		moonWay = say.None("sky.below")
	}
	pole := "toward.north"
	if p.Latitude < 0 {
		pole = "toward.south"
	}
	first, top := up[0], highest(up)
	return []result.Fact{
		{Name: "time", Value: entry.Moment(p, at)},
		{Name: "dark", Value: darkness(sun.Altitude)},
		entry.True("stars_out", sun.Altitude <= -entry.FaintDepth()),
		{Name: "sun_altitude", Value: inWholeDegrees(entry.AltitudeOf(sun))},
		{Name: "planets", Value: entry.Listed(planets)},
		{Name: "planets_up", Value: say.Count(len(planets))},
		{Name: "moon_up", Value: say.Yes(moonUp, "sky-map.yes", "sky-map.no")},
		{Name: "moon_altitude", Value: inWholeDegrees(entry.AltitudeOf(moon))},
		{Name: "moon_direction", Value: moonWay},
		{Name: "moon_lit", Value: entry.Percent(almanac.Moon.AspectAt(at).Lit)},
		{Name: "brightest_star", Value: StarWord(first.star)},
		{Name: "brightest_star_altitude", Value: say.Number(first.stands.Altitude.Degrees(), "deg", 0)},
		{Name: "brightest_star_direction", Value: entry.Toward(first.stands.Azimuth)},
		{Name: "highest_star", Value: StarWord(top.star)},
		{Name: "highest_star_altitude", Value: say.Number(top.stands.Altitude.Degrees(), "deg", 0)},
		{Name: "figures", Value: c.highFigures()},
		{Name: "pole_height", Value: say.Number(math.Abs(p.Latitude.Degrees()), "deg", 0)},
		{Name: "pole_direction", Value: say.Words(pole)},
		{Name: "find_pole", Value: c.findPole(p)},
	}
}

// inWholeDegrees prints a height as the tables do.
func inWholeDegrees(height say.Value) say.Value {
	height.Decimals = 0
	return height
}

// highFigures lists up to five figures whose middle is more than 45° high, the
// highest first.
func (c *starChart) highFigures() say.Value {
	type high struct {
		name     say.Value
		altitude quantity.Angle
	}
	var list []high
	for _, f := range sky.Figures() {
		if h := c.dome.At(f.Centre()); h.Altitude.Degrees() > 45 {
			list = append(list, high{FigureWord(f), h.Altitude})
		}
	}
	slices.SortStableFunc(list, func(a, b high) int {
		if a.altitude > b.altitude {
			return -1
		}
		return 1
	})
	var names []say.Value
	for _, f := range list[:min(5, len(list))] {
		names = append(names, f.name)
	}
	return entry.Listed(names)
}

// findPole says how the pole that is up is found from figures that are up: five times
// the distance of Merak and Dubhe beyond Dubhe to the pole star; four and a half
// times the Southern Cross beyond its foot; or halfway from Achernar to Hadar
// (common practice; TestWaysToThePole measures them).
func (c *starChart) findPole(p place.Place) say.Value {
	const clear = 10 // degrees above the horizon
	up := func(designations ...string) bool {
		for _, d := range designations {
			if s, ok := sky.Find(d); !ok || c.dome.Star(s).Altitude.Degrees() < clear {
				return false
			}
		}
		return true
	}
	height := say.Number(math.Abs(p.Latitude.Degrees()), "deg", 0)
	switch {
	case math.Abs(p.Latitude.Degrees()) < 5:
		return say.Words("sky-map.pole_in_haze")
	case p.Latitude.Degrees() > 85 || p.Latitude.Degrees() < -85:
		return say.Words("sky-map.pole_overhead")
	case p.Latitude > 0 && up("α UMa", "β UMa"):
		return say.Words("sky-map.by_bear", height)
	case p.Latitude > 0 && up("β Cas", "α Cas", "γ Cas", "ε Cas"):
		return say.Words("sky-map.by_cassiopeia", height)
	case p.Latitude > 0:
		return say.Words("sky-map.by_height", height)
	case up("α Cru", "γ Cru"):
		return say.Words("sky-map.by_cross", height)
	case up("α Eri", "β Cen"):
		return say.Words("sky-map.by_achernar", height)
	}
	return say.Words("sky-map.by_height_south", height)
}
