package maps

import (
	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/quantity"
)

func marsPoster() entry.Entry {
	return entry.Entry{
		Name:      "mars-poster",
		Summary:   "The map of Mars as a poster for the wall, over four sheets of paper.",
		Printable: true, For: entry.OneClass,
		Arguments: form.Form{},
		Settings:  append(form.Keys{school.Paper}, entry.KnownWaySettings()...),
		Facts: []entry.Fact{
			{Name: "sheets", Doc: "over how many sheets of paper it goes"},
			{Name: "scale", Unit: "km", Doc: "kilometres along the equator that are one centimetre on the poster"},
		},
		Sources:  []string{sourceNames, sourceSites, sourceMarsFlat, sourceMarsHand},
		Harmless: "A poster for the wall, joined with tape.",
		Reckon: func(v form.Values) (result.Result, error) {
			d := marsWall(entry.KnownWayOf(v))
			sheets := drawing.PaperOf(school.Paper.Of(v)).Sheets(d)
			return result.Result{
				Facts:  []result.Fact{{Name: "sheets", Value: say.Count(len(sheets))}, {Name: "scale", Value: posterCentimetre()}},
				Sheets: sheets,
				Notes:  []say.Phrase{say.Line("mars-poster.note", say.Count(len(sheets)))},
			}, nil
		},
	}
}

// posterCentimetre is how far one centimetre of the poster goes along the equator.
func posterCentimetre() say.Value {
	m := marsPicture{scale: posterMarsScale}
	return say.Number(10/m.millimetres(quantity.Kilometres(1)), "km", 0)
}

// Measures of the poster in millimetres: it fills two sheets across and two down, of
// either paper laid on its long side, which repeat each other by drawing.TileOverlap.
const (
	posterMarsWidth  = 506.0
	posterMarsHeight = 340.0
	posterMarsScale  = 1.35 // mm a degree
	posterMarsLeft   = 19.5
	posterMarsTop    = 20.0
)

// marsWall is the map for the wall.
func marsWall(known entry.KnownWay) drawing.Drawing {
	d := drawing.Drawing{
		Name: "mars-map poster", Width: posterMarsWidth, Height: posterMarsHeight,
		Title: say.Line("mars-map.title"), Description: say.Line("mars-map.description"),
	}
	m := marsPicture{d: &d, corner: drawing.Point{X: posterMarsLeft, Y: posterMarsTop}, scale: posterMarsScale, mark: 1.7}
	d.Label("poster-title", drawing.Point{X: d.Width / 4, Y: 12}, drawing.Middle, say.Words("mars-poster.title"))
	d.Label("poster-line", drawing.Point{X: 3 * d.Width / 4, Y: 12}, drawing.Middle, say.Words("mars-poster.scale", posterCentimetre()))
	m.ground()
	m.sites()
	m.names()
	m.figures()
	foot := posterMarsTop + m.height()
	m.scales(known, drawing.Point{X: posterMarsLeft, Y: foot + 12}, d.Width/2, 0)
	m.key(drawing.Point{X: posterMarsLeft, Y: foot + 24}, 6, 79, 0, 1.8)
	for i, key := range []string{"mars-map.note_up", "mars-map.note_flat", "mars-map.note_wide", "mars-poster.who"} {
		x := posterMarsLeft + d.Width/2*float64(i/2)
		line := d.Paragraph("poster-line", drawing.Point{X: x, Y: foot + 38}, d.Width/2-32, 6, say.Words(key))
		line.After = i%2 > 0
	}
	return d
}
