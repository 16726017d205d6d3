package school

import (
	"time"

	"noonbook/build/form"
	"noonbook/compute/classroom"
	"noonbook/compute/place"
)

// The keys of an evening at school under the sky.
const (
	EveningFirstDay form.Key[place.Date]    = "evening.first_day"
	EveningLastDay  form.Key[place.Date]    = "evening.last_day"
	EveningMinutes  form.Key[int]           = "evening.minutes"
	EveningEndsBy   form.Key[time.Duration] = "evening.ends_by"
)

// evening describes the settings of an evening under the sky. Its end is that of an evening
// for pupils of about eleven who sleep at home: common practice, no source.
func evening() form.Form {
	return form.Form{
		{Key: EveningFirstDay, Assumed: "the fourth day of the term", Doc: "First day on which the evening under the sky may be, as when telescopes must be ready for it."},
		{Key: EveningLastDay, Assumed: "term.last_day", Doc: "Last day on which it may be."},
		{Key: EveningMinutes, Unit: "min", Min: 45, Max: 150, Default: 75, Doc: "How long it lasts."},
		{Key: EveningEndsBy, Default: 21*time.Hour + 30*time.Minute, Doc: "Time by which it must be over, so that pupils are in bed in time; 23:30 at the latest."},
	}
}

// EveningSettings are the settings on which the night of an evening depends.
func EveningSettings() form.Keys {
	return form.Keys{EveningFirstDay, EveningLastDay, EveningMinutes, EveningEndsBy}
}

// LatestEnd is the latest hour by which an evening can end.
const LatestEnd = 23*time.Hour + 30*time.Minute

// outing is what the settings say of the evening.
func outing(v form.Values) classroom.Outing {
	return classroom.Outing{
		First:  EveningFirstDay.Of(v),
		Last:   EveningLastDay.Of(v),
		Length: time.Duration(EveningMinutes.Of(v)) * time.Minute,
		EndsBy: min(EveningEndsBy.Of(v), LatestEnd),
	}
}
