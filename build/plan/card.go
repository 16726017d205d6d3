package plan

import (
	"html/template"

	"github.com/yuin/goldmark/ast"

	"noonbook/build/source"
	"noonbook/build/typeset"
	"noonbook/compute/classroom"
)

// card drafts the steps of a lesson on a paper of their own, to copy for the groups, with
// their drawings and under the lesson's lines of care.
func (p *Plan) card(i int) (*draft, error) {
	l := p.unit.Lessons[i]
	d := &draft{plan: p, name: CardFile(l), lesson: i}
	body := []byte(d.careLine(l, i))
	for _, section := range l.Sheet(source.SheetCard) {
		m := manner{gathered: true, shift: 2 - section.Heading.Level, forClass: true}
		var err error
		if body, err = d.render(body, l, i, m, append([]ast.Node{section.Heading}, section.Body...)...); err != nil {
			return nil, err
		}
	}
	return d.of(typeset.CardSheet{
		Shell:  p.shell(d, l.Title(), source.BlockSummary.Of(l.Block)),
		Lesson: typeset.Link{Title: l.Title(), File: l.Page},
		Copies: d.copiesOf(l, classroom.BuildCard),
		Body:   template.HTML(body),
	}), nil
}

// hasCard reports whether a lesson has steps to copy.
func hasCard(l *source.Lesson) bool { return len(l.Sheet(source.SheetCard)) > 0 }
