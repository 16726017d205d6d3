package typeset

import (
	"math"

	"noonbook/build/drawing"
)

// A patch is a rectangle that may be turned: what a label covers.
type patch struct {
	pivot    drawing.Point
	sin, cos float64
	box      drawing.Box // about the pivot, before it is turned
	hull     drawing.Box // upright, round all of it
}

// patchAt is a box about a pivot, turned by degrees clockwise.
func patchAt(pivot drawing.Point, clockwise float64, box drawing.Box) patch {
	p := patch{pivot: pivot, cos: 1, box: box}
	if clockwise != 0 {
		p.sin, p.cos = math.Sincos(clockwise * math.Pi / 180)
	}
	if p.sin == 0 && p.cos == 1 {
		p.hull = drawing.Box{Left: pivot.X + box.Left, Top: pivot.Y + box.Top, Right: pivot.X + box.Right, Bottom: pivot.Y + box.Bottom}
		return p
	}
	corners := p.corners()
	p.hull = boxRound(corners[:])
	return p
}

// boxRound is the upright box round points.
func boxRound(points []drawing.Point) drawing.Box {
	b := drawing.Box{Left: math.Inf(1), Top: math.Inf(1), Right: math.Inf(-1), Bottom: math.Inf(-1)}
	for _, c := range points {
		b = drawing.Box{Left: min(b.Left, c.X), Top: min(b.Top, c.Y), Right: max(b.Right, c.X), Bottom: max(b.Bottom, c.Y)}
	}
	return b
}

func (p *patch) corners() [4]drawing.Point {
	on := func(x, y float64) drawing.Point {
		return drawing.Point{X: p.pivot.X + x*p.cos - y*p.sin, Y: p.pivot.Y + x*p.sin + y*p.cos}
	}
	b := p.box
	return [4]drawing.Point{on(b.Left, b.Top), on(b.Right, b.Top), on(b.Right, b.Bottom), on(b.Left, b.Bottom)}
}

// widened is the patch with more room at both ends of its lines, and above and below them.
func (p *patch) widened(by, over float64) patch {
	w := *p
	w.box.Left, w.box.Right = w.box.Left-by, w.box.Right+by
	w.box.Top, w.box.Bottom = w.box.Top-over, w.box.Bottom+over
	if p.sin != 0 || p.cos != 1 {
		by = max(by, over)
		over = by
	}
	w.hull.Left, w.hull.Right = w.hull.Left-by, w.hull.Right+by
	w.hull.Top, w.hull.Bottom = w.hull.Top-over, w.hull.Bottom+over
	return w
}

// inside turns a point back into the frame of the box.
func (p *patch) inside(q drawing.Point) drawing.Point {
	x, y := q.X-p.pivot.X, q.Y-p.pivot.Y
	return drawing.Point{X: x*p.cos + y*p.sin, Y: y*p.cos - x*p.sin}
}

// meets reports whether two patches overlap: not where a line along a side of either
// parts them.
func (p *patch) meets(q *patch) bool {
	if !p.hull.Meets(q.hull) {
		return false
	}
	if p.sin == 0 && q.sin == 0 {
		return true
	}
	return !p.parted(q) && !q.parted(p)
}

// parted reports whether a line along a side of p has all of q on its other side.
func (p *patch) parted(q *patch) bool {
	corners := q.corners()
	for i, c := range corners {
		corners[i] = p.inside(c)
	}
	h := boxRound(corners[:])
	return !h.Meets(p.box)
}

// reaches reports whether something in a box may lie on the patch: not where they are
// apart, whatever the last bits of either are.
func (p *patch) reaches(b drawing.Box) bool {
	const bits = 1e-6 // mm
	h := &p.hull
	return b.Left < h.Right+bits && h.Left < b.Right+bits && b.Top < h.Bottom+bits && h.Top < b.Bottom+bits
}

// crossed reports whether a path runs through the patch.
func (p *patch) crossed(path []drawing.Point) bool {
	for i := 1; i < len(path); i++ {
		if p.cut(path[i-1], path[i]) {
			return true
		}
	}
	return false
}

// cut reports whether a straight line runs through the patch: Liang & Barsky, ACM
// Transactions on Graphics 3 (1984), 1.
func (p *patch) cut(a, b drawing.Point) bool {
	a, b = p.inside(a), p.inside(b)
	first, last := 0.0, 1.0
	enters := func(start, step, low, high float64) bool {
		if step == 0 {
			return low < start && start < high
		}
		in, out := (low-start)/step, (high-start)/step
		first, last = max(first, min(in, out)), min(last, max(in, out))
		return first < last
	}
	return enters(a.X, b.X-a.X, p.box.Left, p.box.Right) && enters(a.Y, b.Y-a.Y, p.box.Top, p.box.Bottom)
}

// near is the distance of a point from the patch, 0 inside.
func (p *patch) near(q drawing.Point) float64 {
	q = p.inside(q)
	return math.Hypot(max(0, p.box.Left-q.X, q.X-p.box.Right), max(0, p.box.Top-q.Y, q.Y-p.box.Bottom))
}

// far is the distance of a point from the corner that is farthest from it.
func (p *patch) far(q drawing.Point) float64 {
	q = p.inside(q)
	return math.Hypot(max(q.X-p.box.Left, p.box.Right-q.X), max(q.Y-p.box.Top, p.box.Bottom-q.Y))
}

// common is the area that two boxes share.
func common(a, b *drawing.Box) float64 {
	return max(0, min(a.Right, b.Right)-max(a.Left, b.Left)) * max(0, min(a.Bottom, b.Bottom)-max(a.Top, b.Top))
}
