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

// A running is a desk on a folder, with a page of it.
type running struct {
	t         *testing.T
	address   string
	out, errs board
	stop      func()
	code      chan int
}

func startDesk(t *testing.T, args ...string) *running {
	t.Helper()
	ctx, stop := context.WithCancel(context.Background())
	r := &running{t: t, stop: stop, code: make(chan int, 1)}
	t.Cleanup(stop)
	go func() { r.code <- run(ctx, append([]string{"desk"}, args...), &r.out, &r.errs) }()
	until(t, "an address", func() bool {
		r.address = regexp.MustCompile(`http://127\.0\.0\.1:\d+/[A-Z2-7]{26,}/`).FindString(r.out.String())
		return r.address != ""
	})
	return r
}

// end stops the desk and wants it to end well.
func (r *running) end() {
	r.t.Helper()
	r.stop()
	if got := <-r.code; got != done {
		r.t.Errorf("exit %d, %s", got, &r.errs)
	}
}

func (r *running) get(name string) (text string, header http.Header) {
	r.t.Helper()
	answer, err := http.Get(r.address + name)
	if err != nil {
		r.t.Fatal(err)
	}
	defer answer.Body.Close()
	bytes, err := io.ReadAll(answer.Body)
	if err != nil {
		r.t.Fatal(err)
	}
	return string(bytes), answer.Header
}

// page is the page of the lesson 1-a.md.
func (r *running) page() string { text, _ := r.get("a.html"); return text }

func save(t *testing.T, dir, name, text string) {
	t.Helper()
	if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
}

func TestDeskFollowsTheLessons(t *testing.T) {
	dir := folder(t, map[string]string{"1-a.md": lesson + "First words.\n\n```answer\nquince\n```\n"})
	d := startDesk(t, dir)
	if text := d.page(); !strings.Contains(text, "First words") || strings.Contains(text, "quince") || !strings.Contains(text, `data-whole="1"`) {
		t.Errorf("the class edition reads %s", text)
	}
	save(t, dir, "1-a.md", lesson+"Second words {sun-dya.noon}.\n")
	until(t, "the problem", func() bool { return strings.Contains(d.errs.String(), `"sun-dya" is not a placeholder`) })
	if text := d.page(); !strings.Contains(text, "First words") || !strings.Contains(text, `data-whole="1"`) {
		t.Errorf("with a problem the page reads %s", text)
	}
	save(t, dir, "1-a.md", lesson+"Second and better words.\n")
	until(t, "the new page", func() bool { return strings.Contains(d.page(), "Second and better words") })
	d.end()
	for _, name := range []string{"handbook", "handbook-staff"} {
		if _, err := os.Stat(filepath.Join(dir, name)); err == nil {
			t.Errorf("the desk wrote %s", name)
		}
	}
}

// The policy that the desk sends with a page is that of the page's own head, and
// forbids frames besides: so a page does on the desk what it does from a folder.
func TestDeskSendsThePolicyOfPages(t *testing.T) {
	d := startDesk(t, "--content", folder(t, map[string]string{"1-a.md": lesson}))
	defer d.end()
	text, header := d.get("a.html")
	m := regexp.MustCompile(`http-equiv="?Content-Security-Policy"? content="([^"]+)"`).FindStringSubmatch(text)
	if m == nil {
		t.Fatalf("the page has no policy: %.400s", text)
	}
	if sent, want := header.Get("Content-Security-Policy"), m[1]+"; frame-ancestors 'none'"; sent != want {
		t.Errorf("sent is %s, want %s", sent, want)
	}
	r, err := http.NewRequest("GET", d.address+"concordance.js", nil)
	if err != nil {
		t.Fatal(err)
	}
	r.Header.Set("Sec-Fetch-Site", "cross-site")
	answer, err := http.DefaultClient.Do(r)
	if err != nil {
		t.Fatal(err)
	}
	answer.Body.Close()
	if answer.StatusCode != http.StatusForbidden {
		t.Errorf("another site's page gets the words: %d", answer.StatusCode)
	}
}

// The folder goes, as when a stick is pulled out, and comes back: the desk says so,
// keeps the pages that it has, and presses again.
func TestDeskOutlivesItsFolder(t *testing.T) {
	dir := folder(t, map[string]string{"1-a.md": lesson + "First words.\n"})
	d := startDesk(t, dir)
	if err := os.Rename(dir, dir+"-away"); err != nil {
		t.Fatal(err)
	}
	gone := "there is no folder " + dir + " any more; the desk presses again when it is back"
	until(t, "the word that it went", func() bool { return strings.Contains(d.errs.String(), gone+"\n") })
	if state, _ := d.get("desk/state.js?seen=-1"); !strings.Contains(state, gone) {
		t.Errorf("pages are told %s", state)
	}
	if text := d.page(); !strings.Contains(text, "First words") {
		t.Errorf("without the folder the page reads %s", text)
	}
	save(t, dir+"-away", "1-a.md", lesson+"Words from elsewhere.\n")
	if err := os.Rename(dir+"-away", dir); err != nil {
		t.Fatal(err)
	}
	until(t, "the new page", func() bool { return strings.Contains(d.page(), "Words from elsewhere") })
	if state, _ := d.get("desk/state.js?seen=-1"); strings.Contains(state, "no folder") {
		t.Errorf("pages are still told %s", state)
	}
	d.end()
}

// The working folder's own lessons may go too: the demo never takes their place.
func TestDeskOutlivesTheDefaultFolder(t *testing.T) {
	dir := folder(t, map[string]string{"1-a.md": lesson + "First words.\n"})
	t.Chdir(t.TempDir())
	if err := os.Rename(dir, "content"); err != nil {
		t.Fatal(err)
	}
	d := startDesk(t)
	if strings.Contains(d.out.String()+d.errs.String(), "demo") {
		t.Errorf("with a folder it says %s%s", &d.out, &d.errs)
	}
	if err := os.Rename("content", "away"); err != nil {
		t.Fatal(err)
	}
	until(t, "the word that it went", func() bool { return strings.Contains(d.errs.String(), "there is no folder content any more") })
	if text := d.page(); !strings.Contains(text, "First words") {
		t.Errorf("without the folder the page reads %.300s", text)
	}
	d.end()
}

// A file that cannot be read neither keeps the desk from starting nor ends it.
func TestDeskOutlivesUnreadableFiles(t *testing.T) {
	dir := folder(t, map[string]string{"1-a.md": lesson + "First words.\n"})
	if err := os.Symlink("2-b.md", filepath.Join(dir, "2-b.md")); err != nil { // it leads to itself
		t.Fatal(err)
	}
	d := startDesk(t, dir)
	if text := d.errs.String(); !strings.Contains(text, "2-b.md") {
		t.Errorf("it says %q", text)
	}
	if text, _ := d.get(""); !strings.Contains(text, "2-b.md") {
		t.Errorf("the page before the first handbook reads %s", text)
	}
	if err := os.Remove(filepath.Join(dir, "2-b.md")); err != nil {
		t.Fatal(err)
	}
	until(t, "the page", func() bool { return strings.Contains(d.page(), "First words") })
	for _, name := range []string{"1-a.md~", "#1-a.md#", ".1-a.md.swp", ".DS_Store"} {
		save(t, dir, name, "half a thought {sun-dya.noon}")
	}
	save(t, dir, "1-a.md", lesson+"Second words.\n")
	until(t, "the new page", func() bool { return strings.Contains(d.page(), "Second words") })
	if text := d.errs.String(); strings.Contains(text, "sun-dya") {
		t.Errorf("it read what editors leave: %s", text)
	}
	d.end()
}

func TestDeskSaysThatItShowsTheDemo(t *testing.T) {
	t.Chdir(t.TempDir())
	d := startDesk(t)
	if strings.Count(d.out.String(), "demo unit") != 1 {
		t.Errorf("it says %s", &d.out)
	}
	d.end()
}

func TestDeskWrongUse(t *testing.T) {
	for want, args := range map[string][]string{
		"desk: \"y\" is too much": {"desk", "x", "y"},
		"desk: \"x\" is too much; --content names the folder \"z\" already": {"desk", "x", "--content", "z"},
		"there is no folder x":        {"desk", "x"},
		"desk: port 70000 is outside": {"desk", "--port", "70000"},
		"there is no folder":          {"desk", "--content", filepath.Join(t.TempDir(), "none")},
	} {
		if code, _, errs := noonbook(t, args...); code != wrongUse || !strings.Contains(errs, want) {
			t.Errorf("noonbook %v: exit %d, %s", args, code, errs)
		}
	}
}
