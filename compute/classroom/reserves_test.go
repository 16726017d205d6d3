package classroom

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"
)

// reserves writes what becomes of each lesson when it is wet.
func reserves(c Calendar) string {
	var lines []string
	for _, h := range c.Held {
		r := h.Reserve
		line := map[ReserveKind]string{NotNeeded: "-", StaysIn: "inside", NoTime: "no time", AtAnotherTime: "at", InExchange: "change"}[r.Kind]
		if r.Kind == AtAnotherTime || r.Kind == InExchange {
			line += fmt.Sprintf(" %s %s", r.Date.String()[5:], hhmm(r.From))
			for _, m := range r.More {
				line += "+" + hhmm(m.From)
			}
		}
		if r.Kind == InExchange {
			line += fmt.Sprintf(" with %d", r.With)
		}
		if r.Late {
			line += " late"
		}
		lines = append(lines, line)
	}
	return strings.Join(lines, ", ")
}

// What becomes of wet lessons, worked out with a wall calendar: Monday 12 April
// to Friday 23 April 2027.
func TestWetLessons(t *testing.T) {
	dry, sun := []Need{{Kind: Dry}}, []Need{{Kind: SunUp}}
	outdoor := func(w Wet) Lesson { return Lesson{Start: AnyTime, Needs: dry, Wet: w} }
	plain := Lesson{Start: AnyTime}
	with := func(n int) Lesson { l := outdoor(Changed); l.With = n; return l }
	long := func(l Lesson, minutes int) Lesson { l.Length = time.Duration(minutes) * time.Minute; return l }
	visits := func(l Lesson, n int) Lesson { l.Visits = n; return l }
	fourteenth := Sky{Meets: func(n Need, s Slot) bool { return s.Date.Day != 13 }} // no Sun on Tuesday
	mornings := Sky{Meets: func(n Need, s Slot) bool { return s.From < clockOf(10, 0) }}
	for _, c := range []struct {
		name    string
		days    int
		times   string
		daily   int
		sky     Sky
		lessons []Lesson
		held    string
		want    string
	}{
		{"later, in the free day behind", 3, "9:00-9:50", 1, Sky{}, []Lesson{outdoor(Later), plain}, "04-12 9:00-9:50, 04-13 9:00-9:50", "at 04-14 9:00 late, -"},
		{"later, without a day left", 2, "9:00-9:50", 1, Sky{}, []Lesson{outdoor(Later), plain}, "04-12 9:00-9:50, 04-13 9:00-9:50", "no time, -"},
		{"the last lesson has no later day", 2, "9:00-9:50", 1, Sky{}, []Lesson{plain, outdoor(Later)}, "04-12 9:00-9:50, 04-13 9:00-9:50", "-, no time"},
		{"later the same week, at another time", 2, "9:00-9:50 9:50-10:40", 1, Sky{}, []Lesson{outdoor(Later), plain}, "04-12 9:00-9:50, 04-13 9:00-9:50", "at 04-13 9:50 late, -"},
		{"not later on the same day", 1, "9:00-9:50 9:50-10:40", 1, Sky{}, []Lesson{outdoor(Later)}, "04-12 9:00-9:50", "no time"},
		{"a lesson time is as good as another", 2, "9:00-9:50 10:00-10:50", 1, Sky{}, []Lesson{{Start: clockOf(9, 0), Needs: dry}, plain}, "04-12 9:00-9:50, 04-13 9:00-9:50", "at 04-13 10:00 late, -"},
		{"a start of its own is wanted again", 3, "9:00-9:50 10:00-10:50", 1, Sky{}, []Lesson{{Start: clockOf(9, 50), Needs: dry}, plain}, "04-12 9:50-10:40, 04-13 9:00-9:50", "at 04-13 9:50 late, -"},
		{"two do not share a time", 3, "9:00-9:50", 1, Sky{}, []Lesson{outdoor(Later), outdoor(Later)}, "04-12 9:00-9:50, 04-13 9:00-9:50", "at 04-14 9:00 late, no time"},
		{"later waits for the Sun", 3, "9:00-9:50", 1, fourteenth, []Lesson{{Start: AnyTime, Needs: sun}}, "04-12 9:00-9:50", "at 04-14 9:00"},
		{"kept, before the next lesson", 4, "9:00-9:50", 1, Sky{}, []Lesson{outdoor(Kept), plain}, "04-12 9:00-9:50, 04-14 9:00-9:50", "at 04-13 9:00, -"},
		{"kept, with two times a day", 3, "9:00-9:50 9:50-10:40", 1, Sky{}, []Lesson{outdoor(Kept), plain}, "04-12 9:00-9:50, 04-13 9:50-10:40", "at 04-13 9:00, -"},
		{"kept, while the Sun is away", 5, "9:00-9:50", 1, fourteenth, []Lesson{{Start: AnyTime, Needs: sun, Wet: Kept}, plain}, "04-12 9:00-9:50, 04-15 9:00-9:50", "at 04-14 9:00, -"},
		{"kept, over the weekend", 9, "9:00-9:50", 1, Sky{}, []Lesson{{Start: AnyTime, Date: on(4, 16), Needs: dry, Wet: Kept}, plain}, "04-16 9:00-9:50, 04-20 9:00-9:50", "at 04-19 9:00, -"},
		{"kept, without room for it", 2, "9:00-9:50", 1, Sky{}, []Lesson{outdoor(Kept), plain}, "04-12 9:00-9:50, 04-13 9:00-9:50", "no time, -"},
		{"kept for both", 5, "9:00-9:50", 1, Sky{}, []Lesson{outdoor(Kept), outdoor(Kept)}, "04-12 9:00-9:50, 04-14 9:00-9:50", "at 04-13 9:00, at 04-15 9:00"},
		{"kept for a lesson that no weather spoils", 3, "9:00-9:50", 1, Sky{}, []Lesson{{Start: AnyTime, Wet: Kept}, plain}, "04-12 9:00-9:50, 04-13 9:00-9:50", "-, -"},
		{"kept for one that needs the dark at home", 3, "9:00-9:50", 1, Sky{}, []Lesson{{Start: AnyTime, Wet: Kept, Needs: []Need{{Kind: DarkBy}}}, plain}, "04-12 9:00-9:50, 04-13 9:00-9:50", "-, -"},
		{"with two visits", 3, "9:00-9:50 10:00-10:50 11:00-11:50", 1, Sky{}, []Lesson{visits(outdoor(Kept), 2), plain}, "04-12 9:00-9:50+10:00-10:50, 04-13 11:00-11:50", "at 04-13 9:00+10:00, -"},
		{"inside", 2, "9:00-9:50", 1, Sky{}, []Lesson{outdoor(Inside), plain}, "04-12 9:00-9:50, 04-13 9:00-9:50", "inside, -"},
		{"inside needs no day left", 1, "9:00-9:50", 1, Sky{}, []Lesson{outdoor(Inside)}, "04-12 9:00-9:50", "inside"},
		{"changes with the next", 2, "9:00-9:50", 1, Sky{}, []Lesson{outdoor(Changed), plain}, "04-12 9:00-9:50, 04-13 9:00-9:50", "change 04-13 9:00 with 2, -"},
		{"changes with one that it names", 3, "9:00-9:50", 1, Sky{}, []Lesson{with(3), outdoor(Inside), plain}, "04-12 9:00-9:50, 04-13 9:00-9:50, 04-14 9:00-9:50", "change 04-14 9:00 with 3, inside, -"},
		{"does not change with one that is outdoors", 3, "9:00-9:50", 1, Sky{}, []Lesson{outdoor(Changed), outdoor(Inside)}, "04-12 9:00-9:50, 04-13 9:00-9:50", "at 04-14 9:00 late, inside"},
		{"does not change with an earlier one", 3, "9:00-9:50", 1, Sky{}, []Lesson{plain, with(1)}, "04-12 9:00-9:50, 04-13 9:00-9:50", "-, at 04-14 9:00"},
		{"does not change where the Sun is away", 3, "9:00-9:50", 1, fourteenth, []Lesson{{Start: AnyTime, Needs: sun, Wet: Changed}, plain}, "04-12 9:00-9:50, 04-13 9:00-9:50", "at 04-14 9:00 late, -"},
		{"the last has nothing to change with", 2, "9:00-9:50", 1, Sky{}, []Lesson{plain, outdoor(Changed)}, "04-12 9:00-9:50, 04-13 9:00-9:50", "-, no time"},
		// The first is 100 minutes long: in the place of the third it would run into the fourth.
		{"does not change into another lesson", 3, "9:00-9:50 10:00-10:50 11:00-11:50", 2, Sky{},
			[]Lesson{long(with(3), 100), plain, plain, plain}, "04-12 9:00-10:40, 04-12 11:00-11:50, 04-13 9:00-9:50, 04-13 10:00-10:50", "at 04-14 9:00 late, -, -, -"},
		// The third is 100 minutes long: in the place of the first it would run into the second.
		{"does not bring another lesson into a third", 3, "9:00-9:50 10:00-10:50 11:00-11:50", 2, Sky{},
			[]Lesson{with(3), plain, long(plain, 100)}, "04-12 9:00-9:50, 04-12 10:00-10:50, 04-13 9:00-10:40", "at 04-13 11:00 late, -, -"},
		// The second is 100 minutes long: in the place of the first it would run into it.
		{"does not change where the two would meet", 3, "9:00-9:50 9:50-10:40 11:00-11:50", 2, Sky{},
			[]Lesson{outdoor(Changed), long(plain, 100)}, "04-12 9:00-9:50, 04-12 9:50-11:30", "at 04-13 9:00 late, -"},
		{"changes within a day", 3, "9:00-9:50 9:50-10:40 11:00-11:50", 2, Sky{},
			[]Lesson{outdoor(Changed), plain}, "04-12 9:00-9:50, 04-12 9:50-10:40", "change 04-12 9:50 with 2, -"},
		{"changes past the end of guessed times only as far as the other goes", 3, "9:00-9:50 10:00-10:50", 1, Sky{},
			[]Lesson{long(with(2), 60), {Start: clockOf(10, 0), Length: 60 * time.Minute, Date: on(4, 13)}}, "04-12 9:00-10:00, 04-13 10:00-11:00", "change 04-13 10:00 with 2, -"},
		{"does not change past the end of school", 3, "9:00-9:50 10:00-10:50", 1, mornings,
			[]Lesson{long(with(2), 110), {Start: clockOf(10, 0)}}, "04-12 9:00-10:50, 04-13 10:00-10:50", "at 04-14 9:00 late, -"},
	} {
		t.Run(c.name, func(t *testing.T) {
			last := monday.Add(c.days - 1)
			term := Term{First: monday, Last: last, Weekdays: fiveDays, Times: spans(t, c.times), Daily: c.daily}
			got := Arrange(c.lessons, term, c.sky)
			if told(got) != c.held || reserves(got) != c.want {
				t.Errorf("held %s\nwant %s\nwet  %s\nwant %s\ndropped %+v", told(got), c.held, reserves(got), c.want, got.Dropped)
			}
		})
	}
}

// Where the school gave no lesson times, an exchange may run past the last of
// those that stand in; where it did, it may not.
func TestExchangeAtTheEndOfTheDay(t *testing.T) {
	for open, want := range map[bool]string{true: "change 04-13 13:00 with 2, -", false: "at 04-13 9:00, -"} {
		term := Term{First: monday, Last: monday.Add(1), Weekdays: fiveDays, Times: spans(t, "9:00-9:50 10:00-10:50 13:00-13:50"), Open: open}
		lessons := []Lesson{{Start: AnyTime, Length: 110 * time.Minute, Needs: []Need{{Kind: Dry}}, Wet: Changed}, {Start: clockOf(13, 0)}}
		if got := reserves(Arrange(lessons, term, Sky{})); got != want {
			t.Errorf("open is %v: %s, want %s", open, got, want)
		}
	}
}

// Whatever the unit, a reserve is on a later day, at a time at which the sky
// gives what the lesson needs and nothing else is held or in reserve; a kept one
// lies before the next lesson; and both lessons of an exchange fit in the other's
// place. A reserve that the term has room for is found.
func TestReservesKeepTheirPromises(t *testing.T) {
	r := rand.New(rand.NewPCG(20270415, 3))
	seen := map[ReserveKind]int{}
	for n := range 3000 {
		c := random(r)
		for i := range c.lessons {
			c.lessons[i].Wet = Wet(r.IntN(4))
			if r.IntN(3) == 0 && i+1 < len(c.lessons) {
				c.lessons[i].With = i + 1 + r.IntN(len(c.lessons)-i)
			}
		}
		got := Arrange(c.lessons, c.term, c.sky)
		if slices.ContainsFunc(got.Dropped, func(r Rule) bool { return r.Kind == ForOrder }) {
			continue // lessons out of order are a fault, and nothing is pressed
		}
		dropped := func(i int, kind NeedKind) bool {
			for _, rule := range got.Lacks(i + 1) {
				if rule.Kind == ForNeed && rule.Need.Kind == kind {
					return true
				}
			}
			return false
		}
		keepDropped := func(i int) bool {
			for _, rule := range got.Lacks(i + 1) {
				if rule.Kind == ForKept {
					return true
				}
			}
			return false
		}
		meets := func(i int, slots []Slot) bool {
			for _, need := range c.lessons[i].Needs {
				for _, s := range slots {
					if need.Kind != Dry && !dropped(i, need.Kind) && !c.sky.Meets(need, s) {
						return false
					}
				}
			}
			return true
		}
		type taken struct {
			lesson int
			slot   Slot
		}
		var all []taken // held, or in reserve at another time
		for i, h := range got.Held {
			if h.Placed {
				for _, s := range append([]Slot{h.Slot}, h.More...) {
					all = append(all, taken{-1, s})
				}
			}
			if h.Reserve.Kind == AtAnotherTime {
				for _, s := range append([]Slot{h.Reserve.Slot}, h.Reserve.More...) {
					all = append(all, taken{i, s})
				}
			}
		}
		for i, h := range got.Held {
			seen[h.Reserve.Kind]++
			l := c.lessons[i]
			if outdoors := h.Placed && l.Weather(); outdoors == (h.Reserve.Kind == NotNeeded) {
				t.Fatalf("case %d: lesson %d has the reserve %+v, and that it needs one is %v\n%+v", n, i+1, h.Reserve, outdoors, c)
			}
			slots := append([]Slot{h.Reserve.Slot}, h.Reserve.More...)
			next := -1
			for j := i + 1; j < len(got.Held) && next < 0; j++ {
				if got.Held[j].Placed {
					next = j
				}
			}
			switch h.Reserve.Kind {
			case StaysIn:
				if l.Wet != Inside {
					t.Fatalf("case %d: lesson %d stays in\n%+v", n, i+1, c)
				}
			case AtAnotherTime:
				late := next >= 0 && !slots[len(slots)-1].before(got.Held[next].Slot)
				if !h.Reserve.Date.After(h.Date) || !c.term.Holds(h.Reserve.Date) || !meets(i, slots) || h.Reserve.Late != late {
					t.Fatalf("case %d: lesson %d on %v may be held on %+v\n%+v", n, i+1, h.Slot, h.Reserve, c)
				}
				if l.Wet == Kept && !keepDropped(i) && late {
					t.Fatalf("case %d: what is kept for lesson %d is late: %+v\n%+v", n, i+1, h.Reserve, c)
				}
				for _, other := range all {
					for _, s := range slots {
						if other.lesson != i && s.overlaps(other.slot) {
							t.Fatalf("case %d: %+v is taken twice\n%+v\n%+v", n, s, got, c)
						}
					}
				}
			case InExchange:
				j := h.Reserve.With - 1
				want := next
				if l.With > 0 {
					want = l.With - 1
				}
				if l.Wet != Changed || j != want || j <= i || c.lessons[j].Weather() || h.Reserve.Slot.Date != got.Held[j].Date || h.Reserve.From != got.Held[j].From || !meets(i, slots) {
					t.Fatalf("case %d: lesson %d changes places: %+v\n%+v\n%+v", n, i+1, h.Reserve, got, c)
				}
			case NoTime: // every time of a later day is unfit or taken
				for _, o := range c.term.options(c.term.anytime(l), c.term.Days()) {
					free := o.first().Date.After(h.Date) && meets(i, o)
					for _, other := range all {
						for _, s := range o {
							free = free && !s.overlaps(other.slot)
						}
					}
					if free {
						t.Fatalf("case %d: lesson %d has no reserve, and %v is free\n%+v\n%+v", n, i+1, o, got, c)
					}
				}
			}
		}
	}
	t.Logf("kinds of reserves: %v", seen)
	for kind := NotNeeded; kind <= NoTime; kind++ {
		if seen[kind] < 50 {
			t.Errorf("only %d reserves of kind %d", seen[kind], kind)
		}
	}
}

// The Moon must be 35° from the Sun and 10° high, the Sun 10° high: what doc and
// the lesson's keys promise, on days from the reference tables. On 9 May 2027 the
// Moon is three days old (new on 6 May at 10:59 TT, testdata/reference/phases.csv)
// and 12° to 13° a day makes that 38° to 40°.
func TestMoonFarEnough(t *testing.T) {
	sky := Over(moncton(t))
	for _, c := range []struct {
		name string
		day  int
		want bool
	}{
		{"two days old", 8, false}, {"three days old", 9, true}, {"three days before", 3, true}, {"two days before", 4, false},
	} {
		if got := sky.Meets(Need{Kind: MoonUp, Height: MoonLeast}, slotOn(5, c.day, 12, 0, 30)); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}
