//go:build race

package main

// raced says that the race detector watches, which makes a press ten times as long. Tests
// of what pages say are then left to the run without it.
const raced = true
