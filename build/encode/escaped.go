package encode

import (
	"fmt"
	"strings"

	"noonbook/build/terminal"
)

// escaped writes what a terminal would obey as JSON does in a string. In JSON it stands
// nowhere else, but for line ends.
func escaped(json string) string {
	obeyed := func(r rune) bool { return r != '\n' && r != '\t' && terminal.Obeys(r) }
	if !strings.ContainsFunc(json, obeyed) {
		return json
	}
	var b strings.Builder
	for _, r := range json {
		if obeyed(r) {
			fmt.Fprintf(&b, "\\u%04x", r)
		} else {
			b.WriteRune(r)
		}
	}
	return b.String()
}
