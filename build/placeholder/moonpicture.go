package placeholder

import (
	"noonbook/build/drawing"
	"noonbook/build/say"
	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// Measures of the calendar of Moons in millimetres.
const (
	cellWidth  = 25.0
	cellHeight = 24.0
	headHeight = 7.0
	moonRadius = 7.0
)

// moonCalendar draws a month with a Moon a day.
func moonCalendar(first place.Date, moons []moonDate, sundayFirst bool) drawing.Drawing {
	starts := 1 // Monday
	if sundayFirst {
		starts = 0
	}
	before := (int(first.Weekday()) - starts + 7) % 7 // empty cells of the first week
	last := moons[len(moons)-1].date.Day
	weeks := (before + last + 6) / 7
	d := drawing.Drawing{
		Name: "moons", Width: 7 * cellWidth, Height: headHeight + float64(weeks)*cellHeight,
		Title:       say.Line("moon-month.calendar", say.Words(monthKey(first.Month)), yearValue(first.Year)),
		Description: say.Line("moon-month.description"),
	}
	for i := range 7 {
		day := [...]string{"weekday.0", "weekday.1", "weekday.2", "weekday.3", "weekday.4", "weekday.5", "weekday.6"}[(i+starts)%7]
		d.Label("name", drawing.Point{X: (float64(i) + 0.5) * cellWidth, Y: headHeight - 2.2}, drawing.Middle, say.Words(day))
	}
	for week := range weeks + 1 {
		y := headHeight + float64(week)*cellHeight
		d.Line("grid", drawing.Point{Y: y}, drawing.Point{X: d.Width, Y: y})
	}
	for _, m := range moons {
		cell := before + m.date.Day - 1
		x, y := float64(cell%7)*cellWidth, headHeight+float64(cell/7)*cellHeight
		d.Label("figure", drawing.Point{X: x + 1.2, Y: y + 4}, drawing.Start, say.Count(m.date.Day))
		centre := drawing.Point{X: x + cellWidth/2, Y: y + moonRadius + 2.5}
		if m.up {
			drawMoon(&d, centre, moonRadius, m.limb)
		} else {
			d.Disc("absent", centre, moonRadius)
		}
		if m.phase != nil {
			d.Label("phase", drawing.Point{X: x + cellWidth/2, Y: y + cellHeight - 2.2}, drawing.Middle, phaseName(m.phase.Phase))
		}
	}
	return d
}

// drawMoon draws a disc with its lit part, turned as it is seen. The lit part
// lies between half the limb and the terminator, half an ellipse whose short
// half-axis is (1 − 2k) of the radius, k the lit fraction: Meeus, Astronomical
// Algorithms, 2nd ed. 1998, chapter 41.
func drawMoon(d *drawing.Drawing, centre drawing.Point, radius float64, limb almanac.Limb) {
	d.Disc("night", centre, radius)
	// toward is the direction of the lit limb on the drawing, across the one at
	// right angles; the drawing's y runs down.
	toward := drawing.Point{X: limb.Lean.Sin(), Y: -limb.Lean.Cos()}
	across := drawing.Point{X: limb.Lean.Cos(), Y: limb.Lean.Sin()}
	at := func(u, v float64) drawing.Point {
		return drawing.Point{
			X: centre.X + radius*(u*toward.X+v*across.X),
			Y: centre.Y + radius*(u*toward.Y+v*across.Y),
		}
	}
	const steps = 16
	var edge []drawing.Point
	for i := range steps + 1 {
		a := quantity.Turn/2*quantity.Angle(i)/steps - quantity.Turn/4
		edge = append(edge, at(a.Cos(), a.Sin()))
	}
	short := 1 - 2*limb.Lit
	for i := 1; i < steps; i++ {
		a := quantity.Turn/4 - quantity.Turn/2*quantity.Angle(i)/steps
		edge = append(edge, at(short*a.Cos(), a.Sin()))
	}
	d.Area("lit", edge...)
}
