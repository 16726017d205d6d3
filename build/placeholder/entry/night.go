package entry

import (
	"time"

	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// A Night runs from the Sun's noon on a date to the next.
type Night struct {
	Place      place.Place
	date       place.Date
	Noon, Next time.Time
}

// NightOf returns the night after a date.
func NightOf(p place.Place, d place.Date) Night {
	return Night{p, d, NoonOr(p, d), NoonOr(p, d.Add(1))}
}

// Clock returns when the clock shows a time during the night.
func (n Night) Clock(at time.Duration) time.Time {
	d := n.date
	if at < 12*time.Hour {
		d = d.Add(1)
	}
	return n.Place.Clock(d, int(at.Hours()), int(at.Minutes())%60)
}

// Dark returns from when to when the Sun is deeper than that below the horizon:
// the whole span where it is so even at noon. ok is false where it never is.
func (n Night) Dark(depth quantity.Angle) (from, to time.Time, ok bool) {
	rises, sets := n.Passes(almanac.Sun, -depth)
	from, to = n.Noon, n.Next
	if len(rises)+len(sets) == 0 {
		return from, to, almanac.SunFrom(n.Place, n.Noon).Altitude < -depth
	}
	if len(sets) > 0 {
		from = sets[0]
	}
	if len(rises) > 0 {
		to = rises[len(rises)-1]
	}
	return from, to, from.Before(to)
}

// Passes returns when a body passes an altitude during the night, upwards and
// downwards.
func (n Night) Passes(b almanac.Body, altitude quantity.Angle) (up, down []time.Time) {
	within := func(times []time.Time) (list []time.Time) {
		for _, t := range times {
			if !t.Before(n.Noon) && t.Before(n.Next) {
				list = append(list, t)
			}
		}
		return list
	}
	// The noons of two dates lie within these dates, so no third one is asked.
	for _, d := range []place.Date{n.date, n.date.Add(1)} {
		day := DayPast(b, n.Place, d, altitude)
		up, down = append(up, within(day.Rises)...), append(down, within(day.Sets)...)
	}
	return up, down
}

// FaintDepth is how deep the Sun must be below the horizon for planets that Sirius
// outshines: common practice, no source.
func FaintDepth() quantity.Angle { return quantity.Degrees(9) }
