package drawing

import (
	"math"

	"noonbook/build/say"
)

// A Chart is a pair of axes on a drawing: values in, millimetres out. It draws
// its frame, grid and figures when it is made, and then whatever series it is
// given, cut off at the frame.
//
//	c := d.Chart(drawing.Frame{Left: 12, Top: 6, Right: 176, Bottom: 50},
//		drawing.Axis{From: 0, To: 24, Ticks: drawing.Every(0, 24, 3, hour)},
//		drawing.Axis{From: 0, To: 90, Ticks: drawing.Every(0, 90, 15, degrees)})
//	c.Curve("curve", points...)
//
// Roles that it uses itself: "grid" and "axis" (lines), "figure" (labels of the
// ticks), "name" (titles of the axes).
type Chart struct {
	X, Y    Axis
	frame   Frame
	drawing *Drawing
}

// A Frame is where a chart's axes stand on its drawing, in millimetres. Labels
// stand outside, to the left of it and below.
type Frame struct{ Left, Top, Right, Bottom float64 }

// An Axis runs from one value, at the left or the bottom, to another.
type Axis struct {
	From, To float64
	Ticks    []Tick
	Title    say.Value // none where it is the zero Value
}

// A Tick is a labelled value of an axis; one without a label is a line of the
// grid only.
type Tick struct {
	At    float64
	Label say.Value
}

// Measures of the labels in millimetres.
const (
	tickGap   = 1.5  // between axis and figures
	figureSag = 0.3  // of a figure's middle below its tick
	figureTop = 2.3  // from the frame down to the heads of the figures
	nameLift  = -1.5 // of the name of the axis, from there down past the figures, in sizes of its letters
)

// The figures of ticks are left out where there is no room, each second or third in a
// row that is too close; so does no name of an axis.
const figureRank = 9

// acrossFigure offers places for a figure below the frame: in the row, or one below it.
func acrossFigure(at Point) []Place {
	return []Place{
		{At: Point{at.X, at.Y + figureTop}, Anchor: Middle, Sits: Hanging},
		{At: Point{at.X, at.Y + figureTop}, Anchor: Middle, Sits: Hanging, Lift: -1.15},
	}
}

// upFigure offers places for a figure at the left of the frame, or within it above its
// line where it is too wide.
func upFigure(at Point) []Place {
	return []Place{
		{At: Point{at.X - tickGap, at.Y + figureSag}, Anchor: End, Sits: Centred},
		{At: Point{at.X + 1, at.Y - 0.8}, Anchor: Start},
	}
}

// AcrossName writes the name of a stretch below the frame, as of a month.
func (d *Drawing) AcrossName(role string, at Point, text say.Value) {
	d.Offer(role, figureRank, text, acrossFigure(at)...)
}

// Chart adds a chart to the drawing.
func (d *Drawing) Chart(f Frame, x, y Axis) Chart {
	c := Chart{x, y, f, d}
	for _, t := range y.Ticks {
		at := c.At(Point{x.From, t.At})
		d.Line("grid", at, Point{f.Right, at.Y})
		if t.Label.Kind != say.Nothing {
			d.Offer("figure", figureRank, t.Label, upFigure(at)...)
		}
	}
	for _, t := range x.Ticks {
		at := c.At(Point{t.At, y.From})
		d.Line("grid", Point{at.X, f.Top}, at)
		if t.Label.Kind != say.Nothing {
			d.Offer("figure", figureRank, t.Label, acrossFigure(Point{at.X, f.Bottom})...)
		}
	}
	d.Line("axis", Point{f.Left, f.Top}, Point{f.Left, f.Bottom}, Point{f.Right, f.Bottom})
	if y.Title.Kind != say.Nothing {
		above := Place{At: Point{f.Left, f.Top - tickGap}, Anchor: Start}
		higher, right := above, Place{At: Point{f.Right, f.Top - tickGap}, Anchor: End}
		higher.At.Y -= 1.5
		d.Offer("name", Keep, y.Title, above, higher, right)
	}
	if x.Title.Kind != say.Nothing {
		d.Offer("name", Keep, x.Title, Place{At: Point{f.Right, f.Bottom + figureTop}, Anchor: End, Sits: Hanging, Lift: nameLift})
	}
	return c
}

// At returns where a pair of values stands on the drawing.
func (c Chart) At(v Point) Point {
	return Point{
		c.frame.Left + (v.X-c.X.From)/(c.X.To-c.X.From)*(c.frame.Right-c.frame.Left),
		c.frame.Bottom - (v.Y-c.Y.From)/(c.Y.To-c.Y.From)*(c.frame.Bottom-c.frame.Top),
	}
}

// Holds reports whether a pair of values lies within the frame.
func (c Chart) Holds(v Point) bool {
	return between(c.X.From, v.X, c.X.To) && between(c.Y.From, v.Y, c.Y.To)
}

func between(a, x, b float64) bool { return a <= x && x <= b || b <= x && x <= a }

// Curve draws a series of values. Where it leaves the frame it is cut there.
func (c Chart) Curve(role string, values ...Point) {
	var run []Point
	end := func() {
		if len(run) > 1 {
			c.drawing.Line(role, run...)
		}
		run = nil
	}
	for i := 1; i < len(values); i++ {
		a, b, ok := c.clipped(values[i-1], values[i])
		if !ok {
			end()
			continue
		}
		if len(run) == 0 || a != values[i-1] {
			end()
			run = append(run, c.At(a))
		}
		run = append(run, c.At(b))
		if b != values[i] {
			end()
		}
	}
	end()
}

// clipped returns the part of a segment that lies within the frame: Liang &
// Barsky, ACM Transactions on Graphics 3 (1984), 1.
func (c Chart) clipped(a, b Point) (from, to Point, ok bool) {
	if c.Holds(a) && c.Holds(b) {
		return a, b, true
	}
	first, last := 0.0, 1.0
	enter := func(start, step, low, high float64) bool {
		if step == 0 {
			return between(low, start, high)
		}
		in, out := (low-start)/step, (high-start)/step
		first, last = max(first, min(in, out)), min(last, max(in, out))
		return first <= last
	}
	if !enter(a.X, b.X-a.X, c.X.From, c.X.To) || !enter(a.Y, b.Y-a.Y, c.Y.From, c.Y.To) {
		return a, b, false
	}
	on := func(t float64) Point { return Point{a.X + t*(b.X-a.X), a.Y + t*(b.Y-a.Y)} }
	from, to = a, b
	if first > 0 {
		from = on(first)
	}
	if last < 1 {
		to = on(last)
	}
	return from, to, true
}

// Mark draws a disc at a pair of values, if it lies within the frame.
func (c Chart) Mark(role string, v Point, radius float64) {
	if c.Holds(v) {
		c.drawing.Disc(role, c.At(v), radius)
	}
}

// Measured draws the dot of a measurement. One that stands out from the others is larger and
// has the accent.
func (c Chart) Measured(v Point, standsOut bool) {
	if standsOut {
		c.Mark("mark odd", v, 1.4)
		return
	}
	c.Mark("mark", v, 1)
}

// Note writes a value beside a pair of values, if it lies within the frame: shifted by
// millimetres, or on another side where a label or a line is there.
func (c Chart) Note(role string, v, shift Point, anchor Anchor, text say.Value) {
	if c.Holds(v) {
		at := c.At(v)
		places := append([]Place{{At: Point{at.X + shift.X, at.Y + shift.Y}, Anchor: anchor}}, Beside(at, max(1.8, math.Hypot(shift.X, shift.Y)))...)
		c.drawing.Offer(role, Keep, text, append(places, Beside(at, 4)...)...)
	}
}

// Every returns a tick at each multiple of step between two values, labelled by
// the function.
func Every(from, to, step float64, label func(float64) say.Value) []Tick {
	var ticks []Tick
	if !(step > 0) || math.IsInf(to-from, 0) || (to-from)/step > 1000 {
		return nil
	}
	for i := math.Ceil(from/step - 1e-9); i*step <= to+step*1e-9; i++ {
		ticks = append(ticks, Tick{i * step, label(i * step)})
	}
	return ticks
}

// Step returns the round distance between ticks, 1, 2 or 5 times a power of
// ten, that divides a span into at most that many parts.
func Step(span float64, most int) float64 {
	if !(span > 0) || math.IsInf(span, 1) || most < 1 {
		return 1
	}
	unit := math.Pow10(int(math.Floor(math.Log10(span / float64(most)))))
	for _, by := range []float64{1, 2, 5} {
		if by*unit*float64(most) >= span*(1-1e-9) {
			return by * unit
		}
	}
	return 10 * unit
}
