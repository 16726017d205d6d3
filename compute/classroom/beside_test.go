package classroom

import (
	"reflect"
	"testing"
	"time"
)

// An evening among the lessons changes nothing for the others: they have the days that they
// have without it, and what is said of lessons by number is said of the same lessons.
func TestEveningStandsBesideTheLessons(t *testing.T) {
	rows, _ := evenings(t)
	term, p := termOf(t, rows["alder reach"])
	term.Outing.First = on(4, 15)
	lesson := func(title string) Lesson { return Lesson{Title: title, Start: AnyTime} }
	evening := Lesson{Title: "evening", Start: AnyTime, Evening: true}
	a, b, c, d := lesson("a"), lesson("b"), lesson("c"), lesson("d")
	b.Needs, b.Wet, b.With = []Need{{Kind: Dry}}, Changed, 3
	c.After = Gap{Lesson: 1, Least: 5}
	d.After = Gap{Most: 1, Least: 2} // cannot be: one is dropped
	plain := Arrange([]Lesson{a, b, c, d}, term, Over(p))
	for at := range 5 {
		b, c := b, c
		moved := func(number int) int {
			if number > at {
				return number + 1
			}
			return number
		}
		b.With, c.After.Lesson = moved(3), moved(1)
		list := []Lesson{a, b, c, d}
		list = append(list[:at:at], append([]Lesson{evening}, list[at:]...)...)
		got := Arrange(list, term, Over(p))
		h := got.Held[at]
		want := Slot{on(4, 15), Span{20*time.Hour + 15*time.Minute, 21*time.Hour + 30*time.Minute}}
		if h.Slot != want || !h.Placed {
			t.Errorf("evening %d: held %v, want %v", at+1, h.Slot, want)
		}
		if h.Reserve.Kind != AtAnotherTime || h.Reserve.Date != on(4, 16) {
			t.Errorf("evening %d: reserve %+v, want 16 April", at+1, h.Reserve)
		}
		var rest []Held
		for i, h := range got.Held {
			if i != at {
				if h.Reserve.With > 0 {
					if h.Reserve.With != moved(3) {
						t.Errorf("evening %d: lesson b changes places with %d, want %d", at+1, h.Reserve.With, moved(3))
					}
					h.Reserve.With = 3
				}
				rest = append(rest, h)
			}
		}
		if !reflect.DeepEqual(rest, plain.Held) {
			t.Errorf("evening %d: the others are held\n%v, want\n%v", at+1, rest, plain.Held)
		}
		if len(got.Dropped) != 1 || len(plain.Dropped) != 1 || got.Dropped[0].Lesson != moved(plain.Dropped[0].Lesson) || got.Dropped[0].Other != moved(plain.Dropped[0].Other) {
			t.Errorf("evening %d: dropped %+v, want %+v", at+1, got.Dropped, plain.Dropped)
		}
	}
}

// Where no night does, the evening has no day and says so, and takes nobody's room.
func TestEveningWithoutANight(t *testing.T) {
	rows, _ := evenings(t)
	term, p := termOf(t, rows["tromso"])
	term.Last = term.First // room for one lesson
	list := []Lesson{{Title: "evening", Start: AnyTime, Evening: true}, {Title: "a", Start: AnyTime}, {Title: "b", Start: AnyTime}}
	c := Arrange(list, term, Over(p))
	if c.Held[0].Placed || !c.Held[1].Placed || c.Held[2].Placed {
		t.Errorf("held %v, want the first lesson alone", c.Held)
	}
	if want := (Rule{Kind: ForEvening, Lesson: 1}); len(c.Dropped) != 1 || c.Dropped[0] != want {
		t.Errorf("dropped %+v, want %+v", c.Dropped, want)
	}
	if days, daily := term.Enough(list); days != 1 || daily != 0 {
		t.Errorf("%d more days or %d a day make room, want 1 day alone: the evening needs none", days, daily)
	}
	if without := term.Without(list); len(without) != 1 || without[0] != 3 {
		t.Errorf("leave out %v, want lesson 3", without)
	}
}
