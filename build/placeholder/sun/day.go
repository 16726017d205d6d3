package sun

import (
	"slices"
	"time"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/almanac"
	"noonbook/compute/place"
)

func sunDay() entry.Entry {
	return entry.Entry{
		Name:      "sun-day",
		Summary:   "When the Sun rises, stands highest and sets on a day.",
		Arguments: form.Form{entry.OnDate()},
		Settings:  school.Where(),
		Facts: append([]entry.Fact{
			{Name: "rise", Doc: "sunrise by the school's clock"},
			{Name: "noon", Doc: "when the Sun crosses the meridian"},
			{Name: "set", Doc: "sunset by the school's clock"},
			{Name: "day_length", Unit: "s", Doc: "how long the Sun is up between two midnights"},
			{Name: "noon_altitude", Unit: "deg", Doc: "how high the Sun stands at its noon, as seen"},
			{Name: "in_words", Doc: "the day in one sentence"},
		}, dayTruths()...),
		Sources:  []string{entry.SourceSun, "Rise and set: the Sun's centre 50′ below the horizon, 34′ for refraction and 16′ for the Sun's radius, the usual almanac convention", entry.SourceRefraction, entry.SourceIANA},
		Harmless: "Times, to read; watching the Sun by its shadow is the work of sun-path.",
		Reckon:   reckonSunDay,
	}
}

func reckonSunDay(v form.Values) (result.Result, error) {
	p, date := school.Place(v), entry.Date.Of(v)
	day := entry.SunDay(p, date)
	rise, set := entry.TimesOr(day.Rises, day.State, "sun-day.no_rise"), entry.TimesOr(day.Sets, day.State, "sun-day.no_set")
	words, working := dayInWords(date, day), say.Line("sun-day.working")
	if len(day.Rises) != 1 || len(day.Sets) != 1 || day.Sets[0].Before(day.Rises[0]) {
		working = say.Line("sun-day.working_in_all")
	}
	noon, altitude := say.None("sun-day.no_noon"), say.None("sun-day.no_noon")
	if len(day.Transits) > 0 {
		at := day.Transits[0]
		noon = say.Clock(at)
		altitude = entry.AltitudeOf(almanac.SunFrom(p, at))
	}
	return result.Result{
		Notes: belowAtNoon(altitude),
		Facts: append([]result.Fact{
			{Name: "rise", Value: rise},
			{Name: "noon", Value: noon},
			{Name: "set", Value: set},
			{Name: "day_length", Value: say.Minutes(sunUp(day))},
			{Name: "noon_altitude", Value: altitude},
			{Name: "in_words", Value: words},
		}, dayIsTrue(p, date, day)...),
		Working: []say.Phrase{working},
	}, nil
}

// belowAtNoon says how a height is counted where the Sun stays down at its noon and
// is not seen.
func belowAtNoon(noon say.Value) []say.Phrase {
	if noon.Kind == say.Quantity && noon.Number < 0 {
		return []say.Phrase{say.Line("sun-path.below")}
	}
	return nil
}

// dayInWords tells what the Sun does in the order in which it does it: where it is
// still up at midnight, a day begins with a set.
func dayInWords(date place.Date, day almanac.Day) say.Value {
	switch day.State {
	case almanac.UpAllDay:
		return say.Words("sun-day.polar_day", say.Date(date))
	case almanac.DownAllDay:
		return say.Words("sun-day.polar_night", say.Date(date))
	case almanac.NoDay:
		return say.Words("sun-day.no_day", say.Date(date))
	}
	at := []say.Value{say.Date(date)}
	for _, t := range slices.SortedFunc(slices.Values(slices.Concat(day.Rises, day.Sets)), time.Time.Compare) {
		at = append(at, say.Clock(t))
	}
	at = append(at, say.Minutes(sunUp(day)))
	setsFirst := len(day.Rises) == 0 || len(day.Sets) > 0 && day.Sets[0].Before(day.Rises[0])
	switch n := len(day.Rises) + len(day.Sets); {
	case n == 2 && setsFirst:
		return say.Words("sun-day.sets_first", at...)
	case n == 2:
		return say.Words("sun-day.day", at...)
	case n == 3 && setsFirst:
		return say.Words("sun-day.two_sets", at...)
	case n == 3:
		return say.Words("sun-day.two_rises", at...)
	}
	return say.Words("sun-day.partly")
}

// sunUp adds up how long the Sun is above its rising altitude in a local day.
func sunUp(day almanac.Day) time.Duration {
	var up time.Duration
	for _, s := range day.Spans() {
		up += s.To.Sub(s.From)
	}
	return up
}
