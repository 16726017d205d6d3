package almanac

import (
	"time"

	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// A Day is what a body does between two midnights of a place's clock. The day
// lasts 23 to 25 hours where clocks change; an event may be missing from it or
// happen twice. Events are in order, in the place's zone, to the millisecond;
// what they are worth is said in the package documentation.
type Day struct {
	From, To time.Time // the local day; equal where the zone skipped the date
	Rises    []time.Time
	Transits []time.Time // highest, on the meridian of the place
	Sets     []time.Time
	State    State
}

// A State says whether a body crosses the horizon in a day. It has a meaning
// at the poles too, where a body may stay up for months.
type State int

// The states of a day.
const (
	Crosses State = iota // it rises or sets at least once
	UpAllDay
	DownAllDay
	NoDay // the zone skipped the date
)

// String returns "crosses", "up all day", "down all day" or "no day".
func (s State) String() string {
	return [...]string{"crosses", "up all day", "down all day", "no day"}[max(0, min(3, s))]
}

// CivilTwilight is the altitude of the Sun's centre at which civil twilight
// begins and ends.
const CivilTwilight = -6 * quantity.Turn / 360

// horizon is the geometric altitude of a point seen on the horizon, for 34′ of
// refraction. The usual almanac convention adds 16′ for the Sun's radius and
// takes its centre's altitude without parallax, so that it is 50′ below,
// geocentrically, at rise and set; sunParallax (8.794″, IAU 1976) turns that
// into the topocentric altitude that a place sees, to 0.2″.
const (
	horizon     = -34 * quantity.Turn / 360 / 60
	sunRadius   = 16 * quantity.Turn / 360 / 60
	sunParallax = 8.794 * quantity.Turn / 360 / 3600
)

// SunDay returns the Sun's rises, transits and sets on the date d at p. Rise
// and set are when the geocentric altitude of its centre is −50′ (without the
// parallax of 8.8″, which would make sunrise up to 1 s later at middle
// latitudes); the observer's elevation adds no dip, for what stands on the
// skyline is not known. A transit is when it crosses the meridian to the south
// or north, its hour angle zero.
func SunDay(p place.Place, d place.Date) Day { return Sun.Day(p, d) }

// past finds when the point radius km above the body's centre passes altitude.
func (b Body) past(p place.Place, d place.Date, altitude quantity.Angle, radius float64) Day {
	if p.Zone == nil {
		p.Zone = time.UTC
	}
	var day Day
	day.From, day.To = p.Day(d)
	if !day.From.Before(day.To) {
		day.State = NoDay
		return day
	}
	k := trackOf(b, day.From, day.To)
	c := course{k: &k, o: observerAt(p), sin: altitude.Sin(), cos: altitude.Cos(), radius: radius}

	var found [most]crossing
	for _, x := range found[:c.crossings(&found)] {
		if at := day.at(x.day); x.up {
			day.Rises = append(day.Rises, at)
		} else {
			day.Sets = append(day.Sets, at)
		}
	}
	if len(day.Rises)+len(day.Sets) == 0 {
		day.State = DownAllDay
		if c.height(k.span/2) > 0 {
			day.State = UpAllDay
		}
	}
	var transits [most]float64
	for _, x := range transits[:c.transits(&transits)] {
		day.Transits = append(day.Transits, day.at(x))
	}
	return day
}

// A Span is a part of a day, from its first instant to before its last.
type Span struct{ From, To time.Time }

// Spans returns the parts of the day in which the body is up, or above the
// altitude that was asked for, in order.
func (d Day) Spans() []Span {
	if d.State == UpAllDay {
		return []Span{{d.From, d.To}}
	}
	var spans []Span
	rises, sets := d.Rises, d.Sets
	if len(sets) > 0 && (len(rises) == 0 || sets[0].Before(rises[0])) {
		spans = append(spans, Span{d.From, sets[0]})
		sets = sets[1:]
	}
	for i, rise := range rises {
		span := Span{rise, d.To}
		if i < len(sets) {
			span.To = sets[i]
		}
		spans = append(spans, span)
	}
	return spans
}

func (d *Day) at(days float64) time.Time {
	return d.From.Add(time.Duration(days * float64(24*time.Hour)).Round(time.Millisecond))
}
