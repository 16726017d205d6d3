package plan

import (
	"bytes"
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

// gather writes what a page of the parts safety, glossary, sources and
// reference collects from the rest of the unit.
func (p *Plan) gather(d *draft, l *source.Lesson) ([]byte, error) {
	var out bytes.Buffer
	var err error
	switch l.Part() {
	case source.PartStart:
		err = p.sheets(&out, d)
	case source.PartSafety:
		err = p.cautions(&out, d)
	case source.PartGlossary:
		err = p.templates.ExecuteTemplate(&out, "glossary", p.vocabulary())
	case source.PartSources:
		err = p.templates.ExecuteTemplate(&out, "sources", p.sources())
	case source.PartReference:
		err = p.templates.ExecuteTemplate(&out, "reference", p.reference())
	}
	return out.Bytes(), err
}

// cautions repeats the caution blocks of each lesson under its name.
func (p *Plan) cautions(out *bytes.Buffer, d *draft) error {
	for i, l := range p.unit.Lessons {
		if l.Part() == source.PartSafety {
			continue // its own cautions stand on the page
		}
		var body []byte
		err := ast.Walk(l.Tree, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
			aside, ok := n.(*source.Aside)
			if !ok || !entering {
				return ast.WalkContinue, nil
			}
			if aside.Word != source.Caution { // one within is as private as what holds it
				if p.edition == Class {
					return ast.WalkSkipChildren, nil
				}
				return ast.WalkContinue, nil
			}
			one, err := d.render(l, i, n, manner{gathered: true})
			body = append(body, one...)
			return ast.WalkSkipChildren, err
		})
		if err != nil {
			return err
		}
		if len(body) == 0 {
			continue
		}
		link := typeset.Page{Title: l.Title(), File: l.Page, Body: template.HTML(body)}
		if err := p.templates.ExecuteTemplate(out, "cautions", link); err != nil {
			return err
		}
	}
	return nil
}

// A term is a word of the glossary.
type term struct {
	Term, Meaning string
	Lesson, File  string
	Anchor        string
}

func (p *Plan) vocabulary() []term {
	var terms []term
	for _, l := range p.unit.Lessons {
		for _, t := range source.BlockVocabulary.Of(l.Block) {
			terms = append(terms, term{source.VocabularyTerm.Of(t), source.VocabularyMeaning.Of(t), l.Title(), l.Page, ""})
		}
	}
	slices.SortStableFunc(terms, func(a, b term) int {
		return cmp.Compare(strings.ToLower(a.Term), strings.ToLower(b.Term))
	})
	for i := range terms { // two lessons may explain one word
		terms[i].Anchor = concordance.TermAnchor + strconv.Itoa(i+1)
	}
	return terms
}

// A cited is a placeholder with what its numbers rest on.
type cited struct {
	Title   string
	Sources []string
}

func (p *Plan) sources() []cited {
	var list []cited
	for _, e := range p.used() {
		list = append(list, cited{p.words.Say(e.Name + ".name"), e.Sources})
	}
	return list
}
