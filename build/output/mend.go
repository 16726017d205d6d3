package output

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// mend finishes or drops what a press that was cut off left. A bench that cannot
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
		err = left.finish()
	case over:
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
	left = &bench{disk: b.disk, parent: b.parent, at: b.at, begun: true}
	known := map[string]bool{making: true, made: true, over: true}
	for _, name := range []string{over, made, making} {
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

// finish puts the rest of a whole set in place. Where somebody's files have come
// in its way since, it puts back what was in place.
func (b *bench) finish() error {
	var rest []part
	for _, p := range b.parts {
		if p.stands(b.home(p)) || !p.is(b.fresh(p)) {
			continue // it was in place already, whatever became of it since
		}
		rest = append(rest, p)
		if b.mayReplace(p) != nil || there(b.aside(p)) && there(b.home(p)) {
			b.placed = len(b.parts)
			return b.undo()
		}
	}
	for _, p := range rest {
		if err := b.swap(p); err != nil {
			return err
		}
	}
	if err := b.sync(b.parent); err != nil {
		return fmt.Errorf("syncing %s: %w", b.parent, err)
	}
	return b.clear()
}

// stands reports whether the path holds the part, be it that somebody changed a
// file in it since.
func (p part) stands(path string) bool {
	if p.folder {
		path = filepath.Join(path, listName)
	}
	sum, err := sumOfFile(path)
	return err == nil && sum == p.sum
}

// is reports whether the path holds the part as it was made, whole and unchanged.
func (p part) is(path string) bool {
	if !p.folder || !p.stands(path) {
		return p.stands(path)
	}
	if ours(path) != nil {
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
