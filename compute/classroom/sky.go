package classroom

import (
	"time"

	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// A Sky answers what a calendar asks about the world outside. A nil function
// finds nothing wrong.
type Sky struct {
	// Meets reports whether the sky gives what is needed during the slot.
	Meets func(Need, Slot) bool
	// Clock tells clock changes: it is the same for slots without one between
	// them, and greater after one.
	Clock func(Slot) int

	begin func() func(Need, Slot) bool // Meets for one search, with a memory; nil for Meets itself
	could func(Need, place.Date) bool  // whether a date can have it at all; nil where only Meets tells

	evenings func(Term) []Evening // those with stars in time; nil where no sky is known
}

// skyStep is how often a lesson looks up. The Sun and the Moon move 1.25° in
// it, less than roofs and trees are known.
const skyStep = 5 * time.Minute

// What the Moon must do for a class to look for it, one limit for the calendar and for
// every page, so that they count the same chances. Common practice, no source.
//
// By day it stands MoonClear from the Sun: three and a half fists at the end of the
// arm. Nearer than that less than a tenth of its disc is lit, (1 − cos 35°) / 2, which
// nobody finds in a blue sky without sweeping past the Sun. Between sunset and dusk
// two fists are enough: the Sun is down, and a thin Moon shows well. In the dark it
// may stand anywhere.
//
// MoonLeast is how high it stands as seen, a fist: houses and trees reach higher.
const (
	MoonClear    = 35 * quantity.Turn / 360
	twilightMoon = 20 * quantity.Turn / 360
	MoonLeast    = 10 * quantity.Turn / 360
)

// MoonTooNear reports whether the Moon stands too near the Sun to be looked for.
func MoonTooNear(p place.Place, t time.Time) bool {
	const sunrise = -50 * quantity.Turn / 360 / 60
	switch sun := almanac.SunFrom(p, t).Altitude; {
	case sun > sunrise:
		return almanac.Moon.SunApart(p, t) < MoonClear
	case sun > almanac.CivilTwilight:
		return almanac.Moon.SunApart(p, t) < twilightMoon
	}
	return false
}

// SunLeast is how high the Sun must stand, as seen, for a useful shadow: houses and
// trees reach higher. Common practice, no source.
const SunLeast = 10 * quantity.Turn / 360

// Over returns the sky of a place.
func Over(p place.Place) Sky {
	return Sky{
		Meets: func(n Need, s Slot) bool { return meets(p, n, s, looks{}) },
		Clock: func(s Slot) int { return clock(p, s) },
		begin: func() func(Need, Slot) bool {
			seen := looks{map[int64]quantity.Angle{}, map[int64]quantity.Angle{}, map[int64]bool{}}
			return func(n Need, s Slot) bool { return meets(p, n, s, seen) }
		},
		could:    func(n Need, d place.Date) bool { return could(p, n, d) },
		evenings: func(t Term) []Evening { return t.Evenings(p) },
	}
}

// looks are what was seen at moments, in seconds of the Unix epoch, so that
// lessons at the same time look up once. Nil maps remember nothing.
type looks struct {
	sun, moon map[int64]quantity.Angle // how high they stand, the Sun without the air, the Moon as seen
	clear     map[int64]bool           // whether the Moon is far enough from the Sun
}

// once asks for what is seen at a moment, unless it is remembered.
func once[T any](seen map[int64]T, t time.Time, look func() T) T {
	if seen == nil {
		return look()
	}
	x, known := seen[t.Unix()]
	if !known {
		x = look()
		seen[t.Unix()] = x
	}
	return x
}

// Moment is the instant at which the place's clock shows the time.
func Moment(p place.Place, d place.Date, clock time.Duration) time.Time {
	if clock >= 24*time.Hour { // a lesson that runs past midnight
		d, clock = d.Add(int(clock/(24*time.Hour))), clock%(24*time.Hour)
	}
	return p.Clock(d, int(clock/time.Hour), int(clock%time.Hour/time.Minute))
}

// Moments returns the instants at which the slot begins and ends.
func (s Slot) Moments(p place.Place) (from, to time.Time) {
	from = Moment(p, s.Date, s.From)
	return from, from.Add(s.To - s.From)
}

// gives and since answer for a Sky whose functions may be nil.
func (s Sky) gives(n Need, slot Slot) bool { return s.Meets == nil || s.Meets(n, slot) }

func (s Sky) since(slot Slot) int {
	if s.Clock == nil {
		return 0
	}
	return s.Clock(slot)
}

// remembering returns the sky with a memory of what it was asked. It is for one
// goroutine.
func (s Sky) remembering() Sky {
	type question struct {
		need Need
		slot Slot
	}
	if s.begin != nil {
		s.Meets = s.begin()
	}
	met := map[question]bool{}
	return Sky{Clock: s.Clock, Meets: func(n Need, slot Slot) bool {
		switch n.Kind { // of the day: whatever the lesson time
		case DarkBy, HourMarks:
			slot.Span = Span{}
		}
		q := question{n, slot}
		gives, known := met[q]
		if !known {
			gives = s.gives(n, slot)
			met[q] = gives
		}
		return gives
	}}
}

func meets(p place.Place, n Need, s Slot, seen looks) bool {
	from, to := s.Moments(p)
	sun := func(t time.Time) quantity.Angle {
		return once(seen.sun, t, func() quantity.Angle { return almanac.SunFrom(p, t).Altitude })
	}
	switch n.Kind {
	case SunUp:
		return lasts(from, to, n.Window, func(t time.Time) bool { return asSeen(sun(t)) >= n.Height })
	case MoonUp:
		return lasts(from, to, n.Window, func(t time.Time) bool {
			return once(seen.moon, t, func() quantity.Angle { return MoonHeight(p, t) }) >= n.Height &&
				once(seen.clear, t, func() bool { return !MoonTooNear(p, t) })
		})
	case Dark:
		return lasts(from, to, 0, func(t time.Time) bool { return sun(t) <= almanac.CivilTwilight })
	case DarkBy:
		return sun(Moment(p, s.Date, n.By)) <= almanac.CivilTwilight
	case HourMarks:
		for _, hour := range n.Marks.FullHours() {
			if asSeen(sun(Moment(p, s.Date, hour))) < n.Height {
				return false
			}
		}
	}
	return true
}

// SunHeight is how high the Sun is seen, which a need of height is held against.
// Darkness goes by the height without the air, as twilight is defined.
func SunHeight(p place.Place, t time.Time) quantity.Angle {
	return asSeen(almanac.SunFrom(p, t).Altitude)
}

// MoonHeight is how high the Moon is seen.
func MoonHeight(p place.Place, t time.Time) quantity.Angle {
	return asSeen(almanac.MoonFrom(p, t).Altitude)
}

func asSeen(altitude quantity.Angle) quantity.Angle {
	return altitude + almanac.Refraction(altitude)
}

// lasts reports whether good holds for the window on end between from and to,
// for the whole of it where the window is 0 or longer than it.
func lasts(from, to time.Time, window time.Duration, good func(time.Time) bool) bool {
	whole := window <= 0 || window >= to.Sub(from)
	if whole && !good(to) { // the Sun sinks and rises once a day: ends tell most
		return false
	}
	var since time.Time
	for t := from; ; t = t.Add(skyStep) {
		t = earlier(t, to)
		switch ok := good(t); {
		case !ok && whole:
			return false
		case !ok:
			since = time.Time{}
		case since.IsZero():
			since = t
		}
		if !whole && !since.IsZero() && t.Sub(since) >= window {
			return true
		}
		if t.Equal(to) {
			return whole
		}
	}
}

func earlier(a, b time.Time) time.Time {
	if b.Before(a) {
		return b
	}
	return a
}

// FullHours returns the full hours within the span, ends included.
func (s Span) FullHours() []time.Duration {
	var hours []time.Duration
	for h := (s.From + time.Hour - 1).Truncate(time.Hour); h <= s.To; h += time.Hour {
		hours = append(hours, h)
	}
	return hours
}

// clock tells since when the place's clock has run as it does at the slot's
// begin, in seconds of the Unix epoch; 0 for ever.
func clock(p place.Place, s Slot) int {
	at := Moment(p, s.Date, s.From)
	for {
		begin, _ := at.ZoneBounds()
		if begin.IsZero() {
			return 0
		}
		if p.UTCOffset(begin) != p.UTCOffset(begin.Add(-time.Second)) {
			return int(begin.Unix())
		}
		at = begin.Add(-time.Second).In(p.Zone) // the zone changed its name only
	}
}
