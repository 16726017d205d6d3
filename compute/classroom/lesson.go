package classroom

import (
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
	Length time.Duration // 0 for one lesson time
	Needs  []string      // what it needs of the sky and the weather: "sun", "dark", "dry"
	Kit    []Thing
}

// AnyTime is the start of a lesson that takes a lesson time of the term.
const AnyTime time.Duration = -1

// A Thing is one line of a lesson's kit.
type Thing struct {
	Item  string
	Count float64 // for each that shares it
	Share Share
	Spare int // more for the whole class
}

// A Span is a stretch of the day, since midnight by the school's clock.
type Span struct{ From, To time.Duration }

// A Slot is one lesson time of one day.
type Slot struct {
	Date place.Date
	Span
}
