// Package stars holds the placeholders of the stars: the map of an evening and the
// wheel that shows every evening.
package stars

import "noonbook/build/placeholder/entry"

// Entries returns the topic's placeholders, sorted by name.
func Entries() []entry.Entry {
	return []entry.Entry{
		skyMap(),
		skyWheel(),
	}
}
