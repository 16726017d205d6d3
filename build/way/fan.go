package way

import (
	"noonbook/build/drawing"
	"noonbook/build/typeset"
	"noonbook/compute/quantity"
)

// The fan is the cover's dial turned so that noon points to the list: its hour lines run
// on to the lessons, a row each. Four millimetres of it are one rem of the style sheet,
// whose rows are as high as these.

// Rows are the rows of the cover's list.
type Rows struct {
	Class  string  // of the style sheet
	height float64 // mm
	title  int     // lines of a title that fit
}

// rowSizes are the heights of a row, the smallest first. Every row is as high as the one
// with the longest title needs; small ones are for units that have many lessons.
func rowSizes() []Rows {
	return []Rows{{"rows-low", 8, 1}, {"rows-middle", 11, 2}, {"rows-high", 15, 3}}
}

// Of the list: what may stand on a line of a title, in ems of its letters, and from how
// many lessons on its rows are low where they can be.
const (
	titleEms  = 15.0
	manyRows  = 17
	fanWidth  = 118.0 // mm
	fanCentre = 32.0  // mm from the Sun's side, to the middle of the dial
	fanLeast  = 54.0  // mm, radius of the dial
	fanMost   = 80.0
	fanLow    = 2*fanLeast + 4 // mm, height of the drawing
	fanBand   = 4.5            // mm, of the stones
	fanHours  = 2.0            // mm, of the half hours, inside it
	fanTip    = 48.0
	fanBend   = 2.75 // mm, from a bend of a leading line to its end
)

// RowsFor chooses the rows for the titles of a unit.
func RowsFor(lessons []typeset.Link) Rows {
	lines := 1
	for _, l := range lessons {
		lines = max(lines, len(typeset.Lines(l.Title, titleEms)))
	}
	sizes := rowSizes()
	switch {
	case lines == 1 && len(lessons) >= manyRows:
		return sizes[0]
	case lines <= sizes[1].title:
		return sizes[1]
	}
	return sizes[2]
}

// Fill reports whether the list is as high as the drawing, which is never lower than that.
func (r Rows) Fill(lessons int) bool { return r.height*float64(lessons) >= fanLow }

// Fan draws the school's dial beside the list, with a line for each lesson that runs on
// to its row. North of the equator the list is right of it; south of it the hours run
// the other way round, so that it is left of it and morning is still above.
func (r Rows) Fan(latitude quantity.Angle, lessons []typeset.Link) drawing.Drawing {
	f := faceAt(latitude)
	list := r.height * float64(len(lessons))
	height := max(list, fanLow)
	edge := min(fanMost, height/2-2)
	// The place at an angle from the noon line, to the evening positive.
	at := func(evening quantity.Angle, out float64) drawing.Point {
		x := fanCentre + out*evening.Cos()
		if f.mirror < 0 {
			x = fanWidth - x
		}
		return drawing.Point{X: x, Y: height/2 + out*evening.Sin()}
	}
	beside := func(x, y float64) drawing.Point {
		if f.mirror < 0 {
			x = fanWidth - x
		}
		return drawing.Point{X: x, Y: y}
	}
	bow := func(from, to quantity.Angle, out float64) []drawing.Point {
		return bowOf(from, to, func(a quantity.Angle) drawing.Point { return at(a, out) })
	}
	line := func(hours float64) quantity.Angle { return quantity.Angle(f.mirror) * f.line(hours) }
	morning, evening := quantity.Degrees(-90), quantity.Degrees(90)
	inner := edge - fanBand
	track := inner - fanHours/2

	d := drawing.Drawing{Name: "dial fan-dial", Width: fanWidth, Height: height, Ornament: true}
	if f.mirror < 0 {
		d.Name = "dial fan-dial southern"
	}
	d.Area("rim", bow(morning, evening, edge)...)
	d.Line("rim", bow(morning, evening, inner)...)
	for hour := 0.5; hour < 6; hour++ { // every other half hour, alike before and after noon
		d.Line("half-hours", bow(line(-hour-0.5), line(-hour), track)...)
		d.Line("half-hours", bow(line(hour), line(hour+0.5), track)...)
	}
	d.Line("rim", bow(morning, evening, inner-fanHours)...)
	for i, lesson := range lessons {
		turn := quantity.Angle(f.mirror) * f.lesson(float64(i)+0.5, len(lessons))
		row := (height-list)/2 + r.height*(float64(i)+0.5)
		end := at(turn, inner-fanHours-1.5)
		mark := len(d.Shapes)
		d.Area("touch-area", wedge(face{f.latitude, 1}, i, len(lessons), func(a quantity.Angle) drawing.Point { return at(a, edge) }, at(0, 0))...)
		d.Area("cast", at(0, 0), at(0, fanTip), end)
		d.Line("leader", at(turn, edge+0.3), at(turn, edge+2.75), beside(fanWidth-fanBend, row), beside(fanWidth, row))
		d.Line("lesson", at(turn, 8.5), end)
		d.Disc("stone", at(turn, edge-fanBand/2), 1.05)
		d.Disc("sun", sunOpposite(turn, edge, height, beside), fanSun)
		d.Link(mark, lesson.File)
	}
	d.Area("gnomon", beside(fanCentre, height/2-1.1), at(0, fanTip), beside(fanCentre, height/2+1.1))
	return d
}

// fanSun is the radius of the Sun, on the other side of the gnomon than the shadow.
const fanSun = 9.0

// sunOpposite is where the Sun is drawn while the shadow lies on a line: straight behind
// the centre of the dial, and beside its flat edge where that is beyond the end of it.
func sunOpposite(turn quantity.Angle, edge, height float64, beside func(x, y float64) drawing.Point) drawing.Point {
	const out = 20.0
	up := out * turn.Sin() / turn.Cos()
	most := edge - fanSun
	return beside(fanCentre-out, height/2-max(-most, min(most, up)))
}
