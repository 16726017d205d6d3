package source

import (
	"fmt"
	"slices"

	"noonbook/build/file"
)

// leave takes a lesson out of the unit, before pages get their names and numbers, and
// says why. It has no page, no day and no number: links to it become the words that they
// hold, and what names it in follows or change_with goes without.
func (r *reader) leave(l *Lesson, why string) {
	if r.unit.left == nil {
		r.unit.left = map[string]*Lesson{}
	}
	r.unit.left[file.Decomposed(l.name)] = l
	r.unit.Gone = append(r.unit.Gone, fmt.Sprintf("%s (%s)", l.Stem(), why))
	r.unit.Lessons = slices.DeleteFunc(r.unit.Lessons, func(other *Lesson) bool { return other == l })
}

// left returns the lesson of that name that was left out.
func (r *reader) left(name string) (*Lesson, bool) {
	l, ok := r.unit.left[file.Decomposed(name)]
	return l, ok
}
