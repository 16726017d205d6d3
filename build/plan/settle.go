package plan

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"noonbook/build/crew"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/problem"
	"noonbook/build/recent"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/build/source"
)

// Text that stands only where it is true: the conditions of a unit are answered for a
// school, first those of whole lessons, on which the calendar depends, then the rest,
// each with the day of its lesson. Then the unit is settled, and planned as any other.
// Schools that give the same answers share one plan.

// settlements are the units and plans of a conditional unit, by their answers: those of
// the last schools.
type settlements struct {
	units recent.Of[settlement]
	plans recent.Of[planned]
}

// mostSettled is how many of them are kept; a plan of the demo takes seven megabytes.
const mostSettled = 4

func newSettlements() *settlements {
	return &settlements{recent.Of[settlement]{Most: mostSettled + 2}, recent.Of[planned]{Most: mostSettled}}
}

type settlement struct {
	unit     *source.Unit
	problems problem.List
}

// Settled returns the unit as it is at a school: what does not stand there is gone, and
// what stands is there as though nothing had been asked. There is none where a problem
// is a fault. What is known is not evaluated again, and more is known then.
func Settled(unit *source.Unit, settings form.Values, known *entry.Known) (*source.Unit, problem.List, error) {
	if !unit.Conditional() {
		return unit, nil, nil
	}
	p := &Plan{unit: unit, settlements: newSettlements()}
	answers, problems, err := p.answers(settings, known)
	if err != nil || problems.Faults() > 0 {
		return nil, problems, err
	}
	settled, err := p.settlements.unitOf(unit, answers)
	if problems = append(problems, settled.problems...); err != nil || problems.Faults() > 0 {
		return nil, problems, err
	}
	return settled.unit, problems, nil
}

// settled returns the plan of the unit as it is at the school. There is none where a
// problem is a fault.
func (p *Plan) settled(settings form.Values, known *entry.Known) (*Plan, problem.List) {
	answers, problems, err := p.answers(settings, known)
	if err == nil && problems.Faults() == 0 {
		var settled planned
		if settled, err = p.planOf(answers); err == nil {
			problems = append(problems, settled.problems...)
			if problems.Faults() == 0 {
				return settled.plan, problems
			}
		}
	}
	if err != nil { // of the machine or the program; there is no place to mend
		problems.Add(problem.Place{}, "%v", err)
	}
	return nil, problems
}

type planned struct {
	plan     *Plan
	problems problem.List
}

// planOf returns the plan of the unit with those answers, and the problems that only
// the unit so settled has.
func (p *Plan) planOf(answers source.Answers) (planned, error) {
	return p.settlements.plans.Get(keyOf(answers), func() (planned, error) {
		unit, err := p.settlements.unitOf(p.unit, answers)
		if err != nil || unit.problems.Faults() > 0 {
			return planned{problems: unit.problems}, err
		}
		plan, err := makePlan(unit.unit, p.words, p.edition, p.catalogue)
		return planned{plan, unit.problems}, err
	})
}

// unitOf returns the unit with those answers.
func (s *settlements) unitOf(unit *source.Unit, answers source.Answers) (settlement, error) {
	return s.units.Get(keyOf(answers), func() (settlement, error) {
		settled, problems, err := unit.Settled(answers)
		if err != nil {
			err = fmt.Errorf("reading the unit again: %w", err)
		}
		return settlement{settled, problems}, err
	})
}

func keyOf(answers source.Answers) string {
	lines := make([]string, 0, len(answers))
	for at, stands := range answers {
		lines = append(lines, fmt.Sprint(at, " ", stands))
	}
	slices.Sort(lines)
	return strings.Join(lines, "\n")
}

// answers asks every condition of the unit that matters at the school.
func (p *Plan) answers(settings form.Values, known *entry.Known) (source.Answers, problem.List, error) {
	answers := source.Answers{}
	var problems problem.List
	matters := func(c *source.Condition) bool { outer := c.Within(); return outer == nil || answers[outer.At] }
	evaluate := func(plan *Plan, c *source.Condition, lesson int, s *pressing) evaluation {
		e, err := plan.evaluate(c.Ask, lesson, s, known)
		return evaluation{e, err}
	}
	answer := func(c *source.Condition, e evaluation, s *pressing) {
		fact, ok := e.truth(c, s, &problems)
		answers[c.At] = ok && c.Wants(fact)
	}
	open := &pressing{settings: settings, keys: school.Settings(), course: p.unit.Course()} // of which no lesson has a day
	for i, l := range p.unit.Lessons {
		for _, c := range l.Whole() {
			if matters(c) {
				answer(c, evaluate(&Plan{unit: p.unit, catalogue: p.catalogue}, c, i, open), open)
			}
		}
	}
	standing := p.unit
	if len(answers) > 0 {
		settled, err := p.settlements.unitOf(p.unit, answers)
		if err != nil {
			return nil, problems, err
		}
		standing = settled.unit
	}
	if problems.Faults() > 0 {
		return answers, problems, nil
	}
	plan := &Plan{unit: standing, course: standing.Course(), words: p.words, catalogue: p.catalogue}
	s := &pressing{settings: settings, keys: open.keys, course: plan.course, groups: groupsOf(settings)}
	s.lessons, s.calendar, _ = s.course.Arrange(settings) // what is wrong with a day is reported by the plan of what stands
	s.held = markOf(s.lessons, s.calendar)
	inAnyCase := make([][]evaluation, len(standing.Lessons))
	crew.Each(len(standing.Lessons), nil, func(i int) { // side by side
		conditions := standing.Lessons[i].Conditions()
		inAnyCase[i] = make([]evaluation, len(conditions))
		for k, c := range conditions {
			if c.Within() == nil {
				inAnyCase[i][k] = evaluate(plan, c, i, s)
			}
		}
	})
	for i, l := range standing.Lessons {
		for k, c := range l.Conditions() {
			switch {
			case c.Within() == nil:
				answer(c, inAnyCase[i][k], s)
			case matters(c):
				answer(c, evaluate(plan, c, i, s), s)
			}
		}
	}
	return answers, problems, nil
}

// An evaluation is what evaluate returned.
type evaluation struct {
	*entry.Evaluated
	err error
}

// truth is the fact of a condition. What is doubtful is a fault; ok is false then, and
// where the settings lack what the fact needs, which source reports.
func (e evaluation) truth(c *source.Condition, s *pressing, problems *problem.List) (fact, ok bool) {
	switch {
	case errors.Is(e.err, entry.ErrNoDay) && s.lessons == nil:
		problems.Add(c.At, "%s: the day of a lesson cannot decide whether a lesson is there; name another day", c.Words)
	case e.err != nil && !errors.Is(e.err, entry.ErrNoDay):
		problems.Add(c.At, "%s: %v", c.Entry.Name, e.err)
	}
	if e.Evaluated == nil {
		return false, false
	}
	value, found := e.Result.Fact(c.Fact)
	if !found || value.Kind != say.Truth {
		problems.Add(c.At, "%s: %s.%s is neither yes nor no here", c.Words, c.Entry.Name, c.Fact)
		return false, false
	}
	return value.Number != 0, true
}

// evaluate evaluates one use of a placeholder, or returns what is known of it. It
// returns nil where something is missing that was reported where it should stand.
func (p *Plan) evaluate(a source.Ask, lesson int, s *pressing, known *entry.Known) (*entry.Evaluated, error) {
	given, err := p.onDays(s, a.Given, lesson)
	if err != nil {
		return nil, err
	}
	values := a.Entry.Complete(s.settings, given, p.dayOf(lesson, s))
	if !ready(a.Entry, values, s.keys) {
		return nil, nil
	}
	mark := ""
	if a.Entry.Lessons {
		lessons, calendar, held := p.calendarFor(s, given, values)
		values, mark = a.Entry.WithLessons(values, lessons, calendar, p.unit.Lessons[lesson].Number), held
	}
	return known.Evaluated(a.Entry.Key(values, mark), a.Entry, values)
}
