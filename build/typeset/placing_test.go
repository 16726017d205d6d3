package typeset_test

import (
	"strings"
	"testing"

	"noonbook/build/drawing"
	"noonbook/build/say"
	"noonbook/build/typeset"
)

// A chart of ten marks in a row, whose names would cover each other on one side.
func TestLabelsTakeTheirPlaces(t *testing.T) {
	w := words(t, false)
	d := drawing.Drawing{Name: "chart", Width: 100, Height: 30}
	place := func() map[string]typeset.Label {
		placed := map[string]typeset.Label{}
		for _, l := range w.Place(&d, typeset.OnPage) {
			placed[l.Lines[0]] = l
		}
		return placed
	}
	name := func(text string, x float64, rank int) {
		at := drawing.Point{X: x, Y: 15}
		d.Disc("mark", at, 1)
		d.Offer("name", rank, say.Text(text), drawing.Beside(at, 1.6)...)
	}
	name("first", 20, 1)
	if l := place()["first"]; l.Anchor != drawing.Start || l.At.X != 21.6 {
		t.Errorf("alone a name stands at the right: %+v", l)
	}
	name("second", 26, 1)
	if l := place()["first"]; l.Anchor != drawing.End {
		t.Errorf("a mark at the right sends it to the left: %+v", l)
	}
	name("at the edge", 96, 1)
	if l := place()["at the edge"]; l.Anchor != drawing.End {
		t.Errorf("a name stays in the drawing: %+v", l)
	}
	d.Block(drawing.Box{Left: 30, Top: 0, Right: 80, Bottom: 30})
	name("gone", 60, 1)
	if _, ok := place()["gone"]; ok {
		t.Error("a name stands where none may")
	}
	name("kept", 70, drawing.Keep)
	if l, ok := place()["kept"]; !ok || !l.Crowded {
		t.Error("a name that must stand is left out, or nobody hears that it is crowded")
	}
}

// Lines run below a label only where no other place is free of them.
func TestLabelsAvoidLines(t *testing.T) {
	d := drawing.Drawing{Name: "chart", Width: 100, Height: 30}
	at := drawing.Point{X: 50, Y: 15}
	d.Line("curve", drawing.Point{X: 50, Y: 15}, drawing.Point{X: 100, Y: 15})
	d.Offer("name", drawing.Keep, say.Text("curve"), drawing.Beside(at, 1)...)
	if l := words(t, false).Place(&d, typeset.OnPage)[0]; l.Anchor != drawing.End {
		t.Errorf("%+v", l)
	}
}

// The room that no row of labels takes is taken out of a drawing.
func TestSpareRoomIsTakenOut(t *testing.T) {
	d := drawing.Drawing{Name: "strip", Width: 100, Height: 50}
	d.Room(0, 30)
	d.Line("rule", drawing.Point{X: 0, Y: 40}, drawing.Point{X: 100, Y: 40})
	d.Offer("name", drawing.Keep, say.Text("x"), drawing.Place{At: drawing.Point{X: 10, Y: 30}, Anchor: drawing.Start})
	got := string(words(t, false).AppendDrawing(nil, d))
	const want = `<svg class="drawing strip" viewBox="0 0 100 22.52" role="img"><title>⟦⟧</title><path class="rule" d="M0 12.52L100 12.52"/><text class="name" x="10" y="2.52">x</text></svg>`
	if got != want { // 3.4 mm tall letters rise 0.74 of that above their foot
		t.Errorf("%s\nwant\n%s", got, want)
	}
}

// A lesson draws nothing higher than 352 px, 22 rem of 16 px: letters of 3.4 mm are 11 px
// there in a drawing 108.8 mm high.
func TestWhatAPageWouldShrinkIsTall(t *testing.T) {
	w := words(t, false)
	for high, tall := range map[float64]bool{60: false, 108: false, 110: true, 300: true} {
		d := drawing.Drawing{Name: "d", Width: 180, Height: high}
		d.Label("label", drawing.Point{X: 90, Y: 30}, drawing.Middle, say.Text("Sun"))
		if got := strings.Contains(string(w.AppendDrawing(nil, d)), `class="drawing d tall"`); got != tall {
			t.Errorf("%v mm high: tall is %v", high, got)
		}
		d.Ornament = true
		if strings.Contains(string(w.AppendDrawing(nil, d)), "tall") {
			t.Errorf("an ornament %v mm high is tall", high)
		}
	}
	if css := string(typeset.Style()); !strings.Contains(css, ".parted .computed > svg{max-height:22rem") && !strings.Contains(css, ".parted .computed > svg { max-height: 22rem; }") {
		t.Error("lessons no longer draw 22 rem high: PageHeight follows them")
	}
}
