package output

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// replace puts the folder next in the place of folder. Afterwards next holds
// the old handbook or is gone.
func replace(next, folder string) error {
	_, err := os.Stat(folder)
	if errors.Is(err, fs.ErrNotExist) {
		if err := os.Rename(next, folder); err != nil {
			return fmt.Errorf("putting %s in place: %w", folder, err)
		}
		return nil
	}
	if err != nil {
		return fmt.Errorf("looking at %s: %w", folder, err)
	}
	if exchange(next, folder) == nil {
		return nil
	}
	return twoRenames(next, folder)
}

// twoRenames is the way where two folders can not change places in one step.
func twoRenames(next, folder string) error {
	old := before(folder)
	if err := os.Rename(folder, old); err != nil {
		return fmt.Errorf("putting %s aside: %w", folder, err)
	}
	if err := os.Rename(next, folder); err != nil {
		return errors.Join(fmt.Errorf("putting %s in place: %w", folder, err), os.Rename(old, folder))
	}
	if err := os.RemoveAll(old); err != nil {
		return fmt.Errorf("removing the old handbook %s: %w", old, err)
	}
	return nil
}

// before is where twoRenames puts a handbook aside.
func before(folder string) string {
	return filepath.Join(filepath.Dir(folder), "."+filepath.Base(folder)+"-before")
}

// repair undoes a press that was cut off between its two renames.
func repair(folder string) error {
	old := before(folder)
	if _, err := os.Stat(old); err != nil {
		return nil // nothing was put aside
	}
	if _, err := os.Stat(folder); errors.Is(err, fs.ErrNotExist) {
		if err := os.Rename(old, folder); err != nil {
			return fmt.Errorf("bringing back %s: %w", folder, err)
		}
		return nil
	}
	if err := os.RemoveAll(old); err != nil {
		return fmt.Errorf("removing the old handbook %s: %w", old, err)
	}
	return nil
}
