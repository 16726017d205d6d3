// Package class holds the placeholders of the class and its weeks: the school's
// place, the unit's calendar, its kit, notes to families, marking. It alone knows
// other topics, because a lesson's day is made of what they say.
package class

import "noonbook/build/placeholder/entry"

// Entries returns the topic's placeholders, sorted by name.
func Entries() []entry.Entry {
	return []entry.Entry{
		classFacts(),
		codeList(),
		namedDay(),
		eveningNote(),
		eveningPlan(),
		familyNote(),
		kitList(),
		lessonSky(),
		markingGrid(),
		placeFacts(),
		printList(),
		riskNotes(),
		rubric(),
		unitMap(),
		unitPlan(),
	}
}
