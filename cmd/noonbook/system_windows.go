package main

import (
	"os/exec"
	"syscall"
	"unsafe"
)

// opener opens what it is given with the program that the system has for it.
func opener(what string) *exec.Cmd {
	return exec.Command("rundll32.exe", "url.dll,FileProtocolHandler", what)
}

// ownWindow reports whether the console was made for this program alone, as by a
// double click, and closes with it: then no other process is attached to it.
// Microsoft, Windows console documentation, GetConsoleProcessList.
func ownWindow() bool {
	var ids [2]uint32
	list := syscall.NewLazyDLL("kernel32.dll").NewProc("GetConsoleProcessList")
	if list.Find() != nil {
		return false
	}
	n, _, _ := list.Call(uintptr(unsafe.Pointer(&ids[0])), uintptr(len(ids)))
	return n == 1
}
