package classroom

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"noonbook/compute/place"
)

// written writes lesson times as a person does.
func written(times []Span) string {
	text := ""
	for _, s := range times {
		text += fmt.Sprintf(" %s-%s", hhmm(s.From), hhmm(s.To))
	}
	return text
}

// A cycle of six days over two weeks with a holiday and a storm, written down from a
// wall calendar: Monday 12 April 2027 is day 1, Friday the 16th a planned day off,
// after which the cycle goes on where it was, and Tuesday the 20th a storm, whose
// day 1 is lost.
func TestCycleDays(t *testing.T) {
	term := Term{First: monday, Last: on(4, 23), Weekdays: fiveDays, DaysOff: []place.Date{on(4, 16), on(4, 20)},
		Cycle: Cycle{Days: 6, Lost: []place.Date{on(4, 20)}}}
	for day, want := range map[int]int{11: 0, 12: 1, 13: 2, 14: 3, 15: 4, 16: 0, 17: 0, 18: 0, 19: 5, 20: 0, 21: 1, 22: 2, 23: 3, 26: 4} {
		if got := term.CycleDay(on(4, day)); got != want {
			t.Errorf("13 April is day 2; %d April is day %d, want %d", day, got, want)
		}
	}
	term.Cycle.First = 4
	if got := term.CycleDay(on(4, 15)); got != 1 {
		t.Errorf("from day 4 on, the fourth day is day %d, want 1", got)
	}
	term.Cycle = Cycle{}
	if got := term.CycleDay(monday); got != 0 {
		t.Errorf("without a cycle Monday is day %d", got)
	}
}

// The number of a day is what counting the days one by one gives.
func TestCycleDaysOneByOne(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 20270412))
	for range 200 {
		term := Term{First: monday.Add(r.IntN(7)), Cycle: Cycle{Days: 1 + r.IntN(10), First: 1}}
		for d := time.Sunday; d <= time.Saturday; d++ {
			if r.IntN(3) > 0 {
				term.Weekdays = append(term.Weekdays, d)
			}
		}
		for range r.IntN(12) {
			off := monday.Add(r.IntN(60))
			term.DaysOff = append(term.DaysOff, off)
			if r.IntN(3) == 0 {
				term.Cycle.Lost = append(term.Cycle.Lost, off)
			}
		}
		term.Cycle.First += r.IntN(term.Cycle.Days)
		next := term.Cycle.First
		for d := term.First; d.Before(monday.Add(70)); d = d.Add(1) {
			want := 0
			if term.Teaches(d) {
				want = next
			}
			if got := term.CycleDay(d); got != want {
				t.Fatalf("%s is day %d, want %d: %+v", d, got, want, term)
			}
			if want > 0 || slices.Contains(term.Weekdays, d.Weekday()) && slices.Contains(term.Cycle.Lost, d) {
				next = next%term.Cycle.Days + 1
			}
		}
	}
}

// What a day's lesson times are, cycle before weekday before any day, and half days.
func TestTimesOfADate(t *testing.T) {
	term := Term{First: monday, Last: on(4, 23), Weekdays: fiveDays, Times: spans(t, "9:00-9:50 10:00-10:50 13:00-13:50"),
		Weekly: map[time.Weekday][]Span{time.Tuesday: spans(t, "8:30-9:20"), time.Wednesday: nil},
		Cycle:  Cycle{Days: 4, Times: map[int][]Span{4: spans(t, "11:00-11:50"), 2: nil}},
		Until:  map[place.Date]time.Duration{on(4, 16): clockOf(10, 50), on(4, 19): clockOf(10, 49)}}
	want := map[int]string{
		12: " 9:00-9:50 10:00-10:50 13:00-13:50", // day 1
		13: "",                                   // day 2 has none, whatever Tuesdays have
		14: "",                                   // Wednesday, day 3
		15: " 11:00-11:50",                       // day 4
		16: " 9:00-9:50 10:00-10:50",             // day 1, half
		19: "",                                   // day 2
		20: " 8:30-9:20",                         // Tuesday, day 3
		22: " 9:00-9:50 10:00-10:50 13:00-13:50", // day 1
	}
	for _, day := range slices.Sorted(maps.Keys(want)) {
		if got := written(term.TimesOn(on(4, day))); got != want[day] {
			t.Errorf("%d April has%s, want%s", day, got, want[day])
		}
	}
	slots := 0
	for _, s := range term.Slots() {
		if s.Date == on(4, 15) && s.From != clockOf(11, 0) {
			t.Errorf("a slot at %v on day 4", s)
		}
		slots++
	}
	if slots != 3+1+2+1+1+3 { // 12, 15, 16, 20, 21, 22; the 21st is day 4, the 23rd day 2
		t.Errorf("%d lesson times, want 11", slots)
	}
}

// Lessons in weeks that are not alike, worked out with a wall calendar.
func TestLessonsByTheTimetable(t *testing.T) {
	plain := Lesson{Start: AnyTime}
	at := func(h, m int) Lesson { return Lesson{Start: clockOf(h, m)} }
	long := func(l Lesson, minutes int) Lesson { l.Length = time.Duration(minutes) * time.Minute; return l }
	weekly := Term{Times: spans(t, "9:00-9:50 10:00-10:50 13:00-13:50"),
		Weekly: map[time.Weekday][]Span{time.Tuesday: spans(t, "8:30-9:20 9:20-10:10"), time.Wednesday: nil}}
	half := Term{Times: spans(t, "9:00-9:50 10:00-10:50 13:00-13:50"), Until: map[place.Date]time.Duration{monday: clockOf(10, 0)}}
	rainy := long(Lesson{Start: AnyTime, Needs: []Need{{Kind: Dry}}}, 110)
	rainyAt := rainy
	rainyAt.Start = clockOf(9, 0)
	for _, c := range []struct {
		name          string
		term          Term
		lessons       []Lesson
		held, reserve string
	}{
		{"a day with its own times, a day without", weekly, []Lesson{plain, plain, plain}, "04-12 9:00-9:50, 04-13 8:30-9:20, 04-15 9:00-9:50", "-, -, -"},
		{"a start is wanted on a day that has it", weekly, []Lesson{at(13, 0), at(9, 0)}, "04-12 13:00-13:50, 04-15 9:00-9:50", "-, -"},
		{"an evening needs only a day with lessons", weekly, []Lesson{at(19, 0), at(19, 0), at(19, 0)}, "04-12 19:00-19:50, 04-13 19:00-19:50, 04-15 19:00-19:50", "-, -, -"},
		{"a half day ends early", half, []Lesson{long(plain, 110), plain}, "04-13 9:00-10:50, 04-14 9:00-9:50", "-, -"},
		{"a half day holds what ends in time", half, []Lesson{plain, plain}, "04-12 9:00-9:50, 04-13 9:00-9:50", "-, -"},
		{"and no evening", half, []Lesson{at(19, 0)}, "04-13 19:00-19:50", "-"},
		{"a double lesson needs both its times", weekly, []Lesson{long(plain, 100), long(plain, 100), long(plain, 100)}, "04-12 9:00-10:40, 04-13 8:30-10:10, 04-15 9:00-10:40", "-, -, -"},
		{"a date is a date", weekly, []Lesson{{Start: clockOf(9, 0), Date: on(4, 14)}, {Start: AnyTime, Date: on(4, 21)}}, "04-14 9:00-9:50, 04-21 9:00-9:50", "-, -"},
		// The 110 minutes are two lesson times and the break between them; 10:00 to
		// 11:50 would leave fifty before the meal.
		{"a double lesson's reserve is double", Term{Times: spans(t, "9:00-9:50 10:00-10:50 13:00-13:50")}, []Lesson{rainyAt, {Start: clockOf(9, 0), Date: on(4, 13)}}, "04-12 9:00-10:50, 04-13 9:00-9:50", "at 04-14 9:00 late, -"},
		{"and so on a Tuesday", weekly, []Lesson{{Start: AnyTime, Needs: []Need{{Kind: Dry}}, Length: 100 * time.Minute}}, "04-12 9:00-10:40", "at 04-13 8:30"},
		{"no time is long enough", Term{Times: spans(t, "9:00-9:50 10:21-11:10")}, []Lesson{plain, long(plain, 60)}, "04-12 9:00-9:50, none", "-, -"},
		{"a break of half an hour is one", Term{Times: spans(t, "9:00-9:50 10:20-11:10")}, []Lesson{plain, long(plain, 60)}, "04-12 9:00-9:50, 04-13 9:00-10:00", "-, -"},
	} {
		t.Run(c.name, func(t *testing.T) {
			c.term.First, c.term.Last, c.term.Weekdays = monday, on(4, 16), fiveDays
			got := Arrange(c.lessons, c.term, Sky{})
			if told(got) != c.held || reserves(got) != c.reserve {
				t.Errorf("held %s\nwant %s\nwet  %s\nwant %s", told(got), c.held, reserves(got), c.reserve)
			}
		})
	}
	if weekly.First, weekly.Last, weekly.Weekdays = on(4, 14), on(4, 14), fiveDays; weekly.Fits(plain) {
		t.Error("a Wednesday without lessons holds one")
	}
	if weekly.Last = on(4, 15); !weekly.Fits(plain) {
		t.Error("Thursday does not hold a lesson")
	}
}
