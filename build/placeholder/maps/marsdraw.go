package maps

import (
	"math"
	"slices"

	"noonbook/build/drawing"
	"noonbook/build/say"
	"noonbook/compute/globe"
	"noonbook/compute/quantity"
)

// A marsPicture is the map of Mars on a drawing.
type marsPicture struct {
	d      *drawing.Drawing
	corner drawing.Point // the upper left one of the map
	scale  float64       // mm a degree
	mark   float64       // half the width of a landing site's mark, and the least radius of a crater
}

func (m *marsPicture) at(p globe.Point) drawing.Point { return m.on(p.Flat()) }

func (m *marsPicture) on(f globe.Flat) drawing.Point {
	return drawing.Point{X: m.corner.X + (180+f.East)*m.scale, Y: m.corner.Y + (90-f.North)*m.scale}
}

// point is where so many degrees north and east are.
func (m *marsPicture) point(north, east float64) drawing.Point {
	return m.on(globe.Flat{East: east, North: north})
}

func (m *marsPicture) width() float64  { return 360 * m.scale }
func (m *marsPicture) height() float64 { return 180 * m.scale }

// millimetres is how long a way along the equator is on the map.
func (m *marsPicture) millimetres(l quantity.Length) float64 {
	return globe.Mars.Arc(l).Degrees() * m.scale
}

func (m *marsPicture) path(flat []globe.Flat) []drawing.Point {
	path := make([]drawing.Point, len(flat))
	for i, f := range flat {
		path[i] = m.on(f)
	}
	return drawing.Thin(path, 0.05)
}

// marsRoles are how kinds of features are drawn, in the order in which they are: wide low
// ground first, and what is on it later.
var marsRoles = []struct{ kind, role string }{
	{"land", "high"}, {"plain", "low"}, {"plateau", "high"}, {"polar cap plateau", "cap"},
	{"canyons", "maze"}, {"mountain", "volcano"}, {"crater", "crater"},
}

// ground draws everything without a word. A feature is a circle of its width, which the
// projection makes wider away from the equator; what is long is a line.
func (m *marsPicture) ground() {
	m.d.Area("ground grid", m.point(90, -180), m.point(90, 180), m.point(-90, 180), m.point(-90, -180))
	spots := globe.Spots(globe.Mars)
	for _, r := range marsRoles {
		for _, s := range spots {
			if s.Kind == r.kind {
				m.feature(s, r.role+" grid")
			}
		}
	}
	m.net()
	for _, s := range spots {
		if stroke, ok := marsStrokes[s.Name]; ok {
			m.d.Line("gorge grid", m.path(stroke)...)
		}
	}
	m.d.Area("frame grid", m.point(90, -180), m.point(90, 180), m.point(-90, 180), m.point(-90, -180))
}

func (m *marsPicture) feature(s globe.Spot, role string) {
	if m.reach(s) <= m.mark {
		m.d.Disc(role, m.at(s.At), m.mark)
		return
	}
	for _, piece := range globe.FlatRing(s.At, globe.Mars.Arc(s.Across)/2, 72) {
		m.d.Area(role, m.path(piece)...)
	}
}

// reach is half the width of a feature on the map, at the equator's scale.
func (m *marsPicture) reach(s globe.Spot) float64 {
	return max(m.mark, m.millimetres(s.Across)/2)
}

// marsStrokes are the courses of what is long, by hand: the length and the middle are the
// Gazetteer's, the bends from memory, good to a few degrees.
var marsStrokes = map[string][]globe.Flat{
	"Valles Marineris": {{East: -91, North: -7.5}, {East: -84, North: -7.5}, {East: -72.5, North: -10.5}, {East: -61.5, North: -13.5}, {East: -52, North: -14.5}, {East: -40, North: -13}, {East: -27, North: -15.5}},
	"Kasei Valles":     {{East: -75.5, North: 20}, {East: -70, North: 25}, {East: -62, North: 25.5}, {East: -50, North: 28}},
	"Ares Vallis":      {{East: -17.5, North: -2.5}, {East: -19.5, North: 4}, {East: -25.6, North: 10.3}, {East: -30, North: 16}, {East: -34, North: 22.5}},
}

// net draws every thirtieth meridian and parallel, and writes their figures round the frame.
func (m *marsPicture) net() {
	for north := -60.0; north <= 60; north += 30 {
		role := "net grid"
		if north == 0 {
			role = "equator"
		}
		m.d.Line(role, m.point(north, -180), m.point(north, 180))
	}
	for east := -150.0; east <= 150; east += 30 {
		m.d.Line("net grid", m.point(90, east), m.point(-90, east))
	}
}

// figures writes latitudes beside the map and longitudes below it.
func (m *marsPicture) figures() {
	for north := -60.0; north <= 60; north += 30 {
		at := m.point(north, -180)
		m.d.Offer("figure", drawing.Keep, marsLatitude(north), drawing.Place{At: drawing.Point{X: at.X - 1, Y: at.Y}, Anchor: drawing.End, Sits: drawing.Centred})
	}
	for east := -120.0; east <= 120; east += 60 {
		at, rank := m.point(-90, east), drawing.Keep
		if math.Abs(east) == 60 { // a phone has no room for them
			rank = 5
		}
		m.d.Offer("figure", rank, marsLongitude(east), drawing.Place{At: drawing.Point{X: at.X, Y: at.Y + 1}, Anchor: drawing.Middle, Sits: drawing.Hanging})
	}
}

// marsLatitude and marsLongitude are the figures of the net, whole degrees; 0° has no side.
func marsLatitude(north float64) say.Value {
	return marsFigure(north, say.Latitude(north))
}

func marsLongitude(east float64) say.Value { return marsFigure(east, say.Longitude(east)) }

func marsFigure(degrees float64, sided say.Value) say.Value {
	whole := say.Number(math.Abs(degrees), "deg", 0)
	if degrees == 0 {
		return whole
	}
	return sided.As(sided.Phrase.Key, whole)
}

// sites draws the marks of the landing sites.
func (m *marsPicture) sites() {
	for _, s := range globe.Spots(globe.Mars) {
		if s.Kind == globe.Site {
			siteMark(m.d, kindOfSite(s), m.at(s.At), m.mark)
		}
	}
}

// way draws the shortest way between two spots.
func (m *marsPicture) way(w way) {
	for _, piece := range globe.FlatWay(w.from.At, w.to.At, 90) {
		m.d.Line("way grid", m.path(piece)...)
	}
}

// marsGreat are the names that a phone has before others.
var marsGreat = []string{"Olympus Mons", "Valles Marineris", "Hellas Planitia", "Curiosity", "Perseverance", "Utopia Planitia"}

func marsRank(s globe.Spot) int {
	switch {
	case slices.Contains(marsGreat, s.Name):
		return 1
	case s.Kind == globe.Site:
		return 2
	case s.Kind == "crater":
		return 4
	}
	return 3
}

// names offers the names of everything.
func (m *marsPicture) names() {
	for _, s := range globe.Spots(globe.Mars) {
		at, role := m.at(s.At), "feature-name"
		gap := m.mark + 0.6
		switch s.Kind {
		case globe.Site:
			role = "site-name"
		case "plain", "land", "plateau", "polar cap plateau", "canyons":
			places := m.over(at, m.reach(s))
			if s.Kind == "polar cap plateau" || s.Name == "Vastitas Borealis" {
				places = m.alongEdge(s)
			}
			m.d.Offer("area-name", marsRank(s), spotName(s), m.fitting(s, places)...)
			continue
		case "canyon system", "channel":
			stroke := m.path(marsStrokes[s.Name])
			at, gap = stroke[len(stroke)/2], 1.8
		default:
			gap = max(gap, m.reach(s)+0.6)
		}
		places := append(drawing.Beside(at, gap), drawing.Led(at, gap-0.2, gap+2.5, gap+5, gap+8)...)
		m.d.Offer(role, marsRank(s), spotName(s), m.fitting(s, m.inside(places))...)
	}
}

// over are places on an area, broken into lines or in one.
func (m *marsPicture) over(at drawing.Point, reach float64) (places []drawing.Place) {
	for _, p := range drawing.Over(at) {
		broken := p
		broken.Wide = max(12, 1.5*reach)
		places = append(places, broken, p)
	}
	return m.inside(append(places, drawing.Led(at, 0.5, 6, 10, 14)...))
}

// alongEdge are places for what is round a pole, where the map is too low for two lines.
func (m *marsPicture) alongEdge(s globe.Spot) (places []drawing.Place) {
	north := math.Copysign(83, s.At.Latitude.Degrees())
	for _, aside := range []float64{0, -30, 30, -60, 60, -100, 100, -140} {
		if east := s.At.Longitude.Degrees() + aside; math.Abs(east) < 150 {
			places = append(places, drawing.Place{At: m.point(north, east), Anchor: drawing.Middle, Sits: drawing.Centred})
		}
	}
	return places
}

// fitting lets the names that matter less stand only where they are not long beside the
// map: with a phone's letters they would cover it, and its tables have them.
func (m *marsPicture) fitting(s globe.Spot, places []drawing.Place) []drawing.Place {
	if marsRank(s) > 2 {
		for i := range places {
			places[i].Fits = 56 * m.scale
		}
	}
	return places
}

// inside leaves out places whose point is not on the map.
func (m *marsPicture) inside(places []drawing.Place) []drawing.Place {
	const edge = 1.0
	kept := slices.DeleteFunc(places, func(p drawing.Place) bool {
		x, y := p.At.X-m.corner.X, p.At.Y-m.corner.Y
		return x < edge || y < edge || x > m.width()-edge || y > m.height()-edge
	})
	return kept
}
