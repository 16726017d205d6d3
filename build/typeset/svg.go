package typeset

import (
	"math"
	"slices"
	"strconv"

	"noonbook/build/drawing"
)

// AppendDrawing appends a drawing as SVG, one user unit a millimetre, with its
// title and description. Where the letters would be too small on a phone the labels
// come twice, for a wide page and for a narrow one, and the style sheet shows one.
func (w *Words) AppendDrawing(dst []byte, d drawing.Drawing) []byte {
	labels := w.Place(&d, OnPage)
	var onPhone []Label
	if !d.Ornament && tooSmall(labels, OnPhone.least(&d)) {
		onPhone = w.Place(&d, OnPhone)
	}
	close := closed(&d, labels, onPhone)
	top, bottom := close.extent(&d, labels, onPhone)
	dst = append(dst, `<svg class="drawing `...)
	dst = appendAttribute(dst, d.Name)
	dst = append(dst, `" viewBox="0 `...)
	dst = appendLength(dst, top)
	dst = append(dst, ' ')
	dst = appendLength(dst, d.Width)
	dst = append(dst, ' ')
	dst = appendLength(dst, bottom-top)
	if d.Ornament {
		dst = append(dst, `" aria-hidden="true">`...)
	} else {
		dst = append(dst, `" role="img">`...)
		dst = w.appendTitle(dst, d)
	}
	if onPhone == nil {
		dst = appendShapes(dst, close.shapes(d.Shapes), close.labels(labels))
	} else {
		shapes := close.shapes(d.Shapes)
		dst = appendShapes(dst, shapes, nil)
		dst = append(dst, `<g class="wide">`...)
		dst = appendLabels(dst, shapes, close.labels(labels))
		dst = append(dst, `</g><g class="narrow">`...)
		dst = appendLabels(dst, shapes, close.labels(onPhone))
		dst = append(dst, `</g>`...)
	}
	return append(dst, `</svg>`...)
}

// appendOnPaper appends the shapes of a printable.
func (w *Words) appendOnPaper(dst []byte, d *drawing.Drawing) []byte {
	return appendShapes(dst, d.Shapes, w.Place(d, OnPaper))
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
func appendShapes(dst []byte, shapes []drawing.Shape, labels []Label) []byte {
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
			if shapes[i].Anchor == "" {
				dst = appendShape(dst, shapes[i])
			} else if len(labels) > 0 && labels[0].Shape == i {
				dst = appendLabel(dst, shapes[i].Role, labels[0], 1)
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

// appendLabels appends labels alone. Letters that have grown stand in a group that is
// drawn larger, so that the style sheet says once how large they are.
func appendLabels(dst []byte, shapes []drawing.Shape, labels []Label) []byte {
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
				dst = appendLabel(dst, shapes[l.Shape].Role, l, larger(times))
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

func appendShape(dst []byte, s drawing.Shape) []byte {
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
	for i, p := range s.Points {
		if i == 0 {
			dst = append(dst, 'M')
		} else {
			dst = append(dst, 'L')
		}
		dst = appendLength(dst, p.X)
		dst = append(dst, ' ')
		dst = appendLength(dst, p.Y)
	}
	if s.Closed {
		dst = append(dst, 'Z')
	}
	return append(dst, `"/>`...)
}

// appendLabel appends the lines of a label, with its leader, in a group that is drawn
// that many times larger.
func appendLabel(dst []byte, role string, l Label, times float64) []byte {
	if len(l.Leader) > 1 {
		path := make([]drawing.Point, len(l.Leader))
		for i, p := range l.Leader {
			path[i] = drawing.Point{X: p.X / times, Y: p.Y / times}
		}
		dst = appendShape(dst, drawing.Shape{Role: "leader", Points: path})
	}
	sin, cos := math.Sincos(l.Turn * math.Pi / 180)
	for i, line := range l.Lines {
		down := float64(i) * l.Leading
		dst = appendLine(dst, role, drawing.Point{X: (l.At.X - down*sin) / times, Y: (l.At.Y + down*cos) / times}, l.Anchor, l.Turn, line)
	}
	return dst
}

func appendLine(dst []byte, role string, at drawing.Point, anchor drawing.Anchor, turn float64, text string) []byte {
	dst = append(dst, `<text class="`...)
	dst = appendAttribute(dst, role)
	dst = append(dst, `" x="`...)
	dst = appendLength(dst, at.X)
	dst = append(dst, `" y="`...)
	dst = appendLength(dst, at.Y)
	if anchor != drawing.Start {
		dst = append(dst, `" text-anchor="`...)
		dst = append(dst, anchor...)
	}
	if turn != 0 {
		dst = append(dst, `" transform="rotate(`...)
		dst = appendLength(dst, turn)
		dst = append(dst, ' ')
		dst = appendLength(dst, at.X)
		dst = append(dst, ' ')
		dst = appendLength(dst, at.Y)
		dst = append(dst, ')')
	}
	dst = append(dst, `">`...)
	dst = AppendText(dst, text)
	return append(dst, `</text>`...)
}

// appendLength writes millimetres to a hundredth, which no printer shows.
func appendLength(dst []byte, mm float64) []byte {
	return strconv.AppendFloat(dst, math.Round(mm*100)/100, 'f', -1, 64)
}
