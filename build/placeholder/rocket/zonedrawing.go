package rocket

import (
	"math"
	"slices"

	"noonbook/build/drawing"
	"noonbook/build/placeholder/entry"
	"noonbook/build/say"
	"noonbook/compute/quantity"
)

// A plan puts what is on the field on the page. Where the Sun is up, up on the page is
// away from the Sun, so that whoever holds the page has the Sun behind as both
// stations do; a field with an outline, whose directions are known, has north up.
// Without the Sun the stations are left and right, along the wind.
type plan struct {
	launcher drawing.Point
	scale    float64        // mm a metre
	up       quantity.Angle // true bearing of up on the page
}

// at is a place at a distance and a true bearing from the launcher.
func (p plan) at(bearing quantity.Angle, away quantity.Length) drawing.Point {
	sin, cos := (bearing - p.up).Sin(), (bearing - p.up).Cos()
	return drawing.Point{X: p.launcher.X + sin*away.Metres()*p.scale, Y: p.launcher.Y - cos*away.Metres()*p.scale}
}

// drawing shows the field from above; what goes beyond the field is drawn too.
func (z zone) drawing() drawing.Drawing {
	const wide, high, border, foot = 136.0, 106.0, 13.0, 4.0
	around := z.station.Metres() + 3
	low, top := drawing.Point{X: -around, Y: -around}, drawing.Point{X: around, Y: around}
	for _, c := range z.corners {
		low = drawing.Point{X: min(low.X, c.X), Y: min(low.Y, c.Y)}
		top = drawing.Point{X: max(top.X, c.X), Y: max(top.Y, c.Y)}
	}
	p := plan{scale: min(wide/(top.X-low.X), high/(top.Y-low.Y))}
	left := (entry.PictureWidth - p.scale*(top.X-low.X)) / 2
	p.launcher = drawing.Point{X: left - low.X*p.scale, Y: border + top.Y*p.scale}
	if z.sun.up && !z.mapped {
		p.up = z.sun.bearing + quantity.Turn/2
	}
	d := drawing.Drawing{
		Name: "zone", Width: entry.PictureWidth, Height: 2*border + p.scale*(top.Y-low.Y) + foot,
		Title:       say.Line("rocket-zone.drawing", z.clearValue()),
		Description: say.Line("rocket-zone.description_wind", z.reachValue(), z.clearValue(), z.stationValue()),
	}
	if z.sun.up {
		one, two := z.sun.stations()
		d.Description = say.Line("rocket-zone.description", z.reachValue(), z.clearValue(), z.stationValue(), say.Bearing(z.sun.bearing, 0), say.Bearing(one, 0), say.Bearing(two, 0))
	}
	edge := make([]drawing.Point, len(z.corners))
	for i, c := range z.corners {
		edge[i] = drawing.Point{X: p.launcher.X + c.X*p.scale, Y: p.launcher.Y - c.Y*p.scale}
	}
	d.Area("field", edge...)
	d.Disc("clear", p.launcher, z.clear.Metres()*p.scale)
	d.Disc("reach", p.launcher, z.reach.Metres()*p.scale)
	d.Disc("launcher", p.launcher, 1.3)
	d.Offer("name", drawing.Keep, say.Words("rocket-zone.launcher_label"), append([]drawing.Place{
		{At: shifted(p.launcher, 0, 2.6), Anchor: drawing.Middle, Sits: drawing.Hanging},
	}, append(drawing.Beside(p.launcher, 2.4), drawing.Led(p.launcher, 1.6, 5, 8, 12, 16, 22, 30)...)...)...)
	z.people(&d, p)
	onCircle(&d, p, z.clear, say.Words("rocket-zone.clear_label", z.clearValue()))
	onCircle(&d, p, z.reach, say.Words("rocket-zone.reach_label", z.reachValue()))
	if z.mapped {
		tip := drawing.Point{X: 6, Y: border}
		if z.sun.up && p.at(z.sun.bearing, 1).X < p.launcher.X { // away from the Sun
			tip.X = entry.PictureWidth - tip.X
		}
		d.Line("compass", shifted(tip, 0, 9), tip)
		d.Line("compass", shifted(tip, -1.6, 3), tip, shifted(tip, 1.6, 3))
		d.Label("figure", shifted(tip, 0, 13), drawing.Middle, say.Words("rocket-zone.north_label"))
	}
	if z.sun.up {
		z.drawSun(&d, p, drawing.Box{Left: left, Top: border, Right: entry.PictureWidth - left, Bottom: d.Height - border - foot})
		return d
	}
	tip := drawing.Point{X: left + 22, Y: d.Height - 4}
	d.Line("wind", shifted(tip, -22, 0), tip)
	d.Line("wind", shifted(tip, -3, -1.6), tip, shifted(tip, -3, 1.6))
	d.Label("figure", shifted(tip, 3, 1.1), drawing.Start, say.Words("rocket-zone.wind_label"))
	return d
}

// people are both stations, the class and the wardens. With the Sun up nobody who
// faces outward stands on its side: there the class waits, which faces the launcher.
func (z zone) people(d *drawing.Drawing, p plan) {
	one, two, class := p.up-quantity.Turn/4, p.up+quantity.Turn/4, p.up-quantity.Degrees(132)
	wardens := []quantity.Angle{p.up + quantity.Turn/8, p.up + 3*quantity.Turn/8, p.up - quantity.Turn/8}
	if z.sun.up {
		one, two = z.sun.stations()
		class = z.sun.bearing
		wardens = []quantity.Angle{class - quantity.Turn/4, class + quantity.Turn/4, class - 5*quantity.Turn/12, class + 5*quantity.Turn/12}
	}
	beside := func(at drawing.Point, key string) { // outside the circles
		places := drawing.Beside(at, 2.4)
		if at.X < p.launcher.X {
			places[0], places[1] = places[1], places[0]
		}
		led := drawing.Led(at, 1.6, 5, 8, 12, 18, 25)
		if z.sun.up && key == "rocket-zone.class_label" { // outward are the field's edge and the Sun's light
			places = append(places[:2:2], aslant(at, drawing.Led(at, 1.6, 10, 14))...)
		}
		d.Offer("name", drawing.Keep, say.Words(key), append(places, led...)...)
	}
	for i, bearing := range []quantity.Angle{one, two} {
		at := p.at(bearing, z.station)
		d.Disc("station", at, 1.3)
		beside(at, [...]string{"rocket-zone.station_one", "rocket-zone.station_two"}[i])
	}
	outside := max(z.station, z.clear*105/100)
	at := p.at(class, outside)
	d.Disc("class", at, 1.3)
	beside(at, "rocket-zone.class_label")
	for i, bearing := range wardens {
		w := p.at(bearing, outside)
		d.Disc("warden", w, 1)
		if i == 0 {
			beside(w, "rocket-zone.warden_label")
		}
	}
}

// aslant leaves of places with a leader those that are about as far across as up or down.
func aslant(at drawing.Point, places []drawing.Place) []drawing.Place {
	return slices.DeleteFunc(places, func(p drawing.Place) bool {
		end := p.Leader[len(p.Leader)-1]
		across, along := math.Abs(end.X-at.X), math.Abs(end.Y-at.Y)
		return along < 0.8*across || across < 0.5*along
	})
}

// drawSun puts the Sun at the edge of the page, on its true bearing, with its light
// falling toward the launcher.
func (z zone) drawSun(d *drawing.Drawing, p plan, inside drawing.Box) {
	to := p.at(z.sun.bearing, 1)
	x, y := (to.X-p.launcher.X)/p.scale, (to.Y-p.launcher.Y)/p.scale
	far := math.Inf(1) // to the edge of what is drawn
	for _, way := range [][2]float64{{inside.Left - p.launcher.X, x}, {inside.Right - p.launcher.X, x}, {inside.Top - p.launcher.Y, y}, {inside.Bottom - p.launcher.Y, y}} {
		if t := way[0] / way[1]; t > 0 {
			far = min(far, t)
		}
	}
	on := func(t float64) drawing.Point { return shifted(p.launcher, t*x, t*y) }
	d.Disc("sun", on(far+8), 2.6)
	d.Line("beam", on(far+4.5), on(far+0.5))
	label := say.Words("rocket-zone.sun_turn", say.Clock(z.sun.at))
	if z.mapped {
		label = say.Words("rocket-zone.sun_label", say.Clock(z.sun.at))
	}
	places := drawing.Beside(on(far+8), 3.8)
	if math.Abs(x) > math.Abs(y) {
		places = slices.Concat(places[2:], places[:2])
	}
	for _, place := range places[:4] {
		place.Wide = entry.PictureWidth / 2.5
		places = append(places, place)
	}
	d.Offer("figure", drawing.Keep, label, places...)
}

// onCircle names a circle: below its top inside, above it outside, at its foot, or within.
func onCircle(d *drawing.Drawing, p plan, away quantity.Length, text say.Value) {
	top, foot, middle := p.at(p.up, away), p.at(p.up+quantity.Turn/2, away), p.launcher
	places := append(make([]drawing.Place, 0, 512), []drawing.Place{
		{At: shifted(top, 0, 1), Anchor: drawing.Middle, Sits: drawing.Hanging},
		{At: shifted(top, 0, -1), Anchor: drawing.Middle},
		{At: shifted(foot, 0, -1), Anchor: drawing.Middle},
		{At: shifted(foot, 0, 1), Anchor: drawing.Middle, Sits: drawing.Hanging},
	}...)
	for _, share := range []float64{0.75, 0.5, 0.3, -0.75, -0.5, -0.3} {
		places = append(places, drawing.Place{At: shifted(middle, 0, share*(top.Y-middle.Y)), Anchor: drawing.Middle, Sits: drawing.Centred})
	}
	for _, place := range places {
		place.Wide = 30
		places = append(places, place)
	}
	for _, way := range []quantity.Angle{1, -1, 3, -3} {
		led := drawing.Led(p.at(p.up+way*quantity.Turn/8, away), 0.3, 8, 13, 20, 30, 45)
		for i := range led {
			led[i].Wide = 30
		}
		places = append(places, led...)
	}
	d.Offer("figure", drawing.Keep, text, places...)
}

func shifted(p drawing.Point, x, y float64) drawing.Point {
	return drawing.Point{X: p.X + x, Y: p.Y + y}
}
