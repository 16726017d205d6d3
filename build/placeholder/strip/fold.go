package strip

import (
	"math"

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
	letters int // of the name, as printed
	role    string
	radius  float64 // mm, of its mark
	level   int     // of the name, upward from the paper
}

const pictureMargin = 6.0

const labelRow = 5.2

const labelLetter = 2.05 // average width of a letter of a label

const labelGap = 1.5 // between names

const paperHeight = 7.0

const figuresBelow = 9.0 // from the paper to the next row

const mostInRow = 100 // squares

const mostRows = 6

// fold lays a strip in the asked number of rows, or as many as its length wants:
// none longer than a hundred squares, and no more than six.
func fold(squares, rows int, flags []flag) folded {
	if rows <= 0 {
		rows = min(mostRows, int(math.Ceil(float64(squares)/mostInRow)))
	}
	rows = min(rows, squares)
	per := math.Ceil(float64(squares) / float64(rows))
	if per > mostInRow/2 {
		per = 10 * math.Ceil(per/10)
	}
	wide := 0.0
	for _, f := range flags {
		wide = max(wide, f.width())
	}
	return folded{float64(squares), per, entry.PictureWidth - max(pictureMargin, wide)}
}

func (f flag) width() float64 { return labelLetter*float64(f.letters) + 2 }

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

// raise gives the flags of one row, in order from the left, the levels at which
// no name covers another or the line from another down to the paper. Every name
// begins at its own line and runs to the right, so only the lines further right
// can cross it: a name that reaches over some of them stands above their names.
func (f folded) raise(row int, flags []flag) (levels int) {
	for i := len(flags) - 1; i >= 0; i-- {
		flags[i].level = 0
		end := f.across(row, flags[i].squares) + flags[i].width() + labelGap
		for _, g := range flags[i+1:] {
			if f.across(row, g.squares) < end {
				flags[i].level = max(flags[i].level, g.level+1)
			}
		}
		levels = max(levels, flags[i].level+1)
	}
	return levels
}

// draw draws the strip with its flags, which are in order, and returns the
// height that it takes.
func (f folded) draw(d *drawing.Drawing, flags []flag) {
	y := 2.0
	for row := range f.rows() {
		var here []flag
		for _, g := range flags {
			if f.rowOf(g.squares) == row {
				here = append(here, g)
			}
		}
		y += float64(f.raise(row, here))*labelRow + 2
		f.paper(d, row, y)
		for _, g := range here {
			x, up := f.across(row, g.squares), y-3-float64(g.level)*labelRow
			d.Line("leader", drawing.Point{X: x, Y: up + 1}, drawing.Point{X: x, Y: y + paperHeight/2})
			d.Disc(g.role, drawing.Point{X: x, Y: y + paperHeight/2}, g.radius)
			d.Label("name", drawing.Point{X: x + 0.8, Y: up + 1.4}, drawing.Start, g.name)
		}
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
