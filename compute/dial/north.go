package dial

import (
	"time"

	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
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
	high, low := noon, noon.Add(ahead+ahead/4)
	if almanac.SunFrom(p, high).Altitude <= then.Altitude || almanac.SunFrom(p, low).Altitude >= then.Altitude {
		return time.Time{}, 0, false
	}
	for low.Sub(high) > 100*time.Millisecond {
		middle := high.Add(low.Sub(high) / 2)
		if almanac.SunFrom(p, middle).Altitude > then.Altitude {
			high = middle
		} else {
			low = middle
		}
	}
	now := almanac.SunFrom(p, low)
	meridian := quantity.Angle(0) // of the shadow at noon
	if almanac.SunFrom(p, noon).Azimuth.Cos() > 0 {
		meridian = quantity.Turn / 2
	}
	one, other := (then.Azimuth + quantity.Turn/2 - meridian).Signed(), (now.Azimuth + quantity.Turn/2 - meridian).Signed()
	return low, (one + other) / 2, true
}
