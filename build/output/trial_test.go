package output

import (
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"sync"
	"syscall"
	"testing"
	"time"

	"noonbook/build/file"
)

// A trial is a disk on which one step fails, or before which something happens. A
// write that fails has written half.
type trial struct {
	at         int    // the step that fails, from 1
	end        int    // the step of a kill: neither it nor anything behind it is done
	twoRenames bool   // the system has no exchange
	happens    func() // instead of a failure
	mu         sync.Mutex
	steps      int
	failed     string // what failed first, or before what it happened
	ended      string // what the kill cut off
}

// faults are what full disks, lost permissions and bad sticks answer.
var faults = []error{syscall.ENOSPC, syscall.EACCES, syscall.EIO, syscall.EPERM, syscall.EROFS}

func (tr *trial) step(what string) error {
	tr.mu.Lock()
	defer tr.mu.Unlock()
	tr.steps++
	switch {
	case tr.happens != nil && tr.steps == tr.at:
		tr.failed = what
		tr.happens()
		return nil
	case tr.happens != nil:
		return nil
	case tr.steps == tr.at:
		tr.failed = what
	case tr.end > 0 && tr.steps >= tr.end:
		if tr.ended == "" {
			tr.ended = what
		}
	default:
		return nil
	}
	return fmt.Errorf("%s: %w", what, faults[tr.steps%len(faults)])
}

// disk does not sync, which would only make hundreds of trials slow.
func (tr *trial) disk() disk {
	real := realDisk()
	d := disk{
		mkdir: func(name string, mode fs.FileMode) error {
			return or(tr.step("mkdir "+name), func() error { return real.mkdir(name, mode) })
		},
		write: func(name string, content []byte) error {
			failed := tr.step("write " + name)
			if failed != nil && tr.ended != "" && tr.ended != "write "+name {
				return failed // killed before
			}
			if failed != nil {
				content = content[:len(content)/2]
			}
			f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
			if err != nil {
				return err
			}
			_, err = f.Write(content)
			return errors.Join(failed, err, f.Close())
		},
		sync: func(folder string) error { return tr.step("sync " + folder) },
		move: func(from, to string) error {
			return or(tr.step("move "+from), func() error { return real.move(from, to) })
		},
		exchange: func(a, b string) error {
			return or(tr.step("exchange "+a), func() error { return real.exchange(a, b) })
		},
		remove: func(name string) error {
			return or(tr.step("remove "+name), func() error { return real.remove(name) })
		},
	}
	if tr.twoRenames {
		d.exchange = func(_, _ string) error { return errors.ErrUnsupported }
	}
	return d
}

func or(err error, do func() error) error {
	if err != nil {
		return err
	}
	return do()
}

func (tr *trial) press(parent, words string) ([]Kept, error) {
	return writeSet(context.Background(), tr.disk(), time.Second, set(parent, words))
}

// set is a small set of everything that one press writes.
func set(parent, words string) []Edition {
	var files []file.File
	for _, name := range []string{"index.html", "page.html", "-a.html", "-b.html", "noonbook.css", "noonbook.js", "concordance.js"} {
		files = append(files, file.File{Name: name, Bytes: []byte(words)})
	}
	return []Edition{
		{Folder: filepath.Join(parent, "book"), Files: files, Single: true, Zip: true},
		{Folder: filepath.Join(parent, "book-staff"), Files: append(files, file.File{Name: "answers.html", Bytes: []byte(words)}), Single: true, Zip: true},
	}
}

var parts = []string{"book", "book-staff", "book-staff.html", "book-staff.zip", "book.html", "book.zip"}

// look returns the checksum of each part of a set, "" where it is not there.
func look(t *testing.T, parent string) map[string]string {
	t.Helper()
	sums := map[string]string{}
	for _, part := range parts {
		h := sha256.New()
		err := filepath.WalkDir(filepath.Join(parent, part), func(name string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() {
				return err
			}
			b, err := os.ReadFile(name)
			fmt.Fprintf(h, "%s %x\n", d.Name(), sha256.Sum256(b))
			return err
		})
		switch {
		case err == nil:
			sums[part] = fmt.Sprintf("%x", h.Sum(nil))
		case !errors.Is(err, fs.ErrNotExist):
			t.Fatal(err)
		}
	}
	return sums
}

// quickFolder is for hundreds of trials: in memory where Linux has such a place.
func quickFolder(t *testing.T) string {
	t.Helper()
	if folder, err := os.MkdirTemp("/dev/shm", "noonbook-test-"); err == nil {
		t.Cleanup(func() { os.RemoveAll(folder) })
		return folder
	}
	return t.TempDir()
}

// lookOf is that of a set by itself.
func lookOf(t *testing.T, words string) map[string]string {
	t.Helper()
	parent := quickFolder(t)
	defer os.RemoveAll(parent)
	if _, err := (&trial{}).press(parent, words); err != nil {
		t.Fatal(err)
	}
	return look(t, parent)
}
