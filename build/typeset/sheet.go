package typeset

import (
	"strings"

	"noonbook/build/drawing"
	"noonbook/build/say"
)

// A SheetHead is what every sheet of a printable says of itself.
type SheetHead struct {
	School string
	Lesson string       // with its number
	Name   string       // of the printable
	Copies string       // how many to print
	Each   []string     // how many of each sheet, where they differ
	Care   []say.Phrase // to the person who carries the sheet away
}

// AppendSheets appends printables at true size, a piece of paper each.
func (w *Words) AppendSheets(dst []byte, sheets []drawing.Sheet, head SheetHead) []byte {
	for i := range sheets {
		s := &sheets[i]
		turned := "portrait"
		if s.Paper.Width > s.Paper.Height {
			turned = "landscape"
		}
		dst = append(dst, `<div class="paper-sheet `...)
		dst = append(dst, turned...)
		dst = append(dst, `" role="region" tabindex="0" aria-label="`...)
		dst = appendAttribute(dst, w.Line(s.Drawing.Title))
		dst = append(dst, `">`...)
		one := head
		if len(sheets) > 1 {
			one.Name = w.Say("sheet.of_several", say.Text(head.Name), say.Count(i+1), say.Count(len(sheets)))
		}
		if len(head.Each) == len(sheets) {
			one.Copies = head.Each[i]
		}
		dst = w.AppendSheet(dst, s, one)
		dst = append(dst, `</div>`...)
	}
	return dst
}

// AppendSheet appends one piece of paper: the drawing, or its part, in a frame
// that cuts off the rest, with its head above and the check bar below and, where several
// sheets belong together, crosses to lay over one another.
func (w *Words) AppendSheet(dst []byte, s *drawing.Sheet, head SheetHead) []byte {
	dst = append(dst, `<svg class="true-size" width="`...)
	dst = appendLength(dst, s.Paper.Width)
	dst = append(dst, `mm" height="`...)
	dst = appendLength(dst, s.Paper.Height)
	dst = append(dst, `mm" viewBox="0 0 `...)
	dst = appendLength(dst, s.Paper.Width)
	dst = append(dst, ' ')
	dst = appendLength(dst, s.Paper.Height)
	dst = append(dst, `" role="img">`...)
	dst = w.appendTitle(dst, s.Drawing)
	dst = w.appendHead(dst, s, head)
	dst = w.once(dst, s, func(dst []byte) []byte { return w.appendPart(dst, s) })
	frame := drawing.Drawing{Shapes: make([]drawing.Shape, 0, 16)}
	checkBar(&frame, s.Paper)
	w.careLines(&frame, s.Paper, head.Care)
	if s.Rows*s.Columns > 1 {
		matchingMarks(&frame, s)
	}
	dst = appendOnPaper(dst, &frame, w.Place(&frame, OnPaper), drawing.Start)
	return append(dst, `</svg>`...)
}

// appendPart appends what a sheet shows of its drawing.
func (w *Words) appendPart(dst []byte, s *drawing.Sheet) []byte {
	width, height, top := s.Area()
	dst = append(dst, `<svg class="`...)
	dst = appendAttribute(dst, s.Drawing.Name)
	dst = append(dst, `" x="`...)
	dst = appendLength(dst, drawing.PaperMargin)
	dst = append(dst, `" y="`...)
	dst = appendLength(dst, top)
	dst = append(dst, `" width="`...)
	dst = appendLength(dst, width)
	dst = append(dst, `" height="`...)
	dst = appendLength(dst, height)
	dst = append(dst, `" viewBox="`...)
	dst = appendLength(dst, s.Left)
	dst = append(dst, ' ')
	dst = appendLength(dst, s.Top)
	dst = append(dst, ' ')
	dst = appendLength(dst, width)
	dst = append(dst, ' ')
	dst = appendLength(dst, height)
	part, labels := s.Drawing, w.Place(&s.Drawing, OnPaper)
	if s.Rows*s.Columns > 1 {
		part.Shapes, labels = within(s, labels)
	}
	usual := usualAnchor(labels)
	dst = appendAnchor(append(dst, '"'), usual, drawing.Start)
	dst = append(dst, '>')
	dst = appendOnPaper(dst, &part, labels, usual)
	return append(dst, `</svg>`...)
}

// within returns what of a drawing can show on a sheet with a part of it: four sheets of a
// poster would be four posters else.
func within(s *drawing.Sheet, labels []Label) ([]drawing.Shape, []Label) {
	const stroke = 2.0 // mm; half of the widest line and more
	width, height, _ := s.Area()
	frame := drawing.Box{Left: s.Left - stroke, Top: s.Top - stroke, Right: s.Left + width + stroke, Bottom: s.Top + height + stroke}
	var shapes []drawing.Shape
	var on []Label
	for i, shape := range s.Drawing.Shapes {
		for len(labels) > 0 && labels[0].Shape < i {
			labels = labels[1:]
		}
		if shape.Anchor == "" {
			if extent(shape).Meets(frame) {
				shapes = append(shapes, shape)
			}
			continue
		}
		if len(labels) > 0 && labels[0].Shape == i && (labels[0].patch.hull.Meets(frame) || len(labels[0].Leader) > 0 && labels[0].led.Meets(frame)) {
			label := labels[0]
			label.Shape = len(shapes)
			shapes, on = append(shapes, shape), append(on, label)
		}
	}
	return shapes, on
}

// extent is the box round a path or a disc.
func extent(s drawing.Shape) drawing.Box {
	b := boxRound(s.Points)
	return drawing.Box{Left: b.Left - s.Radius, Top: b.Top - s.Radius, Right: b.Right + s.Radius, Bottom: b.Bottom + s.Radius}
}

// checkBar draws 100 mm with a tick each centimetre at the foot of the paper.
func checkBar(d *drawing.Drawing, p drawing.Paper) {
	y := p.Height - drawing.PaperMargin - 2
	left := drawing.PaperMargin + 1
	d.Line("check", drawing.Point{X: left, Y: y}, drawing.Point{X: left + drawing.CheckBar, Y: y})
	for i := range 11 {
		x, rise := left+10*float64(i), 1.5
		if i == 0 || i == 10 {
			rise = 3.5
		}
		d.Line("check", drawing.Point{X: x, Y: y}, drawing.Point{X: x, Y: y - rise})
	}
	d.Label("check-label", drawing.Point{X: left, Y: y - 5}, drawing.Start, say.Words("sheet.check"))
}

// The lines of care stand beside the check bar: the leading and where they begin, in mm.
const (
	careLeading = 3.2
	careGap     = 6.0
)

// careLines writes what is to be taken care of at the foot of the paper.
func (w *Words) careLines(d *drawing.Drawing, p drawing.Paper, care []say.Phrase) {
	if len(care) == 0 {
		return
	}
	var said []string
	for _, c := range care {
		said = append(said, w.Line(c))
	}
	left := drawing.PaperMargin + 1 + drawing.CheckBar + careGap
	top := p.Height - drawing.PaperMargin - drawing.CheckStrip + careLeading
	d.Paragraph("care-line", drawing.Point{X: left, Y: top}, p.Width-drawing.PaperMargin-left, careLeading, say.Text(strings.Join(said, " ")))
}

// matchingMarks names the sheet's place and draws crosses where it overlaps its
// neighbours.
func matchingMarks(d *drawing.Drawing, s *drawing.Sheet) {
	width, height, top := s.Area()
	half := drawing.TileOverlap / 2
	cross := func(x, y float64) {
		x, y = x+drawing.PaperMargin, y+top
		d.Line("matching-mark", drawing.Point{X: x - 3, Y: y}, drawing.Point{X: x + 3, Y: y})
		d.Line("matching-mark", drawing.Point{X: x, Y: y - 3}, drawing.Point{X: x, Y: y + 3})
	}
	for _, t := range []float64{0.25, 0.75} {
		if s.Column > 1 {
			cross(half, t*height)
		}
		if s.Column < s.Columns {
			cross(width-half, t*height)
		}
		if s.Row > 1 {
			cross(t*width, half)
		}
		if s.Row < s.Rows {
			cross(t*width, height-half)
		}
	}
	// Above the words of the check bar: the lines of care take the other half of the foot.
	d.Label("check-label", drawing.Point{X: drawing.PaperMargin + 1, Y: s.Paper.Height - drawing.PaperMargin - 10.7}, drawing.Start,
		say.Words("sheet.tile", say.Count(s.Row), say.Count(s.Column), say.Count(s.Rows), say.Count(s.Columns)))
}
