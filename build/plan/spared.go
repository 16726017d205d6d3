package plan

import (
	"slices"
	"strings"

	"noonbook/compute/classroom"
)

// spared says which lessons to leave out of a term that is too short, and in which
// order, so that the rest fits; that is planned again without them before it is said.
// As long as a lesson has a date that is no school day, that is what is wrong.
func (p *Plan) spared(lessons []classroom.Lesson, term classroom.Term) string {
	if slices.ContainsFunc(lessons, func(l classroom.Lesson) bool { return !l.Date.IsZero() && !term.Holds(l.Date) }) {
		return ""
	}
	without := term.Without(lessons)
	taught := p.taught()
	if len(without) == 0 {
		if slices.ContainsFunc(lessons, func(l classroom.Lesson) bool { return l.Core }) {
			return "; leaving out lessons that are not core is not enough"
		}
		return ""
	}
	var names []string
	for _, n := range without {
		names = append(names, taught[n-1].Stem())
	}
	return "; leave out " + strings.Join(names, ", then ") + ", and the rest fits"
}
