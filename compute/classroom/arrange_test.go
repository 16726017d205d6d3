package classroom

import (
	"fmt"
	"math/rand/v2"
	"testing"
	"time"

	"noonbook/compute/place"
)

// a case of the search, small enough to try everything.
type trial struct {
	lessons []Lesson
	term    Term
	sky     Sky
}

var monday = place.Date{Year: 2027, Month: 4, Day: 12}

// random makes a term of up to four days with up to three lesson times, and up
// to four lessons that want and need this and that.
func random(r *rand.Rand) trial {
	t := trial{term: Term{First: monday, Last: monday.Add(r.IntN(4)), Daily: 1 + r.IntN(2)}}
	for d := time.Sunday; d <= time.Saturday; d++ {
		t.term.Weekdays = append(t.term.Weekdays, d)
	}
	for i := range 1 + r.IntN(3) {
		from := time.Duration(9+i) * time.Hour
		t.term.Times = append(t.term.Times, Span{from, from + 50*time.Minute})
	}
	chance := 2 + r.IntN(4)
	seed := r.Uint64()
	t.sky.Meets = func(n Need, s Slot) bool { // by chance, and the same each time
		h := rand.New(rand.NewPCG(seed^uint64(n.Kind)<<8, uint64(s.Date.Day)<<16^uint64(s.From/time.Minute)))
		return h.IntN(chance) > 0
	}
	change := monday.Add(r.IntN(5))
	t.sky.Clock = func(s Slot) int {
		if s.Date.Before(change) {
			return 0
		}
		return 1
	}
	for i := range 1 + r.IntN(4) {
		l := Lesson{Title: fmt.Sprint(i + 1), Start: AnyTime}
		if r.IntN(4) == 0 {
			l.Date = monday.Add(r.IntN(4))
		}
		if r.IntN(6) == 0 {
			l.Start = time.Duration(9+r.IntN(3)) * time.Hour
		}
		if r.IntN(5) == 0 {
			l.Length = time.Duration(30+r.IntN(100)) * time.Minute
		}
		if r.IntN(6) == 0 {
			l.Visits = 2
		}
		for _, kind := range []NeedKind{Dry, SunUp, MoonUp, Dark} {
			if r.IntN(4) == 0 {
				l.Needs = append(l.Needs, Need{Kind: kind})
			}
		}
		if r.IntN(4) == 0 {
			l.Wet = Kept
		}
		if i > 0 && r.IntN(3) == 0 {
			l.After = Gap{Lesson: r.IntN(i + 1), Least: r.IntN(3), Most: r.IntN(4), Clock: r.IntN(2) == 0}
		}
		t.lessons = append(t.lessons, l)
	}
	return t
}

// fits reports whether the assignment of options to lessons, nil for a lesson
// that is left out, breaks none of the rules that always hold.
func (t trial) fits(chosen []option, pinned []bool) bool {
	on := map[place.Date]int{}
	for i, o := range chosen {
		if pinned[i] {
			on[o[0].Date]++
		}
	}
	for i, o := range chosen {
		if o == nil || pinned[i] {
			continue
		}
		room := t.term.Daily - on[o[0].Date]
		if t.lessons[i].Date.IsZero() && room < 1 {
			return false
		}
		back := 0
		for j := i - 1; j >= 0; j-- {
			if chosen[j] == nil || pinned[j] {
				continue
			}
			back++
			if !chosen[j].last().before(o.first()) {
				return false
			}
			both := !t.lessons[i].Date.IsZero() && !t.lessons[j].Date.IsZero()
			if !both && back < t.term.Daily+1 && chosen[j][0].Date == o[0].Date && room <= back {
				return false
			}
		}
		for j := range chosen {
			if pinned[j] && chosen[j].overlaps(o) && !t.hemmed(i, chosen, pinned) {
				return false
			}
		}
	}
	return true
}

// hemmed reports whether a lesson with a date has no time that day over which
// no pinned lesson lies; it is held all the same.
func (t trial) hemmed(i int, chosen []option, pinned []bool) bool {
	if t.lessons[i].Date.IsZero() {
		return false
	}
	for _, o := range t.term.wanted(t.lessons[i], t.term.Days()) {
		over := false
		for j := range chosen {
			over = over || pinned[j] && chosen[j].overlaps(o)
		}
		if !over {
			return false
		}
	}
	return true
}

// brokenOrder is what a broken order counts: more than all other rules together, since
// the order of the lessons is not given up for any of them.
const brokenOrder = 1000

// weight is what broken counts for the rules that were dropped.
func weight(dropped []Rule) int {
	n := len(dropped)
	for _, r := range dropped {
		if r.Kind == ForOrder {
			n += brokenOrder - 1
		}
	}
	return n
}

// broken counts the rules that an assignment breaks and that could be dropped.
func (t trial) broken(chosen []option, pinned []bool, spare [][]option) int {
	n := 0
	for i, o := range chosen {
		if o == nil {
			continue
		}
		l := t.lessons[i]
		bad := map[NeedKind]bool{}
		for _, need := range l.Needs {
			if need.Kind != Dry && !o.meets(need, t.sky) {
				bad[need.Kind] = true
				n++
			}
		}
		next := -1
		for j := i + 1; j < len(chosen) && next < 0; j++ {
			if chosen[j] != nil {
				next = j
			}
		}
		if l.Wet == Kept && l.Weather() {
			found := false
			for _, s := range spare[i] {
				good := s[0].Date.After(o[0].Date) && (next < 0 || s.last().before(chosen[next].first()))
				for _, need := range l.Needs {
					good = good && (need.Kind == Dry || bad[need.Kind] || s.meets(need, t.sky))
				}
				found = found || good
			}
			if !found {
				n++
			}
		}
		n += t.brokenTies(chosen, pinned, i)
	}
	return n
}

func (t trial) brokenTies(chosen []option, pinned []bool, i int) int {
	n := 0
	o, gap := chosen[i], t.lessons[i].After
	j := gap.Lesson - 1
	if gap.Lesson == 0 {
		for j = i - 1; j >= 0 && chosen[j] == nil; j-- {
		}
	}
	if j >= 0 && chosen[j] != nil {
		days := chosen[j][0].Date.DaysUntil(o[0].Date)
		for _, bad := range []bool{
			gap.Least > 0 && days < gap.Least,
			gap.Most > 0 && days > gap.Most,
			gap.Clock && t.sky.Clock(chosen[j][0]) != t.sky.Clock(o[0]),
		} {
			if bad {
				n++
			}
		}
	}
	for j := i - 1; j >= 0; j-- { // order with pinned lessons, up to the nearest that is not
		if chosen[j] == nil || pinned[i] && pinned[j] {
			continue
		}
		if (pinned[i] || pinned[j]) && !chosen[j].last().before(o.first()) {
			n += brokenOrder
		}
		if !pinned[j] {
			break
		}
	}
	return n
}

// try goes through every assignment of the lessons that are not left out and
// returns the fewest broken rules, and of the assignments that break none the
// earliest time of each lesson.
func (t trial) try(out []bool, options, spare [][]option, pinned []bool) (fewest int, first []option, any bool) {
	fewest = 1 << 30
	chosen := make([]option, len(t.lessons))
	first = make([]option, len(t.lessons))
	var choose func(i int)
	choose = func(i int) {
		if i == len(chosen) {
			if !t.fits(chosen, pinned) {
				return
			}
			any = true
			n := t.broken(chosen, pinned, spare)
			fewest = min(fewest, n)
			for k, o := range chosen {
				if n == 0 && o != nil && (first[k] == nil || o.first().before(first[k].first()) || o.first().Date == first[k].first().Date && o.first().From < first[k].first().From) {
					first[k] = o
				}
			}
			return
		}
		if out[i] {
			chosen[i] = nil
			choose(i + 1)
			return
		}
		for _, o := range options[i] {
			chosen[i] = o
			choose(i + 1)
		}
	}
	choose(0)
	return fewest, first, any
}

// The search finds what trying everything finds: the same earliest calendar, or
// as few rules dropped, or as few lessons left out.
func TestArrangeAgainstTryingEverything(t *testing.T) {
	r := rand.New(rand.NewPCG(20270412, 9))
	possible, dropped, crowded := 0, 0, 0
	for n := range 1200 {
		c := random(r)
		var options, spare [][]option
		pinned := make([]bool, len(c.lessons))
		for i, l := range c.lessons {
			options = append(options, c.term.wanted(l, c.term.Days()))
			pinned[i] = !l.Date.IsZero() && len(options[i]) == 1
		}
		for _, l := range c.lessons { // what is kept free lies over no pinned lesson
			var list []option
			for _, o := range c.term.options(c.term.anytime(l), c.term.Days()) {
				over := false
				for j := range c.lessons {
					over = over || pinned[j] && options[j][0].overlaps(o)
				}
				if !over {
					list = append(list, o)
				}
			}
			spare = append(spare, list)
		}
		got := Arrange(c.lessons, c.term, c.sky)
		out := make([]bool, len(c.lessons))
		left := 0
		for i, h := range got.Held {
			out[i] = !h.Placed
			if out[i] {
				left++
			}
		}
		fewest, first, any := c.try(out, options, spare, pinned)
		if !any {
			t.Fatalf("case %d: the lessons held cannot be held: %+v\n%+v", n, got, c)
		}
		if !got.Smallest {
			t.Errorf("case %d: the search gave up", n)
		}
		if weight(got.Dropped) != fewest {
			t.Fatalf("case %d: rules that count %d dropped, %d suffice: %+v\n%+v", n, weight(got.Dropped), fewest, got, c)
		}
		for i, h := range got.Held {
			if fewest == 0 && h.Placed && h.Slot != first[i].first() {
				t.Fatalf("case %d: lesson %d is at %v, could be at %v\n%+v", n, i+1, h.Slot, first[i].first(), c)
			}
		}
		for mask := range 1 << len(c.lessons) { // fewer left out?
			fewer, bits := make([]bool, len(c.lessons)), 0
			pins := false
			for i := range fewer {
				fewer[i] = mask>>i&1 == 1
				if fewer[i] {
					bits++
					pins = pins || pinned[i]
				}
			}
			if bits < left && !pins {
				if _, _, any := c.try(fewer, options, spare, pinned); any {
					t.Fatalf("case %d: %d lessons left out, %d would do\n%+v", n, left, bits, c)
				}
			}
		}
		switch {
		case left > 0:
			crowded++
		case fewest > 0:
			dropped++
		default:
			possible++
		}
	}
	t.Logf("%d possible, %d with rules dropped, %d too crowded", possible, dropped, crowded)
	if possible < 200 || dropped < 200 || crowded < 50 {
		t.Error("the cases are not mixed")
	}
}
