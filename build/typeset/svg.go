package typeset

import (
	"math"
	"slices"
	"strconv"

	"noonbook/build/drawing"
)

// AppendDrawing appends a drawing as SVG, one user unit a millimetre, with its
// title and description. Where the letters would be too small on a phone the labels
// come twice, for a wide page and for a narrow one, and the style sheet shows one. One that
// is so high that its letters would be too small in a lesson has the class tall.
func (w *Words) AppendDrawing(dst []byte, d drawing.Drawing) []byte {
	placing := w.placing(&d)
	labels := placing.labels(OnPage)
	var onPhone []Label
	if !d.Ornament && tooSmall(labels, OnPhone.least(&d)) {
		onPhone = placing.labels(OnPhone)
	}
	close := closed(&d, labels, onPhone)
	top, bottom := close.extent(&d, labels, onPhone)
	dst = append(dst, `<svg class="drawing `...)
	dst = appendAttribute(dst, d.Name)
	if !d.Ornament && tooSmall(labels, NarrowLetters/PageHeight*(bottom-top)) {
		dst = append(dst, ` tall`...)
	}
	dst = append(dst, `" viewBox="0 `...)
	dst = appendLength(dst, top)
	dst = append(dst, ' ')
	dst = appendLength(dst, d.Width)
	dst = append(dst, ' ')
	dst = appendLength(dst, bottom-top)
	usual := usualAnchor(labels, onPhone)
	dst = appendAnchor(append(dst, '"'), usual, drawing.Start)
	if d.Ornament {
		dst = append(dst, ` aria-hidden="true">`...)
	} else {
		dst = append(dst, ` role="img">`...)
		dst = w.appendTitle(dst, d)
	}
	o := onto{anchor: usual, onward: true}
	if len(onPhone) == 0 {
		dst = o.appendShapes(dst, close.shapes(d.Shapes), close.labels(labels))
	} else {
		shapes := close.shapes(d.Shapes)
		dst = o.appendShapes(dst, shapes, nil)
		dst = append(dst, `<g class="wide">`...)
		dst = o.appendLabels(dst, shapes, close.labels(labels))
		dst = append(dst, `</g><g class="narrow">`...)
		dst = o.appendLabels(dst, shapes, close.labels(onPhone))
		dst = append(dst, `</g>`...)
	}
	return append(dst, `</svg>`...)
}

// An onto is how shapes are written into their drawing.
type onto struct {
	anchor drawing.Anchor // of labels, said by the drawing already
	onward bool           // a path goes on from point to point, which is shorter
}

// usualAnchor is the anchor that the drawing says for its labels: that of most.
func usualAnchor(sets ...[]Label) drawing.Anchor {
	many := map[drawing.Anchor]int{}
	for _, labels := range sets {
		for _, l := range labels {
			many[l.Anchor] += len(l.Lines)
		}
	}
	usual := drawing.Start
	for _, a := range []drawing.Anchor{drawing.Middle, drawing.End} {
		if many[a] > many[usual]+1 { // it is written once itself
			usual = a
		}
	}
	return usual
}

// appendAnchor says the anchor of labels, where it is another than what holds already.
func appendAnchor(dst []byte, anchor, holds drawing.Anchor) []byte {
	if anchor == holds {
		return dst
	}
	dst = append(dst, ` text-anchor="`...)
	dst = append(dst, anchor...)
	return append(dst, '"')
}

// appendOnPaper appends the shapes of a printable, whose drawing says that anchor. Paths
// have each point by itself there: a pen or a cutter need not add them up.
func appendOnPaper(dst []byte, d *drawing.Drawing, labels []Label, usual drawing.Anchor) []byte {
	return onto{anchor: usual}.appendShapes(dst, d.Shapes, labels)
}

// tooSmall reports whether letters are smaller than that many millimetres.
func tooSmall(labels []Label, least float64) bool {
	return slices.ContainsFunc(labels, func(l Label) bool { return l.Size < least-1e-9 })
}

func (w *Words) appendTitle(dst []byte, d drawing.Drawing) []byte {
	dst = append(dst, `<title>`...)
	dst = AppendText(dst, w.Line(d.Title))
	dst = append(dst, `</title>`...)
	if d.Description.Key != "" {
		dst = append(dst, `<desc>`...)
		dst = AppendText(dst, w.Line(d.Description))
		dst = append(dst, `</desc>`...)
	}
	return dst
}

// appendShapes appends the shapes, and among them the labels that are given;
// neighbours that lead to one page are one link.
func (o onto) appendShapes(dst []byte, shapes []drawing.Shape, labels []Label) []byte {
	for begin := 0; begin < len(shapes); {
		href, end := shapes[begin].Href, begin+1
		for end < len(shapes) && shapes[end].Href == href {
			end++
		}
		if href != "" { // the list beside the drawing leads there for the keyboard
			dst = append(dst, `<a href="`...)
			dst = appendAttribute(dst, href)
			dst = append(dst, `" tabindex="-1">`...)
		}
		for i := begin; i < end; i++ {
			if o.onward && i > begin && isLine(&shapes[i]) && isLine(&shapes[i-1]) && shapes[i].Role == shapes[i-1].Role {
				dst = appendPoints(dst[:len(dst)-len(pathEnd)], shapes[i].Points)
				dst = append(dst, pathEnd...)
			} else if shapes[i].Anchor == "" {
				dst = o.appendShape(dst, shapes[i])
			} else if len(labels) > 0 && labels[0].Shape == i {
				dst = o.appendLabel(dst, shapes[i].Role, labels[0], 1)
				labels = labels[1:]
			}
		}
		if href != "" {
			dst = append(dst, `</a>`...)
		}
		begin = end
	}
	return dst
}

// pathEnd ends a path.
const pathEnd = `"/>`

// isLine reports whether a shape is a straight line. On a page lines of one role that
// follow each other are one path: they have no inside that could be filled otherwise.
func isLine(s *drawing.Shape) bool {
	return s.Anchor == "" && len(s.Points) == 2 && s.Radius == 0 && !s.Closed
}

// appendLabels appends labels alone. Letters that have grown stand in a group that is
// drawn larger, so that the style sheet says once how large they are.
func (o onto) appendLabels(dst []byte, shapes []drawing.Shape, labels []Label) []byte {
	var grown []float64
	for _, l := range labels {
		if !slices.Contains(grown, l.Grown) {
			grown = append(grown, l.Grown)
		}
	}
	for _, times := range grown {
		if times != 1 {
			dst = append(dst, `<g transform="scale(`...)
			dst = strconv.AppendFloat(dst, larger(times), 'f', -1, 64)
			dst = append(dst, `)">`...)
		}
		for _, l := range labels {
			if l.Grown == times {
				dst = o.appendLabel(dst, shapes[l.Shape].Role, l, larger(times))
			}
		}
		if times != 1 {
			dst = append(dst, `</g>`...)
		}
	}
	return dst
}

// larger is a scale with three decimals, rounded up.
func larger(times float64) float64 { return math.Ceil(times*1000-1e-6) / 1000 }

func (o onto) appendShape(dst []byte, s drawing.Shape) []byte {
	if len(s.Points) == 0 {
		return dst
	}
	switch {
	case s.Radius > 0:
		dst = append(dst, `<circle class="`...)
		dst = appendAttribute(dst, s.Role)
		dst = append(dst, `" cx="`...)
		dst = appendLength(dst, s.Points[0].X)
		dst = append(dst, `" cy="`...)
		dst = appendLength(dst, s.Points[0].Y)
		dst = append(dst, `" r="`...)
		dst = appendLength(dst, s.Radius)
		return append(dst, `"/>`...)
	}
	dst = append(dst, `<path class="`...)
	dst = appendAttribute(dst, s.Role)
	dst = append(dst, `" d="`...)
	if o.onward && len(s.Points) > 2 {
		dst = appendOnward(dst, s.Points)
	} else {
		dst = appendPoints(dst, s.Points)
	}
	if s.Closed {
		dst = append(dst, 'Z')
	}
	return append(dst, pathEnd...)
}

func appendPoints(dst []byte, points []drawing.Point) []byte {
	for i, p := range points {
		if i == 0 {
			dst = append(dst, 'M')
		} else {
			dst = append(dst, 'L')
		}
		dst = appendLength(dst, p.X)
		dst = append(dst, ' ')
		dst = appendLength(dst, p.Y)
	}
	return dst
}

// appendOnward writes a path from its first point onward, each step from the point before
// to the next one. Points are those that appendPoints writes: they are rounded before
// they are taken from one another, so that no error adds up.
func appendOnward(dst []byte, points []drawing.Point) []byte {
	dst = appendPoints(dst, points[:1])
	dst = append(dst, 'l')
	x, y := hundredths(points[0].X), hundredths(points[0].Y)
	for i, p := range points[1:] {
		right, down := hundredths(p.X)-x, hundredths(p.Y)-y
		if i > 0 && right >= 0 {
			dst = append(dst, ' ') // a minus parts numbers itself
		}
		dst = appendStep(dst, right)
		if down >= 0 {
			dst = append(dst, ' ')
		}
		dst = appendStep(dst, down)
		x, y = x+right, y+down
	}
	return dst
}

func hundredths(mm float64) int { return int(math.Round(mm * 100)) }

// appendStep writes hundredths of a millimetre in millimetres, without a leading nought.
func appendStep(dst []byte, n int) []byte {
	if n < 0 {
		dst, n = append(dst, '-'), -n
	}
	whole, part := n/100, n%100
	if whole > 0 || part == 0 {
		dst = strconv.AppendInt(dst, int64(whole), 10)
	}
	if part == 0 {
		return dst
	}
	dst = append(dst, '.', byte('0'+part/10))
	if part%10 > 0 {
		dst = append(dst, byte('0'+part%10))
	}
	return dst
}

// appendLabel appends the lines of a label, with its leader, in a group that is drawn
// that many times larger.
func (o onto) appendLabel(dst []byte, role string, l Label, times float64) []byte {
	if len(l.Leader) > 1 {
		path := make([]drawing.Point, len(l.Leader))
		for i, p := range l.Leader {
			path[i] = drawing.Point{X: p.X / times, Y: p.Y / times}
		}
		dst = o.appendShape(dst, drawing.Shape{Role: "leader", Points: path})
	}
	sin, cos := math.Sincos(l.Turn * math.Pi / 180)
	for i, line := range l.Lines {
		down := float64(i) * l.Leading
		dst = o.appendLine(dst, role, drawing.Point{X: (l.At.X - down*sin) / times, Y: (l.At.Y + down*cos) / times}, l.Anchor, l.Turn, line)
	}
	return dst
}

func (o onto) appendLine(dst []byte, role string, at drawing.Point, anchor drawing.Anchor, turn float64, text string) []byte {
	dst = append(dst, `<text class="`...)
	dst = appendAttribute(dst, role)
	dst = append(dst, `" x="`...)
	dst = appendLength(dst, at.X)
	dst = append(dst, `" y="`...)
	dst = appendLength(dst, at.Y)
	dst = appendAnchor(append(dst, '"'), anchor, o.anchor)
	if turn != 0 {
		dst = append(dst, ` transform="rotate(`...)
		dst = appendLength(dst, turn)
		dst = append(dst, ' ')
		dst = appendLength(dst, at.X)
		dst = append(dst, ' ')
		dst = appendLength(dst, at.Y)
		dst = append(dst, `)"`...)
	}
	dst = append(dst, '>')
	dst = AppendText(dst, text)
	return append(dst, `</text>`...)
}

// appendLength writes millimetres to a hundredth, which no printer shows.
func appendLength(dst []byte, mm float64) []byte {
	n := math.Round(mm * 100)
	if n == 0 || !(math.Abs(n) < 1e15) { // a nought may have a sign, and beyond that not every hundredth is a number
		return strconv.AppendFloat(dst, n/100, 'f', -1, 64)
	}
	if n > -100 && n < 100 {
		if n < 0 {
			dst, n = append(dst, '-'), -n
		}
		dst = append(dst, '0')
	}
	return appendStep(dst, int(n))
}
