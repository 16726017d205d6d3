package placeholder

import (
	"fmt"
	"math"
	"time"

	"noonbook/build/form"
	"noonbook/build/say"
	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// What the placeholders of the sky share: its years, moments, heights,
// directions and sides in values and words.

// Sources of the sky.
const (
	sourceRise       = "Sunrise and sunset: the Sun's centre 50′ below the horizon, 34′ for refraction and 16′ for the Sun's radius, the usual almanac convention"
	sourceRefraction = "Heights are those seen through ordinary air: refraction after Sæmundsson 1986"
	sourceMoon       = "Moon: truncated ELP/MPP02 (J. Chapront and G. Francou, 2003), as compute/almanac documents"
	sourceMoonrise   = "Moonrise and moonset: the Moon's upper limb with parallax, 34′ below the horizon for refraction"
	sourcePhases     = "Phases: the moments at which the Moon's apparent geocentric longitude is 0°, 90°, 180° and 270° ahead of the Sun's"
	sourcePlanets    = "Planets: truncated VSOP87 (P. Bretagnon and G. Francou, 1988), as compute/almanac documents"
	sourceMagnitudes = "Magnitudes: A. Mallama and J. L. Hilton, 2018, Computing apparent planetary magnitudes for the Astronomical Almanac"
	sourceEclipses   = "Eclipses: radii and shadows after F. Espenak and J. Meeus (NASA/TP-2006-214141 and NASA/TP-2009-214172), as compute/almanac documents"
)

// inYear is the argument of what covers a year.
var inYear = form.Field{Name: "year", Kind: form.Whole, Min: almanac.FirstYear, Max: almanac.LastYear, Assumed: "the year of the date", Doc: "Year that the numbers are for."}

// yearOf returns the year that the values ask for. Within the almanac's range
// every number of the sky can be trusted; outside, the error says so.
func yearOf(v form.Values) (int, error) {
	year := v.Whole("year")
	if year == 0 {
		year = v.Date("date").Year
	}
	return year, inRange(year)
}

// inRange holds any year of a local date against the almanac's range; the last
// night of the last year may reach into the next.
func inRange(year int) error {
	if year < almanac.FirstYear || year > almanac.LastYear {
		return fmt.Errorf("year %d is outside %d to %d, for which the sky is computed", year, almanac.FirstYear, almanac.LastYear)
	}
	return nil
}

// rangeOf holds a date against the almanac's range.
func rangeOf(d place.Date) error { return inRange(d.Year) }

// moment is an instant with its date, by the clock of the place.
func moment(p place.Place, t time.Time) say.Value {
	clock := say.Clock(t.In(p.Zone))
	return clock.As("sky.moment", say.Date(p.DateAt(t.Round(time.Minute))), clock)
}

// clockOn is an instant by the clock of the place, in a row that bears a date;
// where its own date is another one, it says so.
func clockOn(p place.Place, t time.Time, d place.Date) say.Value {
	clock := say.Clock(t.In(p.Zone))
	switch own := p.DateAt(t.Round(time.Minute)); {
	case own.Before(d):
		return clock.As("sky.day_before", clock)
	case own.After(d):
		return clock.As("sky.day_after", clock)
	}
	return clock
}

// asSeen is a geometric altitude with the lift of the air.
func asSeen(altitude quantity.Angle) quantity.Angle {
	return altitude + almanac.Refraction(altitude)
}

// asStands is the geometric altitude of what is seen at an altitude.
func asStands(seen quantity.Angle) quantity.Angle {
	h := seen
	for range 3 {
		h = seen - almanac.Refraction(h)
	}
	return h
}

// altitudeOf is how high the centre of a body is seen, as a value. Below the
// horizon nothing is seen, and the altitude is the geometric one.
func altitudeOf(h almanac.Horizontal) say.Value {
	altitude := asSeen(h.Altitude)
	if altitude < 0 {
		altitude = h.Altitude
	}
	return say.Number(altitude.Degrees(), "deg", 1)
}

// toward is a bearing in words, to the nearest of sixteen directions.
func toward(azimuth quantity.Angle) say.Value {
	return say.Words([...]string{
		"toward.north", "toward.north_northeast", "toward.northeast", "toward.east_northeast",
		"toward.east", "toward.east_southeast", "toward.southeast", "toward.south_southeast",
		"toward.south", "toward.south_southwest", "toward.southwest", "toward.west_southwest",
		"toward.west", "toward.west_northwest", "toward.northwest", "toward.north_northwest",
	}[int(math.Round(azimuth.Bearing().Degrees()/22.5))%16])
}

// litSide is where the lit part of a disc lies for somebody who faces it.
func litSide(s almanac.Side) say.Value {
	return say.Words([...]string{
		"side.none", "side.top", "side.upper_right", "side.right", "side.lower_right",
		"side.bottom", "side.lower_left", "side.left", "side.upper_left", "side.all",
	}[s])
}

// percent is a fraction, printed in hundredths.
func percent(fraction float64) say.Value { return say.Number(100*fraction, "percent", 0) }

// firstOr returns the first or last of the moments as a clock time, or why
// there is none on that day.
func firstOr(times []time.Time, state almanac.State, none string) say.Value {
	if len(times) > 0 {
		return say.Clock(times[0])
	}
	switch state {
	case almanac.UpAllDay:
		return say.None("sun-day.stays_up")
	case almanac.DownAllDay:
		return say.None("sun-day.stays_down")
	}
	return say.None(none)
}

// listed names things in a row: a; a and b; a, b and c.
func listed(names []say.Value) say.Value {
	if len(names) == 0 {
		return say.None("sky.nothing")
	}
	list := names[0]
	for i, name := range names[1:] {
		key := "sky.list"
		if i == len(names)-2 {
			key = "sky.list_end"
		}
		list = say.Words(key, list, name)
	}
	return list
}

// dayOfYear is a date of a table that bears the year in its title.
func dayOfYear(d place.Date) say.Value {
	return say.Date(d).As("dial-clock.day", say.Count(d.Day), say.Words(monthKey(d.Month)))
}

// shortDate is a date for narrow columns, 2 Aug 2027.
func shortDate(d place.Date) say.Value {
	return say.Date(d).As("format.date", say.Count(d.Day), shortMonth(d.Month), yearValue(d.Year))
}

func shortMonth(m time.Month) say.Value {
	return say.Words([...]string{
		"month-short.jan", "month-short.feb", "month-short.mar", "month-short.apr", "month-short.may", "month-short.jun",
		"month-short.jul", "month-short.aug", "month-short.sep", "month-short.oct", "month-short.nov", "month-short.dec",
	}[m-time.January])
}

// yearValue is a year as a name, without the space that large numbers have.
func yearValue(year int) say.Value {
	return say.Text(place.Date{Year: year, Month: time.January, Day: 1}.String()[:4])
}
