package output

import (
	"errors"
	"fmt"
	"io/fs"
)

// place lets every part change places with what noonbook wrote before.
func (b *bench) place() error {
	for b.placed < len(b.parts) {
		b.placed++ // be it in part: undo sees how far it came
		if err := b.swap(b.parts[b.placed-1]); err != nil {
			return err
		}
	}
	if err := b.sync(b.parent); err != nil {
		return fmt.Errorf("syncing %s: %w", b.parent, err)
	}
	return nil
}

// swap puts one part in place. The old one is then on the bench, under the name of
// the new one or aside.
func (b *bench) swap(p part) error {
	if there(b.home(p)) {
		if b.exchange(b.fresh(p), b.home(p)) == nil {
			return nil
		}
		if err := b.move(b.home(p), b.aside(p)); err != nil {
			return fmt.Errorf("putting %s aside: %w", b.home(p), err)
		}
	}
	if err := b.move(b.fresh(p), b.home(p)); err != nil {
		return fmt.Errorf("putting %s in place: %w", b.home(p), err)
	}
	return nil
}

// undo puts back what place put in place. Where that fails too, the bench stays,
// and the next press puts the new set in place.
func (b *bench) undo() error {
	for ; b.placed > 0; b.placed-- {
		if err := b.swapBack(b.parts[b.placed-1]); err != nil {
			return fmt.Errorf("putting the old handbook back: %w", err)
		}
	}
	if err := b.move(b.plan(making), b.plan(undone)); err != nil {
		return fmt.Errorf("putting the old handbook back: %w", err)
	}
	return errors.Join(b.removed(b.plan(made)), b.clear())
}

func (b *bench) swapBack(p part) error {
	switch {
	case there(b.aside(p)) && there(b.fresh(p)): // it failed between the two renames
		err := b.move(b.aside(p), b.home(p))
		if errors.Is(err, fs.ErrExist) { // somebody took its name meanwhile
			return b.keep(b.aside(p), b.home(p))
		}
		return err
	case there(b.aside(p)):
		if err := b.move(b.home(p), b.fresh(p)); err != nil {
			return err
		}
		return b.move(b.aside(p), b.home(p))
	case p.is(b.fresh(p)): // still new, or the old one was the same
		return nil
	case there(b.fresh(p)):
		return b.exchange(b.fresh(p), b.home(p))
	}
	return b.move(b.home(p), b.fresh(p)) // there was no old one
}
