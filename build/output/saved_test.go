// Without the race detector, which sees nothing in one goroutine and takes minutes.

//go:build !race

package output

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// Nothing that is saved during a press is lost, whatever step it is saved before:
// by its name, or by a program that has the folder open. Where Write refuses, it
// lies where it was saved; else where Write says.
func TestFilesSavedDuringAPress(t *testing.T) {
	after := lookOf(t, "new")
	tries, brought := 0, 0
	for _, c := range []struct {
		name string // in book, or beside it
		open bool   // the folder is open before
	}{
		{"book/notes.txt", false}, {"book/page.html", false}, {"book/.noonbook-own", false}, {"book-staff/notes.txt", false}, {"book.html", false}, {"book-staff.zip", false},
		{"book/notes.txt", true}, {"book/page.html", true}, {"book/index.html", true},
	} {
		for _, twoRenames := range []bool{false, true} {
			for at, steps := 1, 1; at <= steps; at++ {
				parent := quickFolder(t)
				if _, err := (&trial{}).press(parent, "old"); err != nil {
					t.Fatal(err)
				}
				dir, err := os.OpenRoot(filepath.Join(parent, filepath.Dir(c.name)))
				if err != nil {
					t.Fatal(err)
				}
				saved := false
				save := func() {
					if c.open {
						saved = dir.WriteFile(filepath.Base(c.name), []byte("my own words"), 0o666) == nil
						return
					}
					saved = os.WriteFile(filepath.Join(parent, c.name), []byte("my own words"), 0o666) == nil
				}
				tr := &trial{at: at, twoRenames: twoRenames, happens: save}
				kept, failed := tr.press(parent, "new")
				dir.Close()
				steps = max(steps, tr.steps)
				if !saved {
					continue // the folder was gone, and the program was told so
				}
				tries++
				home := filepath.Join(parent, c.name)
				lies := []string{home}
				for _, k := range kept {
					if k.Name != home || failed == nil && k.Now != home && filepath.Dir(k.Now) != filepath.Dir(home) {
						t.Errorf("%v: kept %v", c, k)
					}
					lies = append(lies, k.Now)
					brought++
				}
				if !slices.ContainsFunc(lies, func(name string) bool {
					text, err := os.ReadFile(name)
					return err == nil && string(text) == "my own words"
				}) {
					t.Errorf("%v, two renames %v, before step %d: lost; kept %v, said %v", c, twoRenames, at, kept, failed)
				}
				if failed != nil && !errors.Is(failed, ErrNotOurs) && !errors.Is(failed, fs.ErrExist) {
					t.Errorf("%v, two renames %v, before step %d: %v", c, twoRenames, at, failed)
				}
				if strings.HasPrefix(tr.failed, "write ") && strings.Contains(tr.failed, "new-") && !errors.Is(failed, ErrNotOurs) {
					t.Errorf("%v, two renames %v, before step %d: saved before the exchange and not refused, %v", c, twoRenames, at, failed)
				}
				if there(filepath.Join(parent, benchName)) {
					t.Errorf("%v, two renames %v, before step %d: the bench is left, %v", c, twoRenames, at, failed)
				}
				if failed != nil {
					continue
				}
				// What nobody touched is new.
				for part, sum := range look(t, parent) {
					if sum != after[part] && part != strings.Split(c.name, "/")[0] {
						t.Errorf("%v, two renames %v, before step %d: %s is not new", c, twoRenames, at, part)
					}
				}
			}
		}
	}
	t.Logf("%d files saved during a press, %d brought into the new handbook, none lost", tries, brought)
	if tries < 500 || brought < 50 {
		t.Error("too few files were saved")
	}
}

// What somebody saves behind a killed press stays where it is, in a folder or file
// that the next press leaves alone and names.
func TestFilesSavedBehindAKill(t *testing.T) {
	trials := 0
	for _, name := range []string{"book-staff/notes.txt", "book/page.html", "book.html"} {
		part, _, _ := strings.Cut(name, "/")
		everyStep(t, func(s start, at int) bool {
			if len(s.was) == 0 {
				return false
			}
			tr := &trial{end: at, twoRenames: s.twoRenames}
			s.press(t, tr)
			if tr.ended == "" {
				return false
			}
			own := filepath.Join(s.parent, name)
			text, missing := os.ReadFile(own)
			if errors.Is(os.WriteFile(own, []byte("my own words"), 0o666), fs.ErrNotExist) {
				return true // there is no such folder, between two renames
			}
			trials++
			saved := look(t, s.parent)[part]
			if kept, err := (&trial{twoRenames: s.twoRenames}).press(s.parent, "new"); !errors.Is(err, ErrNotOurs) || len(kept) > 0 {
				t.Errorf("%v, %s: %s is not refused: %v, kept %v", s, tr.ended, name, err, kept)
			}
			if look(t, s.parent)[part] != saved {
				t.Errorf("%v, %s: what somebody changed was changed again", s, tr.ended)
			}
			// Taken away or put back, it is no longer in the way.
			err := error(nil)
			if missing == nil {
				err = os.WriteFile(own, text, 0o666)
			} else {
				err = os.Remove(own)
			}
			if err != nil {
				t.Fatal(err)
			}
			if part == name && missing != nil { // it had taken the place of a whole part
				delete(s.was, part)
			}
			s.nextPresses(t, tr.ended)
			return true
		})
	}
	t.Logf("%d trials", trials)
	if trials < 300 {
		t.Error("too few files were saved")
	}
}
