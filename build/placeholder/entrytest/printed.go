package entrytest

import (
	"slices"
	"strings"
	"sync"
	"testing"

	"noonbook/build/drawing"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/typeset"
)

var english = sync.OnceValues(func() (*typeset.Words, error) { return typeset.Language("en", false) })

// plain is printed text with common spaces and signs, as a test types them.
func plain(s string) string {
	return strings.NewReplacer("\u00a0", " ", "\u202f", " ", "−", "-").Replace(s)
}

// Written is what the page prints for a value, in English.
func Written(t *testing.T, v say.Value) string {
	t.Helper()
	words, err := english()
	if err != nil {
		t.Fatal(err)
	}
	return plain(words.Text(v))
}

// Lines are phrases in English.
func Lines(t *testing.T, phrases []say.Phrase) string {
	t.Helper()
	words, err := english()
	if err != nil {
		t.Fatal(err)
	}
	var lines []string
	for _, p := range phrases {
		lines = append(lines, plain(words.Line(p)))
	}
	return strings.Join(lines, "\n")
}

// Shown is what the page prints for a fact, in English.
func Shown(t *testing.T, r result.Result, name string) string {
	t.Helper()
	return Written(t, Fact(t, r, name))
}

// Printed is the English of the phrase with that key, "" where it is not said.
func Printed(t *testing.T, lines []say.Phrase, key string) string {
	t.Helper()
	for _, p := range lines {
		if p.Key == key {
			return Lines(t, []say.Phrase{p})
		}
	}
	return ""
}

// Tells fails unless the phrase is said and holds the wanted parts in that order.
func Tells(t *testing.T, lines []say.Phrase, key string, parts ...string) {
	t.Helper()
	text := Printed(t, lines, key)
	if text == "" {
		t.Errorf("%s is not said", key)
		return
	}
	rest := text
	for _, part := range parts {
		_, after, found := strings.Cut(rest, part)
		if !found {
			t.Errorf("%s: no %q in its place in %q", key, part, text)
			return
		}
		rest = after
	}
}

// Texts are the English texts of a column of a table.
func Texts(t *testing.T, r result.Result, table, column string) []string {
	t.Helper()
	var texts []string
	for _, v := range Cells(t, r, table, column) {
		texts = append(texts, Written(t, v))
	}
	return texts
}

// Roled returns the shapes that bear a word among those of their role; labels
// have a place of their own, Labels.
func Roled(d drawing.Drawing, word string) []drawing.Shape {
	var found []drawing.Shape
	for _, s := range d.Shapes {
		if s.Anchor == "" && slices.Contains(strings.Fields(s.Role), word) {
			found = append(found, s)
		}
	}
	return found
}

// Labels returns the places of the labels of a drawing by their English text.
func Labels(t *testing.T, d drawing.Drawing) map[string]drawing.Point {
	t.Helper()
	places := map[string]drawing.Point{}
	for _, s := range d.Shapes {
		if s.Anchor != "" {
			places[Written(t, s.Text)] = s.Points[0]
		}
	}
	return places
}
