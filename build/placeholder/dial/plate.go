package dial

import (
	"math"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/dial"
	"noonbook/compute/quantity"
)

// What the entry takes.
const (
	argKind    form.Key[string]  = "kind"
	argWidthMM form.Key[float64] = "width_mm"
)

// Arguments that the printables of the dial share.
var (
	dialKind = form.Field{Key: argKind, Choices: []string{"auto", "level", "polar", "wall", "equatorial"}, Default: "auto",
		Doc: "A level dial, a polar one, one for a wall that faces the equator, or an equatorial one; auto is level, but polar within 15° of the equator."}
	plateWidth = form.Field{Key: argWidthMM, Unit: "mm", Min: 80, Max: 1000, Default: 180.0,
		Doc: "Width of the plate; its height follows from the gnomon. What no sheet holds is laid out over several."}
)

// kindOfDial returns the face that the values ask for; for an equatorial dial
// that is the side toward the pole.
func kindOfDial(v form.Values) dial.Face {
	switch argKind.Of(v) {
	case "level":
		return dial.Level
	case "polar":
		return dial.Polar
	case "wall":
		return dial.Wall
	case "equatorial":
		return dial.PoleSide
	}
	return builds(v)
}

// kindName is what a face is called. Between the tropics no side is that of the summer.
func kindName(f dial.Face, latitude quantity.Angle) say.Value {
	if entry.Tropical(latitude) {
		return say.Words([...]string{"dial-face.level", "dial-face.wall", "dial-face.tropics_pole_side", "dial-face.tropics_equator_side", "dial-face.polar"}[f])
	}
	return say.Words([...]string{"dial-face.level", "dial-face.wall", "dial-face.pole_side", "dial-face.equator_side", "dial-face.polar"}[f])
}

// unreadable warns of a face that cannot be read at the latitude.
func unreadable(f dial.Face, latitude quantity.Angle) []say.Phrase {
	if f.Readable(latitude) {
		return nil
	}
	return []say.Phrase{say.Line("dial-face.unreadable", kindName(f, latitude), say.Number(dial.NoonSpacing(f.Latitude(latitude)).Degrees(), "deg", 1))}
}

// A plate is the drawing board of a dial face, in millimetres of the paper. Its
// noon line runs up, or down on a face that stands.
type plate struct {
	width, height float64
	toe           drawing.Point // the middle between the two dial centres
	clockwise     bool          // way in which the hours run
	down          bool          // the noon line runs down
	gap           float64       // between the noon lines: the gnomon's thickness
	lines, ticks  frame         // where lines end, and the band of ticks round them
}

type frame struct{ left, top, right, bottom float64 }

// Measures of a plate in millimetres.
const (
	figureBand = 11.0 // for the figures of the hours
	tickBand   = 3.0
	footBand   = 13.0 // for what the face says of itself
	behindToe  = 46.0 // from the toe of a level dial back to the band, for the earliest and latest hours
	leastGap   = 0.5  // thinner gnomons count as having no thickness
)

// layOut finds the measures of a plate that carries the gnomon.
func layOut(f dial.Face, latitude quantity.Angle, width float64, gnomon dial.Gnomon, thickness float64) plate {
	there := f.Latitude(latitude)
	bands := figureBand + tickBand
	p := plate{width: width, clockwise: there >= 0, down: f != dial.Level}
	if thickness >= leastGap {
		p.gap = thickness
	}
	base := gnomon.Base.Millimetres()
	ahead, behind := max(base+8, width*0.5), behindToe
	switch from, _ := f.Hours(latitude); {
	case f == dial.PoleSide || f == dial.EquatorSide || from == 0:
		ahead, behind = width/2-bands, width/2-bands // lines may run all round
		ahead = max(ahead, base+8)
	case f == dial.Wall:
		behind = 14
	}
	p.height = 2*bands + ahead + behind + footBand
	p.toe = drawing.Point{X: width / 2, Y: bands + ahead}
	if p.down {
		p.toe.Y = bands + behind
	}
	p.ticks = frame{figureBand, figureBand, width - figureBand, p.height - footBand - figureBand}
	p.lines = p.ticks.inset(tickBand)
	return p
}

func (f frame) inset(by float64) frame {
	return frame{f.left + by, f.top + by, f.right - by, f.bottom - by}
}

func (f frame) corners() []drawing.Point {
	return []drawing.Point{{X: f.left, Y: f.top}, {X: f.right, Y: f.top}, {X: f.right, Y: f.bottom}, {X: f.left, Y: f.bottom}}
}

// exit is where the ray from a point inside leaves the frame.
func (f frame) exit(from, along drawing.Point) drawing.Point {
	far := math.Inf(1)
	for _, edge := range []struct{ gap, speed float64 }{
		{f.right - from.X, along.X}, {f.left - from.X, along.X}, {f.bottom - from.Y, along.Y}, {f.top - from.Y, along.Y},
	} {
		if t := edge.gap / edge.speed; edge.speed != 0 && t > 0 {
			far = min(far, t)
		}
	}
	return drawing.Point{X: from.X + far*along.X, Y: from.Y + far*along.Y}
}

// along is the direction on the paper of a line at an angle from the noon line,
// afternoon positive.
func (p plate) along(line quantity.Angle) drawing.Point {
	if !p.clockwise {
		line = -line
	}
	if p.down {
		line += quantity.Turn / 2
	}
	return drawing.Point{X: line.Sin(), Y: -line.Cos()}
}

// centre is the dial centre of an edge of the gnomon.
func (p plate) centre(e dial.Edge) drawing.Point {
	aside := e.Offset(quantity.Millimetres(p.gap)).Millimetres()
	return p.on(p.toe, p.along(quantity.Turn/4), aside)
}

func (p plate) on(from, along drawing.Point, far float64) drawing.Point {
	return drawing.Point{X: from.X + far*along.X, Y: from.Y + far*along.Y}
}

// edges draws the cut, the bands, and the place of the gnomon.
func (p plate) edges(d *drawing.Drawing, gnomon dial.Gnomon) {
	d.Area("cut", frame{0, 0, p.width, p.height}.corners()...)
	d.Area("rim", p.ticks.corners()...)
	d.Area("rim", p.lines.corners()...)
	noon := p.along(0)
	far := gnomon.Base.Millimetres()
	if p.gap > 0 && !isRod(gnomon) {
		one, other := p.centre(dial.MorningEdge), p.centre(dial.AfternoonEdge)
		d.Area("gnomon-gap", one, p.on(one, noon, far), p.on(other, noon, far), other)
	}
	d.Disc("toe", p.toe, 0.7)
	if isRod(gnomon) {
		d.Disc("rod", p.toe, 3)
	}
}

// isRod reports whether the style stands so steeply that a rod through the plate
// takes the place of a triangle, as on equatorial dials and near a pole.
func isRod(g dial.Gnomon) bool { return g.Base < g.Style/10 }

// noonLines draws the line of noon, or one from each centre.
func (p plate) noonLines(d *drawing.Drawing, role string) {
	edges := []dial.Edge{dial.MorningEdge, dial.AfternoonEdge}
	if p.gap == 0 {
		edges = []dial.Edge{dial.BothEdges}
	}
	for _, e := range edges {
		from := p.centre(e)
		d.Line(role, from, p.lines.exit(from, p.along(0)))
	}
}

// compassOn draws which way is true north, or south, and where a needle points,
// behind the toe of a level face.
func (p plate) compassOn(d *drawing.Drawing, latitude, variation quantity.Angle) {
	const radius = 15.0
	at := drawing.Point{X: p.toe.X, Y: min(p.toe.Y+21, p.lines.bottom-radius-9)}
	rose(d, at, radius, latitude, variation)
	places := []drawing.Place{
		{At: drawing.Point{X: at.X, Y: at.Y + radius + 4.5}, Anchor: drawing.Middle},
		{At: drawing.Point{X: at.X, Y: at.Y + radius + 2.5}, Anchor: drawing.Middle, Sits: drawing.Hanging, Wide: 2 * radius},
		{At: drawing.Point{X: at.X, Y: at.Y - radius - 2.5}, Anchor: drawing.Middle, Wide: 2 * radius},
	}
	for _, place := range drawing.Beside(at, radius+3)[:2] {
		place.Wide = 1.2 * radius
		places = append(places, place)
	}
	d.Offer("small", drawing.Keep, say.Words("dial-face.arrows", poleUp(latitude), entry.Sided(variation.Degrees(), 1, "compass.east_of", "compass.west_of")), places...)
}

// rose draws a compass card on a plate whose noon line runs up the paper.
func rose(d *drawing.Drawing, at drawing.Point, radius float64, latitude, variation quantity.Angle) {
	d.Disc("blank", at, radius+2)
	d.Disc("card", at, radius)
	needle := variation
	if latitude < 0 { // up on the paper is south
		needle += quantity.Turn / 2
	}
	d.Line("noon", drawing.Point{X: at.X, Y: at.Y + radius}, drawing.Point{X: at.X, Y: at.Y - radius + 3})
	d.Area("head", drawing.Point{X: at.X, Y: at.Y - radius}, drawing.Point{X: at.X - 1.6, Y: at.Y - radius + 4}, drawing.Point{X: at.X + 1.6, Y: at.Y - radius + 4})
	d.Line("needle", toBearing(at, needle+quantity.Turn/2, radius-2), toBearing(at, needle, radius-5))
	tip := toBearing(at, needle, radius-1)
	d.Area("head", tip, toBearing(tip, needle+quantity.Degrees(160), 4), toBearing(tip, needle-quantity.Degrees(160), 4))
}

// dialSettings are what the printables of the dial read.
var dialSettings = append(form.Keys{school.Name, school.Paper, school.StockStyleMM, school.StockGnomonMM, school.StockPolarHeightMM}, school.Where()...)

// plateFacts are the measures of a plate.
func plateFacts(p plate) []result.Fact {
	return []result.Fact{
		{Name: "plate_width", Value: say.Number(p.width, "mm", 0)},
		{Name: "plate_height", Value: say.Number(p.height, "mm", 0)},
		{Name: "noon_gap", Value: say.Number(p.gap, "mm", 1).IfAny()},
	}
}
