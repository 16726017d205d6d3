package classroom

import (
	"slices"

	"noonbook/compute/place"
)

// A Reserve is what becomes of a lesson when the weather spoils it.
type Reserve struct {
	Kind ReserveKind
	Slot // AtAnotherTime, InExchange: when the lesson begins then
	More []Slot
	With int  // InExchange: number of the lesson that is held in its place
	Late bool // after the next lesson, so that the order changes
}

// A ReserveKind tells the sorts of Reserve apart.
type ReserveKind int

const (
	NotNeeded     ReserveKind = iota // the weather cannot spoil the lesson
	AtAnotherTime                    // a lesson time later
	InExchange                       // another lesson changes places with it
	StaysIn                          // the class stays in
	NoTime                           // the term has no time left for it
)

// wet finds the reserves of the lessons that need the weather. No two lessons
// have the same time in reserve.
func (p *puzzle) wet(c *Calendar, at []int, dropped []bool) {
	taken := byDay{}
	for i, k := range at {
		if k >= 0 {
			taken.add(p.options[i][k])
		}
	}
	var later []int
	for i, l := range p.lessons {
		h := &c.Held[i]
		switch {
		case !h.Placed || !l.Weather():
		case l.Wet == Inside:
			h.Reserve.Kind = StaysIn
		case l.Wet == Changed && p.exchange(c, i, at, dropped):
		case p.kept[i] >= 0 && !dropped[p.kept[i]]: // it comes first: its time is kept
			o, _ := p.reserve(i, p.options[i][at[i]], dropped)
			p.set(c, i, o)
			taken.add(o)
		default:
			later = append(later, i)
		}
	}
	for _, i := range later {
		c.Held[i].Reserve.Kind = NoTime
		if o, ok := p.another(i, p.options[i][at[i]], taken, dropped); ok {
			p.set(c, i, o)
			taken.add(o)
		}
	}
}

func (p *puzzle) set(c *Calendar, i int, o option) {
	r := Reserve{Kind: AtAnotherTime, Slot: o.first(), More: o[1:]}
	if next := p.next(i); next >= 0 && !o.last().before(c.Held[next].Slot) {
		r.Late = true
	}
	c.Held[i].Reserve = r
}

// another is the first time on a later day that meets the lesson's needs and
// that nothing has taken.
func (p *puzzle) another(i int, o option, taken byDay, dropped []bool) (option, bool) {
	for k, s := range p.spare[i] {
		if o.first().Date.Before(s.first().Date) && taken.free(s) && p.suits(i, k, true, dropped) {
			return s, true
		}
	}
	return nil, false
}

// byDay are options by their day, since those of two days are never over one another.
type byDay map[place.Date][]option

func (b byDay) add(o option) {
	day := o.first().Date
	b[day] = append(b[day], o)
}

func (b byDay) free(o option) bool { return !slices.ContainsFunc(b[o.first().Date], o.overlaps) }

// exchange lets lesson i change places with the indoor lesson that it names, or
// the next one, where both fit.
func (p *puzzle) exchange(c *Calendar, i int, at []int, dropped []bool) bool {
	j := p.lessons[i].With - 1
	if j < 0 {
		j = p.next(i)
	}
	if j <= i || j >= len(p.lessons) || at[j] < 0 || p.lessons[j].Weather() {
		return false
	}
	mine, theirs := p.inPlace(i, p.options[j][at[j]]), p.inPlace(j, p.options[i][at[i]])
	if mine == nil || theirs == nil || mine.overlaps(theirs) || !p.content(i, mine, dropped) {
		return false
	}
	for m, k := range at {
		if k >= 0 && m != i && m != j && (mine.overlaps(p.options[m][k]) || theirs.overlaps(p.options[m][k])) {
			return false
		}
	}
	c.Held[i].Reserve = Reserve{Kind: InExchange, Slot: mine.first(), More: mine[1:], With: j + 1}
	return true
}

// inPlace is lesson i held from when o begins; nil where it would outlast both
// o and the lesson times from there on.
func (p *puzzle) inPlace(i int, o option) option {
	l := p.lessons[i]
	l.Start = o.first().From
	day := o.first().Date
	mine := p.term.from(l, day)
	if mine == nil || p.term.Open || mine.last().To <= o.last().To {
		return mine
	}
	times := p.term.TimesOn(day)
	k := slices.IndexFunc(times, func(s Span) bool { return s.From == l.Start })
	switch {
	case k >= 0 && p.term.at(l, day, times, k) == nil:
		return nil
	case k < 0 && (len(times) == 0 || mine.last().To > times[len(times)-1].To):
		return nil
	}
	return mine
}

// content reports whether the option meets the lesson's needs.
func (p *puzzle) content(i int, o option, dropped []bool) bool {
	for _, r := range p.needs[i] {
		if !dropped[r] && !o.meets(p.rules[r].Need, p.known) {
			return false
		}
	}
	return true
}
