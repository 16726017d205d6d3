package plan

import (
	"cmp"
	"html/template"
	"slices"
	"strconv"
	"strings"

	"github.com/yuin/goldmark/ast"

	"noonbook/build/concordance"
	"noonbook/build/source"
	"noonbook/build/typeset"
)

// gathered returns the page of a lesson file as the kind of page that its part
// makes it: safety, glossary, sources, reference and start collect something from
// the rest of the unit.
func (p *Plan) gathered(d *draft, l *source.Lesson, page typeset.LessonPage) (any, error) {
	switch l.Part() {
	case source.PartStart:
		return typeset.StartPage{LessonPage: page, Sheets: p.sheets(d)}, nil
	case source.PartSafety:
		cautions, err := p.cautions(d)
		return typeset.SafetyPage{LessonPage: page, Cautions: cautions}, err
	case source.PartGlossary:
		return typeset.GlossaryPage{LessonPage: page, Entries: p.vocabulary()}, nil
	case source.PartSources:
		return typeset.SourcesPage{LessonPage: page, Cited: p.sources()}, nil
	case source.PartReference:
		return typeset.ReferencePage{LessonPage: page, Reference: p.reference()}, nil
	}
	return page, nil
}

// cautions repeats the cautions of each lesson under its name, one with computed
// cautions alone only where they come out.
func (p *Plan) cautions(d *draft) ([]typeset.Gathered, error) {
	var gathered []typeset.Gathered
	for i, l := range p.unit.Lessons {
		if l.Part() == source.PartSafety {
			continue // its own cautions stand on the page
		}
		body, asks, err := d.cautionsOf(l, i)
		if err != nil {
			return nil, err
		}
		computed := func(dst []byte, s *pressing) []byte { return s.words.AppendCautions(dst, s.cautions(asks)) }
		if len(body) == 0 {
			gathered = append(gathered, typeset.Gathered{Body: template.HTML(d.mark(under(l, computed)))})
			continue
		}
		gathered = append(gathered, typeset.Gathered{Title: l.Title(), File: l.Page, Body: template.HTML(string(body) + d.mark(computed))})
	}
	return gathered, nil
}

// cautionsOf returns the caution blocks of a lesson, and its computed blocks, which
// may bring more.
func (d *draft) cautionsOf(l *source.Lesson, i int) (body []byte, asks []int, err error) {
	err = ast.Walk(l.Tree, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		if !entering {
			return ast.WalkContinue, nil
		}
		switch n := n.(type) {
		case *source.Block:
			asks = append(asks, d.plan.askAgain(n.Ask, i))
		case *source.Aside:
			if n.Word == source.Caution {
				one, err := d.render(l, i, n, manner{gathered: true})
				body = append(body, one...)
				return ast.WalkSkipChildren, err
			}
			if d.plan.edition == Class { // one within is as private as what holds it
				return ast.WalkSkipChildren, nil
			}
		}
		return ast.WalkContinue, nil
	})
	return body, asks, err
}

// under is a section of the safety template for a lesson without caution blocks; it
// stands there only where the computed blocks turn out to have cautions.
func under(l *source.Lesson, computed slot) slot {
	return func(dst []byte, s *pressing) []byte {
		cautions := computed(nil, s)
		if len(cautions) == 0 {
			return dst
		}
		dst = append(dst, `<section class="from-lesson"><h2><a href="`...)
		dst = typeset.AppendAttribute(dst, l.Page)
		dst = append(dst, `">`...)
		dst = typeset.AppendText(dst, l.Title())
		dst = append(dst, `</a></h2>`...)
		dst = append(dst, cautions...)
		return append(dst, `</section>`...)
	}
}

func (p *Plan) vocabulary() []typeset.Term {
	var terms []typeset.Term
	for _, l := range p.unit.Lessons {
		for _, t := range source.BlockVocabulary.Of(l.Block) {
			terms = append(terms, typeset.Term{Term: source.VocabularyTerm.Of(t), Meaning: source.VocabularyMeaning.Of(t), Lesson: l.Title(), File: l.Page})
		}
	}
	slices.SortStableFunc(terms, func(a, b typeset.Term) int {
		return cmp.Compare(strings.ToLower(a.Term), strings.ToLower(b.Term))
	})
	for i := range terms { // two lessons may explain one word
		terms[i].Anchor = concordance.TermAnchor + strconv.Itoa(i+1)
	}
	return terms
}

func (p *Plan) sources() []typeset.Cited {
	var list []typeset.Cited
	for _, e := range p.used() {
		list = append(list, typeset.Cited{Title: p.words.Say(e.Name + ".name"), Sources: e.Sources})
	}
	return list
}
