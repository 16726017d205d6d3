//go:build !linux && !darwin

package main

// boundMemory does nothing here: this system has no bound that children inherit.
func boundMemory() error { return nil }
