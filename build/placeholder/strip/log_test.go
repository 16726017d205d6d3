package strip_test

import (
	"strings"
	"testing"

	"noonbook/build/placeholder/entrytest"
)

// Places by hand: Earth 1.00000261 au, Jupiter 5.202887 au, Neptune 30.06992276
// au (Standish, approximate elements, table 1); 300 squares to Neptune put the
// Earth at 9.97677 and Jupiter at 51.9079 squares.
func TestStripLog(t *testing.T) {
	r := reckonLog(t, "alder reach", "strip-log",
		"group,body,squares,past_cm\nA,earth,9,10.7\nB,earth,9,10\n,jupiter,54,\n", "to=neptune")
	entrytest.Near(t, "Earth's mean", r.Tables[0].Rows[0].Cells[3].Number, 9+10.35/11, 1e-9)
	// the last digit of the place by hand is worth 0.0001 cm, the catalogue keeps a.u. to three digits more
	entrytest.Near(t, "Earth off", r.Tables[0].Rows[0].Cells[5].Number, (9+10.35/11-9.97677)*11, 0.001)
	entrytest.Near(t, "apart", r.Tables[0].Rows[0].Cells[4].Number, 0.7, 1e-9)
	entrytest.Near(t, "furthest", r.Tables[0].Rows[1].Cells[5].Number, (54-51.9079)*11, 0.001)
	if got := entrytest.English(t).Text(entrytest.Fact(t, r, "worst")); got != "somebody, Jupiter: 23.0\u00a0cm off" {
		t.Errorf("the worst is %q", got)
	}
	if entrytest.Fact(t, r, "miscounted").Number != 1 || len(r.Notes) != 1 || r.Notes[0].Key != "strip-log.too_far" {
		t.Errorf("the miscounted seams are not told: %v", r.Notes)
	}
	if missing := entrytest.English(t).Text(entrytest.Fact(t, r, "missing")); !strings.HasPrefix(missing, "Mercury, Venus, Mars") {
		t.Errorf("missing are %q", missing)
	}
}

// The Earth belongs at 9.97677 squares of 110 mm, so 9 squares and 10.74 cm are right; the
// sixth is a square too far.
func TestStripLogMarksThePlaceThatDeparts(t *testing.T) {
	const head, good = "group,body,squares,past_cm\n", "A,earth,9,10.7\nB,earth,9,10.4\nC,earth,10,0\nD,earth,9,10.8\nE,earth,9,10.9\n"
	for name, c := range map[string]struct {
		rows, says string
		odd        int
	}{
		"departs":   {good + "Owls,earth,10,10.7\n", "Our places are usually 0.2\u00a0cm off; the one that departs most is Earth (group\u00a0Owls), 11.0\u00a0cm off.", 1},
		"no group":  {good + ",earth,10,10.7\n", "Our places are usually 0.2\u00a0cm off; the one that departs most is Earth, 11.0\u00a0cm off.", 1},
		"agree":     {good, "Our places are usually 0.2\u00a0cm off and at most 0.3\u00a0cm; none departs clearly from the others.", 0},
		"all equal": {strings.Repeat("A,earth,9,4.7\n", 6), "Our places are usually 6.0\u00a0cm off and at most 6.0\u00a0cm; none departs clearly from the others.", 0},
		"few":       {"A,earth,9,10.7\nB,earth,9,10\nC,earth,3,0\n", "The 3 places that we measured are at most 76.7\u00a0cm off; they are too few to tell which one is wrong.", 0},
		"one":       {"A,earth,9,10\n", "The one place that we measured is 0.7\u00a0cm off.", 0},
	} {
		r := reckonLog(t, "alder reach", "strip-log", head+c.rows, "to=neptune")
		if got := entrytest.English(t).Line(r.Drawings[0].Finding); got != c.says {
			t.Errorf("%s: %q", name, got)
		}
		if odd := entrytest.Roled(r.Drawings[0], "odd"); len(odd) != c.odd {
			t.Errorf("%s: %d dots stand out", name, len(odd))
		}
	}
	if none := reckonLog(t, "alder reach", "strip-log", head, "to=neptune"); len(none.Drawings) != 0 {
		t.Error("a chart of nothing")
	}
}
