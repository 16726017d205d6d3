package output

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"noonbook/build/file"
)

func handbook(words string) []file.File {
	files := []file.File{{Name: "index.html", Bytes: []byte(words)}}
	for i := range 20 {
		files = append(files, file.File{Name: fmt.Sprintf("page-%d.html", i), Bytes: []byte(words)})
	}
	for _, name := range []string{"noonbook.css", "noonbook.js", "concordance.js"} { // what a single file needs
		files = append(files, file.File{Name: name, Bytes: []byte(words)})
	}
	return files
}

// put writes one edition and wants nobody's file kept.
func put(folder string, files []file.File) error {
	kept, err := Write(context.Background(), Edition{Folder: folder, Files: files})
	if len(kept) > 0 {
		err = errors.Join(err, fmt.Errorf("kept: %v", kept))
	}
	return err
}

func write(t *testing.T, folder string, files []file.File) {
	t.Helper()
	if err := put(folder, files); err != nil {
		t.Fatal(err)
	}
}

func names(t *testing.T, folder string) []string {
	t.Helper()
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	var list []string
	for _, e := range entries {
		list = append(list, e.Name())
	}
	return list
}

func content(t *testing.T, name string) string {
	t.Helper()
	b, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// canExchange reports whether the system lets two folders change places in one step.
func canExchange(t *testing.T) bool {
	return exchange(t.TempDir(), t.TempDir()) == nil
}

func TestWriteReplacesTheOldHandbook(t *testing.T) {
	parent := t.TempDir()
	folder := filepath.Join(parent, "handbook")
	write(t, folder, handbook("old"))
	write(t, folder, []file.File{{Name: "index.html", Bytes: []byte("new")}})
	if got := names(t, folder); len(got) != 2 || content(t, filepath.Join(folder, "index.html")) != "new" {
		t.Errorf("the folder holds %v", got)
	}
	if got := names(t, parent); len(got) != 1 {
		t.Errorf("beside it: %v", got)
	}
}

// Whoever looks while a handbook is replaced sees the old one or the new one,
// whole. Where the system has no exchange there is a moment with none.
func TestReaderSeesWholeHandbooks(t *testing.T) {
	if !canExchange(t) {
		t.Log("no exchange of folders on this file system; the look at every instant is not taken")
		return
	}
	folder := filepath.Join(t.TempDir(), "handbook")
	write(t, folder, handbook("0"))
	done := make(chan error)
	go func() {
		for i := range 50 {
			if err := put(folder, handbook(fmt.Sprint(i))); err != nil {
				done <- err
				return
			}
		}
		done <- nil
	}()
	for looks := 0; ; looks++ {
		select {
		case err := <-done:
			if err != nil || looks == 0 {
				t.Fatalf("%d looks: %v", looks, err)
			}
			return
		default:
		}
		dir, err := os.OpenRoot(folder) // stays on one handbook, as a file manager's window does
		if err != nil {
			t.Fatal(err)
		}
		first, errFirst := dir.ReadFile("index.html")
		last, errLast := dir.ReadFile("page-19.html")
		dir.Close()
		if errFirst == nil && errLast == nil && string(first) != string(last) {
			t.Fatalf("a mixed handbook: %q and %q", first, last)
		}
		if _, err := os.Stat(filepath.Join(folder, "index.html")); err != nil {
			t.Fatalf("an empty moment: %v", err)
		}
	}
}

func TestWriteLeavesSomeonesFilesAlone(t *testing.T) {
	for _, c := range []struct {
		name    string
		prepare func(folder string) error
		says    string
	}{
		{"a folder of their own", func(folder string) error {
			return errors.Join(os.Mkdir(folder, 0o777), os.WriteFile(filepath.Join(folder, "thesis.txt"), []byte("x"), 0o666))
		}, "such as thesis.txt"},
		{"a file added to a handbook", func(folder string) error {
			return errors.Join(put(folder, handbook("old")), os.WriteFile(filepath.Join(folder, "notes.txt"), []byte("x"), 0o666))
		}, "such as notes.txt"},
		{"a page changed by hand", func(folder string) error {
			return errors.Join(put(folder, handbook("old")), os.WriteFile(filepath.Join(folder, "page-3.html"), []byte("x"), 0o666))
		}, "page-3.html was changed since"},
	} {
		t.Run(c.name, func(t *testing.T) {
			folder := filepath.Join(t.TempDir(), "handbook")
			if err := c.prepare(folder); err != nil {
				t.Fatal(err)
			}
			before := names(t, folder)
			err := put(folder, handbook("new"))
			if !errors.Is(err, ErrNotOurs) || !strings.Contains(err.Error(), c.says) {
				t.Errorf("got %v", err)
			}
			if after := names(t, folder); fmt.Sprint(after) != fmt.Sprint(before) {
				t.Errorf("the folder changed from %v to %v", before, after)
			}
		})
	}
}

func TestWriteInterruptedLeavesNothing(t *testing.T) {
	parent := t.TempDir()
	folder := filepath.Join(parent, "handbook")
	write(t, folder, handbook("old"))
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := Write(ctx, Edition{Folder: folder, Files: handbook("new")}); !errors.Is(err, context.Canceled) {
		t.Fatalf("got %v", err)
	}
	if got := content(t, filepath.Join(folder, "index.html")); got != "old" {
		t.Errorf("the handbook says %q", got)
	}
	if got := names(t, parent); len(got) != 1 {
		t.Errorf("left behind: %v", got)
	}
}

func TestWriteThroughALink(t *testing.T) {
	parent := t.TempDir()
	real, link := filepath.Join(parent, "real"), filepath.Join(parent, "link")
	if err := errors.Join(os.Mkdir(real, 0o777), os.Symlink(real, link)); err != nil {
		t.Fatal(err)
	}
	write(t, link, handbook("new"))
	if info, err := os.Lstat(link); err != nil || info.Mode()&os.ModeSymlink == 0 {
		t.Errorf("the link is gone: %v %v", info, err)
	}
	if got := content(t, filepath.Join(real, "index.html")); got != "new" {
		t.Errorf("the handbook says %q", got)
	}
}

// A file manager leaves notes in a folder that somebody has looked into. They go along
// into the next handbook without a word, and the one after it is written as well.
func TestNotesOfAFileManagerGoAlong(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "handbook")
	write(t, folder, handbook("old"))
	for _, name := range []string{".DS_Store", "Thumbs.db", "._index.html"} {
		if err := os.WriteFile(filepath.Join(folder, name), []byte("note"), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	for range 2 {
		kept, err := Write(t.Context(), Edition{Folder: folder, Files: handbook("new")})
		if err != nil || len(kept) > 0 {
			t.Fatal(kept, err)
		}
		for _, name := range []string{".DS_Store", "Thumbs.db", "._index.html"} {
			if got := content(t, filepath.Join(folder, name)); got != "note" {
				t.Errorf("%s is %q", name, got)
			}
		}
	}
}
