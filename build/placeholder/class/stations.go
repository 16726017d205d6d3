package class

import (
	"noonbook/build/drawing"
	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/stars"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/almanac"
	"noonbook/compute/classroom"
	"noonbook/compute/quantity"
	"noonbook/compute/sky"
)

// figuresShown is how many star figures a class learns in one evening.
const figuresShown = 3

// stations lists what the class does in which minute of an evening.
func (o outing) stations(name, title string, e classroom.Evening, pupils int) result.Table {
	table := result.Table{
		Name: name, Title: say.Line(title, entry.Weekday(e.Date)),
		Columns: []result.Column{{Name: "begins"}, {Name: "what"}, {Name: "where"}, {Name: "tool"}, {Name: "adults"}},
	}
	all, some := say.Count(classroom.EveningAdults(pupils)+1), say.Count(classroom.EveningAdults(pupils))
	for part := classroom.Arriving; part <= classroom.HomeGoing; part++ {
		what, where, tool := o.station(e, part)
		adults := some
		if part == classroom.Arriving || part == classroom.HomeGoing {
			adults = all
		}
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{o.clock(o.at(e, part)), what, where, tool, adults}})
	}
	return table
}

// station says what is seen in a part of the evening, where, and with what.
func (o outing) station(e classroom.Evening, part classroom.EveningPart) (what, where, tool say.Value) {
	middle := o.middle(e, part)
	dome := sky.DomeAt(o.p, middle)
	meeting, glass := say.Words("evening-plan.meeting_place"), say.Words("evening-plan.glass")
	switch part {
	case classroom.MoonLook:
		if e.Moon {
			lit := almanac.Moon.LimbFrom(o.p, middle).Lit
			return say.Words("evening-plan.see_moon", entry.Percent(lit)), stands(almanac.MoonFrom(o.p, middle)), glass
		}
		what, where = brightStar(dome, 0, "evening-plan.see_first")
		return what, where, say.Words("evening-plan.eyes")
	case classroom.PlanetLook:
		if e.HasPlanet {
			return say.Words(seeWords[e.Planet]), stands(e.Planet.From(o.p, middle)), glass
		}
		what, where = brightStar(dome, 1, "evening-plan.see_colour")
		return what, where, glass
	case classroom.Figures:
		var names []say.Value
		for _, f := range sky.ToFind(dome, figuresShown) {
			names = append(names, say.Words("evening-plan.figure_at", stars.FigureWord(f), entry.Toward(dome.At(f.Centre()).Azimuth)))
		}
		if len(names) == 0 {
			return say.Words("evening-plan.see_stars"), say.Words("evening-plan.overhead"), say.Words("evening-plan.wheel")
		}
		return say.Words("evening-plan.see_figures"), entry.Listed(names), say.Words("evening-plan.wheel")
	case classroom.Counting:
		if f, ok := o.toCount(e); ok {
			return say.Words("evening-plan.see_count", stars.FigureWord(f), say.Count(len(f.Stars()))), stands(dome.At(f.Centre())), say.Words("evening-plan.eyes")
		}
		return say.Words("evening-plan.see_darkest"), say.Words("evening-plan.overhead"), say.Words("evening-plan.eyes")
	case classroom.HomeGoing:
		return say.Words("evening-plan.see_home"), meeting, say.Words("evening-plan.list")
	}
	return say.Words("evening-plan.see_arrive"), meeting, say.Words("evening-plan.red_light")
}

// What hides or confuses the stars of a figure: the Moon within four fists of its middle, a
// bright planet in it. Common practice, no source.
var (
	moonGlare   = quantity.Degrees(40)
	planetGlare = quantity.Degrees(12)
)

// toCount is the figure whose stars are counted in an evening: away from the Moon and from
// planets if there is one.
func (o outing) toCount(e classroom.Evening) (sky.Figure, bool) {
	at := o.middle(e, classroom.Counting)
	dome := sky.DomeAt(o.p, at)
	var glares []sky.Glare
	if moon := almanac.MoonFrom(o.p, at); moon.Altitude > 0 {
		glares = append(glares, sky.Glare{At: moon, Within: moonGlare})
	}
	for _, b := range almanac.NakedEye() {
		glares = append(glares, sky.Glare{At: b.From(o.p, at), Within: planetGlare})
	}
	if f, ok := sky.ToCount(dome, glares...); ok {
		return f, true
	}
	return sky.ToCount(dome)
}

// seeWords are the keys of what the planets show in a small telescope.
var seeWords = map[almanac.Body]string{
	almanac.Mercury: "evening-plan.see_mercury", almanac.Venus: "evening-plan.see_venus", almanac.Mars: "evening-plan.see_mars",
	almanac.Jupiter: "evening-plan.see_jupiter", almanac.Saturn: "evening-plan.see_saturn",
}

// nearZenith is how high something is that has no direction to speak of.
var nearZenith = quantity.Degrees(80)

// stands says where something is, as seen.
func stands(h almanac.Horizontal) say.Value {
	if h.Altitude > nearZenith {
		return say.Words("evening-plan.zenith", say.Degrees(entry.AsSeen(h.Altitude), 0))
	}
	return say.Words("evening-plan.where", entry.Toward(h.Azimuth), say.Degrees(entry.AsSeen(h.Altitude), 0))
}

// brightStar is the brightest star that is a fist high, or the one after so many others.
func brightStar(dome sky.Dome, after int, key string) (what, where say.Value) {
	for _, s := range sky.Stars() {
		if h := dome.Star(s); entry.AsSeen(h.Altitude) >= classroom.MoonLeast {
			if after--; after < 0 {
				return say.Words(key, stars.StarWord(s)), stands(h)
			}
		}
	}
	return say.Words("evening-plan.see_stars"), say.Words("evening-plan.overhead")
}

// countTable says how faint a star is that one sees with the first, the first two and so on of
// a figure.
func countTable(f sky.Figure) result.Table {
	table := result.Table{
		Name: "count", Title: say.Line("evening-plan.count_title", stars.FigureWord(f)),
		Columns: []result.Column{{Name: "seen"}, {Name: "magnitude"}, {Name: "star"}},
	}
	for i, s := range f.Stars() {
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{say.Count(i + 1), say.Number(s.Magnitude, "", 1), stars.StarWord(s)}})
	}
	return table
}

// Measures of the picture of a figure, in millimetres.
const (
	countSide = 110.0
	countEdge = 8.0
)

// countDrawing is the figure as it stands then, up at the top, its stars numbered from the
// brightest. It is laid flat round its middle: shapes stay true (stereographic).
func countDrawing(f sky.Figure, dome sky.Dome) drawing.Drawing {
	middle := dome.At(f.Centre())
	flat := func(s sky.Star) drawing.Point {
		h := sky.Seen(dome.Star(s))
		turn := h.Azimuth - middle.Azimuth
		k := 2 / (1 + middle.Altitude.Sin()*h.Altitude.Sin() + middle.Altitude.Cos()*h.Altitude.Cos()*turn.Cos())
		return drawing.Point{X: k * h.Altitude.Cos() * turn.Sin(), Y: -k * (middle.Altitude.Cos()*h.Altitude.Sin() - middle.Altitude.Sin()*h.Altitude.Cos()*turn.Cos())}
	}
	list := f.Stars()
	box := drawing.Box{Left: 9, Top: 9, Right: -9, Bottom: -9}
	for _, s := range list {
		p := flat(s)
		box = drawing.Box{Left: min(box.Left, p.X), Top: min(box.Top, p.Y), Right: max(box.Right, p.X), Bottom: max(box.Bottom, p.Y)}
	}
	scale := (countSide - 2*countEdge) / max(box.Right-box.Left, box.Bottom-box.Top)
	at := func(s sky.Star) drawing.Point {
		p := flat(s)
		return drawing.Point{X: countEdge + scale*(p.X-box.Left), Y: countEdge + scale*(p.Y-box.Top)}
	}
	d := drawing.Drawing{
		Name: "figure", Width: 2*countEdge + scale*(box.Right-box.Left), Height: 2*countEdge + scale*(box.Bottom-box.Top),
		Title:       say.Line("evening-plan.picture", stars.FigureWord(f)),
		Description: say.Line("evening-plan.picture_description", stars.FigureWord(f), entry.Toward(middle.Azimuth)),
	}
	for _, path := range f.Paths {
		var points []drawing.Point
		for _, s := range path {
			points = append(points, at(s))
		}
		d.Line("thin", points...)
	}
	for i, s := range list {
		d.Disc("dot", at(s), stars.Size(s.Magnitude))
		d.Offer("figure", drawing.Keep, say.Count(i+1), drawing.Beside(at(s), stars.Size(s.Magnitude)+1)...)
	}
	return d
}
