package source

import (
	"slices"
	"strings"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/util"

	"noonbook/compute/classroom"
)

// cares gathers what the lesson says to keep people from harm, in its order: the cautions
// of its placeholders and its own caution blocks, those in answers and staff notes too.
// A caution is there once, and not below a block with words of its own for it.
func (l *Lesson) cares() (list []classroom.Care) {
	told := map[string]bool{}
	say := func(names []string) {
		for _, name := range names {
			if !told[name] {
				told[name] = true
				list = append(list, classroom.Care{Names: []string{name}})
			}
		}
	}
	// The walk has no error: none of its steps has.
	_ = ast.Walk(l.Tree, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		if !entering {
			return ast.WalkContinue, nil
		}
		switch n := n.(type) {
		case *Block:
			say(slices.Concat(n.Entry.Cautions, n.Entry.Sometimes))
		case *Aside:
			switch {
			case n.Word != Caution:
			case n.FirstChild() == nil:
				say(n.Names)
			default:
				own := classroom.Care{Names: n.Names, Words: l.Plain(n)}
				list = append(list, own)
				for _, name := range n.Names {
					told[name] = true
				}
			}
		}
		return ast.WalkContinue, nil
	})
	return list
}

// Plain returns the words of a node on one line, with … where a number of the school is.
func (l *Lesson) Plain(n ast.Node) string {
	var b strings.Builder
	_ = ast.Walk(n, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		switch n := n.(type) {
		case *ast.Text:
			if entering {
				raw := util.ResolveEntityNames(util.ResolveNumericReferences(n.Segment.Value(l.Source)))
				b.Write(util.UnescapePunctuations(raw))
			}
			if !entering && (n.SoftLineBreak() || n.HardLineBreak()) {
				b.WriteByte(' ')
			}
		case *ast.String:
			if entering {
				b.Write(n.Value)
			}
		case *Inline:
			if entering {
				b.WriteString("…")
			}
		default:
			if !entering && n.Type() == ast.TypeBlock {
				b.WriteByte(' ')
			}
		}
		return ast.WalkContinue, nil
	})
	return strings.Join(strings.Fields(b.String()), " ")
}
