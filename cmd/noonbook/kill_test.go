// Without the race detector: what is killed is another process, which it does not see.

//go:build !race

package main

import (
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"
)

// pressOn is the environment variable that makes of the test's program one that
// presses in turn the units it names, until it is killed.
const pressOn = "NOONBOOK_TEST_PRESS_ON"

// beMain is one that makes of it noonbook itself.
const beMain = "NOONBOOK_TEST_BE_MAIN"

func TestMain(m *testing.M) {
	switch {
	case os.Getenv(beMain) != "":
		main()
	case os.Getenv(pressOn) == "":
		os.Exit(m.Run())
	}
	for {
		for _, unit := range os.Args[1:3] {
			if code := run(context.Background(), pressAll(unit, os.Args[3]), os.Stdout, os.Stderr); code != done {
				os.Exit(code)
			}
		}
	}
}

func pressAll(unit, out string) []string {
	return []string{"press", "--content", unit, "--out", out, "--staff", "--single", "--zip"}
}

// A process that presses one unit and another in turn is killed at moments that
// nobody chose, 200 times. Each part of what it wrote is then whole, of the one unit
// or the other; and behind the next press all parts are of one.
func TestKills(t *testing.T) {
	const kills, rows = 200, 4
	units := []string{
		folder(t, map[string]string{"1-a.md": lesson + "The first words.\n\n```answer\nOne.\n```\n"}),
		folder(t, map[string]string{"1-a.md": lesson + "Other words.\n\n```answer\nTwo.\n```\n", "2-b.md": lesson}),
	}
	var whole []map[string]string // what each unit makes
	for _, unit := range units {
		parent := killFolder(t)
		must(t, pressAll(unit, filepath.Join(parent, "book"))...)
		whole = append(whole, killSums(t, parent))
	}
	var all sync.WaitGroup
	counts := make([]killCount, rows)
	for row := range rows {
		parent := killFolder(t)
		must(t, pressAll(units[0], filepath.Join(parent, "book"))...)
		all.Go(func() {
			chance := rand.New(rand.NewPCG(2027, uint64(row)))
			for kill := range kills / rows {
				counts[row].kill(t, units, whole, parent, kill, chance)
			}
		})
	}
	all.Wait()
	sum := killCount{}
	for _, c := range counts {
		sum.kills, sum.broken, sum.within, sum.mixed = sum.kills+c.kills, sum.broken+c.broken, sum.within+c.within, sum.mixed+c.mixed
	}
	t.Logf("kills: %d, broken handbooks: %d", sum.kills, sum.broken)
	t.Logf("%d kills came while files were written or exchanged, %d between two parts of a set", sum.within, sum.mixed)
	if sum.kills != kills || sum.within < kills/10 {
		t.Error("too few kills came while files were written")
	}
}

type killCount struct{ kills, broken, within, mixed int }

// kill kills one process: every second one at any moment from its start, the
// others a moment after it began to write, or after all was ready to be exchanged.
// Behind every eighth it presses once more.
func (c *killCount) kill(t *testing.T, units []string, whole []map[string]string, parent string, kill int, chance *rand.Rand) {
	out, bench := filepath.Join(parent, "book"), filepath.Join(parent, ".noonbook-press")
	order := slices.Clone(units)
	if killSums(t, parent)["book"] == whole[0]["book"] {
		slices.Reverse(order)
	}
	wait, within := "", 300*time.Millisecond
	switch kill % 4 {
	case 1:
		wait, within = bench, 20*time.Millisecond
	case 3:
		wait, within = filepath.Join(bench, "made"), time.Millisecond
	}
	after := time.Duration(chance.Int64N(int64(within)))
	if err := killPressing(order, out, func() {
		for end := time.Now().Add(time.Minute); wait != "" && time.Now().Before(end); time.Sleep(50 * time.Microsecond) {
			if _, err := os.Lstat(wait); err == nil {
				break
			}
		}
		time.Sleep(after)
	}); err != nil {
		t.Error(err)
		return
	}
	c.kills++
	if _, err := os.Lstat(bench); err == nil {
		c.within++
	}
	now := killSums(t, parent)
	of := map[string]bool{}
	for name := range whole[0] {
		switch {
		case now[name] == whole[0][name]:
			of["first"] = true
		case now[name] == whole[1][name]:
			of["second"] = true
		default:
			c.broken++
			t.Errorf("kill %d: %s is broken", kill, name)
		}
	}
	if len(of) > 1 {
		c.mixed++
	}
	if kill%8 < 7 {
		return // the next process is the next press
	}
	next := chance.IntN(2)
	if code, _, errs := noonbook(t, pressAll(units[next], out)...); code != done {
		t.Errorf("behind kill %d: exit %d, %s", kill, code, errs)
	}
	if now := killSums(t, parent); !maps.Equal(now, whole[next]) {
		t.Errorf("behind kill %d and a press the parts are of two units", kill)
	}
	if entries, err := os.ReadDir(parent); err != nil || len(entries) != len(whole[next]) {
		t.Errorf("behind kill %d and a press there are %v, %v", kill, entries, err)
	}
}

// killPressing starts a process that presses the units in turn, and kills it after
// a while.
func killPressing(units []string, out string, while func()) error {
	command := exec.Command(os.Args[0], units[0], units[1], out)
	command.Env = append(os.Environ(), pressOn+"=1")
	var errs strings.Builder
	command.Stderr = &errs
	if err := command.Start(); err != nil {
		return err
	}
	while()
	if err := command.Process.Kill(); err != nil { // SIGKILL where there are signals
		return fmt.Errorf("it was over before it was killed: %w; %s", err, &errs)
	}
	var ended *exec.ExitError
	if err := command.Wait(); !errors.As(err, &ended) || ended.Exited() && runtime.GOOS != "windows" {
		return fmt.Errorf("it ended before it was killed: %v; %s", err, &errs)
	}
	return nil
}

// A press that is asked to end, as by a computer that shuts down, clears what it has
// begun, or finishes.
func TestAskedToEnd(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("Windows has no signal that asks a process to end")
	}
	unit, parent := folder(t, map[string]string{"1-a.md": lesson}), killFolder(t)
	interrupted := 0
	for _, signal := range []os.Signal{os.Interrupt, syscall.SIGTERM, os.Interrupt, syscall.SIGTERM, syscall.SIGTERM, syscall.SIGTERM} {
		command := exec.Command(os.Args[0], pressAll(unit, filepath.Join(parent, "book"))...)
		command.Env = append(os.Environ(), beMain+"=1")
		var errs strings.Builder
		command.Stderr = &errs
		if err := command.Start(); err != nil {
			t.Fatal(err)
		}
		for end := time.Now().Add(time.Minute); time.Now().Before(end); time.Sleep(50 * time.Microsecond) {
			if _, err := os.Lstat(filepath.Join(parent, ".noonbook-press")); err == nil {
				break
			}
		}
		if err := command.Process.Signal(signal); err != nil && !errors.Is(err, os.ErrProcessDone) {
			t.Fatal(err)
		}
		err := command.Wait()
		switch code := command.ProcessState.ExitCode(); {
		case code == machineFault && strings.Contains(errs.String(), "pressing was interrupted"):
			interrupted++
		case code != done:
			t.Errorf("%v: it ended with %v: %s", signal, err, &errs)
		}
		if _, err := os.Lstat(filepath.Join(parent, ".noonbook-press")); err == nil {
			t.Errorf("%v: what it had begun is left", signal)
		}
	}
	t.Logf("%d of 6 were interrupted", interrupted)
}

// killFolder lies in memory where Linux has such a place: two hundred presses sync
// thousands of files.
func killFolder(t *testing.T) string {
	t.Helper()
	if folder, err := os.MkdirTemp("/dev/shm", "noonbook-test-"); err == nil {
		t.Cleanup(func() { os.RemoveAll(folder) })
		return folder
	}
	return t.TempDir()
}

// killSums returns the checksum of each thing that a press of everything writes, ""
// where it is not there.
func killSums(t *testing.T, parent string) map[string]string {
	t.Helper()
	sums := map[string]string{}
	for _, name := range []string{"book", "book-staff", "book.html", "book-staff.html", "book.zip", "book-staff.zip"} {
		h := sha256.New()
		err := filepath.WalkDir(filepath.Join(parent, name), func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() {
				return err
			}
			text, err := os.ReadFile(path)
			fmt.Fprintf(h, "%s %x\n", d.Name(), sha256.Sum256(text))
			return err
		})
		sums[name] = ""
		if err == nil {
			sums[name] = fmt.Sprintf("%x", h.Sum(nil))
		} else if !errors.Is(err, fs.ErrNotExist) {
			t.Fatal(err)
		}
	}
	return sums
}
