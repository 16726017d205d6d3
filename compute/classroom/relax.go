package classroom

import (
	"slices"
)

// mostLooks bounds the work of looking for a smallest set of rules to drop, in
// looks at an option or an edge. A unit of a dozen lessons with three conflicts takes some
// tens of thousands.
const mostLooks = 3_000_000

// relax returns a smallest set of rules whose drop makes a calendar possible,
// with that calendar. smallest is false where the bound was met and the set is
// merely one of which every rule is needed. There must be a calendar without
// any rules.
func (p *puzzle) relax() (drop []int, at []int, smallest bool) {
	type node struct{ drop []int }
	open := []node{{}}
	seen := map[string]bool{}
	for len(open) > 0 && p.looks < mostLooks {
		n := open[0]
		open = open[1:]
		if at, ok := p.climb(p.without(n.drop)); ok {
			return n.drop, at, true
		}
		for _, r := range p.quarrel(n.drop) {
			child := append(slices.Clone(n.drop), r)
			slices.Sort(child)
			if key := setKey(child); !seen[key] {
				seen[key] = true
				open = append(open, node{child})
			}
		}
	}
	drop, at = p.sparing()
	return drop, at, false
}

// quarrel returns rules that can not hold together, of which every one is
// needed for that, besides what holds always.
func (p *puzzle) quarrel(dropped []int) (rules []int) {
	off := p.without(dropped)
	for r := range p.rules {
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

// sparing drops everything, and takes back what it can.
func (p *puzzle) sparing() (drop []int, at []int) {
	off := make([]bool, len(p.rules))
	for r := range off {
		off[r] = true
	}
	for r := range off {
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
