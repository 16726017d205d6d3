package dial

import (
	"math"
	"time"

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

// What the entry takes.
const (
	argLines   form.Key[string] = "lines"
	argFigures form.Key[string] = "figures"
)

func dialFace() entry.Entry {
	return entry.Entry{
		Name:      "dial-face",
		Summary:   "The face of the dial to print, at true size.",
		Printable: true,
		Arguments: form.Form{entry.OnDate(), dialKind, plateWidth,
			{Key: argLines, Choices: []string{"sun", "clock"}, Default: "sun", Doc: "Lines of sun time, or of the clock with longitude and the date's daylight saving folded in."},
			{Key: argFigures, Choices: []string{"arabic", "roman"}, Default: "arabic", Doc: "Figures of the hours: 1 to 24, or I to XII twice."},
		},
		Settings: dialSettings,
		Facts: []entry.Fact{
			{Name: "face", Doc: "which way the plate stands"},
			{Name: "style_angle", Unit: "deg", Doc: "angle between the style and the plate"},
			{Name: "plate_width", Unit: "mm", Doc: "width of the plate"},
			{Name: "plate_height", Unit: "mm", Doc: "height of the plate"},
			{Name: "noon_gap", Unit: "mm", Doc: "distance between the two noon lines, for the gnomon's thickness; zero for thin card"},
			{Name: "first_line", Doc: "the earliest hour on the face"},
			{Name: "last_line", Doc: "the latest hour on the face"},
			{Name: "folded_in", Unit: "s", Doc: "what the lines of the clock have folded in; zero for lines of sun time"},
			entry.Truth("polar", "whether it is a polar dial, as within 15° of the equator"),
			entry.Truth("level", "whether it is a level dial"),
			{Name: "style_height", Unit: "mm", Doc: "how high the style of a polar dial is above the plate"},
			{Name: "tilt", Unit: "deg", Doc: "slope of the plate: zero lying, 90° upright; the latitude for a polar dial"},
			entry.Truth("tilted", "whether the plate slopes by a degree or more"),
			{Name: "upper_edge", Doc: "where the upper edge of a polar dial's plate points"},
			{Name: "lift", Unit: "mm", Doc: "how much higher the upper edge of a polar dial's plate is than its lower edge"},
		},
		Sources:  []string{sourceDial, sourcePolar, entry.SourceWMM, entry.SourceIANA},
		Cautions: []string{entry.CareScissors},
		OnPaper:  []string{entry.CareSun},
		Reckon:   reckonDialFace,
	}
}

func reckonDialFace(v form.Values) (result.Result, error) {
	p, face := school.Place(v), kindOfDial(v)
	if face == dial.Polar {
		return reckonPolarFace(v)
	}
	gnomon, err := dial.GnomonOfStyle(face.Latitude(p.Latitude), quantity.Millimetres(school.StockStyleMM.Of(v)))
	if err != nil {
		return result.Result{}, err
	}
	field, err := compass.At(p.Latitude, p.Longitude, p.Elevation, p.Clock(entry.Date.Of(v), 12, 0))
	if err != nil {
		return result.Result{}, err
	}
	fixed := fixedIn(v)
	r := result.Result{Warnings: unreadable(face, p.Latitude)}
	faces := []dial.Face{face}
	if face == dial.PoleSide {
		faces = append(faces, dial.EquatorSide)
	}
	for i, side := range faces {
		if from, to := side.Hours(p.Latitude); from == to {
			continue // never lit
		}
		drawn, lines, err := drawFace(v, side, gnomon, field.Declination, fixed)
		if err != nil {
			return result.Result{}, err
		}
		r.Sheets = append(r.Sheets, drawing.PaperOf(school.Paper.Of(v)).Sheets(drawn)...)
		if i == 0 {
			r.Facts = append([]result.Fact{
				{Name: "face", Value: kindName(face, p.Latitude)},
				{Name: "style_angle", Value: say.Number(gnomon.Angle.Degrees(), "deg", 1)},
				{Name: "first_line", Value: sunTime(lines[0].Clock)},
				{Name: "last_line", Value: sunTime(lastOf(lines).Clock)},
				{Name: "folded_in", Value: entry.Signed(say.Seconds(fixed)).IfAny()},
			}, plateFacts(layOut(side, p.Latitude, argWidthMM.Of(v), gnomon, school.StockGnomonMM.Of(v)))...)
			r.Facts = append(r.Facts, setUpFacts(v, face, drawn.Height)...)
		}
	}
	r.Notes = []say.Phrase{say.Line("dial-face.note"), say.Line(faceAdvice(face, p.Latitude))}
	return r, nil
}

// lastOf is the last line of a face; where the dial reads round the clock, the line of
// 24 h is that of 0 h again.
func lastOf(lines []dial.ClockLine) dial.ClockLine {
	last := len(lines) - 1
	if last > 0 && lines[last].SunTime-lines[0].SunTime == 24*time.Hour {
		last--
	}
	return lines[last]
}

// fixedIn is what the lines have folded in.
func fixedIn(v form.Values) time.Duration {
	if argLines.Of(v) == "clock" {
		return dial.CorrectionOn(school.Place(v), entry.Date.Of(v)).Fixed()
	}
	return 0
}

func faceAdvice(f dial.Face, latitude quantity.Angle) string {
	if f > dial.Wall && entry.Tropical(latitude) {
		return "dial-face.set_equatorial_tropics"
	}
	return [...]string{"dial-face.lay_level", "dial-face.hang_wall", "dial-face.set_equatorial", "dial-face.set_equatorial"}[f]
}

// Kinds of line on a face, from fine to bold; each is left out where its
// neighbours would stand closer than a pencil line or two.
const closest = 1.0 // mm at the band of ticks

func drawFace(v form.Values, face dial.Face, gnomon dial.Gnomon, variation quantity.Angle, fixed time.Duration) (drawing.Drawing, []dial.ClockLine, error) {
	latitude := school.Place(v).Latitude
	p := layOut(face, latitude, argWidthMM.Of(v), gnomon, school.StockGnomonMM.Of(v))
	d := drawing.Drawing{
		Name: "dial-face", Width: p.width, Height: p.height,
		Title:       say.Line("dial-face.title", kindName(face, latitude), entry.Sided(latitude.Degrees(), 1, "compass.north_of", "compass.south_of")),
		Description: say.Line("dial-face.description"),
	}
	p.edges(&d, gnomon)
	from, to := face.Hours(latitude)
	lines, err := dial.ClockLines(face.Latitude(latitude), from, to, time.Hour, fixed)
	if err != nil {
		return d, nil, err
	}
	for _, fine := range []struct {
		role string
		step time.Duration
	}{{"tick", 5 * time.Minute}, {"quarter", 15 * time.Minute}, {"half", 30 * time.Minute}} {
		between, err := dial.ClockLines(face.Latitude(latitude), from, to, fine.step, fixed)
		if err != nil {
			return d, nil, err
		}
		p.fineLines(&d, fine.role, fine.step, between)
	}
	if fixed != 0 || face == dial.PoleSide || face == dial.EquatorSide {
		p.noonLines(&d, "meridian")
	}
	p.hourLines(&d, lines, argFigures.Of(v) == "roman")
	if face == dial.Level {
		p.compassOn(&d, latitude, variation)
	}
	p.foot(&d, v, face, gnomon, fixed)
	return d, lines, nil
}

// fineLines draws the lines between the hours: ticks in the band for the finest,
// and for halves and quarters short lines that end in it.
func (p plate) fineLines(d *drawing.Drawing, role string, step time.Duration, lines []dial.ClockLine) {
	inward := map[string]float64{"tick": 0, "quarter": 6, "half": 14}[role]
	coarser := map[string]time.Duration{"tick": 15 * time.Minute, "quarter": 30 * time.Minute, "half": time.Hour}[role]
	for i, l := range lines {
		if l.Clock%coarser == 0 {
			continue
		}
		beside := lines[max(0, i-1)]
		if i == 0 {
			beside = lines[min(1, len(lines)-1)]
		}
		out := p.lines.exit(p.centre(l.Edge()), p.along(l.Angle))
		if next := p.lines.exit(p.centre(l.Edge()), p.along(beside.Angle)); math.Hypot(out.X-next.X, out.Y-next.Y) < closest {
			continue
		}
		along := p.along(l.Angle)
		end := p.ticks.exit(p.centre(l.Edge()), along)
		d.Line(role, p.on(out, along, -inward), end)
	}
}

// hourLines draws the whole hours from their centre to the rim, with figures.
func (p plate) hourLines(d *drawing.Drawing, lines []dial.ClockLine, roman bool) {
	const clear = 9.0 // mm round the centre, where the lines would run together
	room := 5.0
	if roman {
		room = 8
	}
	figures := p.ticks.inset(-figureBand / 2)
	last := drawing.Point{X: -100}
	for _, l := range lines {
		if l.SunTime == 24*time.Hour && lines[0].SunTime == 0 {
			continue // the line of 0 h again
		}
		if l.HourAngle == 0 {
			p.noonLines(d, "noon")
		} else {
			from, along := p.centre(l.Edge()), p.along(l.Angle)
			d.Line("hour", p.on(from, along, clear), p.ticks.exit(from, along))
		}
		at := figures.exit(p.toe, p.along(l.Angle))
		if math.Hypot(at.X-last.X, at.Y-last.Y) < room && l.HourAngle != 0 {
			continue
		}
		last = at
		d.Label("numeral", drawing.Point{X: at.X, Y: at.Y + 1.8}, drawing.Middle, hourFigure(l.Clock, roman))
	}
}

func hourFigure(clock time.Duration, roman bool) say.Value {
	hour := int(clock / time.Hour)
	if roman {
		return say.Text([...]string{"XII", "I", "II", "III", "IV", "V", "VI", "VII", "VIII", "IX", "X", "XI"}[hour%12])
	}
	return say.HourOnFace(hour)
}

// foot says on the face what it is and what its lines mean.
func (p plate) foot(d *drawing.Drawing, v form.Values, face dial.Face, gnomon dial.Gnomon, fixed time.Duration) {
	latitude := school.Place(v).Latitude
	left, right := figureBand, p.width-figureBand
	y := p.height - footBand + 3.5
	d.Label("strong", drawing.Point{X: left, Y: y}, drawing.Start,
		say.Words("dial-face.where", say.Text(school.Name.Of(v)), entry.Sided(latitude.Degrees(), 2, "compass.north_of", "compass.south_of")))
	d.Label("small", drawing.Point{X: right, Y: y}, drawing.End, say.Words("dial-face.style_at", say.Number(gnomon.Angle.Degrees(), "deg", 1)))
	d.Label("small", drawing.Point{X: left, Y: y + 4.5}, drawing.Start, linesMean(v, fixed))
	d.Label("small", drawing.Point{X: right, Y: y + 4.5}, drawing.End, kindName(face, latitude))
}

// linesMean says whose time the lines show.
func linesMean(v form.Values, fixed time.Duration) say.Value {
	if fixed == 0 {
		return say.Words("dial-face.sun_lines")
	}
	c := dial.CorrectionOn(school.Place(v), entry.Date.Of(v))
	return say.Words("dial-face.clock_lines", entry.Signed(say.Seconds(c.Longitude)), entry.Signed(say.Minutes(c.Saving)))
}
