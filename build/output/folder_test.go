package output

import (
	"archive/zip"
	"bytes"
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"noonbook/build/file"
)

// The list of a handbook is what sha256sum writes and reads: 64 hexadecimal
// digits, two spaces and a name (GNU coreutils manual, md5sum invocation), one for
// each file, by name.
func TestListOfFiles(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "handbook")
	write(t, folder, []file.File{{Name: "b.html", Bytes: []byte("bb")}, {Name: "a b.svg", Bytes: nil}, {Name: "index.html", Bytes: []byte("x")}})
	want := ""
	for _, f := range []struct{ name, text string }{{"a b.svg", ""}, {"b.html", "bb"}, {"index.html", "x"}} {
		want += fmt.Sprintf("%x  %s\n", sha256.Sum256([]byte(f.text)), f.name)
	}
	if got := content(t, filepath.Join(folder, ".noonbook-files")); got != want {
		t.Errorf("the list is\n%swant\n%s", got, want)
	}
	if info, err := os.Stat(filepath.Join(folder, "b.html")); err != nil || info.Mode().Perm()&0o444 == 0 || info.Mode().Perm()&0o111 != 0 {
		t.Errorf("a page is %v, %v", info.Mode(), err)
	}
}

// Which folders may be replaced: those that are not there, empty, or hold what
// noonbook wrote, in whole or in part.
func TestWhichFoldersAreOurs(t *testing.T) {
	for _, c := range []struct {
		name    string
		prepare func(folder string) error
		ours    bool
	}{
		{"not there", func(string) error { return nil }, true},
		{"below a folder that is not there", func(string) error { return nil }, true},
		{"empty", func(f string) error { return os.Mkdir(f, 0o777) }, true},
		{"ours", func(f string) error { return put(f, handbook("old")) }, true},
		{"ours, a page taken away", func(f string) error {
			return errors.Join(put(f, handbook("old")), os.Remove(filepath.Join(f, "page-3.html")))
		}, true},
		{"a list alone that says nothing", func(f string) error {
			return errors.Join(os.Mkdir(f, 0o777), os.WriteFile(filepath.Join(f, ".noonbook-files"), nil, 0o666))
		}, true},
		{"ours without its list", func(f string) error {
			return errors.Join(put(f, handbook("old")), os.Remove(filepath.Join(f, ".noonbook-files")))
		}, false},
		{"ours with a name changed", func(f string) error {
			return errors.Join(put(f, handbook("old")), os.Rename(filepath.Join(f, "page-3.html"), filepath.Join(f, "page-x.html")))
		}, false},
		{"ours, two pages exchanged", func(f string) error {
			files := handbook("old")
			files[1].Bytes = []byte("other")
			return errors.Join(put(f, files), os.Rename(filepath.Join(f, "page-0.html"), filepath.Join(f, "page-1.html")))
		}, false},
		{"a hidden file", func(f string) error {
			return errors.Join(os.Mkdir(f, 0o777), os.WriteFile(filepath.Join(f, ".profile"), []byte("x"), 0o666))
		}, false},
		{"ours, looked into with a file manager", func(f string) error {
			return errors.Join(put(f, handbook("old")), os.WriteFile(filepath.Join(f, ".DS_Store"), []byte("x"), 0o666), os.WriteFile(filepath.Join(f, "._index.html"), []byte("x"), 0o666))
		}, true},
		{"empty, looked into with a file manager", func(f string) error {
			return errors.Join(os.Mkdir(f, 0o777), os.WriteFile(filepath.Join(f, "Thumbs.db"), []byte("x"), 0o666))
		}, true},
		{"a folder of a file manager's name", func(f string) error {
			return errors.Join(put(f, handbook("old")), os.Mkdir(filepath.Join(f, ".DS_Store"), 0o777))
		}, false},
		{"an empty folder within", func(f string) error {
			return errors.Join(put(f, handbook("old")), os.Mkdir(filepath.Join(f, "more"), 0o777))
		}, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			folder := filepath.Join(t.TempDir(), "handbook")
			if strings.HasPrefix(c.name, "below") {
				folder = filepath.Join(folder, "more", "deep")
			}
			if err := c.prepare(folder); err != nil {
				t.Fatal(err)
			}
			err := put(folder, []file.File{{Name: "index.html", Bytes: []byte("new")}})
			if c.ours {
				if err != nil || content(t, filepath.Join(folder, "index.html")) != "new" || len(slices.DeleteFunc(names(t, folder), noteName)) != 2 {
					t.Errorf("it is not replaced: %v", err)
				}
				return
			}
			if !errors.Is(err, ErrNotOurs) {
				t.Errorf("it is not refused: %v", err)
			}
			if slices.Contains(names(t, folder), "index.html") && content(t, filepath.Join(folder, "index.html")) == "new" {
				t.Error("it is replaced")
			}
			if left := names(t, filepath.Dir(folder)); len(left) != 1 {
				t.Errorf("left beside it: %v", left)
			}
		})
	}
}

// noteName tells the names of notes apart that the folders above hold.
func noteName(name string) bool {
	return slices.Contains([]string{".DS_Store", "._index.html", "Thumbs.db"}, name)
}

// Where one file beside the folder cannot be made, nothing is written: neither the
// others nor the folder.
func TestNothingIsWrittenInPart(t *testing.T) {
	parent := t.TempDir()
	files := []file.File{{Name: "page.html", Bytes: []byte("x")}} // a single file needs a cover
	if _, err := Write(context.Background(), Edition{Folder: filepath.Join(parent, "handbook"), Files: files, Zip: true, Single: true}); err == nil {
		t.Fatal("it is written")
	}
	if got := names(t, parent); len(got) > 0 {
		t.Errorf("left behind: %v", got)
	}
}

// The exchange of folders keeps both whole where the system has it.
func TestExchangeKeepsBoth(t *testing.T) {
	parent := quickFolder(t) // which has it on Linux
	a, b := filepath.Join(parent, "a"), filepath.Join(parent, "b")
	write(t, a, handbook("a"))
	write(t, b, handbook("b"))
	if err := exchange(a, b); err != nil {
		t.Skip("no exchange of folders on this file system")
	}
	if content(t, filepath.Join(a, "page-7.html")) != "b" || content(t, filepath.Join(b, "page-7.html")) != "a" {
		t.Error("they did not change places")
	}
}

// Files in a zip are for everyone to read, and stand below a folder of their own.
func TestZipForEveryone(t *testing.T) {
	packed, err := Zip("unit", []file.File{{Name: "index.html", Bytes: bytes.Repeat([]byte("x"), 500)}})
	if err != nil {
		t.Fatal(err)
	}
	r, err := zip.NewReader(bytes.NewReader(packed), int64(len(packed)))
	if err != nil {
		t.Fatal(err)
	}
	f := r.File[0]
	if len(r.File) != 1 || f.Name != "unit/index.html" || f.Mode().Perm() != 0o644 || f.Method != zip.Deflate || f.CompressedSize64 >= f.UncompressedSize64 {
		t.Errorf("it holds %+v, %v", f.FileHeader, f.Mode())
	}
	sealed := sealZip(packed)
	if again, err := zip.NewReader(bytes.NewReader(sealed), int64(len(sealed))); err != nil || !strings.HasPrefix(again.Comment, "noonbook ") || len(again.Comment) != len("noonbook ")+64 {
		t.Errorf("sealed it cannot be read: %v", err)
	}
}

// Links of a single file that lead nowhere it knows stay as they are.
func TestSingleKeepsOtherLinks(t *testing.T) {
	files := pages()
	files[2].Bytes = bytes.Replace(files[2].Bytes, []byte(`<a href="a.html">A</a>`), []byte(`<a href="mailto:a@example.org">m</a><a href="none.html">n</a><a href="a.html#x">x</a><label for="z">l</label><img src="crest.png" alt="c">`), 1)
	page, err := Single(files)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`href="mailto:a@example.org"`, `href="none.html"`, `href="#a/x"`, `<label for="b/z">`, `<img src="data:image/png;base64,cG5n" alt="c">`} {
		if !bytes.Contains(page, []byte(want)) {
			t.Errorf("it lacks %s", want)
		}
	}
}
