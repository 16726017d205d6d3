package stars

import (
	"math"
	"slices"
	"time"

	"noonbook/build/drawing"
	"noonbook/build/placeholder/entry"
	"noonbook/build/say"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
	"noonbook/compute/sky"
)

// Measures of the wheel in millimetres. Both papers leave 190 mm between their
// margins.
const (
	discRadius = 93.5
	maskRadius = 82.5
	mapRadius  = 66.0 // the rim of the star map, and the farthest that the window reaches
	wheelEdge  = 0.5  // of the sheet, so that it does not halve the line to cut
	padRadius  = 4.5  // round the pin
	armWidth   = 5.0  // from the pad to the rim, along the meridian below the pole
)

// wheelParts draws the disc and the mask of one face. Both have their centre at the
// same point of the sheet.
type wheelParts struct {
	wheel  sky.Wheel
	check  upStar
	place  place.Place
	date   place.Date // whose year the wheel is for, and whose evening tries it
	limit  float64
	school string
	paper  drawing.Paper
}

func (w wheelParts) centre() drawing.Point {
	width, _ := w.paper.Area()
	return drawing.Point{X: width / 2, Y: discRadius + wheelEdge}
}

// on returns the point at an angle clockwise from down and a distance in mm.
func (w wheelParts) on(turn quantity.Angle, mm float64) drawing.Point {
	c := w.centre()
	return drawing.Point{X: c.X - mm*turn.Sin(), Y: c.Y + mm*turn.Cos()}
}

// blank is a sheet with a title for screen readers.
func (w wheelParts) blank(title string) drawing.Drawing {
	width, height := w.paper.Area()
	return drawing.Drawing{Name: "sky-wheel", Width: width, Height: height, Rim: labelRim,
		Title:       say.Line(title, w.faceWord()),
		Description: say.Line("sky-wheel.description"),
	}
}

func (w wheelParts) faceWord() say.Value {
	return say.Words(w.way("sky-wheel.northern", "sky-wheel.southern"))
}

// around writes a label along a circle, its head outward.
func (w wheelParts) around(d *drawing.Drawing, role string, turn quantity.Angle, mm float64, text say.Value) {
	d.Turned(role, w.on(turn, mm), (turn.Degrees()+180)-360*math.Floor((turn.Degrees()+360)/360), text)
}

// arc draws a circle's part, clockwise from one angle over an extent, in chords of
// 1° at most: 0.01 mm inside the circle.
func (w wheelParts) arc(d *drawing.Drawing, role string, from, extent quantity.Angle, mm float64) {
	steps := max(2, int(math.Ceil(math.Abs(extent.Degrees()))))
	var points []drawing.Point
	for i := range steps + 1 {
		points = append(points, w.on(from+extent*quantity.Angle(i)/quantity.Angle(steps), mm))
	}
	d.Line(role, points...)
}

// disc is the part that lies below: stars, and dates on the rim.
func (w wheelParts) disc() drawing.Drawing {
	d := w.blank("sky-wheel.disc_title")
	d.Disc("cut disc", w.centre(), discRadius)
	w.dates(&d)
	w.saving(&d)
	w.starMap(&d)
	w.pin(&d)
	w.steps(&d, say.Words("sky-wheel.step_print"), say.Words("sky-wheel.step_cut"), say.Words("sky-wheel.step_window"), say.Words("sky-wheel.step_pin"))
	return d
}

// dates draws a tick for each day where the mask ends, longer ones each fifth and
// tenth day, and the months.
func (w wheelParts) dates(d *drawing.Drawing) {
	days := w.wheel.Year()
	for _, day := range days {
		turn := w.wheel.Date(day)
		role, long := "tick day", 1.6
		switch {
		case day.Day == 1:
			role, long = "month", discRadius-maskRadius
		case day.Day == 10 || day.Day == 20:
			role, long = "tick ten", 2.5
			w.around(d, "small", turn, maskRadius+2.8, say.Count(day.Day)) // clear of the months
		case day.Day%5 == 0 && day.Day != 30:
			role, long = "tick five", 2.1
		}
		d.Line(role, w.on(turn, maskRadius), w.on(turn, maskRadius+long))
		if day.Day == 15 {
			w.around(d, "month-name", turn, discRadius-5.2, say.Words(entry.MonthKey(day.Month)))
		}
	}
	w.arc(d, "rim", 0, quantity.Turn, maskRadius)
}

// saving marks the dates of daylight time by a band at the edge.
func (w wheelParts) saving(d *drawing.Drawing) {
	for _, span := range w.wheel.Clocks().Spans {
		from := w.wheel.Date(span.From)
		extent := w.wheel.Date(span.To) - from
		// Dates run against or with the clock's hands with the face; a span never is a
		// whole turn.
		if w.wheel.Face == sky.North {
			extent = extent.Bearing()
		} else {
			extent = -(-extent).Bearing()
		}
		w.arc(d, "daylight-season", from, extent, discRadius-1.1)
	}
}

// starMap draws the stars, their figures, the equator and the road of the planets.
func (w wheelParts) starMap(d *drawing.Drawing) {
	ofDate := sky.At(w.middle())
	spot := func(a sky.Direction) (drawing.Point, bool) {
		s, ok := w.wheel.Disc(a)
		return w.on(s.Turn, mapRadius*s.Radius), ok
	}
	stars := sky.Stars()
	d.Shapes = slices.Grow(d.Shapes, len(stars))
	points, shown := make([]drawing.Point, len(stars)), make([]bool, len(stars)) // by rank
	for i, s := range stars {
		points[i], shown[i] = spot(ofDate(s))
	}
	c := w.centre()
	d.Block(drawing.Box{Left: c.X - padRadius, Top: c.Y - padRadius, Right: c.X + padRadius, Bottom: c.Y + padRadius})
	inside := drawing.Round{Centre: c, Radius: mapRadius - 0.5}
	w.circles(d, spot)
	for _, f := range sky.Figures() {
		for _, path := range f.Paths {
			for i := 1; i < len(path); i++ {
				one, two := path[i-1], path[i]
				if shown[one.Rank] && shown[two.Rank] {
					a, b := shortened(points[one.Rank], points[two.Rank], discSize(one.Magnitude)+0.5, discSize(two.Magnitude)+0.5)
					d.Line("figure-line", a, b)
				}
			}
		}
	}
	for i, s := range stars {
		if shown[i] && (s.Magnitude <= w.limit || sky.InFigure(s)) {
			d.Disc("star", points[i], discSize(s.Magnitude))
		}
	}
	for i, s := range stars {
		if shown[i] && s.Magnitude <= brightLimit && s.Name != "" {
			d.Offer("star-name", starRank, StarWord(s), drawing.Beside(points[i], discSize(s.Magnitude)+nameGap)...)
			d.Within(inside)
		}
	}
	for _, f := range brightFirst() {
		if p, ok := spot(f.Centre()); ok {
			places := drawing.Over(p)
			if brightest(f) <= brightLimit { // it is looked for: a line leads to a name farther off
				places = append(places, drawing.Led(p, 2, 10, 14, 18)...)
			}
			d.Offer("figure-name", figureRank, FigureWord(f), places...)
			d.Within(inside)
		}
	}
}

// labelRim is how far the paper round a name hides what is below, as the style sheets have it.
const labelRim = 0.4

// discSize is a star's radius on the disc, smaller than on the chart, in millimetres.
func discSize(magnitude float64) float64 { return 0.78 * Size(magnitude) }

// middle is the middle of the wheel's year.
func (w wheelParts) middle() time.Time {
	return time.Date(w.date.Year, time.July, 1, 0, 0, 0, 0, time.UTC)
}

func (w wheelParts) circles(d *drawing.Drawing, spot func(sky.Direction) (drawing.Point, bool)) {
	for _, circle := range []struct {
		role   string
		points []sky.Direction
	}{{"ecliptic", sky.Ecliptic(w.middle())}, {"equator", sky.Equator()}} {
		var run []drawing.Point
		for _, a := range circle.points {
			if p, ok := spot(a); ok {
				run = append(run, p)
				continue
			}
			if len(run) > 1 {
				d.Line(circle.role, run...)
			}
			run = nil
		}
		if len(run) > 1 {
			d.Line(circle.role, run...)
		}
	}
}

// pin marks the centre, where a paper fastener goes through both parts.
func (w wheelParts) pin(d *drawing.Drawing) {
	c := w.centre()
	d.Disc("hole", c, 0.6)
	d.Line("mark", drawing.Point{X: c.X - 2.5, Y: c.Y}, drawing.Point{X: c.X + 2.5, Y: c.Y})
	d.Line("mark", drawing.Point{X: c.X, Y: c.Y - 2.5}, drawing.Point{X: c.X, Y: c.Y + 2.5})
}

// steps are lines below the wheel.
func (w wheelParts) steps(d *drawing.Drawing, lines ...say.Value) {
	left, y := w.centre().X-discRadius+2, 2*discRadius+wheelEdge+9
	d.Label("strong", drawing.Point{X: left, Y: y}, drawing.Start, say.Words("sky-wheel.made_for", say.Text(w.school),
		entry.Sided(w.place.Latitude.Degrees(), 1, "compass.north_of", "compass.south_of"), entry.YearValue(w.date.Year), w.faceWord()))
	for i, line := range lines {
		d.Label("hint", drawing.Point{X: left, Y: y + 5.5 + 4.8*float64(i)}, drawing.Start, line)
	}
}
