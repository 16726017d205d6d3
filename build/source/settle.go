package source

import (
	"io/fs"
	"slices"

	"github.com/yuin/goldmark/ast"

	"noonbook/build/placeholder/entry"
	"noonbook/build/problem"
)

// Answers says of conditions, by their places, whether what they hold stands.
type Answers map[problem.Place]bool

// Conditional reports whether anything of the unit stands at some schools only.
func (u *Unit) Conditional() bool {
	return slices.ContainsFunc(u.Lessons, func(l *Lesson) bool { return len(l.whole)+len(l.conditions) > 0 || l.doubtful })
}

// Whole returns the conditions on which the whole lesson stands; it needs all.
func (l *Lesson) Whole() []*Condition { return l.whole }

// Conditions returns those of the lesson's blocks, and of the lines of its lesson
// block, each behind the one that it stands in.
func (l *Lesson) Conditions() []*Condition { return l.conditions }

// Settled returns the unit as it is where the answers hold: what does not stand is gone,
// and what stands is there as though nothing had been asked. A condition without an
// answer stays open. The unit is read again from what was read first; with others it
// shares the lessons to which the answers make no difference. The problems are those that the unit did not have before,
// such as a link to a heading that is gone.
func (u *Unit) Settled(answers Answers) (*Unit, problem.List, error) { return u.again(answers) }

// readAgain is how a unit that was read is read with answers.
func (m *Memory) readAgain(kept *keptFolder, root string, own fs.FS, catalogue []entry.Entry, given *Given, told problem.List) func(Answers) (*Unit, problem.List, error) {
	return func(answers Answers) (*Unit, problem.List, error) {
		unit, problems, err := m.read(kept, root, own, catalogue, given, answers)
		return unit, slices.DeleteFunc(problems, func(p problem.Problem) bool { return slices.Contains(told, p) }), err
	}
}

// absentLessons takes out the lessons whose condition does not hold, and keeps the
// conditions that are open.
func (r *reader) absentLessons() {
	for _, l := range slices.Clone(r.unit.Lessons) {
		var open []*Condition
		away := ""
		for _, c := range l.whole {
			switch stands, known := r.stands(c); {
			case !known:
				open = append(open, c)
			case !stands:
				away = c.Words
			}
		}
		l.whole = open
		if away != "" {
			r.leave(l, away)
		}
	}
}

// take takes a block that does not stand out of the tree, with what held nothing else.
func (v *visitor) take(n *Standing) {
	_ = ast.Walk(n, func(c ast.Node, entering bool) (ast.WalkStatus, error) {
		if h, ok := c.(*ast.Heading); ok && entering {
			if id, ok := h.AttributeString("id"); ok {
				v.gone(string(id.([]byte)), n.Condition)
			}
		}
		return ast.WalkContinue, nil
	})
	if first, last := n.FirstChild(), n.LastChild(); sameList(first, last) {
		v.joints = append(v.joints, joint{n.PreviousSibling(), n.NextSibling()})
	}
	parent := n.Parent()
	parent.RemoveChild(parent, n)
	prune(parent)
	v.settled = true
}

// unwrap puts what a block holds in its place.
func (v *visitor) unwrap(n *Standing) {
	parent := n.Parent()
	v.joints = append(v.joints, joint{n.PreviousSibling(), n.FirstChild()}, joint{n.LastChild(), n.NextSibling()})
	for c := n.FirstChild(); c != nil; c = n.FirstChild() {
		parent.InsertBefore(parent, n, c) // takes it from the block
	}
	parent.RemoveChild(parent, n)
	prune(parent)
	v.settled = true
}

// prune takes away what holds nothing any more: items, lists, quotes, and blocks of
// ours. An answer that has lines to write on keeps them, and a caution that names others
// is their words again.
func prune(n ast.Node) {
	for n != nil && n.FirstChild() == nil {
		switch block := n.(type) {
		case *ast.ListItem, *ast.List, *ast.Blockquote:
		case *Aside:
			block.Names = slices.DeleteFunc(block.Names, entry.NeedsSchool)
			if block.Ruled > 0 || len(block.Names) > 0 {
				return
			}
		default:
			return
		}
		parent := n.Parent()
		if parent == nil {
			return
		}
		parent.RemoveChild(parent, n)
		n = parent
	}
}

// A joint is where two nodes met when what stood between them was settled.
type joint struct{ before, after ast.Node }

// tidy puts the tree in order behind its settled blocks: lists that meet are one, and
// headings are named anew, so that one that stands here bears the name that it would
// have if the others had never been written.
func (v *visitor) tidy() {
	if !v.settled {
		return
	}
	into := map[ast.Node]ast.Node{} // a list that is joined to another → that one
	for _, j := range v.joints {
		for into[j.before] != nil {
			j.before = into[j.before]
		}
		if !sameList(j.before, j.after) || j.before == j.after || j.before.NextSibling() != j.after {
			continue
		}
		for c := j.after.FirstChild(); c != nil; c = j.after.FirstChild() {
			j.before.AppendChild(j.before, c)
		}
		j.after.Parent().RemoveChild(j.after.Parent(), j.after)
		into[j.after] = j.before
	}
	l := v.lesson
	before := l.Anchors
	l.Anchors = map[string]bool{}
	names := &anchors{used: l.Anchors, last: map[string]int{}}
	_ = ast.Walk(l.Tree, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		if h, ok := n.(*ast.Heading); ok && entering {
			var words []byte
			if last := h.Lines().Len() - 1; last >= 0 {
				segment := h.Lines().At(last)
				words = segment.Value(l.Source)
			}
			h.SetAttributeString("id", names.Generate(words, ast.KindHeading))
		}
		return ast.WalkContinue, nil
	})
	for id := range before {
		if !l.Anchors[id] && l.gone[id] == "" {
			v.gone(id, nil)
		}
	}
}

// sameList reports whether both are lists that CommonMark would read as one.
func sameList(a, b ast.Node) bool {
	first, ok := a.(*ast.List)
	second, also := b.(*ast.List)
	return ok && also && first.Marker == second.Marker
}

// gone notes that a heading does not stand, and why.
func (v *visitor) gone(id string, c *Condition) {
	if v.lesson.gone == nil {
		v.lesson.gone = map[string]string{}
	}
	why := "in a block that does not stand here"
	if c != nil {
		why = c.Words
	}
	v.lesson.gone[id] = why
}
