//go:build linux || darwin

package main

import (
	"fmt"
	"syscall"
)

// mostMemory is what a test or a compiler may reserve, in bytes. The program of a
// test reserves one or two gigabytes before it does anything.
const mostMemory = 6 << 30

// boundMemory bounds this program and what it starts: a fault that makes a loop
// fill the memory is to end its test, and not the machine's other work.
func boundMemory() error {
	var now syscall.Rlimit
	if err := syscall.Getrlimit(syscall.RLIMIT_AS, &now); err != nil {
		return fmt.Errorf("asking for the bound of the memory: %w", err)
	}
	now.Cur = min(now.Max, mostMemory)
	if err := syscall.Setrlimit(syscall.RLIMIT_AS, &now); err != nil {
		return fmt.Errorf("bounding the memory: %w", err)
	}
	return nil
}
