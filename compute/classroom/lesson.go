package classroom

import (
	"slices"
	"time"

	"noonbook/compute/place"
)

// A Lesson is what the calendar and the lists know of one lesson of the unit.
// It is plain data: lessons that print alike are alike.
type Lesson struct {
	Title  string
	Page   string        // its page in the handbook
	Date   place.Date    // the day that is wanted for it; zero for any
	Start  time.Duration // when in the day it is wanted, since midnight; AnyTime for a lesson time of the term
	Length time.Duration // 0 for whole lesson times; a longer lesson runs on through the breaks
	Times  int           // lesson times that follow each other that it takes, where it has no length; 0 and 1 are the same
	Visits int           // lesson times of one day that it takes, each of that length; 0 and 1 are the same
	Needs  []Need
	After  Gap
	Wet    Wet
	With   int // number of the lesson, from 1, that it changes places with when it is wet; 0 for the next one
	Kit    []Thing
	Prints []string // what it has to print: placeholders whose sheets it shows, each once, and BuildCard
	Core   bool     // the unit cannot do without it

	// Evening: it is an evening under the sky, whose night the term's Outing and the sky
	// decide. It stands beside the other lessons and holds none of them up.
	Evening bool

	// OnSheet is how many things one sheet of a placeholder holds, where that is more than
	// one: two gnomons, five strips. What is not in it has one thing a sheet, or a set.
	OnSheet map[string]int

	// For the teacher's papers; no day depends on them.
	Question string   // that the lesson asks
	Goals    []string // what pupils can do afterwards
	Evidence []string // what shows it
	Codes    []string // of the school's curriculum
	Absent   string   // what a pupil does instead who was away
	Care     []Care   // in the order of the lesson
}

// A Care is one thing that a lesson says to keep people from harm.
type Care struct {
	Names []string // of cautions; none where it has words alone
	Words string   // of the lesson's own, "" for those of the names
}

// AnyTime is the start of a lesson that takes a lesson time of the term.
const AnyTime time.Duration = -1

// A Gap ties a lesson to an earlier one.
type Gap struct {
	Lesson int // number of the earlier lesson, from 1; 0 for the one before it
	Least  int // days from one to the other at least; 0 for none
	Most   int // and at most; 0 for any number
	Clock  bool
	// Clock: no clock change may lie between the two, because the watch of one
	// is read against the other.
}

// A Wet says what becomes of a lesson that needs the weather when there is none.
type Wet int

const (
	Later   Wet = iota // a lesson time later, if one is free
	Kept               // a lesson time later that is kept free, before the next lesson
	Changed            // it changes places with an indoor lesson
	Inside             // the class stays in, and the lesson says what it does there
)

// A Span is a stretch of the day, since midnight by the school's clock.
type Span struct{ From, To time.Duration }

// A Slot is one lesson time of one day.
type Slot struct {
	Date place.Date
	Span
}

// before reports whether s ends before t begins.
func (s Slot) before(t Slot) bool {
	if s.Date == t.Date {
		return s.To <= t.From
	}
	return s.Date.Before(t.Date)
}

// overlaps reports whether s and t share some time.
func (s Slot) overlaps(t Slot) bool {
	return s.Date == t.Date && s.From < t.To && t.From < s.To
}

// Weather reports whether the lesson can be spoilt by the weather.
func (l Lesson) Weather() bool {
	return l.Evening || slices.ContainsFunc(l.Needs, func(n Need) bool { return n.Kind != DarkBy })
}
