package rocket_test

import (
	"testing"

	"noonbook/build/placeholder/entrytest"
)

// What pupils see of field and launcher is the drawing with its cautions and warnings,
// without the teacher's table.
func TestDrawingAlone(t *testing.T) {
	for name, given := range map[string][]string{"rocket-zone": {"field.width_m=40", "field.length_m=40"}, "rocket-parts": nil} {
		whole := reckon(t, "alder reach", name, "2027-04-28", given...)
		r := reckon(t, "alder reach", name, "2027-04-28", append(given, "show=drawing")...)
		if len(r.Drawings) != 1 || len(r.Tables)+len(r.Notes)+len(r.Working) > 0 {
			t.Errorf("%s: %d drawings, %d tables, %d notes, %d steps", name, len(r.Drawings), len(r.Tables), len(r.Notes), len(r.Working))
		}
		if len(r.Facts) != len(whole.Facts) || len(r.Cautions) != len(whole.Cautions) || len(r.Warnings) != len(whole.Warnings) {
			t.Errorf("%s: facts, cautions or warnings are lost", name)
		}
		table := reckon(t, "alder reach", name, "2027-04-28", "show=table")
		if len(table.Drawings) > 0 || len(table.Tables) != len(whole.Tables) {
			t.Errorf("%s: the table is not alone", name)
		}
	}
}

// A template without its numbers has the same sheets and the same cautions.
func TestTemplateAlone(t *testing.T) {
	whole, r := reckon(t, "alder reach", "rocket-wrap", "2027-04-28", "fins=6"), reckon(t, "alder reach", "rocket-wrap", "2027-04-28", "fins=6", "numbers=false")
	if len(r.Facts)+len(r.Notes)+len(r.Working) > 0 {
		t.Errorf("%d facts, %d notes, %d steps", len(r.Facts), len(r.Notes), len(r.Working))
	}
	if len(r.Sheets) == 0 || len(r.Sheets) != len(whole.Sheets) || len(r.Cautions) != len(whole.Cautions) {
		t.Errorf("%d sheets of %d, %d cautions of %d", len(r.Sheets), len(whole.Sheets), len(r.Cautions), len(whole.Cautions))
	}
}

// The line for a shorter tube is where a ruler finds it on the true-size sheet: so many
// millimetres below the edge that the nose goes on, along the whole wrap. Without the
// argument there is none.
func TestLineForAShorterTube(t *testing.T) {
	sheet := reckon(t, "alder reach", "rocket-wrap", "2027-04-28", "shorter_mm=40").Sheets[0].Drawing
	wrap, line := entrytest.Path(t, sheet, "cut wrap"), entrytest.Path(t, sheet, "choice shorter")
	for i, end := range line {
		entrytest.Near(t, "below the top", end.Y-wrap[0].Y, 40, 1e-9)
		entrytest.Near(t, "along the wrap", end.X, wrap[i].X, 1e-9)
	}
	if n := len(entrytest.Roled(reckon(t, "alder reach", "rocket-wrap", "2027-04-28").Sheets[0].Drawing, "choice shorter")); n > 0 {
		t.Errorf("%d lines nobody asked for", n)
	}
}
