package typeset_test

import (
	"slices"
	"strings"
	"testing"

	"noonbook/build/typeset"
)

func TestLines(t *testing.T) {
	for text, want := range map[string][]string{
		"":                  {""},
		"one":               {"one"},
		"one two":           {"one two"},
		"eleven elevens, a": {"eleven", "elevens, a"},
		"unbreakableword a": {"unbreakableword", "a"},
		"5\u00a0km is far":  {"5\u00a0km is", "far"},
	} {
		if got := typeset.Lines(text, 5.2); !slices.Equal(got, want) {
			t.Errorf("%q becomes %q, want %q", text, got, want)
		}
	}
	text := "Nothing is lost when a long text is broken into lines."
	if got := strings.Join(typeset.Lines(text, 8), " "); got != text {
		t.Errorf("%q", got)
	}
}
