package typeset

import (
	"math"
	"slices"
	"strings"

	"noonbook/build/drawing"
)

// marks is what is drawn besides labels, in cells, so that a label meets only what is
// near it.
type marks struct {
	across, down int
	strokes      []stroke
	begins       []int32 // of each cell, where its strokes begin in cells
	cells        []int32 // strokes of the first cell, of the second and so on, in their order
}

// A stroke is a straight line, or a disc or circle.
type stroke struct {
	a, b   drawing.Point
	radius float64 // of a disc round a
	cost   float64
}

// box is the upright box round a stroke.
func (s *stroke) box() drawing.Box {
	if s.radius > 0 {
		return drawing.Box{Left: s.a.X - s.radius, Top: s.a.Y - s.radius, Right: s.a.X + s.radius, Bottom: s.a.Y + s.radius}
	}
	return drawing.Box{Left: min(s.a.X, s.b.X), Top: min(s.a.Y, s.b.Y), Right: max(s.a.X, s.b.X), Bottom: max(s.a.Y, s.b.Y)}
}

const markCell = 8.0 // mm

// Discs up to largeDot are marks that no label hides, those up to smallDot faint stars,
// of which there are too many; of larger ones the edge is a line.
const (
	smallDot = 0.39
	largeDot = 4.0
)

// quiet are the roles of lines that may run below words, which keep a rim of paper or
// are darker: nets and traces across the whole drawing. Words still rather stand
// where none runs.
var quiet = []string{"grid", "height", "figure-line", "equator", "ecliptic", "orbit", "ray", "beam", "leader"}

func isQuiet(role string) bool {
	for r := range strings.FieldsSeq(role) {
		if slices.Contains(quiet, r) {
			return true
		}
	}
	return false
}

func marksOf(d *drawing.Drawing) *marks {
	m := &marks{across: int(d.Width/markCell) + 1, down: int(d.Height/markCell) + 1}
	most := 0
	for i := range d.Shapes {
		most += len(d.Shapes[i].Points)
	}
	m.strokes = make([]stroke, 0, most)
	role, runs := "", costLine
	for i := range d.Shapes {
		s := &d.Shapes[i]
		if s.Anchor != "" || len(s.Points) == 0 || s.Role == "touch-area" {
			continue
		}
		if s.Role != role {
			role, runs = s.Role, costLine
			if isQuiet(role) {
				runs = costQuiet
			}
		}
		cost := runs
		if s.Radius > 0 {
			switch {
			case s.Radius < smallDot:
				cost = costQuiet
			case s.Radius <= largeDot:
				cost = costMark
			}
			m.strokes = append(m.strokes, stroke{a: s.Points[0], radius: s.Radius, cost: cost})
			continue
		}
		for k := 1; k < len(s.Points); k++ {
			m.strokes = append(m.strokes, stroke{a: s.Points[k-1], b: s.Points[k], cost: cost})
		}
		if s.Closed {
			m.strokes = append(m.strokes, stroke{a: s.Points[len(s.Points)-1], b: s.Points[0], cost: cost})
		}
	}
	m.sort()
	return m
}

// sort puts the strokes into their cells: it counts those of each first.
func (m *marks) sort() {
	m.begins = make([]int32, m.across*m.down+1)
	for i := range m.strokes {
		m.cellsOf(m.strokes[i].box(), func(cell int) { m.begins[cell+1]++ })
	}
	for i := range m.across * m.down {
		m.begins[i+1] += m.begins[i]
	}
	m.cells = make([]int32, m.begins[m.across*m.down])
	next := slices.Clone(m.begins)
	for i := range m.strokes {
		m.cellsOf(m.strokes[i].box(), func(cell int) {
			m.cells[next[cell]] = int32(i)
			next[cell]++
		})
	}
}

func (m *marks) cellsOf(b drawing.Box, do func(cell int)) {
	of := func(x float64, most int) int { return min(most-1, max(0, int(math.Floor(x/markCell)))) }
	left, right := of(b.Left, m.across), of(b.Right, m.across)
	for y := of(b.Top, m.down); y <= of(b.Bottom, m.down); y++ {
		for x := left; x <= right; x++ {
			do(y*m.across + x)
		}
	}
}

// below returns what the lines and marks cost that run below a label: the dearest, and a
// little for each other.
func (m *marks) below(p *patch) float64 {
	most, more := 0.0, 0.0
	m.cellsOf(p.hull, func(cell int) {
		for _, i := range m.cells[m.begins[cell]:m.begins[cell+1]] {
			if s := &m.strokes[i]; p.reaches(s.box()) && s.meets(p) {
				more += s.cost / 50
				most = max(most, s.cost)
			}
		}
	})
	return most + more
}

func (s *stroke) meets(p *patch) bool {
	switch {
	case s.radius > largeDot:
		return p.near(s.a) < s.radius && s.radius < p.far(s.a)
	case s.radius > 0:
		return p.near(s.a) < s.radius
	}
	return p.cut(s.a, s.b)
}
