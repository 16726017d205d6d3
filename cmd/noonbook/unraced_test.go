package main

import "testing"

// unraced leaves a test of what pages say to the run without the race detector, which
// makes a press ten times as long. What runs side by side is tested under both.
func unraced(t *testing.T) {
	t.Helper()
	if raced {
		t.Skip("go test without -race has it")
	}
}
