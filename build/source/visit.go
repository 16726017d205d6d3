package source

import (
	"bytes"
	"slices"
	"strconv"
	"strings"
	"sync"
	"unicode"

	"github.com/yuin/goldmark/ast"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/problem"
)

// visitor walks the tree of one lesson, puts our nodes in the place of fences
// and braces, and reports what a lesson may not hold.
type visitor struct {
	*reader
	lesson  *Lesson
	fences  fences
	blocks  map[string]int // met so far, by placeholder
	within  *Condition     // the innermost that holds what is visited
	settled bool           // some block was taken away or unwrapped
	joints  []joint
	most    int // problems up to which the lesson is looked at
	failed  error
}

func (v *visitor) at(offset int) problem.Place { return v.lesson.lines.place(offset) }

func (v *visitor) visit(n ast.Node) {
	if len(v.problems) >= v.most {
		return
	}
	switch n := n.(type) {
	case *ast.FencedCodeBlock:
		v.fence(n)
		return
	case *brace:
		v.brace(n)
		return
	case *Aside:
		v.aside(n)
	case *Standing:
		v.standing(n)
		return
	case *ast.Paragraph, *ast.TextBlock:
		v.paragraph(n)
	case *ast.HTMLBlock:
		v.problems.Add(v.at(n.Pos()), "raw HTML is not passed through: %s", firstLine(n.Lines().Value(v.lesson.Source)))
		return
	case *ast.RawHTML:
		v.problems.Add(v.at(n.Segments.At(0).Start), "raw HTML is not passed through: %s", firstLine(n.Segments.Value(v.lesson.Source)))
		return
	case *ast.Link:
		v.link(n.Destination, n.Title, n.Pos(), reference{link: n, staff: v.forStaff(n)})
	case *ast.Image:
		v.image(n)
		return
	case *ast.AutoLink:
		v.scheme(string(n.URL(v.lesson.Source)), n.Pos())
	}
	v.visitWithin(n)
}

func (v *visitor) visitWithin(n ast.Node) {
	for c := n.FirstChild(); c != nil; {
		next := c.NextSibling() // c may be replaced
		v.visit(c)
		c = next
	}
}

func firstLine(b []byte) string {
	line, _, _ := bytes.Cut(bytes.TrimSpace(b), []byte("\n"))
	return string(line)
}

// fence deals with the fenced blocks that goldmark took for code.
func (v *visitor) fence(n *ast.FencedCodeBlock) {
	v.unclosed(n, "block")
	if n.Info == nil {
		return
	}
	n.Language(v.lesson.Source) // goldmark notes it when it is first asked; whoever shares the tree only reads it
	word, rest := firstWord(string(n.Info.Segment.Value(v.lesson.Source)))
	at := v.at(n.Info.Segment.Start)
	switch word {
	case "lesson":
		v.problems.Add(at, "a second lesson block; one stands at the head of the file")
	case "compute":
		v.compute(n, rest, at)
	case Caution, Answer, Staff, Only, Unless:
		v.problems.Add(at, "blocks within one another, more than %d deep", maxAsides)
	default:
		if !slices.Contains(codeWords, word) {
			v.problems.Add(at, "%s", unknownBlock(word))
		}
	}
}

func (v *visitor) compute(n *ast.FencedCodeBlock, info string, at problem.Place) {
	name, rest := firstWord(info)
	if name == "" {
		v.problems.Add(at, "compute needs the name of a placeholder, such as dial-table")
		return
	}
	at.Column += strings.Index(string(n.Info.Segment.Value(v.lesson.Source)), name)
	if rest != "" {
		v.problems.Add(at, "compute %s: %q is too much; arguments stand in the block, one a line", name, rest)
	}
	entry, ok := v.entry(name, at)
	if !ok {
		return
	}
	if entry.ForStaff && !v.forStaff(n) {
		v.problems.Add(at, "%s repeats what is for staff alone, and the class reads this; put it into a part, a note or a page for staff", name)
	}
	keys := v.forms[entry.Name]()
	given, faults, places := keys.Read(body(n, v.lesson.Source))
	for _, f := range faults {
		v.problems.Add(within(v.lesson.lines, n, form.Place{Line: f.Line, Column: f.Column}), "%s: %s", name, f.Text)
	}
	v.recordsOf(keys, given, func(key string) problem.Place { return within(v.lesson.lines, n, places[key]) })
	v.daysOf(name, given, func(key string) problem.Place { return within(v.lesson.lines, n, places[key]) })
	v.blocks[entry.Name]++
	block := &Block{Ask: Ask{entry, given, at}, Nth: v.blocks[entry.Name]}
	block.SetPos(n.Pos())
	n.Parent().ReplaceChild(n.Parent(), n, block)
}

func (v *visitor) entry(name string, at problem.Place) (entry.Entry, bool) {
	found, ok := entry.Find(v.catalogue, name)
	if !ok {
		hint := form.Meant(name, entry.Names(v.catalogue))
		if hint == "" {
			hint = "; noonbook reckon --list prints them all"
		}
		v.problems.Add(at, "%q is not a placeholder%s", name, hint)
	}
	return found, ok
}

func (v *visitor) brace(n *brace) {
	at := v.at(n.offset)
	if n.open {
		v.problems.Add(at, `a brace that is not closed on its line; write \{ for the brace itself`)
		return
	}
	at.Column++
	if inline := v.expression(n.text, at); inline != nil {
		n.Parent().ReplaceChild(n.Parent(), n, inline)
	}
}

// formsOf returns what a use of each placeholder may write, made when it is first asked
// for: a unit uses some of them, and each many times.
func formsOf(catalogue []entry.Entry, settings form.Form) map[string]func() form.Form {
	forms := make(map[string]func() form.Form, len(catalogue))
	for _, e := range catalogue {
		forms[e.Name] = sync.OnceValue(func() form.Form { return e.Form(settings) })
	}
	return forms
}

// factName takes "name.fact" apart; false where a text is not of that form.
func factName(s string) (name, fact string, ok bool) {
	name, fact, _ = strings.Cut(s, ".")
	other := func(c rune) bool { return !unicode.IsLetter(c) && (c < '0' || c > '9') && c != '_' && c != '-' }
	return name, fact, name != "" && fact != "" && !strings.ContainsFunc(name+fact, other)
}

// expression reads the inside of the braces; at is where it begins. It returns
// nil after reporting a problem.
func (v *visitor) expression(s string, at problem.Place) *Inline {
	name, pairs, ok := splitExpression(s)
	placeholder, fact, dotted := factName(name)
	if complaint := v.notAFact(name); complaint != "" {
		v.problems.Add(at, "%s", complaint)
		return nil
	}
	if !ok || !dotted {
		v.problems.Add(at, `{%s} is not of the form {name.fact key=value}; write \{ for the brace itself`, s)
		return nil
	}
	entry, ok := v.entry(placeholder, at)
	if !ok {
		return nil
	}
	if !slices.Contains(entry.FactNames(), fact) {
		at.Column += len(placeholder) + 1
		v.problems.Add(at, "%s has no fact %q%s", entry.Name, fact, form.Choice(fact, entry.FactNames()))
		return nil
	}
	n := &Inline{Fact: fact, Ask: Ask{entry, form.Values{}, at}}
	if len(pairs) == 0 { // as most are
		return n
	}
	keys := v.forms[entry.Name]()
	places := map[string]problem.Place{}
	for _, p := range pairs {
		here := at
		here.Column += p.offset
		places[p.key] = here
		value, complaint := keys.ParsePair(p.key, p.value)
		if complaint != "" {
			v.problems.Add(here, "%s: %s", entry.Name, complaint)
			continue
		}
		n.Given[p.key] = value
	}
	v.recordsOf(keys, n.Given, func(string) problem.Place { return at })
	v.daysOf(entry.Name, n.Given, func(key string) problem.Place {
		key, _, _ = strings.Cut(key, "[")
		return places[key]
	})
	return n
}

// recordsOf reads the CSV files that a use of a placeholder names; what the
// machine did wrong is kept until the lesson is read.
func (v *visitor) recordsOf(f form.Form, given form.Values, at func(string) problem.Place) {
	if err := v.records(f, given, at); err != nil && v.failed == nil {
		v.failed = err
	}
}

// aside checks the rest of the line that opened a caution, answer or staff
// block.
func (v *visitor) aside(n *Aside) {
	line := firstLine(v.lesson.Source[n.Pos():])
	_, rest := firstWord(strings.TrimLeft(line, string(n.fence.char)))
	at := v.at(n.Pos())
	v.unclosed(n, n.Word+" block")
	if n.Word == Caution {
		v.caution(n, rest, at, len(line)-len(rest))
		return
	}
	if rest == "" {
		return
	}
	at.Column += len(line) - len(rest)
	lines, found := strings.CutPrefix(rest, "lines=")
	if count, err := strconv.Atoi(lines); n.Word == Answer && found && err == nil && count >= 0 && count <= 40 {
		n.Ruled = count
		return
	}
	if n.Word == Answer {
		v.problems.Add(at, "answer: %q is not understood, want lines=N with N from 0 to 40", rest)
		return
	}
	v.problems.Add(at, "%s: %q should go; nothing follows the word", n.Word, rest)
}

// caution reads the names after the word and wants words within, or names that stand
// for some.
func (v *visitor) caution(n *Aside, rest string, at problem.Place, column int) {
	here, named := at, rest != ""
	here.Column += column
	for rest != "" {
		name, more := firstWord(rest)
		switch {
		case !slices.Contains(entry.Cautions(), name):
			v.problems.Add(here, "caution: %q is not the name of a caution%s", name, form.Choice(name, entry.Cautions()))
			return // words on the wrong line are one mistake
		case slices.Contains(n.Names, name):
			v.problems.Add(here, "caution: %q is named twice", name)
		case n.FirstChild() == nil && entry.NeedsSchool(name):
			v.problems.Add(here, "caution: %q has numbers of the school; put the compute block that prints it before the step, or write the caution here", name)
		default:
			n.Names = append(n.Names, name)
		}
		here.Column += len(rest) - len(more)
		rest = more
	}
	if n.FirstChild() == nil && !named {
		v.problems.Add(at, "caution: the block is empty; write what to take care of, or name a caution after the word, such as \"caution sun\"")
	}
}
