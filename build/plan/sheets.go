package plan

import (
	"html/template"
	"time"

	"github.com/yuin/goldmark/ast"
	extension "github.com/yuin/goldmark/extension/ast"

	"noonbook/build/source"
	"noonbook/build/typeset"
	"noonbook/compute/classroom"
)

// lessonSheets drafts the pages that belong to a lesson: one for pupils where it asks
// something, a card where it has steps to copy, in the staff edition one for the day, and
// one for the room.
func (p *Plan) lessonSheets(i int) ([]*draft, error) {
	l := p.unit.Lessons[i]
	if l.Number == 0 {
		return nil, nil
	}
	var drafts []*draft
	if asks := p.questions[l]; len(asks) > 0 {
		d, err := p.pupilSheet(i, asks)
		if err != nil {
			return nil, err
		}
		drafts = append(drafts, d)
	}
	if hasCard(l) {
		d, err := p.card(i)
		if err != nil {
			return nil, err
		}
		drafts = append(drafts, d)
	}
	if p.edition == Staff {
		d, err := p.daySheet(i)
		if err != nil {
			return nil, err
		}
		drafts = append(drafts, d)
	}
	room, err := p.room(i)
	if err != nil {
		return nil, err
	}
	return append(drafts, room), nil
}

// sheetsOf returns the links to a lesson's sheets.
func (p *Plan) sheetsOf(d *draft, l *source.Lesson) []typeset.Link {
	var links []typeset.Link
	if l.Number == 0 {
		return nil
	}
	if p.edition == Staff {
		links = append(links, typeset.Link{Title: p.words.Say("day-sheet.name"), File: DayFile(l)})
	}
	if len(p.questions[l]) > 0 {
		links = append(links, typeset.Link{Title: p.words.Say("pupil-sheet.name"), File: PupilFile(l), Note: d.copiesOf(l, classroom.PupilSheet)})
	}
	if hasCard(l) {
		links = append(links, typeset.Link{Title: p.words.Say("card-sheet.name"), File: CardFile(l), Note: d.copiesOf(l, classroom.BuildCard)})
	}
	return links
}

// printsOf returns the links to the printables of a page.
func (p *Plan) printsOf(d *draft, page int) []typeset.Link {
	var links []typeset.Link
	for _, print := range p.prints {
		if print.lesson == page {
			links = append(links, typeset.Link{Title: p.words.Say(print.entry.Name + ".name"), File: print.page, Note: d.copiesOf(p.unit.Lessons[page], print.entry.Name)})
		}
	}
	return links
}

// pageOf returns the first page of a part, nil where there is none.
func (p *Plan) pageOf(part string) *source.Lesson {
	for _, l := range p.unit.Lessons {
		if l.Part() == part && p.shows(l) {
			return l
		}
	}
	return nil
}

// sheets lists the sheets of every lesson on the page that a substitute opens
// first. They are for staff.
func (p *Plan) sheets(d *draft) []typeset.Link {
	if p.edition != Staff {
		return nil
	}
	var links []typeset.Link
	for _, l := range p.taught() {
		link := typeset.Link{Title: l.Title(), File: l.Page, Note: d.mark(when(l.Number - 1)), Day: DayFile(l), Room: RoomFile(l)}
		if len(p.questions[l]) > 0 {
			link.Pupil = PupilFile(l)
		}
		links = append(links, link)
	}
	return links
}

// clockColumn returns, for each row of a table of minutes, the cell with the
// clock time at which it begins.
func (d *draft) clockColumn(l *source.Lesson, table *extension.Table) map[ast.Node]string {
	if table == nil || l.Number == 0 {
		return nil
	}
	minutes, _ := source.Minutes(table, l.Source)
	cells := map[ast.Node]string{}
	for row := table.FirstChild(); row != nil; row = row.NextSibling() {
		if row.Kind() == extension.KindTableHeader {
			cells[row] = `<th scope="col">` + template.HTMLEscapeString(d.plan.words.Say("day-sheet.clock")) + "</th>"
			continue
		}
		inBreak := len(minutes) > 1 && minutes[1] == minutes[0] // what follows begins after the break
		cells[row] = `<td class="clock">` + d.mark(clockAt(l.Number-1, minutes[0], inBreak)) + "</td>"
		minutes = minutes[1:]
	}
	return cells
}

// clockAt is the time by the clock when a lesson has lasted so long, breaks between its
// lesson times not counted. The head of the sheet says which half of the day the lesson is
// in, so the narrow column does not.
func clockAt(lesson int, after time.Duration, inBreak bool) slot {
	return func(dst []byte, s *pressing) []byte {
		h := s.calendar.Held[lesson]
		return typeset.AppendText(dst, s.words.ShortClock(h.Date.UTC().Add(s.term.Clock(s.lessons[lesson], h, after, inBreak))))
	}
}
