package plan

import (
	"bytes"
	"slices"
	"sync/atomic"
	"testing"
	"testing/fstest"

	"noonbook/build/file"
	"noonbook/build/form"
	"noonbook/build/placeholder"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
)

// Both editions of a handbook evaluate what both show once, and have the same bytes as
// each by itself.
func TestEditionsShareWhatIsKnown(t *testing.T) {
	files := fstest.MapFS{
		"unit.toml": {Data: readFile(t, "../../testdata/units/south/unit.toml")},
		"1-a.md":    {Data: []byte("```lesson\ntitle = \"A\"\n```\n\n{sun-day.rise} {sun-day.set}\n\n```compute sun-year\n```\n\n```answer\n{moon-school.best}\n```\n")},
	}
	var times atomic.Int64
	counting := slices.Clone(placeholder.Catalogue())
	for i := range counting {
		reckon := counting[i].Reckon
		counting[i].Reckon = func(v form.Values) (result.Result, error) {
			times.Add(1)
			return reckon(v)
		}
	}
	unit, words := readCatalogue(t, files, counting)
	press := func(edition Edition, known *entry.Known) ([]file.File, int) {
		p, err := Make(unit, words, edition, counting)
		if err != nil {
			t.Fatal(err)
		}
		before := times.Load()
		pages, problems := p.PressKnowing(unit.Settings, known)
		if problems.Faults() > 0 {
			t.Fatal(problems)
		}
		return pages, int(times.Load() - before)
	}
	class, inClass := press(Class, &entry.Known{})
	staff, inStaff := press(Staff, &entry.Known{})
	known := &entry.Known{}
	sharing, first := press(Class, known)
	more, rest := press(Staff, known)
	if first != inClass || inStaff <= inClass || rest != inStaff-inClass {
		t.Errorf("%d evaluations for the class and %d for the staff; together %d and %d more", inClass, inStaff, first, rest)
	}
	same := func(a, b file.File) bool { return a.Name == b.Name && bytes.Equal(a.Bytes, b.Bytes) }
	if !slices.EqualFunc(class, sharing, same) || !slices.EqualFunc(staff, more, same) {
		t.Error("a handbook that shares what is known has other bytes")
	}
}
