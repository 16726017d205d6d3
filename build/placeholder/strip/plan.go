package strip

import (
	"math"

	"noonbook/build/drawing"
	"noonbook/build/placeholder/entry"
	"noonbook/build/say"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
	"noonbook/compute/strip"
)

// A ground turns spots of a field into points of a drawing, north up.
type ground struct {
	low, high strip.Spot
	metre     float64 // mm on paper
	top       float64
}

const (
	planWidth   = entry.PictureWidth - 2*pictureMargin
	planHeight  = 170.0
	planLetter  = 1.9 // average width of a letter of a name
	planName    = 3.6 // height of a name
	planFoot    = 14.0
	planHeading = 10.0
)

func groundOf(o strip.Outline) ground {
	low, high := o.Bounds()
	wide, deep := (high.East - low.East).Metres(), (high.North - low.North).Metres()
	return ground{low, high, min(planWidth/wide, planHeight/deep), planHeading}
}

func (g ground) point(s strip.Spot) drawing.Point {
	left := pictureMargin + (planWidth-(g.high.East-g.low.East).Metres()*g.metre)/2
	return drawing.Point{
		X: left + (s.East-g.low.East).Metres()*g.metre,
		Y: g.top + (g.high.North-s.North).Metres()*g.metre,
	}
}

// fieldPicture draws the plan to scale: the field's edge, the way each planet
// goes round at its distance of the day, and the pegs with their names.
func fieldPicture(plan strip.Plan, date place.Date) drawing.Drawing {
	g := groundOf(plan.Outline)
	bottom := g.top + (g.high.North-g.low.North).Metres()*g.metre
	d := drawing.Drawing{
		Name: "strip", Width: entry.PictureWidth, Height: bottom + planFoot,
		Title:       say.Line("strip-field.picture", say.Date(date)),
		Description: say.Line("strip-field.description"),
	}
	var corners []drawing.Point
	for _, s := range plan.Outline {
		corners = append(corners, g.point(s))
	}
	d.Area("paper", corners...)
	sun := g.point(plan.Sun)
	near := plan.Pegs[0].Field.Metres() * g.metre // from the Sun to the nearest planet, on paper
	sunRadius, pegRadius := min(1.8, max(0.5, 0.6*near)), min(1.1, max(0.5, 0.3*near))
	taken := []drawing.Box{around(sun, sunRadius)}
	for _, peg := range plan.Pegs {
		if peg.Fits {
			orbit(&d, g, plan, peg)
			taken = append(taken, around(g.point(peg.Spot), pegRadius+0.3))
		}
	}
	d.Disc("sun", sun, sunRadius)
	for i := len(plan.Pegs) - 1; i >= 0; i-- { // the outer ones have room to spare; the inner ones follow
		peg := plan.Pegs[i]
		if !peg.Fits {
			continue
		}
		at := g.point(peg.Spot)
		d.Disc("body", at, pegRadius)
		taken = append(taken, nameAt(&d, at, say.Words("body."+peg.Name), len(peg.Name), taken, bottom))
	}
	drawScale(&d, g, bottom)
	drawNorth(&d)
	return d
}

// orbit draws the circle of a planet's distance as far as it is on the field.
func orbit(d *drawing.Drawing, g ground, plan strip.Plan, peg strip.Peg) {
	var run []drawing.Point
	for deg := 0; deg <= 360; deg += 3 {
		s := plan.Sun.From(quantity.Degrees(float64(deg)), peg.Field)
		if plan.Outline.Holds(s) {
			run = append(run, g.point(s))
			continue
		}
		if len(run) > 1 {
			d.Line("leader", run...)
		}
		run = nil
	}
	if len(run) > 1 {
		d.Line("leader", run...)
	}
}

func around(p drawing.Point, radius float64) drawing.Box {
	return drawing.Box{Left: p.X - radius, Top: p.Y - radius, Right: p.X + radius, Bottom: p.Y + radius}
}

// nameAt writes a name where it covers nothing, as near to its place as it can
// be on rings of growing size, with a line where it stands away from it.
func nameAt(d *drawing.Drawing, at drawing.Point, name say.Value, letters int, taken []drawing.Box, bottom float64) drawing.Box {
	wide := planLetter*float64(letters) + 1
	last := drawing.Box{}
	for ring := 2.6; ring < 60; ring += 1.3 {
		for step := range 24 {
			sin, cos := math.Sincos(float64(step) * 2 * math.Pi / 24)
			foot := drawing.Point{X: at.X + ring*cos, Y: at.Y + ring*sin}
			b := drawing.Box{Left: foot.X, Top: foot.Y - planName/2, Right: foot.X + wide, Bottom: foot.Y + planName/2}
			if cos < 0 {
				b.Left, b.Right = foot.X-wide, foot.X
			}
			last = b
			if b.Left < 0 || b.Right > entry.PictureWidth || b.Top < 1 || b.Bottom > bottom || meetsAny(b, taken) {
				continue
			}
			if ring > 3 {
				d.Line("leader", at, foot)
			}
			d.Label("name", drawing.Point{X: b.Left + 0.5, Y: foot.Y + 1.2}, drawing.Start, name)
			return b
		}
	}
	d.Label("name", drawing.Point{X: last.Left + 0.5, Y: last.Bottom - 0.6}, drawing.Start, name)
	return last
}

func meetsAny(b drawing.Box, taken []drawing.Box) bool {
	for _, c := range taken {
		if b.Meets(c) {
			return true
		}
	}
	return false
}

// drawScale draws a bar of a round length on the ground.
func drawScale(d *drawing.Drawing, g ground, bottom float64) {
	metres := drawing.Step(60/g.metre, 1)
	for metres*g.metre > 80 {
		metres /= 2
	}
	y := bottom + 6
	from, to := drawing.Point{X: pictureMargin, Y: y}, drawing.Point{X: pictureMargin + metres*g.metre, Y: y}
	d.Line("seam", drawing.Point{X: from.X, Y: y - 1.5}, from, to, drawing.Point{X: to.X, Y: y - 1.5})
	d.Label("figure", drawing.Point{X: to.X + 2, Y: y + 1}, drawing.Start, say.Number(metres, "m", roundDecimals(metres)))
}

// drawNorth draws an arrow to true north.
func drawNorth(d *drawing.Drawing) {
	x := entry.PictureWidth - pictureMargin
	d.Line("seam", drawing.Point{X: x - 1, Y: 4.5}, drawing.Point{X: x, Y: 2}, drawing.Point{X: x + 1, Y: 4.5})
	d.Line("seam", drawing.Point{X: x, Y: 2}, drawing.Point{X: x, Y: 8.5})
	d.Label("figure", drawing.Point{X: x - 2.5, Y: 6.5}, drawing.End, say.Words("compass.true_north"))
}
