package main

import (
	"bytes"
	"context"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"
)

// A board is a buffer that one goroutine writes and another reads.
type board struct {
	mu sync.Mutex
	b  bytes.Buffer
}

func (b *board) Write(p []byte) (int, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	return b.b.Write(p)
}

func (b *board) String() string {
	b.mu.Lock()
	defer b.mu.Unlock()
	return b.b.String()
}

// until waits for something that another goroutine brings about. Five minutes only
// end the wait: a pressing takes a moment, or a while on a busy machine.
func until(t *testing.T, what string, holds func() bool) {
	t.Helper()
	for begin := time.Now(); !holds(); time.Sleep(10 * time.Millisecond) {
		if time.Since(begin) > 5*time.Minute {
			t.Fatalf("it never came: %s", what)
		}
	}
}

func TestDeskFollowsTheLessons(t *testing.T) {
	dir := folder(t, map[string]string{"1-a.md": lesson + "First words.\n\n```answer\nquince\n```\n"})
	ctx, stop := context.WithCancel(context.Background())
	defer stop()
	var out, errs board
	code := make(chan int, 1)
	go func() { code <- run(ctx, []string{"desk", "--content", dir}, &out, &errs) }()

	address := ""
	until(t, "an address", func() bool {
		m := regexp.MustCompile(`http://127\.0\.0\.1:\d+/[A-Z2-7]{26,}/`).FindString(out.String())
		address = m
		return m != ""
	})
	page := func() string {
		answer, err := http.Get(address + "a.html")
		if err != nil {
			t.Fatal(err)
		}
		defer answer.Body.Close()
		text, err := io.ReadAll(answer.Body)
		if err != nil {
			t.Fatal(err)
		}
		return string(text)
	}
	save := func(text string) {
		if err := os.WriteFile(filepath.Join(dir, "1-a.md"), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	if text := page(); !strings.Contains(text, "First words") || strings.Contains(text, "quince") || !strings.Contains(text, `data-whole="1"`) {
		t.Errorf("the class edition reads %s", text)
	}
	save(lesson + "Second words {sun-dya.noon}.\n")
	until(t, "the problem", func() bool { return strings.Contains(errs.String(), `"sun-dya" is not a placeholder`) })
	if text := page(); !strings.Contains(text, "First words") || !strings.Contains(text, `data-whole="1"`) {
		t.Errorf("with a problem the page reads %s", text)
	}
	save(lesson + "Second and better words.\n")
	until(t, "the new page", func() bool { return strings.Contains(page(), "Second and better words") })
	stop()
	if got := <-code; got != done {
		t.Errorf("exit %d, %s", got, &errs)
	}
	for _, name := range []string{"handbook", "handbook-staff"} {
		if _, err := os.Stat(filepath.Join(dir, name)); err == nil {
			t.Errorf("the desk wrote %s", name)
		}
	}
}

func TestDeskWrongUse(t *testing.T) {
	for want, args := range map[string][]string{
		`desk: "x" is too much`:       {"desk", "x"},
		"desk: port 70000 is outside": {"desk", "--port", "70000"},
		"there is no folder":          {"desk", "--content", filepath.Join(t.TempDir(), "none")},
	} {
		if code, _, errs := noonbook(t, args...); code != wrongUse || !strings.Contains(errs, want) {
			t.Errorf("noonbook %v: exit %d, %s", args, code, errs)
		}
	}
}
