package source

import (
	"github.com/yuin/goldmark/ast"

	"noonbook/build/file"
)

// An absent lesson is one of the folder that does not stand in this handbook: it has no
// page, no day and no number.
type absent struct {
	lesson *Lesson
	why    string // in words for a problem
}

// leave takes a lesson out of the unit, before pages get their names and numbers.
// Links to it become the words that they hold, and what names it in follows or
// change_with goes without.
func (r *reader) leave(l *Lesson, why string) {
	if r.absent == nil {
		r.absent = map[string]absent{}
	}
	r.absent[file.Decomposed(l.name)] = absent{l, why}
	r.unit.left = append(r.unit.left, l.Stem())
	for i, other := range r.unit.Lessons {
		if other == l {
			r.unit.Lessons = append(r.unit.Lessons[:i:i], r.unit.Lessons[i+1:]...)
			return
		}
	}
}

// left returns the lesson of that name that does not stand.
func (r *reader) left(name string) (absent, bool) {
	a, ok := r.absent[file.Decomposed(name)]
	return a, ok
}

// unlink puts the words of a link in its place.
func unlink(link *ast.Link) {
	parent := link.Parent()
	if parent == nil {
		return
	}
	for c := link.FirstChild(); c != nil; c = link.FirstChild() {
		parent.InsertBefore(parent, link, c) // takes it from the link
	}
	parent.RemoveChild(parent, link)
}
