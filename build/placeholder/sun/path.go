package sun

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
	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

func sunPath() entry.Entry {
	return entry.Entry{
		Name:      "sun-path",
		Summary:   "The Sun's way across the sky on a day: how high and in which direction.",
		Arguments: form.Form{entry.OnDate()},
		Settings:  school.Where(),
		Facts: []entry.Fact{
			{Name: "rise", Doc: "sunrise by the school's clock"},
			{Name: "rise_direction", Doc: "where the Sun rises, in words"},
			{Name: "rise_bearing", Unit: "deg", Doc: "the same as a true bearing"},
			{Name: "noon", Doc: "when the Sun crosses the meridian"},
			{Name: "noon_direction", Doc: "where it then stands, in words"},
			{Name: "noon_altitude", Unit: "deg", Doc: "how high it then stands, as seen"},
			{Name: "set", Doc: "sunset by the school's clock"},
			{Name: "set_direction", Doc: "where the Sun sets, in words"},
			{Name: "set_bearing", Unit: "deg", Doc: "the same as a true bearing"},
		},
		Sources:  []string{entry.SourceSun, entry.SourceRise, entry.SourceRefraction, entry.SourceIANA},
		Cautions: []string{entry.CareSun},
		Reckon:   reckonSunPath,
	}
}

func reckonSunPath(v form.Values) (result.Result, error) {
	p, date := school.Place(v), entry.Date.Of(v)
	if err := entry.RangeOf(date); err != nil {
		return result.Result{}, err
	}
	day := entry.SunDay(p, date)
	r := result.Result{Facts: sunPathFacts(p, day)}
	table := result.Table{
		Name:  "hours",
		Title: say.Line("sun-path.title", say.Date(date)),
		Columns: []result.Column{
			{Name: "clock"}, {Name: "altitude", Unit: "deg"}, {Name: "bearing", Unit: "deg"}, {Name: "direction"},
		},
	}
	for _, t := range entry.WholeHours(day.From, day.To) {
		sun := almanac.SunFrom(p, t)
		if entry.AsSeen(sun.Altitude) > 0 {
			table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
				say.Clock(t), entry.AltitudeOf(sun), say.Bearing(sun.Azimuth, 0), entry.Toward(sun.Azimuth),
			}})
		}
	}
	noon, _ := r.Fact("noon_altitude")
	r.Notes = belowAtNoon(noon)
	if len(table.Rows) == 0 {
		r.Warnings = []say.Phrase{say.Line("sun-path.no_sun", say.Date(date))}
		return r, nil
	}
	r.Tables = []result.Table{table}
	r.Drawings = []drawing.Drawing{pathChart(p, date, day)}
	if noon.Kind == say.Quantity && noon.Number > 0 {
		at, _ := r.Fact("noon")
		direction, _ := r.Fact("noon_direction")
		r.Drawings[0].Finding = say.Line("sun-path.finding", at, noon, direction)
	}
	r.Notes = append(r.Notes, say.Line("sky.fist"))
	return r, nil
}

func sunPathFacts(p place.Place, day almanac.Day) []result.Fact {
	spot := func(times []time.Time) (direction, bearing say.Value) {
		if len(times) == 0 {
			return say.None("sky.nowhere"), say.None("sky.nowhere")
		}
		var directions, bearings []say.Value
		for _, t := range times {
			at := almanac.SunFrom(p, t).Azimuth
			directions, bearings = append(directions, entry.Toward(at)), append(bearings, say.Bearing(at, 0))
		}
		directions = slices.CompactFunc(directions, func(a, b say.Value) bool { return a.Phrase.Key == b.Phrase.Key })
		return entry.Both(directions), entry.Both(bearings)
	}
	riseDirection, riseBearing := spot(day.Rises)
	noonDirection, _ := spot(day.Transits[:min(1, len(day.Transits))])
	setDirection, setBearing := spot(day.Sets)
	noon, altitude := say.None("sun-day.no_noon"), say.None("sun-day.no_noon")
	if len(day.Transits) > 0 {
		noon, altitude = say.Clock(day.Transits[0]), entry.AltitudeOf(almanac.SunFrom(p, day.Transits[0]))
	}
	return []result.Fact{
		{Name: "rise", Value: entry.TimesOr(day.Rises, day.State, "sun-day.no_rise")},
		{Name: "rise_direction", Value: riseDirection},
		{Name: "rise_bearing", Value: riseBearing},
		{Name: "noon", Value: noon},
		{Name: "noon_direction", Value: noonDirection},
		{Name: "noon_altitude", Value: altitude},
		{Name: "set", Value: entry.TimesOr(day.Sets, day.State, "sun-day.no_set")},
		{Name: "set_direction", Value: setDirection},
		{Name: "set_bearing", Value: setBearing},
	}
}

// pathChart shows the sky as somebody sees it who faces the Sun at noon: bearing
// from left to right, which is from east to west in the north and from west to
// east in the south, and altitude upwards.
func pathChart(p place.Place, date place.Date, day almanac.Day) drawing.Drawing {
	middle := 180.0 // of the bearings
	if p.Latitude < 0 {
		middle = 0
	}
	if len(day.Transits) > 0 { // in the tropics either side
		middle = 90 - math.Copysign(90, almanac.SunFrom(p, day.Transits[0]).Azimuth.Cos())
	}
	// toX brings a bearing within half a turn of the middle.
	toX := func(a quantity.Angle) float64 { return (a - quantity.Degrees(middle)).Signed().Degrees() }

	const step = 10 * time.Minute
	var path []drawing.Point
	var runs [][]drawing.Point
	highest := 0.0
	for t := day.From; !t.After(day.To); t = t.Add(step) {
		sun := almanac.SunFrom(p, t)
		now := drawing.Point{X: toX(sun.Azimuth), Y: entry.AsSeen(sun.Altitude).Degrees()}
		between := toX(almanac.SunFrom(p, t.Add(-step/2)).Azimuth)
		if n := len(path); n > 0 && math.Abs(now.X-path[n-1].X) > 180 && math.Abs(between) > 90 { // round the back
			runs, path = append(runs, path), nil
		}
		path = append(path, now)
		highest = max(highest, now.Y)
	}
	runs = append(runs, path)

	d := drawing.Drawing{
		Name: "chart", Width: entry.ChartWidth, Height: 82,
		Title:       say.Line("sun-path.chart", say.Date(date)),
		Description: say.Line("sun-path.description"),
	}
	x := drawing.Axis{From: -180, To: 180}
	for _, corner := range []float64{-180, -135, -90, -45, 0, 45, 90, 135, 180} {
		x.Ticks = append(x.Ticks, drawing.Tick{At: corner, Label: entry.Toward(quantity.Degrees(middle + corner))})
	}
	top := min(90, 10*math.Ceil((highest+4)/10))
	c := d.Chart(drawing.Frame{Left: 13, Top: 7, Right: 172, Bottom: 75}, x,
		drawing.Axis{To: top, Ticks: drawing.Every(0, top, 10, entry.InDegrees), Title: say.Words("sun-path.axis")})
	for _, run := range runs {
		c.Curve("curve", run...)
	}
	on := func(t time.Time) drawing.Point {
		sun := almanac.SunFrom(p, t)
		return drawing.Point{X: toX(sun.Azimuth), Y: entry.AsSeen(sun.Altitude).Degrees()}
	}
	for _, t := range entry.WholeHours(day.From, day.To) {
		now := on(t)
		here, soon := c.At(now), c.At(on(t.Add(time.Minute)))
		shift, anchor := drawing.Point{Y: -2.4}, drawing.Middle
		if math.Abs(soon.Y-here.Y) > math.Abs(soon.X-here.X) { // steep: the hour stands outside the curve
			shift, anchor = drawing.Point{X: 2.2, Y: 0.6}, drawing.Start
			if now.X < 0 {
				shift, anchor = drawing.Point{X: -2.2, Y: 0.6}, drawing.End
			}
		}
		c.Mark("sun", now, 1.3)
		c.Note("hour", now, shift, anchor, say.HourOnFace(t.Hour())) // the direction tells morning from afternoon
	}
	return d
}
