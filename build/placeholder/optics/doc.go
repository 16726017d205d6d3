// Package optics holds the placeholders of lenses and light: those of the box,
// pairs of them, their rays, the tubes, and what the class measured.
package optics

import "noonbook/build/placeholder/entry"

// Entries returns the topic's placeholders, sorted by name.
func Entries() []entry.Entry {
	return []entry.Entry{
		lensLog(),
		lensPairs(),
		lensPower(),
		lensRays(),
		tubeParts(),
		tubePlan(),
	}
}
