package typeset

import (
	"slices"
	"testing"

	"noonbook/build/drawing"
	"noonbook/build/say"
)

// Of a drawing on several sheets each has what shows on it, and all of them together have
// everything: what lies on two is on both.
func TestSheetsHaveTheirParts(t *testing.T) {
	w, err := Language("en", false)
	if err != nil {
		t.Fatal(err)
	}
	d := drawing.Drawing{Name: "wall", Width: 500, Height: 60, Title: say.Line("moon-poster.title")}
	d.Disc("mark", drawing.Point{X: 20, Y: 20}, 2)
	d.Disc("mark", drawing.Point{X: 480, Y: 20}, 2)
	d.Line("across", drawing.Point{X: 5, Y: 40}, drawing.Point{X: 495, Y: 40})
	d.Label("name", drawing.Point{X: 20, Y: 30}, drawing.Start, say.Text("West"))
	d.Label("name", drawing.Point{X: 480, Y: 30}, drawing.End, say.Text("East"))
	sheets := drawing.PaperOf("A4").Sheets(d)
	if len(sheets) < 2 {
		t.Fatalf("%d sheets", len(sheets))
	}
	told := func(i int) (list []string) {
		shapes, labels := within(&sheets[i], w.Place(&d, OnPaper))
		for _, s := range shapes {
			list = append(list, s.Role)
		}
		for _, l := range labels {
			if shapes[l.Shape].Anchor == "" {
				t.Errorf("a label is that of a %s", shapes[l.Shape].Role)
			}
			list = append(list, l.Lines...)
		}
		return list
	}
	if got, want := told(0), []string{"mark", "across", "name", "West"}; !slices.Equal(got, want) {
		t.Errorf("the first sheet has %q, want %q", got, want)
	}
	if got, want := told(len(sheets)-1), []string{"mark", "across", "name", "East"}; !slices.Equal(got, want) {
		t.Errorf("the last sheet has %q, want %q", got, want)
	}
}
