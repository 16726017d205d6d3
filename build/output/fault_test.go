// Without the race detector, which sees nothing in one goroutine and takes minutes.

//go:build !race

package output

import (
	"context"
	"fmt"
	"maps"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"noonbook/build/file"
)

// Whatever one step of a press fails, full disk, lost permission or a bad stick:
// all is as it was, or all is new. The next press is as if nothing had been.
func TestAnyStepMayFail(t *testing.T) {
	trials := 0
	everyStep(t, func(s start, at int) bool {
		tr := &trial{at: at, twoRenames: s.twoRenames}
		err := s.press(t, tr)
		if tr.failed == "" {
			return false
		}
		trials++
		if now := look(t, s.parent); !maps.Equal(now, s.after) && !(err != nil && maps.Equal(now, s.was)) {
			t.Errorf("%v, %s: the set is %v, %v", s, tr.failed, now, err)
		}
		s.nextPresses(t, tr.failed)
		return true
	})
	t.Logf("%d trials", trials)
	if trials < 100 {
		t.Error("too few steps were tried")
	}
}

// Whatever step a press is killed at: each part is whole. Whatever is pressed
// next, all parts are of one set then.
func TestAnyStepMayBeTheLast(t *testing.T) {
	trials, mixed := 0, 0
	everyStep(t, func(s start, at int) bool {
		tr := &trial{end: at, twoRenames: s.twoRenames}
		s.press(t, tr)
		if tr.ended == "" {
			return false
		}
		trials++
		if !s.whole(t, tr.ended) {
			mixed++
		}
		s.nextPresses(t, tr.ended)
		return true
	})
	t.Logf("%d trials; in %d the set was of two kinds until the next press", trials, mixed)
	if trials < 100 || mixed == 0 {
		t.Error("too few steps were tried")
	}
}

// The same where a press is killed while it undoes what it did, since a part
// could not be put in place, or synced.
func TestUndoMayBeCutOff(t *testing.T) {
	trials := 0
	everyStep(t, func(s start, at int) bool {
		first := &trial{at: at, twoRenames: s.twoRenames}
		s.press(t, first)
		if place := strings.HasPrefix(first.failed, "move ") && strings.Contains(first.failed, "new-"); !place && !strings.HasPrefix(first.failed, "sync ") {
			return first.failed != ""
		}
		for end := at + 1 + at%4; ; end += 4 { // another quarter at each step
			s := begin(t, s.twoRenames, len(s.was) == 0)
			tr := &trial{at: at, end: end, twoRenames: s.twoRenames}
			s.press(t, tr)
			if tr.ended == "" {
				return true
			}
			trials++
			s.whole(t, tr.failed+", "+tr.ended)
			s.nextPresses(t, tr.failed+", "+tr.ended)
		}
	})
	t.Logf("%d trials", trials)
	if trials < 100 {
		t.Error("too few steps were tried")
	}
}

// A start is a folder with the old set, or with nothing, and what may be found
// there afterwards.
type start struct {
	parent     string
	twoRenames bool
	was, after map[string]string
}

func (s start) String() string {
	return fmt.Sprintf("two renames %v, first press %v", s.twoRenames, len(s.was) == 0)
}

func begin(t *testing.T, twoRenames, first bool) start {
	t.Helper()
	s := start{parent: quickFolder(t), twoRenames: twoRenames, was: map[string]string{}, after: lookOf(t, "new")}
	if !first {
		s.was = lookOf(t, "old")
		if _, err := (&trial{}).press(s.parent, "old"); err != nil {
			t.Fatal(err)
		}
	}
	return s
}

// everyStep begins anew for each step, until try says that there was none.
func everyStep(t *testing.T, try func(s start, at int) bool) {
	t.Helper()
	for _, twoRenames := range []bool{false, true} {
		for _, first := range []bool{true, false} {
			for at := 1; try(begin(t, twoRenames, first), at); at++ {
			}
		}
	}
}

func (s start) press(t *testing.T, tr *trial) error {
	t.Helper()
	kept, err := tr.press(s.parent, "new")
	if len(kept) > 0 {
		t.Errorf("%v, %s%s: it keeps %v", s, tr.failed, tr.ended, kept)
	}
	return err
}

// whole checks each part after a kill, and reports whether all are of one set.
func (s start) whole(t *testing.T, when string) bool {
	t.Helper()
	now, missing := look(t, s.parent), 0
	for _, part := range parts {
		switch {
		case now[part] == s.was[part], now[part] == s.after[part]:
		case now[part] == "" && s.twoRenames: // between the two
			missing++
		default:
			t.Errorf("%v, %s: %s is neither old nor new", s, when, part)
		}
	}
	if missing > 1 {
		t.Errorf("%v, %s: %d parts are missing", s, when, missing)
	}
	return maps.Equal(now, s.was) || maps.Equal(now, s.after)
}

// nextPresses presses something else in the same folder, which tidies up, and then
// the new set again.
func (s start) nextPresses(t *testing.T, when string) {
	t.Helper()
	other := Edition{Folder: filepath.Join(s.parent, "other"), Files: []file.File{{Name: "a.html"}}}
	if _, err := writeSet(context.Background(), (&trial{}).disk(), time.Second, []Edition{other}); err != nil {
		t.Errorf("%v, %s: the next press: %v", s, when, err)
	}
	if now := look(t, s.parent); !maps.Equal(now, s.was) && !maps.Equal(now, s.after) {
		t.Errorf("%v, %s: behind another press the set is of two kinds: %v", s, when, now)
	}
	if _, err := (&trial{twoRenames: s.twoRenames}).press(s.parent, "new"); err != nil {
		t.Errorf("%v, %s: pressing again: %v", s, when, err)
	}
	if now := look(t, s.parent); !maps.Equal(now, s.after) {
		t.Errorf("%v, %s: pressing again gives %v", s, when, now)
	}
	if got := names(t, s.parent); !slices.Equal(got, append(slices.Clone(parts), "other")) {
		t.Errorf("%v, %s: there are %v", s, when, got)
	}
}
