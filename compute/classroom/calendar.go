package classroom

import "noonbook/compute/place"

// A Calendar says when each lesson of a unit is held.
type Calendar struct {
	Held []Held // by lesson
}

// A Held is when one lesson is held.
type Held struct {
	Slot
	Placed bool // false where the term has no room for it
}

// Arrange gives each lesson its day: the one that it wants, or the next school
// day after the lesson before it.
func Arrange(lessons []Lesson, term Term) Calendar {
	c := Calendar{Held: make([]Held, len(lessons))}
	next := term.First
	for i, l := range lessons {
		h := Held{Slot: Slot{Date: l.Date, Span: times(l, term)}, Placed: true}
		if l.Date.IsZero() {
			for h.Date = next; !term.Holds(h.Date) && !h.Date.After(term.Last); {
				h.Date = h.Date.Add(1)
			}
			h.Placed = term.Holds(h.Date)
		}
		c.Held[i] = h
		next = h.Date.Add(1)
	}
	return c
}

// times returns when in the day a lesson is held: as it wants, or in the first
// lesson time.
func times(l Lesson, term Term) Span {
	var s Span
	if len(term.Times) > 0 {
		s = term.Times[0]
	}
	length := s.To - s.From
	if l.Start != AnyTime {
		s.From = l.Start
	}
	if l.Length > 0 {
		length = l.Length
	}
	return Span{s.From, s.From + length}
}

// On returns the lessons that are held on the date, by number from 0.
func (c Calendar) On(d place.Date) []int {
	var list []int
	for i, h := range c.Held {
		if h.Placed && h.Date == d {
			list = append(list, i)
		}
	}
	return list
}
