package entry

import (
	"time"

	"noonbook/build/drawing"
	"noonbook/build/say"
	"noonbook/compute/place"
)

// Measures of drawings in millimetres.
const (
	PictureWidth = 180.0 // of a picture across the text
	ChartWidth   = 180.0
	ChartHeight  = 60.0
	CutMark      = 4.0 // the room for the marks beside cards
)

// YearFrame is where the axes of a chart of the year stand.
func YearFrame() drawing.Frame { return drawing.Frame{Left: 13, Top: 7, Right: 178, Bottom: 53} }

// yearAxis runs through the months; each is named in its middle.
func yearAxis(year int) drawing.Axis {
	first := place.Date{Year: year, Month: time.January, Day: 1}
	axis := drawing.Axis{To: float64(first.DaysUntil(place.Date{Year: year + 1, Month: time.January, Day: 1}))}
	for m := time.January; m <= time.December; m++ {
		begin := place.Date{Year: year, Month: m, Day: 1}
		axis.Ticks = append(axis.Ticks, drawing.Tick{At: float64(first.DaysUntil(begin))})
	}
	return axis
}

// YearChart is the frame of a chart of the year with its months.
func YearChart(d *drawing.Drawing, year int, y drawing.Axis) drawing.Chart {
	c := d.Chart(YearFrame(), yearAxis(year), y)
	for i, t := range c.X.Ticks {
		wide := c.At(drawing.Point{X: c.X.To / 12}).X - YearFrame().Left
		d.AcrossName("figure", drawing.Point{X: c.At(drawing.Point{X: t.At}).X + wide/2, Y: YearFrame().Bottom}, ShortMonth(time.January+time.Month(i)))
	}
	return c
}

// DayNumber counts days from the year's beginning to noon of the date.
func DayNumber(d place.Date) float64 {
	return float64(place.Date{Year: d.Year, Month: time.January, Day: 1}.DaysUntil(d)) + 0.5
}

// InDegrees names a tick of an axis of angles.
func InDegrees(x float64) say.Value { return say.Number(x, "deg", 0) }
