package strip

import (
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
	planFoot    = 14.0
	planHeading = 10.0
)

// leaders are how far from its peg a name may stand, in millimetres.
var leaders = []float64{3.5, 4.5, 5.5, 6.5, 7.5, 9, 10.5, 12, 14, 16, 18, 21, 24, 28, 32, 37, 43, 50, 60}

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
	for _, peg := range plan.Pegs {
		if peg.Fits {
			orbit(&d, g, plan, peg)
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
		d.Offer("name", drawing.Keep, say.Words("body."+peg.Name), append(drawing.Beside(at, pegRadius+1.2),
			drawing.Led(at, pegRadius, leaders...)...)...)
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
