package output

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// mend finishes or drops what a press that was cut off left. A bench that can not
// be proved noonbook's is an error and stays as it is.
func (b *bench) mend() error {
	left, state, err := b.leftover()
	if left == nil || err != nil {
		return err
	}
	switch state {
	case making:
		err = left.drop()
	case made:
		if err = left.finish(); err == nil {
			err = left.clear()
		}
	case undone:
		err = left.clear()
	}
	b.kept = append(b.kept, left.kept...)
	if err != nil {
		return fmt.Errorf("tidying up after a press that was cut off: %w", err)
	}
	return nil
}

// leftover reads the plan of a bench that is there, and looks whether it holds
// nothing besides.
func (b *bench) leftover() (left *bench, state string, err error) {
	info, err := os.Lstat(b.folder())
	if errors.Is(err, fs.ErrNotExist) {
		return nil, "", nil
	}
	if err != nil {
		return nil, "", fmt.Errorf("looking at %s: %w", b.folder(), err)
	}
	if !info.IsDir() {
		return nil, "", fmt.Errorf("%w; noonbook needs the name", foreign(b.folder()))
	}
	left = &bench{disk: b.disk, parent: b.parent, begun: true}
	known := map[string]bool{making: true, made: true, undone: true}
	for _, name := range []string{undone, made, making} {
		text, err := readRegular(b.plan(name))
		if errors.Is(err, fs.ErrNotExist) {
			continue
		}
		if err != nil {
			return nil, "", fmt.Errorf("reading a plan: %w", err)
		}
		parts, whole := readPlan(text)
		if !whole && !torn(text) {
			return nil, "", foreign(b.plan(name))
		}
		if whole && state == "" {
			left.parts, state = parts, name
		}
	}
	if state == "" {
		state = making // cut off before its plan was whole, so that nothing else may be here
	}
	for _, p := range left.parts {
		known["new-"+p.name], known["old-"+p.name] = true, state != making
	}
	entries, err := os.ReadDir(b.folder())
	if err != nil {
		return nil, "", fmt.Errorf("looking into %s: %w", b.folder(), err)
	}
	for _, e := range entries {
		if !known[e.Name()] {
			return nil, "", fmt.Errorf("%s %w, such as %s; noonbook needs the name, so move it elsewhere", b.folder(), ErrNotOurs, e.Name())
		}
	}
	return left, state, nil
}

// finish puts the rest of a whole set in place, except where somebody's files
// have come since.
func (b *bench) finish() error {
	for _, p := range b.parts {
		switch {
		case p.is(b.home(p)): // was in place already
		case there(b.aside(p)) && there(b.home(p)): // somebody made it anew
		case p.is(b.fresh(p)) && b.mayReplace(p) == nil:
			if err := b.swap(p); err != nil {
				return err
			}
		case there(b.aside(p)):
			if err := b.move(b.aside(p), b.home(p)); err != nil {
				return fmt.Errorf("bringing back %s: %w", b.home(p), err)
			}
		}
	}
	if err := b.sync(b.parent); err != nil {
		return fmt.Errorf("syncing %s: %w", b.parent, err)
	}
	return nil
}

// is reports whether the path holds the part itself, whole as it was made.
func (p part) is(path string) bool {
	if !p.folder {
		sum, err := sumOfFile(path)
		return err == nil && sum == p.sum
	}
	list, err := readRegular(filepath.Join(path, listName))
	if err != nil || sumOf(list) != p.sum || ours(path) != nil {
		return false
	}
	sums, err := readList(path)
	if err != nil {
		return false
	}
	for name := range sums {
		if !there(filepath.Join(path, name)) {
			return false
		}
	}
	return true
}
