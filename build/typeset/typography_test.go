package typeset_test

import "testing"

// A number and its unit stay together in running text, and nothing else changes.
func TestNumberAndUnitStayTogether(t *testing.T) {
	for text, want := range map[string]string{
		"a bar of 100 mm, 2.5 m off": "a bar of 100\u00a0mm, 2.5\u00a0m off",
		"at 30 km/s.":                "at 30\u00a0km/s.",
		"3 mornings, 5 min":          "3 mornings, 5\u00a0min",
		"grade 6 in May":             "grade 6 in May",
		"no number mm":               "no number mm",
		"7 ":                         "7 ",
	} {
		if got := words(t, false).Typeset(text); got != want {
			t.Errorf("%q becomes %q", text, got)
		}
	}
	markup := `<p title="5 mm">5 mm <code>5 mm</code></p>`
	if got, want := string(words(t, false).TypesetMarkup([]byte(markup))), "<p title=\"5 mm\">5\u00a0mm <code>5 mm</code></p>"; got != want {
		t.Errorf("%s becomes %s", markup, got)
	}
}
