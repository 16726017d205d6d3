package typeset_test

import (
	"strings"
	"testing"

	"noonbook/build/drawing"
	"noonbook/build/say"
	"noonbook/build/typeset"
)

// A label that is turned clockwise is so on the page: rotate() of SVG 2, section 8.5
// (CSS Transforms Level 1, section 6), turns from the x axis to the y axis, which
// points down, so that a positive angle is clockwise.
func TestLabelsTurnClockwise(t *testing.T) {
	w := words(t, false)
	d := drawing.Drawing{Name: "thing", Width: 50, Height: 50, Title: say.Line("compass.true_north")}
	d.Turned("label", drawing.Point{X: 7, Y: 8}, 30, say.Text("A"))
	d.Turned("label", drawing.Point{X: 17, Y: 18}, -45, say.Text("B"))
	out := string(w.AppendSheet(nil, &drawing.PaperOf("A4").Sheets(d)[0], typeset.SheetHead{}))
	for _, want := range []string{`rotate(30 7 8)`, `rotate(-45 17 18)`} {
		if !strings.Contains(out, want) {
			t.Errorf("there is no %s in %s", want, out)
		}
	}
}
