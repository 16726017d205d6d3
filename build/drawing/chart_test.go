package drawing_test

import (
	"math"
	"testing"

	"noonbook/build/drawing"
	"noonbook/build/say"
)

func degrees(x float64) say.Value { return say.Number(x, "deg", 0) }

func chart(d *drawing.Drawing) drawing.Chart {
	return d.Chart(drawing.Frame{Left: 10, Top: 5, Right: 110, Bottom: 55},
		drawing.Axis{From: -180, To: 180, Ticks: drawing.Every(-180, 180, 90, degrees)},
		drawing.Axis{From: 0, To: 50, Ticks: drawing.Every(0, 50, 10, degrees), Title: say.Text("height")})
}

func TestChartPlacesValues(t *testing.T) {
	var d drawing.Drawing
	c := chart(&d)
	for _, x := range []struct{ value, want drawing.Point }{
		{drawing.Point{X: -180, Y: 0}, drawing.Point{X: 10, Y: 55}},
		{drawing.Point{X: 180, Y: 50}, drawing.Point{X: 110, Y: 5}},
		{drawing.Point{X: 0, Y: 25}, drawing.Point{X: 60, Y: 30}},
	} {
		if got := c.At(x.value); got != x.want {
			t.Errorf("%v stands at %v, want %v", x.value, got, x.want)
		}
	}
	labels := 0
	for _, s := range d.Shapes {
		if s.Role == "figure" {
			labels++
		}
	}
	if labels != 5+6 {
		t.Errorf("%d labels on the axes", labels)
	}
}

// A curve that leaves the frame is cut at it and goes on where it comes back.
func TestChartCutsCurves(t *testing.T) {
	for _, c := range []struct {
		name  string
		curve []drawing.Point
		want  [][]drawing.Point
	}{
		{"inside", []drawing.Point{{X: -180, Y: 0}, {X: 0, Y: 25}, {X: 180, Y: 50}}, [][]drawing.Point{{{X: 10, Y: 55}, {X: 60, Y: 30}, {X: 110, Y: 5}}}},
		{"up and down through the bottom", []drawing.Point{{X: -90, Y: -10}, {X: 0, Y: 10}, {X: 90, Y: -10}}, [][]drawing.Point{{{X: 47.5, Y: 55}, {X: 60, Y: 45}, {X: 72.5, Y: 55}}}},
		{"out at the top and back", []drawing.Point{{X: -180, Y: 40}, {X: 0, Y: 60}, {X: 180, Y: 40}}, [][]drawing.Point{{{X: 10, Y: 15}, {X: 35, Y: 5}}, {{X: 85, Y: 5}, {X: 110, Y: 15}}}},
		{"across the whole frame", []drawing.Point{{X: 0, Y: -50}, {X: 0, Y: 100}}, [][]drawing.Point{{{X: 60, Y: 55}, {X: 60, Y: 5}}}},
		{"outside", []drawing.Point{{X: -180, Y: -1}, {X: 180, Y: -1}}, nil},
		{"past a corner", []drawing.Point{{X: -200, Y: 40}, {X: -170, Y: 90}}, nil},
		{"one point", []drawing.Point{{X: 0, Y: 25}}, nil},
		{"not a number", []drawing.Point{{X: 0, Y: math.NaN()}, {X: 10, Y: 25}}, nil},
	} {
		var d drawing.Drawing
		chart(&d).Curve("curve", c.curve...)
		var got [][]drawing.Point
		for _, s := range d.Shapes {
			if s.Role == "curve" {
				got = append(got, s.Points)
			}
		}
		if len(got) != len(c.want) {
			t.Errorf("%s: %d pieces, want %d: %v", c.name, len(got), len(c.want), got)
			continue
		}
		for i := range got {
			for j := range got[i] {
				if len(got[i]) != len(c.want[i]) || math.Hypot(got[i][j].X-c.want[i][j].X, got[i][j].Y-c.want[i][j].Y) > 1e-9 {
					t.Errorf("%s: %v, want %v", c.name, got[i], c.want[i])
					break
				}
			}
		}
	}
}

func TestChartMarksOnlyWithin(t *testing.T) {
	var d drawing.Drawing
	c := chart(&d)
	before := len(d.Shapes)
	c.Mark("sun", drawing.Point{Y: -1}, 1)
	c.Note("hour", drawing.Point{X: 181}, drawing.Point{}, drawing.Middle, say.Count(1))
	if len(d.Shapes) != before {
		t.Error("something is drawn outside the frame")
	}
	c.Mark("sun", drawing.Point{Y: 50}, 1)
	c.Note("hour", drawing.Point{X: 180}, drawing.Point{X: 2}, drawing.Start, say.Count(1))
	if len(d.Shapes) != before+2 || d.Shapes[before+1].Points[0].X != 112 {
		t.Error("what is on the frame's edge is not drawn")
	}
}

func TestTicks(t *testing.T) {
	for _, c := range []struct {
		span float64
		most int
		want float64
	}{{90, 6, 20}, {90, 9, 10}, {24, 12, 2}, {0.7, 5, 0.2}, {100, 10, 10}, {0, 5, 1}, {math.Inf(1), 5, 1}, {5, 0, 1}} {
		if got := drawing.Step(c.span, c.most); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("step of %v in %d is %v, want %v", c.span, c.most, got, c.want)
		}
	}
	if got := len(drawing.Every(-10, 30, 20, degrees)); got != 2 { // 0 and 20
		t.Errorf("%d ticks", got)
	}
	for _, step := range []float64{0, -1, math.NaN(), 1e-9} {
		if got := drawing.Every(0, 10, step, degrees); got != nil {
			t.Errorf("step %v gives %d ticks", step, len(got))
		}
	}
}
