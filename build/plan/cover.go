package plan

import (
	"html/template"
	"math"
	"slices"

	"noonbook/build/drawing"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/build/source"
	"noonbook/build/typeset"
	"noonbook/compute/dial"
	"noonbook/compute/quantity"
)

// cover drafts the first page: the day, and the lessons as hour lines of the school's
// dial and as a list. It follows the lessons, whose prints it offers.
func (p *Plan) cover() (*draft, error) {
	d := &draft{plan: p, name: "index.html"}
	page := typeset.CoverPage{
		Shell:    p.shell(d, d.mark(setting(school.UnitTitle)), p.words.Say("cover.description")),
		Contents: p.contents(d, -1),
		Lead:     d.mark(setting(school.UnitSummary)),
		Line:     d.mark(termLine),
		Here:     d.mark(whereLine),
	}
	page.Bound, page.Printed = p.bound(d)
	page.Early = true
	if start := p.pageOf(source.PartStart); start != nil {
		page.Start = &typeset.Link{Title: start.Title(), File: start.Page}
	}
	var lessons []typeset.Link
	for i, l := range p.unit.Lessons {
		for _, link := range page.Lessons {
			if link.File == l.Page && link.Number != "" {
				lessons = append(lessons, link)
				page.Days = append(page.Days, p.coverLesson(d, i, link))
			}
		}
	}
	rows := rowsFor(lessons)
	page.Rows = rows.class
	if rows.fill(len(lessons)) {
		page.Rows += " rows-fill"
	}
	dials := func(draw func(quantity.Angle, []typeset.Link) drawing.Drawing) template.HTML {
		return template.HTML(d.mark(func(dst []byte, s *pressing) []byte {
			return s.words.AppendDrawing(dst, draw(quantity.Degrees(school.Latitude.Of(s.settings)), lessons))
		}))
	}
	page.Dial = dials(coverDial)
	page.Fan = dials(rows.fan)
	page.Resource = p.resource(d, page.Shell, nil)
	return d, d.write(page)
}

// coverLesson is a line of the list with what the day of its lesson asks for.
func (p *Plan) coverLesson(d *draft, i int, link typeset.Link) typeset.CoverLesson {
	l := p.unit.Lessons[i]
	line := typeset.CoverLesson{
		Link:    link,
		Weekday: d.mark(weekday(l.Number - 1)),
		Hours:   template.HTML(d.mark(hours(l.Number - 1))),
		Reserve: template.HTML(d.mark(reserve(l.Number - 1))),
	}
	if p.edition == Staff {
		line.Room = RoomFile(l)
		if slices.ContainsFunc(p.openings(l), func(o typeset.Labelled) bool { return o.Value == source.Teach }) {
			line.Teach = l.Page + "#nb-" + source.Teach
		}
	}
	for _, print := range append(p.sheetsOf(d, l), p.printsOf(d, i)...) {
		if print.File != link.Day {
			line.Prints = append(line.Prints, print)
		}
	}
	return line
}

func termLine(dst []byte, s *pressing) []byte {
	first := say.Text(s.words.DayMonth(school.TermFirstDay.Of(s.settings).UTC()))
	last := say.Date(school.TermLastDay.Of(s.settings))
	line := say.Words("cover.term", first, last)
	if class := school.ClassName.Of(s.settings); class != "" {
		line = say.Words("cover.class_term", say.Text(class), first, last)
	}
	return typeset.AppendText(dst, s.words.Text(line))
}

func whereLine(dst []byte, s *pressing) []byte {
	return typeset.AppendText(dst, s.words.Say("cover.here",
		latitude(school.Latitude.Of(s.settings)), longitude(school.Longitude.Of(s.settings))))
}

func latitude(degrees float64) say.Value {
	return sided(degrees, "compass.north_of", "compass.south_of")
}

func longitude(degrees float64) say.Value {
	return sided(degrees, "compass.east_of", "compass.west_of")
}

func sided(degrees float64, positive, negative string) say.Value {
	if degrees < 0 {
		positive = negative
	}
	return say.Number(degrees, "deg", 1).As(positive, say.Number(math.Abs(degrees), "deg", 1))
}

// coverShallow is the flattest style that the cover draws: nearer the equator
// the lines would fall together, and the cover is a table of contents first.
var coverShallow = quantity.Degrees(20)

// The measures of the dial with noon up, in millimetres.
const (
	coverWidth  = 180.0
	coverHeight = 94.0
	coverEdge   = 89.0 // radius of the plate
	coverBand   = 77.0 // where the band of the numbers begins
	coverTrack  = 74.5 // middle of the scale of half hours
	coverSun    = 12.0
)

// A face is the half of the cover's dial from six to eighteen hours. Noon is up;
// above the equator the hours run clockwise, below it the other way.
type face struct {
	latitude quantity.Angle // no flatter than coverShallow
	mirror   float64
}

func faceAt(latitude quantity.Angle) face {
	if latitude < 0 {
		return face{max(coverShallow, -latitude), -1}
	}
	return face{max(coverShallow, latitude), 1}
}

// turned returns the point at a distance from the centre, turned from noon.
func turned(angle quantity.Angle, r float64) drawing.Point {
	return drawing.Point{X: coverWidth/2 + r*angle.Sin(), Y: coverHeight - 2 - r*angle.Cos()}
}

// line returns how far the line of an hour is turned from noon.
func (f face) line(hours float64) quantity.Angle {
	return quantity.Angle(f.mirror) * dial.LineAt(f.latitude, quantity.Hours(hours)).Angle
}

// lesson returns how far a lesson's line is turned from noon. The lessons divide the
// hours from six to eighteen among them; half past a whole number is the middle of one.
func (f face) lesson(at float64, of int) quantity.Angle {
	return f.line(-6 + 12*at/float64(of))
}

// wedge returns the corners of a lesson's part of the dial, which leads to it.
func wedge(f face, i, of int, rim func(quantity.Angle) drawing.Point, centre drawing.Point) []drawing.Point {
	from, to := f.lesson(float64(i), of), f.lesson(float64(i+1), of)
	if i == 0 {
		from = quantity.Angle(f.mirror) * quantity.Degrees(-90)
	}
	if i == of-1 {
		to = quantity.Angle(f.mirror) * quantity.Degrees(90)
	}
	corners := []drawing.Point{centre}
	for step := range 5 {
		corners = append(corners, rim(from+(to-from)*quantity.Angle(float64(step)/4)))
	}
	return corners
}

// bow returns the arc of a circle round the centre, a point for every 3° or
// less: its chords then miss the circle by less than a printer's dot.
func bow(from, to quantity.Angle, r float64) []drawing.Point {
	return bowOf(from, to, func(a quantity.Angle) drawing.Point { return turned(a, r) })
}

func bowOf(from, to quantity.Angle, at func(quantity.Angle) drawing.Point) []drawing.Point {
	steps := math.Ceil(math.Abs((to - from).Degrees()) / 3)
	points := []drawing.Point{at(from)}
	for i := 1.0; i <= steps; i++ {
		points = append(points, at(from+(to-from)*quantity.Angle(i/steps)))
	}
	return points
}

// coverDial draws the school's dial for a narrow page and for paper: noon up, and a
// numbered line for each lesson.
func coverDial(latitude quantity.Angle, lessons []typeset.Link) drawing.Drawing {
	f := faceAt(latitude)
	morning, evening := quantity.Degrees(-90), quantity.Degrees(90)
	d := drawing.Drawing{Name: "dial upright-dial", Width: coverWidth, Height: coverHeight, Ornament: true}
	d.Area("rim", bow(morning, evening, coverEdge)...)
	d.Line("rim", bow(morning, evening, coverBand)...)
	for hour := 0.5; hour < 6; hour++ { // every other half hour, alike before and after noon
		d.Line("half-hours", bow(f.line(-hour-0.5), f.line(-hour), coverTrack)...)
		d.Line("half-hours", bow(f.line(hour), f.line(hour+0.5), coverTrack)...)
	}
	d.Line("rim", bow(morning, evening, 2*coverTrack-coverBand)...)
	for i, lesson := range lessons {
		turn := f.lesson(float64(i)+0.5, len(lessons))
		mark := len(d.Shapes)
		d.Area("touch-area", wedge(f, i, len(lessons), func(a quantity.Angle) drawing.Point { return turned(a, coverEdge) }, turned(0, 0))...)
		d.Area("cast", turned(0, 0), turned(0, 46), turned(turn, coverTrack-4))
		d.Line("lesson", turned(turn, coverSun+8), turned(turn, coverTrack-4))
		number := turned(turn, (coverEdge+coverBand)/2)
		number.Y += 2.1
		d.Label("number", number, drawing.Middle, say.Text(lesson.Number))
		d.Link(mark, lesson.File)
	}
	d.Area("here", bow(morning, evening, coverSun)...)
	d.Area("gnomon", turned(morning, 1.1), turned(0, 46), turned(evening, 1.1))
	return d
}
