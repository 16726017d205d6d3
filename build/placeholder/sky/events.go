package sky

import (
	"slices"
	"time"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/almanac"
	"noonbook/compute/classroom"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// Bounds of what is worth an alert, common practice, no source: see the entry.
var (
	sideBySide    = quantity.Degrees(6)
	planetLow     = quantity.Degrees(5)
	civilDepth    = -almanac.CivilTwilight
	nauticalDepth = quantity.Degrees(12)
)

func eclipseAlerts(p place.Place, from, to place.Date) ([]alert, error) {
	begin, _ := p.Day(from)
	_, end := p.Day(to)
	eclipses, err := eclipsesBetween(p, begin, end)
	if err != nil {
		return nil, err
	}
	var list []alert
	for _, e := range eclipses {
		if !e.seen {
			continue
		}
		a := alert{at: e.best, eclipse: true, sun: !e.moon, Short: say.Words("sky-alerts.sun_eclipse_short")}
		if e.moon {
			a.Short = say.Words("sky-alerts.moon_eclipse_short")
			a.what = say.Words("sky-alerts.moon_eclipse", kindWord(e.here))
		} else {
			a.what = say.Words("sky-alerts.sun_eclipse", kindWord(e.here), entry.Percent(e.covered))
		}
		a.look = say.Words("sky-alerts.seen", e.how)
		list = append(list, a)
	}
	return list, nil
}

func turnAlerts(v form.Values, p place.Place, from, to place.Date) ([]alert, error) {
	var list []alert
	for year := from.Year - 1; year <= to.Year+1; year++ {
		if entry.InRange(year) != nil {
			continue
		}
		moments, err := almanac.Seasons(year)
		if err != nil {
			return nil, err
		}
		for i, at := range moments {
			turn := almanac.Season(i)
			list = append(list, alert{at: at, what: entry.TurnName(turn), Short: entry.TurnName(turn), look: turnLook(v, p, turn)})
		}
	}
	return list, nil
}

// turnLook says what an equinox or a solstice is at the place.
func turnLook(v form.Values, p place.Place, turn almanac.Season) say.Value {
	switch {
	case entry.Tropical(p.Latitude):
		return say.Words([...]string{"sky-alerts.sun_crosses", "sky-alerts.sun_north", "sky-alerts.sun_crosses", "sky-alerts.sun_south"}[turn])
	case entry.ByCalendar(v):
		return say.Words("sky-alerts.turn_within", entry.SeasonName(p, turn))
	}
	return say.Words("sky-alerts.turn", entry.SeasonName(p, turn))
}

// moonAndPlanets finds the Moon beside planets, at civil dusk or dawn, each
// meeting once, when they are nearest.
func moonAndPlanets(p place.Place, from, to place.Date) []alert {
	type meeting struct {
		at    time.Time
		apart quantity.Angle
	}
	best := map[almanac.Body][]meeting{}
	for d := from.Add(-1); !d.After(to); d = d.Add(1) {
		dusk, dawn, ok := entry.NightOf(p, d).Dark(civilDepth)
		if !ok {
			continue
		}
		for _, t := range []time.Time{dusk, dawn} {
			moon := almanac.MoonFrom(p, t)
			if moon.Altitude < planetLow {
				continue
			}
			for _, b := range almanac.NakedEye() {
				planet := b.From(p, t)
				apart := separation(moon, planet)
				if planet.Altitude < planetLow || apart > sideBySide {
					continue
				}
				list := best[b]
				if n := len(list); n == 0 || t.Sub(list[n-1].at) > 5*24*time.Hour {
					best[b] = append(list, meeting{t, apart})
				} else if apart < list[n-1].apart {
					list[n-1] = meeting{t, apart}
				}
			}
		}
	}
	var alerts []alert
	for _, b := range almanac.NakedEye() {
		for _, m := range best[b] {
			where := almanac.MoonFrom(p, m.at)
			alerts = append(alerts, alert{
				at:    m.at,
				what:  say.Words("sky-alerts.moon_planet", entry.BodyWord(b), apartness(m.apart)),
				look:  say.Words("sky-alerts.toward", entry.Toward(where.Azimuth), say.Number(entry.AsSeen(where.Altitude).Degrees(), "deg", 0)),
				Short: say.Words("sky-alerts.moon_planet_short", entry.BodyWord(b)),
			})
		}
	}
	return alerts
}

// apartness is a small angle: whole degrees, and tenths below one.
func apartness(a quantity.Angle) say.Value {
	if a < quantity.Degrees(1) {
		return say.Number(a.Degrees(), "deg", 1)
	}
	return say.Number(a.Degrees(), "deg", 0)
}

// separation is the angle between two directions.
func separation(a, b almanac.Horizontal) quantity.Angle {
	return quantity.Acos(a.Altitude.Sin()*b.Altitude.Sin() + a.Altitude.Cos()*b.Altitude.Cos()*(a.Azimuth-b.Azimuth).Cos())
}

// bestPlanets finds when a planet stands farthest from the Sun: Mercury and
// Venus in the evening or morning, the outer ones opposite the Sun.
func bestPlanets(p place.Place, from, to place.Date) []alert {
	var list []alert
	for _, b := range almanac.NakedEye() {
		elongation := func(d place.Date) quantity.Angle {
			return b.AspectAt(d.UTC().Add(12 * time.Hour)).Elongation
		}
		before, here := elongation(from.Add(-1)), elongation(from)
		for d := from; !d.After(to); d = d.Add(1) {
			after := elongation(d.Add(1))
			if here >= before && here > after {
				if a, ok := bestPlanet(p, b, d); ok {
					list = append(list, a)
				}
			}
			before, here = here, after
		}
	}
	return list
}

func bestPlanet(p place.Place, b almanac.Body, d place.Date) (alert, bool) {
	n := entry.NightOf(p, d)
	dusk, dawn, ok := n.Dark(civilDepth)
	if !ok {
		return alert{}, false
	}
	a := alert{Short: say.Words("sky-alerts.planet_short", entry.BodyWord(b))}
	switch aspect := b.AspectAt(d.UTC().Add(12 * time.Hour)); {
	case b != almanac.Mercury && b != almanac.Venus:
		a.what = say.Words("sky-alerts.opposition", entry.BodyWord(b))
		a.at = dusk.Add(dawn.Sub(dusk) / 2)
		for t := dusk; t.Before(dawn); t = t.Add(10 * time.Minute) { // when it stands highest
			if b.From(p, t).Altitude > b.From(p, a.at).Altitude {
				a.at = t
			}
		}
	case aspect.East:
		a.what, a.at = say.Words("sky-alerts.evening", entry.BodyWord(b), say.Number(aspect.Elongation.Degrees(), "deg", 0)), dusk
	default:
		before, beforeDawn, ok := entry.NightOf(p, d.Add(-1)).Dark(civilDepth)
		if !ok || before.After(beforeDawn) {
			return alert{}, false
		}
		a.what, a.at = say.Words("sky-alerts.morning", entry.BodyWord(b), say.Number(aspect.Elongation.Degrees(), "deg", 0)), beforeDawn
	}
	where := b.From(p, a.at)
	a.look = say.Words("sky-alerts.toward", entry.Toward(where.Azimuth), say.Number(entry.AsSeen(where.Altitude).Degrees(), "deg", 0))
	return a, where.Altitude >= planetLow
}

func clockAlerts(p place.Place, from, to place.Date) []alert {
	var list []alert
	t, _ := p.Day(from.Add(-1)) // a change at midnight is on the day after by the old clock
	_, end := p.Day(to)
	for {
		at, jump, ok := p.NextChange(t)
		if !ok || !at.Before(end) {
			return list
		}
		key := "sky-alerts.clock_forward"
		if jump < 0 {
			key = "sky-alerts.clock_back"
		}
		list = append(list, alert{at: at, zone: entry.BeforeChange(p, at).Zone, what: say.Words(key, say.Minutes(jump.Abs())), look: say.Words("sky-alerts.clock_dial"), Short: say.Words("sky-alerts.clock_short")})
		t = at
	}
}

// dayMoons finds the runs of school days on which the Moon can be seen in a
// lesson time.
func dayMoons(v form.Values, p place.Place, from, to place.Date) []alert {
	type run struct {
		first entry.Chance
		last  place.Date
		days  int
	}
	var runs []run
	term, open := school.Term(v), false
	for d := from; !d.After(to); d = d.Add(1) {
		if !term.Teaches(d) {
			continue
		}
		chances := slices.DeleteFunc(entry.ChancesOn(p, d, school.LessonTimesOn(term, d), classroom.MoonLeast), func(c entry.Chance) bool { return !c.Safe })
		if len(chances) == 0 {
			open = false
			continue
		}
		if !open {
			runs = append(runs, run{first: chances[0]})
		}
		last := &runs[len(runs)-1]
		last.last, last.days, open = d, last.days+1, true
	}
	var list []alert
	for _, r := range runs {
		where := almanac.MoonFrom(p, r.first.From)
		what := say.Words("sky-alerts.day_moon")
		if r.days > 1 {
			what = say.Words("sky-alerts.day_moon_until", entry.DayOfYear(r.last), say.Count(r.days))
		}
		list = append(list, alert{
			at: r.first.From, what: what, Short: say.Words("sky-alerts.day_moon_short"),
			look: say.Words("sky-alerts.toward", entry.Toward(where.Azimuth), say.Number(entry.AsSeen(where.Altitude).Degrees(), "deg", 0)),
		})
	}
	return list
}

// dialAlert finds the day on which a dial's time and an even clock are farthest apart:
// the largest of the four turns that the equation of time takes in a year, of those in
// the range. A day on which it is only large, and still grows or shrinks, is none.
func dialAlert(p place.Place, from, to place.Date) []alert {
	equation := func(d place.Date) time.Duration { return almanac.EquationOfTime(entry.NoonOr(p, d)).Abs() }
	var best time.Time
	var most time.Duration
	before, here := equation(from.Add(-1)), equation(from)
	for d := from; !d.After(to); d = d.Add(1) {
		after := equation(d.Add(1))
		if here >= before && here > after && here > most {
			best, most = entry.NoonOr(p, d), here
		}
		before, here = here, after
	}
	if best.IsZero() {
		return nil
	}
	key := "sky-alerts.dial_fast"
	if almanac.EquationOfTime(best) < 0 {
		key = "sky-alerts.dial_slow"
	}
	return []alert{{at: best, what: say.Words(key, say.Seconds(most)), look: say.Words("sky-alerts.dial_look"), Short: say.Words("sky-alerts.dial_short")}}
}
