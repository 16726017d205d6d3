package class

import (
	"math"
	"time"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/almanac"
	"noonbook/compute/compass"
	"noonbook/compute/place"
)

func placeFacts() entry.Entry {
	return entry.Entry{
		Name:      "place-facts",
		Summary:   "Where the school is, what its clocks do, and where its compass points.",
		Arguments: form.Form{entry.OnDate()},
		Settings:  school.Where(),
		Facts: append([]entry.Fact{
			{Name: "latitude", Unit: "deg", Doc: "latitude, north positive"},
			{Name: "longitude", Unit: "deg", Doc: "longitude, east positive"},
			{Name: "utc_offset", Unit: "s", Doc: "how far the school's clock is ahead of UTC on the date, at noon"},
			{Name: "daylight_saving", Doc: "whether the clocks are on daylight-saving time on the date", Truth: true},
			{Name: "next_clock_change", Doc: "the next clock change after the date"},
			{Name: "magnetic_variation", Unit: "deg", Doc: "angle from true north to where the compass needle points, east positive"},
			{Name: "compass_for_true_north", Unit: "deg", Doc: "what a compass shows when a line points to true north"},
			{Name: "needle_turn", Unit: "deg", Doc: "how far, and to which side, to turn from the needle to true north"},
			{Name: "local_noon", Doc: "when the Sun crosses the meridian, by the school's clock"},
			{Name: "horizon", Doc: "the directions of the half of the horizon over which Sun and Moon pass, from left to right; in the tropics all round"},
			{Name: "noon_after_twelve", Unit: "s", Doc: "how long after twelve by the clock that is"},
		}, placeTruths()...),
		Sources:  []string{entry.SourceSun, entry.SourceWMM, entry.SourceIANA},
		Harmless: "Numbers of the place, to read; the placeholders for work outside have their own.",
		Reckon:   reckonPlace,
	}
}

func reckonPlace(v form.Values) (result.Result, error) {
	p, date := school.Place(v), entry.Date.Of(v)
	midday := p.Clock(date, 12, 0)
	field, err := compass.At(p.Latitude, p.Longitude, p.Elevation, midday)
	if err != nil {
		return result.Result{}, err
	}
	variation := field.Declination
	r := result.Result{Facts: []result.Fact{
		{Name: "latitude", Value: entry.Sided(school.Latitude.Of(v), 2, "compass.north_of", "compass.south_of")},
		{Name: "longitude", Value: entry.Sided(school.Longitude.Of(v), 2, "compass.east_of", "compass.west_of")},
		{Name: "utc_offset", Value: offset(p.UTCOffset(midday))},
		{Name: "daylight_saving", Value: say.Yes(p.DaylightSaving(midday), "place-facts.dst_on", "place-facts.dst_off")},
		{Name: "next_clock_change", Value: clockChange(p, midday)},
		{Name: "magnetic_variation", Value: entry.Sided(variation.Degrees(), 1, "compass.east_of", "compass.west_of")},
		{Name: "compass_for_true_north", Value: say.Bearing(-variation, 1)},
		{Name: "needle_turn", Value: entry.Sided(-variation.Degrees(), 1, "compass.clockwise", "compass.anticlockwise")},
	}}
	noon, after := say.None("sun-day.no_noon"), say.None("sun-day.no_noon")
	if t, ok := entry.LocalNoon(p, date); ok {
		noon = say.Clock(t)
		after = say.Minutes(t.Sub(midday))
	}
	r.Facts = append(r.Facts, result.Fact{Name: "local_noon", Value: noon}, result.Fact{Name: "noon_after_twelve", Value: after}, result.Fact{Name: "horizon", Value: horizon(p)})
	r.Facts = append(r.Facts, placeIsTrue(p, midday, field)...)
	r.Warnings = entry.CompassWarnings(field)
	r.Working = []say.Phrase{say.Line("place-facts.working_compass", say.Number(variation.Degrees(), "deg", 1), say.Bearing(-variation, 1), entry.FullTurn(variation))}
	if t, ok := entry.LocalNoon(p, date); ok {
		meridian := say.Seconds(entry.MeridianTime(p))
		o := entry.Enough(meridian, func(x []float64) float64 { return x[0] * 240 }, say.Number(p.Longitude.Degrees(), "deg", 2))
		steps := []say.Value{o[0], meridian, say.Seconds(p.UTCOffset(midday)), say.Seconds(almanac.EquationOfTime(t)), noon}
		key := "place-facts.working_noon"
		if days := math.Round((p.UTCOffset(midday) - entry.MeridianTime(p)).Hours() / 24); days != 0 {
			key, steps = "place-facts.working_noon_day", append(steps, say.Minutes(-time.Duration(days)*24*time.Hour))
		}
		r.Working = append(r.Working, say.Line(key, steps...))
	}
	return r, nil
}

func clockChange(p place.Place, after time.Time) say.Value {
	at, jump, ok := p.NextChange(after)
	if !ok {
		return say.None("place-facts.no_change")
	}
	key := "place-facts.change_forward"
	if jump < 0 {
		key, jump = "place-facts.change_back", -jump
	}
	old := entry.BeforeChange(p, at)
	return say.Clock(at.In(p.Zone)).As(key, say.Date(old.DateAt(at)), say.Clock(at.In(old.Zone)), say.Minutes(jump))
}

func offset(d time.Duration) say.Value {
	key := "place-facts.ahead"
	if d < 0 {
		key = "place-facts.behind"
	}
	return say.Minutes(d).As(key, say.Minutes(d.Abs()))
}
