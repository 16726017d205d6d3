//go:build unix

package main

import (
	"os"
	"runtime"
	"syscall"
	"time"
)

// processor returns the processor time that this process has taken.
func processor() time.Duration {
	var used syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &used); err != nil {
		return 0
	}
	return time.Duration(used.Utime.Nano() + used.Stime.Nano())
}

// peak returns the most memory that a process which ended had, in bytes, 0 where the system
// does not say.
func peak(ended *os.ProcessState) float64 {
	used, ok := ended.SysUsage().(*syscall.Rusage)
	if !ok {
		return 0
	}
	if runtime.GOOS == "darwin" {
		return float64(used.Maxrss)
	}
	return float64(used.Maxrss) * 1024
}
