package output

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"noonbook/build/file"
)

// tree returns every name below a folder with what it holds or leads to.
func tree(t *testing.T, folder string) map[string]string {
	t.Helper()
	all := map[string]string{}
	err := filepath.Walk(folder, func(name string, info os.FileInfo, err error) error {
		if err != nil {
			return err
		}
		held := info.Mode().Type().String()
		switch {
		case info.Mode().IsRegular():
			held += content(t, name)
		case info.Mode()&os.ModeSymlink != 0:
			to, err := os.Readlink(name)
			if err != nil {
				return err
			}
			held += to
		}
		all[name] = held
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// Names that noonbook uses, or used, may be somebody's. Then nothing is removed and
// nothing is written through a link: either the name is left alone, or the press
// is refused and says which name is in its way.
func TestOurNamesMayBeTaken(t *testing.T) {
	sealedPlan := func(text string) []byte { return append([]byte(text), sealOf([]byte(text))...) }
	for _, c := range []struct {
		what    string
		prepare func(parent, outside string) error
		refused bool
	}{
		{"a folder of the name of the bench", func(p, _ string) error {
			return os.CopyFS(filepath.Join(p, benchName), os.DirFS(filepath.Join(p, "own")))
		}, true},
		{"a file of the name of the bench", func(p, _ string) error { return os.WriteFile(filepath.Join(p, benchName), []byte("x"), 0o666) }, true},
		{"a link of the name of the bench", func(p, o string) error { return os.Symlink(o, filepath.Join(p, benchName)) }, true},
		{"a link that leads nowhere, of the name of the bench", func(p, o string) error { return os.Symlink(filepath.Join(o, "none"), filepath.Join(p, benchName)) }, true},
		{"somebody's plan", func(p, _ string) error {
			return errors.Join(os.Mkdir(filepath.Join(p, benchName), 0o777), os.WriteFile(filepath.Join(p, benchName, making), []byte("my plan"), 0o666))
		}, true},
		{"a plan that leads elsewhere", func(p, _ string) error {
			plan := sealedPlan(planHead + "folder - \"../own\"\n")
			return errors.Join(os.Mkdir(filepath.Join(p, benchName), 0o777), os.WriteFile(filepath.Join(p, benchName, making), plan, 0o666), os.WriteFile(filepath.Join(p, benchName, "own"), nil, 0o666))
		}, true},
		{"a plan and a folder with somebody's files", func(p, _ string) error {
			bench := filepath.Join(p, benchName)
			return errors.Join(os.Mkdir(bench, 0o777), os.WriteFile(filepath.Join(bench, making), planOf([]part{{name: "handbook", folder: true}}), 0o666),
				os.CopyFS(filepath.Join(bench, "new-handbook"), os.DirFS(filepath.Join(p, "own"))))
		}, true},
		{"a plan and a link", func(p, o string) error {
			bench := filepath.Join(p, benchName)
			return errors.Join(os.Mkdir(bench, 0o777), os.WriteFile(filepath.Join(bench, making), planOf([]part{{name: "handbook", folder: true}}), 0o666),
				os.Symlink(o, filepath.Join(bench, "new-handbook")))
		}, true},
		{"a handbook put aside, as once", func(p, _ string) error {
			return os.CopyFS(filepath.Join(p, ".handbook-before"), os.DirFS(filepath.Join(p, "own")))
		}, false},
		{"a link of a name that once was written", func(p, o string) error {
			return os.Symlink(filepath.Join(o, "essay.txt"), filepath.Join(p, ".noonbook-next-handbook.html"))
		}, false},
		{"a folder of such a name", func(p, _ string) error {
			return os.CopyFS(filepath.Join(p, ".noonbook-next-1"), os.DirFS(filepath.Join(p, "own")))
		}, false},
		{"a lock", func(p, _ string) error { return os.WriteFile(filepath.Join(p, ".noonbook-lock"), []byte("x"), 0o666) }, false},
		{"a link in the handbook's place that leads nowhere", func(p, o string) error { return os.Symlink(filepath.Join(o, "none"), filepath.Join(p, "handbook")) }, true},
		{"a link in the place of the single file", func(p, o string) error {
			return os.Symlink(filepath.Join(o, "essay.txt"), filepath.Join(p, "handbook.html"))
		}, true},
		{"a folder in the place of the zip", func(p, _ string) error { return os.Mkdir(filepath.Join(p, "handbook.zip"), 0o777) }, true},
	} {
		t.Run(c.what, func(t *testing.T) {
			parent, outside := t.TempDir(), t.TempDir()
			for _, folder := range []string{filepath.Join(parent, "own"), outside} {
				if err := errors.Join(os.MkdirAll(folder, 0o777), os.WriteFile(filepath.Join(folder, "essay.txt"), []byte("my own"), 0o666)); err != nil {
					t.Fatal(err)
				}
			}
			if err := c.prepare(parent, outside); err != nil {
				t.Fatal(err)
			}
			before, beyond := tree(t, parent), tree(t, outside)
			_, err := Write(context.Background(), Edition{Folder: filepath.Join(parent, "handbook"), Files: handbook("x"), Single: true, Zip: true})
			if c.refused != errors.Is(err, ErrNotOurs) || !c.refused && err != nil {
				t.Errorf("it says %v", err)
			}
			after := tree(t, parent)
			for name, held := range before {
				if after[name] != held {
					t.Errorf("%s was %q and is %q", name, held, after[name])
				}
			}
			if c.refused && len(after) != len(before) {
				t.Errorf("there are %v", after)
			}
			if got := tree(t, outside); len(got) != len(beyond) || got[filepath.Join(outside, "essay.txt")] != beyond[filepath.Join(outside, "essay.txt")] {
				t.Errorf("elsewhere there are %v", got)
			}
		})
	}
}

// Two that write beside one another take turns; one that has to wait too long says
// so, and one that is interrupted stops waiting.
func TestTurns(t *testing.T) {
	parent := t.TempDir()
	var all sync.WaitGroup
	for _, words := range []string{"a", "b", "c", "d"} {
		all.Go(func() {
			if _, err := Write(context.Background(), set(parent, words)...); err != nil {
				t.Error(err)
			}
		})
	}
	all.Wait()
	now := look(t, parent)
	if !slices.ContainsFunc([]string{"a", "b", "c", "d"}, func(words string) bool {
		return now["book"] == lookOf(t, words)["book"] && now["book-staff.zip"] == lookOf(t, words)["book-staff.zip"]
	}) {
		t.Errorf("the set is of two kinds: %v", now)
	}
	if got := names(t, parent); !slices.Equal(got, parts) {
		t.Errorf("there are %v", got)
	}
	release, err := tryLock(parent)
	if err != nil {
		t.Fatal(err)
	}
	if other, err := tryLock(parent); err == nil {
		other()
		release()
		t.Skip("this file system has no locks")
	}
	if _, err := writeSet(context.Background(), realDisk(), 100*time.Millisecond, set(parent, "e")); !errors.Is(err, errHeld) || !strings.Contains(err.Error(), "press again when it is done") {
		t.Errorf("it says %v", err)
	}
	ctx, stop := context.WithTimeout(context.Background(), 50*time.Millisecond)
	defer stop()
	if _, err := Write(ctx, set(parent, "e")...); !errors.Is(err, context.DeadlineExceeded) {
		t.Errorf("it says %v", err)
	}
	release()
	if got := look(t, parent); got["book"] != now["book"] {
		t.Error("it was written all the same")
	}
	if _, err := Write(context.Background(), set(parent, "e")...); err != nil {
		t.Error(err)
	}
}

// Names that not every computer can hold are refused before anything is written.
func TestNamesThatNotEveryComputerHolds(t *testing.T) {
	for says, files := range map[string][]file.File{
		"con is a device":           {{Name: "con.html"}},
		"holds /":                   {{Name: "a/../b.html"}},
		`holds \`:                   {{Name: `a\b.html`}},
		"U+000A":                    {{Name: "a\nb.html"}},
		"begins with a dot":         {{Name: listName}},
		"ends in a dot or a space":  {{Name: "a."}},
		"A.csv and a.csv of the":    {{Name: "A.csv"}, {Name: "b.csv"}, {Name: "a.csv"}},
		"a.html and a.html of the":  {{Name: "a.html"}, {Name: "a.html"}},
		"É.html and é.html of the ": {{Name: "É.html"}, {Name: "é.html"}},
	} {
		parent := t.TempDir()
		if err := put(filepath.Join(parent, "handbook"), files); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("want %s, got %v", says, err)
		}
		if got := names(t, parent); len(got) > 0 {
			t.Errorf("%s: there are %v", says, got)
		}
	}
	parent := t.TempDir()
	for _, e := range [][]Edition{
		{{Folder: filepath.Join(parent, "a"), Files: handbook("x")}, {Folder: filepath.Join(parent, "A"), Files: handbook("x")}},
		{{Folder: filepath.Join(parent, "a"), Files: handbook("x"), Single: true}, {Folder: filepath.Join(parent, "a.html"), Files: handbook("x")}},
		{{Folder: filepath.Join(parent, benchName), Files: handbook("x")}},
	} {
		if _, err := Write(context.Background(), e...); err == nil || !strings.Contains(err.Error(), "two things would be written as") {
			t.Errorf("it says %v", err)
		}
	}
	if got := names(t, parent); len(got) > 0 {
		t.Errorf("there are %v", got)
	}
}

// An edition whose folder is a link is written where the link leads; what stands
// beside it, beside the link. All of it is one set.
func TestSetThroughALink(t *testing.T) {
	parent, elsewhere := t.TempDir(), t.TempDir()
	if err := errors.Join(os.Mkdir(filepath.Join(elsewhere, "site"), 0o777), os.Symlink(filepath.Join(elsewhere, "site"), filepath.Join(parent, "book"))); err != nil {
		t.Fatal(err)
	}
	for _, words := range []string{"one", "two"} {
		if _, err := Write(context.Background(), set(parent, words)...); err != nil {
			t.Fatal(err)
		}
		if got := content(t, filepath.Join(elsewhere, "site", "page.html")) + content(t, filepath.Join(parent, "book-staff", "page.html")); got != words+words {
			t.Errorf("the pages say %s", got)
		}
		if a, b := names(t, parent), names(t, elsewhere); !slices.Equal(a, parts) || len(b) != 1 {
			t.Errorf("there are %v and %v", a, b)
		}
	}
}
