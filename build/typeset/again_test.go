package typeset_test

import (
	"bytes"
	"testing"

	"noonbook/build/drawing"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/typeset"
)

// Words that remember write what words that do not would: each drawing and sheet by itself,
// in the measure of its result, however often and under whatever head it is shown.
func TestRememberedDrawingsAreTheSame(t *testing.T) {
	plain := words(t, true)
	remembering := plain.Remembering()
	drawn := func(mm float64) drawing.Drawing {
		d := drawing.Drawing{Name: "strip", Width: 100, Height: 30, Title: say.Line("sky.fist")}
		d.Line("rule", drawing.Point{X: mm, Y: 20}, drawing.Point{X: 90, Y: 20})
		d.Label("label", drawing.Point{X: mm, Y: 15}, drawing.Start, say.Number(mm, "mm", 0))
		return d
	}
	r := result.Result{Drawings: []drawing.Drawing{drawn(50), drawn(60)}, Sheets: append(drawing.PaperOf("A4").Sheets(drawn(50)), drawing.PaperOf("A4").Sheets(drawn(70))...)}
	for _, metric := range []bool{false, true, false} {
		r.Metric = metric
		if got, want := remembering.AppendBlock([]byte("before"), "x", r, nil), plain.AppendBlock([]byte("before"), "x", r, nil); !bytes.Equal(got, want) {
			t.Errorf("metric %v:\n%s\nwant\n%s", metric, got, want)
		}
	}
	for _, head := range []typeset.SheetHead{{}, {School: "Alder Reach", Name: "Strip", Lesson: "1 Strips"}} {
		if got, want := remembering.AppendSheets(nil, r.Sheets, head), plain.AppendSheets(nil, r.Sheets, head); !bytes.Equal(got, want) {
			t.Errorf("%+v:\n%s\nwant\n%s", head, got, want)
		}
	}
}
