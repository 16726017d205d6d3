package plan

import (
	"strings"
	"testing"

	"noonbook/build/form"
	"noonbook/build/placeholder"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/build/source"
	"noonbook/build/typeset"
)

// explained lists the English of all that the reference page explains.
func explained() map[string]bool {
	all := map[string]bool{}
	note := func(s string) {
		if s != "" {
			all[s] = true
		}
	}
	forms := []form.Form{school.Settings(), source.LessonBlock()}
	for _, e := range placeholder.Catalogue() {
		note(e.Summary)
		forms = append(forms, e.Arguments)
		for _, f := range e.Facts {
			note(f.Doc)
		}
	}
	for _, f := range forms {
		for _, field := range f {
			note(field.Doc)
			note(field.Assumed)
			for _, inner := range field.Fields {
				note(inner.Doc)
				note(inner.Assumed)
			}
		}
	}
	return all
}

// Each language but English, which stands in the code, explains every key, fact
// and placeholder, and nothing that is no more.
func TestEveryLanguageExplains(t *testing.T) {
	for _, code := range typeset.Languages() {
		if code == "en" {
			continue
		}
		words, err := typeset.Language(code, false)
		if err != nil {
			t.Fatal(err)
		}
		has, all := map[string]bool{}, explained()
		for _, english := range words.Explained() {
			has[english] = true
			if !all[english] {
				t.Errorf("%s: nothing is explained by %q", code, english)
			}
		}
		for english := range all {
			if !has[english] {
				t.Errorf("%s: no words for %q", code, english)
			}
		}
	}
}

// In English the page says what the terminal says.
func TestAllowedAsOnTheTerminal(t *testing.T) {
	words, err := typeset.Language("en", false)
	if err != nil {
		t.Fatal(err)
	}
	p := &Plan{words: words}
	for _, f := range append(school.Settings(), source.LessonBlock()...) {
		if takes := f.Takes(); takes.Key != "" {
			want := strings.NewReplacer("{1}", "one", "{2}", "two").Replace(takes.English)
			if got := words.Say(takes.Key, say.Text("one"), say.Text("two")); got != want {
				t.Errorf("%s: %q, on the terminal %q", takes.Key, got, want)
			}
		}
		if f.Kind() == form.Number || f.Kind() == form.Whole {
			continue // groups of digits and hard spaces are those of a page
		}
		if got, want := words.Text(allowed(f)), f.Allowed(); f.Kind() != form.CSV && got != want {
			t.Errorf("%s: %q, on the terminal %q", f.Name(), got, want)
		}
		if got, want := strings.ReplaceAll(p.missing(f), "\u00a0", " "), f.Missing(); got != want {
			t.Errorf("%s: if missing %q, on the terminal %q", f.Name(), got, want)
		}
	}
}
