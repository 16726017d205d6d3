package entry

import (
	"fmt"
	"time"

	"noonbook/build/form"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// SunRise is the altitude of the Sun's centre at which it rises: 50′ below, the
// usual almanac convention.
func SunRise() quantity.Angle { return quantity.Degrees(-50.0 / 60) }

// The first and the last day of a stretch.
const (
	From form.Key[place.Date] = "from"
	To   form.Key[place.Date] = "to"
)

// DaysAsked are the first and the last of the days asked for; of the term where
// nothing is said.
func DaysAsked(v form.Values) (from, to place.Date, err error) {
	from, to = school.TermFirstDay.Of(v), school.TermLastDay.Of(v)
	if From.In(v) {
		from = From.Of(v)
	}
	if To.In(v) {
		to = To.Of(v)
	}
	return from, to, SchoolRange(from, to)
}

// SchoolRange holds the days from one date to another against what is computed.
func SchoolRange(from, to place.Date) error {
	switch {
	case to.Before(from):
		return fmt.Errorf("the last day, %s, is before the first, %s", to, from)
	case from.DaysUntil(to) > 400:
		return fmt.Errorf("%s to %s is %d days, more than 400", from, to, from.DaysUntil(to))
	}
	if err := RangeOf(from); err != nil {
		return err
	}
	return RangeOf(to)
}

// InRange holds any year of a local date against the almanac's range; the last
// night of the last year may reach into the next.
func InRange(year int) error {
	if year < almanac.FirstYear || year > almanac.LastYear {
		return fmt.Errorf("year %d is outside %d to %d, for which the sky is computed", year, almanac.FirstYear, almanac.LastYear)
	}
	return nil
}

// RangeOf holds a date against the almanac's range.
func RangeOf(d place.Date) error { return InRange(d.Year) }

// LastDay is the last date for which the sky is computed.
func LastDay() place.Date { return place.Date{Year: almanac.LastYear, Month: time.December, Day: 31} }

// Edge says that a page stops there.
func Edge() say.Phrase { return say.Line("sky.edge", YearValue(almanac.LastYear)) }

// AsSeen is a geometric altitude with the lift of the air.
func AsSeen(altitude quantity.Angle) quantity.Angle {
	return altitude + almanac.Refraction(altitude)
}

// AsStands is the geometric altitude of what is seen at an altitude.
func AsStands(seen quantity.Angle) quantity.Angle {
	h := seen
	for range 3 {
		h = seen - almanac.Refraction(h)
	}
	return h
}

// AltitudeOf is how high the centre of a body is seen, as a value. Below the
// horizon nothing is seen, and the altitude is the geometric one.
func AltitudeOf(h almanac.Horizontal) say.Value {
	altitude := AsSeen(h.Altitude)
	if altitude < 0 {
		altitude = h.Altitude
	}
	return say.Number(altitude.Degrees(), "deg", 1)
}

// TimesOr returns the moments as clock times, or why there is none on that day. Far
// from the equator a day can have two rises or two sets; the value then is the first,
// and both are printed.
func TimesOr(times []time.Time, state almanac.State, none string) say.Value {
	var clocks []say.Value
	for _, t := range times {
		clocks = append(clocks, say.Clock(t))
	}
	if len(clocks) > 0 {
		return Both(clocks)
	}
	switch state {
	case almanac.UpAllDay:
		return say.None("sun-day.stays_up")
	case almanac.DownAllDay:
		return say.None("sun-day.stays_down")
	}
	return say.None(none)
}
