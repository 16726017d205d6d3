package way

import (
	"noonbook/build/drawing"
	"noonbook/build/say"
	"noonbook/build/typeset"
)

// The arc's measures in millimetres.
const (
	arcWidth  = 240.0
	arcHeight = 29.0
	arcMargin = 10.0 // from the edge to the first stop
	arcGround = 24.0 // the horizon
	arcLow    = 3.0  // how high the Sun stands at the first and the last stop
	arcRise   = 15.0 // how much higher it stands halfway
	arcStick  = 4.0
)

// arcAt returns the Sun's place on the arc, t from 0 in the morning to 1 in the
// evening.
func arcAt(t float64) drawing.Point {
	return drawing.Point{X: arcMargin + t*(arcWidth-2*arcMargin), Y: arcGround - arcLow - arcRise*4*t*(1-t)}
}

// Arc draws the unit as the Sun's way over the day. The Sun stands at the page's
// own place, and a stick at noon casts its shadow. The list of pages below it
// says the same in words.
func Arc(stops []typeset.Link) drawing.Drawing {
	d := drawing.Drawing{Name: "arc", Width: arcWidth, Height: arcHeight, Ornament: true}
	d.Line("ground", drawing.Point{Y: arcGround}, drawing.Point{X: arcWidth, Y: arcGround})
	var way []drawing.Point
	for i := range 41 {
		way = append(way, arcAt(float64(i)/40))
	}
	d.Line("sun-path", way...)
	for i, stop := range stops {
		t := 0.5
		if len(stops) > 1 {
			t = float64(i) / float64(len(stops)-1)
		}
		at, mark := arcAt(t), len(d.Shapes)
		if stop.Here {
			arcShadow(&d, at)
			d.Disc("here", at, 3.3)
			d.Label("here-number", drawing.Point{X: at.X, Y: at.Y + 1.1}, drawing.Middle, say.Text(stop.Number))
			continue
		}
		d.Disc("touch-area", at, 4)
		d.Disc("other-page", at, 1.2)
		d.Label("number", drawing.Point{X: at.X, Y: at.Y - 2.4}, drawing.Middle, say.Text(stop.Number))
		name, anchor := drawing.Point{X: at.X, Y: arcGround + 4}, drawing.Middle
		if t < 0.25 {
			name.X, anchor = 0, drawing.Start
		} else if t > 0.75 {
			name.X, anchor = arcWidth, drawing.End
		}
		d.Label("name", name, anchor, say.Text(stop.Title))
		d.Link(mark, stop.File)
	}
	d.Line("gnomon", drawing.Point{X: arcWidth / 2, Y: arcGround}, drawing.Point{X: arcWidth / 2, Y: arcGround - arcStick})
	return d
}

// arcShadow draws the shadow of the stick on the ground with the Sun at a place
// of the arc: where the straight line from the Sun over the stick's tip meets
// the ground, or beyond the edge when the Sun stands lower than the tip.
func arcShadow(d *drawing.Drawing, sun drawing.Point) {
	foot := drawing.Point{X: arcWidth / 2, Y: arcGround}
	tip := drawing.Point{X: arcWidth, Y: arcGround}
	if sun.X > foot.X {
		tip.X = 0
	}
	if above := arcGround - sun.Y - arcStick; above > 0 {
		tip.X = max(0, min(arcWidth, foot.X+(foot.X-sun.X)*arcStick/above))
		d.Line("ray", sun, drawing.Point{X: foot.X, Y: arcGround - arcStick}, tip)
	}
	d.Line("shadow", foot, tip)
}
