package stars

import (
	"math"
	"slices"
	"strings"
	"time"

	"noonbook/build/drawing"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
	"noonbook/compute/sky"
)

// walk leads through the chart: the Moon and the planets, the stars that have a name on
// it, the figures, the brightest of each first. The Sun has no card: nobody looks for it.
func (c starChart) walk(d drawing.Drawing, at time.Time) result.Walk {
	c.centre, c.radius = drawing.Point{X: d.Width / 2, Y: chartRadius + chartEdge}, chartRadius
	w := result.Walk{Drawing: d.Name}
	for _, s := range c.bodies {
		if s.body != almanac.Sun {
			w.Stops = append(w.Stops, c.bodyStop(s, at))
		}
	}
	for i, s := range sky.Stars() {
		if s.Magnitude > brightLimit {
			break
		}
		if h := c.stars[i]; h.Altitude > 0 && s.Name != "" {
			w.Stops = append(w.Stops, c.starStop(s, h, at))
		}
	}
	for _, f := range brightFirst() {
		if h := sky.Seen(c.dome.At(f.Centre())); h.Altitude.Degrees() > figureLimit {
			w.Stops = append(w.Stops, c.figureStop(f, h, at))
		}
	}
	return w
}

// figureLimit is how high the middle of a figure is that has a name on the chart, in degrees.
const figureLimit = 8

const (
	markReach   = 4.0  // mm round a star or a planet
	figureReach = 12.0 // mm round the middle of a figure, at most
)

func (c *starChart) bodyStop(s stander, at time.Time) result.Stop {
	lines := []say.Phrase{say.Line("sky-map.walk_planet")}
	search := "sky-map.walk_search_planet"
	if s.body == almanac.Moon {
		lines = []say.Phrase{say.Line("sky-map.walk_moon", entry.Percent(s.aspect.Lit))}
		search = "sky-map.walk_search_moon"
	}
	name := entry.BodyWord(s.body)
	lines = append(lines, c.where(s.stands, at)...)
	if set, ok := c.bodySets(s.body, at); ok && set.Sub(at) < thatNight {
		lines = append(lines, say.Line("sky-map.walk_sets", say.Clock(set.In(c.p.Zone))))
	}
	return result.Stop{
		Key:  strings.TrimPrefix(name.Phrase.Key, "body."),
		Name: name, At: c.at(s.stands), Reach: markReach,
		Says: append(lines, say.Line(search, name)),
	}
}

func (c *starChart) starStop(s sky.Star, h almanac.Horizontal, at time.Time) result.Stop {
	lines := []say.Phrase{say.Line("sky-map.walk_star")}
	if f, ok := figureOf(s); ok {
		lines[0] = say.Line("sky-map.walk_star_of", FigureWord(f))
	}
	lines = append(lines, c.where(h, at)...)
	lines = append(lines, c.setsOf(sky.At(at)(s), at, "sky-map.walk_sets", "sky-map.walk_never_sets")...)
	return result.Stop{
		Key:  strings.ReplaceAll(strings.ToLower(s.Name), " ", "-"),
		Name: StarWord(s), At: c.at(h), Reach: markReach,
		Says: append(lines, say.Line("sky-map.walk_search_star", StarWord(s))),
	}
}

func (c *starChart) figureStop(f sky.Figure, h almanac.Horizontal, at time.Time) result.Stop {
	stars := starsOf(f)
	middle, reach := c.at(h), markReach
	for _, s := range stars {
		p := c.at(c.stars[s.Rank])
		reach = max(reach, math.Hypot(p.X-middle.X, p.Y-middle.Y))
	}
	lines := []say.Phrase{say.Line("sky-map.walk_figure", say.Count(len(stars)))}
	if stars[0].Name != "" {
		lines = append(lines, say.Line("sky-map.walk_brightest", StarWord(stars[0])))
	}
	lines = append(lines, c.where(h, at)...)
	lines = append(lines, c.setsOf(f.Centre(), at, "sky-map.walk_middle_sets", "sky-map.walk_middle_never_sets")...)
	return result.Stop{
		Key:  strings.ReplaceAll(f.Name, "_", "-"),
		Name: FigureWord(f), At: middle, Reach: min(reach, figureReach),
		Says: append(lines, say.Line("sky-map.walk_search_figure", FigureWord(f))),
	}
}

// starsOf returns the stars of a figure, each once, brightest first.
func starsOf(f sky.Figure) []sky.Star {
	stars := slices.Concat(f.Paths...)
	slices.SortFunc(stars, func(a, b sky.Star) int { return a.Rank - b.Rank })
	return slices.CompactFunc(stars, func(a, b sky.Star) bool { return a.Rank == b.Rank })
}

// figureOf returns the first figure that has the star.
func figureOf(s sky.Star) (sky.Figure, bool) {
	for _, f := range sky.Figures() {
		for _, path := range f.Paths {
			if slices.ContainsFunc(path, func(other sky.Star) bool { return other.Rank == s.Rank }) {
				return f, true
			}
		}
	}
	return sky.Figure{}, false
}

// where says how high something is and in which direction, and how many fists that is: one
// at the end of an arm covers 10° (sky.fist).
func (c *starChart) where(h almanac.Horizontal, at time.Time) []say.Phrase {
	altitude := h.Altitude.Degrees()
	lines := []say.Phrase{say.Line("sky-map.walk_where", say.Clock(at.In(c.p.Zone)), say.Number(altitude, "deg", 0), entry.Toward(h.Azimuth))}
	if fists := math.Round(altitude / 10); fists > 0 {
		lines = append(lines, say.Line("sky-map.walk_fists", say.Count(int(fists))))
	}
	return lines
}

// thatNight is how long after the moment of the chart a time still belongs to it.
const thatNight = 12 * time.Hour

// setsOf says when a direction of date sets in the same night, or that it never does.
func (c *starChart) setsOf(d sky.Direction, at time.Time, sets, never string) []say.Phrase {
	after, setting := c.until(d)
	switch {
	case !setting:
		return []say.Phrase{say.Line(never)}
	case after < thatNight:
		return []say.Phrase{say.Line(sets, say.Clock(at.Add(after).In(c.p.Zone)))}
	}
	return nil
}

// sidereal is how much faster star time runs than the clock: turns of the Earth among the
// stars in a day (IERS Conventions 2010, table 1.1: 7.292115e-5 rad/s).
const sidereal = 1.00273790935

// until returns how long it is until a direction that is up sets, by the altitude of Rim.
// setting is false where it never does. Hour angle at an altitude: Meeus, Astronomical
// Algorithms, 2nd ed. 1998, equation 15.1.
func (c *starChart) until(d sky.Direction) (after time.Duration, setting bool) {
	phi := c.p.Latitude
	cos := (sky.Rim.Sin() - phi.Sin()*d.Declination.Sin()) / (phi.Cos() * d.Declination.Cos())
	if !(cos >= -1 && cos <= 1) {
		return 0, false
	}
	left := (quantity.Acos(cos) - (c.dome.Sidereal - d.RightAscension).Signed()).Hours() / 24
	left -= math.Floor(left)
	return time.Duration(left / sidereal * float64(24*time.Hour)), true
}

// bodySets returns when the Moon or a planet next sets, today or tomorrow.
func (c *starChart) bodySets(b almanac.Body, at time.Time) (time.Time, bool) {
	today := c.p.DateAt(at)
	for _, date := range []place.Date{today, today.Add(1)} {
		day := entry.DayPast(b, c.p, date, sky.Rim)
		if b == almanac.Moon {
			day = entry.MoonDay(c.p, date)
		}
		for _, set := range day.Sets {
			if set.After(at) {
				return set, true
			}
		}
	}
	return time.Time{}, false
}
