package entry

import (
	"slices"

	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// SunDay is almanac.SunDay. Three quarters of the days that a handbook asks for were asked
// for before, by the same school's year, diary or dial, so the last ones are remembered.
func SunDay(p place.Place, d place.Date) almanac.Day { return bodyDay(almanac.Sun, p, d) }

// MoonDay is almanac.MoonDay.
func MoonDay(p place.Place, d place.Date) almanac.Day { return bodyDay(almanac.Moon, p, d) }

func bodyDay(b almanac.Body, p place.Place, d place.Date) almanac.Day {
	return dayOf(dayKey{body: b, place: p, date: d}, func() almanac.Day { return b.Day(p, d) })
}

// DayPast is almanac.Body.Past.
func DayPast(b almanac.Body, p place.Place, d place.Date, altitude quantity.Angle) almanac.Day {
	return dayOf(dayKey{b, p, d, true, altitude}, func() almanac.Day { return b.Past(p, d, altitude) })
}

// A dayKey is what a day depends on: past is set where an altitude was asked for.
type dayKey struct {
	body     almanac.Body
	place    place.Place
	date     place.Date
	past     bool
	altitude quantity.Angle
}

// bodyDays holds four times as many as the demo asks for at a school, some 300 kB.
var bodyDays = Memory[dayKey, almanac.Day]{Most: 2048}

// dayOf gives each caller a day of its own.
func dayOf(key dayKey, find func() almanac.Day) almanac.Day {
	day, _ := bodyDays.Of(key, func() (almanac.Day, error) { return find(), nil })
	day.Rises, day.Transits, day.Sets = slices.Clone(day.Rises), slices.Clone(day.Transits), slices.Clone(day.Sets)
	return day
}
