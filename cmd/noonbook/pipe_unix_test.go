//go:build unix

package main

import (
	"io/fs"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// Where a file is expected a pipe is refused at once; POSIX.1-2024, open(): to open
// one would wait until somebody writes into it.
func TestPipesAreNotOpened(t *testing.T) {
	dir := folder(t, map[string]string{"1-a.md": lesson})
	if err := syscall.Mkfifo(filepath.Join(dir, "2-b.md"), 0o666); err != nil {
		t.Fatal(err)
	}
	files, _, closing, err := open(dir)
	if err != nil {
		t.Fatal(err)
	}
	defer closing()
	for what, do := range map[string]func() error{
		"opening":            func() error { _, err := files.Open("2-b.md"); return err },
		"reading":            func() error { _, err := fs.ReadFile(files, "2-b.md"); return err },
		"reading at an end":  func() error { _, err := fs.ReadFile(files, "none.md"); return err },
		"opening at an end":  func() error { _, err := files.Open("none.md"); return err },
		"leaving the folder": func() error { _, err := files.Open("../x"); return err },
	} {
		failed := make(chan error)
		go func() { failed <- do() }()
		select {
		case err := <-failed:
			if err == nil {
				t.Errorf("%s a pipe went well", what)
			}
		case <-time.After(time.Minute):
			t.Fatalf("%s a pipe waits", what)
		}
	}
	for _, name := range []string{".", "1-a.md"} {
		if f, err := files.Open(name); err != nil {
			t.Errorf("%s: %v", name, err)
		} else {
			f.Close()
		}
	}
	if text, err := fs.ReadFile(files, "1-a.md"); err != nil || string(text) != lesson {
		t.Errorf("the lesson reads %q, %v", text, err)
	}
}

// The desk answers beside a pipe, and goes on when a lesson takes its place.
func TestDeskOutlivesAPipe(t *testing.T) {
	dir := folder(t, map[string]string{"1-a.md": lesson + "First words.\n"})
	if err := syscall.Mkfifo(filepath.Join(dir, "2-b.md"), 0o666); err != nil {
		t.Fatal(err)
	}
	d := startDesk(t, dir)
	if err := syscall.Unlink(filepath.Join(dir, "2-b.md")); err != nil {
		t.Fatal(err)
	}
	save(t, dir, "1-a.md", lesson+"Second words.\n")
	until(t, "the page", func() bool { text, _ := d.get("a.html"); return strings.Contains(text, "Second words") })
	d.end()
}
