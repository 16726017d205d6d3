package drawing

import "strings"

// A LineKind is what a line of a sheet tells the person who cuts it out. The kind is the first
// word of a shape's role, so that "cut edge" is a line to cut, and looks the same on every
// sheet; what is none of these is only looked at.
type LineKind string

const (
	Cut       LineKind = "cut"        // an unbroken line: along it with the scissors
	StyleEdge LineKind = "style-edge" // a heavy line: the edge whose shadow is read, cut once and never trimmed
	Fold      LineKind = "fold"       // dashes: along it with the fold
	Glue      LineKind = "glue"       // a grey area: it takes the glue
	Choice    LineKind = "choice"     // dots: a cut only where the words beside it want it
)

// LineKinds returns the kinds in the order of a sheet's key.
func LineKinds() []LineKind { return []LineKind{Cut, StyleEdge, Fold, Glue, Choice} }

// Lines returns the kinds of line that the sheet shows, in the order of its key. Of a
// drawing laid out over several sheets each has its own.
func (s Sheet) Lines() []LineKind {
	shown := map[LineKind]bool{}
	width, height, _ := s.Area()
	for _, shape := range s.Drawing.Shapes {
		first, _, _ := strings.Cut(shape.Role, " ")
		if shape.Anchor == "" && shape.meets(s.Left, s.Top, s.Left+width, s.Top+height) {
			shown[LineKind(first)] = true
		}
	}
	var kinds []LineKind
	for _, kind := range LineKinds() {
		if shown[kind] {
			kinds = append(kinds, kind)
		}
	}
	return kinds
}

// meets reports whether a stroke of the shape, or its disc, is within the rectangle.
func (s Shape) meets(left, top, right, bottom float64) bool {
	for i, to := range s.Points {
		from := s.Points[max(0, i-1)]
		if i == 0 && s.Closed {
			from = s.Points[len(s.Points)-1]
		}
		if within(from, to, left-s.Radius, top-s.Radius, right+s.Radius, bottom+s.Radius) {
			return true
		}
	}
	return false
}

// within reports whether a part of the stroke is inside the rectangle, by Liang and Barsky's
// way of clipping (ACM Transactions on Graphics 3, 1984, page 1).
func within(from, to Point, left, top, right, bottom float64) bool {
	begin, end := 0.0, 1.0
	for _, side := range []struct{ step, room float64 }{
		{from.X - to.X, from.X - left}, {to.X - from.X, right - from.X},
		{from.Y - to.Y, from.Y - top}, {to.Y - from.Y, bottom - from.Y},
	} {
		switch {
		case side.step == 0 && side.room < 0:
			return false
		case side.step < 0:
			begin = max(begin, side.room/side.step)
		case side.step > 0:
			end = min(end, side.room/side.step)
		}
	}
	return begin <= end
}
