package sun

import (
	"math"

	"noonbook/build/drawing"
	"noonbook/build/placeholder/entry"
	"noonbook/build/say"
	"noonbook/compute/almanac"
	"noonbook/compute/place"
)

// ballAngles are the places of the ball round the lamp, seen from above the north
// end, anticlockwise from the wall: it stands there in December, when the axis,
// which always leans to the wall, leans away from the lamp.
var ballAngles = [4]float64{90, 180, 270, 0} // in the order of almanac.Season

// lampPlan draws lamp, ball and wall from above.
func lampPlan() drawing.Drawing {
	d := drawing.Drawing{
		Name: "lamp", Width: 160, Height: 112,
		Title: say.Line("season-model.plan"), Description: say.Line("season-model.plan_description"),
	}
	const ring, radius = 38.0, 8.0
	lamp := drawing.Point{X: 70, Y: 55}
	var way []drawing.Point
	for i := range 73 {
		a := float64(i) * 5 * math.Pi / 180
		way = append(way, drawing.Point{X: lamp.X + ring*math.Cos(a), Y: lamp.Y - ring*math.Sin(a)})
	}
	d.Line("orbit", way...)
	wall := drawing.Point{X: 150, Y: 8}
	d.Line("wall", wall, drawing.Point{X: wall.X, Y: 102})
	d.Shapes = append(d.Shapes, drawing.Shape{Role: "name", Points: []drawing.Point{{X: wall.X + 5, Y: 55}}, Anchor: drawing.Middle, Writing: &drawing.Writing{Turn: 90, Text: say.Words("season-model.wall")}})
	d.Disc("sun", lamp, 5)
	d.Label("name", drawing.Point{X: lamp.X, Y: lamp.Y + 10}, drawing.Middle, say.Words("season-model.lamp"))
	for i, degrees := range ballAngles {
		a := degrees * math.Pi / 180
		at := drawing.Point{X: lamp.X + ring*math.Cos(a), Y: lamp.Y - ring*math.Sin(a)}
		ballAbove(&d, at, radius, a)
		d.Label("season-name", drawing.Point{X: at.X, Y: at.Y + radius + 4.5}, drawing.Middle, entry.TurnName(almanac.Season(i)))
	}
	for _, degrees := range []float64{45, 135, 225, 315} {
		arrowHead(&d, lamp, ring, degrees*math.Pi/180)
	}
	return d
}

// ballAbove draws the ball from above its north end: the half away from the lamp is
// dark, and the north end lies toward the wall, on the right.
func ballAbove(d *drawing.Drawing, at drawing.Point, radius, angle float64) {
	d.Disc("lit", at, radius)
	var dark []drawing.Point
	for i := range 25 {
		a := angle - math.Pi/2 + math.Pi*float64(i)/24
		dark = append(dark, drawing.Point{X: at.X + radius*math.Cos(a), Y: at.Y - radius*math.Sin(a)})
	}
	d.Area("dark", dark...)
	d.Disc("rim", at, radius)
	end := drawing.Point{X: at.X + radius*math.Sin(entry.Tropic*math.Pi/180), Y: at.Y}
	d.Line("rod", at, drawing.Point{X: end.X + 2.5, Y: end.Y})
	d.Disc("rod-end", drawing.Point{X: end.X + 2.5, Y: end.Y}, 0.9)
}

func arrowHead(d *drawing.Drawing, centre drawing.Point, ring, angle float64) {
	on := func(r, a float64) drawing.Point {
		return drawing.Point{X: centre.X + r*math.Cos(a), Y: centre.Y - r*math.Sin(a)}
	}
	d.Area("head", on(ring, angle+0.12), on(ring-1.6, angle-0.01), on(ring+1.6, angle-0.01))
}

// lampSide draws the two solstices from the side: ball, axis, and the latitude with
// its lit and dark part.
func lampSide(p place.Place, stations [4]station) drawing.Drawing {
	d := drawing.Drawing{
		Name: "lamp", Width: 180, Height: 92,
		Title: say.Line("season-model.side"), Description: say.Line("season-model.side_description"),
	}
	lamp := drawing.Point{X: 90, Y: 42}
	d.Disc("sun", lamp, 6)
	d.Label("name", drawing.Point{X: lamp.X, Y: lamp.Y + 12}, drawing.Middle, say.Words("season-model.lamp"))
	for _, side := range []struct {
		season almanac.Season
		x      float64
		toward float64 // where the lamp is: 1 to the right, −1 to the left
	}{{almanac.JuneSolstice, 36, 1}, {almanac.DecemberSolstice, 144, -1}} {
		at := drawing.Point{X: side.x, Y: lamp.Y}
		s := stations[side.season]
		for _, k := range []float64{-0.6, 0, 0.6} {
			d.Line("ray", drawing.Point{X: lamp.X - side.toward*8, Y: lamp.Y + 8*k}, drawing.Point{X: at.X + side.toward*ballRadius*1.08, Y: at.Y + ballRadius*k})
		}
		ballAside(&d, at, side.toward, p)
		d.Label("season-name", drawing.Point{X: at.X, Y: 81}, drawing.Middle, entry.TurnName(side.season))
		d.Label("name", drawing.Point{X: at.X, Y: 86}, drawing.Middle, say.Words("season-model.day_and_noon", say.Minutes(s.sun.up), s.noon()))
	}
	return d
}

const ballRadius = 27.0

// ballAside draws the ball from the side, its axis leaning to the right. A circle of
// latitude is a straight line square to the axis, and the edge of day is upright
// through the middle.
func ballAside(d *drawing.Drawing, at drawing.Point, toward float64, p place.Place) {
	sin, cos := math.Sincos(entry.Tropic * math.Pi / 180)
	// along is the way up the axis, across square to it; the drawing's y runs down.
	on := func(along, across float64) drawing.Point {
		return drawing.Point{X: at.X + ballRadius*(along*sin+across*cos), Y: at.Y - ballRadius*(along*cos-across*sin)}
	}
	d.Disc("lit", at, ballRadius)
	var dark []drawing.Point
	for i := range 37 {
		a := math.Pi/2 + math.Pi*float64(i)/36 // the left half
		dark = append(dark, drawing.Point{X: at.X + toward*ballRadius*math.Cos(a), Y: at.Y - ballRadius*math.Sin(a)})
	}
	d.Area("dark", dark...)
	d.Disc("rim", at, ballRadius)
	d.Line("rod", on(1, 0), on(1.22, 0))
	d.Line("rod", on(-1, 0), on(-1.22, 0))
	d.Label("name", on(1.32, 0.06), drawing.Middle, say.Words("season-model.north_end"))
	d.Line("equator", on(0, -1), on(0, 1))
	high, wide := p.Latitude.Sin(), p.Latitude.Cos()
	// Where the circle meets the edge of day: the point whose x is the ball's middle.
	edge := max(-wide, min(wide, -high*sin/cos))
	bright, shaded := [2]float64{edge, wide}, [2]float64{-wide, edge}
	if toward < 0 {
		bright, shaded = [2]float64{-wide, edge}, [2]float64{edge, wide}
	}
	if bright[1]-bright[0] > 1e-6 {
		d.Line("day", on(high, bright[0]), on(high, bright[1]))
	}
	if shaded[1]-shaded[0] > 1e-6 {
		d.Line("night", on(high, shaded[0]), on(high, shaded[1]))
	}
	d.Disc("here", on(high, toward*wide), 1.5)
}
