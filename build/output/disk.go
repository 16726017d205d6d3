package output

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"runtime"
	"syscall"
)

// A disk is all that this package changes on a file system, one function for each
// kind of step, so that tests can let any step fail. None of them follows a link
// or replaces a file that is there.
type disk struct {
	mkdir    func(name string, mode fs.FileMode) error
	write    func(name string, content []byte) error // a new file, synced
	sync     func(folder string) error               // what stands in it, after it changed
	move     func(from, to string) error
	exchange func(a, b string) error
	remove   func(name string) error // a file or an empty folder
}

// realDisk is the one that is not a test's.
func realDisk() disk {
	return disk{mkdir: os.Mkdir, write: writeNew, sync: syncFolder, move: move, exchange: exchange, remove: os.Remove}
}

func writeNew(name string, content []byte) error {
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666) // less the umask
	if err != nil {
		return err
	}
	_, err = f.Write(content)
	return errors.Join(err, f.Sync(), f.Close())
}

// syncFolder makes names last through a power cut, where the system can: Windows
// has no such call for folders, and some file systems refuse it.
func syncFolder(folder string) error {
	if runtime.GOOS == "windows" {
		return nil
	}
	f, err := os.Open(folder)
	if err != nil {
		return err
	}
	err = f.Sync()
	if errors.Is(err, syscall.EINVAL) || errors.Is(err, errors.ErrUnsupported) {
		err = nil
	}
	return errors.Join(err, f.Close())
}

// move renames to a name that is free. Where the system cannot refuse a name that
// is taken, there is an instant between the look and the rename.
func move(from, to string) error {
	if err := moveToFree(from, to); err == nil || errors.Is(err, fs.ErrExist) {
		return err
	}
	if there(to) {
		return fmt.Errorf("renaming %s: %s is there: %w", from, to, fs.ErrExist)
	}
	return os.Rename(from, to)
}

// there reports whether the name is taken, be it by a link that leads nowhere. A
// name that cannot be looked at counts as taken.
func there(name string) bool {
	_, err := os.Lstat(name)
	return !errors.Is(err, fs.ErrNotExist)
}
