package strip

import (
	"math"
	"slices"

	"noonbook/build/drawing"
	"noonbook/build/placeholder/entry"
	"noonbook/build/say"
)

// A folded strip is drawn in rows, as a text is, so that its crowded beginning
// shows. Figures stand below the paper, names above it.
type folded struct {
	squares float64 // on the whole strip
	row     float64 // in a row
	right   float64 // mm, where a full row ends
}

// A flag is a named place on a strip.
type flag struct {
	squares float64
	name    say.Value
	role    string
	radius  float64 // mm, of its mark
}

const pictureMargin = 6.0

// Measures of the names above the paper: from row to row in sizes of their letters, and
// in millimetres the room that is kept for a row, of which typeset takes out what stays
// empty, and what is left free at the right of a full row.
const (
	labelRow     = 1.45
	labelRoom    = 8.5
	asideNames   = 16.35
	asideNumbers = 8
)

const paperHeight = 7.0

const figuresBelow = 9.0 // from the paper to the next row

const mostInRow = 100 // squares

const mostRows = 6

// fold lays a strip in the asked number of rows, or as many as its length wants:
// none longer than a hundred squares, and no more than six. At the right of a full row
// so many millimetres are left.
func fold(squares, rows int, aside float64) folded {
	if rows <= 0 {
		rows = min(mostRows, int(math.Ceil(float64(squares)/mostInRow)))
	}
	rows = min(rows, squares)
	per := math.Ceil(float64(squares) / float64(rows))
	if per > mostInRow/2 {
		per = 10 * math.Ceil(per/10)
	}
	return folded{float64(squares), per, entry.PictureWidth - max(pictureMargin, aside)}
}

// rows returns the number of rows.
func (f folded) rows() int { return int(math.Ceil(f.squares/f.row - 1e-9)) }

// rowOf returns the row of a place. The seam between two rows ends the first.
func (f folded) rowOf(squares float64) int {
	return min(f.rows()-1, max(0, int(math.Ceil(squares/f.row-1e-9))-1))
}

// across returns how far from the left a place of a row is.
func (f folded) across(row int, squares float64) float64 {
	return pictureMargin + (squares-float64(row)*f.row)/f.row*(f.right-pictureMargin)
}

// flags offers the names of one row, in order from the left, places above the paper at
// y. Every name begins at its own line and runs to the right, so only lines further right
// can cross it; the names come from the right, and each takes the lowest level where it
// covers neither a name nor a line. At the end of a row a name may run to the left.
func (f folded) flags(d *drawing.Drawing, row int, y float64, flags []flag) {
	for _, g := range slices.Backward(flags) {
		x := f.across(row, g.squares)
		var places []drawing.Place
		for _, side := range []drawing.Anchor{drawing.Start, drawing.End} {
			aside := 0.8
			if side == drawing.End {
				aside = -aside
			}
			for level := range flags {
				places = append(places, drawing.Place{
					At: drawing.Point{X: x + aside, Y: y - 1.6}, Anchor: side, Lift: labelRow * float64(level),
					Leader: []drawing.Point{{X: x, Y: y + paperHeight/2 - g.radius}, {X: x, Y: y - 2}},
				})
			}
		}
		d.Disc(g.role, drawing.Point{X: x, Y: y + paperHeight/2}, g.radius)
		d.Offer("name", drawing.Keep, g.name, places...)
	}
}

// draw draws the strip with its flags, which are in order, and gives the drawing its
// height.
func (f folded) draw(d *drawing.Drawing, flags []flag) {
	y := 2.0
	for row := range f.rows() {
		var here []flag
		for _, g := range flags {
			if f.rowOf(g.squares) == row {
				here = append(here, g)
			}
		}
		above := y
		y += labelRoom*float64(len(here)) + 2
		d.Room(above, y)
		f.paper(d, row, y)
		f.flags(d, row, y, here)
		y += paperHeight + figuresBelow
	}
	d.Height = y
}

// paper draws the squares of a row with their figures.
func (f folded) paper(d *drawing.Drawing, row int, y float64) {
	from, to := float64(row)*f.row, min(f.squares, float64(row+1)*f.row)
	left, right := f.across(row, from), f.across(row, to)
	d.Area("paper", drawing.Point{X: left, Y: y}, drawing.Point{X: right, Y: y},
		drawing.Point{X: right, Y: y + paperHeight}, drawing.Point{X: left, Y: y + paperHeight})
	step := drawing.Step(f.row, 10)
	for n := math.Ceil(from/step) * step; n <= to; n += step {
		if n != math.Trunc(n) {
			continue
		}
		x := f.across(row, n)
		d.Line("seam", drawing.Point{X: x, Y: y + paperHeight - 2}, drawing.Point{X: x, Y: y + paperHeight})
		d.Label("figure", drawing.Point{X: x, Y: y + paperHeight + 4.5}, drawing.Middle, say.Count(int(n)))
	}
}
