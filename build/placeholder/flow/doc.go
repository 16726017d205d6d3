// Package flow holds the placeholders of clocks that run out: the water clock and the
// sand glass.
package flow

import "noonbook/build/placeholder/entry"

// Entries returns the topic's placeholders, sorted by name.
func Entries() []entry.Entry {
	return []entry.Entry{
		sandGlass(),
		waterClock(),
	}
}
