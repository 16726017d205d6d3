package plan

import (
	"bytes"

	"github.com/yuin/goldmark/ast"

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

// factBeforeStop returns the mark of a fact at the end of a sentence. Where the fact ends
// with a stop of its own, as 1:20 p.m. does, that one is left out.
func (d *draft) factBeforeStop(n *source.Inline, lesson int) string {
	number := d.plan.ask(n.Ask, lesson)
	return d.mark(func(dst []byte, s *pressing) []byte {
		value, _ := s.results[number].Fact(n.Fact)
		dst = s.words.AppendFact(dst, value)
		if end := bytes.LastIndexByte(dst, '<'); end > 0 && dst[end-1] == '.' { // before the end tag
			dst = append(dst[:end-1], dst[end:]...)
		}
		return dst
	})
}
