package plan

import (
	"html/template"
	"slices"

	"github.com/yuin/goldmark/ast"

	"noonbook/build/placeholder/entry"
	"noonbook/build/say"
	"noonbook/build/source"
	"noonbook/build/typeset"
)

// A page prints each caution once, before the first step that needs it: a computed one
// where its block is, unless the page has told it already or a caution block of the
// lesson's own has taken its place. Slots are filled in the order of the page, so each
// finds what stands above it.

// untold returns the cautions that the page has not told yet, and notes that it has.
func (s *pressing) untold(cautions []say.Phrase) []say.Phrase {
	var list []say.Phrase
	for _, c := range cautions {
		if line := s.words.Line(c); !s.told[line] && !s.told[entry.CautionName(c)] {
			s.told[line] = true
			list = append(list, c)
		}
	}
	return list
}

// untoldOf are those of computed blocks.
func (s *pressing) untoldOf(asks []int) []say.Phrase {
	var list []say.Phrase
	for _, n := range asks {
		list = append(list, s.untold(s.results[n].Cautions)...)
	}
	return list
}

// replaced is the mark of a caution block with words of its own: from there on the page
// tells no other caution of its names.
func (d *draft) replaced(n *source.Aside) string {
	return d.mark(func(dst []byte, s *pressing) []byte {
		for _, name := range n.Names {
			s.told[name] = true
		}
		return dst
	})
}

// named is the mark of a caution block without words: it prints what its names say.
func (d *draft) named(n *source.Aside) string {
	return d.mark(func(dst []byte, s *pressing) []byte {
		return s.words.AppendCautions(dst, s.untold(entry.CautionsOf(n.Names...)))
	})
}

// A careful is one thing in a lesson that brings cautions: a computed block, or a caution
// block that names some.
type careful struct {
	ask   int // of the block, where there are no names
	names []string
	own   bool // the block has words of its own for them
}

func (c careful) cautions(s *pressing) []say.Phrase {
	if c.names != nil {
		return entry.CautionsOf(c.names...)
	}
	return s.results[c.ask].Cautions
}

// carefulOf returns what brings cautions in a lesson, as far as the edition shows it.
func (d *draft) carefulOf(l *source.Lesson, i int) []careful {
	var list []careful
	// The walk has no error: none of its steps has.
	_ = ast.Walk(l.Tree, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		switch {
		case d.plan.hides(n): // a caution within is as private as what holds it
			return ast.WalkSkipChildren, nil
		case !entering:
			return ast.WalkContinue, nil
		}
		switch n := n.(type) {
		case *source.Block:
			list = append(list, careful{ask: d.plan.askAgain(n.Ask, i)})
		case *source.Aside:
			if n.Word == source.Caution && n.Names != nil {
				list = append(list, careful{names: n.Names, own: n.FirstChild() != nil})
			}
		}
		return ast.WalkContinue, nil
	})
	return list
}

// A brought caution is one that computed blocks bring, with the lessons that it is for.
type brought struct {
	caution say.Phrase
	line    string
	lessons []*source.Lesson
}

// everyCaution is the mark of each caution that the unit's placeholders bring, once.
func (p *Plan) everyCaution(d *draft) template.HTML {
	var from [][]careful // by lesson
	for i, l := range p.unit.Lessons {
		var brings []careful
		if p.shows(l) {
			brings = d.carefulOf(l, i)
		}
		from = append(from, brings)
	}
	return template.HTML(d.mark(func(dst []byte, s *pressing) []byte {
		for _, b := range p.allBrought(s, from) {
			dst = append(dst, `<section class="caution"><p class="side-label">`...)
			dst = typeset.AppendText(dst, s.words.Say("page.caution"))
			dst = append(dst, `</p><p>`...)
			dst = typeset.AppendText(dst, b.line)
			dst = append(dst, `</p><p><small>`...)
			for i, l := range b.lessons {
				if i > 0 {
					dst = append(dst, ", "...)
				}
				dst = append(dst, `<a href="`...)
				dst = typeset.AppendAttribute(dst, l.Page)
				dst = append(dst, `">`...)
				dst = typeset.AppendText(dst, s.words.Typeset(l.Title()))
				dst = append(dst, `</a>`...)
			}
			dst = append(dst, `</small></p></section>`...)
		}
		return dst
	}))
}

// allBrought joins what the lessons bring, in the order of entry.Cautions.
func (p *Plan) allBrought(s *pressing, from [][]careful) []brought {
	var all []brought
	for i, l := range p.unit.Lessons {
		for _, b := range from[i] {
			if b.own { // they stand under their lesson
				continue
			}
			for _, c := range b.cautions(s) {
				line := s.words.Line(c)
				at := slices.IndexFunc(all, func(b brought) bool { return b.line == line })
				if at < 0 {
					at = len(all)
					all = append(all, brought{caution: c, line: line})
				}
				if !slices.Contains(all[at].lessons, l) {
					all[at].lessons = append(all[at].lessons, l)
				}
			}
		}
	}
	rank := func(b brought) int { return slices.Index(entry.Cautions(), entry.CautionName(b.caution)) }
	slices.SortStableFunc(all, func(a, b brought) int { return rank(a) - rank(b) })
	return all
}

// lines are what a sheet says of cautions that leave the room with it.
func (s *pressing) lines(cautions []say.Phrase) []say.Phrase {
	var list []say.Phrase
	for _, name := range entry.Cautions() {
		key := entry.PaperLine(name)
		if s.words.Has(key) && slices.ContainsFunc(cautions, func(c say.Phrase) bool { return entry.CautionName(c) == name }) {
			list = append(list, say.Line(key))
		}
	}
	return list
}
