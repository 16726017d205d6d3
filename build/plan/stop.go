package plan

import (
	"bytes"

	"github.com/yuin/goldmark/ast"
	extension "github.com/yuin/goldmark/extension/ast"

	"noonbook/build/source"
)

// stopFollows reports whether the next letter of the sentence is a full stop.
func stopFollows(node ast.Node, src []byte) bool {
	for node.NextSibling() == nil {
		if node = node.Parent(); node == nil || node.Type() != ast.TypeInline {
			return false
		}
	}
	text, ok := node.NextSibling().(*ast.Text)
	return ok && bytes.HasPrefix(text.Segment.Value(src), []byte("."))
}

// A factShown is a value that the page being filled has shown in a sentence.
type factShown struct{ entry, fact, text string }

// told returns the mark of one fact in a sentence. Where the fact ends with a stop of its
// own, as 1:20 p.m. does, and the sentence ends there as well, the one stop is left out.
// A fact that says why there is none is noted, except alone in a cell of a table, where it
// reads well.
func (d *draft) told(n *source.Inline, lesson int, stop bool) string {
	number := d.plan.ask(n.Ask, lesson)
	cell := n.Parent().Kind() == extension.KindTableCell && n.Parent().ChildCount() == 1
	return d.mark(func(dst []byte, s *pressing) []byte {
		value, _ := s.results[number].Fact(n.Fact)
		if !cell {
			s.putInto(n, value)
		}
		if written := (factShown{n.Ask.Entry.Name, n.Fact, s.words.Text(value)}); s.shown[written] {
			dst = s.words.AppendFact(dst, value)
		} else {
			s.shown[written] = true
			dst = s.words.AppendFirst(dst, value)
		}
		if end := bytes.LastIndexByte(dst, '<'); stop && end > 0 && dst[end-1] == '.' { // before the end tag
			dst = append(dst[:end-1], dst[end:]...)
		}
		return dst
	})
}
