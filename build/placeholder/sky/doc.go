// Package sky holds the placeholders of what happens in the sky: planets of the
// week, eclipses, and the alerts of a term.
package sky

import "noonbook/build/placeholder/entry"

// Entries returns the topic's placeholders, sorted by name.
func Entries() []entry.Entry {
	return []entry.Entry{
		eclipseList(),
		planetsWeek(),
		skyAlerts(),
	}
}
