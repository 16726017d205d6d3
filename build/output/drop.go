package output

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// drop removes a bench of which nothing was put in place. Files that the plan and
// the lists name are noonbook's even if they were cut off within. Anything else
// stays, and is an error.
func (b *bench) drop() error {
	if !b.begun {
		return nil
	}
	// Without this mark the set is not whole, whatever goes wrong below.
	if err := b.removed(b.plan(made)); err != nil {
		return err
	}
	for _, p := range b.parts {
		if err := b.dropPart(p); err != nil {
			return err
		}
	}
	return b.dismantle()
}

func (b *bench) dropPart(p part) error {
	path := b.fresh(p)
	info, err := os.Lstat(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil || info.IsDir() != p.folder {
		return errors.Join(err, foreign(path))
	}
	if !p.folder {
		return b.removed(path)
	}
	sums, err := readList(path)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	entries, err := os.ReadDir(path)
	if err != nil {
		return fmt.Errorf("looking into %s: %w", path, err)
	}
	for _, e := range entries {
		name := filepath.Join(path, e.Name())
		if _, known := sums[e.Name()]; !known && e.Name() != listName || !e.Type().IsRegular() {
			return foreign(name)
		}
		if e.Name() == listName {
			continue // last, since it tells what the others are
		}
		if err := b.removed(name); err != nil {
			return err
		}
	}
	return errors.Join(b.removed(filepath.Join(path, listName)), b.removed(path))
}

// dismantle takes the empty bench away.
func (b *bench) dismantle() error {
	for _, state := range []string{making, made, over} {
		if err := b.removed(b.plan(state)); err != nil {
			return err
		}
	}
	return b.removed(b.folder())
}

// removed removes a file or an empty folder that may be gone already.
func (b *bench) removed(name string) error {
	if err := b.remove(name); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("removing what noonbook left: %w", err)
	}
	return nil
}
