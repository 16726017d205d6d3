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
	return b.clear()
}

// swapBack undoes a swap, as far as it came. What somebody put in the part's place
// stays there.
func (b *bench) swapBack(p part) error {
	home, fresh, aside := there(b.home(p)), there(b.fresh(p)), there(b.aside(p))
	switch {
	case aside && fresh: // it came between the two renames
		err := b.move(b.aside(p), b.home(p))
		if errors.Is(err, fs.ErrExist) {
			return nil // somebody took the name; the old part is cleared
		}
		return err
	case home && !p.stands(b.home(p)), fresh && p.is(b.fresh(p)): // not in place
		return nil
	case fresh && home:
		return b.exchange(b.fresh(p), b.home(p))
	case fresh:
		return b.move(b.fresh(p), b.home(p))
	}
	if home {
		if err := b.move(b.home(p), b.fresh(p)); err != nil {
			return err
		}
	}
	if aside {
		return b.move(b.aside(p), b.home(p))
	}
	return nil
}
