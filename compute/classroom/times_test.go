package classroom

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"noonbook/compute/place"
)

// The cases of this file are small enough to be worked out with a wall calendar,
// and the wanted days are written down from one: 12 April 2027 is a Monday
// (ISO 8601, and time.Weekday of the standard library).

func clockOf(hour, minute int) time.Duration {
	return time.Duration(hour)*time.Hour + time.Duration(minute)*time.Minute
}

// spans reads "9:00-9:50 9:50-10:40".
func spans(t *testing.T, text string) []Span {
	t.Helper()
	var list []Span
	for _, one := range strings.Fields(text) {
		var a, b, c, d int
		if _, err := fmt.Sscanf(one, "%d:%d-%d:%d", &a, &b, &c, &d); err != nil {
			t.Fatalf("%q: %v", one, err)
		}
		list = append(list, Span{clockOf(a, b), clockOf(c, d)})
	}
	return list
}

var fiveDays = []time.Weekday{time.Monday, time.Tuesday, time.Wednesday, time.Thursday, time.Friday}

func on(month time.Month, day int) place.Date { return place.Date{Year: 2027, Month: month, Day: day} }

func hhmm(d time.Duration) string {
	return fmt.Sprintf("%d:%02d", int(d.Hours()), int(d.Minutes())%60)
}

// told writes a calendar so that a person can read it: "04-12 9:00-9:50" for a
// lesson, with "+" before further visits of the day.
func told(c Calendar) string {
	var lines []string
	for _, h := range c.Held {
		if !h.Placed {
			lines = append(lines, "none")
			continue
		}
		line := fmt.Sprintf("%s %s-%s", h.Date.String()[5:], hhmm(h.From), hhmm(h.To))
		for _, m := range h.More {
			line += fmt.Sprintf("+%s-%s", hhmm(m.From), hhmm(m.To))
		}
		lines = append(lines, line)
	}
	return strings.Join(lines, ", ")
}

// Lesson times that touch are two times: one lesson after the other fits, and a
// minute more does not.
func TestLessonTimesOfADay(t *testing.T) {
	const backToBack = "9:00-9:50 9:50-10:40 10:50-11:40"
	minutes := func(n int) Lesson { return Lesson{Start: AnyTime, Length: time.Duration(n) * time.Minute} }
	plain := Lesson{Start: AnyTime}
	at := func(hour, minute int) Lesson { return Lesson{Start: clockOf(hour, minute)} }
	visits := func(n int) Lesson { return Lesson{Start: AnyTime, Visits: n} }
	for _, c := range []struct {
		name    string
		times   string
		daily   int
		open    bool
		lessons []Lesson
		want    string
	}{
		{"one a day", backToBack, 1, false, []Lesson{plain, plain}, "04-12 9:00-9:50, 04-13 9:00-9:50"},
		{"none said is one", backToBack, 0, false, []Lesson{plain, plain}, "04-12 9:00-9:50, 04-13 9:00-9:50"},
		{"two a day, back to back", backToBack, 2, false, []Lesson{plain, plain, plain}, "04-12 9:00-9:50, 04-12 9:50-10:40, 04-13 9:00-9:50"},
		{"three a day", backToBack, 3, false, []Lesson{plain, plain, plain, plain}, "04-12 9:00-9:50, 04-12 9:50-10:40, 04-12 10:50-11:40, 04-13 9:00-9:50"},
		{"as long as the time", backToBack, 2, false, []Lesson{minutes(50), plain}, "04-12 9:00-9:50, 04-12 9:50-10:40"},
		{"a minute longer than the time", backToBack, 2, false, []Lesson{minutes(51), plain}, "04-12 9:00-9:51, 04-12 10:50-11:40"},
		{"through the break", backToBack, 2, false, []Lesson{minutes(110), plain}, "04-12 9:00-10:50, 04-12 10:50-11:40"},
		{"into the last time", backToBack, 2, false, []Lesson{minutes(111), plain}, "04-12 9:00-10:51, 04-13 9:00-9:50"},
		{"shorter than the time", backToBack, 2, false, []Lesson{minutes(20), plain}, "04-12 9:00-9:20, 04-12 9:50-10:40"},
		{"all the school day", backToBack, 2, false, []Lesson{minutes(160), plain}, "04-12 9:00-11:40, 04-13 9:00-9:50"},
		{"longer than the school day", backToBack, 2, false, []Lesson{plain, minutes(161)}, "04-12 9:00-9:50, none"},
		{"longer than a day of guessed times", backToBack, 2, true, []Lesson{plain, minutes(161)}, "04-12 9:00-9:50, 04-12 9:50-12:31"},
		{"the second does not fit behind the first", backToBack, 2, false, []Lesson{plain, minutes(111)}, "04-12 9:00-9:50, 04-13 9:00-10:51"},
		{"the second just fits", backToBack, 2, false, []Lesson{plain, minutes(110)}, "04-12 9:00-9:50, 04-12 9:50-11:40"},
		{"two visits touch", backToBack, 2, false, []Lesson{visits(2), plain}, "04-12 9:00-9:50+9:50-10:40, 04-12 10:50-11:40"},
		{"visits longer than their times", backToBack, 2, false, []Lesson{{Start: AnyTime, Visits: 2, Length: 55 * time.Minute}, plain}, "none, 04-12 9:00-9:50"}, // the second would end at 11:45
		{"more visits than times", backToBack, 2, false, []Lesson{visits(4), plain}, "none, 04-12 9:00-9:50"},
		{"a start of its own", backToBack, 2, false, []Lesson{at(9, 20), plain}, "04-12 9:20-10:10, 04-12 10:50-11:40"},
		{"a start between the times", backToBack, 2, false, []Lesson{at(10, 45), plain}, "04-12 10:45-11:35, 04-13 9:00-9:50"},
		{"visits from a start of its own", backToBack, 2, false, []Lesson{{Start: clockOf(9, 20), Visits: 2}, plain}, "04-12 9:20-10:10+10:50-11:40, 04-13 9:00-9:50"},
		{"visits from a start of its own that touch", backToBack, 2, false, []Lesson{{Start: clockOf(9, 0), Visits: 2}}, "04-12 9:00-9:50+9:50-10:40"},
		{"the length of the time that it begins with", "9:00-9:40 10:00-11:30", 1, false, []Lesson{at(10, 0)}, "04-12 10:00-11:30"},
		{"the length of the time that it starts in", "9:00-9:40 10:00-11:30", 1, false, []Lesson{at(10, 15)}, "04-12 10:15-11:45"},
		{"the length of the first time, in the break", "9:00-9:40 10:00-11:30", 1, false, []Lesson{at(9, 40)}, "04-12 9:40-10:20"},
	} {
		t.Run(c.name, func(t *testing.T) {
			term := Term{First: monday, Last: monday.Add(4), Weekdays: fiveDays, Times: spans(t, c.times), Daily: c.daily, Open: c.open}
			got := Arrange(c.lessons, term, Sky{})
			if told(got) != c.want {
				t.Errorf("got  %s\nwant %s", told(got), c.want)
			}
			if len(got.Dropped) > 0 {
				t.Errorf("it drops %+v", got.Dropped)
			}
		})
	}
}

// Days off at the ends and in the middle, weeks that begin on a Sunday, terms of
// one day and of most of a year.
func TestSchoolDaysOfATerm(t *testing.T) {
	for _, c := range []struct {
		name        string
		first, last place.Date
		weekdays    []time.Weekday
		off         []place.Date
		want        string // the days, first to last
		number      int
	}{
		{"a week", monday, monday.Add(6), fiveDays, nil, "04-12 … 04-16", 5},
		{"one day", monday, monday, fiveDays, nil, "04-12 … 04-12", 1},
		{"turned round", monday, monday.Add(-1), fiveDays, nil, "", 0},
		{"a weekend", on(4, 17), on(4, 18), fiveDays, nil, "", 0},
		{"the first day off", monday, monday.Add(4), fiveDays, []place.Date{monday}, "04-13 … 04-16", 4},
		{"the last day off", monday, monday.Add(4), fiveDays, []place.Date{monday.Add(4)}, "04-12 … 04-15", 4},
		{"both ends off", monday, monday.Add(4), fiveDays, []place.Date{monday.Add(4), monday}, "04-13 … 04-15", 3},
		{"a day off of another year", monday, monday.Add(4), fiveDays, []place.Date{{Year: 2026, Month: 4, Day: 13}}, "04-12 … 04-16", 5},
		{"every day off", monday, monday.Add(1), fiveDays, []place.Date{monday, monday.Add(1)}, "", 0},
		{"Sunday to Thursday", on(4, 9), on(4, 18), []time.Weekday{0, 1, 2, 3, 4}, nil, "04-11 … 04-18", 6}, // Friday the 9th to Sunday the 18th
		{"Sundays", monday, on(5, 2), []time.Weekday{time.Sunday}, nil, "04-18 … 05-02", 3},
		// 1 February to 30 June 2027: 150 days, 21 weeks and 3 days from a Monday to a Wednesday.
		{"150 days", on(2, 1), on(6, 30), fiveDays, nil, "02-01 … 06-30", 21*5 + 3},
		{"a leap day", place.Date{Year: 2028, Month: 2, Day: 28}, place.Date{Year: 2028, Month: 3, Day: 1}, fiveDays, nil, "02-28 … 03-01", 3},
	} {
		t.Run(c.name, func(t *testing.T) {
			term := Term{First: c.first, Last: c.last, Weekdays: c.weekdays, DaysOff: c.off, Times: []Span{{clockOf(9, 0), clockOf(9, 50)}}}
			days := term.Days()
			got := ""
			if len(days) > 0 {
				got = days[0].String()[5:] + " … " + days[len(days)-1].String()[5:]
			}
			if got != c.want || len(days) != c.number {
				t.Errorf("%d days %s, want %d %s", len(days), got, c.number, c.want)
			}
			for _, d := range days {
				if !slices.Contains(c.weekdays, d.Weekday()) || slices.Contains(c.off, d) {
					t.Errorf("%s is no school day", d)
				}
			}
		})
	}
}

// A term is cut off after LongestTerm days, both ends counted, and not before.
func TestLongestTerm(t *testing.T) {
	term := Term{First: monday, Weekdays: []time.Weekday{0, 1, 2, 3, 4, 5, 6}, Times: []Span{{clockOf(9, 0), clockOf(9, 50)}}}
	for days, want := range map[int]int{101: 101, 300: 300, LongestTerm: LongestTerm, LongestTerm + 1: LongestTerm} {
		term.Last = monday.Add(days - 1)
		if got := len(term.Days()); got != want {
			t.Errorf("a term of %d days has %d", days, got)
		}
	}
}

// Lessons in a term of 150 days: one that waits for 120 days is held on day 120,
// and one that must come within 130 days of the first does.
func TestLessonsFarApart(t *testing.T) {
	term := Term{First: on(2, 1), Last: on(6, 30), Weekdays: fiveDays, Times: spans(t, "9:00-9:50")}
	lessons := []Lesson{
		{Start: AnyTime},
		{Start: AnyTime, After: Gap{Least: 120}}, // 1 June, a Tuesday
		{Start: AnyTime, After: Gap{Least: 4}},   // 5 June is a Saturday: Monday the 7th
		{Start: AnyTime, After: Gap{Lesson: 1, Most: 128}},
		{Start: AnyTime, After: Gap{Lesson: 4, Least: 1, Most: 1}},
	}
	got := Arrange(lessons, term, Sky{})
	if want := "02-01 9:00-9:50, 06-01 9:00-9:50, 06-07 9:00-9:50, 06-08 9:00-9:50, 06-09 9:00-9:50"; told(got) != want {
		t.Errorf("got  %s\nwant %s", told(got), want)
	}
	if on(2, 1).DaysUntil(on(6, 8)) != 127 || len(got.Dropped) > 0 {
		t.Errorf("dropped is %+v", got.Dropped)
	}
	lessons[3].After.Most = 126 // a day fewer: the first waits, and the second with it
	got = Arrange(lessons, term, Sky{})
	if want := "02-02 9:00-9:50, 06-02 9:00-9:50, 06-07 9:00-9:50, 06-08 9:00-9:50, 06-09 9:00-9:50"; told(got) != want || len(got.Dropped) > 0 {
		t.Errorf("got  %s, dropped %+v\nwant %s", told(got), got.Dropped, want)
	}
	lessons[3].After.Most = 124 // 120 and 4 and 1 are too many
	got = Arrange(lessons, term, Sky{})
	if len(got.Dropped) != 1 || !got.Smallest {
		t.Errorf("one rule has to go, and %+v are dropped", got.Dropped)
	}
}

// A lesson with a date is held on it, wherever that is; the others keep their
// order round it and clear of it.
func TestLessonsWithADate(t *testing.T) {
	term := Term{First: monday, Last: monday.Add(4), Weekdays: fiveDays, Times: spans(t, "9:00-9:50 9:50-10:40")}
	plain := Lesson{Start: AnyTime}
	dated := func(d place.Date) Lesson { return Lesson{Start: AnyTime, Date: d} }
	at := func(d place.Date, hour, minute, length int) Lesson {
		return Lesson{Date: d, Start: clockOf(hour, minute), Length: time.Duration(length) * time.Minute}
	}
	for _, c := range []struct {
		name    string
		lessons []Lesson
		want    string
		dropped int
	}{
		{"before the term", []Lesson{dated(monday.Add(-3)), plain}, "04-09 9:00-9:50, 04-12 9:00-9:50", 0},
		{"after the term", []Lesson{plain, dated(monday.Add(7))}, "04-12 9:00-9:50, 04-19 9:00-9:50", 0},
		{"on a weekend", []Lesson{plain, dated(monday.Add(5))}, "04-12 9:00-9:50, 04-17 9:00-9:50", 0},
		{"on a later day of the term", []Lesson{dated(monday.Add(2)), plain}, "04-14 9:00-9:50, 04-15 9:00-9:50", 0},
		{"two at one time", []Lesson{at(monday, 9, 0, 50), at(monday, 9, 49, 50)}, "04-12 9:00-9:50, 04-12 9:49-10:39", 0},
		{"two that touch", []Lesson{at(monday, 9, 0, 50), at(monday, 9, 50, 50)}, "04-12 9:00-9:50, 04-12 9:50-10:40", 0},
		{"two on one day without a start", []Lesson{dated(monday), dated(monday)}, "04-12 9:00-9:50, 04-12 9:50-10:40", 0},
		{"another keeps clear", []Lesson{at(monday, 9, 0, 50), plain}, "04-12 9:00-9:50, 04-13 9:00-9:50", 0},
		{"before the one in front of it", []Lesson{plain, at(monday, 8, 0, 30)}, "04-13 9:00-9:50, 04-12 8:00-8:30", 1},
		{"longer than its day", []Lesson{{Start: AnyTime, Date: monday, Length: 161 * time.Minute}}, "04-12 9:00-11:41", 0},
		{"longer than its day, with a start", []Lesson{at(monday, 9, 10, 161)}, "04-12 9:10-11:51", 0},
		{"more visits than its day has times", []Lesson{{Start: clockOf(9, 30), Date: monday, Visits: 3, Length: 20 * time.Minute}}, "04-12 9:30-9:50", 0},
		{"all day long", []Lesson{at(monday, 8, 0, 600), dated(monday)}, "04-12 8:00-18:00, 04-12 9:00-9:50", 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := Arrange(c.lessons, term, Sky{})
			if told(got) != c.want || len(got.Dropped) != c.dropped {
				t.Errorf("got  %s, dropped %+v\nwant %s, %d", told(got), got.Dropped, c.want, c.dropped)
			}
		})
	}
}

// Over a clock change the clock of the lessons stays and the instants move. In
// New Brunswick clocks go forward on Sunday 14 March 2027 at 2:00 and back on
// 7 November (IANA time zone database, as time/tzdata carries it): 9:00 is 13:00
// UTC before and 12:00 UTC in between.
func TestLessonsOverAClockChange(t *testing.T) {
	p := moncton(t)
	term := Term{First: on(3, 11), Last: on(3, 19), Weekdays: fiveDays, Times: spans(t, "9:00-9:50")}
	lessons := []Lesson{{Start: AnyTime}, {Start: AnyTime}, {Start: AnyTime}} // Thursday, Friday, Monday
	got := Arrange(lessons, term, Over(p))
	if want := "03-11 9:00-9:50, 03-12 9:00-9:50, 03-15 9:00-9:50"; told(got) != want {
		t.Errorf("got  %s\nwant %s", told(got), want)
	}
	for i, want := range []string{"2027-03-11T13:00:00Z", "2027-03-12T13:00:00Z", "2027-03-15T12:00:00Z"} {
		from, to := got.Held[i].Moments(p)
		if from.UTC().Format(time.RFC3339) != want || to.Sub(from) != 50*time.Minute {
			t.Errorf("lesson %d begins at %s, want %s, and lasts %v", i+1, from.UTC().Format(time.RFC3339), want, to.Sub(from))
		}
	}
	lessons[2].After = Gap{Lesson: 2, Clock: true} // the second waits until the change is over
	got = Arrange(lessons, term, Over(p))
	if want := "03-11 9:00-9:50, 03-15 9:00-9:50, 03-16 9:00-9:50"; told(got) != want || len(got.Dropped) > 0 {
		t.Errorf("got  %s, dropped %+v\nwant %s", told(got), got.Dropped, want)
	}
	lessons[1].Date = on(3, 12)
	lessons[2].Date = on(3, 15)
	if got = Arrange(lessons, term, Over(p)); len(got.Dropped) != 1 || got.Dropped[0].Kind != ForClock || got.Dropped[0].Lesson != 3 || got.Dropped[0].Other != 2 {
		t.Errorf("with dates on both sides of the change, dropped is %+v", got.Dropped)
	}
	// On the Sunday itself: before two by the old clock, afterwards by the new one.
	for _, c := range []struct {
		hour, minute int
		from, to     string
	}{
		{0, 30, "04:30", "06:30"},
		{1, 30, "05:30", "07:30"}, // 120 minutes that end at 4:30 by the new clock
		{3, 0, "06:00", "08:00"},
		{9, 0, "12:00", "14:00"},
	} {
		slot := slotOn(3, 14, c.hour, c.minute, 120)
		from, to := slot.Moments(p)
		if from.UTC().Format("15:04") != c.from || to.UTC().Format("15:04") != c.to {
			t.Errorf("%d:%02d is %s to %s UTC, want %s to %s", c.hour, c.minute, from.UTC().Format("15:04"), to.UTC().Format("15:04"), c.from, c.to)
		}
	}
	// A school week that holds the Sunday is cut in two by it.
	sky := Over(p)
	saturday, before, after := sky.Clock(slotOn(3, 13, 9, 0, 50)), sky.Clock(slotOn(3, 14, 1, 0, 50)), sky.Clock(slotOn(3, 14, 9, 0, 50))
	if saturday != before || before >= after {
		t.Errorf("clocks since %d on Saturday, %d and %d on Sunday", saturday, before, after)
	}
	// A lesson in the evening goes on past midnight, into the next day.
	late, end := slotOn(4, 13, 23, 30, 60).Moments(p)
	if late.UTC().Format(time.RFC3339) != "2027-04-14T02:30:00Z" || end.UTC().Format(time.RFC3339) != "2027-04-14T03:30:00Z" {
		t.Errorf("half past eleven at night is %s to %s", late.UTC(), end.UTC())
	}
	if got := Moment(p, on(4, 13), clockOf(24, 15)).UTC().Format(time.RFC3339); got != "2027-04-14T03:15:00Z" {
		t.Errorf("a quarter of an hour past midnight is %s", got)
	}
}

// In a school week from Sunday to Thursday, the lessons after Thursday's are held
// on Sunday.
func TestWeekFromSunday(t *testing.T) {
	term := Term{First: on(4, 14), Last: on(4, 22), Weekdays: []time.Weekday{0, 1, 2, 3, 4}, DaysOff: []place.Date{on(4, 19)}, Times: spans(t, "7:30-8:15")}
	got := Arrange([]Lesson{{Start: AnyTime}, {Start: AnyTime}, {Start: AnyTime}, {Start: AnyTime}}, term, Sky{})
	if want := "04-14 7:30-8:15, 04-15 7:30-8:15, 04-18 7:30-8:15, 04-20 7:30-8:15"; told(got) != want {
		t.Errorf("got  %s\nwant %s", told(got), want)
	}
}

// What more room would help, where a term is too short.
func TestEnough(t *testing.T) {
	plain := []Lesson{{Start: AnyTime}, {Start: AnyTime}, {Start: AnyTime}, {Start: AnyTime}}
	for _, c := range []struct {
		name        string
		last, times int
		daily       int
		lessons     []Lesson
		days, a     int
	}{
		{"one day short", 2, 3, 1, plain, 1, 2},
		{"three days short", 0, 4, 1, plain, 3, 4},
		{"two times a day only", 0, 2, 1, plain, 3, 0},
		{"over the weekend", 4, 1, 1, append(plain[:4:4], plain...), 3, 0},
		{"two a day already", 0, 3, 2, plain, 1, 0}, // three a day are one too few
		{"never", 4, 1, 1, []Lesson{{Start: AnyTime, Visits: 2}}, 0, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			term := Term{First: monday, Last: monday.Add(c.last), Weekdays: fiveDays, Daily: c.daily}
			for i := range c.times {
				term.Times = append(term.Times, Span{clockOf(9+i, 0), clockOf(9+i, 50)})
			}
			days, daily := term.Enough(c.lessons)
			if days != c.days || daily != c.a {
				t.Errorf("%d more days or %d a day would do, want %d and %d", days, daily, c.days, c.a)
			}
			if fits := term.Fits(c.lessons[0]); fits != (c.name != "never") {
				t.Errorf("that a day has times enough is %v", fits)
			}
		})
	}
}

// Slots that touch do not overlap; On and Lacks find what they are asked for.
func TestSlotsTouch(t *testing.T) {
	first, second := slotOn(4, 12, 9, 0, 50), slotOn(4, 12, 9, 50, 50)
	next := slotOn(4, 13, 9, 0, 50)
	inside := slotOn(4, 12, 9, 10, 10)
	for _, c := range []struct {
		a, b             Slot
		overlaps, before bool
	}{
		{first, second, false, true}, {second, first, false, false}, {first, next, false, true}, {next, first, false, false},
		{first, inside, true, false}, {inside, first, true, false}, {first, first, true, false},
		{slotOn(4, 12, 9, 0, 51), second, true, false},
	} {
		if c.a.overlaps(c.b) != c.overlaps || c.a.before(c.b) != c.before {
			t.Errorf("%v and %v: overlap %v, before %v", c.a, c.b, c.a.overlaps(c.b), c.a.before(c.b))
		}
	}
	c := Calendar{Held: []Held{{Slot: first, Placed: true}, {Slot: first}, {Slot: next, Placed: true}, {Slot: second, Placed: true, More: []Slot{inside, next}}}, Dropped: []Rule{{Lesson: 1}, {Lesson: 3}, {Lesson: 1}}}
	if got := c.On(first.Date); !slices.Equal(got, []int{0, 3}) {
		t.Errorf("on the 12th there are %v", got)
	}
	if len(c.Lacks(1)) != 2 || len(c.Lacks(2)) != 0 || len(c.Lacks(3)) != 1 {
		t.Error("rules are not found by lesson")
	}
	if c.Held[0].End() != first || c.Held[3].End() != next {
		t.Error("the end of a lesson is not that of its last visit")
	}
}

// What is needed on end must last on end, ends included, looked at every five
// minutes.
func TestLastsOnEnd(t *testing.T) {
	from := time.Date(2027, 4, 13, 12, 0, 0, 0, time.UTC)
	for _, c := range []struct {
		name    string
		minutes int
		window  int
		good    string // a letter for each five minutes, x where it is bad
		want    bool
	}{
		{"all of it", 30, 0, "ooooooo", true},
		{"not at the end", 30, 0, "oooooox", false},
		{"not at the beginning", 30, 0, "xoooooo", false},
		{"not in the middle", 30, 0, "oooxooo", false},
		{"a quarter of an hour at the beginning", 30, 15, "ooooxxx", true},
		{"a quarter of an hour at the end", 30, 15, "xxxoooo", true},
		{"five minutes less", 30, 15, "oooxooo", false},
		{"in two parts", 30, 25, "oooxooo", false},
		{"as long as the lesson", 30, 30, "ooooooo", true},
		{"longer than the lesson", 30, 60, "ooooooo", true},
		{"longer than the lesson, not all of it good", 30, 60, "oooooox", false},
	} {
		good := func(at time.Time) bool { return c.good[int(at.Sub(from)/skyStep)] == 'o' }
		if got := lasts(from, from.Add(time.Duration(c.minutes)*time.Minute), time.Duration(c.window)*time.Minute, good); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}
