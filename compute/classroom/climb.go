package classroom

import "sort"

// climb returns the earliest option of every lesson such that every rule holds
// that is not dropped; false where there is none. Lessons that are left out
// have −1. See the package documentation for why climbing suffices.
func (p *puzzle) climb(dropped []bool) ([]int, bool) {
	at := make([]int, len(p.lessons))
	for i := range at {
		if p.out[i] {
			at[i] = -1
			continue
		}
		if !p.rise(at, i, dropped) {
			return nil, false
		}
	}
	for moved := true; moved; {
		moved = false
		for _, e := range p.edges {
			if e.rule >= 0 && dropped[e.rule] {
				continue
			}
			p.looks++
			for !e.ok(p.options[e.a][at[e.a]], p.options[e.b][at[e.b]]) {
				moved = true
				p.looks++
				at[e.a]++
				if !p.rise(at, e.a, dropped) {
					return nil, false
				}
			}
		}
		for i := range p.lessons {
			if p.kept[i] < 0 || dropped[p.kept[i]] {
				continue
			}
			reserve, ok := p.reserve(i, p.options[i][at[i]], dropped)
			if !ok {
				return nil, false
			}
			next := p.next(i)
			for next >= 0 && !reserve.last().before(p.options[next][at[next]].first()) {
				moved = true
				p.looks++
				at[next]++
				if !p.rise(at, next, dropped) {
					return nil, false
				}
			}
		}
	}
	return at, true
}

// rise moves a lesson up to the first option that meets its needs.
func (p *puzzle) rise(at []int, i int, dropped []bool) bool {
	for at[i] < len(p.options[i]) && !p.suits(i, at[i], false, dropped) {
		at[i]++
		p.looks++
	}
	return at[i] < len(p.options[i])
}

// suits reports whether an option meets the lesson's needs.
func (p *puzzle) suits(i, k int, spare bool, dropped []bool) bool {
	list := p.options[i]
	if spare {
		list = p.spare[i]
	}
	for _, r := range p.needs[i] {
		if dropped[r] {
			continue
		}
		if !p.meets(r, k, list, spare) {
			return false
		}
	}
	return true
}

// meets reports whether an option of the list meets the need of the rule. Each
// rule remembers its answers by option; lessons that need the same of the same
// lesson time ask the sky once.
func (p *puzzle) meets(r, k int, list []option, spare bool) bool {
	memo := &p.met[r]
	if spare {
		memo = &p.metSpare[r]
	}
	if *memo == nil {
		*memo = make([]answer, len(list))
	}
	if (*memo)[k] == unasked {
		(*memo)[k] = no
		if list[k].meets(p.rules[r].Need, p.known) {
			(*memo)[k] = yes
		}
	}
	return (*memo)[k] == yes
}

// next is the lesson after i, −1 for none.
func (p *puzzle) next(i int) int {
	for j := i + 1; j < len(p.lessons); j++ {
		if !p.out[j] {
			return j
		}
	}
	return -1
}

// reserve is the first option on a later day than o that meets the lesson's
// needs.
func (p *puzzle) reserve(i int, o option, dropped []bool) (option, bool) {
	list := p.spare[i]
	k := sort.Search(len(list), func(k int) bool { return o.first().Date.Before(list[k].first().Date) })
	for ; k < len(list); k++ {
		p.looks++
		if p.suits(i, k, true, dropped) {
			return list[k], true
		}
	}
	return nil, false
}
