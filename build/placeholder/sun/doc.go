// Package sun holds the placeholders of the Sun: a day, its path, a year, the
// seasons and the model that explains them.
package sun

import "noonbook/build/placeholder/entry"

// Entries returns the topic's placeholders, sorted by name.
func Entries() []entry.Entry {
	return []entry.Entry{
		seasonDates(),
		seasonModel(),
		sunDay(),
		sunPath(),
		sunYear(),
	}
}
