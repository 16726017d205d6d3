package plan

import (
	"html/template"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/yuin/goldmark/ast"
	extension "github.com/yuin/goldmark/extension/ast"

	"noonbook/build/say"
	"noonbook/build/source"
	"noonbook/build/typeset"
)

// A passage is a paragraph of a lesson, or an item of a list, that what is set apart does
// not hold.
type passage struct {
	at    ast.Node // where its margin is
	text  string   // in small letters
	bold  []string // what of it is bold
	staff bool     // for staff alone
}

func passages(l *source.Lesson) []passage {
	var list []passage
	_ = ast.Walk(l.Tree, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		switch n.Kind() {
		case source.KindAside(), source.KindBlock(), extension.KindTable, ast.KindBlockquote, ast.KindHeading:
			return ast.WalkSkipChildren, nil
		case ast.KindParagraph, ast.KindTextBlock:
		default:
			return ast.WalkContinue, nil
		}
		if !entering {
			return ast.WalkContinue, nil
		}
		found := passage{at: besidePlace(n), text: strings.ToLower(plainQuotes(l.Plain(n))), staff: forStaff(n)}
		for c := n.FirstChild(); c != nil; c = c.NextSibling() {
			if e, ok := c.(*ast.Emphasis); ok && e.Level == 2 {
				found.bold = append(found.bold, strings.ToLower(plainQuotes(l.Plain(e))))
			}
		}
		list = append(list, found)
		return ast.WalkSkipChildren, nil
	})
	return list
}

// firstUse returns where a lesson introduces a term: the first passage that has it in bold,
// else the first that uses it. What the class reads goes before what staff read. It is nil
// where the lesson does not use the term.
func firstUse(passages []passage, term string) ast.Node {
	term = strings.ToLower(plainQuotes(term))
	best, rank := ast.Node(nil), 4
	for _, p := range passages {
		if !uses(p.text, term) {
			continue
		}
		this := 1
		if slices.ContainsFunc(p.bold, func(bold string) bool { return uses(bold, term) }) {
			this = 0
		}
		if p.staff {
			this += 2
		}
		if this < rank {
			best, rank = p.at, this
		}
	}
	return best
}

// uses reports whether a text has a term in it as words of its own, in the singular or the
// plural; both in small letters.
func uses(text, term string) bool {
	for at := 0; term != ""; {
		i := strings.Index(text[at:], term)
		if i < 0 {
			return false
		}
		before, _ := utf8.DecodeLastRuneInString(text[:at+i])
		at += i + len(term)
		rest := text[at:]
		for _, ending := range []string{"", "s", "es", "x"} {
			after, found := strings.CutPrefix(rest, ending)
			if next, _ := utf8.DecodeRuneInString(after); found && !unicode.IsLetter(next) && !unicode.IsLetter(before) {
				return true
			}
		}
	}
	return false
}

// forStaff reports whether a node is in a part for staff.
func forStaff(n ast.Node) bool {
	for ; n != nil; n = n.Parent() {
		if source.Private(n) {
			return true
		}
	}
	return false
}

// besidePlace returns the item of a list of the lesson itself that a paragraph is in, or
// the paragraph.
func besidePlace(n ast.Node) ast.Node {
	for up := n; up != nil; up = up.Parent() {
		if up.Kind() == ast.KindListItem {
			n = up
		}
	}
	return n
}

// words writes the new words of a node, and those that an earlier lesson explains.
func (r *lessonRenderer) words(n ast.Node) string {
	if r.margin == nil {
		return ""
	}
	html := ""
	for _, word := range r.margin.terms[n] {
		html += "<p><dfn>" + template.HTMLEscapeString(word.Label) + "</dfn> " + template.HTMLEscapeString(word.Value) + "</p>"
	}
	for _, word := range r.margin.met[n] {
		html += `<p class="known-word"><a href="` + word.File + `">` + template.HTMLEscapeString(word.Title) + "</a> " + template.HTMLEscapeString(r.draft.plan.words.Say("page.from_lesson", say.Text(word.Number))) + "</p>"
	}
	if html == "" {
		return ""
	}
	if r.margin.terms[n] != nil && r.beforeMark(n) {
		return `<aside class="beside apart">` + html + "</aside>"
	}
	return `<aside class="beside">` + html + "</aside>"
}

// beforeMark reports whether an answer, a caution or a note for staff follows a passage, whose
// mark a meaning in the margin would push away from it.
func (r *lessonRenderer) beforeMark(n ast.Node) bool {
	if n.Kind() == ast.KindListItem {
		n = n.Parent()
	}
	aside, ok := n.NextSibling().(*source.Aside)
	return ok && (aside.Word == source.Caution || r.draft.plan.edition == Staff)
}

// explainedBefore returns the words that lessons before this one explain, with the place in
// the glossary and the number of their lesson; for a page of the class that is no lesson those
// of all. Pages for staff and the page of rules have none: "direction" and "model" are
// everyday words there.
func (p *Plan) explainedBefore(l *source.Lesson) []typeset.Link {
	glossary := p.pageOf(source.PartGlossary)
	ofClass := l.Part() == source.PartLesson || l.Part() == source.PartPage
	if glossary == nil || !ofClass || source.BlockReader.Of(l.Block) == source.Staff {
		return nil
	}
	numbers := map[string]int{} // of lessons by their pages
	for _, other := range p.unit.Lessons {
		if other.Number > 0 && p.shows(other) && (l.Number == 0 || other.Number < l.Number) {
			numbers[other.Page] = other.Number
		}
	}
	var words []typeset.Link
	for _, t := range p.terms {
		if n := numbers[t.File]; n > 0 {
			words = append(words, typeset.Link{Title: t.Term, File: glossary.Page + "#" + t.Anchor, Number: strconv.Itoa(n)})
		}
	}
	return words
}
