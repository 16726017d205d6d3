// Package rocket holds the placeholders of the paper rocket: its template, its
// flight, the clear zone on the field, and what the class's flights say.
package rocket

import "noonbook/build/placeholder/entry"

// Entries returns the topic's placeholders, sorted by name.
func Entries() []entry.Entry {
	return []entry.Entry{
		rocketClinometer(),
		rocketHeight(),
		rocketList(),
		rocketLog(),
		rocketParts(),
		rocketPath(),
		rocketWrap(),
		rocketZone(),
	}
}
