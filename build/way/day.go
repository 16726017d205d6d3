package way

import (
	"math"

	"noonbook/build/drawing"
)

// The measures of the arc over the name of a part, in millimetres.
const (
	dayWidth  = 60.0
	dayHeight = 12.0
	daySun    = 2.2 // radius
)

// Day draws the Sun's way over a day with the Sun at a part of it, 0 at sunrise and 1 at
// sunset.
func Day(part float64) drawing.Drawing {
	d := drawing.Drawing{Name: "day-arc", Width: dayWidth, Height: dayHeight, Ornament: true}
	at := func(t float64) drawing.Point {
		return drawing.Point{X: t * dayWidth, Y: dayHeight - (dayHeight-daySun-.5)*math.Sin(math.Pi*t)}
	}
	var way []drawing.Point
	for i := range 31 {
		way = append(way, at(float64(i)/30))
	}
	d.Line("sun-path", way...)
	d.Disc("here", at(part), daySun)
	return d
}
