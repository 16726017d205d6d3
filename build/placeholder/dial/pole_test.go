package dial_test

import (
	"math"
	"testing"

	"noonbook/build/placeholder/entrytest"
)

// Near a pole a level dial reads round the clock: 24 lines, of which none is drawn or
// listed twice, some 15° apart, and a rod that leans by the colatitude.
func TestRoundTheClock(t *testing.T) {
	for latitude, lean := range map[string]float64{"86": 150 * math.Cos(86*degree), "-86": 150 * math.Cos(86*degree), "90": 0, "-90": 0} {
		at := []string{"school.latitude=" + latitude, "stock.style_mm=150"}
		table := reckon(t, "arctic", "dial-table", "2027-06-21", at...)
		if n := len(table.Tables[0].Rows); n != 24 {
			t.Errorf("%s: %d lines", latitude, n)
		}
		entrytest.Near(t, latitude+": noon to one", entrytest.Fact(t, table, "first_hour").Number, 15, 0.05) // atan(sin 86° tan 15°) = 14.97°
		face := reckon(t, "arctic", "dial-face", "2027-06-21", at...)
		if got := entrytest.Shown(t, face, "first_line") + "-" + entrytest.Shown(t, face, "last_line"); got != "0:00-23:00" {
			t.Errorf("%s: hours %s", latitude, got)
		}
		if n := len(entrytest.Roled(face.Sheets[0].Drawing, "hour")); n != 23 { // and noon
			t.Errorf("%s: %d lines are drawn", latitude, n)
		}
		gnomon := reckon(t, "arctic", "dial-gnomon", "2027-06-21", at...)
		entrytest.Near(t, latitude+": ahead of its foot", entrytest.Fact(t, gnomon, "base").Number, lean, 1e-9)
		if lean > 0 {
			entrytest.Tells(t, gnomon.Notes, "dial-gnomon.leaning_rod_note", "86.0° from the plate", "10 mm ahead", "Blunt its end")
		} else {
			entrytest.Tells(t, gnomon.Notes, "dial-gnomon.rod_note", "square to the plate", "Blunt its end")
		}
	}
}
