//go:build linux || darwin

package main

import (
	"os"
	"syscall"
	"unsafe"
)

// screenColumns asks the terminal how wide it is: TIOCGWINSZ, whose answer is the
// struct winsize of POSIX.1-2024, <termios.h>.
func screenColumns(file *os.File) int {
	var size struct{ rows, columns, _, _ uint16 }
	_, _, failed := syscall.Syscall(syscall.SYS_IOCTL, file.Fd(), syscall.TIOCGWINSZ, uintptr(unsafe.Pointer(&size)))
	if failed != 0 {
		return 0
	}
	return int(size.columns)
}
