package plan

import (
	"strings"
	"testing"
	"testing/fstest"
)

// A word that an earlier lesson explains has a link beside what the class reads: in a later
// lesson and on a page of the class. A part or a page for staff uses everyday words, and so
// does the page of rules.
func TestKnownWordsAreForTheClass(t *testing.T) {
	const uses = "Turn the direction by a bit.\n"
	unit, words := read(t, fstest.MapFS{
		"unit.toml": {Data: []byte(oracleSettings)},
		"1-a.md":    {Data: []byte("```lesson\ntitle = \"A\"\nvocabulary = [{term = \"direction\", meaning = \"where to\"}]\n```\n\n" + uses)},
		"2-b.md":    {Data: []byte("```lesson\ntitle = \"B\"\n```\n\n# Teach: class\n\n" + uses + "\n# Understand: staff\n\n" + uses)},
		"2-c.md":    {Data: []byte("```lesson\ntitle = \"C\"\n```\n\n# Teach: class\n\nA bit.\n\n# Understand: staff\n\n" + uses)},
		"3-p.md":    {Data: []byte("```lesson\ntitle = \"P\"\npart = \"page\"\n```\n\n" + uses)},
		"4-q.md":    {Data: []byte("```lesson\ntitle = \"Q\"\npart = \"page\"\nreader = \"staff\"\n```\n\n" + uses)},
		"5-s.md":    {Data: []byte("```lesson\ntitle = \"S\"\npart = \"safety\"\n```\n\n" + uses)},
	}, "unit")
	class, staff := pressings(t, unit, words, unit.Settings)
	for edition, pages := range map[string]map[string]string{"class": class, "staff": staff} {
		for page, want := range map[string]int{"a.html": 0, "b.html": 1, "c.html": 0, "p.html": 1, "q.html": 0, "s.html": 0} {
			if edition == "class" && page == "q.html" {
				continue
			}
			if pages[page] == "" {
				t.Errorf("%s edition: no %s", edition, page)
			}
			if n := strings.Count(pages[page], `class="known-word"`); n != want {
				t.Errorf("%s edition: %s has %d known words, want %d", edition, page, n, want)
			}
		}
	}
}
