package stars

import (
	"noonbook/build/drawing"
	"noonbook/build/say"
)

// A labelling keeps labels of a chart off each other and off what is drawn. How wide
// a label is, it can only guess from its number of letters.
type labelling struct {
	taken  []drawing.Box
	within func(drawing.Box) bool // nil where there is no bound
}

// Measures of a label: the width of a letter, generous for the sans faces of the
// theme, so that a language with longer names still fits; and its height.
const (
	letterWidth = 1.72
	letterRise  = 2.4 // above the foot of the letters
	letterFall  = 0.8
)

func (l *labelling) block(left, top, width, height float64) {
	l.taken = append(l.taken, drawing.Box{Left: left, Top: top, Right: left + width, Bottom: top + height})
}

func (l *labelling) disc(at drawing.Point, radius float64) {
	l.block(at.X-radius, at.Y-radius, 2*radius, 2*radius)
}

// free reports whether a box meets nothing, and takes its room if so.
func (l *labelling) free(b drawing.Box) bool {
	if l.within != nil && !l.within(b) {
		return false
	}
	for _, t := range l.taken {
		if b.Meets(t) {
			return false
		}
	}
	l.taken = append(l.taken, b)
	return true
}

// beside writes a name beside a mark: right, left, above or below, whichever is free.
// Where nothing is, the name is left out: the table has it.
func (l *labelling) beside(d *drawing.Drawing, role string, at drawing.Point, radius float64, letters int, text say.Value) {
	width, gap := float64(letters)*letterWidth, radius+0.7
	for _, place := range []struct {
		x, foot float64
		anchor  drawing.Anchor
	}{
		{at.X + gap, at.Y + 1, drawing.Start},
		{at.X - gap, at.Y + 1, drawing.End},
		{at.X, at.Y - gap - 0.2, drawing.Middle},
		{at.X, at.Y + gap + letterRise, drawing.Middle},
		{at.X + 0.7*gap, at.Y - 0.7*gap, drawing.Start},
		{at.X - 0.7*gap, at.Y + 0.7*gap + 2, drawing.End},
	} {
		if l.write(d, role, drawing.Point{X: place.x, Y: place.foot}, place.anchor, width, text) {
			return
		}
	}
}

// over writes a name over a point, or a little aside of it.
func (l *labelling) over(d *drawing.Drawing, role string, at drawing.Point, letters int, text say.Value) {
	width := float64(letters) * letterWidth
	for _, shift := range [...][2]float64{{0, 1}, {0, 4}, {0, -2}, {5, 1}, {-5, 1}, {0, 7}, {0, -5}, {6, 5}, {-6, 5}, {6, -4}, {-6, -4}, {9, 1}, {-9, 1}, {0, 9}, {0, -8}, {9, 6}, {-9, 6}, {9, -6}, {-9, -6}} {
		if l.write(d, role, drawing.Point{X: at.X + shift[0], Y: at.Y + shift[1]}, drawing.Middle, width, text) {
			return
		}
	}
}

func (l *labelling) write(d *drawing.Drawing, role string, at drawing.Point, anchor drawing.Anchor, width float64, text say.Value) bool {
	left := at.X
	switch anchor {
	case drawing.Middle:
		left -= width / 2
	case drawing.End:
		left -= width
	}
	if !l.free(drawing.Box{Left: left, Top: at.Y - letterRise, Right: left + width, Bottom: at.Y + letterFall}) {
		return false
	}
	d.Label(role, at, anchor, text)
	return true
}
