package output

import (
	"errors"
	"os"
	"path/filepath"
	"testing"
	"time"

	"noonbook/build/file"
)

var twoPages = []file.File{{Name: "index.html", Bytes: []byte("<p>a")}, {Name: "b.html", Bytes: []byte("<p>b")}}

// A trace is that of a whole folder or file; whatever is missing or strange takes it away.
func TestTrace(t *testing.T) {
	dir := t.TempDir()
	book := filepath.Join(dir, "book")
	write := func(files []file.File) {
		t.Helper()
		if _, err := Write(t.Context(), Edition{Folder: book, Files: files}); err != nil {
			t.Fatal(err)
		}
	}
	if got := Trace(book); got != "" {
		t.Errorf("what is not there has the trace %q", got)
	}
	write(twoPages)
	first := Trace(book)
	write(append([]file.File{{Name: "c.html", Bytes: []byte("<p>c")}}, twoPages...))
	if second := Trace(book); first == "" || second == "" || first == second {
		t.Errorf("the traces are %q and %q", first, second)
	}
	write(twoPages)
	if again := Trace(book); again != first {
		t.Errorf("the same folder has the traces %q and %q", first, again)
	}
	for name, spoil := range map[string]func() error{
		"a file is missing": func() error { return os.Remove(filepath.Join(book, "b.html")) },
		"one is too many":   func() error { return os.WriteFile(filepath.Join(book, "mine"), nil, 0o666) },
		"the list is gone":  func() error { return os.Remove(filepath.Join(book, listName)) },
		"one is a folder": func() error {
			return errors.Join(os.Remove(filepath.Join(book, "b.html")), os.Mkdir(filepath.Join(book, "b.html"), 0o777))
		},
	} {
		if err := errors.Join(os.RemoveAll(book), spoilt(t, book, spoil)); err != nil {
			t.Fatal(err)
		}
		if got := Trace(book); got != "" {
			t.Errorf("%s: the trace is %q", name, got)
		}
	}
	if err := os.WriteFile(filepath.Join(dir, "a.zip"), []byte("123"), 0o666); err != nil {
		t.Fatal(err)
	}
	if got := Trace(filepath.Join(dir, "a.zip")); got != "3" {
		t.Errorf("a file of three bytes has the trace %q", got)
	}
}

func spoilt(t *testing.T, book string, spoil func() error) error {
	_, err := Write(t.Context(), Edition{Folder: book, Files: twoPages})
	return errors.Join(err, spoil())
}

// Editions with benches of their own do not wait for one another, nor for the folder that
// they are written into; what one left that was cut off is mended by the next of its own.
func TestOwnBenches(t *testing.T) {
	dir, bench := t.TempDir(), t.TempDir()
	release, err := tryLock(dir)
	if err != nil {
		t.Fatal(err)
	}
	defer release()
	one := []Edition{{Folder: filepath.Join(dir, "one"), Files: twoPages, Zip: true, Bench: bench}}
	if _, err := writeSet(t.Context(), realDisk(), time.Millisecond, one); err != nil {
		t.Fatal(err)
	}
	if Trace(filepath.Join(dir, "one")) == "" || Trace(filepath.Join(dir, "one.zip")) == "" {
		t.Error("not everything was written")
	}
	held, err := tryLock(bench)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := writeSet(t.Context(), realDisk(), time.Millisecond, one); !errors.Is(err, errHeld) {
		t.Errorf("two write at one bench: %v", err)
	}
	held()
	torn := realDisk()
	torn.sync = func(string) error { return errors.New("cut off") }
	torn.remove = torn.sync
	if _, err := writeSet(t.Context(), torn, time.Millisecond, one); err == nil || !there(filepath.Join(bench, benchName)) {
		t.Fatalf("nothing was left: %v", err)
	}
	if _, err := writeSet(t.Context(), realDisk(), time.Millisecond, one); err != nil || there(filepath.Join(bench, benchName)) {
		t.Errorf("what was left is not mended: %v", err)
	}
}

// Without a folder what is beside it stands alone.
func TestLoose(t *testing.T) {
	dir := t.TempDir()
	if _, err := Write(t.Context(), Edition{Folder: filepath.Join(dir, "book"), Files: twoPages, Zip: true, Loose: true}); err != nil {
		t.Fatal(err)
	}
	entries, err := os.ReadDir(dir)
	if err != nil || len(entries) != 1 || entries[0].Name() != "book.zip" {
		t.Errorf("%v are there, %v", entries, err)
	}
}

// A page beside handbooks takes its own place and no other file's, and is left as it is
// where it is the same.
func TestWritePage(t *testing.T) {
	dir := t.TempDir()
	name := filepath.Join(dir, "index.html")
	for _, text := range []string{"<p>one", "<p>two", "<p>two"} {
		before, _ := os.Stat(name)
		if _, err := WritePage(t.Context(), name, []byte(text), dir); err != nil {
			t.Fatal(err)
		}
		content, err := os.ReadFile(name)
		if err != nil || !sealed(content) || string(content[:len(text)]) != text {
			t.Errorf("it holds %q, %v", content, err)
		}
		if after, _ := os.Stat(name); before != nil && text == "<p>two" && string(content[:6]) == "<p>two" && os.SameFile(before, after) {
			return // the third time
		}
	}
	t.Error("the same page was written again")
}

// A page that somebody wrote stays.
func TestWritePageLeavesOthers(t *testing.T) {
	name := filepath.Join(t.TempDir(), "index.html")
	if err := os.WriteFile(name, []byte("mine"), 0o666); err != nil {
		t.Fatal(err)
	}
	if _, err := WritePage(t.Context(), name, []byte("<p>"), filepath.Dir(name)); !errors.Is(err, ErrNotOurs) {
		t.Errorf("it says %v", err)
	}
	if text, _ := os.ReadFile(name); string(text) != "mine" {
		t.Errorf("it holds %q", text)
	}
}
