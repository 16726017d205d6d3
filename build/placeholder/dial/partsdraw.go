package dial

import (
	"math"

	"noonbook/build/drawing"
	"noonbook/build/say"
	"noonbook/compute/quantity"
)

// Measures of the picture in millimetres of the drawing, and where it is looked at from: from
// the west and a little from behind the dial, so that the triangle is seen broad and a
// morning's shadow falls towards whoever looks. Below the equator that is from the other
// side, and the picture is the other way round.
const (
	partsWide   = 150.0
	partsPlate  = 92.0 // across the plate, corner to corner
	partsThick  = 4.0  // of the plate, in its own millimetres
	partsArrow  = 24.0 // of the direction of the pole, beyond the plate
	partsLabel  = 40.0 // from the edge of the picture to the leader of a label
	partsLine   = 4.6  // from a name to what it says
	partsSun    = 4.2  // radius
	partsLight  = 9.0  // above the style, for the light
	partsRay    = 20.0 // from the style towards the Sun at most
	partsMargin = 5.0
	poleGap     = 8.0   // from the plate to the arrow, in the plate's own millimetres
	boardRim    = 12.0  // of the board round a tilted plate, likewise
	handApart   = 100.0 // the props, likewise
)

const (
	partsBearing   = quantity.Turn * 55 / 360 // in which one looks, north of the equator
	seenSlope      = quantity.Turn * 3 / 360  // from which on what carries a tilted plate is seen
	partsElevation = quantity.Turn * 28 / 360 // from which one looks down
)

// A partsView maps the model to the drawing.
type partsView struct {
	model
	drawing.Drawing
	scale, left, top float64
}

// flat is a place in millimetres of the model, to the right and up, as seen.
func (m model) flat(p spot) drawing.Point {
	east, north, up := m.world(p)
	north *= m.polewards()
	right := east*partsBearing.Cos() - north*partsBearing.Sin()
	deep := east*partsBearing.Sin() + north*partsBearing.Cos()
	return drawing.Point{X: right * m.polewards(), Y: up*partsElevation.Cos() + deep*partsElevation.Sin()}
}

func (w partsView) at(p spot) drawing.Point {
	f := w.flat(p)
	return drawing.Point{X: w.left + f.X*w.scale, Y: w.top - f.Y*w.scale}
}

func (w partsView) all(places []spot) []drawing.Point {
	points := make([]drawing.Point, len(places))
	for i, p := range places {
		points[i] = w.at(p)
	}
	return points
}

// corners are those of the plate, from the near west one round by the far west one.
func (m model) corners() []spot {
	return []spot{{s: m.west, q: m.near}, {s: m.west, q: m.far}, {s: m.east, q: m.far}, {s: m.east, q: m.near}}
}

// drawn is the picture.
func (m model) drawn() drawing.Drawing {
	w := partsView{model: m}
	w.Drawing = drawing.Drawing{
		Name: "dial-plate", Width: partsWide,
		Title: say.Line("dial-plate.title"), Description: say.Line(w.either("dial-plate.description", "dial-plate.polar_description")),
	}
	w.fit()
	w.plate()
	w.shade()
	w.hours()
	w.gnomon()
	w.rays()
	w.pole()
	w.names()
	return w.Drawing
}

// either is the line for a level dial, or the one for a polar dial.
func (m model) either(level, polar string) string {
	if m.polar {
		return polar
	}
	return level
}

// fit finds the scale and the place: the plate in the middle, and above it room for the Sun
// and for the labels.
func (w *partsView) fit() {
	low, high := math.Inf(1), math.Inf(-1)
	left, right := math.Inf(1), math.Inf(-1)
	for i, p := range append(w.corners(), w.style[0], w.style[1]) {
		f := w.flat(p)
		low, high = min(low, f.Y), max(high, f.Y)
		if i < 4 {
			left, right = min(left, f.X), max(right, f.X)
		}
	}
	w.scale = partsPlate / (right - left)
	w.left = (partsWide-partsPlate)/2 - left*w.scale
	w.top = partsMargin + high*w.scale
	if at, ok := w.sunAt(); ok {
		w.top += max(0, partsMargin+partsSun-at.Y)
	}
	rows := w.rows()
	w.top += max(0, partsMargin+1-min(rows.style, rows.gnomon))
	w.Height = w.top - low*w.scale + partsThick*w.scale + 2*partsMargin
	if w.slope >= seenSlope {
		w.Height = max(w.Height, w.at(w.ground(w.west, -boardRim)).Y+partsMargin, w.at(w.ground(w.east, -boardRim)).Y+partsMargin)
	}
}

// rows are the heights of the labels above the plate: the plate's corners stay free.
type labelRows struct{ style, noon, gnomon, plate float64 }

func (w *partsView) rows() (r labelRows) {
	high := min(w.at(w.style[0]).Y, w.at(w.style[1]).Y)
	arrow := w.at(spot{q: w.far + poleGap + partsArrow}).Y
	other := w.at(spot{s: w.east, q: w.far})
	for _, c := range w.corners() {
		if at := w.at(c); (at.X-other.X)*w.polewards() > 0 {
			other = at
		}
	}
	r.noon = min(high+18, arrow-2*partsLine-1)
	r.style = min(high+2, r.noon-3*partsLine)
	if w.polar { // its noon line is named in front
		r.style = min(high+2, arrow-2*partsLine-1)
	}
	r.plate = min(high+28, other.Y-2.6*partsLine)
	r.gnomon = min(high+16, r.plate-2.6*partsLine)
	return r
}

// plate draws the plate with its two near edges, and what a tilted one rests on.
func (w *partsView) plate() {
	c := w.corners()
	down := spot{h: -partsThick}
	if w.slope >= seenSlope {
		w.props()
	}
	for _, edge := range [][2]spot{{c[0], c[1]}, {c[0], c[3]}} {
		w.Area("edge", w.all([]spot{edge[0], edge[1], edge[1].plus(down), edge[0].plus(down)})...)
	}
	w.Area("plate", w.all(c)...)
}

// props draws what carries a tilted plate: a level board, and on it the two triangles that
// the sheets have.
func (w *partsView) props() {
	long := (w.far - w.near) * w.slope.Cos()
	w.Area("edge", w.all([]spot{w.ground(w.west, -boardRim), w.ground(w.west, long+boardRim), w.ground(w.east, long+boardRim), w.ground(w.east, -boardRim)})...)
	for _, s := range []float64{handApart / 2, -handApart / 2} {
		w.Area("card", w.all([]spot{{s: s, q: w.near, h: -partsThick}, {s: s, q: w.far, h: -partsThick}, w.ground(s, long)})...)
	}
}

// ground is a place on the board below a tilted plate: level from its near edge on.
func (m model) ground(s, along float64) spot {
	return spot{s, m.near + along*m.slope.Cos(), -partsThick - along*m.slope.Sin()}
}

// shade draws the shadow of the gnomon, and that of its style as a line.
func (w *partsView) shade() {
	if w.hour == 0 {
		return
	}
	a, b := w.cast(w.style[0]), w.cast(w.style[1])
	if shadow := w.onPlate([]spot{w.foot[0], w.foot[1], b, a}); len(shadow) > 2 {
		w.Area("shade", w.all(shadow)...)
	}
	if from, to, ok := w.shadowLine(); ok {
		w.Line("shadow", w.at(from), w.at(to))
	}
}

// shadowLine is the shadow of the style as far as it lies on the plate.
func (m model) shadowLine() (from, to spot, ok bool) {
	a, b := m.cast(m.style[0]), m.cast(m.style[1])
	const hair = 1e-6
	aside := spot{s: hair * (b.q - a.q), q: -hair * (b.s - a.s)}
	cut := m.onPlate([]spot{a, b, b.plus(aside)})
	if len(cut) < 2 {
		return a, b, false
	}
	from, to = cut[0], cut[0]
	for _, p := range cut {
		if along(a, b, p) < along(a, b, from) {
			from = p
		}
		if along(a, b, p) > along(a, b, to) {
			to = p
		}
	}
	return from, to, true
}

func along(a, b, p spot) float64 { return (p.s-a.s)*(b.s-a.s) + (p.q-a.q)*(b.q-a.q) }

// hours draws the hour lines with their figures, as far as these have room.
func (w *partsView) hours() {
	const room = 5.2
	var figures []drawing.Point
	card := w.all([]spot{w.foot[0], w.foot[1], w.style[1], w.style[0]})
	free := func(at drawing.Point) bool {
		for _, f := range figures {
			if math.Hypot(f.X-at.X, (f.Y-at.Y)*1.2) < room {
				return false
			}
		}
		return !within(at, card)
	}
	for _, first := range []bool{true, false} { // noon and the hour of the shadow have the first choice
		for _, l := range w.lines {
			if (l.noon || l.hour == w.hour) != first {
				continue
			}
			role := "hour"
			if l.noon {
				role = "noon"
			}
			w.Line(role, w.at(l.from), w.at(l.to))
			if at := w.at(l.figure); free(at) {
				figures = append(figures, at)
				w.Label("figure", drawing.Point{X: at.X, Y: at.Y + 1.2}, drawing.Middle, say.HourOnFace(l.hour))
			}
		}
	}
}

// within reports whether a point is in or close to a convex polygon.
func within(p drawing.Point, corners []drawing.Point) bool {
	const close = 1.8
	left, right := true, true
	for i, a := range corners {
		b := corners[(i+1)%len(corners)]
		long := math.Hypot(b.X-a.X, b.Y-a.Y)
		if long < 1e-9 {
			continue
		}
		side := ((b.X-a.X)*(p.Y-a.Y) - (b.Y-a.Y)*(p.X-a.X)) / long
		left, right = left && side > -close, right && side < close
	}
	return left || right
}

func (w *partsView) gnomon() {
	w.Area("card", w.all([]spot{w.foot[0], w.foot[1], w.style[1], w.style[0]})...)
	if a := w.angle.Degrees(); a >= 25 && a <= 62 {
		const radius, steps = 34.0, 12
		var arc []spot
		for i := range steps + 1 {
			t := w.angle * quantity.Angle(float64(i)/steps)
			arc = append(arc, spot{q: radius * t.Cos(), h: radius * t.Sin()})
		}
		w.Line("ink", w.all(arc)...)
		middle := w.at(spot{q: 56 * (w.angle / 2).Cos(), h: 56 * (w.angle / 2).Sin()})
		w.Label("angle", drawing.Point{X: middle.X, Y: middle.Y + 1.2}, drawing.Middle, say.Number(a, "deg", 0))
	}
	w.Line("accent", w.at(w.style[0]), w.at(w.style[1]))
	if !w.polar {
		w.Disc("dot", w.at(spot{}), 0.9)
	}
}

// rays draws the light that passes the style, from the shadow up towards the Sun.
func (w *partsView) rays() {
	sun, ok := w.sunAt()
	if !ok {
		return
	}
	x, y, far := w.beam()
	for _, p := range w.lit() {
		at := w.at(p)
		w.Line("ray", w.at(w.cast(p)), drawing.Point{X: at.X + x*far, Y: at.Y + y*far})
	}
	w.Disc("sun", sun, partsSun)
}

// lit are the two places of the style whose rays are drawn: the highest one whose shadow is
// well on the plate, and half-way to it.
func (m model) lit() [2]spot {
	top := 1.0
	for ; top > 0.1 && !m.holds(m.cast(between3(m.style[0], m.style[1], top))); top -= 0.02 {
	}
	return [2]spot{between3(m.style[0], m.style[1], top/2), between3(m.style[0], m.style[1], top)}
}

// beam is the direction of the Sun on the drawing, and how far a ray goes beyond the style:
// not into the labels.
func (w *partsView) beam() (x, y, far float64) {
	to := w.flat(w.sun)
	long := math.Hypot(to.X, to.Y)
	x, y, far = to.X/long, -to.Y/long, partsRay
	for _, p := range w.lit() {
		at := w.at(p)
		edge := partsWide - partsLabel
		if x < 0 {
			edge = partsLabel
		}
		if x != 0 {
			far = min(far, (edge-at.X)/x-2.6*partsSun)
		}
	}
	return x, y, max(far, 3)
}

// sunAt is where the Sun is drawn: in its true direction, and much too near.
func (w *partsView) sunAt() (at drawing.Point, ok bool) {
	to := w.flat(w.sun)
	if w.hour == 0 || math.Hypot(to.X, to.Y) < 0.2 { // it stands behind whoever looks
		return at, false
	}
	x, y, far := w.beam()
	lit := w.lit()
	a, b := w.at(lit[0]), w.at(lit[1])
	far += 1.6 * partsSun
	return drawing.Point{X: (a.X+b.X)/2 + x*far, Y: (a.Y+b.Y)/2 + y*far}, true
}

// holds reports whether a place is on the plate and not at its very edge.
func (m model) holds(p spot) bool {
	const rim = figuresIn / 2
	return m.west+rim <= p.s && p.s <= m.east-rim && m.near+rim <= p.q && p.q <= m.far-rim
}

// pole draws the direction along the ground of the pole above the horizon, beyond the plate.
func (w *partsView) pole() {
	from, to := w.at(spot{q: w.far + poleGap}), w.at(spot{q: w.far + poleGap + partsArrow})
	w.Line("bearing", from, to)
	x, y := to.X-from.X, to.Y-from.Y
	long := math.Hypot(x, y)
	x, y = x/long*2.6, y/long*2.6
	w.Area("dot", to, drawing.Point{X: to.X - x - y*0.35, Y: to.Y - y + x*0.35}, drawing.Point{X: to.X - x + y*0.35, Y: to.Y - y - x*0.35})
	w.Label("direction", drawing.Point{X: to.X - w.polewards()*1.5, Y: to.Y + 0.6}, w.side(true), poleUp(w.latitude))
}

// side is the anchor of a label on the side where the morning is, or on the other.
func (m model) side(morning bool) drawing.Anchor {
	if morning == (m.polewards() > 0) {
		return drawing.End
	}
	return drawing.Start
}

// names writes the names of the parts round the picture, each with a line to its part.
func (w *partsView) names() {
	toward := func(morning bool) float64 { // where the leaders begin
		if w.side(morning) == drawing.End {
			return partsLabel
		}
		return partsWide - partsLabel
	}
	label := func(morning bool, y float64, part spot, name, says say.Value) {
		at := drawing.Point{X: toward(morning), Y: y}
		gap := 1.5
		if w.side(morning) == drawing.Start {
			gap = -gap
		}
		end := w.at(part)
		w.Line("leader", drawing.Point{X: at.X + gap, Y: at.Y - 1.2}, end)
		w.Disc("dot", end, 0.5)
		w.Label("name", at, w.side(morning), name)
		w.Label("says", drawing.Point{X: at.X, Y: at.Y + partsLine}, w.side(morning), says)
	}
	rows, low := w.rows(), w.Height-partsMargin-partsLine
	style := between3(w.style[0], w.style[1], 0.8)
	label(true, rows.style, style, say.Words("dial-plate.style"), say.Words("dial-plate.style_says"))
	if from, to, ok := w.shadowLine(); w.hour > 0 && ok {
		label(true, low, between3(from, to, 0.7), say.Words("dial-plate.shadow"), say.Words("dial-plate.shadow_says", say.HourOnFace(w.hour)))
	}
	card := between3(between3(w.foot[0], w.foot[1], 0.6), between3(w.style[0], w.style[1], 0.6), 0.5)
	label(false, rows.gnomon, card, say.Words("dial-plate.gnomon"), say.Words(w.either("dial-plate.gnomon_says", "dial-plate.polar_gnomon_says")))
	label(false, rows.plate, spot{s: w.east * 0.72, q: w.far * 0.3}, say.Words("dial-plate.plate"), w.plateSays())
	noon, says := say.Words("dial-plate.noon_line"), say.Words("dial-plate.noon_says")
	if w.polar {
		label(false, low, spot{q: (w.foot[0].q + w.near + figuresIn/2) / 2}, noon, says)
		return
	}
	label(false, low, spot{}, say.Words("dial-plate.toe"), say.Words("dial-plate.toe_says"))
	label(true, rows.noon, spot{q: (w.foot[1].q + w.far - figuresIn) / 2}, noon, says)
}

func (w *partsView) plateSays() say.Value {
	if w.slope == 0 {
		return say.Words("dial-plate.plate_level")
	}
	return say.Words("dial-plate.plate_tilted", say.Number(w.slope.Degrees(), "deg", 0))
}
