package main

import (
	"os"
	"syscall"
	"unsafe"
)

// screenColumns asks the console how wide its window is. Microsoft, Windows console
// documentation, GetConsoleScreenBufferInfo and CONSOLE_SCREEN_BUFFER_INFO.
func screenColumns(file *os.File) int {
	var info struct {
		size, cursor             [2]int16
		attributes               uint16
		left, top, right, bottom int16
		largest                  [2]int16
	}
	ask := syscall.NewLazyDLL("kernel32.dll").NewProc("GetConsoleScreenBufferInfo")
	if ask.Find() != nil {
		return 0
	}
	if ok, _, _ := ask.Call(file.Fd(), uintptr(unsafe.Pointer(&info))); ok == 0 {
		return 0
	}
	return int(info.right) - int(info.left) + 1
}
