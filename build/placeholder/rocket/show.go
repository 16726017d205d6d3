package rocket

import (
	"slices"

	"noonbook/build/form"
	"noonbook/build/result"
)

// What the entries take that are for the class and for the teacher.
const argShow form.Key[[]string] = "show"

// showable are the parts of such a result. Pupils see the drawing; table, notes and
// working are the teacher's.
var showable = []string{"drawing", "table"}

var showParts = form.Field{Key: argShow, Choices: showable, Default: showable, Doc: "What to show: the drawing, the table with its notes and working. Cautions and warnings are always shown."}

// shown leaves out of a result what is not asked for. Facts, cautions and warnings stay.
func shown(r result.Result, v form.Values) result.Result {
	show := argShow.Of(v)
	if !slices.Contains(show, "drawing") {
		r.Drawings = nil
	}
	if !slices.Contains(show, "table") {
		r.Tables, r.Notes, r.Working = nil, nil, nil
	}
	return r
}
