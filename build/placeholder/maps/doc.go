// Package maps holds the placeholders that show a world as a map: the Moon's face and
// Mars, with their seas and craters and the sites where people and machines landed.
package maps

import "noonbook/build/placeholder/entry"

// Entries returns the topic's placeholders, sorted by name.
func Entries() []entry.Entry {
	return []entry.Entry{
		marsBlank(),
		marsMap(),
		marsMapKey(),
		marsPoster(),
		moonBlank(),
		moonMap(),
		moonMapKey(),
		moonPoster(),
	}
}
