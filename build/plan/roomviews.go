package plan

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"github.com/yuin/goldmark/ast"
	extension "github.com/yuin/goldmark/extension/ast"

	"noonbook/build/source"
)

// What a view shows, which also decides how large its letters are.
const (
	viewWords    = "words"
	viewStep     = "step"
	viewQuestion = "question"
	viewCare     = "care" // a caution of the lesson's own words
	viewTable    = "table"
	viewPicture  = "picture"
	viewComputed = "computed" // a computed block: a view for each drawing and table
	viewGuard    = "guard"    // cautions by name and of computed blocks, nothing where they are told
)

// A view is what a class looks at together: one step, picture, table or question.
type view struct {
	kind    string
	heading *ast.Heading // written before it, where it is the first below that heading
	number  int          // of the step or the question in its list, 0 for none
	lead    []ast.Node   // short words that lead to it
	nodes   []ast.Node
	block   *source.Block
	guards  []guard
	answers []*source.Aside
}

// A guard brings cautions: a computed block, or a caution block without words.
type guard struct {
	block *source.Block
	names []string
}

// Lengths in bytes as written: words up to the one are read with what stands beside
// them, up to the other they are shown together.
const (
	shortWords = 110
	viewful    = 320
)

// views lays a lesson out for a class that looks at one thing at a time. What is for
// staff is not among it, and answers hang on their questions.
func views(l *source.Lesson, worked string) []*view {
	s := sequence{src: l.Source, worked: plainQuotes(worked)}
	s.guardHere()
	s.lay(l.Tree)
	s.flush()
	var list []*view
	var heading *ast.Heading // of a guard that may turn out to say nothing
	for _, v := range s.views {
		if v.heading == nil {
			v.heading = heading
		}
		heading = nil
		if v.kind == viewGuard && len(v.guards) == 0 {
			heading = v.heading
			continue
		}
		list = append(list, v)
	}
	return list
}

// A sequence is the list of views while it is made.
type sequence struct {
	src     []byte
	worked  string // how the words begin that say whether a step worked
	heading *ast.Heading
	words   []ast.Node // that may lead to what follows
	guard   *view      // where cautions of computed blocks go
	views   []*view
	last    *view   // that an answer or a line more may belong to
	list    []*view // of the list that was laid out last, as long as nothing follows
}

func (s *sequence) add(v *view) *view {
	v.heading, s.heading = s.heading, nil
	s.views = append(s.views, v)
	return v
}

// guardHere notes the place, before what follows, for cautions of computed blocks. In a
// section that is its head, or what comes after its last caution block, whose words may
// take their place: so they stand before every step that needs them.
func (s *sequence) guardHere() { s.guard = s.add(&view{kind: viewGuard}) }

func (s *sequence) lay(parent ast.Node) {
	for n := parent.FirstChild(); n != nil; n = n.NextSibling() {
		switch n := n.(type) {
		case *source.Opening:
			if !source.Private(n) {
				s.section(nil)
				s.lay(n)
			}
		case *ast.Heading:
			s.section(n)
		case *source.Aside:
			s.aside(n)
		case *source.Block:
			s.computed(n)
		case *ast.List:
			s.items(n)
		case *ast.Paragraph:
			s.paragraph(n)
		case *extension.Table:
			s.last = s.add(&view{kind: viewTable, lead: s.leading(), nodes: []ast.Node{n}})
		case *ast.ThematicBreak:
		default:
			if holdsOurs(n) {
				s.lay(n)
				continue
			}
			s.words, s.list = append(s.words, n), nil
		}
	}
}

func (s *sequence) section(heading *ast.Heading) {
	s.flush()
	s.heading, s.last = heading, nil
	s.guardHere()
}

// aside lays out a caution before what follows, and hangs an answer on what it answers.
func (s *sequence) aside(n *source.Aside) {
	switch n.Word {
	case source.Caution:
		lead := s.leading()
		s.care(n)
		s.words = lead
	case source.Answer:
		s.answer(n)
	}
}

func (s *sequence) care(n *source.Aside) {
	s.last = nil
	if n.FirstChild() == nil {
		s.guardHere()
		s.guard.guards = append(s.guard.guards, guard{names: n.Names})
		return
	}
	s.add(&view{kind: viewCare, nodes: []ast.Node{n}})
	s.guardHere()
}

func (s *sequence) answer(n *source.Aside) {
	if len(s.words) > 0 {
		asked := s.words[len(s.words)-1]
		s.words = s.words[:len(s.words)-1]
		s.flush()
		s.last = s.add(&view{kind: viewQuestion, nodes: []ast.Node{asked}})
	}
	for _, v := range s.list {
		v.kind = viewQuestion
	}
	if s.last != nil {
		s.last.answers = append(s.last.answers, n)
		if s.last.kind != viewTable {
			s.last.kind = viewQuestion
		}
	}
	s.list = nil
}

func (s *sequence) computed(n *source.Block) {
	lead := s.leading()
	s.guard.guards = append(s.guard.guards, guard{block: n})
	if len(lead) > 0 {
		s.last = s.add(&view{kind: viewWords, nodes: lead})
	}
	s.add(&view{kind: viewComputed, block: n})
}

// paragraph joins words to the picture or the step before them where they belong to it,
// and keeps others back, since they may lead to what follows.
func (s *sequence) paragraph(n *ast.Paragraph) {
	switch {
	case picture(n):
		s.last = s.add(&view{kind: viewPicture, lead: s.leading(), nodes: []ast.Node{n}})
		return
	case s.last == nil || len(s.words) > 0:
	case s.says(n) && s.last.kind != viewPicture, s.last.kind == viewPicture && len(s.last.nodes) == 1 && s.short(n):
		s.last.nodes = append(s.last.nodes, n)
		return
	}
	s.words, s.list = append(s.words, n), nil
}

// says reports whether the words say that a step worked.
func (s *sequence) says(n ast.Node) bool {
	return n != nil && n.Lines() != nil && s.worked != "" && strings.HasPrefix(plainQuotes(string(bytes.TrimSpace(n.Lines().Value(s.src)))), s.worked)
}

func plainQuotes(s string) string { return strings.ReplaceAll(s, "’", "'") }

func (s *sequence) short(n ast.Node) bool {
	return n.Kind() == ast.KindParagraph && len(n.Lines().Value(s.src)) <= shortWords
}

// leading takes the words that lead to what follows: the last paragraph, if it is short
// or ends in a colon. Those before it are shown by themselves.
func (s *sequence) leading() []ast.Node {
	var lead []ast.Node
	if k := len(s.words) - 1; k >= 0 && (k == 0 && s.short(s.words[k]) || leads(s.words[k], s.src)) {
		lead, s.words = s.words[k:], s.words[:k]
	}
	s.flush()
	return lead
}

// flush shows the words that were kept back, as many together as fill a view.
func (s *sequence) flush() {
	var some []ast.Node
	long := 0
	show := func() {
		if len(some) > 0 {
			s.last = s.add(&view{kind: viewWords, nodes: some})
		}
		some, long = nil, 0
	}
	for _, n := range s.words {
		length := extent(n, s.src)
		if long+length > viewful {
			show()
		}
		some, long = append(some, n), long+length
	}
	show()
	s.words, s.list = nil, nil
}

// extent is how much is written in a node, in bytes.
func extent(n ast.Node, src []byte) int {
	length := 0
	// The walk has no error: none of its steps has.
	_ = ast.Walk(n, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		if entering && n.Type() == ast.TypeBlock && n.Lines() != nil {
			length += len(n.Lines().Value(src))
		}
		return ast.WalkContinue, nil
	})
	return length
}

// items lays out a list: steps one at a time, and of others as many as fill a view.
func (s *sequence) items(list *ast.List) {
	lead := s.leading()
	if !list.IsOrdered() && extent(list, s.src) <= viewful && !holdsOurs(list) {
		s.last = s.add(&view{kind: viewWords, lead: lead, nodes: []ast.Node{list}})
		s.list = []*view{s.last}
		return
	}
	var laid []*view
	number := list.Start
	for item := list.FirstChild(); item != nil; item = item.NextSibling() {
		if len(laid) > 0 && s.says(item.FirstChild()) && !holdsOurs(item) {
			s.last.nodes = append(s.last.nodes, children(item)...)
			continue
		}
		v := s.item(item)
		v.lead, lead = lead, nil
		if list.IsOrdered() {
			v.number = number
			number++
		}
		laid = append(laid, v)
	}
	s.list = laid
}

// item lays out one item of a list: its cautions first, then its words and pictures
// together, then what it computes.
func (s *sequence) item(item ast.Node) *view {
	v := &view{kind: viewStep}
	var blocks []*source.Block
	for _, n := range children(item) {
		switch n := n.(type) {
		case *source.Block:
			s.guard.guards = append(s.guard.guards, guard{block: n})
			blocks = append(blocks, n)
		case *source.Aside:
			switch n.Word {
			case source.Caution:
				s.care(n)
			case source.Answer:
				v.kind, v.answers = viewQuestion, append(v.answers, n)
			}
		default:
			v.nodes = append(v.nodes, n)
		}
	}
	s.last = s.add(v)
	for _, n := range blocks {
		s.add(&view{kind: viewComputed, block: n})
	}
	return v
}

func children(n ast.Node) []ast.Node {
	var list []ast.Node
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		list = append(list, c)
	}
	return list
}

// holdsOurs reports whether a block of ours is within.
func holdsOurs(n ast.Node) bool {
	found := false
	_ = ast.Walk(n, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		found = found || n.Kind() == source.KindBlock() || n.Kind() == source.KindAside()
		return ast.WalkContinue, nil
	})
	return found
}

// untils says how many minutes of the lesson are over when a section ends, for those that
// a row of its table of minutes names or links to, in an edition that has the table.
func (p *Plan) untils(l *source.Lesson) map[*ast.Heading]time.Duration {
	ends := map[*ast.Heading]time.Duration{}
	rows, minutes := p.rowsNaming(l)
	for h, named := range rows {
		for _, i := range named {
			if i+1 < len(minutes) {
				ends[h] = minutes[i+1]
			}
		}
	}
	return ends
}

// rowsNaming returns the rows of a lesson's table of minutes that name a section or link
// to it, by the section's heading, and when each row begins; nothing in an edition that
// does not have the table.
func (p *Plan) rowsNaming(l *source.Lesson) (map[*ast.Heading][]int, []time.Duration) {
	table := source.MinuteTable(l.Sheet(source.SheetFront), l.Source)
	if table == nil {
		return nil, nil
	}
	for n := ast.Node(table); n != nil; n = n.Parent() {
		if p.hides(n) {
			return nil, nil
		}
	}
	minutes, _ := source.Minutes(table, l.Source)
	type cell struct {
		row         int
		text, plain string
	}
	var cells []cell
	for i, row := 0, table.FirstChild().NextSibling(); row != nil && i < len(minutes); i, row = i+1, row.NextSibling() {
		for n := row.FirstChild().NextSibling(); n != nil; n = n.NextSibling() {
			text := string(n.Lines().Value(l.Source))
			cells = append(cells, cell{i, text, smallLetters(text)})
		}
	}
	rows := map[*ast.Heading][]int{}
	_ = ast.Walk(l.Tree, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		h, ok := n.(*ast.Heading)
		if !ok || !entering {
			return ast.WalkContinue, nil
		}
		id, _ := h.AttributeString("id")
		link, name := fmt.Sprintf("(#%s)", id), smallLetters(string(bytes.TrimSpace(h.Lines().Value(l.Source))))
		for _, c := range cells {
			if (strings.Contains(c.text, link) || named(c.plain, name)) && !slices.Contains(rows[h], c.row) {
				rows[h] = append(rows[h], c.row)
			}
		}
		return ast.WalkSkipChildren, nil
	})
	return rows, minutes
}

// smallLetters writes a text in small letters, with plain quotes.
func smallLetters(s string) string { return strings.ToLower(plainQuotes(s)) }

// named reports whether a text has a name in it as words of its own, both in small letters.
func named(text, name string) bool {
	at := strings.Index(text, name)
	if at < 0 || name == "" {
		return false
	}
	before, _ := utf8.DecodeLastRuneInString(text[:at])
	after, _ := utf8.DecodeRuneInString(text[at+len(name):])
	return !unicode.IsLetter(before) && !unicode.IsLetter(after)
}
