package plan

import (
	"fmt"
	"html/template"
	"slices"
	"time"

	"github.com/yuin/goldmark/ast"

	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/source"
	"noonbook/build/typeset"
)

// RoomFile names the page of a lesson for a projector after its page.
func RoomFile(l *source.Lesson) string { return "room-" + l.Page }

// room drafts the page from which a class follows a lesson on a wall: its views, one
// below the other. A script shows them one at a time; the staff edition's copy holds
// the answers.
func (p *Plan) room(i int) (*draft, error) {
	l := p.unit.Lessons[i]
	d := &draft{plan: p, name: RoomFile(l), lesson: i}
	before := len(p.asks)
	var body []byte
	ends := p.untils(l)
	for _, v := range views(l, p.words.Say("room.worked")) {
		one, err := d.heading(l, i, v.heading, ends)
		if err != nil {
			return nil, err
		}
		body = append(body, one...)
		one, err = d.view(l, i, v)
		if err != nil {
			return nil, err
		}
		body = append(body, one...)
	}
	p.repeats += len(p.asks) - before // the lesson's page has them all
	return d.of(typeset.Room{
		Shell:  p.shell(d, l.Title(), source.BlockSummary.Of(l.Block)),
		Lesson: typeset.Link{Title: l.Title(), File: l.Page},
		Number: fmt.Sprint(l.Number),
		Body:   template.HTML(body),
	}), nil
}

func openView(dst []byte, kind string) []byte {
	return append(append(append(dst, `<div class="view" data-kind="`...), kind...), `">`...)
}

// heading writes what the views after it stand under, and until when they last where the
// lesson's table of minutes says so.
func (d *draft) heading(l *source.Lesson, i int, h *ast.Heading, ends map[*ast.Heading]time.Duration) ([]byte, error) {
	if h == nil {
		return nil, nil
	}
	out, err := d.render(nil, l, i, manner{gathered: true}, h)
	if end, ok := ends[h]; ok {
		out = append(out, `<p class="view-until">`+d.mark(func(dst []byte, s *pressing) []byte {
			held := s.calendar.Held[l.Number-1]
			clock := held.Date.UTC().Add(s.term.Clock(s.lessons[l.Number-1], held, end, true))
			return typeset.AppendText(dst, s.words.Say("room.until", say.Clock(clock)))
		})+"</p>"...)
	}
	return out, err
}

func (d *draft) view(l *source.Lesson, i int, v *view) ([]byte, error) {
	var out []byte
	switch v.kind {
	case viewGuard:
		return append(out, d.roomCautions(v, i)...), nil
	case viewComputed:
		return append(out, d.roomBlock(v.block, i)...), nil
	}
	out = openView(out, v.kind)
	if v.number > 0 {
		out = fmt.Appendf(out, `<p class="view-number">%d</p>`, v.number)
	}
	out = append(out, `<div class="view-body">`...)
	for _, part := range []struct {
		open, close string
		nodes       []ast.Node
	}{{`<div class="view-lead">`, "</div>", v.lead}, {"", "", v.nodes}} {
		if len(part.nodes) == 0 {
			continue
		}
		var err error
		if out, err = d.render(append(out, part.open...), l, i, manner{gathered: true, forClass: true}, part.nodes...); err != nil {
			return nil, err
		}
		out = append(out, part.close...)
	}
	if d.plan.edition == Staff {
		answer, err := d.answerOnWall(l, i, v.answers)
		if err != nil {
			return nil, err
		}
		out = append(out, answer...)
	}
	return append(out, "</div></div>\n"...), nil
}

// answerOnWall writes the short answer, which is the first paragraph of each, with what
// that leads to.
func (d *draft) answerOnWall(l *source.Lesson, i int, answers []*source.Aside) ([]byte, error) {
	var out []byte
	for _, answer := range answers {
		for n := answer.FirstChild(); n != nil; n = n.NextSibling() {
			var err error
			if out, err = d.render(out, l, i, manner{gathered: true, shift: 1}, n); err != nil {
				return nil, err
			}
			if !leads(n, l.Source) {
				break
			}
		}
	}
	if len(out) == 0 {
		return nil, nil
	}
	label := template.HTMLEscapeString(d.plan.words.Say("page.answer"))
	return slices.Concat([]byte(`<section class="answer"><p class="side-label">`+label+"</p>"), out, []byte("</section>")), nil
}

// roomCautions is the mark of a view with the cautions that the page has not told yet,
// or of nothing.
func (d *draft) roomCautions(v *view, lesson int) string {
	type brings struct {
		ask   int
		names []string
	}
	var from []brings
	for _, g := range v.guards {
		if g.block == nil {
			from = append(from, brings{names: g.names})
			continue
		}
		from = append(from, brings{ask: d.plan.ask(g.block.Ask, lesson)})
	}
	return d.mark(func(dst []byte, s *pressing) []byte {
		var cautions []say.Phrase
		for _, b := range from {
			if b.names != nil {
				cautions = append(cautions, s.untold(entry.CautionsOf(b.names...))...)
			} else {
				cautions = append(cautions, s.untold(s.results[b.ask].Cautions)...)
			}
		}
		for _, c := range cautions { // each by itself, so that it is read out
			dst = append(openView(dst, viewCare), `<div class="view-body">`...)
			dst = append(s.words.AppendCautions(dst, []say.Phrase{c}), "</div></div>"...)
		}
		return dst
	})
}

// roomBlock is the mark of the views of a computed block.
func (d *draft) roomBlock(n *source.Block, lesson int) string {
	number, of := d.plan.ask(n.Ask, lesson), n.Entry
	return d.mark(func(dst []byte, s *pressing) []byte {
		r := s.results[number]
		show := func(kind string, one result.Result) {
			one.Metric = r.Metric
			dst = append(openView(dst, kind), `<div class="view-body"><figure class="computed">`...)
			dst = append(s.words.AppendBlock(dst, of.Name, one, nil), "</figure></div></div>"...)
		}
		for _, warning := range r.Warnings {
			show(viewWords, result.Result{Warnings: []say.Phrase{warning}})
		}
		for i := range r.Drawings {
			show(viewComputed, result.Result{Drawings: r.Drawings[i : i+1]})
		}
		for _, table := range r.Tables {
			table.File = "" // a file to open is for a desk
			show(viewTable, result.Result{Tables: []result.Table{table}})
		}
		if of.Printable {
			return dst // the rest is about the sheets, which are for paper
		}
		if len(r.Tables) == 0 && len(r.Drawings) == 0 && len(r.Facts) > 0 {
			show(viewTable, result.Result{Facts: r.Facts})
		}
		for _, note := range r.Notes {
			show(viewWords, result.Result{Notes: []say.Phrase{note}})
		}
		return dst
	})
}
