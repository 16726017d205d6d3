package classroom

import (
	"math/rand/v2"
	"slices"
	"testing"
	"time"
)

// Which lessons to leave out of a term of one lesson time a day, worked out by hand.
func TestWithout(t *testing.T) {
	plain, core := Lesson{Start: AnyTime}, Lesson{Start: AnyTime, Core: true}
	following := func(n int) Lesson { l := plain; l.After = Gap{Lesson: n, Least: 1}; return l }
	for _, c := range []struct {
		name    string
		days    int
		lessons []Lesson
		want    []int
	}{
		{"room for all", 3, []Lesson{plain, plain, plain}, nil},
		{"the last first", 3, []Lesson{plain, plain, plain, plain, plain}, []int{5, 4}},
		{"not a core one", 3, []Lesson{plain, plain, core, plain, core}, []int{4, 2}},
		{"only core ones", 3, []Lesson{core, core, core, core}, nil},
		{"too few that are not core", 2, []Lesson{core, plain, core, core}, nil},
		{"not one that a core lesson follows", 2, []Lesson{plain, plain, {Start: AnyTime, Core: true, After: Gap{Lesson: 2, Least: 1}}}, []int{1}},
		{"what follows goes first", 2, []Lesson{core, plain, following(2), core}, []int{3, 2}},
		// The last has Thursday and Friday, and without it the first three still have
		// only Monday and Tuesday.
		{"not one whose place helps nobody", 5, []Lesson{plain, plain, plain, {Start: clockOf(9, 0), Date: on(4, 14), Core: true}, plain}, []int{3}},
		{"not one that is too long for any day", 2, []Lesson{plain, plain, {Start: AnyTime, Length: 500 * time.Minute}, plain}, []int{4}},
	} {
		t.Run(c.name, func(t *testing.T) {
			term := Term{First: monday, Last: monday.Add(c.days - 1), Weekdays: fiveDays, Times: spans(t, "9:00-9:50")}
			if got := term.Without(c.lessons); !slices.Equal(got, c.want) {
				t.Errorf("leave out %v, want %v", got, c.want)
			}
		})
	}
}

// Planned again without them, all the rest has a day, and with one of them fewer out,
// not all has.
func TestWithoutIsTrueAndNeeded(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 14))
	advised := 0
	for range 600 {
		c := random(r)
		for len(c.lessons) < 9 {
			c.lessons = append(c.lessons, random(r).lessons...)
		}
		for i := range c.lessons {
			c.lessons[i].Core = r.IntN(3) == 0
			c.lessons[i].After = Gap{}
			c.lessons[i].With = 0
		}
		without := c.term.Without(c.lessons)
		unplaced := func(out []int) int {
			var rest []Lesson
			for i, l := range c.lessons {
				if !slices.Contains(out, i+1) && c.term.Fits(l) {
					rest = append(rest, l)
				}
			}
			n := 0
			calendar := Arrange(rest, c.term, Sky{})
			for _, h := range calendar.Held {
				if !h.Placed {
					n++
				}
			}
			for _, r := range calendar.Dropped {
				if r.Kind == ForOrder {
					n++
				}
			}
			return n
		}
		if len(without) == 0 {
			continue
		}
		advised++
		if n := unplaced(without); n > 0 {
			t.Fatalf("without %v there are still %d lessons without a day: %+v", without, n, c)
		}
		for i, n := range without {
			if c.lessons[n-1].Core {
				t.Fatalf("%d is core", n)
			}
			if fewer := slices.Delete(slices.Clone(without), i, i+1); unplaced(fewer) == 0 {
				t.Fatalf("%v would do, and %v are told", fewer, without)
			}
		}
	}
	if advised < 100 {
		t.Errorf("only %d terms are too short", advised)
	}
}
