package stars

import (
	"slices"
	"time"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/almanac"
	"noonbook/compute/place"
)

// Measures of the chart in millimetres.
const (
	chartRadius = 84.0
	chartEdge   = 6.5 // round the horizon, for the names of the directions
	keyHeight   = 15.0
)

// picture is the chart for the page, with its key below.
func (c starChart) picture(p place.Place, at time.Time) drawing.Drawing {
	d := drawing.Drawing{
		Name: "sky-map", Width: 2 * (chartRadius + chartEdge), Height: 2*(chartRadius+chartEdge) + keyHeight, Rim: labelRim,
		Title:       say.Line("sky-map.title", entry.Moment(p, at)),
		Description: say.Line("sky-map.description"),
	}
	c.on(&d, drawing.Point{X: d.Width / 2, Y: chartRadius + chartEdge}, chartRadius)
	c.key(&d, d.Width/2, d.Height-keyHeight+5)
	return d
}

// on draws the chart about a point.
func (c *starChart) on(d *drawing.Drawing, centre drawing.Point, radius float64) {
	c.d, c.centre, c.radius = d, centre, radius
	c.draw()
}

// key explains the marks, in two rows about a middle.
func (c *starChart) key(d *drawing.Drawing, middle, y float64) {
	left := middle - 88
	name := func(x, y float64, key string) {
		d.Offer("figure", drawing.Keep, say.Words(key), drawing.Place{At: drawing.Point{X: x, Y: y + 0.2}, Anchor: drawing.Start, Sits: drawing.Centred})
	}
	x := left
	for magnitude := range 5 {
		d.Disc("star", drawing.Point{X: x, Y: y}, Size(float64(magnitude)))
		d.Offer("figure", drawing.Keep, say.Count(magnitude), drawing.Place{At: drawing.Point{X: x, Y: y + 2.6}, Anchor: drawing.Middle, Sits: drawing.Hanging})
		x += 6
	}
	name(x-1, y, "sky-map.key_magnitude")
	x = left + 96
	planetMark(d, drawing.Point{X: x, Y: y})
	name(x+3, y, "sky-map.key_planet")
	x = left + 124
	entry.DrawMoon(d, drawing.Point{X: x, Y: y}, 2, almanac.Limb{Lit: 0.35, Lean: 0.25})
	name(x+3.2, y, "body.moon")
	x = left + 148
	d.Line("zenith", drawing.Point{X: x - 1.6, Y: y}, drawing.Point{X: x + 1.6, Y: y})
	d.Line("zenith", drawing.Point{X: x, Y: y - 1.6}, drawing.Point{X: x, Y: y + 1.6})
	name(x+3, y, "sky-map.key_zenith")
	y, x = y+7.5, left+34
	d.Line("ecliptic", drawing.Point{X: x, Y: y}, drawing.Point{X: x + 9, Y: y})
	name(x+10.5, y, "sky-map.key_ecliptic")
	x = left + 112
	d.Line("equator", drawing.Point{X: x, Y: y}, drawing.Point{X: x + 9, Y: y})
	name(x+10.5, y, "sky-map.key_equator")
}

// sheet is the chart on a piece of paper, with what a class needs outside.
func (c starChart) sheet(v form.Values, p place.Place, at time.Time) drawing.Drawing {
	const head, foot = 13.0, 28.0
	radius := 87.5 // both papers are 190 mm wide or more inside their margins
	width := 2 * (radius + chartEdge)
	d := drawing.Drawing{
		Name: "sky-map", Width: width, Height: head + 2*(radius+chartEdge) + keyHeight + foot, Rim: labelRim,
		Title:       say.Line("sky-map.title", entry.Moment(p, at)),
		Description: say.Line("sky-map.description"),
	}
	d.Label("strong", drawing.Point{X: width / 2, Y: 4}, drawing.Middle, say.Words("sky-map.title", entry.Moment(p, at)))
	d.Label("small", drawing.Point{X: width / 2, Y: 8.5}, drawing.Middle,
		say.Words("dial-face.where", say.Text(school.Name.Of(v)), entry.Sided(p.Latitude.Degrees(), 2, "compass.north_of", "compass.south_of")))
	c.on(&d, drawing.Point{X: width / 2, Y: head + radius + chartEdge}, radius)
	y := head + 2*(radius+chartEdge)
	c.key(&d, width/2, y+4)
	lines := append([]say.Value{say.Words("sky-map.hold"), say.Words("sky-map.hold_fist"), say.Words("sky-map.red_light")}, c.bodiesInWords()...)
	for i, line := range lines {
		hint := d.Paragraph("hint", drawing.Point{X: width/2 - 84 - 1, Y: y + keyHeight + 4}, width-9, 4.1, line)
		hint.After = i > 0
	}
	return d
}

// bodiesInWords says where Moon and planets are, three to a line.
func (c *starChart) bodiesInWords() (lines []say.Value) {
	var list []say.Value
	for _, s := range c.bodies {
		if s.body != almanac.Sun {
			list = append(list, say.Words("sky-map.stands", entry.BodyWord(s.body), say.Number(s.stands.Altitude.Degrees(), "deg", 0), entry.Toward(s.stands.Azimuth)))
		}
	}
	if len(list) == 0 {
		return []say.Value{say.Words("sky-map.no_bodies")}
	}
	for three := range slices.Chunk(list, 3) {
		lines = append(lines, say.Words("sky-map.are_up", entry.Listed(three)))
	}
	return lines
}
