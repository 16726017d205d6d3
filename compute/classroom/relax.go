package classroom

import "slices"

// mostLooks bounds the work of looking for a smallest set of rules to drop, in
// looks at an option or an edge. A unit of a dozen lessons with three conflicts takes some
// tens of thousands.
const mostLooks = 3_000_000

// relax returns a smallest set of rules whose drop makes a calendar possible,
// with that calendar. smallest is false where the bound was met and the set is
// merely one of which every rule is needed. There must be a calendar without
// any rules.
//
// The order of the lessons is never given up for the sky: it gives way only as far
// as there would be no calendar even if nothing else were asked for, as where an
// author's dates leave no day between two lessons.
func (p *puzzle) relax() (drop []int, at []int, smallest bool) {
	var order, rest []int
	for r, rule := range p.rules {
		if rule.Kind == ForOrder {
			order = append(order, r)
		} else {
			rest = append(rest, r)
		}
	}
	smallest = true
	var never []int
	if len(order) > 0 {
		var fewest bool
		never, _, fewest = p.fewest(order, rest)
		smallest = fewest
	}
	drop, at, fewest := p.fewest(rest, never)
	drop = append(drop, never...)
	slices.Sort(drop)
	return drop, at, smallest && fewest
}

// fewest returns a smallest set among those rules whose drop, besides that of the
// gone, makes a calendar possible, with that calendar.
func (p *puzzle) fewest(among, gone []int) (drop []int, at []int, smallest bool) {
	open := [][]int{nil}
	seen := map[string]bool{}
	for len(open) > 0 && p.looks < mostLooks {
		n := open[0]
		open = open[1:]
		off := p.without(append(slices.Clone(n), gone...))
		if at, ok := p.climb(off); ok {
			return n, at, true
		}
		for _, r := range p.quarrel(among, off) {
			child := append(slices.Clone(n), r)
			slices.Sort(child)
			if key := setKey(child); !seen[key] {
				seen[key] = true
				open = append(open, child)
			}
		}
	}
	drop, at = p.sparing(among, gone)
	return drop, at, false
}

// quarrel returns those of the rules that cannot hold together, of which every one
// is needed for that, besides what holds always. It works on off, which says which
// rules are dropped.
func (p *puzzle) quarrel(among []int, off []bool) (rules []int) {
	for _, r := range among {
		if off[r] {
			continue
		}
		off[r] = true
		if _, ok := p.climb(off); ok {
			off[r] = false // needed
			rules = append(rules, r)
		}
	}
	return rules
}

// sparing drops all of the rules, and takes back what it can.
func (p *puzzle) sparing(among, gone []int) (drop []int, at []int) {
	off := p.without(append(slices.Clone(among), gone...))
	for _, r := range among {
		off[r] = false
		if _, ok := p.climb(off); !ok {
			off[r] = true
			drop = append(drop, r)
		}
	}
	at, _ = p.climb(off)
	return drop, at
}

func (p *puzzle) without(drop []int) []bool {
	off := make([]bool, len(p.rules))
	for _, r := range drop {
		off[r] = true
	}
	return off
}

func setKey(set []int) string {
	key := make([]byte, 0, 2*len(set))
	for _, r := range set {
		key = append(key, byte(r), byte(r>>8))
	}
	return string(key)
}
