package optics

import (
	"math"

	"noonbook/build/drawing"
	"noonbook/build/say"
	"noonbook/compute/lens"
	"noonbook/compute/quantity"
)

// A raysFrame is how much of the axis the drawing of rays shows, and how it is
// stretched.
type raysFrame struct {
	before, behind quantity.Length // of the front lens and of the eye lens
	eye            quantity.Length // from the eye lens to the eye
	stretch        float64
}

// frameOf shows an eighth of the telescope before it and the eye behind it. Where
// the stretch is left open, zero, a long thin telescope is stretched across, by a
// whole number, so that rays can be told apart.
func frameOf(t lens.Telescope, separation quantity.Length, stretch int) raysFrame {
	f := raysFrame{before: separation / 8, eye: separation / 3, stretch: float64(stretch)}
	if relief, ok := t.EyeRelief(separation); ok {
		f.eye = min(relief, f.eye)
	}
	f.behind = f.eye + separation/12
	const wanted = 18.0 // mm on the drawing across the wider lens
	if across := max(t.Front.Diameter, t.Eye.Diameter); stretch == 0 {
		f.stretch = min(6, math.Ceil(wanted/(float64(across)*f.scale(separation))))
	}
	return f
}

func (f raysFrame) scale(separation quantity.Length) float64 {
	return (opticsWidth - 2*opticsMargin) / float64(f.before+separation+f.behind)
}

func rayNote(f raysFrame) say.Phrase {
	if f.stretch > 1 {
		return say.Line("lens-rays.stretched", say.Number(f.stretch, "", 0))
	}
	return say.Line("lens-rays.to_scale")
}

// rayDrawing draws two beams from far things, or from a point on the axis and one
// beside it, through both lenses: one that comes straight, one from above.
func rayDrawing(c chosen, object, separation quantity.Length, f raysFrame) drawing.Drawing {
	d := drawing.Drawing{
		Name: "rays", Width: opticsWidth,
		Title:       say.Line("lens-rays.drawing", opticalLength(c.Front.Focal, 0), opticalLength(c.Eye.Focal, 0)),
		Description: say.Line("lens-rays.drawing_says"),
	}
	half := float64(max(c.Front.Diameter, c.Eye.Diameter)) / 2 * f.scale(separation) * f.stretch
	k := canvas{Drawing: &d, left: opticsMargin + float64(f.before)*f.scale(separation), axis: half + 9, scale: f.scale(separation), stretch: f.stretch}
	d.Line("axis", k.at(-f.before, 0), k.at(separation+f.behind, 0))
	tilt := 0.45 * (lens.View{Telescope: c.Telescope, Pupil: lens.DayPupil}).Field().Tan() / 2
	for _, beam := range []struct {
		role string
		tilt float64
	}{{"straight", 0}, {"slanting", tilt}} {
		for _, share := range []quantity.Length{0.8, 0, -0.8} {
			at := share * c.Front.Diameter / 2
			r := lens.Ray{Height: at, Slope: -beam.tilt}
			if object < lens.Infinity {
				r = lens.From(object, quantity.Length(beam.tilt)*object, at)
			}
			k.ray(beam.role, c.Telescope, c.Trace(separation, r), f, separation)
		}
	}
	k.lens(0, c.Front.Diameter)
	k.lens(separation, c.Eye.Diameter)
	image, _ := c.Front.Image(object)
	tip := k.at(image, -quantity.Length(tilt)*image)
	d.Line("image", k.at(image, 0), tip)
	d.Line("image", drawing.Point{X: tip.X - 1, Y: tip.Y - 1.6}, tip, drawing.Point{X: tip.X + 1, Y: tip.Y - 1.6})
	eye := k.at(separation+f.eye, 0)
	d.Disc("eye", eye, 1.6)
	top := 4.0
	d.Label("name", drawing.Point{X: k.at(0, 0).X, Y: top}, drawing.Middle, say.Words("lens-rays.front_lens"))
	d.Label("name", drawing.Point{X: k.at(separation, 0).X, Y: top}, drawing.Middle, say.Words("lens-rays.eye_lens"))
	beside := max(eye.X, k.at(separation, 0).X+13)
	d.Label("name", drawing.Point{X: beside, Y: top}, drawing.Middle, say.Words("lens-rays.eye_here"))
	d.Line("dimension", drawing.Point{X: beside, Y: top + 1.2}, drawing.Point{X: eye.X, Y: eye.Y - 1.6})
	low := k.axis + half + 3
	k.dimension(0, image, low+dimensionRow, opticalLength(image, 0))
	k.dimension(image, separation, low+dimensionRow, opticalLength(separation-image, 0))
	d.Label("name", drawing.Point{X: tip.X - 1.5, Y: low}, drawing.End, say.Words("lens-rays.picture"))
	d.Height = low + dimensionRow + 3
	return d
}

// ray draws one path. One that misses the eye lens ends there, or where it leaves
// the drawing.
func (k canvas) ray(role string, t lens.Telescope, p lens.Path, f raysFrame, separation quantity.Length) {
	points := []drawing.Point{k.at(-f.before, p.Front.Onward(-f.before).Height), k.at(0, p.Front.Height)}
	if t.Passes(p) {
		k.Line(role, append(points, k.at(separation, p.Eye.Height), k.at(separation+f.behind, p.Eye.Onward(f.behind).Height))...)
		return
	}
	end, edge := separation, 0.6*max(t.Front.Diameter, t.Eye.Diameter)
	if beyond := quantity.Length(math.Abs(float64(p.Eye.Height))); beyond > edge {
		side := quantity.Length(math.Copysign(float64(edge), float64(p.Eye.Height)))
		end = (side - p.Within.Height) / quantity.Length(p.Within.Slope)
	}
	k.Line(role, append(points, k.at(end, p.Within.Onward(end).Height))...)
}
