package placeholder

import (
	"slices"
	"strings"

	"noonbook/build/placeholder/class"
	"noonbook/build/placeholder/dial"
	"noonbook/build/placeholder/entry"
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
	all := slices.Concat(class.Entries(), dial.Entries(), moon.Entries(), optics.Entries(), rocket.Entries(),
		sky.Entries(), stars.Entries(), strip.Entries(), sun.Entries(), worlds.Entries())
	for i, e := range all {
		e.Arguments = e.Arguments.Named()
		all[i] = e.Careful()
	}
	slices.SortFunc(all, func(a, b entry.Entry) int { return strings.Compare(a.Name, b.Name) })
	return all
}
