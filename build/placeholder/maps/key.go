package maps

import (
	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/globe"
)

// numbered are the places of a map to fill in, in the order of their numbers. The tests of
// blanks and keys find all.
func numbered(w globe.World, names []string) []globe.Spot {
	spots := make([]globe.Spot, len(names))
	for i, name := range names {
		spots[i], _ = globe.Find(w, name)
	}
	return spots
}

// writingLine is the line of a number below a map to fill in, from x on.
func writingLine(d *drawing.Drawing, number int, at drawing.Point, wide float64) {
	d.Label("strong", drawing.Point{X: at.X + 6, Y: at.Y - 1}, drawing.End, say.Count(number))
	d.Line("writing-line", drawing.Point{X: at.X + 8, Y: at.Y}, drawing.Point{X: at.X + wide - 4, Y: at.Y})
}

// keyOf has the names that belong to the numbers of a map to fill in.
func keyOf(name, summary string, title say.Phrase, w globe.World, names []string) entry.Entry {
	return entry.Entry{
		Name:      name,
		Summary:   summary,
		ForStaff:  true,
		Arguments: form.Form{},
		Facts:     []entry.Fact{{Name: "count", Doc: "how many numbers there are"}},
		Sources:   []string{sourceNames},
		Harmless:  "Names for the teacher to read.",
		Reckon: func(form.Values) (result.Result, error) {
			table := result.Table{
				Name: "key", Title: title,
				Columns: []result.Column{{Name: "number"}, {Name: "name"}, {Name: "kind"}},
			}
			for i, s := range numbered(w, names) {
				table.Rows = append(table.Rows, result.Row{Cells: []say.Value{say.Count(i + 1), spotName(s), kindWord(s)}})
			}
			return result.Result{Facts: []result.Fact{{Name: "count", Value: say.Count(len(table.Rows))}}, Tables: []result.Table{table}}, nil
		},
	}
}
