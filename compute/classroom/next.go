package classroom

import (
	"slices"
	"time"

	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// Next returns the first school day after a date, by so many days later at most, on
// which the sky gives what the lesson needs at a time at which it can be held: at the
// start that it wants, or in a lesson time. It looks past the end of the term, by the
// term's weekdays, days off and lesson times.
func (t Term) Next(l Lesson, n Need, sky Sky, after place.Date, days int) (place.Date, bool) {
	could := sky.could
	sky = sky.remembering()
	for d := after.Add(1); after.DaysUntil(d) <= days; d = d.Add(1) {
		if !t.Teaches(d) || could != nil && !could(n, d) {
			continue
		}
		if slices.ContainsFunc(t.options(l, []place.Date{d}), func(o option) bool { return o.meets(n, sky) }) {
			return d, true
		}
	}
	return place.Date{}, false
}

// could reports whether the Sun stands high enough, or low enough, at all on a date:
// one look at the sky that spares many. The Sun crosses the meridian within 17 minutes,
// 4.3°, of noon by mean local time (the equation of time), and stands no higher then
// than by that angle.
func could(p place.Place, n Need, d place.Date) bool {
	const near = 5 * quantity.Turn / 360
	noon := d.UTC().Add(12*time.Hour - time.Duration(p.Longitude.Degrees()/15*float64(time.Hour)))
	switch n.Kind {
	case SunUp, HourMarks:
		return SunHeight(p, noon)+near >= n.Height
	case Dark, DarkBy:
		return min(almanac.SunFrom(p, noon.Add(-12*time.Hour)).Altitude, almanac.SunFrom(p, noon.Add(12*time.Hour)).Altitude)-near <= almanac.CivilTwilight
	}
	return true
}
