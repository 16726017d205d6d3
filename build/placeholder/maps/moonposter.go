package maps

import (
	"noonbook/build/drawing"
	"noonbook/build/say"
)

// Measures of the poster in millimetres: it fills two sheets across and two down, of either
// paper, which repeat each other by drawing.TileOverlap.
const (
	posterWidth  = 2*190.0 - drawing.TileOverlap
	posterHeight = 2*245.0 - drawing.TileOverlap
	posterRadius = posterWidth/2 - 10
	posterTop    = 22.0
)

// poster is the mean face on four sheets, for the wall.
func poster(paper drawing.Paper, turn string) []drawing.Sheet {
	d := drawing.Drawing{
		Name: "moon-map poster", Width: posterWidth, Height: posterHeight,
		Title: say.Line("moon-map.title_mean"), Description: say.Line("moon-map.description"),
	}
	m := meanView(turn)
	on := &moonPicture{moonView: &m, d: &d, centre: drawing.Point{X: d.Width / 2, Y: posterTop + 10 + posterRadius}, radius: posterRadius, mark: 1.3}
	d.Label("poster-title", drawing.Point{X: d.Width / 4, Y: 11}, drawing.Middle, say.Words("moon-map.poster_title"))
	d.Label("poster-title", drawing.Point{X: 3 * d.Width / 4, Y: 11}, drawing.Middle, m.upWord())
	on.ground()
	on.sites()
	on.names()
	on.directions()

	y := on.centre.Y + posterRadius + 16
	moonKey(&d, d.Width/2, y, 1.6)
	left, wide := 12.0, d.Width/2-24
	for i, key := range []string{"moon-map.poster_turn", "moon-map.poster_seas", "moon-map.poster_craters", "moon-map.note_east", "moon-map.poster_sites", "moon-map.poster_far"} {
		x, row := left, i
		if i >= 3 {
			x, row = d.Width/2+12, i-3
		}
		line := d.Paragraph("poster-line", drawing.Point{X: x, Y: y + 14}, wide, 6.2, say.Words(key))
		line.After = row > 0
	}
	scale := on.radius / 1737.4 * 500 // 500 km in the middle of the disc
	at := drawing.Point{X: d.Width/2 - scale/2, Y: d.Height - 14}
	d.Line("scale-bar", drawing.Point{X: at.X, Y: at.Y - 1.5}, at, drawing.Point{X: at.X + scale, Y: at.Y}, drawing.Point{X: at.X + scale, Y: at.Y - 1.5})
	d.Label("poster-line", drawing.Point{X: d.Width / 2, Y: at.Y + 6}, drawing.Middle, say.Words("moon-map.poster_scale", say.Number(500, "km", 0)))
	return paper.Sheets(d)
}
