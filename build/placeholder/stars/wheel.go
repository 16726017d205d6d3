package stars

import (
	"math"
	"slices"
	"time"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/place"
	"noonbook/compute/sky"
)

const sourceWheel = "Wheel: polar equidistant (J. P. Snyder, Map Projections, 1987, ch. 25); dates stand where the mean Sun is, hours where it is over the school, as compute/sky documents"

func skyWheel() entry.Entry {
	return entry.Entry{
		Name:      "sky-wheel",
		Summary:   "A star wheel to cut out: a disc of stars with dates, and a mask with hours and this latitude's horizon.",
		Printable: true, For: entry.EachGroup,
		Arguments: form.Form{entry.OnDate(),
			{Key: argLimit, Min: 1, Max: 4.5, Default: 4.0, Doc: "Magnitude of the faintest stars that are drawn, besides those of the figures."},
		},
		Settings: append(form.Keys{school.Name, school.Paper}, school.Where()...),
		Facts: []entry.Fact{
			{Name: "faces", Doc: "about which pole the wheel turns, or that there are two wheels"},
			{Name: "disc", Unit: "mm", Doc: "diameter of the disc"},
			{Name: "mask", Unit: "mm", Doc: "diameter of the mask"},
			{Name: "pole_height", Unit: "deg", Doc: "height of the pin, the pole of the sky"},
			{Name: "sun_ahead", Unit: "s", Doc: "how far the mean Sun here is ahead of the standard clock; negative where it is behind"},
			{Name: "saving", Unit: "s", Doc: "how far daylight time is ahead of standard time; zero where clocks do not change"},
			{Name: "turn_a_day", Unit: "deg", Doc: "how far the disc turns from one date to the next"},
			{Name: "check_star", Doc: "a bright star near the meridian on the evening of the date, to try the wheel with"},
			{Name: "check_altitude", Unit: "deg", Doc: "its height there at nine o'clock standard time"},
			{Name: "check_direction", Doc: "where it stands then"},
		},
		Sources:  []string{Source, sourceFigures, sourceWheel, entry.SourceIANA},
		Cautions: []string{entry.CareScissors, entry.CareEvening},
		Reckon:   reckonSkyWheel,
	}
}

func reckonSkyWheel(v form.Values) (result.Result, error) {
	p, date := school.Place(v), entry.Date.Of(v)
	if err := entry.RangeOf(date); err != nil {
		return result.Result{}, err
	}
	faces := sky.Faces(p.Latitude)
	var wheels []sky.Wheel
	for _, face := range faces {
		wheels = append(wheels, sky.WheelOf(p, date.Year, face))
	}
	clocks := wheels[0].Clocks()
	check := checkStar(p, date, wheels)
	r := result.Result{
		Facts: wheelFacts(p, faces, clocks, check),
		Notes: []say.Phrase{say.Line("sky-wheel.note", entry.YearValue(date.Year)), say.Line("sky-wheel.arm")},
	}
	if len(faces) == 2 {
		r.Notes = append(r.Notes, say.Line("sky-wheel.two"))
	}
	if math.Abs(p.Latitude.Degrees()) > 85 {
		r.Notes = append(r.Notes, say.Line("sky-wheel.polar"))
	}
	r.Working = []say.Phrase{
		wheelNoonWorking(p, clocks),
		say.Line("sky-wheel.working_day"),
		wheelScaleWorking(90 - wheels[0].Edge.Degrees()),
	}
	paper := drawing.PaperOf(school.Paper.Of(v))
	for _, wheel := range wheels {
		w := wheelParts{wheel: wheel, check: check, place: p, date: date, limit: argLimit.Of(v), school: school.Name.Of(v), paper: paper}
		r.Sheets = append(append(r.Sheets, paper.Sheets(w.disc())...), paper.Sheets(w.mask())...)
	}
	return r, nil
}

func wheelNoonWorking(p place.Place, clocks sky.Clocks) say.Phrase {
	meridian := say.Seconds(entry.MeridianTime(p))
	o := entry.Enough(meridian, func(x []float64) float64 { return x[0] * 240 }, say.Number(p.Longitude.Degrees(), "deg", 2))
	steps := []say.Value{o[0], meridian, say.Seconds(clocks.Standard), entry.Signed(say.Seconds(sunAhead(p, clocks)))}
	if days := sunAhead(p, clocks) - (entry.MeridianTime(p) - clocks.Standard); days.Abs() > time.Hour {
		return say.Line("sky-wheel.working_noon_day", append(steps, say.Minutes(days))...)
	}
	return say.Line("sky-wheel.working_noon", steps...)
}

// wheelScaleWorking is how many millimetres of the wheel are a degree of the sky.
func wheelScaleWorking(edge float64) say.Phrase {
	scale := say.Number(mapRadius/edge, "mm", 2)
	o := entry.Enough(scale, func(x []float64) float64 { return x[0] / x[1] }, say.Number(mapRadius, "mm", 0), say.Number(edge, "deg", 0))
	return say.Line("sky-wheel.working_scale", o[0], o[1], scale)
}

// sunAhead is the mean Sun's time less the standard clock's.
func sunAhead(p place.Place, c sky.Clocks) time.Duration {
	ahead := entry.MeridianTime(p) - c.Standard
	// A zone across the date line has another date, not another time.
	return (ahead+36*time.Hour)%(24*time.Hour) - 12*time.Hour
}

func wheelFacts(p place.Place, faces []sky.Face, clocks sky.Clocks, check upStar) []result.Fact {
	which := "sky-wheel.north"
	switch {
	case len(faces) == 2:
		which = "sky-wheel.both"
	case faces[0] == sky.South:
		which = "sky-wheel.south"
	}
	return []result.Fact{
		{Name: "faces", Value: say.Words(which)},
		{Name: "disc", Value: say.Number(2*discRadius, "mm", 0)},
		{Name: "mask", Value: say.Number(2*maskRadius, "mm", 0)},
		{Name: "pole_height", Value: say.Number(math.Abs(p.Latitude.Degrees()), "deg", 0)},
		{Name: "sun_ahead", Value: entry.Signed(say.Seconds(sunAhead(p, clocks)))},
		{Name: "saving", Value: say.Minutes(clocks.Forward)},
		{Name: "turn_a_day", Value: say.Number(360/365.2422, "deg", 2)},
		{Name: "check_star", Value: StarWord(check.star)},
		{Name: "check_altitude", Value: say.Number(check.stands.Altitude.Degrees(), "deg", 0)},
		{Name: "check_direction", Value: entry.Toward(check.stands.Azimuth)},
	}
}

// checkHour is the standard time for which the wheel names a star to try it by.
const checkHour = 21 * time.Hour

// checkStar returns a star that is well above the horizon, near the meridian and on
// every face of the wheel at that hour on the evening of a date: the
// nearest of the first magnitude within 20°, or else the nearest of the second.
func checkStar(p place.Place, d place.Date, wheels []sky.Wheel) (best upStar) {
	at := d.UTC().Add(checkHour - wheels[0].Clocks().Standard)
	dome, ofDate := sky.DomeAt(p, at), sky.At(at)
	least := math.Inf(1)
	for _, s := range sky.Stars() {
		if s.Magnitude > brightLimit && least < 20 {
			break
		}
		if s.Name == "" || s.Magnitude > 2.1 {
			continue
		}
		h, stands := sky.Seen(dome.Star(s)), ofDate(s)
		if h.Altitude.Degrees() < 15 {
			continue
		}
		if slices.ContainsFunc(wheels, func(w sky.Wheel) bool { _, on := w.Disc(stands); return !on }) {
			continue
		}
		if off := math.Abs((dome.Sidereal - stands.RightAscension).Signed().Degrees()); off < least {
			best, least = upStar{s, h}, off
		}
	}
	return best
}
