package typeset_test

import (
	"io/fs"
	"maps"
	"slices"
	"strings"
	"testing"

	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/build/typeset"
	"noonbook/theme"
)

// A school may choose each language that there is, and no other.
func TestLanguagesAreTheChoices(t *testing.T) {
	field, ok := school.Settings().Field("school.language")
	if !ok || !slices.Equal(field.Choices, typeset.Languages()) {
		t.Errorf("school.language takes %v, words are there for %v", field.Choices, typeset.Languages())
	}
}

// notFrench are sections that French has no use for: it has one way to write the clock
// and one for dates (see Words.In).
var notFrench = []string{"twelve-hour", "month-first"}

// Every language has every line of the English words and no other, with the same
// gaps. That each English line is asked for somewhere, and each that is asked for
// is there, a test of build/placeholder holds.
func TestLanguagesSayTheSame(t *testing.T) {
	en := words(t, false)
	for _, code := range typeset.Languages() {
		w := language(t, code, false)
		forms := map[string]bool{}
		for _, key := range w.Keys() {
			for _, form := range w.Forms(key) {
				forms[form] = true
			}
		}
		for _, key := range en.Keys() {
			if section, _, _ := strings.Cut(key, "."); code == "fr" && slices.Contains(notFrench, section) {
				continue
			}
			if !w.Has(key) {
				t.Errorf("%s: no line %s for %q", code, key, en.Raw(key))
			}
		}
		for _, key := range w.Keys() {
			english := key
			if form, of, _ := strings.Cut(key, "."); forms[form] { // a form of another line
				english = of
			}
			if !en.Has(english) {
				t.Errorf("%s: nobody asks for %s", code, key)
				continue
			}
			wantFilled, _ := en.Gaps(english)
			filled, counted := w.Gaps(key)
			if !maps.Equal(filled, wantFilled) {
				t.Errorf("%s: %s has the gaps %v, in English %v", code, key, filled, wantFilled)
			}
			for gap := range counted {
				if !wantFilled[gap] && !(gap == 1 && strings.HasPrefix(key, "units.")) {
					t.Errorf("%s: %s takes the plural of {%d}, which English does not name", code, key, gap)
				}
			}
		}
	}
}

// Every language has noonbook's own pages.
func TestOwnPagesInEveryLanguage(t *testing.T) {
	for _, code := range typeset.Languages() {
		for _, part := range []string{"glossary", "reference", "safety", "sources"} {
			if _, err := fs.Stat(theme.Files(), "pages/"+code+"/"+part+".md"); err != nil {
				t.Error(err)
			}
		}
	}
}

// The number that is printed counts, and that of millions has a word of its own.
// TestPluralsOfExamples holds the rules themselves against CLDR.
func TestPlurals(t *testing.T) {
	for _, c := range []struct {
		code  string
		value say.Value
		want  string
	}{
		{"en", say.Number(1, "days", 0), "1\u00a0day"},
		{"en", say.Number(0, "days", 0), "0\u00a0days"},
		{"en", say.Number(1, "days", 1), "1.0\u00a0days"},
		{"en", say.Number(0.6, "days", 0), "1\u00a0day"},
		{"fr", say.Number(0, "days", 0), "0\u00a0jour"},
		{"fr", say.Number(1.5, "days", 1), "1,5\u00a0jour"},
		{"fr", say.Number(1.96, "days", 1), "2,0\u00a0jours"},
		{"fr", say.Number(2, "days", 0), "2\u00a0jours"},
		{"fr", say.Number(149.6, "million_km", 1), "149,6\u00a0millions de km"},
		{"fr", say.Number(1, "million_km", 0), "1\u00a0million de km"},
	} {
		if got := language(t, c.code, false).Text(c.value); got != c.want {
			t.Errorf("%s: %q, want %q", c.code, got, c.want)
		}
	}
}
