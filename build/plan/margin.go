package plan

import (
	"bytes"
	"html/template"
	"slices"
	"strings"
	"time"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/util"

	"noonbook/build/say"
	"noonbook/build/source"
	"noonbook/build/typeset"
)

// A marginal is what the page of a lesson has beside its text, each piece at the node
// that it belongs to. On a narrow screen and on paper the pieces are part of the text.
type marginal struct {
	terms  map[ast.Node][]typeset.Labelled // new words, by the paragraph or item that first uses them
	met    map[ast.Node][]typeset.Link     // words of earlier lessons, by the same
	counts map[*ast.Heading][2]say.Value   // which of the sections for the class it is, and of how many
	papers map[*ast.Heading][]typeset.Link // the papers that have the section
	spans  map[*ast.Heading]span           // when a section begins and ends
	goals  ast.Node                        // the first part, at whose head the goals are, nil for before all
	last   ast.Node                        // the last part, at whose head are the new words that no passage uses
	kit    ast.Node                        // the part at whose head the things to have ready are, or the section before which; nil for before all
}

// A span is what the table of minutes says of a section.
type span struct {
	from, to time.Duration // of the lesson
	open     bool          // nobody says when it ends
}

func (p *Plan) marginOf(l *source.Lesson) *marginal {
	m := &marginal{counts: sectionCounts(l), terms: map[ast.Node][]typeset.Labelled{}, met: map[ast.Node][]typeset.Link{}, papers: p.papersAt(l), spans: p.spans(l), kit: p.kitPlace(l)}
	for n := l.Tree.LastChild(); n != nil; n = n.PreviousSibling() {
		if n.Kind() == source.KindOpening() && !p.hides(n) {
			m.goals = n
			if m.last == nil {
				m.last = n
			}
		}
	}
	passages := slices.DeleteFunc(passages(l), func(here passage) bool { return here.staff && p.edition == Class })
	own := map[string]bool{}
	for _, term := range source.BlockVocabulary.Of(l.Block) {
		word := typeset.Labelled{Label: source.VocabularyTerm.Of(term), Value: source.VocabularyMeaning.Of(term)}
		own[strings.ToLower(word.Label)] = true
		if at := firstUse(passages, word.Label); at != nil {
			m.terms[at] = append(m.terms[at], word)
		}
	}
	passages = slices.DeleteFunc(passages, func(here passage) bool { return here.staff })
	for _, word := range p.explainedBefore(l) {
		if own[strings.ToLower(word.Title)] {
			continue
		}
		own[strings.ToLower(word.Title)] = true // two lessons may explain one word
		if at := firstUse(passages, word.Title); at != nil {
			m.met[at] = append(m.met[at], word)
		}
	}
	if m.last == m.goals { // one part: the words are at its end
		m.last = nil
	}
	return m
}

// papersAt returns the links to the papers that have a section on them, or what it asks, by
// its heading.
func (p *Plan) papersAt(l *source.Lesson) map[*ast.Heading][]typeset.Link {
	links := map[*ast.Heading][]typeset.Link{}
	if l.Number == 0 {
		return links
	}
	add := func(h *ast.Heading, file, key string) {
		link := typeset.Link{Title: p.words.Say(key), File: file}
		if h != nil && !slices.Contains(links[h], link) {
			links[h] = append(links[h], link)
		}
	}
	for _, q := range p.questions[l] {
		add(q.heading, PupilFile(l), "pupil-sheet.name")
	}
	for _, s := range l.Sheet(source.SheetCard) {
		add(s.Heading, CardFile(l), "card-sheet.name")
	}
	if p.edition == Staff {
		for _, s := range slices.Concat(l.Sheet(source.SheetFront), l.Sheet(source.SheetBack)) {
			add(s.Heading, DayFile(l), "day-sheet.name")
		}
	}
	return links
}

// explained reports whether the margin has the word.
func (m *marginal) explained(term string) bool {
	for _, words := range m.terms {
		if slices.ContainsFunc(words, func(w typeset.Labelled) bool { return w.Label == term }) {
			return true
		}
	}
	return false
}

// sectionCounts numbers the sections for the class through, and those of a page that is no
// lesson.
func sectionCounts(l *source.Lesson) map[*ast.Heading][2]say.Value {
	var sections []*ast.Heading
	add := func(n ast.Node) {
		if h, ok := n.(*ast.Heading); ok && h.Level == 2 {
			sections = append(sections, h)
		}
	}
	for n := l.Tree.FirstChild(); n != nil; n = n.NextSibling() {
		if l.Number == 0 {
			add(n)
		}
		if o, ok := n.(*source.Opening); ok && !source.Private(o) {
			for c := n.FirstChild(); c != nil; c = c.NextSibling() {
				add(c)
			}
		}
	}
	counts := map[*ast.Heading][2]say.Value{}
	for i, h := range sections {
		counts[h] = [2]say.Value{say.Count(i + 1), say.Count(len(sections))}
	}
	return counts
}

// kitPlace returns where a page lists its things: on the staff's page at the head of what
// is to be prepared, on the class's before the second section, behind the question with
// which the lesson begins.
func (p *Plan) kitPlace(l *source.Lesson) ast.Node {
	for n := l.Tree.FirstChild(); n != nil; n = n.NextSibling() {
		opening, ok := n.(*source.Opening)
		switch {
		case !ok || p.hides(n):
		case p.edition == Staff && opening.Part == source.Prepare:
			return n
		case p.edition == Class:
			sections := 0
			for c := n.FirstChild(); c != nil; c = c.NextSibling() {
				if c.Kind() == ast.KindHeading {
					sections++
				}
				if sections == 2 {
					return c
				}
			}
			return nil
		}
	}
	return nil
}

// here marks the place of something that the page adds to the lesson until the page is put
// together.
func (d *draft) here(what string) string { return d.plan.token + what }

// cutAt divides what was rendered at such a place; without it all of that comes after.
func cutAt(body []byte, here string) (before, after []byte) {
	before, after, found := bytes.Cut(body, []byte(here))
	if !found {
		return nil, body
	}
	return before, after
}

// spans returns when the sections begin and end that a row of the table of minutes names
// or links to, in an edition that has the table.
func (p *Plan) spans(l *source.Lesson) map[*ast.Heading]span {
	rows, minutes := p.rowsNaming(l)
	spans := map[*ast.Heading]span{}
	if l.Number == 0 {
		return spans
	}
	for h, named := range rows {
		first := named[0]
		s := span{from: minutes[first], open: true}
		if first+1 < len(minutes) {
			s.to = minutes[first+1]
			s.open = s.to == s.from // a break, which takes no minutes of the lesson
		}
		spans[h] = s
	}
	return spans
}

// ofSection writes what stands beside the beginning of a section, if its first words, or
// the cautions with which it begins, end with the node: which of the sections for the class
// it is, when it begins and ends, and the papers that it is on.
func (r *lessonRenderer) ofSection(n ast.Node) string {
	if r.margin == nil || isCaution(n.NextSibling()) {
		return ""
	}
	over := isCaution(n) && endsSection(n)
	for isCaution(n) {
		n = n.PreviousSibling()
	}
	h, ok := n.(*ast.Heading)
	if !ok {
		return ""
	}
	d, l := r.draft, r.draft.plan.unit.Lessons[r.lesson]
	html, papers := "", []string(nil)
	count, counted := r.margin.counts[h]
	counted = counted && (l.Number > 0 || !over)
	which := ""
	if counted {
		which = template.HTMLEscapeString(d.plan.words.Say("page.section_count", count[:]...))
	}
	switch s, ok := r.margin.spans[h]; {
	case ok && counted:
		html = `<p><span class="section-count">` + which + "</span> <span>" + d.mark(s.told(l.Number-1)) + "</span></p>"
	case ok:
		html = "<p><span>" + d.mark(s.told(l.Number-1)) + "</span></p>"
	case counted:
		html = `<p class="section-count">` + which + "</p>"
	}
	for _, paper := range r.margin.papers[h] {
		papers = append(papers, `<a href="`+paper.File+`">`+template.HTMLEscapeString(paper.Title)+"</a>")
	}
	if papers != nil {
		html += `<p class="sheet-link">` + template.HTMLEscapeString(d.plan.words.Say("page.on_paper")) + " " + strings.Join(papers, ", ") + "</p>"
	}
	if html == "" {
		return ""
	}
	return `<aside class="beside">` + html + "</aside>"
}

// endsSection reports whether a node is the last of its section: what stands beside its end
// would be beside the next one.
func endsSection(n ast.Node) bool {
	next := n.NextSibling()
	return next == nil || next.Kind() == ast.KindHeading
}

func isCaution(n ast.Node) bool {
	aside, ok := n.(*source.Aside)
	return ok && aside.Word == source.Caution
}

// told is the mark of the clock times of a section.
func (s span) told(lesson int) slot {
	return func(dst []byte, press *pressing) []byte {
		held := press.calendar.Held[lesson]
		at := func(after time.Duration, inBreak bool) say.Value {
			return say.Clock(held.Date.UTC().Add(press.term.Clock(press.lessons[lesson], held, after, inBreak)))
		}
		if s.open {
			return typeset.AppendText(dst, press.words.Say("page.minutes_from", at(s.from, s.open)))
		}
		return typeset.AppendText(dst, press.words.Say("page.minutes", at(s.from, false), at(s.to, true)))
	}
}

// paragraph and item write what goldmark's own renderer writes, with the words that are
// explained before a paragraph, and behind what an item says.
func (r *lessonRenderer) paragraph(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	return ast.WalkContinue, write(w, entering, r.words(node)+"<p>", "</p>\n")
}

func (r *lessonRenderer) item(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	open := "<li>"
	if first := node.FirstChild(); first != nil && first.Kind() != ast.KindTextBlock {
		open += "\n"
	}
	return ast.WalkContinue, write(w, entering, open, r.words(node)+"</li>\n")
}
