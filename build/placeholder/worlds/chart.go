package worlds

import (
	"math"

	"noonbook/build/drawing"
	"noonbook/build/placeholder/entry"
	"noonbook/build/say"
	"noonbook/compute/world"
)

// A beside is where the name of a world stands from its mark, so that neighbours
// do not lie on each other.
type beside struct {
	shift  drawing.Point
	anchor drawing.Anchor
}

func roleOf(w world.World) string { return "is-" + string(w.Kind) }

// densityChart puts the worlds by size, on a logarithm, and density; a dashed line
// is water.
func densityChart() drawing.Drawing {
	d := drawing.Drawing{
		Name: "chart worlds-chart", Width: entry.ChartWidth, Height: 88,
		Title: say.Line("world-compare.density_chart"), Description: say.Line("world-compare.chart_description"),
	}
	x := drawing.Axis{From: 0.3, To: 5.5, Title: say.Words("world-compare.axis_diameter")}
	for _, km := range []float64{10, 100, 1000, 10000, 100000} {
		label := say.Number(km, "km", 0)
		label.Metric = true // round numbers on an axis
		x.Ticks = append(x.Ticks, drawing.Tick{At: math.Log10(km), Label: label})
	}
	y := drawing.Axis{To: 6, Title: say.Words("world-compare.axis_density"), Ticks: drawing.Every(0, 6, 1, func(x float64) say.Value { return say.Number(x, "", 0) })}
	c := d.Chart(drawing.Frame{Left: 12, Top: 8, Right: 174, Bottom: 76}, x, y)
	c.Curve("rule", drawing.Point{X: x.From, Y: 1}, drawing.Point{X: x.To, Y: 1})
	c.Note("name", drawing.Point{X: x.From, Y: 1}, drawing.Point{X: 2, Y: -1.2}, drawing.Start, say.Words("world-compare.water"))
	places := map[string]beside{
		"earth": {drawing.Point{X: 2.2, Y: 0}, drawing.Start}, "venus": {drawing.Point{X: 2.2, Y: 2.4}, drawing.Start}, "mercury": {drawing.Point{X: -2.2, Y: 1.1}, drawing.End},
		"uranus": {drawing.Point{X: -3, Y: 1.1}, drawing.End}, "neptune": {drawing.Point{X: -3, Y: 1.1}, drawing.End},
		"jupiter": {drawing.Point{X: 0, Y: -3}, drawing.Middle}, "saturn": {drawing.Point{X: 0, Y: 5.4}, drawing.Middle},
	}
	for _, w := range world.All() {
		markWorld(c, w, drawing.Point{X: math.Log10(w.Diameter().Kilometres()), Y: w.Density() / 1000}, places)
	}
	return d
}

// massChart puts the worlds by mass and size, both in Earths and on logarithms;
// worlds of one density lie on one line. The comet would need an axis twice as long.
func massChart() drawing.Drawing {
	d := drawing.Drawing{
		Name: "chart worlds-chart", Width: entry.ChartWidth, Height: 96,
		Title: say.Line("world-compare.mass_chart"), Description: say.Line("world-compare.chart_description"),
	}
	earths := func(from, to int) []drawing.Tick {
		var ticks []drawing.Tick
		for e := from; e <= to; e++ {
			ticks = append(ticks, drawing.Tick{At: float64(e), Label: say.Number(math.Pow10(e), "", max(0, -e))})
		}
		return ticks
	}
	x := drawing.Axis{From: -4.2, To: 3, Ticks: earths(-4, 3), Title: say.Words("world-compare.axis_mass")}
	y := drawing.Axis{From: -1.3, To: 1.3, Ticks: earths(-1, 1), Title: say.Words("world-compare.axis_radius")}
	c := d.Chart(drawing.Frame{Left: 12, Top: 8, Right: 174, Bottom: 84}, x, y)
	// The radius grows as the cube root of mass over density.
	water := math.Log10(1000 / earth().Density())
	for _, density := range []float64{0, water} {
		c.Curve("rule", drawing.Point{X: x.From, Y: (x.From - density) / 3}, drawing.Point{X: x.To, Y: (x.To - density) / 3})
	}
	c.Note("name", drawing.Point{X: 0.6, Y: 0.2}, drawing.Point{X: 3, Y: 3.5}, drawing.Start, say.Words("world-compare.as_earth"))
	c.Note("name", drawing.Point{X: 0.4, Y: (0.4 - water) / 3}, drawing.Point{X: -1, Y: -2}, drawing.End, say.Words("world-compare.as_water"))
	places := map[string]beside{
		"venus": {drawing.Point{X: -2.2, Y: -0.6}, drawing.End}, "earth": {drawing.Point{X: 2.2, Y: 2}, drawing.Start},
		"uranus": {drawing.Point{X: -3, Y: -0.4}, drawing.End}, "neptune": {drawing.Point{X: 3, Y: 1.8}, drawing.Start},
		"saturn": {drawing.Point{X: -3, Y: -0.4}, drawing.End}, "jupiter": {drawing.Point{X: -3, Y: -1}, drawing.End},
	}
	for _, w := range world.All() {
		if w.Kind != world.Comet {
			markWorld(c, w, drawing.Point{X: math.Log10(w.Mass() / earth().Mass()), Y: math.Log10(float64(w.Radius / earth().Radius))}, places)
		}
	}
	return d
}

func markWorld(c drawing.Chart, w world.World, at drawing.Point, places map[string]beside) {
	b, ok := places[w.Name]
	if !ok {
		b = beside{drawing.Point{X: 2.2, Y: 1.1}, drawing.Start}
	}
	radius := 1.4
	if w.Kind == world.Giant { // told apart without colour
		radius = 2
	}
	c.Mark(roleOf(w), at, radius)
	c.Note("figure", at, b.shift, b.anchor, worldName(w))
}
