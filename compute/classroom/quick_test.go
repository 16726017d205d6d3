//go:build unix && !race

package classroom

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"syscall"
	"testing"
	"time"
)

// processor returns the processor time that the process has taken.
func processor(t *testing.T) time.Duration {
	t.Helper()
	var used syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &used); err != nil {
		t.Fatal(err)
	}
	return time.Duration(used.Utime.Nano() + used.Stime.Nano())
}

// mixed are lessons without a date that need now this, now that.
func mixed(n int) []Lesson {
	kinds := []Need{{Kind: Dry}, {Kind: SunUp, Height: SunLeast}, {Kind: MoonUp, Height: MoonLeast}, {Kind: HourMarks, Height: SunLeast, Marks: Span{9 * time.Hour, 15 * time.Hour}}}
	var lessons []Lesson
	for i := range n {
		l := Lesson{Title: fmt.Sprint("lesson ", i+1), Start: AnyTime}
		if i%3 > 0 {
			l.Needs = []Need{kinds[i%len(kinds)]}
		}
		if i%7 == 3 {
			l.Wet = Kept
			l.Needs = append(l.Needs, kinds[0])
		}
		if i%10 == 9 {
			l.After = Gap{Least: 2, Most: 5, Clock: i%20 == 19}
		}
		lessons = append(lessons, l)
	}
	return lessons
}

// A unit of a hundred lessons, in a term with room or without, is arranged within
// two seconds of processor time, with the advice for each lesson that finds no
// day; the limit is the project's own. What comes out is what the search gave
// before it was made quick, when the advice alone took six seconds a lesson.
func TestHundredLessonsAreQuick(t *testing.T) {
	const limit = 2 * time.Second
	sky := Over(moncton(t))
	plain := make([]Lesson, 100)
	for i := range plain {
		plain[i] = Lesson{Title: fmt.Sprint(i), Start: AnyTime}
	}
	dark, all := mixed(100), mixed(100)
	for i := range dark {
		if i%2 == 0 {
			dark[i].Needs = append(dark[i].Needs, Need{Kind: Dark})
		}
		all[i].Wet = Kept
		all[i].Needs = []Need{{Kind: SunUp, Height: SunLeast, Window: 5 * time.Minute}, {Kind: MoonUp, Height: MoonLeast, Window: 5 * time.Minute}, {Kind: Dark}, {Kind: DarkBy, By: 20 * time.Hour}}
		all[i].Start = clockOf(9+i%6, 0)
		all[i].Length = time.Duration(20+i) * time.Minute
		if i > 0 {
			all[i].After = Gap{Lesson: 1 + i*i%i, Least: i % 3, Most: 30, Clock: true}
		}
	}
	for _, c := range []struct {
		name            string
		lessons         []Lesson
		calendarDays    int
		daily           int
		placed, dropped int
		days, denser    int // what would make room
	}{
		{"plain, three weeks", plain, 19, 1, 15, 0, 85, 0},
		{"plain, a year", plain, 365, 1, 100, 0, 1, 2},
		{"plain, three weeks, five a day", plain, 19, 5, 75, 0, 5, 0},
		{"needs, three weeks", mixed(100), 19, 1, 15, 2, 85, 0},
		{"needs, half a year", mixed(100), 180, 1, 100, 12, 1, 2},
		{"needs, a year, two a day", mixed(100), 365, 2, 100, 0, 1, 3},
		{"needs, three weeks, twelve a day", mixed(100), 19, 12, 75, 29, 5, 0},
		{"dark by day, a year", dark, 365, 1, 100, 50, 1, 2},
		{"dark by day, three weeks, three a day", dark, 19, 3, 45, 37, 19, 0},
		{"all at once, a year", all, 365, 1, 100, -1, 1, 2},
		{"all at once, three weeks", all, 19, 4, -1, -1, -1, 0},
	} {
		term := Term{First: monday, Last: monday.Add(c.calendarDays - 1), Weekdays: fiveDays, Daily: c.daily,
			Times: spans(t, "9:00-9:50 10:00-10:50 11:00-11:50 13:00-13:50 14:00-14:50")}
		begin := processor(t)
		calendar := Arrange(c.lessons, term, sky)
		placed, days, denser := 0, 0, 0
		for _, h := range calendar.Held {
			if h.Placed {
				placed++
			} else {
				days, denser = term.Enough(c.lessons) // as build/plan asks for each
			}
		}
		if placed == len(c.lessons) {
			days, denser = term.Enough(c.lessons)
		} else {
			term.Without(c.lessons) // as it asks once for all
		}
		took := processor(t) - begin
		t.Logf("%s: %v", c.name, took.Round(time.Millisecond))
		if took > limit {
			t.Errorf("%s: %v of processor time, want %v at most", c.name, took, limit)
		}
		for what, is := range map[string][2]int{"lessons held": {placed, c.placed}, "rules dropped": {len(calendar.Dropped), c.dropped}, "days that would do": {days, c.days}, "lessons a day that would do": {denser, c.denser}} {
			if is[1] >= 0 && is[0] != is[1] {
				t.Errorf("%s: %d %s, want %d", c.name, is[0], what, is[1])
			}
		}
	}
}

// What would make room is what one finds by lengthening the term day by day, and
// by one lesson a day after the other, with the search that leaves out as little
// as it can.
func TestEnoughAgainstCounting(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 7))
	room := func(term Term, lessons []Lesson) bool {
		return !slices.Contains(newPuzzle(lessons, term, Sky{}, make([]bool, len(lessons))).mostHeld(), true)
	}
	tight := 0
	for n := range 3000 {
		c := random(r)
		longer, wantDays := c.term, 0
		for k := 1; k <= len(c.lessons)+1; k++ {
			if longer.Last = longer.Last.Add(1); room(longer, c.lessons) {
				wantDays = k
				break
			}
		}
		denser, wantDaily := c.term, 0
		for k := max(1, c.term.Daily+1); k <= len(c.lessons); k++ {
			if denser.Daily = k; room(denser, c.lessons) {
				wantDaily = k
				break
			}
		}
		if !room(c.term, c.lessons) {
			tight++
		}
		if days, daily := c.term.Enough(c.lessons); days != wantDays || daily != wantDaily {
			t.Fatalf("case %d: %d days or %d lessons a day, want %d and %d: %+v", n, days, daily, wantDays, wantDaily, c)
		}
	}
	if tight < 300 {
		t.Errorf("only %d of the terms are too short", tight)
	}
}
