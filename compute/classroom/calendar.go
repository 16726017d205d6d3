package classroom

import (
	"slices"

	"noonbook/compute/place"
)

// A Calendar says when each lesson of a unit is held, and what had to give way.
type Calendar struct {
	Held     []Held // by lesson
	Dropped  []Rule // what cannot be met, or not together with the rest
	Smallest bool   // no smaller set of rules would do
}

// A Held is when one lesson is held.
type Held struct {
	Slot           // of its first visit
	More    []Slot // further visits of the same day
	Placed  bool   // false where the term has no room for the lesson
	Reserve Reserve
}

// End is the slot of the last visit.
func (h Held) End() Slot {
	if n := len(h.More); n > 0 {
		return h.More[n-1]
	}
	return h.Slot
}

// Arrange finds the days of the lessons, as the package documentation says.
func Arrange(lessons []Lesson, term Term, sky Sky) Calendar {
	rest, index := inSchool(lessons)
	c := arrange(rest, term, sky)
	if len(rest) == len(lessons) {
		return c
	}
	all := Calendar{Held: make([]Held, len(lessons)), Smallest: c.Smallest}
	for i, h := range c.Held {
		if h.Reserve.With > 0 {
			h.Reserve.With = index[h.Reserve.With-1] + 1
		}
		all.Held[index[i]] = h
	}
	for _, r := range c.Dropped {
		r.Lesson = index[r.Lesson-1] + 1
		if r.Other > 0 {
			r.Other = index[r.Other-1] + 1
		}
		all.Dropped = append(all.Dropped, r)
	}
	var nights []Evening
	if sky.evenings != nil {
		nights = sky.evenings(term)
	}
	all.evenings(lessons, nights)
	return all
}

// arrange finds the days of lessons that are all held in school.
func arrange(lessons []Lesson, term Term, sky Sky) Calendar {
	p := newPuzzle(lessons, term, sky, make([]bool, len(lessons)))
	if out := p.leftOut(); slices.Contains(out, true) {
		p = newPuzzle(lessons, term, sky, out)
	}
	drop, at, smallest := p.relax()
	c := Calendar{Held: make([]Held, len(lessons)), Smallest: smallest}
	for _, r := range drop {
		c.Dropped = append(c.Dropped, p.rules[r])
	}
	if at == nil { // relax says that this cannot be
		return c
	}
	for i, k := range at {
		if k >= 0 {
			o := p.options[i][k]
			c.Held[i] = Held{Slot: o.first(), More: o[1:], Placed: true}
		}
	}
	p.wet(&c, at, p.without(drop))
	return c
}

// Fits reports whether some school day has lesson times enough for the lesson.
func (t Term) Fits(l Lesson) bool {
	return slices.ContainsFunc(t.Days(), func(d place.Date) bool { return len(t.options(l, []place.Date{d})) > 0 })
}

// Lacks returns the dropped rules of the lesson with that number.
func (c Calendar) Lacks(number int) []Rule {
	var rules []Rule
	for _, r := range c.Dropped {
		if r.Lesson == number {
			rules = append(rules, r)
		}
	}
	return rules
}

// On returns the lessons that are held on the date, by number from 0.
func (c Calendar) On(d place.Date) []int {
	var list []int
	for i, h := range c.Held {
		if h.Placed && h.Date == d {
			list = append(list, i)
		}
	}
	return list
}
