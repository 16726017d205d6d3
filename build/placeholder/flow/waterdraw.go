package flow

import (
	"math"
	"time"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/quantity"
)

// Measures of the picture of the bottle, in millimetres of the paper; what is below the hole
// and above the start is in millimetres of the bottle.
const (
	bottleHigh  = 84.0 // the bottle, at most
	bottleWide  = 56.0
	bottleLeft  = 34.0 // room for the heights
	bottleRight = 66.0 // room for the jets
	bottleEdge  = 6.0
	footBelow   = 25.0 // mm of the bottle
	neckAbove   = 45.0
)

func (c clock) drawings() []drawing.Drawing {
	return []drawing.Drawing{c.bottle(), c.chart()}
}

// bottle draws the bottle to scale, with its marks, the water at the start, and the jet at
// the start and at the last mark: it falls y below the hole at the distance 2 √(h y).
func (c clock) bottle() drawing.Drawing {
	start, last, width := c.run.From.Millimetres(), c.run.To.Millimetres(), c.vessel.Width.Millimetres()
	scale := min(0.6, bottleHigh/(start+footBelow+neckAbove), bottleWide/width, bottleRight/(2.2*math.Sqrt(start*footBelow)))
	left, right := bottleLeft, bottleLeft+width*scale
	foot := bottleEdge + (start+footBelow+neckAbove)*scale
	at := func(height float64) float64 { return foot - (height+footBelow)*scale }
	d := drawing.Drawing{
		Name: "water-clock", Width: right + bottleRight, Height: foot + bottleEdge,
		Title:       say.Line("water-clock.picture"),
		Description: say.Line("water-clock.picture_description", whole(c.run.From), whole(c.run.To), say.Count(len(c.marks)-1)),
	}
	neck := min(14.0, width*0.4) * scale
	middle := (left + right) / 2
	shoulder := at(start + 15)
	d.Area("shade", drawing.Point{X: left, Y: at(start)}, drawing.Point{X: right, Y: at(start)}, drawing.Point{X: right, Y: foot}, drawing.Point{X: left, Y: foot})
	d.Line("ink", drawing.Point{X: middle - neck, Y: bottleEdge}, drawing.Point{X: middle - neck, Y: (bottleEdge + shoulder) / 2}, drawing.Point{X: left, Y: shoulder},
		drawing.Point{X: left, Y: foot}, drawing.Point{X: right, Y: foot}, drawing.Point{X: right, Y: at(0) + 0.8})
	d.Line("ink", drawing.Point{X: right, Y: at(0) - 0.8}, drawing.Point{X: right, Y: shoulder}, drawing.Point{X: middle + neck, Y: (bottleEdge + shoulder) / 2}, drawing.Point{X: middle + neck, Y: bottleEdge})
	for _, head := range []float64{start, last} {
		var jet []drawing.Point
		for i := range 13 {
			fall := footBelow * float64(i*i) / 144
			jet = append(jet, drawing.Point{X: right + 2*math.Sqrt(head*fall)*scale, Y: at(-fall)})
		}
		d.Line("accent jet", jet...)
	}
	d.Line("thin", drawing.Point{X: 2, Y: foot}, drawing.Point{X: left, Y: foot})
	for i, m := range c.marks {
		y, rank := at(m.Height.Millimetres()), 1+i%2
		if i == 0 || i == len(c.marks)-1 {
			rank = drawing.Keep
		}
		d.Line("ink mark", drawing.Point{X: right - 7*scale/0.4, Y: y}, drawing.Point{X: right, Y: y})
		d.Offer("figure", rank, minutes(m.After), drawing.Place{At: drawing.Point{X: right + 1.6, Y: y}, Anchor: drawing.Start, Sits: drawing.Centred})
		d.Offer("name", rank, whole(m.Height), drawing.Place{At: drawing.Point{X: left - 1.6, Y: y}, Anchor: drawing.End, Sits: drawing.Centred})
	}
	d.Offer("name", drawing.Keep, say.Words("water-clock.hole"), drawing.Place{At: drawing.Point{X: right + 1.6, Y: at(0) - 1.6}, Anchor: drawing.Start},
		drawing.Place{At: drawing.Point{X: left - 1.6, Y: at(0)}, Anchor: drawing.End, Sits: drawing.Centred})
	return d
}

// curveSteps is in how many pieces the curve is drawn.
const curveSteps = 40

// chart draws the level against the time, and beside it the straight line of a clock whose
// marks are evenly spaced.
func (c clock) chart() drawing.Drawing {
	fast, at := c.run.Even()
	d := drawing.Drawing{
		Name: "chart", Width: entry.ChartWidth, Height: entry.ChartHeight,
		Title:       say.Line("water-clock.chart"),
		Description: say.Line("water-clock.chart_description", whole(c.run.From), whole(c.run.To), say.Seconds(c.run.Lasts)),
		Finding:     say.Line("water-clock.finding", say.Seconds(fast), whole(at)),
	}
	end, top := c.run.Lasts.Minutes(), c.run.From.Millimetres()
	across, up := drawing.Step(end, 8), drawing.Step(top, 5)
	chart := d.Chart(drawing.Frame{Left: 26, Top: 7, Right: 178, Bottom: 53},
		drawing.Axis{To: math.Ceil(end/across) * across, Ticks: drawing.Every(0, math.Ceil(end/across)*across, across, inMinutes)},
		drawing.Axis{To: math.Ceil(top/up) * up, Ticks: drawing.Every(0, math.Ceil(top/up)*up, up, inMillimetres), Title: say.Words("water-clock.chart_axis")})
	var curve []drawing.Point
	for i := range curveSteps + 1 {
		t := c.run.Lasts * time.Duration(i) / curveSteps
		curve = append(curve, drawing.Point{X: t.Minutes(), Y: c.run.Height(t).Millimetres()})
	}
	chart.Curve("rule", curve[0], curve[len(curve)-1])
	chart.Curve("curve", curve...)
	return d
}

func inMinutes(x float64) say.Value     { return say.Number(x, "min", tenthsOf(x)) }
func inMillimetres(x float64) say.Value { return whole(quantity.Millimetres(x)) }

// Measures of a strip of marks, in millimetres. It lies on the paper with the start to the
// left, and is stuck on the bottle with the start on top.
const (
	stripWide   = 30.0
	stripGap    = 3.0
	stripBefore = 8.0 // above the start
	stripAfter  = 9.0 // below the hole
	stripTick   = 11.0
	stripFigure = 18.5 // middle of the figures, across the strip
	stripClear  = 4.2  // from figure to figure
)

// stripPaper is the paper on its long side, on which each strip goes in one piece.
func stripPaper(v form.Values) drawing.Paper {
	return drawing.PaperOf(school.Paper.Of(v)).Across()
}

// markStrips returns as many strips as a sheet holds, and how many those are.
func markStrips(v form.Values, c clock) (drawing.Drawing, int) {
	return stripPaper(v).Repeated(c.strip(), stripGap)
}

func markStripsOn(v form.Values) int {
	_, n := stripPaper(v).Repeated(drawing.Drawing{Width: stripBefore + argFillMM.Of(v) + stripAfter, Height: stripWide}, stripGap)
	return n
}

// strip draws one strip of marks at true size.
func (c clock) strip() drawing.Drawing {
	start := c.run.From.Millimetres()
	d := drawing.Drawing{
		Name: "water-strip", Width: stripBefore + start + stripAfter, Height: stripWide,
		Title:       say.Line("water-clock.strip"),
		Description: say.Line("water-clock.strip_description", whole(c.run.From), say.Count(len(c.marks)-1), minutes(c.step)),
	}
	const edge = 0.3 // half the line's width, so that the paper's area holds all of it
	d.Area("cut", drawing.Point{X: edge, Y: edge}, drawing.Point{X: d.Width - edge, Y: edge}, drawing.Point{X: d.Width - edge, Y: stripWide - edge}, drawing.Point{X: edge, Y: stripWide - edge})
	down := func(height float64) float64 { return stripBefore + start - height }
	clear := math.Inf(-1)
	for i, m := range c.marks {
		x := down(m.Height.Millimetres())
		d.Line("tick ten mark", drawing.Point{X: x}, drawing.Point{X: x, Y: stripTick})
		if x-clear < stripClear {
			continue
		}
		text := minutes(m.After)
		if i == 0 {
			text = say.Words("water-clock.start")
		}
		d.Turned("small", drawing.Point{X: x + 1, Y: stripFigure}, -90, text)
		clear = x
	}
	d.Line("tick ten hole-line", drawing.Point{X: down(0)}, drawing.Point{X: down(0), Y: stripTick})
	d.Turned("small", drawing.Point{X: down(0) + 1, Y: stripFigure}, -90, say.Words("water-clock.hole"))
	d.Label("small", drawing.Point{X: stripBefore, Y: stripWide - 2}, drawing.Start, say.Words("water-clock.strip_how"))
	return d
}
