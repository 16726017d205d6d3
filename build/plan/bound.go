package plan

import (
	"strconv"
	"strings"

	"noonbook/build/source"
	"noonbook/build/typeset"
)

// bound lists what the handbook in one file holds, in its order, for the page of contents of
// its print: the pages with the sheets that follow them, and then the printables. No browser
// that we know numbers pages in a list, so that each is found by the head of its sheets.
func (p *Plan) bound(d *draft) (pages []typeset.BoundPage, printed []typeset.Link) {
	for _, l := range p.unit.Lessons {
		if !p.shows(l) {
			continue
		}
		page := typeset.BoundPage{Link: typeset.Link{Title: l.Title()}}
		if l.Part() == source.PartLesson && l.Number > 0 {
			page.Number = strconv.Itoa(l.Number)
			page.Note = d.mark(lessonDate(l.Number - 1))
			var sheets []string
			for _, sheet := range []struct {
				there bool
				key   string
			}{{len(p.questions[l]) > 0, "pupil-sheet.name"}, {hasCard(l), "card-sheet.name"}, {p.edition == Staff, "day-sheet.name"}} {
				if sheet.there {
					sheets = append(sheets, p.words.Say(sheet.key))
				}
			}
			page.Sheets = strings.Join(sheets, " · ")
		}
		pages = append(pages, page)
	}
	for _, print := range p.prints {
		printed = append(printed, typeset.Link{Title: p.words.Say(print.entry.Name + ".name"), Note: p.unit.Lessons[print.lesson].Title()})
	}
	return pages, printed
}
