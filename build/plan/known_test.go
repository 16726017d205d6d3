package plan

import (
	"bytes"
	"io/fs"
	"os"
	"slices"
	"strings"
	"sync/atomic"
	"testing"
	"testing/fstest"

	"noonbook/build/file"
	"noonbook/build/form"
	"noonbook/build/placeholder"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
)

// countingCatalogue is the catalogue, with how often something of it was evaluated.
func countingCatalogue() ([]entry.Entry, *atomic.Int64) {
	var times atomic.Int64
	counting := slices.Clone(placeholder.Catalogue())
	for i := range counting {
		reckon := counting[i].Reckon
		counting[i].Reckon = func(v form.Values) (result.Result, error) {
			times.Add(1)
			return reckon(v)
		}
	}
	return counting, &times
}

// Both editions of a handbook evaluate what both show once, and have the same bytes as
// each by itself.
func TestEditionsShareWhatIsKnown(t *testing.T) {
	files := fstest.MapFS{
		"unit.toml": {Data: readFile(t, "../../testdata/units/south/unit.toml")},
		"1-a.md":    {Data: []byte("```lesson\ntitle = \"A\"\n```\n\n{sun-day.rise} {sun-day.set}\n\n```compute sun-year\n```\n\n```answer\n{moon-school.best}\n```\n")},
	}
	counting, times := countingCatalogue()
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

// Who presses a unit again after a lesson was edited evaluates what the edit added, and
// nothing else, and remembers no more than the last pressing asked.
func TestOnlyWhatAnEditAddsIsEvaluated(t *testing.T) {
	const lesson = "2-read-the-dial.md"
	written := string(readFile(t, "../../content/"+lesson))
	at := strings.LastIndex(written, "\n\n") // outside of its blocks
	counting, times := countingCatalogue()
	known := &entry.Known{}
	for _, c := range []struct {
		about, added string
		evaluations  int64 // of so many at least, where it is negative
	}{
		{"the first pressing", "", -100},
		{"nothing", "", 0},
		{"words", "\n\nSome more words.", 0},
		{"two values of one placeholder", "\n\nIt rises at {sun-day.rise date=2027-02-03} and sets at {sun-day.set date=2027-02-03}.", 1},
		{"one of another day", "\n\nIt rises at {sun-day.rise date=2027-02-03}, and then at {sun-day.rise date=2027-02-04}.", 1},
		{"neither", "", 0},
		{"what was forgotten", "\n\nIt rises at {sun-day.rise date=2027-02-03}.", 1},
	} {
		before := times.Load()
		unit, words := readCatalogue(t, edited{os.DirFS("../../content"), lesson, written[:at] + c.added + written[at:]}, counting)
		settled, problems, err := SettledKnowing(unit, unit.Settings, known)
		if err != nil || settled == nil {
			t.Fatal(err, problems)
		}
		p, err := Make(settled, words, Staff, counting)
		if err != nil {
			t.Fatal(err)
		}
		if _, problems := p.PressKnowing(unit.Settings, known); problems.Faults() > 0 {
			t.Fatal(problems)
		}
		known.ForgetUnasked()
		if got := times.Load() - before; got != c.evaluations && (c.evaluations >= 0 || got < -c.evaluations) {
			t.Errorf("%s: %d evaluations", c.about, got)
		}
	}
}

// An edited folder has other bytes in one file.
type edited struct {
	fs.FS
	name, text string
}

func (e edited) Open(name string) (fs.File, error) {
	if name == e.name {
		return fstest.MapFS{name: {Data: []byte(e.text)}}.Open(name)
	}
	return e.FS.Open(name)
}
