//go:build !linux && !darwin && !windows

package main

import "os"

// screenColumns is not known here; COLUMNS alone counts.
func screenColumns(*os.File) int { return 0 }
