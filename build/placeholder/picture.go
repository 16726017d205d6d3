package placeholder

import (
	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/strip"
)

func stripPicture() Entry {
	return Entry{
		Name:      "strip-picture",
		Summary:   "The paper strip drawn to scale, with its bodies.",
		Arguments: stripArguments(),
		Settings:  roll,
		Facts: []Fact{
			{"shrunk", "", "how many times smaller than the real strip the picture is, printed at true size"},
		},
		Sources: []string{sourceOrbits},
		Reckon:  reckonStripPicture,
	}
}

// The picture's measures in millimetres.
const (
	pictureWidth  = 180.0
	pictureMargin = 6.0
	labelRow      = 5.2
	labelLetter   = 2.05 // average width of a letter of a label
	paperHeight   = 7.0
)

func reckonStripPicture(v form.Values) (result.Result, error) {
	s, err := stripOf(v)
	if err != nil {
		return result.Result{}, err
	}
	var marks []strip.Mark
	for _, m := range s.Marks() {
		if m.Fits {
			marks = append(marks, m)
		}
	}
	rows := labelRows(marks, s)
	lowest := 0
	for _, row := range rows {
		lowest = max(lowest, row)
	}
	top := float64(lowest+1)*labelRow + 4
	d := drawing.Drawing{
		Name: "strip", Width: pictureWidth, Height: top + paperHeight + 9,
		Title:       say.Line("strip-picture.title", say.Count(s.Squares)),
		Description: say.Line("strip-picture.description", say.Words("body."+marks[len(marks)-1].Name)),
	}
	end := across(s, float64(s.Squares))
	d.Area("paper", drawing.Point{X: pictureMargin, Y: top}, drawing.Point{X: end, Y: top},
		drawing.Point{X: end, Y: top + paperHeight}, drawing.Point{X: pictureMargin, Y: top + paperHeight})
	for n := range tens(s.Squares) {
		x := across(s, float64(n))
		d.Line("seam", drawing.Point{X: x, Y: top + paperHeight - 2}, drawing.Point{X: x, Y: top + paperHeight})
		d.Label("figure", drawing.Point{X: x, Y: top + paperHeight + 5}, drawing.Middle, say.Count(n))
	}
	for i, m := range marks {
		x := across(s, m.Squares)
		y := top - 4 - float64(rows[i])*labelRow
		d.Line("leader", drawing.Point{X: x, Y: y + 1}, drawing.Point{X: x, Y: top + paperHeight/2})
		role, radius := "body", 0.9
		if m.Orbit == 0 {
			role, radius = "sun", 1.8
		}
		d.Disc(role, drawing.Point{X: x, Y: top + paperHeight/2}, radius)
		at, anchor := drawing.Point{X: x + 0.8, Y: y + 1.4}, drawing.Start
		if x > pictureWidth/2 {
			at.X, anchor = x-0.8, drawing.End
		}
		d.Label("name", at, anchor, say.Words("body."+m.Name))
	}
	shrunk := s.Length().Millimetres() / (pictureWidth - 2*pictureMargin)
	return result.Result{
		Facts:    []result.Fact{{Name: "shrunk", Value: say.Number(shrunk, "", 0)}},
		Drawings: []drawing.Drawing{d},
		Notes:    []say.Phrase{say.Line("strip-picture.note", say.Number(shrunk, "", 0))},
	}, nil
}

func across(s strip.Strip, squares float64) float64 {
	return pictureMargin + squares/float64(s.Squares)*(pictureWidth-2*pictureMargin)
}

// tens yields the squares that bear a figure: round numbers, ten or fewer.
func tens(squares int) func(func(int) bool) {
	step := 1
	for _, next := range []int{2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10000} {
		if squares/step <= 10 {
			break
		}
		step = next
	}
	return func(yield func(int) bool) {
		for n := 0; n <= squares; n += step {
			if !yield(n) {
				return
			}
		}
	}
}

// labelRows stacks the labels so that none covers another or the line that
// leads to one: each takes the lowest row that is free to its right (to its
// left in the right half, where labels end at their body).
func labelRows(marks []strip.Mark, s strip.Strip) []int {
	type box struct {
		left, right float64
		row         int
	}
	var placed []box
	rows := make([]int, len(marks))
	// From the right, so that the crowded inner bodies rise step by step to the
	// left and their lines pass beside the labels below them.
	for i := len(marks) - 1; i >= 0; i-- {
		x := across(s, marks[i].Squares)
		wide := labelLetter*float64(len(marks[i].Name)) + 2
		b := box{left: x, right: x + wide}
		if x > pictureWidth/2 {
			b = box{left: x - wide, right: x}
		}
		for clash := true; clash; {
			clash = false
			for _, other := range placed {
				covers := b.left < other.right+1 && other.left < b.right+1
				crosses := other.row < b.row && other.left < x && x < other.right
				crossed := b.row < other.row && b.left < other.left && other.left < b.right
				if covers && other.row == b.row || crosses || crossed {
					b.row++
					clash = true
					break
				}
			}
			if b.row > 2*len(marks) {
				break
			}
		}
		rows[i] = b.row
		placed = append(placed, b)
	}
	return rows
}
