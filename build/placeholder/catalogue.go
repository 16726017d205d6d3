package placeholder

import (
	"slices"
	"strings"

	"noonbook/build/placeholder/class"
	"noonbook/build/placeholder/dial"
	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/flow"
	"noonbook/build/placeholder/maps"
	"noonbook/build/placeholder/moon"
	"noonbook/build/placeholder/optics"
	"noonbook/build/placeholder/rocket"
	"noonbook/build/placeholder/sky"
	"noonbook/build/placeholder/stars"
	"noonbook/build/placeholder/strip"
	"noonbook/build/placeholder/sun"
	"noonbook/build/placeholder/worlds"
)

// Catalogue returns every placeholder with its cautions, sorted by name. Their dates can
// be days by name.
func Catalogue() []entry.Entry {
	var all []entry.Entry
	for _, topic := range topics() {
		for _, e := range topic.entries {
			e.Topic = topic.name
			all = append(all, e)
		}
	}
	for i, e := range all {
		e.Arguments = e.Arguments.Named()
		all[i] = e.Careful()
	}
	slices.SortFunc(all, func(a, b entry.Entry) int { return strings.Compare(a.Name, b.Name) })
	return all
}

type topic struct {
	name    string
	entries []entry.Entry
}

func topics() []topic {
	return []topic{
		{"class", class.Entries()}, {"dial", dial.Entries()}, {"flow", flow.Entries()}, {"maps", maps.Entries()},
		{"moon", moon.Entries()}, {"optics", optics.Entries()},
		{"rocket", rocket.Entries()}, {"sky", sky.Entries()}, {"stars", stars.Entries()}, {"strip", strip.Entries()},
		{"sun", sun.Entries()}, {"worlds", worlds.Entries()},
	}
}
