// Package strip holds the placeholders of the paper strip: where each body lies on
// it, the story in time along it, its balls and cards, and the walk on the field.
package strip

import "noonbook/build/placeholder/entry"

// Entries returns the topic's placeholders, sorted by name.
func Entries() []entry.Entry {
	return []entry.Entry{
		stripBalls(),
		stripCards(),
		stripField(),
		stripLog(),
		stripMoon(),
		stripPicture(),
		stripPlate(),
		stripTable(),
		stripTime(),
	}
}
