package maps

import (
	"math"
	"slices"

	"noonbook/build/drawing"
	"noonbook/build/placeholder/entry"
	"noonbook/build/say"
	"noonbook/compute/globe"
	"noonbook/compute/quantity"
)

// A moonPicture is the Moon's disc on a drawing.
type moonPicture struct {
	*moonView
	d      *drawing.Drawing
	centre drawing.Point
	radius float64
	mark   float64 // half the width of a landing site's mark, and the least radius of a crater
}

// Ranks of the labels; what has no place on a phone is in the tables.
const (
	greatRank = 1 + iota
	goodRank
	fairRank
	siteRank
)

// great are the names that a phone has, too: what the bare eye finds, and four craters.
var great = []string{
	"Mare Imbrium", "Mare Serenitatis", "Mare Tranquillitatis", "Mare Crisium", "Oceanus Procellarum",
	"Tycho", "Copernicus", "Plato", "Mare Nubium", "Mare Fecunditatis", "Clavius",
}

func rankOf(s globe.Spot) int {
	switch {
	case slices.Contains(great, s.Name):
		return greatRank
	case isSea(s), s.Crew, slices.Contains(rayed, s.Name):
		return goodRank
	case s.Kind == globe.Site:
		return siteRank
	}
	return fairRank
}

// at returns where a point of the Moon is on the drawing, and whether it shows.
func (m *moonPicture) at(p globe.Point) (drawing.Point, bool) {
	s := m.View.At(p)
	return m.on(s.Rim()), s.Shows()
}

func (m *moonPicture) on(s globe.Spotted) drawing.Point {
	return drawing.Point{X: m.centre.X + m.radius*s.X, Y: m.centre.Y + m.radius*s.Y}
}

func (m *moonPicture) path(points []globe.Point) []drawing.Point {
	path := make([]drawing.Point, len(points))
	for i, p := range points {
		path[i], _ = m.at(p)
	}
	return drawing.Thin(path, 0.0015*m.radius) // nobody sees it, and a handbook has the face on many sheets
}

// ground draws the disc with everything on it, without a word.
func (m *moonPicture) ground() {
	spots := globe.Spots(globe.Moon)
	m.d.Disc("ground", m.centre, m.radius)
	for _, s := range spots {
		if _, shows := m.at(s.At); shows && isSea(s) {
			m.d.Area("sea grid", m.path(shore(s))...)
		}
	}
	for _, s := range spots {
		if at, shows := m.at(s.At); shows && !isSea(s) && s.Kind != globe.Site {
			m.relief(s, at)
		}
	}
	if !m.mean {
		m.night()
	}
	m.d.Disc("rim grid", m.centre, m.radius)
}

// relief draws a crater as a ring, which is an ellipse near the rim, and what is long as
// a line.
func (m *moonPicture) relief(s globe.Spot, at drawing.Point) {
	if stroke, ok := moonStrokes()[s.Name]; ok {
		points := make([]globe.Point, len(stroke))
		for i, p := range stroke {
			points[i] = onMoon(p)
		}
		role := "range grid"
		if s.Kind != "mountain range" {
			role = "cut-line grid"
		}
		m.d.Line(role, m.path(points)...)
		return
	}
	role := "crater grid"
	if slices.Contains(rayed, s.Name) || s.Kind == "bright swirl" {
		role = "crater bright grid"
	}
	if s.Across.Kilometres()/2/globe.Moon.Radius().Kilometres()*m.radius < m.mark {
		m.d.Disc(role, at, m.mark)
		return
	}
	m.d.Area(role, m.path(globe.Ring(s.At, globe.Moon.Arc(s.Across)/2, 20))...)
}

// night shades what the Sun does not reach: from the terminator, half of which shows, to
// the rim away from the Sun.
func (m *moonPicture) night() {
	sun := m.View.At(globe.Point{Latitude: m.face.SunLatitude, Longitude: m.face.SunLongitude})
	aside := math.Hypot(sun.X, sun.Y)
	if aside < 1e-6 { // straight behind the Earth or behind the Moon
		if sun.Toward < 0 {
			m.d.Disc("night-side grid", m.centre, m.radius)
		}
		return
	}
	toward := drawing.Point{X: sun.X / aside, Y: sun.Y / aside}
	const steps = 48
	var edge []drawing.Point
	// The terminator is half an ellipse, whose short half-axis bulges from the Sun where
	// more than half is lit; the dark half of the rim closes it.
	for i := range 2 * steps {
		a := math.Pi * (float64(i)/steps - 0.5)
		along, across := -sun.Toward*math.Cos(a), math.Sin(a)
		if i >= steps {
			along, across = math.Cos(a), math.Sin(a)
		}
		edge = append(edge, m.on(globe.Spotted{X: along*toward.X - across*toward.Y, Y: along*toward.Y + across*toward.X}))
	}
	m.d.Area("night-side grid", edge...)
}

// sites draws the marks of the landing sites that show, those of people over the others:
// Apollo 12 set down beside Surveyor 3.
func (m *moonPicture) sites() {
	for _, crew := range []bool{false, true} {
		for _, s := range globe.Spots(globe.Moon) {
			if at, shows := m.at(s.At); shows && s.Kind == globe.Site && s.Crew == crew {
				siteMark(m.d, kindOfSite(s), at, m.mark)
			}
		}
	}
}

// names offers the names of all that shows.
func (m *moonPicture) names() {
	for _, s := range globe.Spots(globe.Moon) {
		at, shows := m.at(s.At)
		if !shows {
			continue
		}
		role := "feature-name"
		gap := m.mark + 0.5
		switch {
		case isSea(s):
			m.d.Offer("sea-name", rankOf(s), spotName(s), overSea(at, m.reach(s))...)
			m.d.Within(m.disc())
			continue
		case s.Kind == globe.Site:
			role = "site-name"
		case s.Kind == "crater":
			gap = max(gap, m.reach(s)+0.5)
		}
		places := append(drawing.Beside(at, gap), drawing.Led(at, gap-0.3, gap+2.5, gap+6)...)
		m.d.Offer(role, rankOf(s), spotName(s), places...)
		m.d.Within(m.disc())
	}
}

// disc keeps names on the Moon.
func (m *moonPicture) disc() drawing.Round {
	return drawing.Round{Centre: m.centre, Radius: m.radius - 0.5}
}

// reach is how far round its middle a spot belongs to it, mm.
func (m *moonPicture) reach(s globe.Spot) float64 {
	return max(m.mark, globe.Moon.Arc(s.Across).Radians()/2*m.radius)
}

// overSea are places on a sea, in the middle first, broken into lines and in one.
func overSea(at drawing.Point, reach float64) (places []drawing.Place) {
	over := drawing.Over(at)
	for _, p := range over {
		if math.Hypot(p.At.X-at.X, p.At.Y-at.Y) > max(3, reach) {
			break
		}
		broken := p
		broken.Wide = min(38, max(14, 1.6*reach)) // on a phone a long name of two words takes two lines
		places = append(places, broken, p)
	}
	return places
}

// directions writes round the rim which side of the Moon is its north, east, south and
// west: letters stand with their heads outward in the upper half.
func (m *moonPicture) directions() {
	for i := range 4 {
		way := quantity.Degrees(90 * float64(i))
		out := (m.Turn + way).Signed()
		clockwise, sits := out.Degrees(), drawing.OnFoot
		if math.Abs(clockwise) > 91 {
			clockwise, sits = clockwise+180, drawing.Hanging
		}
		at := func(r float64) drawing.Point {
			return drawing.Point{X: m.centre.X + r*out.Sin(), Y: m.centre.Y - r*out.Cos()}
		}
		m.d.Line("edge-tick", at(m.radius), at(m.radius+1.4))
		m.d.Offer("direction", drawing.Keep, entry.Toward(way), drawing.Place{At: at(m.radius + 1.9), Anchor: drawing.Middle, Sits: sits})
		m.d.Shapes[len(m.d.Shapes)-1].Turn = quantity.Degrees(clockwise).Signed().Degrees()
	}
}

// moonKey explains the marks of the landing sites, in two rows about a middle.
func moonKey(d *drawing.Drawing, middle, y, mark, row float64) {
	const columns, step = 3, 62.0
	for i, kind := range siteKinds() {
		at := drawing.Point{X: middle + 6 + step*(float64(i%columns)-columns/2.0) + mark, Y: y + row*float64(i/columns)}
		siteMark(d, kind, at, mark)
		d.Offer("figure", drawing.Keep, siteMeaning(kind), drawing.Place{At: drawing.Point{X: at.X + mark + 1.4, Y: at.Y + 0.1}, Anchor: drawing.Start, Sits: drawing.Centred})
	}
}

// Measures of the map on a page in millimetres.
const (
	mapRadius = 84.0
	mapEdge   = 6.5
	mapKey    = 18.0
)

// picture is the map for the page, with its key below.
func (m *moonView) picture() (drawing.Drawing, *moonPicture) {
	d := drawing.Drawing{
		Name: "moon-map", Width: 2 * (mapRadius + mapEdge), Height: 2*(mapRadius+mapEdge) + mapKey,
		Title: say.Line("moon-map.title", entry.Moment(m.place, m.at)), Description: say.Line("moon-map.description"),
	}
	if m.mean {
		d.Title = say.Line("moon-map.title_mean")
	}
	on := &moonPicture{moonView: m, d: &d, centre: drawing.Point{X: d.Width / 2, Y: mapRadius + mapEdge}, radius: mapRadius, mark: 0.75}
	on.ground()
	on.sites()
	on.names()
	on.directions()
	moonKey(&d, d.Width/2, d.Height-mapKey+5.5, 1.1, 7.5)
	on.d = nil
	return d, on
}
