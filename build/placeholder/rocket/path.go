package rocket

import (
	"math"
	"slices"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/quantity"
	"noonbook/compute/rocket"
)

// What the entry takes.
const argTailWindMS form.Key[float64] = "tail_wind_m_s"

func rocketPath() entry.Entry {
	return entry.Entry{
		Name:    "rocket-path",
		Summary: "The way of a rocket through the air, with the way that it would take without air.",
		Arguments: append(form.Form{
			{Key: argAngle, Unit: "deg", Min: 1, Max: 90, Default: 75.0, Doc: "Angle of the pipe above level; 90 is straight up."},
			{Key: argTailWindMS, Unit: "m/s", Min: -15, Max: 15, Default: 0.0, Doc: "Wind that blows along with the rocket; negative is a head wind."},
			speedFrom,
		}, flightArguments...),
		Settings: slices.Concat(logSettings, flightSettings),
		Facts: []entry.Fact{
			{Name: "speed", Unit: "m/s", Doc: "launch speed"},
			{Name: "apogee", Unit: "m", Doc: "greatest height above the ground"},
			{Name: "reach", Unit: "m", Doc: "distance from the launcher to the landing"},
			{Name: "flight_time", Unit: "s", Doc: "time from launch to landing"},
			{Name: "impact_speed", Unit: "m/s", Doc: "speed at the landing"},
			{Name: "apogee_no_air", Unit: "m", Doc: "greatest height without air"},
			{Name: "reach_no_air", Unit: "m", Doc: "distance without air"},
			{Name: "lost", Unit: "percent", Doc: "part of the height that the air takes"},
			{Name: "air_density", Unit: "kg/m³", Doc: "density of the air at the school"},
		},
		Sources:  []string{sourceFlight, sourceDrag},
		Harmless: "A flight that is computed; launching is the work of rocket-zone.",
		Reckon:   reckonRocketPath,
	}
}

func reckonRocketPath(v form.Values) (result.Result, error) {
	r, l, air, err := flightOf(v)
	if err != nil {
		return result.Result{}, err
	}
	l.Elevation = quantity.Degrees(argAngle.Of(v))
	air.Along = rocket.Speed(argTailWindMS.Of(v))
	flight, err := rocket.Fly(r, l, air)
	if err != nil {
		return result.Result{}, err
	}
	free := rocket.NoAir(l)
	lost := 100 * float64(1-flight.Apogee.Up/free.Apogee.Up)
	table := result.Table{
		Name: "ways", Title: say.Line("rocket-path.title", speedOf(l.Speed), say.Degrees(l.Elevation, 0)),
		Columns: []result.Column{{Name: "way"}, {Name: "apogee", Unit: "m"}, {Name: "flight_time", Unit: "s"}, {Name: "reach", Unit: "m"}, {Name: "impact_speed", Unit: "m_s"}},
	}
	for _, way := range []struct {
		name   string
		flight rocket.Flight
	}{{"rocket-path.with_air", flight}, {"rocket-path.without_air", free}} {
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
			say.Words(way.name), say.Metres(way.flight.Apogee.Up, 1), say.Number(way.flight.Landing.Time.Seconds(), "s", 1),
			say.Metres(way.flight.Reach(), 1), speedOf(way.flight.Impact),
		}})
	}
	notes := []say.Phrase{say.Line("rocket-path.note", say.Number(r.Drag, "", 2), say.Number(r.Mass.Grams(), "g", 1))}
	if speed, err := launchSpeedOf(v); err == nil && speed.fromFlights() {
		notes = append(notes, speed.note())
	}
	picture := pathDrawing(l, flight, free)
	picture.Finding = say.Line("rocket-path.finding", say.Metres(flight.Apogee.Up, 1), say.Metres(free.Apogee.Up, 1))
	return result.Result{
		Facts: []result.Fact{
			{Name: "speed", Value: speedOf(l.Speed)},
			{Name: "apogee", Value: say.Metres(flight.Apogee.Up, 1)},
			{Name: "reach", Value: say.Metres(flight.Reach(), 1)},
			{Name: "flight_time", Value: say.Number(flight.Landing.Time.Seconds(), "s", 1)},
			{Name: "impact_speed", Value: speedOf(flight.Impact)},
			{Name: "apogee_no_air", Value: say.Metres(free.Apogee.Up, 1)},
			{Name: "reach_no_air", Value: say.Metres(free.Reach(), 1)},
			{Name: "lost", Value: say.Number(lost, "percent", 0)},
			{Name: "air_density", Value: say.Number(air.Density.KilogramsACubicMetre(), "kg_m3", 2)},
		},
		Tables:   []result.Table{table},
		Drawings: []drawing.Drawing{picture},
		Notes:    notes,
		Working: []say.Phrase{
			freeWorking(l, free),
			say.Line("rocket-path.working_air"),
		},
	}, nil
}

// pathDrawing has both ways on equal scales along and up.
func pathDrawing(l rocket.Launch, flight, free rocket.Flight) drawing.Drawing {
	left, right, top := 0.0, 0.0, free.Apogee.Up.Metres()
	airy := make([]drawing.Point, len(flight.Path))
	for i, p := range flight.Path {
		airy[i] = drawing.Point{X: p.Along.Metres(), Y: p.Up.Metres()}
		left, right, top = min(left, airy[i].X), max(right, airy[i].X), max(top, airy[i].Y)
	}
	empty := parabola(l, free)
	right = max(right, free.Landing.Along.Metres())
	step := drawing.Step(max(right-left, top), 10)
	left, right, top = step*math.Floor(left/step), step*math.Ceil(right/step+0.2), step*math.Ceil(top/step+0.2)

	const tall, wide = 100.0, 155.0
	scale := min(wide/(right-left), tall/top)
	frame := drawing.Frame{Left: 13, Top: 8}
	frame.Right, frame.Bottom = frame.Left+scale*(right-left), frame.Top+scale*top
	d := drawing.Drawing{
		Name: "chart rocket-path", Width: entry.ChartWidth, Height: frame.Bottom + 11,
		Title:       say.Line("rocket-path.chart", speedOf(l.Speed), say.Degrees(l.Elevation, 0)),
		Description: say.Line("rocket-path.description", say.Metres(flight.Apogee.Up, 1), say.Metres(free.Apogee.Up, 1)),
	}
	figure := func(x float64) say.Value { return say.Metres(quantity.Metres(x), 0) }
	c := d.Chart(frame,
		drawing.Axis{From: left, To: right, Ticks: drawing.Every(left, right, labelStep(step, right-left, scale), figure)},
		drawing.Axis{To: top, Ticks: drawing.Every(0, top, step, figure)})
	c.Curve("airless", empty...)
	c.Curve("curve", airy...)
	peak := drawing.Point{X: flight.Apogee.Along.Metres(), Y: flight.Apogee.Up.Metres()}
	c.Mark("sun", peak, 1.2)
	at := drawing.Point{X: frame.Right + 3, Y: frame.Top + 8}
	anchor := drawing.Start
	if frame.Right > entry.ChartWidth-45 {
		at.X, anchor = frame.Right-2, drawing.End
	}
	d.Label("air-name", at, anchor, say.Words("rocket-path.with_air"))
	d.Label("airless-name", drawing.Point{X: at.X, Y: at.Y + 5}, anchor, say.Words("rocket-path.without_air"))
	return d
}

// labelStep widens the steps along the ground until their figures have room.
func labelStep(step, span, scale float64) float64 {
	const room = 10.0 // mm for a figure with its unit
	for step*scale < room && step < span {
		step *= 2
	}
	return step
}

// parabola is the way without air.
func parabola(l rocket.Launch, free rocket.Flight) []drawing.Point {
	v := float64(l.Speed)
	u, w := v*l.Elevation.Cos(), v*l.Elevation.Sin()
	const parts = 60
	points := make([]drawing.Point, 0, parts+2)
	for i := range parts + 1 {
		t := free.Landing.Time.Seconds() * float64(i) / parts
		points = append(points, drawing.Point{X: u * t, Y: max(0, l.Height.Metres()+w*t-rocket.Gravity*t*t/2)})
	}
	return slices.Clip(points)
}

// freeWorking is the top of a flight without air: v² sin² ÷ 2g above the pipe's end.
func freeWorking(l rocket.Launch, free rocket.Flight) say.Phrase {
	top := say.Metres(free.Apogee.Up, 1)
	o := entry.Enough(top, func(x []float64) float64 { return x[0] + x[1]*x[1]/(2*x[2]) },
		say.Metres(l.Height, 1), speedOf(l.Speed*rocket.Speed(l.Elevation.Sin())), say.Number(rocket.Gravity, "m_s2", 2))
	u := entry.Enough(o[1], func(x []float64) float64 { return x[0] * quantity.Degrees(x[1]).Sin() }, speedOf(l.Speed), say.Degrees(l.Elevation, 0))
	return say.Line("rocket-path.working_free", u[0], u[1], o[1], o[0], top, o[2])
}
