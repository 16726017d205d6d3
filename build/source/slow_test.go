//go:build !race

package source_test

// slow is how much more time a test gives.
const slow = 1
