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
	if !slices.EqualFunc(class, sharing, sameFile) || !slices.EqualFunc(staff, more, sameFile) {
		t.Error("a handbook that shares what is known has other bytes")
	}
}

func sameFile(a, b file.File) bool { return a.Name == b.Name && bytes.Equal(a.Bytes, b.Bytes) }

// writtenAnew counts the pages of a plan that it does not have from the one before.
func writtenAnew(p, before *Plan) int {
	n := 0
	for _, now := range p.pages {
		if !slices.ContainsFunc(before.pages, func(old page) bool { return &old.ready[0] == &now.ready[0] }) {
			n++
		}
	}
	return n
}

// Who presses a unit again after a lesson was edited evaluates what the edit added, and
// nothing else, and remembers no more than the last pressing asked.
func TestOnlyWhatAnEditAddsIsEvaluated(t *testing.T) {
	const lesson = "2-read-the-dial.md"
	written := string(readFile(t, "../../content/"+lesson))
	at := strings.LastIndex(written, "\n\n") // outside of its blocks
	counting, times := countingCatalogue()
	known := &entry.Known{}
	var before *Plan
	for _, c := range []struct {
		about, added string
		evaluations  int64 // of so many at least, where it is negative
		pages        int   // written out
	}{
		{"the first pressing", "", -100, 0},
		{"nothing", "", 0, 0},
		{"words", "\n\nSome more words.", 0, 2},
		{"two values of one placeholder", "\n\nIt rises at {sun-day.rise date=2027-02-03} and sets at {sun-day.set date=2027-02-03}.", 1, 2},
		{"one of another day", "\n\nIt rises at {sun-day.rise date=2027-02-03}, and then at {sun-day.rise date=2027-02-04}.", 1, 2},
		{"neither", "", 0, 2},
		{"what was forgotten", "\n\nIt rises at {sun-day.rise date=2027-02-03}.", 1, 2},
	} {
		begun := times.Load()
		unit, words := readCatalogue(t, edited{os.DirFS("../../content"), lesson, written[:at] + c.added + written[at:]}, counting)
		settled, problems, err := Settled(unit, unit.Settings, known)
		if err != nil || settled == nil {
			t.Fatal(err, problems)
		}
		afresh, err := Make(settled, words, Staff, counting)
		if err != nil {
			t.Fatal(err)
		}
		if before == nil {
			before = afresh
		}
		again, err := before.Again(settled, words)
		if err != nil {
			t.Fatal(err)
		}
		pages, problems := again.PressKnowing(unit.Settings, known)
		if problems.Faults() > 0 {
			t.Fatal(problems)
		}
		if got := times.Load() - begun; got != c.evaluations && (c.evaluations >= 0 || got < -c.evaluations) {
			t.Errorf("%s: %d evaluations", c.about, got)
		}
		if want, _ := afresh.PressKnowing(unit.Settings, known); !slices.EqualFunc(pages, want, sameFile) {
			t.Errorf("%s: planned again, the handbook has other bytes", c.about)
		}
		if got := writtenAnew(again, before); got != c.pages {
			t.Errorf("%s: %d pages are written out, not %d", c.about, got, c.pages)
		}
		before = again
		known.ForgetUnasked()
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
