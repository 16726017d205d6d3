package classroom

import (
	"slices"
	"sort"
)

// mostRestored bounds how many lessons Without tries to take back, each at the cost of
// one look through the term.
const mostRestored = 30

// Without returns lessons, by number from 1, without which the term has room for all
// the rest in their order, apart from what they need of the sky and of one another;
// none where it has room for all, or where no lesson that is not core makes room. Each
// of them is needed for that.
//
// They come in the order in which to leave them out: the last of the unit first, since
// fewer lessons rest on it, and a lesson only when nothing follows it that is held. A
// lesson for which no school day is long enough is none of these.
func (t Term) Without(all []Lesson) []int {
	lessons, index := inSchool(all)
	out := t.without(lessons)
	for i, number := range out {
		out[i] = index[number-1] + 1
	}
	return out
}

// without is Without for lessons that are all held in school.
func (t Term) without(lessons []Lesson) []int {
	order := t.spareable(lessons)
	fits := func(out []int) bool {
		var rest []Lesson
		for i, l := range lessons {
			if !slices.Contains(out, i+1) && t.Fits(l) {
				l.Needs, l.After, l.Wet = nil, Gap{}, Later
				rest = append(rest, l)
			}
		}
		p := newPuzzle(rest, t, Sky{}, make([]bool, len(rest)))
		_, ok := p.climb(make([]bool, len(p.rules)))
		return ok
	}
	n := sort.Search(len(order)+1, func(n int) bool { return fits(order[:n]) }) // fewer lessons never need more room
	if n == 0 || n > len(order) {
		return nil
	}
	out := slices.Clone(order[:n])
	for i := 0; i < len(out)-1 && n <= mostRestored; { // the last of them is needed, as one fewer did not do
		fewer := slices.Delete(slices.Clone(out), i, i+1)
		if after := lessons[out[i]-1].After.Lesson; !slices.Contains(fewer, after) && fits(fewer) {
			out = fewer
		} else {
			i++
		}
	}
	return out
}

// spareable are the lessons that can be left out, each behind those that follow it.
func (t Term) spareable(lessons []Lesson) []int {
	var order []int
	for i := len(lessons) - 1; i >= 0; i-- {
		followed := false
		for j, l := range lessons {
			followed = followed || l.After.Lesson == i+1 && j != i && !slices.Contains(order, j+1)
		}
		if !lessons[i].Core && !followed && t.Fits(lessons[i]) {
			order = append(order, i+1)
		}
	}
	return order
}
