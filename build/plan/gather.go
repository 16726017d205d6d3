package plan

import (
	"cmp"
	"html/template"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/yuin/goldmark/ast"

	"noonbook/build/concordance"
	"noonbook/build/file"
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
		every := p.everyCaution(d)
		own, err := p.ownCautions(d)
		return typeset.SafetyPage{LessonPage: page, Every: every, Own: own}, err
	case source.PartGlossary:
		return typeset.GlossaryPage{LessonPage: page, Letters: letters(p.terms), Entries: p.terms}, nil
	case source.PartSources:
		return typeset.SourcesPage{LessonPage: page, Cited: p.sources()}, nil
	case source.PartReference:
		return typeset.ReferencePage{LessonPage: page, Reference: p.reference()}, nil
	}
	return page, nil
}

// ownCautions repeats the caution blocks that have words of their own, each lesson's
// under its name.
func (p *Plan) ownCautions(d *draft) ([]typeset.Gathered, error) {
	var gathered []typeset.Gathered
	for i, l := range p.unit.Lessons {
		if l.Part() == source.PartSafety || !p.shows(l) {
			continue // its own cautions stand on the page
		}
		body, err := d.ownCautionsOf(l, i)
		if err != nil {
			return nil, err
		}
		if len(body) > 0 {
			gathered = append(gathered, typeset.Gathered{Title: l.Title(), File: l.Page, Body: template.HTML(body)})
		}
	}
	return gathered, nil
}

func (d *draft) ownCautionsOf(l *source.Lesson, i int) (body []byte, err error) {
	err = ast.Walk(l.Tree, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		aside, ok := n.(*source.Aside)
		switch {
		case d.plan.hides(n): // a caution within is as private as what holds it
			return ast.WalkSkipChildren, nil
		case !entering || !ok:
			return ast.WalkContinue, nil
		case aside.Word == source.Caution && aside.FirstChild() != nil:
			body, err = d.render(body, l, i, manner{gathered: true}, n)
			return ast.WalkSkipChildren, err
		}
		return ast.WalkContinue, nil
	})
	return body, err
}

// vocabulary returns the words that the lessons of the edition explain, in their order.
func (p *Plan) vocabulary() []typeset.Term {
	var terms []typeset.Term
	plain := map[string]string{} // letters by term
	for _, l := range p.unit.Lessons {
		if !p.shows(l) {
			continue
		}
		for _, t := range source.BlockVocabulary.Of(l.Block) {
			term := typeset.Term{Term: source.VocabularyTerm.Of(t), Meaning: source.VocabularyMeaning.Of(t), Also: source.VocabularyAlso.Of(t), Lesson: l.Title(), File: l.Page}
			terms, plain[term.Term] = append(terms, term), plainLetters(term.Term)
		}
	}
	slices.SortStableFunc(terms, func(a, b typeset.Term) int {
		return cmp.Compare(plain[a.Term], plain[b.Term])
	})
	last := ""
	for i := range terms { // two lessons may explain one word
		terms[i].Anchor = concordance.TermAnchor + strconv.Itoa(i+1)
		if letter := firstLetter(plain[terms[i].Term]); i == 0 || letter != last {
			terms[i].Letter, last = letter, letter
		}
	}
	markOdd(terms)
	return terms
}

// markOdd marks the last word of each letter that has an odd number of them: in two columns
// nothing is beside it.
func markOdd(terms []typeset.Term) {
	first := 0
	for i := range terms {
		if terms[i].Letter != "" {
			first = i
		}
		last := i+1 == len(terms) || terms[i+1].Letter != ""
		terms[i].Odd = last && (i-first)%2 == 0
	}
}

// letters are the links of the glossary's index: each letter leads to its first term.
func letters(entries []typeset.Term) []typeset.Link {
	var list []typeset.Link
	for _, e := range entries {
		if e.Letter != "" {
			list = append(list, typeset.Link{Title: e.Letter, File: "#" + e.Anchor})
		}
	}
	return list
}

func firstLetter(plain string) string {
	first, _ := utf8.DecodeRuneInString(plain)
	return strings.ToUpper(string(first))
}

// plainLetters writes a word as it is put in order, in lower case and without accents.
func plainLetters(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsMark(r) {
			return -1
		}
		return r
	}, file.Decomposed(strings.ToLower(s)))
}

func (p *Plan) sources() []typeset.Cited {
	var list []typeset.Cited
	for _, e := range p.used() {
		list = append(list, typeset.Cited{Title: p.words.Say(e.Name + ".name"), Sources: e.Sources})
	}
	return list
}
