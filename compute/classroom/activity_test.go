package classroom

import (
	"testing"
	"testing/quick"
	"time"
)

// Queues worked out by hand, for a class of 27 in nine groups of three.
func TestQueues(t *testing.T) {
	groups := Groups(27, 3)
	for _, c := range []struct {
		name   string
		do     Activity
		given  int // minutes
		turns  int
		takes  time.Duration
		places int // that would do
		count  int // for each that would do
	}{
		{"a minute's cut for each pupil", Activity{PerPupil, 1, time.Minute, 1}, 15, 27, 27 * time.Minute, 2, 0}, // 2 × 15 rounds hold 27
		{"the same at two places: 14 rounds", Activity{PerPupil, 1, time.Minute, 2}, 15, 27, 14 * time.Minute, 2, 1},
		{"two flights of 64 s a group", Activity{PerGroup, 2, 64 * time.Second, 1}, 20, 18, 19*time.Minute + 12*time.Second, 1, 2}, // 18 rounds are 19:12
		{"two flights of 64 s a pupil", Activity{PerPupil, 2, 64 * time.Second, 1}, 30, 54, 57*time.Minute + 36*time.Second, 2, 1}, // 28 rounds are 29:52
		{"nine groups at four compasses: 3 rounds", Activity{PerGroup, 1, 3 * time.Minute, 4}, 6, 9, 9 * time.Minute, 5, 0},        // two rounds of 5
		{"a turn too long for the time", Activity{PerGroup, 1, 3 * time.Minute, 4}, 2, 9, 9 * time.Minute, 0, 0},
		{"a turn as long as the time", Activity{PerGroup, 1, 3 * time.Minute, 4}, 3, 9, 9 * time.Minute, 9, 0},
		{"once for the class", Activity{PerClass, 1, 90 * time.Second, 1}, 2, 1, 90 * time.Second, 1, 1},
	} {
		turns, given := c.do.Turns(27, groups), time.Duration(c.given)*time.Minute
		if turns != c.turns {
			t.Errorf("%s: %d turns, want %d", c.name, turns, c.turns)
		}
		if got := c.do.Takes(turns); got != c.takes {
			t.Errorf("%s: %v, want %v", c.name, got, c.takes)
		}
		if got := c.do.PlacesWithin(turns, given); got != c.places {
			t.Errorf("%s: %d places would do, want %d", c.name, got, c.places)
		}
		if got := c.do.CountWithin(turns/c.do.Count, given); got != c.count {
			t.Errorf("%s: %d for each would do, want %d", c.name, got, c.count)
		}
	}
	for pupils, places := range map[int]int{27: 3, 28: 3, 30: 4, 0: 1} { // nine, nine, ten groups and none
		if got := (Activity{Share: PerGroup, Places: 1}).SharedBy(3, pupils, Groups(pupils, 3)).Places; got != places {
			t.Errorf("three groups of a class of %d share a place: %d places, want %d", pupils, got, places)
		}
	}
	if turns := (Activity{PerPupil, 2, time.Minute, 1}).Turns(0, nil); turns != 0 {
		t.Errorf("a class without pupils takes %d turns", turns)
	}
}

// Whatever the activity, the places that would do are the fewest that do, and so is the
// count for each the most that does.
func TestWhatWouldDo(t *testing.T) {
	holds := func(n, count, places uint8, turn, given uint16) bool {
		a := Activity{PerPupil, 1 + int(count%5), time.Duration(1+turn%900) * time.Second, 1 + int(places%6)}
		within := time.Duration(given) * time.Second
		turns := a.Turns(int(n), nil)
		fits := func(a Activity) bool { return a.Takes(a.Turns(int(n), nil)) <= within }
		if p := a.PlacesWithin(turns, within); p > 0 {
			wide, narrow := a, a
			wide.Places, narrow.Places = p, p-1
			if !fits(wide) || p > 1 && fits(narrow) {
				return false
			}
		} else if n > 0 && a.Turn <= within {
			return false
		}
		if n == 0 {
			return a.CountWithin(0, within) == 0
		}
		few, many := a, a
		few.Count = a.CountWithin(int(n), within)
		many.Count = few.Count + 1
		return fits(few) && !fits(many)
	}
	if err := quick.Check(holds, &quick.Config{MaxCount: 2000}); err != nil {
		t.Error(err)
	}
}

// A lesson lasts without the breaks between its lesson times, and as often as it is
// visited; one that says its minutes has the breaks in them.
func TestLasts(t *testing.T) {
	at := func(hour, minute int) time.Duration {
		return time.Duration(hour)*time.Hour + time.Duration(minute)*time.Minute
	}
	term := Term{First: monday, Last: monday, Weekdays: []time.Weekday{time.Monday}, Times: []Span{{at(9, 0), at(9, 50)}, {at(10, 5), at(10, 55)}, {at(11, 0), at(11, 45)}}}
	for _, c := range []struct {
		name   string
		lesson Lesson
		want   time.Duration
	}{
		{"one lesson time", Lesson{Start: AnyTime}, 50 * time.Minute},
		{"two lesson times", Lesson{Start: AnyTime, Times: 2}, 100 * time.Minute},
		{"three lesson times", Lesson{Start: AnyTime, Times: 3}, 145 * time.Minute},
		{"two visits", Lesson{Start: AnyTime, Visits: 2}, 100 * time.Minute},
		{"75 minutes, the break within", Lesson{Start: AnyTime, Length: 75 * time.Minute}, 75 * time.Minute},
		{"one from ten past nine", Lesson{Start: at(9, 10), Length: 30 * time.Minute}, 30 * time.Minute},
	} {
		calendar := Arrange([]Lesson{c.lesson}, term, Sky{})
		if !calendar.Held[0].Placed {
			t.Fatalf("%s: no room", c.name)
		}
		if got := term.Lasts(c.lesson, calendar.Held[0]); got != c.want {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}
