package classroom

import (
	"testing"
	"time"

	"noonbook/compute/place"
)

// oclock is a time of day.
func oclock(hour, minute int) time.Duration {
	return time.Duration(hour)*time.Hour + time.Duration(minute)*time.Minute
}

// A double lesson takes two lesson times that follow each other, whatever their break,
// and its minutes do not count the break.
func TestDoubleLesson(t *testing.T) {
	monday := place.Date{Year: 2027, Month: time.April, Day: 12}
	for _, c := range []struct {
		name   string
		times  []Span
		from   time.Duration // 0 where it has no room
		to     time.Duration
		at60   time.Duration // ten minutes into the second lesson time
		at50   time.Duration // where the first ends and the break begins
		behind time.Duration // where the second begins
	}{
		{"a break of 15", []Span{{oclock(9, 10), oclock(10, 0)}, {oclock(10, 15), oclock(11, 5)}}, oclock(9, 10), oclock(11, 5), oclock(10, 25), oclock(10, 0), oclock(10, 15)},
		{"no break", []Span{{oclock(9, 10), oclock(10, 0)}, {oclock(10, 0), oclock(10, 50)}}, oclock(9, 10), oclock(10, 50), oclock(10, 10), oclock(10, 0), oclock(10, 0)},
		{"noon between the first two", []Span{{oclock(9, 10), oclock(10, 0)}, {oclock(13, 0), oclock(13, 50)}, {oclock(13, 55), oclock(14, 45)}}, oclock(13, 0), oclock(14, 45), oclock(14, 5), oclock(13, 50), oclock(13, 55)},
		{"none follow each other", []Span{{oclock(9, 10), oclock(10, 0)}, {oclock(11, 0), oclock(11, 50)}, {oclock(13, 0), oclock(13, 50)}}, oclock(9, 10), oclock(11, 50), oclock(11, 10), oclock(10, 0), oclock(11, 0)},
		{"one alone", []Span{{oclock(9, 10), oclock(10, 0)}}, 0, 0, 0, 0, 0},
	} {
		term := Term{First: monday, Last: monday, Weekdays: []time.Weekday{time.Monday}, Times: c.times}
		l := Lesson{Title: "double", Start: AnyTime, Times: 2}
		h := Arrange([]Lesson{l}, term, Sky{}).Held[0]
		if h.Placed != (c.to > 0) || h.Placed && (h.From != c.from || h.To != c.to) {
			t.Errorf("%s: placed %v, %v to %v", c.name, h.Placed, h.From, h.To)
		}
		if !h.Placed {
			continue
		}
		for _, m := range []struct {
			after   time.Duration
			inBreak bool
			want    time.Duration
		}{{0, false, c.from}, {60 * time.Minute, false, c.at60}, {50 * time.Minute, true, c.at50}, {50 * time.Minute, false, c.behind}} {
			if got := term.Clock(l, h, m.after, m.inBreak); got != m.want {
				t.Errorf("%s: after %v it is %v, want %v", c.name, m.after, got, m.want)
			}
		}
	}
}
