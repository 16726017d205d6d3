package dial

import (
	"time"

	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
	"noonbook/compute/search"
)

// EqualShadow returns the moment after the Sun's noon at which an upright
// stick's shadow is again as long as it was at a moment before noon, and how far
// the direction midway between the two shadows lies from the meridian, clockwise
// positive: halving their angle finds true north but for that.
//
// It is not quite zero because the Sun goes on north or south in between: about
// Δδ/(2 cos φ sin H) for a change Δδ of declination between hour angles −H and
// H, 0.15° at most up to 60° and three hours from noon, nothing at the solstices.
// ok is false where the shadow does not get as long again within as many hours
// and a quarter, as near a pole, and where the Sun is down.
func EqualShadow(p place.Place, noon, before time.Time) (after time.Time, middleOff quantity.Angle, ok bool) {
	then := almanac.SunFrom(p, before)
	ahead := noon.Sub(before)
	if then.Altitude <= 0 || ahead <= 0 {
		return time.Time{}, 0, false
	}
	higher := func(past time.Duration) bool { return almanac.SunFrom(p, noon.Add(past)).Altitude > then.Altitude }
	end := ahead + ahead/4
	if !higher(0) || higher(end) {
		return time.Time{}, 0, false
	}
	_, past := search.Halve(0, end, 100*time.Millisecond, func(d time.Duration) bool { return !higher(d) })
	after = noon.Add(past)
	now := almanac.SunFrom(p, after)
	meridian := quantity.Angle(0) // of the shadow at noon
	if almanac.SunFrom(p, noon).Azimuth.Cos() > 0 {
		meridian = quantity.Turn / 2
	}
	one, other := (then.Azimuth + quantity.Turn/2 - meridian).Signed(), (now.Azimuth + quantity.Turn/2 - meridian).Signed()
	return after, (one + other) / 2, true
}
