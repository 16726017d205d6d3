package output

import (
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// clear takes away what is left on the bench once the parts are in place or were
// put back. What is not noonbook's is brought home.
func (b *bench) clear() error {
	// From here on the parts on the bench are no longer what the plan says, so
	// nobody may put them in place.
	if there(b.plan(making)) {
		if err := b.move(b.plan(making), b.plan(over)); err != nil {
			return fmt.Errorf("closing the plan: %w", err)
		}
	}
	for _, p := range b.parts {
		if err := errors.Join(b.clean(b.fresh(p), p), b.clean(b.aside(p), p)); err != nil {
			return err
		}
	}
	return b.dismantle()
}

func (b *bench) clean(path string, p part) error {
	info, err := os.Lstat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return fmt.Errorf("looking at %s: %w", path, err)
	case info.IsDir():
		return b.cleanFolder(path, b.home(p))
	case info.Mode().IsRegular() && ownFile(path) == nil:
		return b.removed(path)
	}
	return b.keep(path, b.home(p))
}

// cleanFolder removes an old handbook. A program that works in the folder may save
// into it even now, so it looks again until nothing came.
func (b *bench) cleanFolder(folder, home string) error {
	const looks = 20
	for look := 1; ; look++ {
		if err := b.emptyFolder(folder, home); err != nil {
			return err
		}
		err := b.remove(folder)
		if err == nil {
			return nil
		}
		if !errors.Is(err, fs.ErrExist) || look == looks { // ErrExist says that it is not empty
			return fmt.Errorf("removing the old handbook: %w", err)
		}
	}
}

// goneName is what a file is called for the moment between its last check and its
// end, so that a program that saves by name does not save into it.
const goneName = ".noonbook-gone"

func (b *bench) emptyFolder(folder, home string) error {
	sums, err := readList(folder)
	listed := err == nil // else it is all somebody's
	if err != nil && !errors.Is(err, fs.ErrNotExist) && !errors.Is(err, errNotPlain) {
		return err
	}
	if err := b.emptyGone(folder, home, sums); err != nil {
		return err
	}
	entries, err := os.ReadDir(folder)
	if err != nil {
		return fmt.Errorf("looking into %s: %w", folder, err)
	}
	for _, e := range entries {
		if e.Name() == listName && listed {
			continue // last, since it tells what the others are
		}
		path := filepath.Join(folder, e.Name())
		if isNote(e) {
			if err := b.carry(path, filepath.Join(home, e.Name())); err != nil {
				return err
			}
			continue
		}
		if err := b.dispose(path, sums[e.Name()], filepath.Join(home, e.Name())); err != nil {
			return err
		}
	}
	if listed {
		return b.removed(filepath.Join(folder, listName))
	}
	return nil
}

// emptyGone ends what a press was cut off from ending. Which file it was, its
// checksum tells.
func (b *bench) emptyGone(folder, home string, sums map[string]string) error {
	gone := filepath.Join(folder, goneName)
	sum, err := sumOfFile(gone)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return fmt.Errorf("checking %s: %w", gone, err)
	}
	if !slices.Contains(slices.Collect(maps.Values(sums)), sum) {
		sum = ""
	}
	return b.dispose(gone, sum, filepath.Join(home, "noonbook-gone"))
}

// dispose removes a file with the checksum, and keeps any other.
func (b *bench) dispose(path, sum, home string) error {
	gone := filepath.Join(filepath.Dir(path), goneName)
	for {
		got, err := sumOfFile(path)
		if errors.Is(err, fs.ErrNotExist) {
			return nil
		}
		if err != nil {
			return fmt.Errorf("checking %s: %w", path, err)
		}
		if sum == "" || got != sum {
			return b.keep(path, home)
		}
		if path == gone {
			return b.removed(path)
		}
		if err := b.move(path, gone); err != nil {
			return fmt.Errorf("removing the old handbook: %w", err)
		}
		path = gone // and look again
	}
}

// carry takes a note of a file manager along into the new handbook, unless there is a
// newer one.
func (b *bench) carry(path, home string) error {
	err := b.move(path, home)
	if errors.Is(err, fs.ErrExist) || errors.Is(err, fs.ErrNotExist) {
		return b.removed(path)
	}
	return err
}

// keep brings somebody's file from the bench to where its owner looks for it, or
// beside what is there by now.
func (b *bench) keep(path, home string) error {
	if folder := filepath.Dir(home); !there(folder) { // it is no longer there, or was new
		if err := b.mkdir(folder, 0o777); err != nil {
			return fmt.Errorf("somebody's file is in %s and could not be brought back: %w", path, err)
		}
	}
	ending := filepath.Ext(home)
	stem := strings.TrimSuffix(home, ending)
	for try := range 1000 {
		name := home
		switch {
		case try == 1:
			name = stem + "-kept" + ending
		case try > 1:
			name = fmt.Sprintf("%s-kept-%d%s", stem, try, ending)
		}
		err := b.move(path, name)
		if err == nil {
			b.kept = append(b.kept, Kept{home, name})
			return nil
		}
		if !errors.Is(err, fs.ErrExist) {
			return fmt.Errorf("somebody's file is in %s and could not be brought back: %w", path, err)
		}
	}
	return fmt.Errorf("somebody's file is in %s; there is no name left for it beside %s", path, home)
}
