package classroom

import (
	"math"
	"math/rand/v2"
	"testing"
	"testing/quick"
	"time"

	"noonbook/compute/place"
)

// Whatever the kit, a list has each thing once from each source, and as many of
// it as counting lesson by lesson gives.
func TestListCountsWhatTheLessonsNeed(t *testing.T) {
	holds := func(seed uint64, pupils, size uint8) bool {
		r := rand.New(rand.NewPCG(seed, 1))
		groups := Groups(int(pupils), int(size%6)+1)
		var lessons []Lesson
		used, again := map[string]int{}, map[string]int{}
		for range 1 + r.IntN(4) {
			var l Lesson
			for range r.IntN(5) {
				thing := Thing{Item: string(rune('a' + r.IntN(4))), Count: float64(r.IntN(9)) / 2, Share: Share(r.IntN(3)), Spare: r.IntN(3), UsedUp: r.IntN(2) == 0, Price: float64(r.IntN(3)), Pack: r.IntN(5)}
				l.Kit = append(l.Kit, thing)
				if n := thing.Need(int(pupils), groups); thing.UsedUp {
					used[thing.Item] += n
				} else {
					again[thing.Item] = max(again[thing.Item], n)
				}
			}
			lessons = append(lessons, l)
		}
		seen := map[string]bool{}
		for _, line := range List(lessons, int(pupils), groups) {
			if seen[line.Item] || line.Need != used[line.Item]+again[line.Item] || line.Cost < 0 || line.Packs > line.Need {
				return false
			}
			seen[line.Item] = true
		}
		return len(seen) <= 4
	}
	if err := quick.Check(holds, nil); err != nil {
		t.Error(err)
	}
}

// Packs are whole: 20 sheets in packs of 8 are three packs.
func TestListBuysWholePacks(t *testing.T) {
	lines := List([]Lesson{{Kit: []Thing{{Item: "sheet", Count: 20, Source: ToBuy, Price: 2.5, Pack: 8}}}}, 10, []int{5, 5})
	if len(lines) != 1 || lines[0].Packs != 3 || math.Abs(lines[0].Cost-7.5) > 1e-12 {
		t.Errorf("lines are %+v", lines)
	}
}

// Slots of a term lie on school days, in order, one for each lesson time.
func TestSlots(t *testing.T) {
	holds := func(seed uint64) bool {
		r := rand.New(rand.NewPCG(seed, 2))
		term := Term{First: monday, Last: monday.Add(r.IntN(60)), Weekdays: []time.Weekday{1, 2, 3, 4, 5}, Times: []Span{{9 * time.Hour, 10 * time.Hour}, {11 * time.Hour, 12 * time.Hour}}}
		for range r.IntN(6) {
			term.DaysOff = append(term.DaysOff, monday.Add(r.IntN(60)))
		}
		slots := term.Slots()
		for i, s := range slots {
			if !term.Holds(s.Date) || i > 0 && !slots[i-1].before(s) {
				return false
			}
		}
		return len(slots) == 2*len(term.Days())
	}
	if err := quick.Check(holds, nil); err != nil {
		t.Error(err)
	}
}

// Forty lessons in a school year of eight lesson times a day, with needs that
// quarrel at random, are arranged in bounded time: the search counts its steps.
func TestArrangeIsBounded(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 3))
	term := Term{First: monday, Last: monday.Add(LongestTerm - 1), Weekdays: []time.Weekday{1, 2, 3, 4, 5}, Daily: 1}
	for i := range 8 {
		term.Times = append(term.Times, Span{time.Duration(8+i) * time.Hour, time.Duration(8+i)*time.Hour + 50*time.Minute})
	}
	var lessons []Lesson
	for i := range 40 {
		l := Lesson{Start: AnyTime, Needs: []Need{{Kind: SunUp}, {Kind: MoonUp}}, Wet: Kept}
		if i > 0 {
			l.After = Gap{Lesson: 1 + r.IntN(i), Most: 1 + r.IntN(40)}
		}
		lessons = append(lessons, l)
	}
	sky := Sky{Meets: func(n Need, s Slot) bool { return (s.Date.Day*7+int(n.Kind)*3+int(s.From/time.Hour))%9 == 0 }}
	began := time.Now()
	c := Arrange(lessons, term, sky)
	t.Logf("%d of %d rules dropped in %v, smallest: %v", len(c.Dropped), 160, time.Since(began), c.Smallest)
	held := 0
	for i, h := range c.Held {
		if h.Placed {
			held++
		}
		if i > 0 && h.Placed && c.Held[i-1].Placed && !c.Held[i-1].before(h.Slot) {
			t.Fatalf("lesson %d is not after the one before it", i+1)
		}
	}
	if held != 40 || len(c.Dropped) == 0 {
		t.Errorf("%d lessons held, %d rules dropped", held, len(c.Dropped))
	}
}

// Rain: a kept time lies before the next lesson, an exchange gives both lessons
// the other's time, and no two reserves are one.
func TestReserves(t *testing.T) {
	dry := []Need{{Kind: Dry}}
	lessons := []Lesson{
		{Start: AnyTime, Needs: dry, Wet: Kept},
		{Start: AnyTime, Needs: dry, Wet: Changed},
		{Start: AnyTime},
		{Start: AnyTime, Needs: dry, Wet: Inside},
		{Start: AnyTime, Needs: dry},
	}
	term := Term{First: monday, Last: monday.Add(11), Weekdays: []time.Weekday{1, 2, 3, 4, 5}, Times: []Span{{9 * time.Hour, 10 * time.Hour}}}
	c := Arrange(lessons, term, Sky{})
	for i, want := range []struct {
		date, reserve place.Date
		kind          ReserveKind
	}{
		{monday, monday.Add(1), AtAnotherTime},
		{monday.Add(2), monday.Add(3), InExchange},
		{monday.Add(3), place.Date{}, NotNeeded},
		{monday.Add(4), place.Date{}, StaysIn},
		{monday.Add(7), monday.Add(8), AtAnotherTime},
	} {
		if h := c.Held[i]; h.Date != want.date || h.Reserve.Kind != want.kind || h.Reserve.Date != want.reserve {
			t.Errorf("lesson %d is %+v, want %+v", i+1, h, want)
		}
	}
}
