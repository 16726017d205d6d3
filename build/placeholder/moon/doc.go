// Package moon holds the placeholders of the Moon: a month of it, its round with a
// lamp and a ball, when it is up in lessons, and the class's diary.
package moon

import "noonbook/build/placeholder/entry"

// Entries returns the topic's placeholders, sorted by name.
func Entries() []entry.Entry {
	return []entry.Entry{
		moonDiary(),
		moonDiaryKey(),
		moonLog(),
		moonMonth(),
		moonRing(),
		moonSchool(),
	}
}
