package maps

import (
	"slices"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
)

func moonPoster() entry.Entry {
	return entry.Entry{
		Name:      "moon-poster",
		Summary:   "The Moon's face as a poster for the wall, with all names, over four sheets of paper.",
		Printable: true, For: entry.OneClass,
		Arguments: form.Form{turnField("north", "south")},
		Settings:  append(form.Keys{school.Paper}, school.Where()...),
		Facts: []entry.Fact{
			{Name: "sheets", Doc: "how many sheets of paper it takes"},
			{Name: "wide", Unit: "mm", Doc: "how wide it is when they are joined"},
			{Name: "up", Doc: "what of the Moon is up on it"},
		},
		Sources:  []string{sourceNames, sourceSites, sourceSketch},
		Harmless: "A poster to read from.",
		Reckon: func(v form.Values) (result.Result, error) {
			turn := turnedAs(v, school.Place(v), true)
			m := meanView(turn)
			sheets, _ := posters.Of(posterKey{drawing.PaperOf(school.Paper.Of(v)), turn}, func() ([]drawing.Sheet, error) {
				return m.poster(drawing.PaperOf(school.Paper.Of(v))), nil
			})
			return result.Result{
				Facts: []result.Fact{
					{Name: "sheets", Value: say.Count(len(sheets))},
					{Name: "wide", Value: say.Number(posterWidth, "mm", 0)},
					{Name: "up", Value: m.upWord()},
				},
				Sheets: slices.Clip(sheets),
				Notes:  []say.Phrase{say.Line("moon-poster.note", say.Count(len(sheets)))},
			}, nil
		},
	}
}

// Schools share the poster: it depends on the paper and on what is up.
var posters = entry.Memory[posterKey, []drawing.Sheet]{Most: 4}

type posterKey struct {
	paper drawing.Paper
	turn  string
}

// Measures of the poster in millimetres: it fills two sheets across and two down, of either
// paper, which repeat each other by drawing.TileOverlap.
const (
	posterWidth  = 2*190.0 - drawing.TileOverlap
	posterHeight = 2*245.0 - drawing.TileOverlap
	posterRadius = posterWidth/2 - 10
	posterTop    = 22.0
)

// poster is the mean face on four sheets, for the wall.
func (m moonView) poster(paper drawing.Paper) []drawing.Sheet {
	d := drawing.Drawing{
		Name: "moon-poster", Width: posterWidth, Height: posterHeight,
		Title: say.Line("moon-map.title_mean"), Description: say.Line("moon-map.description"),
	}
	on := &moonPicture{moonView: &m, d: &d, centre: drawing.Point{X: d.Width / 2, Y: posterTop + 10 + posterRadius}, radius: posterRadius, mark: 1.3}
	d.Label("poster-title", drawing.Point{X: d.Width / 4, Y: 11}, drawing.Middle, say.Words("moon-map.title_mean"))
	d.Label("poster-title", drawing.Point{X: 3 * d.Width / 4, Y: 11}, drawing.Middle, m.upWord())
	on.ground()
	on.sites()
	on.names()
	on.directions()

	y := on.centre.Y + posterRadius + 16
	moonKey(&d, d.Width/2, y, 1.6, 7)
	left, wide := 12.0, d.Width/2-24
	for i, key := range []string{"moon-poster.turn", "moon-poster.seas", "moon-poster.craters", "moon-map.note_east", "moon-poster.sites", "moon-poster.far"} {
		x, row := left, i
		if i >= 3 {
			x, row = d.Width/2+12, i-3
		}
		line := d.Paragraph("poster-line", drawing.Point{X: x, Y: y + 19}, wide, 6.2, say.Words(key))
		line.After = row > 0
	}
	scale := on.radius / 1737.4 * 500 // 500 km in the middle of the disc
	at := drawing.Point{X: d.Width/2 - scale/2, Y: d.Height - 14}
	d.Line("scale-bar", drawing.Point{X: at.X, Y: at.Y - 1.5}, at, drawing.Point{X: at.X + scale, Y: at.Y}, drawing.Point{X: at.X + scale, Y: at.Y - 1.5})
	d.Label("poster-line", drawing.Point{X: d.Width / 2, Y: at.Y + 6}, drawing.Middle, say.Words("moon-poster.scale", say.Number(500, "km", 0)))
	return paper.Sheets(d)
}
