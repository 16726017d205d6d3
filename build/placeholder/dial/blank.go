package dial

import (
	"math"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/compass"
	"noonbook/compute/dial"
	"noonbook/compute/quantity"
)

func dialBlank() entry.Entry {
	return entry.Entry{
		Name:      "dial-blank",
		Summary:   "A plate without hours to print, on which the class marks its own by the watch.",
		Printable: true,
		Arguments: form.Form{entry.OnDate(), plateWidth},
		Settings:  dialSettings,
		Facts: []entry.Fact{
			{Name: "style_angle", Unit: "deg", Doc: "angle between the style and the plate"},
			{Name: "plate_width", Unit: "mm", Doc: "width of the plate"},
			{Name: "plate_height", Unit: "mm", Doc: "height of the plate"},
			{Name: "noon_gap", Unit: "mm", Doc: "distance between the two noon lines, for the gnomon's thickness; zero for thin card"},
			{Name: "after_side", Doc: "on which side of the noon line, looking along it from the toe, afternoon marks lie"},
		},
		Sources:  []string{sourceDial, sourcePolar, entry.SourceWMM},
		Cautions: []string{entry.CareScissors, entry.CareSun},
		Reckon:   reckonDialBlank,
	}
}

func reckonDialBlank(v form.Values) (result.Result, error) {
	if builds(v) == dial.Polar {
		return reckonPolarBlank(v)
	}
	at := school.Place(v)
	gnomon, err := dial.GnomonOfStyle(at.Latitude, quantity.Millimetres(school.StockStyleMM.Of(v)))
	if err != nil {
		return result.Result{}, err
	}
	field, err := compass.At(at.Latitude, at.Longitude, at.Elevation, at.Clock(entry.Date.Of(v), 12, 0))
	if err != nil {
		return result.Result{}, err
	}
	p := layOut(dial.Level, at.Latitude, argWidthMM.Of(v), gnomon, school.StockGnomonMM.Of(v))
	d := drawing.Drawing{
		Name: "dial-blank", Width: p.width, Height: p.height,
		Title:       say.Line("dial-blank.title", entry.Sided(at.Latitude.Degrees(), 1, "compass.north_of", "compass.south_of")),
		Description: say.Line("dial-blank.description"),
	}
	p.edges(&d, gnomon)
	p.noonLines(&d, "noon")
	p.degrees(&d)
	p.compassOn(&d, at.Latitude, field.Declination)
	y := p.height - footBand + 3.5
	d.Label("strong", drawing.Point{X: figureBand, Y: y}, drawing.Start, say.Words("dial-face.where", say.Text(school.Name.Of(v)), entry.Sided(at.Latitude.Degrees(), 2, "compass.north_of", "compass.south_of")))
	d.Label("small", drawing.Point{X: p.width - figureBand, Y: y}, drawing.End, say.Words("dial-face.style_at", say.Number(gnomon.Angle.Degrees(), "deg", 1)))
	d.Label("small", drawing.Point{X: figureBand, Y: y + 6}, drawing.Start, say.Words("dial-blank.fill_in"))
	side := say.Words("dial-blank.right")
	if !p.clockwise {
		side = say.Words("dial-blank.left")
	}
	return result.Result{
		Facts:  append([]result.Fact{{Name: "style_angle", Value: say.Number(gnomon.Angle.Degrees(), "deg", 1)}, {Name: "after_side", Value: side}}, plateFacts(p)...),
		Sheets: drawing.PaperOf(school.Paper.Of(v)).Sheets(d),
		Notes:  []say.Phrase{say.Line("dial-blank.note", side)},
	}, nil
}

// degrees draws a scale of angles from the noon line round the rim, so that a
// mark's angle can be read without a protractor.
func (p plate) degrees(d *drawing.Drawing) {
	figures := p.ticks.inset(-figureBand / 2)
	for degree := -180; degree < 180; degree++ {
		line := quantity.Degrees(float64(degree))
		edge := dial.AfternoonEdge
		if degree < 0 {
			edge = dial.MorningEdge
		}
		from, along := p.centre(edge), p.along(line)
		in, out := p.lines.exit(from, along), p.ticks.exit(from, along)
		role := "tick"
		switch {
		case degree%10 == 0:
			role, in = "quarter", p.on(in, along, -3)
			at := figures.exit(p.toe, along)
			d.Label("small", drawing.Point{X: at.X, Y: at.Y + 1}, drawing.Middle, say.Count(int(math.Abs(float64(degree)))))
		case degree%5 == 0:
			role = "quarter"
		}
		d.Line(role, in, out)
	}
}
