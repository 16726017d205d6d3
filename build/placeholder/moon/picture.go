package moon

import (
	"noonbook/build/drawing"
	"noonbook/build/placeholder/entry"
	"noonbook/build/say"
	"noonbook/compute/place"
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
		Title:       say.Line("moon-month.calendar", say.Words(entry.MonthKey(first.Month)), entry.YearValue(first.Year)),
		Description: say.Line("moon-month.description"),
	}
	for i := range 7 {
		day := (i + starts) % 7
		name := [...]string{"weekday.0", "weekday.1", "weekday.2", "weekday.3", "weekday.4", "weekday.5", "weekday.6"}[day]
		short := [...]string{"weekday-short.0", "weekday-short.1", "weekday-short.2", "weekday-short.3", "weekday-short.4", "weekday-short.5", "weekday-short.6"}[day]
		cell := drawing.Place{At: drawing.Point{X: (float64(i) + 0.5) * cellWidth, Y: headHeight - 2.2}, Anchor: drawing.Middle, Fits: cellWidth}
		d.Offer("name", drawing.Keep, say.Words(name), cell, cell.Saying(say.Words(short)))
	}
	for week := range weeks + 1 {
		y := headHeight + float64(week)*cellHeight
		d.Line("grid", drawing.Point{Y: y}, drawing.Point{X: d.Width, Y: y})
	}
	for _, m := range moons {
		cell := before + m.date.Day - 1
		x, y := float64(cell%7)*cellWidth, headHeight+float64(cell/7)*cellHeight
		d.Offer("figure", drawing.Keep, say.Count(m.date.Day),
			drawing.Place{At: drawing.Point{X: x + 1.2, Y: y + 1.5}, Anchor: drawing.Start, Sits: drawing.Hanging},
			drawing.Place{At: drawing.Point{X: x + 0.5, Y: y + 0.7}, Anchor: drawing.Start, Sits: drawing.Hanging})
		centre := drawing.Point{X: x + cellWidth/2, Y: y + moonRadius + 2.5}
		if m.up {
			entry.DrawMoon(&d, centre, moonRadius, m.limb)
		} else {
			d.Disc("moon-down", centre, moonRadius)
		}
		if m.phase != nil {
			d.Label("phase", drawing.Point{X: x + cellWidth/2, Y: y + cellHeight - 2.2}, drawing.Middle, PhaseName(m.phase.Phase))
		}
	}
	return d
}
