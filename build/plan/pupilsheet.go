package plan

import (
	"fmt"
	"html/template"

	"github.com/yuin/goldmark/ast"

	"noonbook/build/source"
	"noonbook/build/typeset"
)

// leastLines is how many lines a pupil gets where the lesson rules none: the
// question may be meant to be talked about, and the sheet is for writing.
const leastLines = 2

// pupilSheet drafts the page on which a pupil writes: the questions of a lesson
// with ruled lines, and its tables with cells to fill in. The staff edition's
// copy holds the answers in place of the lines.
func (p *Plan) pupilSheet(i int, asks []question) (*draft, error) {
	l := p.unit.Lessons[i]
	d := &draft{plan: p, name: PupilFile(l), lesson: i}
	var body []byte
	var under *ast.Heading
	for n, q := range asks {
		if q.heading != nil && (n == 0 || q.heading != under) {
			under = q.heading
			one, err := d.render(l, i, under, manner{gathered: true, shift: 2 - under.Level})
			if err != nil {
				return nil, err
			}
			body = append(body, one...)
		}
		one, err := d.question(l, i, q)
		if err != nil {
			return nil, err
		}
		body = append(body, one...)
	}
	return d, d.write(typeset.PupilSheet{
		Shell:  p.shell(d, l.Title(), source.BlockSummary.Of(l.Block)),
		Lesson: typeset.Link{Title: l.Title(), File: l.Page},
		Body:   template.HTML(body),
	})
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
	for _, n := range nodes {
		one, err := d.render(l, i, n, manner{gathered: true, shift: 1, lines: leastLines})
		if err != nil {
			return nil, err
		}
		if n.Kind() == ast.KindTextBlock {
			one = append(append([]byte("<p>"), one...), "</p>"...)
		}
		out = append(out, one...)
	}
	return append(out, "</section>"...), nil
}
