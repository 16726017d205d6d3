package output

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"noonbook/build/file"
)

// An Edition is one handbook to write.
type Edition struct {
	Folder string // to write to, made where it is not there
	Files  []file.File
	Single bool // also bind them into FOLDER.html
	Zip    bool // also pack them into FOLDER.zip

	Loose bool   // write what is beside the folder alone, and no folder
	Bench string // a folder for the bench and the lock; "" for the one that Folder is to stand in
}

// A Kept is a file that somebody saved while a handbook was put in place.
type Kept struct {
	Name string // as its owner knows it
	Now  string // where it is
}

// Write makes each edition's folder hold its files and nothing else, and writes
// what was asked for beside it. An error before the editions are in place leaves
// all of them as they were; after an error behind that point, which says so, the
// next Write tidies up. Files of others that it came upon are kept in any case.
func Write(ctx context.Context, editions ...Edition) ([]Kept, error) {
	return writeSet(ctx, realDisk(), patience, editions)
}

func writeSet(ctx context.Context, d disk, wait time.Duration, editions []Edition) ([]Kept, error) {
	benches, err := benchesFor(d, editions)
	if err != nil {
		return nil, err
	}
	return writeAll(ctx, wait, benches)
}

func writeAll(ctx context.Context, wait time.Duration, benches []*bench) (kept []Kept, err error) {
	for _, b := range benches {
		release, err := lock(ctx, b.at, wait)
		if err != nil {
			return nil, err
		}
		defer release()
	}
	defer func() {
		for _, b := range benches {
			kept = append(kept, b.kept...)
		}
	}()
	if err := each(benches, (*bench).mend); err != nil {
		return nil, err
	}
	if err := each(benches, (*bench).check); err != nil {
		return nil, err
	}
	if err := stage(ctx, benches); err != nil {
		return nil, errors.Join(err, all(benches, (*bench).drop))
	}
	if err := each(benches, (*bench).place); err != nil {
		slices.Reverse(benches)
		return nil, errors.Join(err, all(benches, (*bench).undo))
	}
	if err := all(benches, (*bench).clear); err != nil {
		return nil, fmt.Errorf("the new handbook is in place, but the old one is not all removed; the next press does that: %w", err)
	}
	return nil, nil
}

// stage makes everything ready, and looks a second time, since that may take a
// while.
func stage(ctx context.Context, benches []*bench) error {
	for _, b := range benches {
		if err := b.fill(ctx); err != nil {
			return err
		}
	}
	if err := each(benches, (*bench).check); err != nil {
		return err
	}
	if err := interrupted(ctx); err != nil {
		return err
	}
	return each(benches, (*bench).ready)
}

func interrupted(ctx context.Context) error {
	if err := ctx.Err(); err != nil {
		return fmt.Errorf("pressing was interrupted: %w", err)
	}
	return nil
}

// each does a step on every bench, up to the first error.
func each(benches []*bench, step func(*bench) error) error {
	for _, b := range benches {
		if err := step(b); err != nil {
			return err
		}
	}
	return nil
}

// all does a step on every bench, whatever fails.
func all(benches []*bench, step func(*bench) error) error {
	var errs []error
	for _, b := range benches {
		errs = append(errs, step(b))
	}
	return errors.Join(errs...)
}

// benchesFor returns the parts of the editions by the folder in which they are to
// stand, sorted by it so that two presses lock in one order.
func benchesFor(d disk, editions []Edition) ([]*bench, error) {
	byParent := map[string]*bench{}
	add := func(parent, at string, p part) {
		if byParent[parent+"\n"+at] == nil {
			byParent[parent+"\n"+at] = &bench{disk: d, parent: parent, at: at}
		}
		b := byParent[parent+"\n"+at]
		b.parts = append(b.parts, p)
	}
	for _, e := range editions {
		if err := soundNames(e.Files); err != nil {
			return nil, err
		}
		named, real, err := resolve(e.Folder)
		if err != nil {
			return nil, err
		}
		parent, base := filepath.Dir(named), filepath.Base(named)
		at, err := e.at(parent)
		if err != nil {
			return nil, err
		}
		if to := filepath.Dir(real); !e.Loose && to == parent {
			add(to, at, part{name: filepath.Base(real), folder: true, files: e.Files})
		} else if !e.Loose { // where a link leads
			add(to, to, part{name: filepath.Base(real), folder: true, files: e.Files})
		}
		if e.Single {
			add(parent, at, part{name: base + ".html", content: func() ([]byte, error) {
				page, err := Single(e.Files)
				if err != nil {
					return nil, err
				}
				return sealHTML(page), nil
			}})
		}
		if e.Zip {
			add(parent, at, part{name: base + ".zip", content: func() ([]byte, error) {
				packed, err := Zip(base, e.Files)
				if err != nil {
					return nil, err
				}
				return sealZip(packed), nil
			}})
		}
	}
	var benches []*bench
	for _, b := range byParent {
		if err := b.distinct(); err != nil {
			return nil, err
		}
		benches = append(benches, b)
	}
	slices.SortFunc(benches, func(a, b *bench) int { return strings.Compare(a.at, b.at) })
	return benches, nil
}

// at is where the bench of an edition is that is to stand in the folder.
func (e Edition) at(parent string) (string, error) {
	if e.Bench == "" {
		return parent, nil
	}
	at, err := filepath.Abs(e.Bench)
	if err != nil {
		return "", fmt.Errorf("finding %s: %w", e.Bench, err)
	}
	return at, nil
}

// soundNames is the last guard of names: source tells them to the author with
// their place.
func soundNames(files []file.File) error {
	names := map[string]string{}
	for _, f := range files {
		if err := file.Sound(f.Name); err != nil {
			return err
		}
		folded := file.Folded(f.Name)
		if other, taken := names[folded]; taken {
			return fmt.Errorf("the files %s and %s of the handbook are one on Windows and macOS", other, f.Name)
		}
		names[folded] = f.Name
	}
	return nil
}

// resolve makes the folder's parent where it is not there. It returns the folder as
// it is named, in the parent's real place, and where a link of that name leads.
func resolve(folder string) (named, real string, err error) {
	full, err := filepath.Abs(folder)
	if err != nil {
		return "", "", fmt.Errorf("finding %s: %w", folder, err)
	}
	if err := os.MkdirAll(filepath.Dir(full), 0o777); err != nil {
		return "", "", fmt.Errorf("making %s: %w", filepath.Dir(full), err)
	}
	parent, err := filepath.EvalSymlinks(filepath.Dir(full))
	if err != nil {
		return "", "", fmt.Errorf("finding %s: %w", folder, err)
	}
	named = filepath.Join(parent, filepath.Base(full))
	real, err = filepath.EvalSymlinks(full)
	if errors.Is(err, fs.ErrNotExist) {
		return named, named, nil
	}
	if err != nil {
		return "", "", fmt.Errorf("finding %s: %w", folder, err)
	}
	return named, real, nil
}
