package class

import (
	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/classroom"
	"noonbook/compute/place"
)

// Measures of a slip in millimetres.
const (
	slipsDown = 3   // on a sheet, one below the other
	slipBox   = 3.6 // side of a box to tick
	slipRow   = 8.0 // from question to question
	slipLine  = 9.0 // from line to line to write on
	slipBack  = 100 // where the boxes begin, at the longest question's end
)

// askedFor is what the slip asks families: a line each, with yes and no.
type askedFor struct{ outing, evening, photograph bool }

// A slip is what families fill in and send back.
type slip struct {
	unit  string
	back  say.Value   // by when
	asks  []say.Value // each with yes and no
	write []string    // keys of what is written on a line
}

func (a askedFor) lines() []say.Value {
	var lines []say.Value
	for _, one := range []struct {
		asked bool
		key   string
	}{
		{a.outing, "family-note.slip_outing"}, {a.evening, "family-note.slip_evening"}, {a.photograph, "family-note.slip_photograph"},
	} {
		if one.asked {
			lines = append(lines, say.Words(one.key))
		}
	}
	return lines
}

// slipSheets are slips to cut off and send back, three on a sheet.
func slipSheets(v form.Values, s slip) []drawing.Sheet {
	paper := drawing.PaperOf(school.Paper.Of(v))
	width, height := paper.Area()
	d := drawing.Drawing{
		Name: "slips", Width: width, Height: height,
		Title:       say.Line("family-note.slips"),
		Description: say.Line("family-note.slips_description"),
	}
	tall := height / slipsDown
	for i := range slipsDown {
		top := float64(i) * tall
		s.draw(&d, top, width)
		if i > 0 {
			d.Line("cut", drawing.Point{X: 0, Y: top}, drawing.Point{X: width, Y: top})
		}
	}
	return []drawing.Sheet{{Paper: paper, Drawing: d, Row: 1, Column: 1, Rows: 1, Columns: 1}}
}

func (s slip) draw(d *drawing.Drawing, top, width float64) {
	y := top + 7
	d.Label("strong", drawing.Point{X: 0, Y: y}, drawing.Start, say.Text(s.unit))
	d.Label("strong", drawing.Point{X: width, Y: y}, drawing.End, say.Words("family-note.slip_back", s.back))
	y += slipLine
	toWrite(d, y, 0, width, say.Words("family-note.slip_child"))
	for _, line := range s.asks {
		y += slipRow
		d.Label("ask", drawing.Point{X: 0, Y: y}, drawing.Start, line)
		for k, answer := range []string{"family-note.slip_yes", "family-note.slip_no"} {
			x := slipBack + 22*float64(k)
			d.Area("tick-box", drawing.Point{X: x, Y: y - slipBox + 0.6}, drawing.Point{X: x + slipBox, Y: y - slipBox + 0.6}, drawing.Point{X: x + slipBox, Y: y + 0.6}, drawing.Point{X: x, Y: y + 0.6})
			d.Label("ask", drawing.Point{X: x + slipBox + 1.5, Y: y}, drawing.Start, say.Words(answer))
		}
	}
	if len(s.asks) > 0 {
		y += 5
		d.Label("small", drawing.Point{X: 0, Y: y}, drawing.Start, say.Words("family-note.slip_silence"))
	}
	for _, key := range s.write {
		y += slipLine
		toWrite(d, y, 0, width, say.Words(key))
	}
	y += slipLine
	toWrite(d, y, 0, width*0.64, say.Words("family-note.slip_signed"))
	toWrite(d, y, width*0.68, width, say.Words("family-note.slip_date"))
}

// slipWords is room for the words before a line to write on.
const slipWords = 44.0

func toWrite(d *drawing.Drawing, y, left, right float64, words say.Value) {
	d.Label("ask", drawing.Point{X: left, Y: y}, drawing.Start, words)
	d.Line("grid", drawing.Point{X: min(left+slipWords, right-40), Y: y + 0.8}, drawing.Point{X: right, Y: y + 0.8})
}

// firstDay is the first day on which a lesson of the note is held.
func firstDay(held []classroom.Held, told func(int) bool) (first place.Date) {
	for i, h := range held {
		if told(i) && (first.IsZero() || h.Date.Before(first)) {
			first = h.Date
		}
	}
	return first
}
