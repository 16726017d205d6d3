package sun

import (
	"time"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/almanac"
)

func sunDay() entry.Entry {
	return entry.Entry{
		Name:      "sun-day",
		Summary:   "When the Sun rises, stands highest and sets on a day.",
		Arguments: form.Form{entry.OnDate()},
		Settings:  school.Where(),
		Facts: []entry.Fact{
			{Name: "rise", Doc: "sunrise by the school's clock"},
			{Name: "noon", Doc: "when the Sun crosses the meridian"},
			{Name: "set", Doc: "sunset by the school's clock"},
			{Name: "day_length", Unit: "s", Doc: "how long the Sun is up between two midnights"},
			{Name: "noon_altitude", Unit: "deg", Doc: "how high the Sun stands at its noon, as seen"},
			{Name: "in_words", Doc: "the day in one sentence"},
		},
		Sources: []string{entry.SourceSun, "Rise and set: the Sun's centre 50′ below the horizon, 34′ for refraction and 16′ for the Sun's radius, the usual almanac convention", entry.SourceIANA},
		Reckon:  reckonSunDay,
	}
}

func reckonSunDay(v form.Values) (result.Result, error) {
	p, date := school.Place(v), entry.Date.Of(v)
	day := almanac.SunDay(p, date)
	rise, set := say.None("sun-day.no_rise"), say.None("sun-day.no_set")
	words := say.Words("sun-day.partly")
	switch day.State {
	case almanac.UpAllDay:
		rise, set = say.None("sun-day.stays_up"), say.None("sun-day.stays_up")
		words = say.Words("sun-day.polar_day", say.Date(date))
	case almanac.DownAllDay:
		rise, set = say.None("sun-day.stays_down"), say.None("sun-day.stays_down")
		words = say.Words("sun-day.polar_night", say.Date(date))
	case almanac.NoDay:
		words = say.Words("sun-day.no_day", say.Date(date))
	}
	if len(day.Rises) > 0 {
		rise = say.Clock(day.Rises[0])
	}
	if len(day.Sets) > 0 {
		set = say.Clock(day.Sets[len(day.Sets)-1])
	}
	up := sunUp(day)
	if len(day.Rises) > 0 && len(day.Sets) > 0 {
		words = say.Words("sun-day.day", say.Date(date), rise, set, say.Minutes(up))
	}
	noon, altitude := say.None("sun-day.no_noon"), say.None("sun-day.no_noon")
	if len(day.Transits) > 0 {
		at := day.Transits[0]
		noon = say.Clock(at)
		h := almanac.SunFrom(p, at).Altitude
		altitude = say.Number((h + almanac.Refraction(h)).Degrees(), "deg", 1)
	}
	return result.Result{
		Facts: []result.Fact{
			{Name: "rise", Value: rise},
			{Name: "noon", Value: noon},
			{Name: "set", Value: set},
			{Name: "day_length", Value: say.Minutes(up)},
			{Name: "noon_altitude", Value: altitude},
			{Name: "in_words", Value: words},
		},
		Working: []say.Phrase{say.Line("sun-day.working")},
	}, nil
}

// sunUp adds up how long the Sun is above its rising altitude in a local day.
func sunUp(day almanac.Day) time.Duration {
	var up time.Duration
	for _, s := range day.Spans() {
		up += s.To.Sub(s.From)
	}
	return up
}
