package rocket

import (
	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/quantity"
)

// What the entry takes.
const argRadiusMM form.Key[float64] = "radius_mm"

func rocketClinometer() entry.Entry {
	return entry.Entry{
		Name:    "rocket-clinometer",
		Summary: "A clinometer to print: with a straw and a weighted string it shows how high something stands, as an angle.",
		Arguments: form.Form{
			{Key: argRadiusMM, Unit: "mm", Min: 60, Max: 150, Default: 120.0, Doc: "Radius of the scale."},
		},
		Settings: form.Keys{school.Paper},
		Facts: []entry.Fact{
			{Name: "radius", Unit: "mm", Doc: "radius of the scale"},
			{Name: "degree", Unit: "mm", Doc: "how far apart two degrees are on the scale"},
			{Name: "string", Unit: "mm", Doc: "length of the string"},
		},
		Sources:   []string{"The string hangs plumb; turning the straw up by an angle turns the scale under the string by the same angle"},
		Printable: true,
		Cautions:  []string{entry.CareScissors, entry.CareSighting},
		Reckon:    reckonRocketClinometer,
	}
}

func reckonRocketClinometer(v form.Values) (result.Result, error) {
	radius := argRadiusMM.Of(v)
	paper := drawing.PaperOf(school.Paper.Of(v))
	return result.Result{
		Facts: []result.Fact{
			{Name: "radius", Value: say.Number(radius, "mm", 0)},
			{Name: "degree", Value: say.Number(radius*quantity.Degrees(1).Radians(), "mm", 1)},
			{Name: "string", Value: say.Number(radius+60, "mm", 0)},
		},
		Sheets: paper.Sheets(clinometer(radius)),
		Notes:  []say.Phrase{say.Line("rocket-clinometer.note")},
		Working: []say.Phrase{
			say.Line("rocket-clinometer.working"),
		},
	}, nil
}

// clinometer has the straw along its upper edge, the eye at the left end, and
// the string's hole on the straw's line. When the straw points up by an angle,
// the plumb string lies that angle nearer to the eye: at 0° it hangs square to the
// straw and at 90° along it.
func clinometer(radius float64) drawing.Drawing {
	const straw, left, right, beyond, edge = 12.0, 14.0, 32.0, 16.0, 0.5 // mm
	pivot := drawing.Point{X: left + radius, Y: straw}
	d := drawing.Drawing{
		Name: "clinometer", Width: left + radius + right, Height: straw + radius + beyond,
		Title:       say.Line("rocket-clinometer.title"),
		Description: say.Line("rocket-clinometer.description", say.Number(radius, "mm", 0)),
	}
	on := func(r float64, a quantity.Angle) drawing.Point {
		return drawing.Point{X: pivot.X - r*a.Sin(), Y: pivot.Y + r*a.Cos()}
	}
	d.Area("cut", drawing.Point{X: edge, Y: edge}, drawing.Point{X: d.Width - edge, Y: edge},
		drawing.Point{X: d.Width - edge, Y: d.Height - edge}, drawing.Point{X: edge, Y: d.Height - edge})
	d.Line("mark straw", drawing.Point{X: 0, Y: straw}, drawing.Point{X: d.Width, Y: straw})
	d.Line("fold", drawing.Point{X: 0, Y: straw - 6}, drawing.Point{X: d.Width, Y: straw - 6})
	d.Label("hint", drawing.Point{X: d.Width / 2, Y: straw - 2}, drawing.Middle, say.Words("rocket-clinometer.straw_label"))
	d.Label("hint", drawing.Point{X: 2, Y: straw - 2}, drawing.Start, say.Words("rocket-clinometer.eye_label"))
	d.Disc("hole", pivot, 0.8)
	d.Label("hint", shifted(pivot, 3, 5), drawing.Start, say.Words("rocket-clinometer.hole_label"))
	var arc []drawing.Point
	for e := -10; e <= 90; e++ {
		a := quantity.Degrees(float64(e))
		arc = append(arc, on(radius, a))
		inner := radius - 4
		switch {
		case e%10 == 0:
			inner = radius - 11
		case e%5 == 0:
			inner = radius - 7
		}
		role := "tick"
		if e%10 == 0 {
			role = "tick ten"
		}
		d.Line(role, on(inner, a), on(radius, a))
		if e%10 == 0 {
			p := shifted(on(radius-16, a), 0, 1.2)
			if e == 90 { // clear of the straw's line
				p.Y = straw + 5
			}
			d.Label("scale", p, drawing.Middle, say.Degrees(a, 0))
		}
	}
	d.Line("rim", arc...)
	d.Line("mark", on(radius-26, quantity.Degrees(30)), on(radius-26, quantity.Degrees(60)))
	for _, e := range []float64{30, 60} {
		d.Line("mark", on(radius-24, quantity.Degrees(e)), on(radius-28, quantity.Degrees(e)))
	}
	d.Turned("hint", on(radius-30, quantity.Degrees(45)), 45, say.Words("rocket-clinometer.best_label"))
	d.Label("hint", drawing.Point{X: d.Width - 3, Y: d.Height - 4}, drawing.End, say.Words("rocket-clinometer.how_label"))
	return d
}
