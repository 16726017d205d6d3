package typeset

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"noonbook/build/drawing"
)

// A path that goes on from point to point leads to the same hundredths of a millimetre
// as one that names each point: relative lineto, SVG 2, 9.3.4.
func TestPathsGoOnToTheSamePoints(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for n := range 200 {
		points := make([]drawing.Point, 3+n)
		for i := range points {
			points[i] = drawing.Point{X: random.Float64()*400 - 100, Y: random.Float64() * 3}
			if i > 0 && i%7 == 0 {
				points[i] = points[i-1] // stays where it is
			}
		}
		d := string(appendOnward(nil, points))
		start, steps, ok := strings.Cut(d, "l")
		if !ok {
			t.Fatalf("%s has no step", d)
		}
		var x, y float64
		if _, err := fmt.Sscanf(start, "M%g %g", &x, &y); err != nil {
			t.Fatal(err)
		}
		numbers := strings.Fields(strings.ReplaceAll(steps, "-", " -"))
		if len(numbers) != 2*(len(points)-1) {
			t.Fatalf("%d numbers for %d points: %s", len(numbers), len(points), d)
		}
		for i, p := range points {
			if i > 0 {
				right, errX := strconv.ParseFloat(numbers[2*i-2], 64)
				down, errY := strconv.ParseFloat(numbers[2*i-1], 64)
				if errX != nil || errY != nil {
					t.Fatal(errX, errY)
				}
				x, y = x+right, y+down
			}
			if math.Abs(x-p.X) > 0.005+1e-9 || math.Abs(y-p.Y) > 0.005+1e-9 {
				t.Fatalf("point %d of %d stands at %v, %v instead of %v", i, len(points), x, y, p)
			}
		}
	}
	if got := string(appendOnward(nil, []drawing.Point{{X: 1, Y: 2}, {X: 0.5, Y: 2.05}, {X: 0.5, Y: 2.05}, {X: 12.5, Y: 1.05}})); got != "M1 2l-.5 .05 0 0 12-1" {
		t.Errorf("it is %s", got)
	}
}

// A length is the number that a general formatter writes for its hundredths.
func TestLengthsAreHundredths(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	lengths := []float64{0, math.Copysign(0, -1), 0.004, -0.004, 0.005, -0.005, 0.995, -0.999, 1, -1, 99.999, 1e14, -1e17, 123456789.125, math.Inf(1), math.NaN()}
	for range 20000 {
		lengths = append(lengths, (random.Float64()-0.5)*math.Pow(10, float64(random.IntN(7)-2)))
	}
	for _, mm := range lengths {
		if got, want := string(appendLength(nil, mm)), strconv.FormatFloat(math.Round(mm*100)/100, 'f', -1, 64); got != want {
			t.Errorf("%v is written %s, want %s", mm, got, want)
		}
	}
}

// The anchor that most labels have is said once, by the drawing.
func TestUsualAnchorIsSaidOnce(t *testing.T) {
	label := func(a drawing.Anchor) Label { return Label{Anchor: a, Lines: []string{"x"}} }
	m, s, e := label(drawing.Middle), label(drawing.Start), label(drawing.End)
	for _, c := range []struct {
		sets [][]Label
		want drawing.Anchor
	}{
		{nil, drawing.Start}, {[][]Label{{m}}, drawing.Start}, {[][]Label{{m, m}}, drawing.Middle}, {[][]Label{{m, s}, {m, m}}, drawing.Middle},
		{[][]Label{{m, s}, {m, s}}, drawing.Start}, {[][]Label{{e, e, e, m, s}}, drawing.End},
	} {
		if got := usualAnchor(c.sets...); got != c.want {
			t.Errorf("of %v it is %s", c.sets, got)
		}
	}
	d := drawing.Drawing{Name: "d", Width: 50, Height: 10}
	for i, a := range []drawing.Anchor{drawing.Middle, drawing.Middle, drawing.Start, drawing.Middle, drawing.End} {
		d.Shapes = append(d.Shapes, drawing.Shape{Role: "name", Points: []drawing.Point{{X: 10 * float64(i), Y: 5}}, Anchor: a, Writing: &drawing.Writing{}})
	}
	w, err := Language("en", false)
	if err != nil {
		t.Fatal(err)
	}
	page := string(w.AppendDrawing(nil, d))
	if n := strings.Count(page, "text-anchor"); n != 3 || !strings.Contains(page, `10" text-anchor="middle" role="img">`) || !strings.Contains(page, `x="20" y="5" text-anchor="start">`) || !strings.Contains(page, `x="40" y="5" text-anchor="end">`) {
		t.Errorf("the anchors of %s", page)
	}
}

// Lines of one role that follow each other are one path on a page: with no other shape
// between them, within one link, and nothing that could be filled.
func TestLinesOfOneRoleAreOnePath(t *testing.T) {
	d := drawing.Drawing{Name: "d", Width: 9, Height: 9, Ornament: true}
	at := func(x, y float64) drawing.Point { return drawing.Point{X: x, Y: y} }
	d.Line("tick", at(0, 0), at(0, 1))
	d.Line("tick", at(2, 0), at(2, 1))
	d.Line("rule", at(0, 3), at(9, 3))
	d.Line("tick", at(4, 0), at(4, 1))
	d.Line("tick", at(5, 0), at(5, 1), at(6, 1))
	d.Line("tick", at(7, 0), at(7, 1))
	mark := len(d.Shapes)
	d.Line("tick", at(8, 0), at(8, 1))
	d.Link(mark, "a.html")
	w, err := Language("en", false)
	if err != nil {
		t.Fatal(err)
	}
	const want = `<path class="tick" d="M0 0L0 1M2 0L2 1"/><path class="rule" d="M0 3L9 3"/><path class="tick" d="M4 0L4 1"/>` +
		`<path class="tick" d="M5 0l0 1 1 0"/><path class="tick" d="M7 0L7 1"/><a href="a.html" tabindex="-1"><path class="tick" d="M8 0L8 1"/></a></svg>`
	if got := string(w.AppendDrawing(nil, d)); !strings.HasSuffix(got, want) {
		t.Errorf("%s\nwant\n%s", got, want)
	}
}
