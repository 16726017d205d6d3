package place

import (
	"time"

	"noonbook/compute/quantity"
)

// A Place is a point on the Earth with its clock.
type Place struct {
	Latitude  quantity.Angle  // geodetic, north positive, −90° to 90°
	Longitude quantity.Angle  // east positive, −180° to 180°
	Elevation quantity.Length // above mean sea level
	Zone      *time.Location  // IANA time zone
}

// Day returns the instants at which the date begins and ends on the clock of
// the place. They coincide where the zone skipped the date.
func (p Place) Day(d Date) (from, to time.Time) {
	return p.midnight(d), p.midnight(d.Add(1))
}

// midnight returns the first instant whose local date is d or later. Midnight
// itself may not exist (a clock change at 0:00), and time.Date then answers a
// moment beside the gap; stepping to the zone's own bounds finds the edge.
func (p Place) midnight(d Date) time.Time {
	t := time.Date(d.Year, d.Month, d.Day, 0, 0, 0, 0, p.Zone)
	if p.DateAt(t).Before(d) {
		_, change := t.ZoneBounds()
		return change
	}
	if begin, _ := t.ZoneBounds(); !begin.IsZero() && !p.DateAt(begin).Before(d) {
		return begin // the date began with the clock change, after a gap
	}
	return t
}

// DateAt returns the date on the place's clock at the instant t.
func (p Place) DateAt(t time.Time) Date {
	y, m, d := t.In(p.Zone).Date()
	return Date{y, m, d}
}

// Clock returns the instant at which the place's clock shows h:m on the date.
// In the hour that a spring change skips it answers the instant as far after
// the change; in the hour that an autumn change repeats, the first one.
func (p Place) Clock(d Date, h, m int) time.Time {
	t := time.Date(d.Year, d.Month, d.Day, h, m, 0, 0, p.Zone)
	begin, _ := t.ZoneBounds()
	if begin.IsZero() {
		return t
	}
	_, now := t.Zone()
	_, before := begin.Add(-time.Second).In(p.Zone).Zone()
	if earlier := t.Add(time.Duration(now-before) * time.Second); now < before && earlier.Before(begin) {
		return earlier
	}
	return t
}

// UTCOffset returns how far the clock of the place is ahead of UTC at t.
func (p Place) UTCOffset(t time.Time) time.Duration {
	_, seconds := t.In(p.Zone).Zone()
	return time.Duration(seconds) * time.Second
}

// DaylightSaving reports whether the place's clock is on daylight-saving time
// at t, as the IANA database marks it.
func (p Place) DaylightSaving(t time.Time) bool { return t.In(p.Zone).IsDST() }

// NextChange returns the first clock change after t and by how much the clock
// jumps (forward positive). ok is false where none is due within two years.
func (p Place) NextChange(t time.Time) (at time.Time, jump time.Duration, ok bool) {
	for limit := t.AddDate(2, 0, 0); ; {
		_, end := t.In(p.Zone).ZoneBounds()
		if end.IsZero() || end.After(limit) {
			return time.Time{}, 0, false
		}
		jump = p.UTCOffset(end) - p.UTCOffset(end.Add(-time.Second))
		if jump != 0 {
			return end, jump, true
		}
		t = end // the zone changed its name only
	}
}
