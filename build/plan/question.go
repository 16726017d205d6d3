package plan

import (
	"bytes"
	"slices"

	"github.com/yuin/goldmark/ast"
	extension "github.com/yuin/goldmark/extension/ast"

	"noonbook/build/source"
)

// A question is one thing that a lesson asks of pupils: words with an answer
// block, or a table with cells to fill in.
type question struct {
	heading *ast.Heading // that it stands under, nil for none
	care    []ast.Node   // caution blocks and computed blocks before it under that heading, or one above it
	asked   []ast.Node   // in their order
	answer  *source.Aside
	table   *extension.Table
}

// questions collects what a lesson asks, in its order. What is for staff alone asks
// nothing of pupils, nor do the front of the day sheet and what its back
// holds without an answer.
func questions(l *source.Lesson) []question {
	c := collector{lesson: l, level: map[ast.Node]int{}, taken: map[ast.Node]bool{}}
	if !l.Openings() {
		back := slices.DeleteFunc(l.Sheet(source.SheetBack), func(s source.Section) bool { return slices.ContainsFunc(s.Body, answers) })
		for _, s := range slices.Concat(l.Sheet(source.SheetFront), back) {
			for _, n := range s.Body {
				c.taken[n] = true
			}
		}
	}
	c.walk(l.Tree)
	return c.found
}

// answers reports whether a node is an answer or holds one.
func answers(n ast.Node) (found bool) {
	_ = ast.Walk(n, func(n ast.Node, _ bool) (ast.WalkStatus, error) {
		aside, ok := n.(*source.Aside)
		found = found || ok && aside.Word == source.Answer
		return ast.WalkContinue, nil
	})
	return found
}

type collector struct {
	lesson  *source.Lesson
	heading *ast.Heading
	care    []ast.Node
	level   map[ast.Node]int // of the heading that one of care stands under
	taken   map[ast.Node]bool
	found   []question
}

func (c *collector) walk(parent ast.Node) {
	for n := parent.FirstChild(); n != nil; n = n.NextSibling() {
		switch x := n.(type) {
		case *ast.Heading:
			c.heading = x
			c.care = slices.DeleteFunc(slices.Clone(c.care), func(n ast.Node) bool { return c.level[n] >= x.Level })
			continue
		case *source.Block:
			c.heed(n)
		case *source.Aside:
			if x.Word == source.Caution {
				c.heed(n)
			}
			if x.Word == source.Answer && !c.taken[n] {
				c.add(question{asked: c.before(x), answer: x})
			}
			if source.Private(n) {
				continue
			}
		case *source.Opening:
			if source.Private(n) {
				continue
			}
			c.heading, c.care = nil, nil
		case *extension.Table:
			if !c.taken[n] && toFill(x, c.lesson.Source) {
				c.add(question{table: x})
			}
			continue
		}
		if n.Type() == ast.TypeBlock && !c.taken[n] {
			c.walk(n)
		}
	}
}

// add takes a question. A table that turns out to be part of what is asked is
// no question of its own.
func (c *collector) add(q question) {
	if slices.ContainsFunc(q.asked, func(n ast.Node) bool { return n.Kind() == extension.KindTable }) {
		c.found = slices.DeleteFunc(c.found, func(other question) bool {
			return other.table != nil && slices.Contains(q.asked, ast.Node(other.table))
		})
	}
	q.heading, q.care = c.heading, c.care
	c.found = append(c.found, q)
}

// heed notes what may hold a caution for the questions after it.
func (c *collector) heed(n ast.Node) {
	c.care = append(c.care, n) // what a question holds of it stays as it is
	if c.heading != nil {
		c.level[n] = c.heading.Level
	}
}

// before returns what an answer answers: the paragraph or list before it, with
// the pictures and tables that stand between, and with the words that lead to a
// list by a colon.
func (c *collector) before(answer ast.Node) []ast.Node {
	var asked []ast.Node
	for n := answer.PreviousSibling(); n != nil; n = n.PreviousSibling() {
		if n.Kind() == ast.KindHeading || n.Kind() == source.KindAside() {
			break
		}
		asked = append(asked, n)
		if lead := n.PreviousSibling(); n.Kind() == ast.KindList && lead != nil && leads(lead, c.lesson.Source) {
			asked = append(asked, lead)
		}
		if n.Kind() == ast.KindParagraph && !picture(n) || n.Kind() == ast.KindTextBlock || n.Kind() == ast.KindList {
			break
		}
	}
	slices.Reverse(asked)
	return asked
}

// leads reports whether the words end in a colon, so that what follows them can
// not be read alone.
func leads(n ast.Node, src []byte) bool {
	return n.Kind() == ast.KindParagraph && bytes.HasSuffix(bytes.TrimSpace(n.Lines().Value(src)), []byte(":"))
}

// picture reports whether a paragraph is one picture and nothing else.
func picture(n ast.Node) bool {
	return n.ChildCount() == 1 && n.FirstChild().Kind() == ast.KindImage
}

// toFill reports whether a table has cells for a pencil.
func toFill(table *extension.Table, src []byte) bool {
	empty := 0
	for row := table.FirstChild(); row != nil; row = row.NextSibling() {
		for cell := row.FirstChild(); cell != nil && row.Kind() == extension.KindTableRow; cell = cell.NextSibling() {
			if len(bytes.TrimSpace(cell.Lines().Value(src))) == 0 {
				empty++
			}
		}
	}
	return empty > 1
}

// listed is the number of the list item that asks, for an answer behind the list; 0
// where there is none. The item bears it already where it is printed.
func (q question) listed() int {
	for _, n := range q.asked {
		if list, ok := n.(*ast.List); ok && list.IsOrdered() {
			return list.Start + list.ChildCount() - 1
		}
	}
	return 0
}

// number is the number of the list item that asks, for an answer within the
// item; 0 elsewhere.
func (q question) number() int {
	if q.answer == nil {
		return 0
	}
	item, ok := q.answer.Parent().(*ast.ListItem)
	if !ok {
		return 0
	}
	list, ok := item.Parent().(*ast.List)
	if !ok || !list.IsOrdered() {
		return 0
	}
	n := list.Start
	for i := item.PreviousSibling(); i != nil; i = i.PreviousSibling() {
		n++
	}
	return n
}
