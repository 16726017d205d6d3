package output

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"sync"

	"noonbook/build/file"
)

// benchName is the hidden folder in which a press makes its parts ready, beside
// where they are to stand, since only within one file system a rename is one step.
const benchName = ".noonbook-press"

// A part is a folder or a file of the set.
type part struct {
	name    string
	folder  bool
	files   []file.File            // of a folder
	content func() ([]byte, error) // of a file, made when it is written, so that one at a time is in memory
	sum     string                 // checksum of the folder's list, or of the file
}

// A bench holds the parts that are to stand in one folder.
type bench struct {
	disk
	parent string
	at     string // where the bench itself is: there too, or in a folder of its own beside others
	parts  []part
	begun  bool
	placed int // so many parts have changed places
	kept   []Kept
}

func (b *bench) folder() string           { return filepath.Join(b.at, benchName) }
func (b *bench) home(p part) string       { return filepath.Join(b.parent, p.name) }
func (b *bench) fresh(p part) string      { return filepath.Join(b.folder(), "new-"+p.name) }
func (b *bench) aside(p part) string      { return filepath.Join(b.folder(), "old-"+p.name) }
func (b *bench) plan(state string) string { return filepath.Join(b.folder(), state) }

// distinct refuses parts that would be one another.
func (b *bench) distinct() error {
	names := map[string]bool{file.Folded(benchName): true}
	for _, p := range b.parts {
		folded := file.Folded(p.name)
		if names[folded] {
			return fmt.Errorf("two things would be written as %s", b.home(p))
		}
		names[folded] = true
	}
	return nil
}

// check returns nil when every part may take its place: nothing is there, or what
// noonbook wrote.
func (b *bench) check() error {
	for _, p := range b.parts {
		if err := b.mayReplace(p); err != nil {
			return err
		}
	}
	return nil
}

func (b *bench) mayReplace(p part) error {
	if p.folder {
		return ours(b.home(p))
	}
	return ownFile(b.home(p))
}

// fill makes the bench and writes every part in it. The plan comes first, and in a
// folder its list, so that whoever finds the bench knows what is noonbook's.
func (b *bench) fill(ctx context.Context) error {
	if err := b.mkdir(b.folder(), 0o700); err != nil {
		return fmt.Errorf("making a folder: %w", err)
	}
	b.begun = true
	if err := b.write(b.plan(making), planOf(b.parts)); err != nil {
		return fmt.Errorf("writing a plan: %w", err)
	}
	for i := range b.parts {
		if err := b.fillPart(ctx, &b.parts[i]); err != nil {
			return err
		}
	}
	return nil
}

func (b *bench) fillPart(ctx context.Context, p *part) error {
	if err := interrupted(ctx); err != nil {
		return err
	}
	if !p.folder {
		content, err := p.content()
		if err != nil {
			return err
		}
		p.sum = sumOf(content)
		if err := b.write(b.fresh(*p), content); err != nil {
			return fmt.Errorf("writing %s: %w", p.name, err)
		}
		return nil
	}
	folder, list := b.fresh(*p), listOf(p.files)
	p.sum = sumOf(list)
	if err := b.mkdir(folder, 0o777); err != nil { // less the umask
		return fmt.Errorf("making a folder: %w", err)
	}
	if err := b.write(filepath.Join(folder, listName), list); err != nil {
		return fmt.Errorf("writing %s: %w", listName, err)
	}
	if err := b.fillFolder(ctx, folder, p.files); err != nil {
		return err
	}
	if err := b.sync(folder); err != nil {
		return fmt.Errorf("syncing %s: %w", p.name, err)
	}
	return nil
}

// fillFolder writes several files at once: a disk that is asked to sync many
// together is a few times quicker than one after the other.
func (b *bench) fillFolder(ctx context.Context, folder string, files []file.File) error {
	const atOnce = 16
	var all sync.WaitGroup
	errs := make([]error, len(files))
	room := make(chan struct{}, atOnce)
	for i, f := range files {
		room <- struct{}{}
		all.Go(func() {
			defer func() { <-room }()
			if errs[i] = interrupted(ctx); errs[i] != nil {
				return
			}
			if err := b.write(filepath.Join(folder, f.Name), f.Bytes); err != nil {
				errs[i] = fmt.Errorf("writing %s: %w", f.Name, err)
			}
		})
	}
	all.Wait()
	for _, err := range errs {
		if err != nil {
			return err // one says enough where a disk is full
		}
	}
	return nil
}

// ready marks the set as whole: from here on it is put in place, by the next press
// if need be.
func (b *bench) ready() error {
	if err := b.sync(b.folder()); err != nil {
		return fmt.Errorf("syncing the new handbook: %w", err)
	}
	if err := b.write(b.plan(made), planOf(b.parts)); err != nil {
		return fmt.Errorf("writing a plan: %w", err)
	}
	if err := errors.Join(b.sync(b.folder()), b.sync(b.at)); err != nil {
		return fmt.Errorf("syncing the new handbook: %w", err)
	}
	return nil
}
