package classroom

import (
	"slices"
	"sort"
)

// A tail is how a partial calendar ends.
type tail struct {
	last  option // of the last lesson; nil before the first
	today []int  // the lessons of its day
	held  []bool // by lesson
}

// leftOut returns which lessons are left out for want of room, pinned ones never. Mostly all
// are held, which is quick to see.
func (p *puzzle) leftOut() []bool {
	if p.holdsAll() {
		return make([]bool, len(p.lessons))
	}
	return p.mostHeld()
}

// mostHeld returns which lessons are left out where the term is too short for
// all of them even without needs: as few as can be. Pinned lessons are never
// left out.
//
// It goes through the lessons and keeps, for every number of lessons held so
// far, the tails that may leave the most room.
func (p *puzzle) mostHeld() []bool {
	ends := [][]tail{{{held: make([]bool, len(p.lessons))}}}
	for i := range p.lessons {
		if p.pinned[i] {
			continue
		}
		next := make([][]tail, len(ends)+1)
		for n := len(ends) - 1; n >= 0; n-- { // so that of equal tails the one without lesson i comes first
			for _, t := range ends[n] {
				next[n] = p.keep(next[n], t)
				if k := p.first(t, i, 0); k < len(p.options[i]) { // a later option leaves no more room
					next[n+1] = p.keep(next[n+1], t.with(i, p.options[i][k]))
				}
			}
		}
		for len(next[len(next)-1]) == 0 {
			next = next[:len(next)-1]
		}
		ends = next
	}
	out := make([]bool, len(p.lessons))
	held := ends[len(ends)-1][0].held
	for i := range p.lessons {
		out[i] = !held[i] && !p.pinned[i]
	}
	return out
}

// holdsAll reports whether mostHeld leaves no lesson out. Where every lesson is
// held, each has the earliest time that the one before it leaves, and there is
// nothing to choose.
func (p *puzzle) holdsAll() bool {
	t := tail{held: make([]bool, len(p.lessons))}
	from := map[*option]int{} // lessons of one list go on where the last of them stopped
	for i := range p.lessons {
		if p.pinned[i] {
			continue
		}
		if len(p.options[i]) == 0 {
			return false
		}
		list := &p.options[i][0]
		k := p.first(t, i, from[list])
		if k == len(p.options[i]) {
			return false
		}
		from[list] = k
		t = t.with(i, p.options[i][k])
	}
	return true
}

// first returns the first option of lesson i, from the one of that number on, that
// can be held behind the rest; as many as there are where none can.
func (p *puzzle) first(t tail, i, from int) int {
	list := p.options[i]
	k := from
	if t.last != nil {
		k += sort.Search(len(list)-from, func(k int) bool { return t.last.last().before(list[from+k].first()) })
	}
	for k < len(list) && !p.joins(t, i, list[k]) {
		k++
	}
	return k
}

// joins reports whether lesson i can be held behind the rest; the same as the
// edges that follow makes.
func (p *puzzle) joins(t tail, i int, o option) bool {
	if t.last == nil {
		return true
	}
	if !t.last.last().before(o.first()) {
		return false
	}
	if o.first().Date != t.last.first().Date {
		return true
	}
	for back := range t.today {
		j := t.today[len(t.today)-1-back]
		if !(p.dated(i) && p.dated(j)) && p.room(o) <= back+1 {
			return false
		}
	}
	return true
}

func (t tail) with(i int, o option) tail {
	held := slices.Clone(t.held)
	held[i] = true
	var today []int
	if t.last != nil && t.last.first().Date == o.first().Date {
		today = slices.Clone(t.today)
	}
	return tail{o, append(today, i), held}
}

// keep adds a tail to those that leave the most room. Of two that leave the
// same, the one that was there first stays: it holds the earlier lessons.
func (p *puzzle) keep(tails []tail, t tail) []tail {
	if slices.ContainsFunc(tails, func(other tail) bool { return p.noRoomier(t, other) }) {
		return tails
	}
	var kept []tail
	for _, other := range tails {
		if !p.noRoomier(other, t) {
			kept = append(kept, other)
		}
	}
	return append(kept, t)
}

// noRoomier reports whether s leaves no more room than t.
func (p *puzzle) noRoomier(s, t tail) bool {
	switch {
	case t.last == nil:
		return true
	case s.last == nil:
		return false
	case s.last.first().Date != t.last.first().Date:
		return t.last.first().Date.Before(s.last.first().Date)
	case t.last.last().To > s.last.last().To || len(t.today) > len(s.today):
		return false
	}
	for back := range t.today { // lessons with a date do not crowd one another
		if p.dated(t.today[len(t.today)-1-back]) != p.dated(s.today[len(s.today)-1-back]) {
			return false
		}
	}
	return true
}
