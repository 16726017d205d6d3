package plan

import (
	"noonbook/build/form"
	"noonbook/build/problem"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/build/source"
)

// typedOutside warns of dates that lessons type and that lie outside the term.
func (p *Plan) typedOutside(settings form.Values, problems *problem.List) {
	first, last := school.TermFirstDay.Of(settings), school.TermLastDay.Of(settings)
	if first.IsZero() || last.IsZero() {
		return
	}
	for _, l := range p.unit.Lessons {
		for _, t := range l.Typed {
			if t.Outside(first, last) {
				problems.Warn(t.At, "%s is outside the term, %s to %s; a day by name, such as \"next full Moon\", travels with the term", t.Text, first, last)
			}
		}
	}
}

// A put is a fact that a slot has put into a sentence.
type put struct {
	at   problem.Place
	name string // of the fact, with its placeholder
	line string // what it says
}

// putInto notes a fact that says why there is none, which makes no sentence.
func (s *pressing) putInto(n *source.Inline, value say.Value) {
	if s.nothings != nil && value.Kind == say.Nothing && value.Phrase.Key != "" {
		s.nothings.Store(put{n.At, n.Entry.Name + "." + n.Fact, s.words.Line(value.Phrase)}, true)
	}
}

// nothingsPut warns of sentences into which such a fact was put.
func (s *pressing) nothingsPut(problems *problem.List) {
	for key := range s.nothings.Range {
		n := key.(put)
		problems.Warn(n.at, "%s has no value at this school, and the sentence says %q in its place", n.name, n.line)
	}
}
