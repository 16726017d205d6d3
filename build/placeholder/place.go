package placeholder

import (
	"math"
	"time"

	"noonbook/build/form"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/almanac"
	"noonbook/compute/compass"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// where are the settings that Place reads.
var where = []string{"school.latitude", "school.longitude", "school.elevation_m", "school.time_zone"}

// onDate is the argument of everything that depends on a day.
var onDate = form.Field{Name: "date", Kind: form.Date, Assumed: "the date of the lesson, or the first day of term on a page without one", Doc: "Day that the numbers are for."}

// Place returns the place that the settings describe.
func Place(v form.Values) place.Place {
	return place.Place{
		Latitude:  quantity.Degrees(v.Number("school.latitude")),
		Longitude: quantity.Degrees(v.Number("school.longitude")),
		Elevation: quantity.Metres(v.Number("school.elevation_m")),
		Zone:      v.Zone("school.time_zone"),
	}
}

func placeFacts() Entry {
	return Entry{
		Name:      "place-facts",
		Summary:   "Where the school is, what its clocks do, and where its compass points.",
		Arguments: form.Form{onDate},
		Settings:  where,
		Facts: []Fact{
			{"latitude", "deg", "latitude, north positive"},
			{"longitude", "deg", "longitude, east positive"},
			{"utc_offset", "s", "how far the school's clock is ahead of UTC on the date, at noon"},
			{"daylight_saving", "", "whether the clocks are on daylight-saving time on the date"},
			{"next_clock_change", "", "the next clock change after the date"},
			{"magnetic_variation", "deg", "angle from true north to where the compass needle points, east positive"},
			{"compass_for_true_north", "deg", "what a compass shows when a line points to true north"},
			{"needle_turn", "deg", "how far, and to which side, to turn from the needle to true north"},
			{"local_noon", "", "when the Sun crosses the meridian, by the school's clock"},
			{"noon_after_twelve", "s", "how long after twelve by the clock that is"},
		},
		Sources: []string{sourceSun, sourceWMM, sourceIANA},
		Reckon:  reckonPlace,
	}
}

func reckonPlace(v form.Values) (result.Result, error) {
	p, date := Place(v), v.Date("date")
	midday := p.Clock(date, 12, 0)
	field, err := compass.At(p.Latitude, p.Longitude, p.Elevation, midday)
	if err != nil {
		return result.Result{}, err
	}
	variation := field.Declination
	r := result.Result{Facts: []result.Fact{
		{Name: "latitude", Value: sided(v.Number("school.latitude"), 2, "compass.north_of", "compass.south_of")},
		{Name: "longitude", Value: sided(v.Number("school.longitude"), 2, "compass.east_of", "compass.west_of")},
		{Name: "utc_offset", Value: offset(p.UTCOffset(midday))},
		{Name: "daylight_saving", Value: say.Yes(p.DaylightSaving(midday), "place-facts.dst_on", "place-facts.dst_off")},
		{Name: "next_clock_change", Value: clockChange(p, midday)},
		{Name: "magnetic_variation", Value: sided(variation.Degrees(), 1, "compass.east_of", "compass.west_of")},
		{Name: "compass_for_true_north", Value: say.Bearing(-variation, 1)},
		{Name: "needle_turn", Value: sided(-variation.Degrees(), 1, "compass.clockwise", "compass.anticlockwise")},
	}}
	noon, after := say.None("sun-day.no_noon"), say.None("sun-day.no_noon")
	if t, ok := localNoon(p, date); ok {
		noon = say.Clock(t)
		after = say.Minutes(t.Sub(midday))
	}
	r.Facts = append(r.Facts, result.Fact{Name: "local_noon", Value: noon}, result.Fact{Name: "noon_after_twelve", Value: after})
	r.Warnings = compassWarnings(field)
	r.Working = []say.Phrase{
		say.Line("place-facts.working_compass", say.Number(variation.Degrees(), "deg", 1), say.Bearing(-variation, 1)),
		say.Line("place-facts.working_noon",
			say.Number(p.Longitude.Degrees(), "deg", 2), say.Seconds(meridianTime(p)), say.Seconds(p.UTCOffset(midday)), say.Seconds(almanac.EquationOfTime(midday)), noon),
	}
	return r, nil
}

// compassWarnings says where a magnetic field model should not be trusted.
func compassWarnings(f compass.Field) []say.Phrase {
	var warnings []say.Phrase
	if f.OutsideModel {
		warnings = append(warnings, say.Line("place-facts.outside_model"))
	}
	switch f.Trust {
	case compass.Blackout:
		warnings = append(warnings, say.Line("place-facts.no_compass"))
	case compass.Caution:
		warnings = append(warnings, say.Line("place-facts.weak_compass"))
	}
	return warnings
}

// localNoon returns when the Sun crosses the meridian on the date. A local day
// may have no such moment where a zone's clock is far from the Sun's.
func localNoon(p place.Place, d place.Date) (time.Time, bool) {
	transits := almanac.SunDay(p, d).Transits
	if len(transits) == 0 {
		return time.Time{}, false
	}
	return transits[0], true
}

// meridianTime is local mean time less UT: four minutes a degree east.
func meridianTime(p place.Place) time.Duration {
	return time.Duration(p.Longitude.Hours() * float64(time.Hour))
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
	old := beforeChange(p, at)
	return say.Clock(at.In(p.Zone)).As(key, say.Date(old.DateAt(at)), say.Clock(at.In(old.Zone)), say.Minutes(jump))
}

// beforeChange is the place with the clock that it has until a change, which shows
// when the change is: back at midnight is 0:00 by it, and 23:00 the day before by
// the new one.
func beforeChange(p place.Place, change time.Time) place.Place {
	p.Zone = time.FixedZone("", int(p.UTCOffset(change.Add(-time.Second)).Seconds()))
	return p
}

func offset(d time.Duration) say.Value {
	key := "place-facts.ahead"
	if d < 0 {
		key = "place-facts.behind"
	}
	return say.Minutes(d).As(key, say.Minutes(d.Abs()))
}

// sided is a signed angle, printed as its size and one of two sides.
func sided(degrees float64, decimals int, positive, negative string) say.Value {
	if degrees < 0 {
		positive = negative
	}
	return say.Number(degrees, "deg", decimals).As(positive, say.Number(math.Abs(degrees), "deg", decimals))
}
