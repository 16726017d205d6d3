package output

import (
	"os"
	"path/filepath"
	"syscall"
)

// tryLock opens a hidden file in the folder that nobody else may open meanwhile,
// and removes it afterwards. A press that was killed leaves it empty, free to open
// again. It returns errHeld where another has it.
func tryLock(folder string) (release func(), err error) {
	name := filepath.Join(folder, ".noonbook-lock")
	wide, err := syscall.UTF16PtrFromString(name)
	if err != nil {
		return nil, err
	}
	const sharingViolation = syscall.Errno(32) // ERROR_SHARING_VIOLATION, Microsoft, System Error Codes
	h, err := syscall.CreateFile(wide, syscall.GENERIC_READ, 0, nil, syscall.OPEN_ALWAYS, syscall.FILE_ATTRIBUTE_HIDDEN, 0)
	if err == sharingViolation || err == syscall.ERROR_ACCESS_DENIED {
		return nil, errHeld
	}
	if err != nil {
		return nil, err
	}
	return func() {
		syscall.CloseHandle(h)
		if info, err := os.Lstat(name); err == nil && info.Mode().IsRegular() && info.Size() == 0 {
			os.Remove(name) // fails where the next one has it open already
		}
	}, nil
}
