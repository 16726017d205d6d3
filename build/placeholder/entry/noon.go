package entry

import (
	"time"

	"noonbook/compute/almanac"
	"noonbook/compute/place"
)

// FirstHour returns the first whole hour of the clock from t on.
func FirstHour(t time.Time) time.Time {
	past := time.Duration(t.Minute())*time.Minute + time.Duration(t.Second())*time.Second
	if past == 0 {
		return t
	}
	return t.Add(time.Hour - past)
}

// LocalNoon returns when the Sun crosses the meridian on the date. A local day
// may have no such moment where a zone's clock is far from the Sun's.
func LocalNoon(p place.Place, d place.Date) (time.Time, bool) {
	transits := almanac.SunDay(p, d).Transits
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
