//go:build race

package main

// raced says whether the race detector watches.
const raced = true
