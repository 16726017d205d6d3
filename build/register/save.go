package register

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// save puts the bytes in the place of a file in one step, so that it is whole at every
// moment, and so that a failure leaves the old one. A file that is a link is written
// where the link leads, if that is within the folder.
func save(folder, name string, src []byte) error {
	target, err := within(folder, name)
	if err != nil {
		return err
	}
	mode := os.FileMode(0o666)
	if info, err := os.Stat(target); err == nil {
		mode = info.Mode().Perm()
	}
	fresh, err := os.CreateTemp(filepath.Dir(target), ".noonbook-*") // a name that the desk does not look at
	if err != nil {
		return fmt.Errorf("writing %s: %w", name, err)
	}
	err = errors.Join(write(fresh, src), fresh.Close())
	if err == nil {
		err = adopt(fresh.Name(), mode, target)
	}
	if err == nil {
		err = os.Rename(fresh.Name(), target)
	}
	if err != nil {
		return errors.Join(fmt.Errorf("writing %s: %w", name, err), os.Remove(fresh.Name()))
	}
	return nil
}

func write(f *os.File, src []byte) error {
	if _, err := f.Write(src); err != nil {
		return err
	}
	return f.Sync()
}

// adopt gives a new file the permissions of the one whose place it takes, or those
// that any new file gets.
func adopt(fresh string, mode os.FileMode, target string) error {
	if _, err := os.Stat(target); errors.Is(err, fs.ErrNotExist) {
		probe, err := os.OpenFile(fresh+"~", os.O_CREATE|os.O_EXCL|os.O_WRONLY, mode) // what the umask leaves
		if err != nil {
			return err
		}
		info, err := probe.Stat()
		if err := errors.Join(err, probe.Close(), os.Remove(probe.Name())); err != nil {
			return err
		}
		mode = info.Mode().Perm()
	}
	return os.Chmod(fresh, mode)
}

// within returns where a file of the folder really is.
func within(folder, name string) (string, error) {
	if !fs.ValidPath(name) {
		return "", fmt.Errorf("%s leads outside the content folder", name)
	}
	root, err := filepath.EvalSymlinks(folder)
	if err != nil {
		return "", fmt.Errorf("finding %s: %w", folder, err)
	}
	target := filepath.Join(root, filepath.FromSlash(name))
	real, err := filepath.EvalSymlinks(target)
	if errors.Is(err, fs.ErrNotExist) {
		if _, err := os.Lstat(target); err == nil {
			return "", fmt.Errorf("%s is a link that leads nowhere", name)
		}
		parent, err := filepath.EvalSymlinks(filepath.Dir(target))
		if err != nil {
			return "", fmt.Errorf("finding %s: %w", name, err)
		}
		real = filepath.Join(parent, filepath.Base(target))
	} else if err != nil {
		return "", fmt.Errorf("finding %s: %w", name, err)
	}
	rel, err := filepath.Rel(root, real)
	if err != nil || rel == ".." || strings.HasPrefix(rel, ".."+string(filepath.Separator)) {
		return "", fmt.Errorf("%s leads outside the content folder", name)
	}
	return real, nil
}
