package stars

import (
	"cmp"
	"math"
	"slices"
	"sync"

	"noonbook/build/drawing"
	"noonbook/build/placeholder/entry"
	"noonbook/build/say"
	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
	"noonbook/compute/sky"
)

// A starChart draws the sky of a place and moment inside a circle, the way it is
// read overhead.
type starChart struct {
	p          place.Place
	dome       sky.Dome
	projection sky.Projection
	limit      float64              // magnitude
	stars      []almanac.Horizontal // where each stands, as seen, by its rank
	bodies     []stander
	d          *drawing.Drawing
	centre     drawing.Point
	radius     float64 // mm, of the horizon
}

// A stander is a body of the solar system where it stands, as seen.
type stander struct {
	body   almanac.Body
	stands almanac.Horizontal
	aspect almanac.Aspect
	limb   almanac.Limb
}

// starsSeen returns where all stars stand, as seen, by rank.
func starsSeen(dome sky.Dome) []almanac.Horizontal {
	stars := sky.Stars()
	seen := make([]almanac.Horizontal, len(stars))
	for i, s := range stars {
		seen[i] = sky.Seen(dome.Star(s))
	}
	return seen
}

// at returns where a place in the sky, as seen, lies on the drawing.
func (c *starChart) at(h almanac.Horizontal) drawing.Point {
	p := c.projection.At(h)
	return drawing.Point{X: c.centre.X + c.radius*p.X, Y: c.centre.Y - c.radius*p.Y}
}

// draw draws everything, from the ground up.
func (c *starChart) draw() {
	c.d.Shapes = slices.Grow(c.d.Shapes, len(c.stars))
	c.d.Disc("dome", c.centre, c.radius)
	c.rings()
	c.trace("equator", c.dome.Equator())
	c.trace("ecliptic", c.dome.Ecliptic())
	c.figures()
	c.discs()
	for i := len(c.bodies) - 1; i >= 0; i-- {
		c.symbol(c.bodies[i])
	}
	c.names()
	c.directions()
}

// rings are 30° and 60° above the horizon, and the zenith is a cross.
func (c *starChart) rings() {
	for _, altitude := range []float64{30, 60} {
		r := c.radius * c.projection.Radius(quantity.Degrees(90-altitude))
		c.d.Disc("height", c.centre, r)
		var places []drawing.Place
		for _, aside := range []float64{0, 12, -12, 24, -24, 36, -36, 50, -50, 65, -65} {
			turn := quantity.Degrees(aside)
			places = append(places, drawing.Place{At: drawing.Point{X: c.centre.X + r*turn.Sin(), Y: c.centre.Y + r*turn.Cos() - 0.8}, Anchor: drawing.Middle})
		}
		c.d.Offer("figure", bodyRank, say.Number(altitude, "deg", 0), places...)
	}
	const arm = 1.6
	x, y := c.centre.X, c.centre.Y
	c.d.Line("zenith", drawing.Point{X: x - arm, Y: y}, drawing.Point{X: x + arm, Y: y})
	c.d.Line("zenith", drawing.Point{X: x, Y: y - arm}, drawing.Point{X: x, Y: y + arm})
	c.d.Block(drawing.Box{Left: x - arm, Top: y - arm, Right: x + arm, Bottom: y + arm})
}

// trace draws the parts of a line that are above the horizon.
func (c *starChart) trace(role string, points []almanac.Horizontal) {
	var run []drawing.Point
	end := func() {
		if len(run) > 1 {
			c.d.Line(role, run...)
		}
		run = nil
	}
	for i := 1; i < len(points); i++ {
		from, to, ok := c.inside(c.at(sky.Seen(points[i-1])), c.at(sky.Seen(points[i])))
		if !ok {
			end()
			continue
		}
		if len(run) == 0 {
			run = append(run, from)
		}
		run = append(run, to)
	}
	end()
}

// inside cuts a straight line off at the horizon. ok is false where none is left.
func (c *starChart) inside(from, to drawing.Point) (a, b drawing.Point, ok bool) {
	dx, dy := to.X-from.X, to.Y-from.Y
	x, y := from.X-c.centre.X, from.Y-c.centre.Y
	// |from + s (to − from)| = radius
	p, q, r := dx*dx+dy*dy, x*dx+y*dy, x*x+y*y-c.radius*c.radius
	root := q*q - p*r
	if p == 0 || root <= 0 {
		return from, to, false
	}
	s, e := max(0, (-q-math.Sqrt(root))/p), min(1, (-q+math.Sqrt(root))/p)
	on := func(s float64) drawing.Point { return drawing.Point{X: from.X + s*dx, Y: from.Y + s*dy} }
	return on(s), on(e), s < e
}

// figures draws the lines between stars, a little short of the stars themselves.
func (c *starChart) figures() {
	const deep = -25 // degrees: a star that far down has no place near the circle
	for _, f := range sky.Figures() {
		for _, path := range f.Paths {
			for i := 1; i < len(path); i++ {
				one, two := c.stars[path[i-1].Rank], c.stars[path[i].Rank]
				if one.Altitude.Degrees() < deep || two.Altitude.Degrees() < deep {
					continue
				}
				from, to := shortened(c.at(one), c.at(two), Size(path[i-1].Magnitude)+0.7, Size(path[i].Magnitude)+0.7)
				if a, b, ok := c.inside(from, to); ok {
					c.d.Line("figure-line", a, b)
				}
			}
		}
	}
}

// shortened takes a length off both ends of a line, or leaves it where it is short.
func shortened(a, b drawing.Point, atA, atB float64) (drawing.Point, drawing.Point) {
	dx, dy := b.X-a.X, b.Y-a.Y
	long := math.Hypot(dx, dy)
	if long < atA+atB+0.5 {
		return a, b
	}
	return drawing.Point{X: a.X + dx*atA/long, Y: a.Y + dy*atA/long}, drawing.Point{X: b.X - dx*atB/long, Y: b.Y - dy*atB/long}
}

// Size is the radius of a star's disc in millimetres.
func Size(magnitude float64) float64 { return max(0.22, 1.32-0.27*magnitude) }

func (c *starChart) discs() {
	for i, s := range sky.Stars() {
		if h := c.stars[i]; h.Altitude >= 0 && (s.Magnitude <= c.limit || sky.InFigure(s)) {
			c.d.Disc("star", c.at(h), Size(s.Magnitude))
		}
	}
}

// Sizes of the symbols in millimetres.
const (
	planetSize = 1.5
	moonSize   = 2.6
	sunSize    = 2.6
)

func (c *starChart) symbol(s stander) {
	at := c.at(s.stands)
	switch s.body {
	case almanac.Moon:
		// The limb leans from straight up, which on the chart is towards its middle.
		limb := s.limb
		limb.Lean += quantity.Atan2(c.centre.X-at.X, at.Y-c.centre.Y)
		entry.DrawMoon(c.d, at, moonSize, limb)
	case almanac.Sun:
		c.d.Disc("sun", at, sunSize)
	default:
		planetMark(c.d, at)
		c.d.Block(drawing.Box{Left: at.X - planetSize, Top: at.Y - planetSize, Right: at.X + planetSize, Bottom: at.Y + planetSize})
	}
}

// planetMark is a square on its corner, which no star is.
func planetMark(d *drawing.Drawing, at drawing.Point) {
	const r = planetSize
	d.Area("planet", drawing.Point{X: at.X, Y: at.Y - r}, drawing.Point{X: at.X + r, Y: at.Y}, drawing.Point{X: at.X, Y: at.Y + r}, drawing.Point{X: at.X - r, Y: at.Y})
}

// The ranks of names: where there is no room those of figures go first. What is left out
// stands in the table.
const (
	bodyRank = 1 + iota
	starRank
	figureRank
)

const nameGap = 0.7 // mm, between a mark and its name

// names offers the names of bodies, then of the brightest stars, then of figures.
func (c *starChart) names() {
	inside := drawing.Round{Centre: c.centre, Radius: c.radius - 0.8}
	offer := func(role string, rank int, text say.Value, places []drawing.Place) {
		c.d.Offer(role, rank, text, places...)
		c.d.Within(inside)
	}
	for _, s := range c.bodies {
		size := planetSize
		if s.body == almanac.Moon || s.body == almanac.Sun {
			size = moonSize
		}
		offer("body-name", bodyRank, entry.BodyWord(s.body), drawing.Beside(c.at(s.stands), size+nameGap))
	}
	for i, s := range sky.Stars() {
		if s.Magnitude > brightLimit {
			break
		}
		if h := c.stars[i]; h.Altitude > 0 && s.Name != "" {
			offer("star-name", starRank, StarWord(s), drawing.Beside(c.at(h), Size(s.Magnitude)+nameGap))
		}
	}
	for _, f := range brightFirst() {
		if h := sky.Seen(c.dome.At(f.Centre())); h.Altitude.Degrees() > figureLimit {
			offer("figure-name", figureRank, FigureWord(f), drawing.Over(c.at(h)))
		}
	}
}

// brightFirst returns the figures in the order of their brightest stars, so that where
// there is no room it is the faint ones whose names are left out.
var brightFirst = sync.OnceValue(func() []sky.Figure {
	list := slices.Clone(sky.Figures())
	slices.SortStableFunc(list, func(a, b sky.Figure) int { return cmp.Compare(brightest(a), brightest(b)) })
	return list
})

// brightest is the magnitude of a figure's brightest star.
func brightest(f sky.Figure) float64 {
	least := math.Inf(1)
	for _, path := range f.Paths {
		for _, s := range path {
			least = min(least, s.Magnitude)
		}
	}
	return least
}

// brightLimit is the magnitude of the faintest star that a class learns by name:
// the 21 of the first magnitude, and Castor (common practice, no source).
const brightLimit = 1.6

// directions stand round the horizon, their heads outward in the upper half.
func (c *starChart) directions() {
	for i := range 8 {
		azimuth := quantity.Degrees(45 * float64(i))
		clockwise, sits := -azimuth.Signed().Degrees(), drawing.OnFoot
		if math.Abs(clockwise) > 91 {
			clockwise, sits = clockwise+180, drawing.Hanging
		}
		r := c.radius + 1.7
		at := drawing.Point{X: c.centre.X - r*azimuth.Sin(), Y: c.centre.Y - r*azimuth.Cos()}
		role := "direction"
		if i%2 == 1 {
			role = "half-direction"
		}
		c.d.Offer(role, drawing.Keep, entry.Toward(azimuth), drawing.Place{At: at, Anchor: drawing.Middle, Sits: sits})
		c.d.Shapes[len(c.d.Shapes)-1].Turn = quantity.Degrees(clockwise).Signed().Degrees()
	}
}
