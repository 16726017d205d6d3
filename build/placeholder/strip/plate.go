package strip

import (
	"math"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
)

// stripPlate is the picture that opens the lesson: the whole strip with its two ends and
// nothing between them, since where the others go is what pupils are asked.
func stripPlate() entry.Entry {
	return entry.Entry{
		Name:      "strip-plate",
		Summary:   "The paper strip in a large picture, laid to and fro, with the Sun at its beginning, the last body at its end and the tags between, and without the bodies that pupils place.",
		Plate:     true,
		Arguments: stripArguments(),
		Settings:  roll,
		Facts: []entry.Fact{
			{Name: "squares", Doc: "squares of the strip"},
			{Name: "rows", Doc: "rows in which the picture lays it"},
		},
		Sources:  []string{sourceOrbits},
		Harmless: "A picture; laying paper out is the work of strip-table.",
		Reckon:   reckonStripPlate,
	}
}

func reckonStripPlate(v form.Values) (result.Result, error) {
	s, err := stripOf(v)
	if err != nil {
		return result.Result{}, err
	}
	last := s.Marks()[0]
	for _, m := range s.Marks() {
		if m.Fits {
			last = m
		}
	}
	w := layRibbon(float64(s.Squares))
	w.Drawing = drawing.Drawing{
		Name: "strip-plate", Width: plateWide,
		Title: say.Line("strip-plate.title"), Description: say.Line("strip-plate.description"),
	}
	w.draw()
	w.ends(last.Squares, say.Words("body.sun"), say.Words("body."+last.Name), last.Orbit > 0)
	r := result.Result{
		Facts:    []result.Fact{{Name: "squares", Value: say.Count(s.Squares)}, {Name: "rows", Value: say.Count(w.rows)}},
		Drawings: []drawing.Drawing{w.Drawing},
		Notes:    []say.Phrase{say.Line("strip-plate.note", say.Count(s.Squares), say.Metres(s.Length(), 1))},
	}
	if last.Orbit == 0 {
		r.Warnings = []say.Phrase{say.Line("strip-table.only_sun")}
	}
	return r, nil
}

// Measures of the picture in millimetres.
const (
	plateWide  = 150.0
	plateSide  = 16.0 // from the edge of the picture to the turns
	plateTop   = 12.0 // for the names
	ribbonWide = 7.0
	ribbonRow  = 18.0 // from one row to the next
	plateRow   = 90.0 // squares in a row at most
	plateRows  = 4
)

// A ribbon is the strip laid to and fro in rows. A turn holds no squares: the seam at the
// end of a row is that at which the next begins.
type ribbon struct {
	drawing.Drawing
	squares, row float64
	rows         int
}

func layRibbon(squares float64) ribbon {
	rows := min(plateRows, int(math.Ceil(squares/plateRow)))
	row := math.Ceil(squares / float64(rows))
	if row > 20 {
		row = 10 * math.Ceil(row/10)
	}
	return ribbon{squares: squares, row: row, rows: int(math.Ceil(squares / row))}
}

// at is where a seam is, on the upper edge of the paper.
func (w ribbon) at(squares float64) (p drawing.Point, row int) {
	row = min(w.rows-1, max(0, int(math.Ceil(squares/w.row-1e-9))-1))
	far := (squares - float64(row)*w.row) / w.row
	if row%2 == 1 { // back
		far = 1 - far
	}
	return drawing.Point{X: plateSide + far*(plateWide-2*plateSide), Y: plateTop + float64(row)*ribbonRow}, row
}

// draw draws the paper with its turns and tags.
func (w *ribbon) draw() {
	for row := range w.rows {
		from, to := float64(row)*w.row, min(w.squares, float64(row+1)*w.row)
		b, _ := w.at(to)
		a := drawing.Point{X: plateSide, Y: b.Y}
		if row%2 == 1 {
			a.X = plateWide - plateSide
		}
		w.Area("card", a, b, drawing.Point{X: b.X, Y: b.Y + ribbonWide}, drawing.Point{X: a.X, Y: a.Y + ribbonWide})
		if row < w.rows-1 {
			w.turn(b, row%2 == 0)
		}
		w.seams(from, to)
	}
	end, _ := w.at(w.squares)
	w.Height = end.Y + ribbonWide + 9
}

// turn draws the paper from the end of one row to the beginning of the next, a half ring.
func (w *ribbon) turn(from drawing.Point, right bool) {
	const steps = 16
	centre := drawing.Point{X: from.X, Y: from.Y + (ribbonWide+ribbonRow)/2}
	side := 1.0
	if !right {
		side = -1
	}
	var edge []drawing.Point
	for _, ring := range []struct{ radius, way float64 }{{(ribbonRow + ribbonWide) / 2, 1}, {(ribbonRow - ribbonWide) / 2, -1}} {
		for i := range steps + 1 {
			a := math.Pi * (float64(i)/steps - 0.5) * ring.way
			edge = append(edge, drawing.Point{X: centre.X + side*ring.radius*math.Cos(a), Y: centre.Y + ring.radius*math.Sin(a)})
		}
	}
	w.Area("card", edge...)
}

// seams draws the seams of a row, and a tag at every tenth.
func (w *ribbon) seams(from, to float64) {
	step := max(10, drawing.Step(w.row, 7))
	for n := math.Floor(from) + 1; n < to+1e-9; n++ {
		at, _ := w.at(n)
		if math.Mod(n, 10) != 0 {
			if (plateWide-2*plateSide)/w.row > 1 {
				w.Line("seam", drawing.Point{X: at.X, Y: at.Y + ribbonWide - 1.4}, drawing.Point{X: at.X, Y: at.Y + ribbonWide})
			}
			continue
		}
		w.Line("tag", drawing.Point{X: at.X, Y: at.Y}, drawing.Point{X: at.X, Y: at.Y + ribbonWide})
		if math.Mod(n, step) == 0 && n < w.squares-1.1*step { // the last body is named there
			w.Label("figure", drawing.Point{X: at.X, Y: at.Y + ribbonWide + 4.4}, drawing.Middle, say.Count(int(n)))
		}
	}
}

// ends draws the Sun, the last body and their names, and names a tag.
func (w *ribbon) ends(last float64, sun, body say.Value, fits bool) {
	start := drawing.Point{X: plateSide, Y: plateTop + ribbonWide/2}
	w.Disc("sun", start, 3)
	w.Label("name", drawing.Point{X: start.X, Y: plateTop - 3}, drawing.Middle, sun)
	if w.squares >= 20 {
		tag, _ := w.at(10)
		label := drawing.Point{X: tag.X + 24, Y: plateTop - 3}
		w.Line("leader", drawing.Point{X: label.X - 1.2, Y: label.Y - 1.2}, drawing.Point{X: tag.X, Y: plateTop + 1})
		w.Disc("dot", drawing.Point{X: tag.X, Y: plateTop + 1}, 0.5)
		w.Label("name", label, drawing.Start, say.Words("strip-plate.tag"))
	}
	if !fits {
		return
	}
	at, row := w.at(last)
	anchor, aside := drawing.End, -2.0
	if row%2 == 1 {
		anchor, aside = drawing.Start, 2
	}
	w.Disc("body", drawing.Point{X: at.X, Y: at.Y + ribbonWide/2}, 1.6)
	w.Label("name", drawing.Point{X: at.X + aside, Y: at.Y + ribbonWide + 5.2}, anchor, body)
}
