package plan

import (
	"fmt"
	"html/template"
	"slices"

	"github.com/yuin/goldmark/ast"

	"noonbook/build/say"
	"noonbook/build/source"
	"noonbook/build/typeset"
	"noonbook/compute/classroom"
)

// leastLines is how many lines a pupil gets where the lesson rules none: the
// question may be meant to be talked about, and the sheet is for writing.
const leastLines = 2

// pupilSheet drafts the page on which a pupil writes: the questions of a lesson
// with ruled lines, and its tables with cells to fill in, under the cautions that
// stand before them in the lesson. The staff edition's copy holds the answers in
// place of the lines.
func (p *Plan) pupilSheet(i int, asks []question) (*draft, error) {
	l := p.unit.Lessons[i]
	d := &draft{plan: p, name: PupilFile(l), lesson: i}
	body := []byte(d.careLine(l, i))
	var under *ast.Heading
	told := map[ast.Node]bool{}
	var err error
	for n, q := range asks {
		if q.heading != nil && (n == 0 || q.heading != under) {
			under = q.heading
			if body, err = d.render(body, l, i, manner{gathered: true, shift: 2 - under.Level}, under); err != nil {
				return nil, err
			}
		}
		care, err := d.careFor(l, i, q, told)
		if err != nil {
			return nil, err
		}
		body = append(body, care...)
		one, err := d.question(l, i, q)
		if err != nil {
			return nil, err
		}
		body = append(body, one...)
	}
	return d.of(typeset.PupilSheet{
		Shell:  p.shell(d, l.Title(), source.BlockSummary.Of(l.Block)),
		Lesson: typeset.Link{Title: l.Title(), File: l.Page},
		Copies: d.copiesOf(l, classroom.PupilSheet),
		Body:   template.HTML(body),
	}), nil
}

// careLine is the mark of what the sheet says of the lesson's cautions to whoever carries
// it away.
func (d *draft) careLine(l *source.Lesson, i int) string {
	from := d.carefulOf(l, i)
	return d.mark(func(dst []byte, s *pressing) []byte {
		var cautions []say.Phrase
		for _, b := range from {
			cautions = append(cautions, b.cautions(s)...)
		}
		lines := s.lines(cautions)
		if len(lines) == 0 {
			return dst
		}
		dst = append(dst, `<p class="care-line">`...)
		for i, line := range lines {
			if i > 0 {
				dst = append(dst, ' ')
			}
			dst = typeset.AppendText(dst, s.words.Line(line))
		}
		return append(dst, "</p>"...)
	})
}

// careFor writes the caution blocks before a question that are not told yet, and
// the cautions of the computed blocks.
func (d *draft) careFor(l *source.Lesson, i int, q question, told map[ast.Node]bool) ([]byte, error) {
	var out []byte
	var asks []int
	for _, n := range q.care {
		if told[n] || slices.Contains(q.asked, n) {
			continue
		}
		told[n] = true
		if block, ok := n.(*source.Block); ok {
			asks = append(asks, d.plan.ask(block.Ask, i))
			continue
		}
		var err error
		if out, err = d.render(out, l, i, manner{gathered: true, shift: 1}, n); err != nil {
			return nil, err
		}
	}
	if len(asks) == 0 {
		return out, nil
	}
	return append(out, d.mark(func(dst []byte, s *pressing) []byte { return s.words.AppendCautions(dst, s.untoldOf(asks)) })...), nil
}

// question writes one question with its lines, or a table to fill in.
func (d *draft) question(l *source.Lesson, i int, q question) ([]byte, error) {
	out := []byte(`<section class="question">`)
	nodes := q.asked
	if q.table != nil {
		nodes = []ast.Node{q.table}
	}
	if n := q.number(); n > 0 {
		out = fmt.Appendf(out, `<p class="question-number">%d.</p>`, n)
	}
	if q.answer != nil {
		nodes = append(nodes[:len(nodes):len(nodes)], q.answer)
	}
	out, err := d.render(out, l, i, manner{gathered: true, shift: 1, lines: leastLines}, nodes...)
	return append(out, "</section>"...), err
}
