package plan

import (
	"html/template"
	"slices"

	"noonbook/build/drawing"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/build/source"
	"noonbook/build/typeset"
	"noonbook/build/way"
	"noonbook/compute/quantity"
)

// cover drafts the first page: the day, and the lessons as hour lines of the school's
// dial and as a list. It follows the lessons, whose prints it offers.
func (p *Plan) cover() *draft {
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
	rows := way.RowsFor(lessons)
	page.Rows = rows.Class
	if rows.Fill(len(lessons)) {
		page.Rows += " rows-fill"
	}
	dials := func(draw func(quantity.Angle, []typeset.Link) drawing.Drawing) template.HTML {
		return template.HTML(d.mark(func(dst []byte, s *pressing) []byte {
			return s.words.AppendDrawing(dst, draw(quantity.Degrees(school.Latitude.Of(s.settings)), lessons))
		}))
	}
	page.Dial = dials(way.Dial)
	page.Fan = dials(rows.Fan)
	page.Resource = p.resource(d, page.Shell, nil)
	return d.of(page)
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
		say.Latitude(school.Latitude.Of(s.settings)), say.Longitude(school.Longitude.Of(s.settings))))
}
