// Package dial holds the placeholders of the shadow clock: its hour lines, face and
// gnomon, its plate and how to turn it, and what the class's marks on it say.
package dial

import "noonbook/build/placeholder/entry"

// Entries returns the topic's placeholders, sorted by name.
func Entries() []entry.Entry {
	return []entry.Entry{
		dialBlank(),
		dialClock(),
		dialDay(),
		dialDrift(),
		dialFace(),
		dialGnomon(),
		dialHours(),
		dialLesson(),
		dialMarks(),
		dialNorth(),
		dialPlate(),
		dialTable(),
	}
}
