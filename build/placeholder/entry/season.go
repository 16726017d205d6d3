package entry

import (
	"math"
	"time"

	"noonbook/build/form"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/almanac"
	"noonbook/compute/dial"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// Tropic is the latitude in degrees up to which the Sun can stand overhead, the tilt of
// the Earth's axis. As far from a pole it can stay up, or down, for a day.
const Tropic = float64(dial.MaxDeclination * 180 / math.Pi)

// Tropical reports whether a place at a latitude lies between the tropics. Spring,
// summer, autumn and winter are then no facts of the place.
func Tropical(latitude quantity.Angle) bool {
	return latitude > -dial.MaxDeclination && latitude < dial.MaxDeclination
}

// SeasonName is the season that the turn begins at the place, or that it falls in where
// seasons are counted by the calendar: they begin some three weeks earlier. Between the
// tropics there is none.
func SeasonName(p place.Place, s almanac.Season) say.Value {
	if Tropical(p.Latitude) {
		return say.None("season.none")
	}
	return say.Words([...]string{"season.spring", "season.summer", "season.autumn", "season.winter"}[(int(s)+Southern(p))%4])
}

// ByCalendar reports whether the school counts seasons by the calendar.
func ByCalendar(v form.Values) bool { return school.Seasons.Of(v) == school.CalendarSeasons }

// CalendarSeason is the turn whose season a date falls in by the calendar, where seasons
// are three whole months: March to May, June to August, September to November, December
// to February (World Meteorological Organization, WMO-No. 1203, Guidelines on the
// Calculation of Climate Normals, 2017, and the glossaries of the weather services of
// Australia and the United Kingdom; from memory).
func CalendarSeason(d place.Date) almanac.Season {
	return almanac.Season((int(d.Month)/3 + 3) % 4)
}

// CalendarBegin is the first day of the season that belongs to a turn of a year.
func CalendarBegin(year int, s almanac.Season) place.Date {
	return place.Date{Year: year, Month: time.Month(3 * (int(s) + 1)), Day: 1}
}
