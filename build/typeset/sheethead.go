package typeset

import (
	"noonbook/build/drawing"
	"noonbook/build/say"
)

// Measures of a sheet's head in millimetres. Printers reach to 4 or 5 mm from the edge of
// the paper, so a line whose letters begin at 6 is safe (common practice, no source).
const (
	headOver  = 8.6  // base of the line above the name: school and lesson
	headName  = 13.8 // of the name
	headKey   = 18.2 // of the key of lines
	headSize  = 2.7  // of its letters, by the style sheet
	nameSize  = 4.4
	slimName  = 8.9 // base of the name where the head is slim
	slimSize  = 3.4
	keySample = 8.0 // of each line in the key
	keyGap    = 3.0 // between two lines of the key, and two parts of a slim head
)

// appendHead writes what the sheet says of itself: school and lesson, the name and how many
// copies, and the lines that it uses. Slim, the words are one line in the margin of the
// paper, and the key is above the check bar.
func (w *Words) appendHead(dst []byte, s *drawing.Sheet, head SheetHead) []byte {
	if head.Name == "" { // a small picture of the sheet
		return dst
	}
	left, right := drawing.PaperMargin, s.Paper.Width-drawing.PaperMargin
	if !s.Slim {
		half := (right - left) / 2
		dst = appendFitted(dst, "sheet-school", left, headOver, drawing.Start, head.School, labelFace, headSize, half-2)
		dst = appendFitted(dst, "sheet-lesson", right, headOver, drawing.End, head.Lesson, labelFace, headSize, half-2)
		wide := right - left - widthOf(head.Copies, labelBold)*headSize - keyGap
		dst = appendFitted(dst, "sheet-name", left, headName, drawing.Start, head.Name, textBold, nameSize, wide)
		dst = appendFitted(dst, "sheet-copies", right, headName, drawing.End, head.Copies, labelBold, headSize, right-left)
		return w.appendKey(dst, s, headKey)
	}
	// The name and the lesson to the left, school and copies to the right, each as wide as
	// its share of the letters.
	about := head.Lesson + " · " + head.School
	ems := []float64{widthOf(head.Name, textBold) * slimSize, widthOf(about, labelFace) * headSize, widthOf(head.Copies, labelBold) * headSize}
	shrink := min(1, (right-left-2*keyGap)/(ems[0]+ems[1]+ems[2]))
	dst = appendFitted(dst, "sheet-name slim", left, slimName, drawing.Start, head.Name, textBold, slimSize, ems[0]*shrink)
	dst = appendFitted(dst, "sheet-lesson", left+ems[0]*shrink+keyGap, slimName, drawing.Start, about, labelFace, headSize, ems[1]*shrink)
	dst = appendFitted(dst, "sheet-copies", right, slimName, drawing.End, head.Copies, labelBold, headSize, ems[2]*shrink)
	return w.appendKey(dst, s, s.Paper.Height-drawing.PaperMargin-drawing.CheckStrip+2.4)
}

// appendFitted writes one line that is no wider than its room: letters that would be are set
// closer and narrower, and none is left out.
func appendFitted(dst []byte, role string, x, y float64, anchor drawing.Anchor, text string, f face, size, room float64) []byte {
	if text == "" {
		return dst
	}
	dst = append(dst, `<text class="`...)
	dst = append(dst, role...)
	dst = append(dst, `" x="`...)
	dst = appendLength(dst, x)
	dst = append(dst, `" y="`...)
	dst = appendLength(dst, y)
	if anchor != drawing.Start {
		dst = append(dst, `" text-anchor="`...)
		dst = append(dst, anchor...)
	}
	if widthOf(text, f)*size > room {
		dst = append(dst, `" lengthAdjust="spacingAndGlyphs" textLength="`...)
		dst = appendLength(dst, room)
	}
	dst = append(dst, `">`...)
	dst = AppendText(dst, text)
	return append(dst, `</text>`...)
}

// lineWords are what the key says of each kind of line.
var lineWords = map[drawing.LineKind]string{
	drawing.Cut: "sheet.line_cut", drawing.StyleEdge: "sheet.line_style", drawing.Fold: "sheet.line_fold",
	drawing.Glue: "sheet.line_glue", drawing.Choice: "sheet.line_choice",
}

// appendKey shows each kind of line that the sheet uses with what it asks for, on the base
// line y.
func (w *Words) appendKey(dst []byte, s *drawing.Sheet, y float64) []byte {
	kinds := s.Lines()
	if len(kinds) == 0 {
		return dst
	}
	var key drawing.Drawing
	x := drawing.PaperMargin
	for _, kind := range kinds {
		from, to := drawing.Point{X: x, Y: y - 0.9}, drawing.Point{X: x + keySample, Y: y - 0.9}
		if kind == drawing.Glue {
			key.Area(string(kind), drawing.Point{X: from.X, Y: y - 2.2}, drawing.Point{X: to.X, Y: y - 2.2}, drawing.Point{X: to.X, Y: y + 0.4}, drawing.Point{X: from.X, Y: y + 0.4})
		} else {
			key.Line(string(kind), from, to)
		}
		words := say.Words(lineWords[kind])
		key.Label("sheet-key", drawing.Point{X: to.X + 1.5, Y: y}, drawing.Start, words)
		x = to.X + 1.5 + widthOf(w.Text(words), labelFace)*headSize + keyGap
	}
	return appendOnPaper(dst, &key, w.Place(&key, OnPaper), drawing.Start)
}
