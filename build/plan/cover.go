package plan

import (
	"html/template"
	"math"

	"noonbook/build/drawing"
	"noonbook/build/say"
	"noonbook/compute/dial"
	"noonbook/compute/quantity"
	"noonbook/theme"
)

// cover drafts the first page: the lessons as hour lines of the school's dial,
// and as a list.
func (p *Plan) cover() (*draft, error) {
	d := &draft{plan: p, name: "index.html"}
	page := p.shell(d, -1)
	page.Title = d.mark(setting("unit.title"))
	page.Summary = p.words.Say("cover.description")
	page.Lead = d.mark(setting("unit.summary"))
	page.Line = d.mark(termLine)
	page.Here = d.mark(whereLine)
	var lessons []theme.Link
	for _, link := range page.Lessons {
		if link.Number != "" {
			lessons = append(lessons, link)
		}
	}
	page.Dial = template.HTML(d.mark(func(dst []byte, s *school) []byte {
		return s.words.AppendDrawing(dst, coverDial(quantity.Degrees(s.settings.Number("school.latitude")), lessons))
	}))
	return d, d.write("cover", page)
}

func termLine(dst []byte, s *school) []byte {
	first := say.Text(s.words.DayMonth(s.settings.Date("term.first_day").UTC()))
	last := say.Date(s.settings.Date("term.last_day"))
	line := say.Words("cover.term", first, last)
	if class := s.settings.Text("class.name"); class != "" {
		line = say.Words("cover.class_term", say.Text(class), first, last)
	}
	return theme.AppendText(dst, s.words.Text(line))
}

func whereLine(dst []byte, s *school) []byte {
	return theme.AppendText(dst, s.words.Say("cover.here",
		latitude(s.settings.Number("school.latitude")), longitude(s.settings.Number("school.longitude"))))
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

// coverShallow is how flat a style the cover draws: nearer the equator the
// lines would fall together, and the cover is a table of contents first.
var coverShallow = quantity.Degrees(20)

// coverDial draws the half of a dial face from six to eighteen hours with a
// line for each lesson. Seen from the teacher, noon is up; above the equator
// the hours run clockwise, below it the other way.
func coverDial(latitude quantity.Angle, lessons []theme.Link) drawing.Drawing {
	const width, height, radius, inner, margin = 180.0, 106.0, 82.0, 72.0, 10.0
	centre := drawing.Point{X: width / 2, Y: height - 8}
	flat := max(coverShallow, quantity.Angle(math.Abs(latitude.Radians())))
	mirror := 1.0
	if latitude < 0 {
		mirror = -1
	}
	at := func(hourAngle quantity.Angle, r float64) drawing.Point {
		x := dial.LineAt(flat, hourAngle).Angle
		return drawing.Point{X: centre.X + mirror*r*x.Sin(), Y: centre.Y - r*x.Cos()}
	}
	d := drawing.Drawing{Name: "dial", Width: width, Height: height, Ornament: true}
	for _, r := range []float64{radius, inner} {
		var rim []drawing.Point
		for i := range 61 {
			turn := quantity.Degrees(-90 + 3*float64(i))
			rim = append(rim, drawing.Point{X: centre.X + r*turn.Sin(), Y: centre.Y - r*turn.Cos()})
		}
		d.Line("rim", rim...)
	}
	d.Line("rim", drawing.Point{X: centre.X - radius, Y: centre.Y}, drawing.Point{X: centre.X + radius, Y: centre.Y})
	for quarter := range 49 {
		h := quantity.Hours(-6 + float64(quarter)/4)
		length := 2.0
		if quarter%4 == 0 {
			length = 4
		}
		d.Line("tick", at(h, inner), at(h, inner+length))
	}
	for i, lesson := range lessons {
		h := quantity.Hours(-6 + 12*(float64(i)+0.5)/float64(len(lessons)))
		mark := len(d.Shapes)
		d.Line("lesson", at(h, 16), at(h, inner-1))
		number := at(h, radius+margin/2)
		number.Y += 1.6
		d.Label("number", number, drawing.Middle, say.Text(lesson.Number))
		d.Link(mark, lesson.File)
	}
	d.Area("style",
		drawing.Point{X: centre.X - 1, Y: centre.Y}, drawing.Point{X: centre.X, Y: centre.Y - 46}, drawing.Point{X: centre.X + 1, Y: centre.Y})
	return d
}
