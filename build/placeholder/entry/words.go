package entry

import (
	"math"
	"time"

	"noonbook/build/say"
	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// Signed prints a stretch of time to be added or taken away. One that rounds to
// no minute, or no second, has nothing to add.
func Signed(v say.Value) say.Value {
	step := 60.0
	if v.Decimals > 0 {
		step = 1
	}
	if math.Round(v.Number/step) <= 0 {
		return v
	}
	return v.As("dial-clock.plus", v)
}

// MonthKey is the key of a month's name.
func MonthKey(m time.Month) string {
	return "month." + [...]string{"", "1", "2", "3", "4", "5", "6", "7", "8", "9", "10", "11", "12"}[m]
}

// WeekdayKey is the key of the name of a date's day of the week.
func WeekdayKey(d place.Date) string {
	return [...]string{"weekday.0", "weekday.1", "weekday.2", "weekday.3", "weekday.4", "weekday.5", "weekday.6"}[d.Weekday()]
}

// Weekday is a date with its day of the week, for lists of school days.
func Weekday(d place.Date) say.Value {
	return say.Date(d).As("format.weekday", say.Words(WeekdayKey(d)), say.Count(d.Day), say.Words(MonthKey(d.Month)))
}

// Sided is a signed angle, printed as its size and one of two sides.
func Sided(degrees float64, decimals int, positive, negative string) say.Value {
	if degrees < 0 {
		positive = negative
	}
	return say.Number(degrees, "deg", decimals).As(positive, say.Number(math.Abs(degrees), "deg", decimals))
}

// BodyWord is the name of a body that the naked eye sees.
func BodyWord(b almanac.Body) say.Value {
	return say.Words([...]string{"body.sun", "body.moon", "body.mercury", "body.venus", "body.mars", "body.jupiter", "body.saturn"}[b])
}

// Southern is by how many seasons a place is ahead of the northern year.
func Southern(p place.Place) int {
	if p.Latitude < 0 {
		return 2
	}
	return 0
}

// TurnName is the name of an equinox or a solstice.
func TurnName(s almanac.Season) say.Value {
	return say.Words([...]string{
		"season.march_equinox", "season.june_solstice", "season.september_equinox", "season.december_solstice",
	}[s])
}

// Moment is an instant with its date, by the clock of the place.
func Moment(p place.Place, t time.Time) say.Value {
	clock := say.Clock(t.In(p.Zone))
	return clock.As("sky.moment", say.Date(p.DateAt(t)), clock)
}

// Toward is a bearing in words, to the nearest of sixteen directions.
func Toward(azimuth quantity.Angle) say.Value {
	return say.Words([...]string{
		"toward.north", "toward.north_northeast", "toward.northeast", "toward.east_northeast",
		"toward.east", "toward.east_southeast", "toward.southeast", "toward.south_southeast",
		"toward.south", "toward.south_southwest", "toward.southwest", "toward.west_southwest",
		"toward.west", "toward.west_northwest", "toward.northwest", "toward.north_northwest",
	}[int(math.Round(azimuth.Bearing().Degrees()/22.5))%16])
}

// LitSide is where the lit part of a disc lies for somebody who faces it.
func LitSide(s almanac.Side) say.Value {
	return say.Words([...]string{
		"side.none", "side.top", "side.upper_right", "side.right", "side.lower_right",
		"side.bottom", "side.lower_left", "side.left", "side.upper_left", "side.all",
	}[s])
}

// Percent is a fraction, printed in hundredths.
func Percent(fraction float64) say.Value { return say.Number(100*fraction, "percent", 0) }

// Listed names things in a row: a; a and b; a, b and c.
func Listed(names []say.Value) say.Value {
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

// Both is the first of some values, printed with those that follow it, which other
// programs get too.
func Both(values []say.Value) say.Value {
	if len(values) == 1 {
		return values[0]
	}
	all := Listed(values).Phrase
	both := values[0].As(all.Key, all.With...)
	both.Also = values[1:]
	return both
}

// DayOfYear is a date of a table that bears the year in its title.
func DayOfYear(d place.Date) say.Value {
	return say.Date(d).As("format.day_month", say.Count(d.Day), say.Words(MonthKey(d.Month)))
}

// ShortMonth is a month's name for narrow columns.
func ShortMonth(m time.Month) say.Value {
	return say.Words([...]string{
		"month-short.jan", "month-short.feb", "month-short.mar", "month-short.apr", "month-short.may", "month-short.jun",
		"month-short.jul", "month-short.aug", "month-short.sep", "month-short.oct", "month-short.nov", "month-short.dec",
	}[m-time.January])
}

// YearValue is a year as a name, without the space that large numbers have.
func YearValue(year int) say.Value {
	return say.Text(place.Date{Year: year, Month: time.January, Day: 1}.String()[:4])
}

// WholeOrTenth returns the decimals of a number that is printed whole, or to a tenth
// where that is not enough.
func WholeOrTenth(x float64) int {
	if math.Abs(x-math.Round(x)) < 0.05 {
		return 0
	}
	return 1
}
