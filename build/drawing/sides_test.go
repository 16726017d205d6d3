package drawing_test

import (
	"math"
	"testing"

	"noonbook/build/drawing"
	"noonbook/build/say"
)

// An axis need not begin at nothing: values between −30 and 70 stand in their
// share of the frame, larger ones higher and further right, figures beside their
// lines of the grid, titles above and below.
func TestChartFromOtherThanNothing(t *testing.T) {
	var d drawing.Drawing
	frame := drawing.Frame{Left: 20, Top: 10, Right: 120, Bottom: 60}
	c := d.Chart(frame, drawing.Axis{From: 100, To: 300, Ticks: drawing.Every(100, 300, 50, degrees), Title: say.Text("along")},
		drawing.Axis{From: -30, To: 70, Ticks: drawing.Every(-30, 70, 20, degrees), Title: say.Text("up")})
	for _, x := range []struct{ value, want drawing.Point }{
		{drawing.Point{X: 100, Y: -30}, drawing.Point{X: 20, Y: 60}}, {drawing.Point{X: 300, Y: 70}, drawing.Point{X: 120, Y: 10}},
		{drawing.Point{X: 150, Y: -10}, drawing.Point{X: 45, Y: 50}}, {drawing.Point{X: 250, Y: 50}, drawing.Point{X: 95, Y: 20}},
	} {
		if got := c.At(x.value); math.Hypot(got.X-x.want.X, got.Y-x.want.Y) > 1e-9 {
			t.Errorf("%v stands at %v, want %v", x.value, got, x.want)
		}
	}
	figures, grid := map[string]drawing.Point{}, 0
	for _, s := range d.Shapes {
		switch s.Role {
		case "figure", "name":
			key := s.Text.Plain
			if key == "" {
				key = string(s.Anchor) + " " + formatted(s.Text.Number)
			}
			figures[key] = s.Points[0]
		case "grid":
			grid++
			a, b := s.Points[0], s.Points[1]
			if a.X != b.X && a.Y != b.Y || math.Abs(a.X-b.X)+math.Abs(a.Y-b.Y) != 100 && math.Abs(a.X-b.X)+math.Abs(a.Y-b.Y) != 50 {
				t.Errorf("a line of the grid runs from %v to %v", a, b)
			}
		}
	}
	if grid != 5+5 { // 100 to 300 by 50; −20 to 60 by 20
		t.Errorf("%d lines", grid)
	}
	for key, want := range map[string]drawing.Point{
		"end -20": {X: 18.5, Y: 55.3}, "end 60": {X: 18.5, Y: 15.3}, "middle 150": {X: 45, Y: 62.3}, "up": {X: 20, Y: 8.5}, "along": {X: 120, Y: 62.3},
	} {
		if got, ok := figures[key]; !ok || math.Hypot(got.X-want.X, got.Y-want.Y) > 1e-9 {
			t.Errorf("%q stands at %v, want %v", key, got, want)
		}
	}
	for _, x := range []struct {
		v    drawing.Point
		want bool
	}{{drawing.Point{X: 100, Y: -30}, true}, {drawing.Point{X: 99.9, Y: 0}, false}, {drawing.Point{X: 300.1, Y: 0}, false}, {drawing.Point{X: 200, Y: -30.1}, false}, {drawing.Point{X: 200, Y: 70.1}, false}, {drawing.Point{X: 300, Y: 70}, true}} {
		if got := c.Holds(x.v); got != x.want {
			t.Errorf("%v is within: %v", x.v, got)
		}
	}
	// Without titles nothing stands there.
	var bare drawing.Drawing
	bare.Chart(frame, drawing.Axis{To: 1}, drawing.Axis{To: 1})
	if len(bare.Shapes) != 1 {
		t.Errorf("%d shapes of a bare chart", len(bare.Shapes))
	}
}

func formatted(x float64) string {
	n := int(math.Round(x))
	if n < 0 {
		return "-" + formatted(-x)
	}
	s := ""
	for ; n > 0; n /= 10 {
		s = string(rune('0'+n%10)) + s
	}
	return s
}

// Ticks are the multiples of the step, labelled with themselves, a thousand at most.
func TestTicksAreLabelledWithThemselves(t *testing.T) {
	for i, tick := range drawing.Every(-0.6, 1, 0.2, degrees) {
		want := -0.6 + 0.2*float64(i)
		if math.Abs(tick.At-want) > 1e-9 || math.Abs(tick.Label.Number-want) > 1e-9 {
			t.Errorf("tick %d is %v, labelled %v", i, tick.At, tick.Label.Number)
		}
	}
	if a, b := len(drawing.Every(0, 1000, 1, degrees)), len(drawing.Every(0, 1001, 1, degrees)); a != 1001 || b != 0 {
		t.Errorf("%d and %d ticks", a, b)
	}
	if got := len(drawing.Every(0.5, 1.5, 1, degrees)); got != 1 {
		t.Errorf("%d ticks from 0.5 to 1.5", got)
	}
	for _, c := range []struct {
		span float64
		most int
		want float64
	}{{5, 1, 5}, {6, 1, 10}, {51, 1, 100}, {0.03, 3, 0.01}, {1e-9, 4, 5e-10}, {7, 7, 1}} {
		if got := drawing.Step(c.span, c.most); math.Abs(got-c.want) > 1e-12*c.want {
			t.Errorf("a step of %v in %d is %v, want %v", c.span, c.most, got, c.want)
		}
	}
}

// Boxes that touch do not meet, whichever stands where.
func TestBoxesMeet(t *testing.T) {
	a := drawing.Box{Left: 10, Top: 10, Right: 20, Bottom: 20}
	for _, c := range []struct {
		b    drawing.Box
		want bool
	}{
		{drawing.Box{Left: 12, Top: 12, Right: 18, Bottom: 18}, true}, {drawing.Box{Left: 19, Top: 19, Right: 30, Bottom: 30}, true}, {drawing.Box{Left: 0, Top: 0, Right: 11, Bottom: 11}, true},
		{drawing.Box{Left: 20, Top: 10, Right: 30, Bottom: 20}, false}, {drawing.Box{Left: 0, Top: 10, Right: 10, Bottom: 20}, false},
		{drawing.Box{Left: 10, Top: 20, Right: 20, Bottom: 30}, false}, {drawing.Box{Left: 10, Top: 0, Right: 20, Bottom: 10}, false}, {drawing.Box{Left: 25, Top: 12, Right: 30, Bottom: 18}, false},
	} {
		if a.Meets(c.b) != c.want || c.b.Meets(a) != c.want {
			t.Errorf("%v and %v meet: %v", a, c.b, !c.want)
		}
	}
}

// Sheets that belong together overlap by 10 mm, go row by row, are numbered from 1,
// and none is larger than its paper leaves: 10 mm of margin all round and 14 mm for
// the check bar.
func TestSheetsOverlap(t *testing.T) {
	p := drawing.PaperOf("A4")
	if w, h := p.Whole(); w != 190 || h != 263 {
		t.Errorf("A4 leaves %v × %v mm below a slim head", w, h)
	}
	if w, h := p.Area(); w != 190 || h != 254 {
		t.Errorf("A4 leaves %v × %v mm below a head", w, h)
	}
	for _, c := range []struct {
		width, height float64
		fits          bool
	}{{190, 263, true}, {190.1, 10, false}, {10, 263.1, false}} {
		if got := p.Fits(drawing.Drawing{Width: c.width, Height: c.height}); got != c.fits {
			t.Errorf("%v × %v fits: %v", c.width, c.height, got)
		}
	}
	// Across, A4 leaves 277 × 176 mm.
	if s := p.Sheets(drawing.Drawing{Width: 277, Height: 176}); len(s) != 1 || s[0].Paper.Width != 297 || s[0].Row != 1 || s[0].Column != 1 || s[0].Rows != 1 || s[0].Columns != 1 {
		t.Errorf("277 × 176 mm: %v", s)
	}
	if s := p.Sheets(drawing.Drawing{Width: 277.1, Height: 176}); len(s) != 2 {
		t.Errorf("277.1 × 176 mm: %d sheets", len(s))
	}
	sheets := p.Sheets(drawing.Drawing{Width: 370, Height: 516}) // 2 × 190 − 10, 2 × 263 − 10
	if len(sheets) != 4 || sheets[0].Paper.Width != 210 {
		t.Fatalf("%d sheets of %v", len(sheets), sheets[0].Paper)
	}
	for i, s := range sheets {
		row, column := i/2, i%2
		if s.Row != row+1 || s.Column != column+1 || s.Rows != 2 || s.Columns != 2 || s.Left != 180*float64(column) || s.Top != 253*float64(row) {
			t.Errorf("sheet %d: row %d, column %d of %d × %d, from %v, %v", i+1, s.Row, s.Column, s.Rows, s.Columns, s.Left, s.Top)
		}
	}
	// Of as many sheets upright and across, upright; of fewer across, across.
	if s := p.Sheets(drawing.Drawing{Width: 540, Height: 170}); len(s) != 2 || s[0].Paper.Width != 297 {
		t.Errorf("540 × 170 mm: %d sheets of %v", len(s), s[0].Paper)
	}
}

// A turned label turns clockwise about its middle; a paragraph keeps its width.
func TestTurnedLabels(t *testing.T) {
	var d drawing.Drawing
	d.Turned("hint", drawing.Point{X: 1, Y: 2}, -90, say.Text("x"))
	d.Paragraph("ask", drawing.Point{X: 3, Y: 4}, 50, 4, say.Text("y"))
	if a := d.Shapes[0]; a.Turn != -90 || a.Anchor != drawing.Middle || a.Points[0] != (drawing.Point{X: 1, Y: 2}) {
		t.Errorf("the label is %v", a)
	}
	if b := d.Shapes[1]; b.Wide != 50 || b.Leading != 4 || b.Anchor != drawing.Start {
		t.Errorf("the paragraph is %v", b)
	}
}
