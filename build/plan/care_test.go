package plan

import (
	"strings"
	"testing"
	"testing/fstest"
)

// A day sheet tells every caution of its lesson, however many there are: those of
// sections that are on the sheet in their place, all others under what to take care
// of, in the order of the lesson, each once.
func TestDaySheetTellsEveryCaution(t *testing.T) {
	text := "```lesson\ntitle = \"Care\"\n[sheet]\nback = [\"steps\"]\n```\n\n" +
		"## First\n\n```caution\nMind the lamp.\n```\n\n```caution\nMind the string.\n```\n\n" +
		"## Steps\n\n```caution\nMind the knife.\n```\n\nCut.\n\n" +
		"## Last\n\n> ```caution\n> Mind the stairs.\n> ```\n"
	unit, words := read(t, fstest.MapFS{
		"unit.toml": smallUnit()["unit.toml"],
		"1-care.md": {Data: []byte(text)},
	}, "unit")
	_, staff := pressings(t, unit, words, unit.Settings)
	sheet := staff["day-care.html"]
	_, care, found := strings.Cut(sheet, `id="nb-care"`)
	care, _, _ = strings.Cut(care, `id="nb-`)
	if !found {
		t.Fatalf("the day sheet has no part for care:\n%s", sheet)
	}
	at := 0
	for _, caution := range []string{"Mind the lamp.", "Mind the string.", "Mind the stairs."} {
		i := strings.Index(care, caution)
		if i < at {
			t.Errorf("%q is at %d of the care, behind %d", caution, i, at)
		}
		at = i
		if n := strings.Count(sheet, caution); n != 1 {
			t.Errorf("%q is %d times on the sheet", caution, n)
		}
	}
	if strings.Contains(care, "Mind the knife.") || strings.Count(sheet, "Mind the knife.") != 1 {
		t.Errorf("a caution of the steps is not with them alone")
	}
}
