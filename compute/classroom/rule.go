package classroom

import (
	"time"

	"noonbook/compute/place"
)

// A Rule is one thing that can be dropped to make a calendar possible.
type Rule struct {
	Kind   RuleKind
	Lesson int // number of the lesson, from 1
	Need   Need
	Other  int // number of the lesson that it is tied to, or 0
}

// A RuleKind tells the sorts of Rule apart.
type RuleKind int

const (
	ForNeed    RuleKind = iota // Need
	ForLeast                   // days after the other lesson, at least
	ForMost                    // days after the other lesson, at most
	ForClock                   // no clock change since the other lesson
	ForKept                    // a lesson time kept free before the next lesson
	ForOrder                   // after the other lesson, where one of the two has a date
	ForEvening                 // an evening with stars, in time for pupils
)

// An edge says that lesson a is not before some bound that follows from lesson
// b: ok answers whether an option of a is late enough, and must be monotone, so
// that it goes on holding when a moves later or b earlier.
type edge struct {
	a, b int
	rule int // index of the Rule that can drop it, −1 for none
	ok   func(a, b option) bool
}

// A puzzle is what the search works on.
type puzzle struct {
	lessons  []Lesson
	term     Term
	sky      Sky
	out      []bool // lessons that are left out
	pinned   []bool // lessons that have a date and can be held at one time only
	daily    int
	options  [][]option // by lesson
	spare    [][]option // by lesson: where it could be held on another day
	rules    []Rule
	needs    [][]int // by lesson: the rules of its needs
	kept     []int   // by lesson: the rule of the time kept free behind it, or −1
	edges    []edge
	known    Sky        // sky, which remembers what it was asked
	met      [][]answer // by rule and option, whether the option meets the rule's need
	metSpare [][]answer // the same for the options of another day
	looks    int        // at options and edges, so far

	pinnedOn map[place.Date]int // lessons by the date that they are pinned to
}

// An answer is what is known of an option and a need.
type answer byte

const (
	unasked answer = iota
	yes
	no
)

func newPuzzle(lessons []Lesson, term Term, sky Sky, out []bool) *puzzle {
	p := newOptions(lessons, term, true)
	p.sky, p.out, p.known = sky, out, sky.remembering()
	for i, l := range lessons {
		p.needs = append(p.needs, nil)
		p.kept = append(p.kept, -1)
		if out[i] {
			continue
		}
		for _, n := range l.Needs {
			if n.Kind != Dry {
				p.needs[i] = append(p.needs[i], p.rule(Rule{Kind: ForNeed, Lesson: i + 1, Need: n}))
			}
		}
		if l.Wet == Kept && l.Weather() {
			p.kept[i] = p.rule(Rule{Kind: ForKept, Lesson: i + 1})
		}
		p.tie(i)
		p.follow(i)
	}
	p.met, p.metSpare = make([][]answer, len(p.rules)), make([][]answer, len(p.rules))
	return p
}

// A shape is what the options of a lesson depend on besides the term.
type shape struct {
	date          place.Date
	start, length time.Duration
	times, visits int
}

// newOptions is a puzzle without rules: who can be held when, and if it is asked
// for, where on another day. Lessons of one shape share their lists, which nobody
// changes.
func newOptions(lessons []Lesson, term Term, another bool) *puzzle {
	p := &puzzle{lessons: lessons, term: term, daily: max(1, term.Daily), pinnedOn: map[place.Date]int{}}
	days := term.Days()
	wanted, spare := map[shape][]option{}, map[shape][]option{}
	for _, l := range lessons {
		s := shape{l.Date, l.Start, l.Length, l.Times, l.Visits}
		if _, met := wanted[s]; !met {
			wanted[s] = term.wanted(l, days)
			if another {
				spare[s] = term.options(term.anytime(l), days)
			}
		}
		p.options = append(p.options, wanted[s])
		p.spare = append(p.spare, spare[s])
		p.pinned = append(p.pinned, !l.Date.IsZero() && len(wanted[s]) == 1)
	}
	p.clear()
	return p
}

func (p *puzzle) dated(i int) bool { return !p.lessons[i].Date.IsZero() }

func (p *puzzle) rule(r Rule) int {
	p.rules = append(p.rules, r)
	return len(p.rules) - 1
}

// clear takes away the options that lie over a pinned lesson, or on a day that
// is full of them.
func (p *puzzle) clear() {
	var taken []option
	for i := range p.lessons {
		if p.pinned[i] {
			taken = append(taken, p.options[i][0])
			p.pinnedOn[p.options[i][0].first().Date]++
		}
	}
	if len(taken) == 0 {
		return // no list has anything to lose, as the term wants a lesson a day at least
	}
	type lists struct{ options, spare []option }
	cleared := map[shape]lists{}
	for i, l := range p.lessons {
		s := shape{l.Date, l.Start, l.Length, l.Times, l.Visits}
		c, met := cleared[s]
		if !met {
			c.spare = p.free(p.spare[i], taken, true)
			c.options = p.options[i]
			if !p.pinned[i] {
				if kept := p.free(c.options, taken, p.dated(i)); len(kept) > 0 || !p.dated(i) {
					c.options = kept
				}
			}
			cleared[s] = c
		}
		p.options[i], p.spare[i] = c.options, c.spare
	}
}

func (p *puzzle) free(list, taken []option, crowd bool) []option {
	var kept []option
	for _, o := range list {
		full := !crowd && p.room(o) < 1
		for _, t := range taken {
			full = full || o.overlaps(t)
		}
		if !full {
			kept = append(kept, o)
		}
	}
	return kept
}

// room is how many lessons besides the pinned ones the option's day may have.
func (p *puzzle) room(o option) int { return p.daily - p.pinnedOn[o.first().Date] }

// follow keeps the lessons in their order and the days from overflowing. Two
// pinned lessons are held when they are held.
func (p *puzzle) follow(i int) {
	for j, back := i-1, 0; j >= 0 && back < p.daily; j-- {
		if p.out[j] || p.pinned[j] {
			continue
		}
		back++
		if p.pinned[i] {
			p.after(i, j, p.rule(Rule{Kind: ForOrder, Lesson: i + 1, Other: j + 1}))
			return
		}
		if back == 1 {
			p.after(i, j, -1)
		}
		if !p.dated(i) || !p.dated(j) {
			between := back
			p.edges = append(p.edges, edge{i, j, -1, func(a, b option) bool {
				return b.first().Date.Before(a.first().Date) || a.first().Date == b.first().Date && p.room(a) > between
			}})
		}
	}
	for j := i - 1; j >= 0 && (p.out[j] || p.pinned[j]); j-- {
		if !p.out[j] && !p.pinned[i] {
			p.after(i, j, p.rule(Rule{Kind: ForOrder, Lesson: i + 1, Other: j + 1}))
		}
	}
}

func (p *puzzle) after(i, j, rule int) {
	p.edges = append(p.edges, edge{i, j, rule, func(a, b option) bool { return b.last().before(a.first()) }})
}

// tie adds what a lesson asks of the time since an earlier one.
func (p *puzzle) tie(i int) {
	gap := p.lessons[i].After
	j := gap.Lesson - 1
	if gap.Lesson == 0 {
		for j = i - 1; j >= 0 && p.out[j]; j-- {
		}
	}
	if j < 0 || j >= len(p.lessons) || j == i || p.out[j] {
		return
	}
	if gap.Least > 0 {
		rule := p.rule(Rule{Kind: ForLeast, Lesson: i + 1, Other: j + 1})
		p.edges = append(p.edges, edge{i, j, rule, func(a, b option) bool {
			return b.first().Date.DaysUntil(a.first().Date) >= gap.Least
		}})
	}
	if gap.Most > 0 {
		rule := p.rule(Rule{Kind: ForMost, Lesson: i + 1, Other: j + 1})
		p.edges = append(p.edges, edge{j, i, rule, func(a, b option) bool {
			return a.first().Date.DaysUntil(b.first().Date) <= gap.Most
		}})
	}
	if gap.Clock {
		rule := p.rule(Rule{Kind: ForClock, Lesson: i + 1, Other: j + 1})
		ok := func(a, b option) bool { return p.sky.since(a.first()) >= p.sky.since(b.first()) }
		p.edges = append(p.edges, edge{i, j, rule, ok}, edge{j, i, rule, ok})
	}
}
