package plan

import (
	"html/template"
	"slices"
	"strconv"

	"noonbook/build/placeholder/entry"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/build/source"
	"noonbook/build/typeset"
)

// A printable is a page of sheets at true size, made by one compute block.
type printable struct {
	page   string // file name
	entry  entry.Entry
	ask    int
	lesson int
}

// printLink notes a page of sheets for the block and returns the link to it,
// with a small picture of the first sheet.
func (d *draft) printLink(of entry.Entry, ask, lesson int) string {
	p := d.plan
	name := "print-" + of.Name
	same := 1
	for _, other := range p.prints {
		if other.entry.Name == of.Name {
			same++
		}
	}
	if same > 1 {
		name += "-" + strconv.Itoa(same)
	}
	print := printable{name + ".html", of, ask, lesson}
	p.prints = append(p.prints, print)
	preview := d.mark(func(dst []byte, s *pressing) []byte {
		if sheets := s.results[ask].Sheets; len(sheets) > 0 {
			dst = s.words.AppendSheet(dst, &sheets[0], typeset.SheetHead{})
		}
		return dst
	})
	count := d.mark(func(dst []byte, s *pressing) []byte {
		sheets := s.results[ask].Sheets
		key := "sheet.count"
		if len(sheets) == 1 {
			key = "sheet.count_one"
		}
		dst = typeset.AppendText(dst, s.words.Say(key, say.Count(len(sheets)), paper(s)))
		if told := s.copies(p.unit.Lessons[lesson], of.Name); told != "" {
			dst = typeset.AppendText(append(dst, ", "...), told)
		}
		return dst
	})
	return `<p class="print-link"><a href="` + print.page + `"><span class="preview">` + preview + `</span>` +
		template.HTMLEscapeString(p.words.Say("sheet.print", say.Words(of.Name+".name"))) + `</a> <small>` + count + `</small></p>`
}

// printable drafts the page of sheets.
func (p *Plan) printable(print printable) *draft {
	l := p.unit.Lessons[print.lesson]
	d := &draft{plan: p, name: print.page, lesson: print.lesson}
	title := p.words.Say(print.entry.Name + ".name")
	page := typeset.PrintablePage{
		Shell:  p.shell(d, title, p.words.Say("sheet.about", say.Text(title), say.Text(l.Title()))),
		Lesson: typeset.Link{Title: l.Title(), File: l.Page},
		Copies: d.copiesOf(l, print.entry.Name),
		Body: template.HTML(d.mark(func(dst []byte, s *pressing) []byte {
			r := s.results[print.ask]
			if first := guards(r); len(first.Cautions)+len(first.Warnings) > 0 {
				dst = append(dst, `<div class="before-print">`...) // the paper is for the sheets
				dst = s.words.AppendBlock(dst, print.entry.Name, first, nil)
				dst = append(dst, `</div>`...)
			}
			copies, each := s.toPrint(l, print.entry, p.asks[print.ask].Given, len(r.Sheets))
			return s.words.AppendSheets(dst, r.Sheets, typeset.SheetHead{
				School: school.Name.Of(s.settings),
				Lesson: s.numbered(l),
				Name:   title,
				Copies: copies,
				Each:   each,
				Care:   s.lines(slices.Concat(r.Cautions, entry.CautionsOf(print.entry.OnPaper...))),
			})
		})),
	}
	page.Resource = p.resource(d, page.Shell, l)
	return d.of(page)
}

// numbered names a page with the number of its lesson before it.
func (s *pressing) numbered(l *source.Lesson) string {
	if l.Number == 0 {
		return l.Title()
	}
	return s.words.Say("unit-plan.numbered", say.Count(l.Number), say.Text(l.Title()))
}

// paper names the school's paper as its language does.
func paper(s *pressing) say.Value {
	if school.Paper.Of(s.settings) == "Letter" {
		return say.Words("sheet.letter")
	}
	return say.Words("sheet.a4")
}
