package class

import (
	"time"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/place"
)

const argTime form.Key[time.Duration] = "time"

func namedDay() entry.Entry {
	return entry.Entry{
		Name:    "day",
		Summary: "A day and a time of day, written as the school writes them.",
		Arguments: form.Form{
			entry.OnDate(),
			{Key: argTime, Assumed: "none", Doc: "Time of day to write, by the school's clock."},
			{Key: entry.CountedFrom, Assumed: "the lesson's day, else the first day of term", Doc: "Day from which days_away counts, and whose year is not written."},
		},
		Settings: form.Keys{school.TimeZone},
		Facts: []entry.Fact{
			{Name: "date", Doc: "the day with its weekday, and its year where that is another"},
			{Name: "month", Doc: "the month of the day"},
			{Name: "weekday", Doc: "the day of the week"},
			{Name: "days_away", Doc: "days from the day of the lesson to it, negative before"},
			{Name: "time", Doc: "the time of day"},
		},
		Sources:  []string{entry.SourceIANA},
		Harmless: "A date and a time, to read.",
		Reckon: func(v form.Values) (result.Result, error) {
			date, from := entry.Date.Of(v), entry.CountedFrom.Of(v)
			return result.Result{Facts: []result.Fact{
				{Name: "date", Value: weekdayDate(date, from.Year)},
				{Name: "month", Value: say.Words(entry.MonthKey(date.Month))},
				{Name: "weekday", Value: say.Words(entry.WeekdayKey(date))},
				{Name: "days_away", Value: say.Count(from.DaysUntil(date))},
				{Name: "time", Value: timeOfDay(v, date)},
			}}, nil
		},
	}
}

// weekdayDate is a date with its weekday, and with its year unless it is the given one.
func weekdayDate(d place.Date, year int) say.Value {
	if d.Year == year {
		return entry.Weekday(d)
	}
	return say.Date(d).As("day.with_year", entry.Weekday(d), entry.YearValue(d.Year))
}

// timeOfDay is the time that was given, also where a clock change skips it.
func timeOfDay(v form.Values, d place.Date) say.Value {
	if !argTime.In(v) {
		return say.None("day.no_time")
	}
	at := place.Place{Zone: school.TimeZone.Of(v)}
	zone := time.FixedZone("", int(at.UTCOffset(at.Clock(d, 12, 0)).Seconds()))
	return say.Clock(time.Date(d.Year, d.Month, d.Day, 0, 0, 0, 0, zone).Add(argTime.Of(v)))
}
