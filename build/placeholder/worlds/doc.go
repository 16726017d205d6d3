// Package worlds holds the placeholders of planets and moons as places: cards,
// comparisons, weights, the ways there, and who has gone.
package worlds

import "noonbook/build/placeholder/entry"

// Entries returns the topic's placeholders, sorted by name.
func Entries() []entry.Entry {
	return []entry.Entry{
		journeyTable(),
		missionPlans(),
		missionRecord(),
		weightTable(),
		worldCards(),
		worldCompare(),
	}
}
