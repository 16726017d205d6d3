package output

import (
	"errors"
	"fmt"
)

// place lets every part change places with what noonbook wrote before.
func (b *bench) place() error {
	for _, p := range b.parts {
		if err := b.swap(p); err != nil {
			return err
		}
		b.placed++
	}
	if err := b.sync(b.parent); err != nil {
		return fmt.Errorf("syncing %s: %w", b.parent, err)
	}
	return nil
}

// swap puts one part in place. The old one is then on the bench, under the name of
// the new one or aside. An error leaves both where they were.
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
		err = fmt.Errorf("putting %s in place: %w", b.home(p), err)
		if there(b.aside(p)) {
			err = errors.Join(err, b.move(b.aside(p), b.home(p)))
		}
		return err
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
	case there(b.aside(p)):
		return errors.Join(b.move(b.home(p), b.fresh(p)), b.move(b.aside(p), b.home(p)))
	case there(b.fresh(p)):
		return b.exchange(b.fresh(p), b.home(p))
	}
	return b.move(b.home(p), b.fresh(p)) // there was no old one
}
