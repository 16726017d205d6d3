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
