package sky

import (
	"slices"
	"time"

	"noonbook/compute/place"
)

// Clocks are what the clocks of a place do in a year, put as a wheel can show it: a
// standard time, and dates on which the clocks run ahead of it. Standard time is the
// one furthest behind UTC that the year has, whatever the law calls it.
type Clocks struct {
	Standard time.Duration // ahead of UTC
	Forward  time.Duration // of daylight time over standard time; 0 where there is none
	Spans    []Dates       // with daylight time
}

// Dates are from a date to another, both included.
type Dates struct{ From, To place.Date }

// ClocksOf reads the zone of the place on the evenings of the year.
func ClocksOf(p place.Place, year int) Clocks {
	first := place.Date{Year: year, Month: time.January, Day: 1}
	var offsets []time.Duration // of each evening
	for d := first; d.Year == year; d = d.Add(1) {
		offsets = append(offsets, p.UTCOffset(p.Clock(d, 21, 0)))
	}
	least, most := slices.Min(offsets), slices.Max(offsets)
	c := Clocks{Standard: least, Forward: most - least}
	if c.Forward == 0 {
		return c
	}
	for i, offset := range offsets {
		if offset == least {
			continue
		}
		d := first.Add(i)
		if n := len(c.Spans); n > 0 && c.Spans[n-1].To.Add(1) == d {
			c.Spans[n-1].To = d
		} else {
			c.Spans = append(c.Spans, Dates{d, d})
		}
	}
	return c
}
