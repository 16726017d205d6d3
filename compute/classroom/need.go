package classroom

import (
	"time"

	"noonbook/compute/quantity"
)

// A Need is one thing that a lesson asks of the sky or the weather.
type Need struct {
	Kind   NeedKind
	Height quantity.Angle // SunUp, MoonUp, HourMarks: how high above the horizon at least, as seen through the air
	Window time.Duration  // SunUp, MoonUp: how long on end within the lesson; 0 for all of it
	By     time.Duration  // DarkBy: the time of the day, since midnight
	Marks  Span           // HourMarks: the full hours within it
}

// A NeedKind tells the sorts of Need apart.
type NeedKind int

const (
	Dry       NeedKind = iota // no rain; no almanac knows
	SunUp                     // the Sun stands high enough while pupils are outside
	MoonUp                    // the Moon stands high enough, and far enough from the Sun to be found
	Dark                      // the whole lesson lies after dusk or before dawn
	DarkBy                    // it is dark at a time of the day, as for homework
	HourMarks                 // the Sun stands high enough at each full hour of a stretch of the day
)
