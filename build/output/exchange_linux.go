package output

import (
	"runtime"
	"syscall"
	"unsafe"
)

// renameat2 by architecture: Linux kernel, arch/*/…/syscall*.tbl. The syscall
// package was frozen before the call came (Linux 3.15).
var renameat2 = map[string]uintptr{
	"386": 353, "amd64": 316, "arm": 382, "arm64": 276, "loong64": 276, "ppc64le": 357, "riscv64": 276, "s390x": 347,
}

// exchange lets two folders change places in one step, flag RENAME_EXCHANGE of
// renameat2(2). Some file systems do not support it and answer with an error.
func exchange(a, b string) error {
	const atCurrentFolder, renameExchange = ^uintptr(99), 2 // AT_FDCWD is −100
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
	_, _, failed := syscall.Syscall6(call, atCurrentFolder, uintptr(unsafe.Pointer(from)), atCurrentFolder, uintptr(unsafe.Pointer(to)), renameExchange, 0)
	if failed != 0 {
		return failed
	}
	return nil
}
