package output

import (
	"os"
	"runtime"
	"syscall"
	"unsafe"
)

// renameat2 by architecture: Linux kernel, arch/*/…/syscall*.tbl. The syscall
// package was frozen before the call came (Linux 3.15).
var renameat2 = map[string]uintptr{
	"386": 353, "amd64": 316, "arm": 382, "arm64": 276, "loong64": 276, "ppc64le": 357, "riscv64": 276, "s390x": 347,
}

// Flags of renameat2(2). Some file systems know neither and answer with an error.
const (
	renameNoReplace uintptr = 1
	renameExchange  uintptr = 2
)

// exchange lets two folders or files change places in one step.
func exchange(a, b string) error { return rename(a, b, renameExchange) }

// moveToFree renames in one step that fails where the new name is taken.
func moveToFree(from, to string) error { return rename(from, to, renameNoReplace) }

func rename(a, b string, flag uintptr) error {
	const atCurrentFolder = ^uintptr(99) // AT_FDCWD is −100
	call, ok := renameat2[runtime.GOARCH]
	if !ok {
		return syscall.ENOSYS
	}
	from, err := syscall.BytePtrFromString(a)
	if err != nil {
		return err
	}
	to, err := syscall.BytePtrFromString(b)
	if err != nil {
		return err
	}
	_, _, failed := syscall.Syscall6(call, atCurrentFolder, uintptr(unsafe.Pointer(from)), atCurrentFolder, uintptr(unsafe.Pointer(to)), flag, 0)
	if failed != 0 {
		return &os.LinkError{Op: "rename", Old: a, New: b, Err: failed}
	}
	return nil
}
