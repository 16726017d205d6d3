package sky

import (
	"time"

	"noonbook/build/placeholder/entry"
	"noonbook/build/say"
	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// What counts as seen: the planet stands at least lowest high, above roofs and
// haze, while the Sun is deep enough below the horizon for its brightness. Common
// practice, no source; lowest and depth together are a little more than the
// least differences of height that observers found (arcus visionis, Schoch 1927,
// from memory: Venus 6°, Jupiter 9°, Mercury, Mars and Saturn 11° to 14°).
var lowest = quantity.Degrees(5)

const sirius = -1.46 // magnitude, Bright Star Catalogue, from memory

// depthFor returns how deep the Sun must be for a planet of that magnitude.
func depthFor(magnitude float64) quantity.Angle {
	switch {
	case magnitude < -3.5: // Venus
		return quantity.Degrees(3)
	case magnitude < sirius:
		return quantity.Degrees(6) // the end of civil twilight
	}
	return entry.FaintDepth()
}

// glare is how far from the Sun a planet that never gets high in the dark is
// called too low instead of lost in the glare. Mercury never gets so far.
var glare = quantity.Degrees(30)

// A course says when of a night a planet can be seen.
type course int

const (
	inGlare  course = iota // too near the Sun
	tooLow                 // far from the Sun, and yet never high enough in the dark
	noDark                 // the Sun never goes deep enough
	twilight               // high enough only before the night's dusk or after its dawn, where nobody would look
	evening                // from dusk until it sets
	morning                // from its rise until dawn
	allNight               // from dusk to dawn, or all but a tenth of that
	bothEnds               // at dusk and at dawn, but down between
	midnight               // after dusk and before dawn
)

func (c course) visible() bool { return c >= evening }

// A sighting is where a planet is to be found in a night.
type sighting struct {
	body   almanac.Body
	course course
	from   time.Time // first and last moment at which it can be seen
	to     time.Time
	at     time.Time // the moment of the table
	stands almanac.Horizontal
	aspect almanac.Aspect
}

// sightingIn finds a planet in a night.
func sightingIn(n entry.Night, b almanac.Body) sighting {
	middle := n.Noon.Add(n.Next.Sub(n.Noon) / 2)
	s := sighting{body: b, at: middle, aspect: b.AspectAt(middle)}
	dusk, dawn, dark := n.Dark(depthFor(s.aspect.Magnitude))
	if !dark {
		s.course = noDark
		if s.aspect.Elongation < glare {
			s.course = inGlare
		}
		s.stands = b.From(n.Place, s.at)
		return s
	}
	s.from, s.to = dusk, dawn
	s.classify(n, dusk, dawn)
	toward := s.course // where it is to be looked for
	if s.inTwilight(n) {
		s.course = twilight
	}
	switch toward {
	case morning:
		s.at = dawn
	case midnight:
		s.at = s.from.Add(s.to.Sub(s.from) / 2)
	case inGlare, tooLow:
		s.at = dusk
		if !s.aspect.East { // west of the Sun: it would be a planet of the morning
			s.at = dawn
		}
	default:
		s.at = dusk
	}
	if dusk.Equal(n.Noon) && s.course != midnight { // dark all day: the middle of the night
		s.at = middle
	}
	s.stands = b.From(n.Place, s.at)
	return s
}

// inTwilight reports whether a planet of the evening or the morning is high enough only
// while the sky is brighter than the dusk and the dawn that the page names. Venus
// outshines that for some minutes, but it is no planet "until dawn" that comes up
// after it.
func (s *sighting) inTwilight(n entry.Night) bool {
	if s.course != evening && s.course != morning {
		return false
	}
	dusk, dawn, dark := n.Dark(entry.FaintDepth())
	return !dark || !s.from.Before(dawn) || !s.to.After(dusk)
}

// classify finds the course and its ends from where the planet stands at dusk
// and at dawn, and how it passes the lowest altitude between.
func (s *sighting) classify(n entry.Night, dusk, dawn time.Time) {
	altitude := entry.AsStands(lowest)
	high := func(t time.Time) bool { return s.body.From(n.Place, t).Altitude >= altitude }
	var ups, downs []time.Time
	allUp, allDown := n.Passes(s.body, altitude)
	for _, t := range allUp {
		if t.After(dusk) && t.Before(dawn) {
			ups = append(ups, t)
		}
	}
	for _, t := range allDown {
		if t.After(dusk) && t.Before(dawn) {
			downs = append(downs, t)
		}
	}
	switch atDusk, atDawn := high(dusk), high(dawn); {
	case atDusk && atDawn && len(downs) == 0:
		s.course = allNight
	case atDusk && atDawn:
		s.course = bothEnds
	case atDusk:
		s.course = evening
		if len(downs) > 0 {
			s.to = downs[0]
		}
	case atDawn:
		s.course = morning
		if len(ups) > 0 {
			s.from = ups[len(ups)-1]
		}
	case len(ups) > 0 && len(downs) > 0:
		s.course, s.from, s.to = midnight, ups[0], downs[len(downs)-1]
	case s.aspect.Elongation < glare:
		s.course = inGlare
	default:
		s.course = tooLow
	}
	if (s.course == evening || s.course == morning) && s.to.Sub(s.from) >= dawn.Sub(dusk)*9/10 { // near opposition
		s.course = allNight
	}
}

// when puts the course in words, with the hours that bound it.
func (s sighting) when(p place.Place) say.Value {
	clock := func(t time.Time) say.Value { return say.Clock(t.In(p.Zone)) }
	switch s.course {
	case evening:
		return say.Words("planets-week.in_evening", clock(s.to))
	case morning:
		return say.Words("planets-week.in_morning", clock(s.from))
	case allNight:
		return say.Words("planets-week.through_night")
	case bothEnds:
		return say.Words("planets-week.both_ends")
	case midnight:
		return say.Words("planets-week.midnight", clock(s.from), clock(s.to))
	case tooLow:
		return say.Words("planets-week.too_low")
	case twilight:
		return say.Words("planets-week.twilight", clock(s.from), clock(s.to))
	case noDark:
		return say.Words("planets-week.no_dark")
	}
	return say.Words("planets-week.in_glare")
}
