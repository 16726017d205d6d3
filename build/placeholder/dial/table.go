package dial

import (
	"math"
	"slices"
	"time"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/almanac"
	"noonbook/compute/compass"
	"noonbook/compute/dial"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// What the entry takes.
const (
	argStepMinutes form.Key[int]      = "step_minutes"
	argShow        form.Key[[]string] = "show"
)

const sourceDial = "Hour lines: tan X = sin φ · tan h, the standard formula of the horizontal dial (A. E. Waugh, Sundials, 1973)"

func dialTable() entry.Entry {
	return entry.Entry{
		Name:    "dial-table",
		Summary: "The hour lines of the school's dial, level or polar, and its gnomon.",
		Arguments: form.Form{entry.OnDate(),
			{Key: argStepMinutes, Unit: "min", Min: 5, Max: 60, Default: 60, Doc: "Sun time from one line to the next."},
			{Key: argShow, Choices: showsAll, Default: showsAll, Doc: "What the table says of each line: where it is on the face, how far the Sun has gone, the line's bearing, the clock's time."},
		},
		Settings: slices.Concat(school.Where(), form.Keys{school.StockStyleMM, school.StockPolarHeightMM}),
		Facts: []entry.Fact{
			{Name: "gnomon_angle", Unit: "deg", Doc: "angle of the gnomon between base and style, the latitude; none on a polar dial"},
			{Name: "gnomon_base", Unit: "mm", Doc: "side of the gnomon along the noon line"},
			{Name: "gnomon_height", Unit: "mm", Doc: "upright side of the gnomon"},
			{Name: "gnomon_style", Unit: "mm", Doc: "side of the gnomon whose edge casts the shadow: it slopes, but not on a polar dial"},
			{Name: "noon_line", Doc: "where the noon line points"},
			{Name: "turns", Doc: "which way the hours run on the face"},
			{Name: "first_hour", Unit: "deg", Doc: "angle between the lines of noon and one o'clock; none on a polar dial"},
			{Name: "uneven", Unit: "deg", Doc: "angle between the lines of five and six o'clock; none on a polar dial"},
			{Name: "first_distance", Unit: "mm", Doc: "distance between the lines of noon and one o'clock on a polar dial"},
			{Name: "last_distance", Unit: "mm", Doc: "distance between the lines of four and five o'clock on a polar dial"},
			{Name: "needle_noon", Unit: "s", Doc: "what the dial shows at noon on the date, less the true sun time, when plate and gnomon are laid along the compass needle as it is"},
			{Name: "needle_most", Unit: "s", Doc: "the same where it is largest in the year while the Sun is 10° high"},
			{Name: "needle_face", Unit: "s", Doc: "the same at noon when only the face follows the needle, under a gnomon that points true"},
		},
		Sources:  []string{sourceDial, sourcePolar, entry.SourceWMM, entry.SourceSun, entry.SourceIANA},
		Harmless: "Sizes and angles to draw at a table; laying the dial outside is the work of dial-north.",
		Reckon:   reckonDialTable,
	}
}

func reckonDialTable(v form.Values) (result.Result, error) {
	if builds(v) == dial.Polar {
		return reckonPolarTable(v)
	}
	p, date := school.Place(v), entry.Date.Of(v)
	from, to := dial.SunHours(p.Latitude)
	lines, err := dial.HourLines(p.Latitude, from, to, time.Duration(argStepMinutes.Of(v))*time.Minute)
	if err != nil {
		return result.Result{}, err
	}
	if to-from == 24*time.Hour { // round the clock, the line of 24 h is that of 0 h again
		lines = lines[:len(lines)-1]
	}
	gnomon, err := dial.GnomonOfStyle(p.Latitude, quantity.Millimetres(school.StockStyleMM.Of(v)))
	if err != nil {
		return result.Result{}, err
	}
	table := result.Table{
		Name:  "lines",
		Title: say.Line("dial-table.title", entry.Sided(p.Latitude.Degrees(), 1, "compass.north_of", "compass.south_of")),
		Columns: []result.Column{
			{Name: "sun_time", Unit: "h"}, {Name: "hour_angle", Unit: "deg"}, {Name: "line_angle", Unit: "deg"},
			{Name: "bearing", Unit: "deg"}, {Name: "clock_time"},
		},
	}
	for _, line := range lines {
		clock := say.None("sun-day.no_noon")
		if t, ok := clockAt(p, date, line.HourAngle); ok {
			clock = say.Clock(t)
		}
		table.Rows = append(table.Rows, result.Row{Marked: line.HourAngle == 0, Cells: []say.Value{
			sunTime(line.SunTime),
			say.Number(line.HourAngle.Degrees(), "deg", 0),
			say.Number(line.Angle.Degrees(), "deg", 1),
			say.Bearing(line.Bearing, 1),
			clock,
		}})
	}
	needle, warnings, err := needleFacts(p, date, dial.Level)
	if err != nil {
		return result.Result{}, err
	}
	hour := func(h float64) quantity.Angle { return dial.LineAt(p.Latitude, quantity.Hours(h)).Angle }
	pole := poleUp(p.Latitude)
	turns := say.Words("dial-table.clockwise")
	if p.Latitude < 0 {
		turns = say.Words("dial-table.anticlockwise")
	}
	r := result.Result{
		Facts: append([]result.Fact{
			{Name: "gnomon_angle", Value: say.Number(math.Abs(school.Latitude.Of(v)), "deg", 1)},
			{Name: "gnomon_base", Value: say.Number(gnomon.Base.Millimetres(), "mm", 0)},
			{Name: "gnomon_height", Value: say.Number(gnomon.Height.Millimetres(), "mm", 0)},
			{Name: "gnomon_style", Value: say.Number(gnomon.Style.Millimetres(), "mm", 0)},
			{Name: "noon_line", Value: pole},
			{Name: "turns", Value: turns},
			{Name: "first_hour", Value: say.Number(hour(1).Degrees(), "deg", 1)},
			{Name: "uneven", Value: say.Number((hour(6) - hour(5)).Degrees(), "deg", 1)},
			{Name: "first_distance", Value: say.None("dial-table.lines_meet")},
			{Name: "last_distance", Value: say.None("dial-table.lines_meet")},
		}, needle...),
		Tables:   []result.Table{shown(v, table)},
		Notes:    []say.Phrase{say.Line("dial-table.sides", pole, turns)},
		Warnings: warnings,
	}
	line := say.Number(hour(3).Degrees(), "deg", 1)
	sin := entry.Enough(line, func(x []float64) float64 { return quantity.Atan2(x[0], 1).Degrees() }, say.Number(math.Abs(p.Latitude.Sin()), "", 4))[0]
	angle := entry.Enough(sin, func(x []float64) float64 { return quantity.Degrees(x[0]).Sin() }, say.Number(math.Abs(p.Latitude.Degrees()), "deg", 2))[0]
	height, base := say.Number(gnomon.Height.Millimetres(), "mm", 0), say.Number(gnomon.Base.Millimetres(), "mm", 0)
	o := entry.Enough(height, func(x []float64) float64 { return x[0] * quantity.Degrees(x[1]).Sin() }, say.Number(gnomon.Style.Millimetres(), "mm", 0), say.Number(gnomon.Angle.Degrees(), "deg", 1))
	o = entry.Enough(base, func(x []float64) float64 { return x[0] * quantity.Degrees(x[1]).Cos() }, o[0], o[1])
	r.Working = []say.Phrase{
		say.Line("dial-table.working_line", angle, sin, sin, line),
		say.Line("dial-table.working_gnomon", o[0], o[1], height, base),
	}
	return withClockRule(v, r), nil
}

// sunTime prints a time of the Sun's day as a dial shows it.
func sunTime(d time.Duration) say.Value {
	clock := time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC).Add(d)
	return say.Number(d.Hours(), "h", 2).As("dial-table.sun_time", say.Clock(clock))
}

// clockAt returns the moment of the date at which the Sun has the hour angle,
// counted from the noon of that date. Sun time runs ahead of mean time by the
// equation of time, which changes by up to 30 s a day.
func clockAt(p place.Place, d place.Date, hourAngle quantity.Angle) (time.Time, bool) {
	noon, ok := entry.LocalNoon(p, d)
	if !ok {
		return time.Time{}, false
	}
	t := noon.Add(time.Duration(hourAngle.Hours() * float64(time.Hour)))
	drift := almanac.EquationOfTime(t) - almanac.EquationOfTime(noon)
	return t.Add(-drift), true
}

// needleFacts says how wrong a dial is that was laid by an uncorrected compass. The
// lines of a polar dial do not meet, so nothing is said of its face alone.
func needleFacts(p place.Place, d place.Date, built dial.Face) ([]result.Fact, []say.Phrase, error) {
	at := p.Clock(d, 12, 0)
	field, err := compass.At(p.Latitude, p.Longitude, p.Elevation, at)
	if err != nil {
		return nil, nil, err
	}
	var whole dial.Laid = dial.True(p.Latitude).Turned(field.Declination)
	if built == dial.Polar {
		turned := dial.PolarAt(p.Latitude)
		turned.Turn = field.Declination
		whole = turned
	}
	face := dial.True(p.Latitude).FaceTurned(field.Declination)
	sun := almanac.SunAt(at).Declination
	show := func(off time.Duration, ok bool) say.Value {
		if !ok {
			return say.None("dial-table.no_shadow")
		}
		key := "dial-table.fast"
		if off < 0 {
			key = "dial-table.slow"
		}
		return say.Minutes(off).As(key, say.Minutes(off.Abs()))
	}
	faceAlone := show(face.Off(p.Latitude, sun, 0))
	if built == dial.Polar {
		faceAlone = say.None("dial-table.not_alone")
	}
	return []result.Fact{
		{Name: "needle_noon", Value: show(whole.Off(p.Latitude, sun, 0))},
		{Name: "needle_most", Value: show(dial.MostOff(whole, p.Latitude))},
		{Name: "needle_face", Value: faceAlone},
	}, entry.CompassWarnings(field), nil
}
