package worlds

import (
	"math"

	"noonbook/build/drawing"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/world"
)

// Measures of the row of worlds in millimetres. What is smaller than least is a dot in a ring.
const (
	rowWidth  = 180.0
	rowLeft   = 12.0 // to the edge of the Sun
	rowPitch  = 9.0  // from one small world to the next, at least
	rowGap    = 2.5  // between large ones
	rowHigh   = 48.0 // the largest world, at most
	rowLabels = 9.5  // above and below it
	rowLeast  = 0.2
)

// A row is the worlds side by side, all to one scale, with the edge of the Sun.
type row struct {
	worlds []world.World
	scale  float64 // mm a kilometre
	middle float64 // mm, the height of all centres
	at     []float64
}

// rowOf makes the worlds as large as fit side by side.
func rowOf(worlds []world.World) row {
	r := row{worlds: worlds}
	largest := 0.0
	for _, w := range worlds {
		largest = max(largest, w.Diameter().Kilometres())
	}
	low, high := 0.0, rowHigh/largest
	for range 50 { // the longer the scale the longer the row
		r.scale = (low + high) / 2
		if r.lay() > rowWidth {
			high = r.scale
		} else {
			low = r.scale
		}
	}
	r.scale = low
	r.lay()
	r.middle = rowLabels + largest*r.scale/2
	return r
}

// lay places the worlds one after the other and returns how long the row is.
func (r *row) lay() float64 {
	r.at = r.at[:0]
	x := rowLeft
	for _, w := range r.worlds {
		room := max(rowPitch, 2*r.radius(w)+rowGap)
		r.at = append(r.at, x+room/2)
		x += room
	}
	return x
}

// radius is that of a world on the drawing, in mm.
func (r *row) radius(w world.World) float64 { return w.Radius.Kilometres() * r.scale }

func (r *row) centre(i int) drawing.Point { return drawing.Point{X: r.at[i], Y: r.middle} }

// drawn is the row as a drawing. Names of neighbours take turns above and below; where letters
// are large, as on a phone, some are left out, and the cards have them.
func (r *row) drawn() drawing.Drawing {
	d := drawing.Drawing{
		Name: "worlds-row", Width: rowWidth, Height: 2 * r.middle,
		Title: say.Line("world-cards.row_title"), Description: say.Line("world-cards.row_description"),
	}
	d.Area("sun", r.sunEdge(d.Height)...)
	d.Offer("name", 1, say.Words("body.sun"), drawing.Place{At: drawing.Point{X: 1, Y: 4}, Anchor: drawing.Start})
	for i, w := range r.worlds {
		at, radius := r.centre(i), r.radius(w)
		if radius < rowLeast {
			d.Disc("ring", at, 1)
			radius = rowLeast
		}
		d.Disc(roleOf(w), at, radius)
		d.Block(drawing.Box{Left: at.X - radius, Top: at.Y - radius, Right: at.X + radius, Bottom: at.Y + radius})
	}
	for i, w := range r.worlds {
		at, clear := r.centre(i), max(r.radius(w), 1)+1.2
		var above, below []drawing.Place
		for _, aside := range []struct {
			by     float64
			anchor drawing.Anchor
		}{{0, drawing.Middle}, {rowPitch / 2, drawing.End}, {-rowPitch / 2, drawing.Start}} {
			above = append(above, drawing.Place{At: drawing.Point{X: at.X + aside.by, Y: at.Y - clear}, Anchor: aside.anchor})
			below = append(below, drawing.Place{At: drawing.Point{X: at.X + aside.by, Y: at.Y + clear}, Anchor: aside.anchor, Sits: drawing.Hanging})
		}
		if i%2 == 1 {
			above, below = below, above
		}
		d.Offer("name", 1, worldName(w), append(above, below...)...)
	}
	d.Finding = say.Line("world-cards.row_finding")
	return d
}

// sunEdge is what the drawing holds of the Sun's disc, whose centre is level with all others.
func (r *row) sunEdge(height float64) []drawing.Point {
	const steps = 24
	radius := world.SunDiameter.Kilometres() / 2 * r.scale
	edge := []drawing.Point{{X: 0, Y: 0}}
	for i := range steps + 1 {
		y := height * float64(i) / steps
		off := min(math.Abs(y-r.middle), radius)
		x := rowLeft - rowPitch/2 - (radius - math.Sqrt(radius*radius-off*off))
		edge = append(edge, drawing.Point{X: max(0, x), Y: y})
	}
	return append(edge, drawing.Point{X: 0, Y: height})
}

// walk leads along the row, from the Sun outward where the worlds are in their order. Each
// card says what the printed one does.
func (r *row) walk(rows func(world.World) [][2]say.Value) result.Walk {
	walk := result.Walk{Drawing: "worlds-row"}
	for i, w := range r.worlds {
		says := []say.Phrase{say.Line("world-cards.walk_kind", worldKind(w))}
		for _, line := range rows(w) {
			says = append(says, say.Line("world-cards.walk_line", line[0], line[1]))
		}
		for _, f := range w.Features() {
			says = append(says, say.Line("world-cards.walk_feature", featureName(f, w), say.Words("look."+f.Key)))
		}
		walk.Stops = append(walk.Stops, result.Stop{
			Key: w.Name, Name: worldName(w), At: r.centre(i), Reach: max(2.5, r.radius(w)+1),
			Says: append(says, say.Line("world-cards.walk_question", worldQuestion(w))),
		})
	}
	return walk
}
