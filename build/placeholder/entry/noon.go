package entry

import (
	"time"

	"noonbook/compute/place"
)

// WholeHours returns the moments from one to before another at which the clock shows
// a whole hour, by the clock that runs then: where it changes by half an hour, as on
// Lord Howe Island, they are not an hour apart.
func WholeHours(from, to time.Time) []time.Time {
	var hours []time.Time
	for t := firstHour(from); t.Before(to); t = firstHour(t.Add(time.Minute)) {
		hours = append(hours, t)
	}
	return hours
}

// firstHour is the first whole hour of the clock from t on. A change of the clock on
// the way makes it look again from where it came out.
func firstHour(t time.Time) time.Time {
	for {
		past := time.Duration(t.Minute())*time.Minute + time.Duration(t.Second())*time.Second
		if past == 0 {
			return t
		}
		t = t.Add(time.Hour - past)
	}
}

// LocalNoon returns when the Sun crosses the meridian on the date. A local day
// may have no such moment where a zone's clock is far from the Sun's.
func LocalNoon(p place.Place, d place.Date) (time.Time, bool) {
	transits := SunDay(p, d).Transits
	if len(transits) == 0 {
		return time.Time{}, false
	}
	return transits[0], true
}

// MeridianTime is local mean time less UT: four minutes a degree east.
func MeridianTime(p place.Place) time.Duration {
	return time.Duration(p.Longitude.Hours() * float64(time.Hour))
}

// BeforeChange is the place with the clock that it has until a change, which shows
// when the change is: back at midnight is 0:00 by it, and 23:00 the day before by
// the new one.
func BeforeChange(p place.Place, change time.Time) place.Place {
	p.Zone = time.FixedZone("", int(p.UTCOffset(change.Add(-time.Second)).Seconds()))
	return p
}

// NoonOr is the Sun's noon, or midday by the clock on a date without one.
func NoonOr(p place.Place, d place.Date) time.Time {
	if t, ok := LocalNoon(p, d); ok {
		return t
	}
	return p.Clock(d, 12, 0)
}
