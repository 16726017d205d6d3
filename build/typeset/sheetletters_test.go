package typeset

import (
	"testing"

	"noonbook/build/drawing"
	"noonbook/build/say"
)

// No letter on a printable is smaller than seven points (a point is 1/72 inch, 25.4/72 mm): what
// the style sheet gives any role, and what the heads of sheets are measured by.
func TestLettersOfSheetsAreSevenPoints(t *testing.T) {
	const least = 7 * 25.4 / 72
	n := 0
	for _, r := range letterRules() {
		if r.compounds[0][0] != "true-size" && r.compounds[0][0] != "worlds" || r.says["font-size"] == "" {
			continue
		}
		n++
		role := r.compounds[len(r.compounds)-1][0]
		name := ""
		if len(r.compounds) > 2 {
			name = r.compounds[1][0]
		} else if r.compounds[0][0] == "worlds" {
			name = "worlds"
		}
		if got := letteringOf(name, role, true).size; got < least {
			t.Errorf("%s of %q is %.2f mm high, less than 7 pt", role, name, got)
		}
	}
	if n < 15 {
		t.Errorf("only %d rules", n)
	}
	for role, size := range map[string]float64{"sheet-school": headSize, "sheet-key": headSize, "sheet-name": nameSize, "sheet-name slim": slimSize} {
		if got := letteringOf("", role, true).size; got != size {
			t.Errorf("%s is %v mm high, and measured by %v", role, got, size)
		}
	}
}

// The sentence above the check bar ends where the bar does, in every language: the caution
// begins beside it.
func TestCheckSentenceIsNoLongerThanItsBar(t *testing.T) {
	for _, code := range Languages() {
		w, err := Language(code, false)
		if err != nil {
			t.Fatal(err)
		}
		said := w.Text(say.Words("sheet.check"))
		l := letteringOf("", "check-label", true)
		if long := widthOf(said, l.face) * l.size; long > drawing.CheckBar {
			t.Errorf("%s: %q is %.0f mm long, the bar %.0f", code, said, long, drawing.CheckBar)
		}
	}
}
