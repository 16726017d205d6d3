//go:build darwin || dragonfly || freebsd || linux || netbsd || openbsd

package output

import (
	"errors"
	"os"
	"syscall"
)

// tryLock locks the folder itself, so that no file is left behind. It returns
// errHeld where another has it. A file system without such locks, as some on a
// network, lets everyone through.
func tryLock(folder string) (release func(), err error) {
	f, err := os.Open(folder)
	if err != nil {
		return nil, err
	}
	err = syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB)
	if errors.Is(err, syscall.EWOULDBLOCK) {
		return nil, errors.Join(errHeld, f.Close())
	}
	return func() { f.Close() }, nil
}
