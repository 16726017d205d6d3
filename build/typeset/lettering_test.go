package typeset

import (
	"regexp"
	"strings"
	"testing"
)

// What labels are set in follows from the cascade of the style sheet (CSS Cascading and
// Inheritance 4, section 6.1): the more classes, then the later rule. The wanted ones are
// read off the files by eye; testdata/browser/letters.mjs has Chromium's answer for
// every label of the demo.
func TestLetteringIsTheStyleSheets(t *testing.T) {
	for _, c := range []struct {
		name, role string
		printable  bool
		want       lettering
	}{
		{"strip", "name", false, lettering{3.4, textFace, false}},
		{"strip", "figure", false, lettering{3.2, textFace, false}},
		{"chart", "figure", false, lettering{3, labelFace, true}},
		{"chart moon-log", "name", false, lettering{3, labelFace, true}},
		{"north", "figure", false, lettering{3, labelFace, false}},
		{"rays", "name", false, lettering{3, labelFace, false}},
		{"moons", "name", false, lettering{3, labelFace, false}},
		{"sky-map", "direction", false, lettering{3.4, labelBold, true}},
		{"sky-map", "star-name", false, lettering{2.9, labelFace, true}},
		{"moon-ring", "stop", false, lettering{5, labelBold, false}},
		{"dial", "number", false, lettering{6.4, textBold, false}},
		{"dial-plate", "figure", false, lettering{3.6, textFace, true}},
		{"tube-parts", "name", false, lettering{4.1, textFace, false}},
		{"wall", "numeral", true, lettering{5, textBold, false}},
		{"wall", "strong", true, lettering{3.4, labelBold, false}},
		{"wall", "small", true, lettering{2.7, labelFace, false}},
		{"sky-map", "strong", true, lettering{3.6, labelBold, true}},
		{"sky-wheel", "numeral", true, lettering{3.8, labelBold, true}},
		{"", "care-line", true, lettering{2.7, labelBold, false}},
	} {
		if got := letteringOf(c.name, c.role, c.printable); got != c.want {
			t.Errorf("%s of %s: %+v, want %+v", c.role, c.name, got, c.want)
		}
	}
}

// The rules that give labels their letters are of the kinds that letteringOf knows.
func TestRulesOfLettersAreReadable(t *testing.T) {
	compound := regexp.MustCompile(`^(text)?(\.[a-z-]+)*$`)
	for _, r := range letterRules() {
		for _, c := range r.compounds {
			s := "." + strings.Join(c, ".")
			s = strings.TrimPrefix(strings.Replace(s, ".text", "text", 1), ".text")
			if !compound.MatchString(s) && !strings.Contains(s, "hover") && c[0] != "circle" && c[0] != "path" {
				t.Errorf("the selector %v gives letters %v", r.compounds, r.says)
			}
		}
	}
	if n := len(letterRules()); n < 60 {
		t.Errorf("only %d rules are of letters", n)
	}
}
