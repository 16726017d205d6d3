package optics

import (
	"math"

	"noonbook/build/drawing"
	"noonbook/build/say"
	"noonbook/compute/lens"
	"noonbook/compute/quantity"
)

// A canvas maps lengths along and across the axis of a telescope to a drawing.
type canvas struct {
	*drawing.Drawing
	left, axis float64 // of the front lens's middle, mm of the drawing
	scale      float64 // mm of the drawing a metre
	stretch    float64 // how many times more across than along
}

func (c canvas) at(along, across quantity.Length) drawing.Point {
	return drawing.Point{X: c.left + float64(along)*c.scale, Y: c.axis - float64(across)*c.scale*c.stretch}
}

// box draws a length of tube about the axis.
func (c canvas) box(role string, from, to, across quantity.Length) {
	c.Area(role, c.at(from, across/2), c.at(to, across/2), c.at(to, -across/2), c.at(from, -across/2))
}

// lens draws a lens that is thicker in the middle, 3 mm on the drawing.
func (c canvas) lens(along, diameter quantity.Length) {
	const steps, bulge = 12, 1.5
	var edge []drawing.Point
	for _, side := range []float64{1, -1} {
		for i := range steps + 1 {
			y := side * (1 - 2*float64(i)/steps)
			p := c.at(along, diameter/2*quantity.Length(y))
			p.X += side * bulge * (1 - y*y)
			edge = append(edge, p)
		}
	}
	c.Area("lens", edge...)
}

// dimension draws an arrowless measure between two places along the axis, with its
// value above it.
func (c canvas) dimension(from, to quantity.Length, y float64, text say.Value) {
	a, b := c.at(from, 0).X, c.at(to, 0).X
	c.Line("dimension", drawing.Point{X: a, Y: y}, drawing.Point{X: b, Y: y})
	for _, x := range []float64{a, b} {
		c.Line("dimension", drawing.Point{X: x, Y: y - 1.2}, drawing.Point{X: x, Y: y + 1.2})
	}
	middle := drawing.Place{At: drawing.Point{X: (a + b) / 2, Y: y - 1.4}, Anchor: drawing.Middle}
	below, right, left := middle, middle, middle
	below.At.Y, below.Sits = y+1.4, drawing.Hanging
	right.At, right.Anchor, right.Sits = drawing.Point{X: b + 1.5, Y: y}, drawing.Start, drawing.Centred
	left.At, left.Anchor, left.Sits = drawing.Point{X: a - 1.5, Y: y}, drawing.End, drawing.Centred
	inTwo := below // lines
	inTwo.Wide = opticsWidth / 2
	c.Offer("figure", drawing.Keep, text, middle, left, right, below, inTwo)
}

// Measures of the pictures in millimetres.
const (
	opticsWidth  = 180.0
	opticsMargin = 8.0
	dimensionRow = 7.0
)

// section draws the telescope cut open along its length, to scale, set for far
// things, with its measures.
func (s setting) section() drawing.Drawing {
	p := s.plan
	total := s.far + p.EyeTube
	d := drawing.Drawing{
		Name: "tubes", Width: opticsWidth,
		Title:       say.Line("tube-plan.section", times(s.Magnification())),
		Description: say.Line("tube-plan.section_says", opticalLength(p.Outer, 0), opticalLength(p.Inner, 0), opticalLength(p.EyeTube, 0), opticalLength(s.far, 0)),
	}
	c := canvas{Drawing: &d, left: opticsMargin, scale: (opticsWidth - 2*opticsMargin) / float64(total), stretch: 1}
	half := float64(max(p.outer.Outside, s.Front.Diameter)) / 2 * c.scale
	c.axis = 2*dimensionRow + 4 + half
	s.tubes(c)
	measured := func(key string, l quantity.Length) say.Value { return say.Words(key, opticalLength(l, 0)) }
	front, eye := c.at(0, 0), c.at(s.far, 0)
	d.Label("name", drawing.Point{X: front.X + 3, Y: front.Y - 1.5}, drawing.Start, say.Words("lens-rays.front_lens"))
	if room := 16.0; float64(p.EyeTube)*c.scale > room {
		half := float64(p.inner.Outside) / 2 * c.scale
		d.Offer("name", drawing.Keep, say.Words("lens-rays.eye_lens"),
			drawing.Place{At: drawing.Point{X: eye.X + 3, Y: eye.Y - 1.5}, Anchor: drawing.Start},
			drawing.Place{At: drawing.Point{X: eye.X - 3, Y: eye.Y - 1.5}, Anchor: drawing.End},
			drawing.Place{At: drawing.Point{X: eye.X, Y: eye.Y + half + 1.5}, Anchor: drawing.Start, Sits: drawing.Hanging})
	}
	c.dimension(0, p.Outer, dimensionRow, measured("tube-plan.measure_outer", p.Outer))
	low := c.axis + half + 3
	c.dimension(s.far-p.Inner, s.far, low+dimensionRow, measured("tube-plan.measure_inner", p.Inner))
	if p.EyeTube > 0 {
		c.dimension(s.far, total, 2*dimensionRow, measured("tube-plan.measure_eye", p.EyeTube))
	}
	c.dimension(0, s.far, low+2*dimensionRow, say.Words("tube-plan.measure_lenses", opticalLength(s.far, 0)))
	d.Height = low + 2*dimensionRow + 3
	return d
}

// tubes draws the tubes cut open, each with its two walls, the axis and the lenses.
func (s setting) tubes(c canvas) {
	p := s.plan
	end := s.far + p.EyeTube
	c.box("tube", 0, p.Outer, p.outer.Outside)
	c.bore(0, p.Outer, p.outer.Inside)
	c.box("tube", s.far-p.Inner, s.far, p.inner.Outside)
	if p.EyeTube > 0 {
		c.box("tube", s.far, end, p.inner.Outside)
	}
	c.bore(s.far-p.Inner, end, p.inner.Inside)
	c.Line("axis", c.at(-0.01, 0), c.at(end+0.005, 0))
	c.held(0, s.Front.Diameter, p.outer.Outside)
	c.held(s.far, min(s.Eye.Diameter, p.inner.Outside), p.inner.Outside)
}

// bore draws the room within a tube, which is open at both ends.
func (c canvas) bore(from, to, across quantity.Length) {
	const over = 0.001 // m
	c.box("bore", from-over, to+over, across)
	for _, side := range []quantity.Length{across / 2, -across / 2} {
		c.Line("wall", c.at(from, side), c.at(to, side))
	}
}

// held draws a lens at the end of a tube, in a ring of card where it is narrower.
func (c canvas) held(at, diameter, tube quantity.Length) {
	for _, side := range []quantity.Length{1, -1} {
		if tube-diameter > quantity.Millimetres(1) {
			c.Line("ring", c.at(at, side*diameter/2), c.at(at, side*tube/2))
		}
	}
	c.lens(at, diameter)
}

// Measures of the picture of the parts: the eye in millimetres of the eye, the others in those
// of the drawing. An eye is about 24 mm long (common knowledge, no source).
const (
	partsWide   = 150.0
	partsMargin = 6.0
	partsAbove  = 13.0 // from the top to the tubes
	partsBelow  = 15.0
	eyeRadius   = 12.0
)

// parts draws the same telescope with the names of its parts and the eye behind it, without a
// number.
func (s setting) parts() drawing.Drawing {
	p := s.plan
	end := s.far + p.EyeTube
	eye := quantity.Millimetres(2 * eyeRadius)
	d := drawing.Drawing{Name: "tube-parts", Width: partsWide, Title: say.Line("tube-parts.title"), Description: say.Line("tube-parts.description")}
	c := canvas{Drawing: &d, left: partsMargin, scale: (partsWide - 2*partsMargin) / float64(end+eye), stretch: 1}
	half := float64(max(p.outer.Outside, s.Front.Diameter)) / 2 * c.scale
	c.axis = partsAbove + half
	d.Height = c.axis + half + partsBelow
	s.tubes(c)
	c.eyeball(end)
	middle := func(a, b quantity.Length) quantity.Length { return (a + b) / 2 }
	wall := func(at, outside quantity.Length, up float64) drawing.Point {
		return c.at(at, outside/2*quantity.Length(up))
	}
	above, below := partsMargin+0.5, d.Height-5.6
	name := func(y float64, part drawing.Point, anchor drawing.Anchor, key string) drawing.Point {
		at := drawing.Point{X: part.X, Y: y}
		from := drawing.Point{X: part.X, Y: y + 1.6}
		if y > c.axis {
			from.Y = y - 4
		}
		c.Line("leader", from, part)
		c.Disc("dot", part, 0.5)
		c.Label("name", at, anchor, say.Words(key))
		return at
	}
	name(above, wall(p.Outer*2/5, p.outer.Outside, 0.97), drawing.Middle, "tube-parts.outer")
	name(below, wall(0, s.Front.Diameter, -0.8), drawing.Start, "lens-rays.front_lens")
	inner := name(below, wall(middle(s.far-p.Inner, s.far), p.inner.Outside, -0.97), drawing.Middle, "tube-parts.inner")
	c.Label("says", drawing.Point{X: inner.X, Y: inner.Y + 4.4}, drawing.Middle, say.Words("tube-parts.inner_says"))
	name(above, wall(s.far, min(s.Eye.Diameter, p.inner.Outside), 0.7), drawing.End, "lens-rays.eye_lens")
	if p.EyeTube > 0 {
		name(below, wall(middle(s.far, end), p.inner.Outside, -0.97), drawing.Start, "tube-parts.eye")
	}
	name(above, c.at(end+eye/2, quantity.Millimetres(eyeRadius-2)), drawing.Middle, "tube-parts.your_eye")
	return d
}

// eyeball draws an eye that looks in, at the end of the eye tube.
func (c canvas) eyeball(end quantity.Length) {
	radius := quantity.Millimetres(eyeRadius)
	c.Disc("eye", c.at(end+radius, 0), float64(radius)*c.scale)
	const steps = 8
	var iris []drawing.Point // what is seen of it from the side: a part of the ball's front
	for i := range steps + 1 {
		a := quantity.Degrees(32 * (2*float64(i)/steps - 1))
		iris = append(iris, c.at(end+radius-radius*quantity.Length(a.Cos()), radius*quantity.Length(a.Sin())))
	}
	c.Line("iris", iris...)
}

// Measures of the cutting strip in millimetres.
const (
	tubePieceHeight = 16.0
	tubePieceGap    = 11.0
	tubePieceMargin = 4.0
	tubeFlap        = 10.0 // to glue the next part of a strip on
	markGap         = 3.6  // between labels of stops, turned upright
)

// strip draws the lengths to cut at true size, each a strip of paper to lay along
// its tube, and the mask of the front lens. A strip longer than the paper is wide
// comes in equal parts with a flap to glue the next one on.
func (s setting) strip(paper drawing.Paper) drawing.Drawing {
	p := s.plan
	d := drawing.Drawing{
		Name:        "tube-strip",
		Width:       2*tubePieceMargin + s.Front.Diameter.Millimetres(),
		Title:       say.Line("tube-plan.strip", opticalLength(s.Front.Focal, 0).InMetric(), opticalLength(s.Eye.Focal, 0).InMetric()),
		Description: say.Line("tube-plan.strip_says"),
	}
	wide, _ := paper.Area()
	d.Width = max(d.Width, wide) // what is written above a strip may be longer than it
	y := tubePieceMargin
	piece := func(key, partKey string, length quantity.Length) {
		mm := length.Millimetres()
		parts := math.Ceil(mm / (wide - 2*tubePieceMargin - tubeFlap))
		for part := 1.0; part <= parts; part++ {
			label := say.Words(key, opticalLength(length, 0))
			if parts > 1 {
				label = say.Words(partKey, opticalLength(length, 0), say.Count(int(part)), say.Count(int(parts)))
			}
			above := drawing.Place{At: drawing.Point{X: tubePieceMargin, Y: y + 4}, Anchor: drawing.Start}
			inTwo := above // lines, upward
			inTwo.Wide = d.Width - 2*tubePieceMargin
			d.Offer("strong", drawing.Keep, label, above, inTwo)
			y += 6
			tubePiece(&d, y, mm/parts, part < parts)
			if key == "tube-plan.strip_inner" {
				s.focusMarks(&d, y, mm*(part-1)/parts, mm*part/parts)
			}
			y += tubePieceHeight + tubePieceGap - 6
		}
	}
	if p.fit == lens.Fits {
		piece("tube-plan.strip_outer", "tube-plan.part_outer", p.Outer)
		piece("tube-plan.strip_inner", "tube-plan.part_inner", p.Inner)
		piece("tube-plan.strip_eye", "tube-plan.part_eye", p.EyeTube)
	}
	d.Height = y + s.mask(&d, y)
	return d
}

// tubePiece draws one strip or part of one, with a flap at its right end where
// another part follows.
func tubePiece(d *drawing.Drawing, y, length float64, flap bool) {
	left, right, low := tubePieceMargin, tubePieceMargin+length, y+tubePieceHeight
	d.Area("cut piece", drawing.Point{X: left, Y: y}, drawing.Point{X: right, Y: y}, drawing.Point{X: right, Y: low}, drawing.Point{X: left, Y: low})
	if flap {
		d.Area("glue", drawing.Point{X: right, Y: y}, drawing.Point{X: right + tubeFlap, Y: y + 2}, drawing.Point{X: right + tubeFlap, Y: low - 2}, drawing.Point{X: right, Y: low})
		d.Line("cut flap", drawing.Point{X: right, Y: y}, drawing.Point{X: right + tubeFlap, Y: y + 2},
			drawing.Point{X: right + tubeFlap, Y: low - 2}, drawing.Point{X: right, Y: low})
		right += tubeFlap
	}
	d.Width = max(d.Width, right+tubePieceMargin)
}

// focusMarks draws, from the end of the inner strip at the eye lens, where the rim
// of the outer tube stands for each stop that lies on this part of the strip.
func (s setting) focusMarks(d *drawing.Drawing, y, from, to float64) {
	last := math.Inf(-1)
	for _, at := range s.stops() {
		x := s.plan.OutOf(at.separation).Millimetres()
		if x-last < markGap {
			continue
		}
		last = x
		if x < from || x >= to {
			continue
		}
		x += tubePieceMargin - from
		d.Line("stop", drawing.Point{X: x, Y: y}, drawing.Point{X: x, Y: y + tubePieceHeight})
		d.Label("small", drawing.Point{X: x - 0.6, Y: y + tubePieceHeight - 1}, drawing.Start, at.name)
		d.Shapes[len(d.Shapes)-1].Turn = -90
	}
	if from == 0 {
		d.Label("small", drawing.Point{X: tubePieceMargin + 1.2, Y: y + 4}, drawing.Start, say.Words("tube-plan.eye_end"))
	}
}

// mask draws the card with a hole for the front lens and returns its height.
func (s setting) mask(d *drawing.Drawing, y float64) float64 {
	hole, ok := s.MaskDiameter()
	if !ok {
		return 0
	}
	radius := s.Front.Diameter.Millimetres() / 2
	centre := drawing.Point{X: tubePieceMargin + radius, Y: y + 7 + radius}
	d.Label("strong", drawing.Point{X: tubePieceMargin, Y: y + 4}, drawing.Start,
		say.Words("tube-plan.mask", opticalLength(s.Front.Diameter, 0), opticalLength(hole, 0)))
	d.Disc("cut piece", centre, radius)
	d.Disc("cut piece", centre, hole.Millimetres()/2)
	for _, p := range []drawing.Point{{X: 2}, {Y: 2}} {
		d.Line("stop", drawing.Point{X: centre.X - p.X, Y: centre.Y - p.Y}, drawing.Point{X: centre.X + p.X, Y: centre.Y + p.Y})
	}
	return 2*radius + 7 + tubePieceMargin
}
