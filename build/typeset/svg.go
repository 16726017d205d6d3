package typeset

import (
	"math"
	"strconv"

	"noonbook/build/drawing"
)

// AppendDrawing appends a drawing as SVG, one user unit a millimetre, with its
// title and description.
func (w *Words) AppendDrawing(dst []byte, d drawing.Drawing) []byte {
	dst = append(dst, `<svg class="drawing `...)
	dst = appendAttribute(dst, d.Name)
	dst = append(dst, `" viewBox="0 0 `...)
	dst = appendLength(dst, d.Width)
	dst = append(dst, ' ')
	dst = appendLength(dst, d.Height)
	if d.Ornament {
		dst = append(dst, `" aria-hidden="true">`...)
	} else {
		dst = append(dst, `" role="img">`...)
		dst = w.appendTitle(dst, d)
	}
	dst = w.appendShapes(dst, d.Shapes)
	return append(dst, `</svg>`...)
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

// appendShapes appends the shapes; neighbours that lead to one page are one link.
func (w *Words) appendShapes(dst []byte, shapes []drawing.Shape) []byte {
	for len(shapes) > 0 {
		href, n := shapes[0].Href, 1
		for n < len(shapes) && shapes[n].Href == href {
			n++
		}
		if href != "" { // the list beside the drawing leads there for the keyboard
			dst = append(dst, `<a href="`...)
			dst = appendAttribute(dst, href)
			dst = append(dst, `" tabindex="-1">`...)
		}
		for _, s := range shapes[:n] {
			dst = w.appendShape(dst, s)
		}
		if href != "" {
			dst = append(dst, `</a>`...)
		}
		shapes = shapes[n:]
	}
	return dst
}

func (w *Words) appendShape(dst []byte, s drawing.Shape) []byte {
	if len(s.Points) == 0 {
		return dst
	}
	switch {
	case s.Anchor != "" && s.Wide > 0:
		return w.appendParagraph(dst, s)
	case s.Anchor != "":
		return w.appendLabel(dst, s, w.Text(s.Text))
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

// appendParagraph writes a label line by line.
func (w *Words) appendParagraph(dst []byte, s drawing.Shape) []byte {
	at := s.Points[0]
	for _, line := range Lines(w.Text(s.Text), s.Wide/s.Size) {
		s.Points = []drawing.Point{at}
		dst = w.appendLabel(dst, s, line)
		at.Y += s.Leading
	}
	return dst
}

func (w *Words) appendLabel(dst []byte, s drawing.Shape, text string) []byte {
	dst = append(dst, `<text class="`...)
	dst = appendAttribute(dst, s.Role)
	dst = append(dst, `" x="`...)
	dst = appendLength(dst, s.Points[0].X)
	dst = append(dst, `" y="`...)
	dst = appendLength(dst, s.Points[0].Y)
	if s.Anchor != drawing.Start {
		dst = append(dst, `" text-anchor="`...)
		dst = append(dst, s.Anchor...)
	}
	if s.Turn != 0 {
		dst = append(dst, `" transform="rotate(`...)
		dst = appendLength(dst, s.Turn)
		dst = append(dst, ' ')
		dst = appendLength(dst, s.Points[0].X)
		dst = append(dst, ' ')
		dst = appendLength(dst, s.Points[0].Y)
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
