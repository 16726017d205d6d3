package strip

import (
	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/strip"
)

// What the entry takes.
const argRows form.Key[int] = "rows"

func stripPicture() entry.Entry {
	return entry.Entry{
		Name:    "strip-picture",
		Summary: "The paper strip drawn to scale, folded in rows, with its bodies.",
		Arguments: append(stripArguments(),
			form.Field{Key: argRows, Min: 1, Max: 12, Assumed: "rows of at most a hundred squares, and no more than six", Doc: "Rows that the picture is folded in."}),
		Settings: roll,
		Facts: []entry.Fact{
			{Name: "shrunk", Doc: "how many times smaller than the real strip the picture is, printed at true size"},
			{Name: "rows", Doc: "rows that the picture is folded in"},
		},
		Sources:  []string{sourceOrbits},
		Harmless: "A picture; laying paper out is the work of strip-table.",
		Reckon:   reckonStripPicture,
	}
}

func reckonStripPicture(v form.Values) (result.Result, error) {
	s, err := stripOf(v)
	if err != nil {
		return result.Result{}, err
	}
	var flags []flag
	last := ""
	for _, m := range s.Marks() {
		if !m.Fits {
			continue
		}
		f := flag{squares: m.Squares, name: say.Words("body." + m.Name), role: "body", radius: 0.9}
		if m.Orbit == 0 {
			f.role, f.radius = "sun", 1.8
		}
		flags, last = append(flags, f), m.Name
	}
	f := fold(s.Squares, argRows.Of(v), asideNames)
	d := drawing.Drawing{
		Name: "strip", Width: entry.PictureWidth,
		Title:       say.Line("strip-picture.title", say.Count(s.Squares)),
		Description: say.Line("strip-picture.description", say.Count(f.rows()), say.Words("body."+last)),
	}
	f.draw(&d, flags)
	shrunk := f.row * s.Square.Millimetres() / (f.right - pictureMargin)
	r := result.Result{
		Facts: []result.Fact{
			{Name: "shrunk", Value: say.Number(shrunk, "", 0)},
			{Name: "rows", Value: say.Count(f.rows())},
		},
		Drawings: []drawing.Drawing{d},
		Notes:    []say.Phrase{say.Line("strip-picture.note", say.Number(shrunk, "", 0))},
	}
	if last == strip.Bodies()[0].Name {
		r.Warnings = append(r.Warnings, say.Line("strip-table.only_sun"))
	}
	return r, nil
}
