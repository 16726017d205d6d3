package worlds

import (
	"math"
	"time"

	"noonbook/build/drawing"
	"noonbook/build/placeholder/entry"
	"noonbook/build/say"
	"noonbook/compute/world"
)

// Measures of a card in millimetres: two go on a sheet of A4 or Letter.
const (
	worldCardWidth  = 186.0
	worldCardHeight = 119.0
	worldRowHeight  = 5.3
	worldMiddle     = 116.0 // where the right half begins
	cardValues      = 38.0  // where the values of the rows begin
)

// worldSheet draws one or two cards, one above the other, with marks at the ends
// of every cut.
func worldSheet(worlds []world.World, noon time.Time, date say.Value) drawing.Drawing {
	d := drawing.Drawing{
		Name: "worlds", Width: entry.CutMark + worldCardWidth, Height: entry.CutMark + float64(len(worlds))*worldCardHeight,
		Title:       say.Line("world-cards.sheet", worldName(worlds[0]), worldName(worlds[len(worlds)-1])),
		Description: say.Line("world-cards.description"),
	}
	if len(worlds) == 1 {
		d.Title = say.Line("world-cards.sheet_one", worldName(worlds[0]))
	}
	for _, x := range []float64{entry.CutMark, d.Width} {
		d.Line("check", drawing.Point{X: x, Y: 0}, drawing.Point{X: x, Y: entry.CutMark - 1})
	}
	for i := range len(worlds) + 1 {
		y := entry.CutMark + float64(i)*worldCardHeight
		d.Line("check", drawing.Point{X: 0, Y: y}, drawing.Point{X: entry.CutMark - 1, Y: y})
	}
	for i, w := range worlds {
		at := drawing.Point{X: entry.CutMark, Y: entry.CutMark + float64(i)*worldCardHeight}
		d.Area("cut", at, drawing.Point{X: at.X + worldCardWidth, Y: at.Y},
			drawing.Point{X: at.X + worldCardWidth, Y: at.Y + worldCardHeight}, drawing.Point{X: at.X, Y: at.Y + worldCardHeight})
		drawWorld(&d, w, at, noon, date)
	}
	return d
}

func drawWorld(d *drawing.Drawing, w world.World, at drawing.Point, noon time.Time, date say.Value) {
	on := func(x, y float64) drawing.Point { return drawing.Point{X: at.X + x, Y: at.Y + y} }
	d.Label("title", on(6, 13), drawing.Start, worldName(w))
	d.Label("kind", on(6, 19), drawing.Start, worldKind(w))
	y := 27.0
	for _, row := range cardRows(w, noon, date) {
		d.Line("rule", on(6, y+1.6), on(worldMiddle-4, y+1.6))
		d.Label("key", on(6, y), drawing.Start, row[0])
		d.Label("value", on(cardValues, y), drawing.Start, row[1])
		y += worldRowHeight
	}
	d.Label("strong", on(6, y+1.5), drawing.Start, say.Words("world-cards.open_question"))
	d.Paragraph("open-question", on(6, y+6.5), worldMiddle-12, 4.6, worldQuestion(w))
	drawSizes(d, w, on(worldMiddle, 6))
	y = 50.5
	for _, f := range w.Features() {
		latitude, longitude := featureWhere(f)
		d.Label("strong", on(worldMiddle, y), drawing.Start, featureName(f, w))
		d.Label("position", on(worldMiddle, y+4), drawing.Start, cardPlace(f, latitude, longitude))
		d.Paragraph("description", on(worldMiddle, y+8), worldCardWidth-worldMiddle-5, 3.8, say.Words("look."+f.Key))
		y += 20.5
	}
	d.Label("key", on(worldMiddle, worldCardHeight-5.5), drawing.Start, say.Words("world-cards.own_find"))
	d.Line("rule", on(worldMiddle+34, worldCardHeight-5), on(worldCardWidth-6, worldCardHeight-5))
}

// cardPlace says where a feature lies and how wide it is, as far as it is known.
func cardPlace(f world.Feature, latitude, longitude say.Value) say.Value {
	switch {
	case f.Placed && !f.Drifts:
		return say.Words("world-cards.at_place", latitude, longitude, featureSize(f))
	case f.Placed && f.Size > 0:
		return say.Words("world-cards.at_latitude_wide", latitude, featureSize(f))
	case f.Placed:
		return say.Words("world-cards.at_latitude", latitude)
	case f.Size > 0:
		return say.Words("world-cards.ring_wide", featureSize(f))
	}
	return say.Words("world-cards.team_name")
}

// cardRows are the lines of a card: what, and how much.
func cardRows(w world.World, noon time.Time, date say.Value) [][2]say.Value {
	e := earth()
	across := say.Words("world-cards.value_across", worldAcross(w), inEarths(float64(w.Diameter()/e.Diameter())))
	pull := say.Words("world-cards.value_pull", worldPull(w), inEarths(w.Gravity()/e.Gravity()))
	mass := say.Words("world-cards.value_mass", worldMass(w))
	if w.Kind == world.Comet {
		mass, across, pull = worldMass(w), worldAcross(w), worldPull(w)
	}
	if w.Name == "earth" {
		mass = say.Words("world-cards.value_kilograms", sized(w.Mass()/1e24, "", 3))
		across, pull = worldAcross(w), worldPull(w)
	}
	now := standingOf(w, noon)
	far := now.distance
	if now.known {
		far = say.Words("world-cards.value_now", now.distance)
	}
	row := func(key string, v say.Value, with ...say.Value) [2]say.Value {
		return [2]say.Value{say.Words(key, with...), v}
	}
	return [][2]say.Value{
		row("world-cards.row_across", across),
		row("world-cards.row_mass", mass),
		row("world-cards.row_pull", pull),
		row("world-cards.row_density", say.Words("world-cards.value_density", sized(w.Density()/1000, "", 2))),
		row("world-cards.row_noon", worldNoon(w)),
		row("world-cards.row_turn", worldTurn(w)),
		row("world-cards.row_tilt", worldTilt(w)),
		row("world-cards.row_year", worldYear(w)),
		row("world-cards.row_sun", fromSun(w)),
		row("world-cards.row_moons", say.Words("world-cards.value_moons", say.Count(w.Moons), say.Number(float64(world.MoonsAsOf().Year), "", 0))),
		row("world-cards.row_warmth", worldWarmth(w)),
		row("world-cards.row_air", worldAir(w)),
		row("world-cards.row_now", far, date),
		row("world-cards.row_light", now.light),
	}
}

// drawSizes draws the world beside the Earth, or the Earth beside the Moon, to one
// scale, with the world's axis: a dot marks the end from which it is seen to turn
// anticlockwise, and up is square to its way round the Sun.
func drawSizes(d *drawing.Drawing, w world.World, at drawing.Point) {
	const big = 15.0 // radius of the larger one
	other := earth()
	if w.Name == "earth" {
		other, _ = world.Find("moon")
	}
	scale := big / max(w.Radius, other.Radius).Kilometres()
	r, o := w.Radius.Kilometres()*scale, other.Radius.Kilometres()*scale
	own := drawing.Point{X: at.X + 18, Y: at.Y + 18}
	beside := drawing.Point{X: at.X + 52, Y: at.Y + 18}
	if o == big {
		own.X, beside.X = at.X+12, at.X+44
	}
	if r > 0.1 {
		d.Disc("globe", own, r)
	}
	d.Disc("compared-globe", beside, o)
	if r > 2 {
		sin, cos := math.Sincos(w.Tilt.Radians())
		tip := func(k float64) drawing.Point { return drawing.Point{X: own.X + k*sin, Y: own.Y - k*cos} }
		d.Line("axis", tip(-r-2), tip(-r))
		d.Line("axis", tip(r), tip(r+2))
		d.Disc("north", tip(r+2), 0.8)
	}
	foot := at.Y + 38.5
	if r > 0.1 {
		d.Label("key", drawing.Point{X: own.X, Y: foot}, drawing.Middle, worldName(w))
	} else {
		d.Label("key", drawing.Point{X: at.X, Y: foot}, drawing.Start, say.Words("world-cards.too_small"))
	}
	d.Label("key", drawing.Point{X: beside.X, Y: foot}, drawing.Middle, worldName(other))
}
