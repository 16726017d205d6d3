package school

import (
	"fmt"
	"strings"

	"noonbook/build/form"
)

// Take reads what a person typed for a setting, into a line of a page or a cell of a
// list: what form.Field.Take takes. A latitude goes north or south, a longitude east or
// west.
func Take(f form.Field, text string) (v any, complaint string) {
	sides := map[form.AnyKey]string{Latitude: "NS", Longitude: "EWO"}[f.Key]
	for _, c := range strings.ToUpper(text) {
		if sides != "" && strings.ContainsRune("NSEWO", c) && !strings.ContainsRune(sides, c) && !strings.Contains(strings.ToLower(text), "deg") {
			return nil, fmt.Sprintf("is %q, want %s", text, f.Allowed())
		}
	}
	return f.Take(text)
}
