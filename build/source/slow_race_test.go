//go:build race

package source_test

// slow is how much more time a test gives: the race detector takes it.
const slow = 15
