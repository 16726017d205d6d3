package desk_test

import (
	"context"
	"os"
	"path/filepath"
	"testing"
	"testing/synctest"
	"time"

	"noonbook/build/desk"
)

// What a folder may hold besides lessons neither stops the look at it nor passes for
// a change where nobody's work changed; what decides whether a file can be read does.
func TestPrintOfAStrangeFolder(t *testing.T) {
	dir := t.TempDir()
	write := func(name, text string) {
		t.Helper()
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	do := func(err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
	}
	at := func(name string) string { return filepath.Join(dir, name) }
	write("1-a.md", "a")
	last := desk.Print(dir)
	for _, c := range []struct {
		name    string
		change  func()
		differs bool
	}{
		{"a lock that leads nowhere", func() { do(os.Symlink("somebody@somewhere.1:2", at(".#1-a.md"))) }, false},
		{"a copy", func() { write("1-a.md~", "old") }, false},
		{"a file that an editor saves by itself", func() { write("#1-a.md#", "half") }, false},
		{"a swap file", func() { write(".1-a.md.swp", "x") }, false},
		{"notes of a file manager", func() { write("._1-a.md", "x"); write(".DS_Store", "x") }, false},
		{"a number sign before a name", func() { write("#2-b.md", "b") }, true},
		{"a lesson that may no longer be read", func() { do(os.Chmod(at("1-a.md"), 0)) }, true},
		{"and may be again", func() { do(os.Chmod(at("1-a.md"), 0o644)) }, true},
		{"a link to nothing", func() { do(os.Symlink("nothing", at("3-c.md"))) }, true},
		{"which then leads somewhere", func() { write("nothing", "c") }, true},
		{"a link in a circle", func() { do(os.Symlink("4-d.md", at("4-d.md"))) }, true},
		{"a folder with the name of a lesson", func() { do(os.Mkdir(at("5-e.md"), 0o777)) }, false},
		{"a name with a line in it", func() { write("6\n-f.md", "f") }, true},
	} {
		c.change()
		now := desk.Print(dir)
		if (now != last) != c.differs {
			t.Errorf("%s: differs is %v", c.name, now != last)
		}
		if again := desk.Print(dir); again != now {
			t.Errorf("%s: it differs from one look to the next", c.name)
		}
		last = now
	}
}

// A folder that is a link is looked into, and so is one that went and came back.
func TestPrintOfALinkedFolder(t *testing.T) {
	parent := t.TempDir()
	real, link := filepath.Join(parent, "real"), filepath.Join(parent, "link")
	if err := os.Mkdir(real, 0o777); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(real, link); err != nil {
		t.Fatal(err)
	}
	before := desk.Print(link)
	if err := os.WriteFile(filepath.Join(real, "1-a.md"), []byte("a"), 0o666); err != nil {
		t.Fatal(err)
	}
	with := desk.Print(link)
	if with == before {
		t.Error("a lesson in a folder that a link leads to is not seen")
	}
	if err := os.Rename(real, real+"-away"); err != nil {
		t.Fatal(err)
	}
	if gone := desk.Print(link); gone == with || gone == before {
		t.Error("it is not seen that the folder went")
	}
	if err := os.Rename(real+"-away", real); err != nil {
		t.Fatal(err)
	}
	if back := desk.Print(link); back != with {
		t.Error("the folder that came back is another")
	}
}

// What was saved while the first pressing was under way is another folder than the
// one that was pressed, though it stays the same from then on.
func TestWatchSeesWhatWasSavedBefore(t *testing.T) {
	for pressed, want := range map[string]int{"as saved": 0, "before": 1} {
		ctx, stop := context.WithCancel(context.Background())
		looks, calls := 0, 0
		look := func() string {
			if looks++; looks == 6 {
				stop()
			}
			return "as saved"
		}
		desk.Watch(ctx, time.Millisecond, pressed, look, func() { calls++ })
		if calls != want {
			t.Errorf("pressed was the folder %s: called %d times, want %d", pressed, calls, want)
		}
	}
}

// A look that takes long is followed by a rest, so that looking never takes more than a few
// hundredths of the time; one that was held up once does not slow down the others.
func TestWatchRestsFromSlowLooks(t *testing.T) {
	for _, c := range []struct {
		name   string
		takes  func(look int) time.Duration
		within time.Duration // a hundred looks
		beyond time.Duration
	}{
		{"quick looks", func(int) time.Duration { return 0 }, 2100 * time.Millisecond, 1900 * time.Millisecond},
		{"slow looks", func(int) time.Duration { return 50 * time.Millisecond }, time.Hour, 100 * time.Second},
		{"one slow look", func(look int) time.Duration {
			if look == 50 {
				return time.Second
			}
			return 0
		}, 3100 * time.Millisecond, 2900 * time.Millisecond},
	} {
		synctest.Test(t, func(t *testing.T) {
			ctx, stop := context.WithCancel(t.Context())
			begin, looks := time.Now(), 0
			desk.Watch(ctx, 20*time.Millisecond, "", func() string {
				looks++
				time.Sleep(c.takes(looks))
				if looks == 100 {
					stop()
				}
				return ""
			}, func() {})
			if took := time.Since(begin); took > c.within || took < c.beyond {
				t.Errorf("%s: a hundred take %v", c.name, took)
			}
		})
	}
}

// within runs what must not wait for anybody, and ends the test where it does.
func within(t *testing.T, what string, do func()) {
	t.Helper()
	done := make(chan struct{})
	go func() { do(); close(done) }()
	select {
	case <-done:
	case <-time.After(time.Minute):
		t.Fatalf("%s waits", what)
	}
}
