package flow_test

import (
	"math"
	"strings"
	"testing"

	"noonbook/build/placeholder/entrytest"
)

// Beverloo's law by pocket calculator (no printed table was at hand): of a hole of 4 mm
// grains of 0.4 mm leave 3.44 mm; 0.58 × √980.665 × 0.344^2.5 cm³/s are 75.64 mL a minute.
// Three minutes take 226.9 mL, at 1.5 g/mL 340.4 g, in a bottle of 65 mm 68.4 mm high.
func TestSandGlass(t *testing.T) {
	r := reckon(t, "sand-glass")
	for name, want := range map[string]float64{
		"sand": 226.9, "mass": 340.4, "height": 68.4, "flow": 75.64, "least_hole": 2.4,
	} {
		entrytest.Near(t, name, fact(t, r, name), want, 0.001*want)
	}
	entrytest.Near(t, "hole a tenth wider", fact(t, r, "hole_tenth"), (math.Pow(3.54/3.44, 2.5)-1)*3600, 0.5)
	if !entrytest.Says(r.Notes, "sand-glass.note_even") || !entrytest.Says(r.Notes, "sand-glass.note_reckoned") {
		t.Errorf("it says %v", r.Notes)
	}
}

// Twice the minutes take twice the sand: a sand glass does not slow.
func TestSandDoesNotSlow(t *testing.T) {
	three, six := reckon(t, "sand-glass"), reckon(t, "sand-glass", "minutes=6")
	entrytest.Near(t, "sand for six minutes", fact(t, six, "sand"), 2*fact(t, three, "sand"), 1e-9)
	entrytest.Near(t, "flow", fact(t, six, "flow"), fact(t, three, "flow"), 1e-9)
}

// Holes of fewer than six grains clog; the chosen hole has its row, in its place, once.
func TestHolesOfSand(t *testing.T) {
	for given, want := range map[string]string{"4": "2 3 4 5 6 8 10", "4.5": "2 3 4 4.5 5 6 8 10", "12": "2 3 4 5 6 8 10 12"} {
		r := reckon(t, "sand-glass", "hole_mm="+given)
		holes := entrytest.TextsOf(t, r, "holes", "hole")
		if got := strings.ReplaceAll(strings.Join(holes, " "), "\u00a0mm", ""); got != want {
			t.Errorf("a hole of %s: %s", given, got)
		}
		marked := 0
		for i, row := range r.Tables[0].Rows {
			if row.Marked {
				marked++
				if !strings.HasPrefix(holes[i], given) {
					t.Errorf("a hole of %s: %s is marked", given, holes[i])
				}
			}
		}
		if marked != 1 {
			t.Errorf("a hole of %s: %d rows are marked", given, marked)
		}
	}
	if flows := entrytest.TextsOf(t, reckon(t, "sand-glass"), "holes", "flow"); flows[0] != "clogs" || flows[1] == "clogs" {
		t.Errorf("holes of 2 and 3 mm: %v", flows[:2])
	}
}

// 100 mL in 80 s are 75 mL a minute; a glass filled for three minutes by the formula runs
// 226.9 ÷ 75 = 3.025 min, and after an hour of such turns it shows half a minute too little.
func TestTimedSandGlass(t *testing.T) {
	r := reckon(t, "sand-glass", "timed_s=80")
	entrytest.Near(t, "flow", fact(t, r, "flow"), 75, 1e-6)
	entrytest.Near(t, "sand", fact(t, r, "sand"), 225, 1e-6)
	entrytest.Near(t, "reckoned", fact(t, r, "reckoned"), (3/3.0256-1)*3600, 0.5)
	if got := entrytest.Shown(t, reckon(t, "sand-glass", "timed_s=100"), "reckoned"); got != "12 min slow" { // 3 ÷ 3.782
		t.Errorf("a slow sand is %s", got)
	}
	if !entrytest.Says(r.Notes, "sand-glass.note_timed") {
		t.Error("it does not say that the flow was timed")
	}
}

func TestSandGlassesRefused(t *testing.T) {
	for want, given := range map[string][]string{
		"a hole of 4 mm clogs with grains of 1 mm; it must be six grains wide, 6 mm or more": {"grain_mm=1"},
		"minutes": {"minutes=0"}, "hole_mm": {"hole_mm=0.5"},
	} {
		if got := entrytest.Complaint(t, entries(), "sand-glass", "2027-04-20", given...); !strings.Contains(got, want) {
			t.Errorf("%v: %q, want %q", given, got, want)
		}
	}
}
