package entry

import (
	"math"
	"slices"
	"time"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/compute/almanac"
	"noonbook/compute/classroom"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// MoonUp reports whether some of the Moon is above the horizon as seen.
func MoonUp(p place.Place, t time.Time) bool {
	const radius = 0.25 // degrees, the Moon's at its smallest
	return AsSeen(almanac.MoonFrom(p, t).Altitude).Degrees() > -radius
}

// DrawMoon draws a disc with its lit part, turned as it is seen. The lit part
// lies between half the limb and the terminator, half an ellipse whose short
// half-axis is (1 − 2k) of the radius, k the lit fraction: Meeus, Astronomical
// Algorithms, 2nd ed. 1998, chapter 41.
func DrawMoon(d *drawing.Drawing, centre drawing.Point, radius float64, limb almanac.Limb) {
	d.Disc("night", centre, radius)
	// toward is the direction of the lit limb on the drawing, across the one at
	// right angles; the drawing's y runs down.
	toward := drawing.Point{X: limb.Lean.Sin(), Y: -limb.Lean.Cos()}
	across := drawing.Point{X: limb.Lean.Cos(), Y: limb.Lean.Sin()}
	at := func(u, v float64) drawing.Point {
		return drawing.Point{
			X: centre.X + radius*(u*toward.X+v*across.X),
			Y: centre.Y + radius*(u*toward.Y+v*across.Y),
		}
	}
	const steps = 16
	var edge []drawing.Point
	for i := range steps + 1 {
		a := quantity.Turn/2*quantity.Angle(i)/steps - quantity.Turn/4
		edge = append(edge, at(a.Cos(), a.Sin()))
	}
	short := 1 - 2*limb.Lit
	for i := 1; i < steps; i++ {
		a := quantity.Turn/4 - quantity.Turn/2*quantity.Angle(i)/steps
		edge = append(edge, at(short*a.Cos(), a.Sin()))
	}
	d.Area("lit", edge...)
}

// LeastMoon is how high the Moon has to stand, in degrees, where nothing else is said.
func LeastMoon() float64 { return math.Round(classroom.MoonLeast.Degrees()) }

// A Chance is a stretch of a lesson in which the Moon stands high enough.
type Chance struct {
	Date     place.Date
	From, To time.Time
	Best     time.Time // when it stands highest within
	Where    almanac.Horizontal
	Limb     almanac.Limb
	SunApart quantity.Angle // as seen from the place
	Safe     bool           // whether it then is far enough from the Sun to be looked for
}

// ChancesOn returns the stretches of the lessons in which the Moon's centre is
// seen at the altitude or higher.
func ChancesOn(p place.Place, d place.Date, lessons []form.TimeSpan, altitude quantity.Angle) []Chance {
	var list []Chance
	for _, high := range DayPast(almanac.Moon, p, d, AsStands(altitude)).Spans() {
		for _, lesson := range lessons {
			if part, ok := Clip(high, at(p, d, lesson.From), at(p, d, lesson.To)); ok {
				list = append(list, ChanceIn(p, d, part.From, part.To))
			}
		}
	}
	slices.SortFunc(list, func(a, b Chance) int { return a.From.Compare(b.From) })
	return list
}

func at(p place.Place, d place.Date, clock time.Duration) time.Time {
	return p.Clock(d, int(clock.Hours()), int(clock.Minutes())%60)
}

// Clip returns what of a span lies from one moment to another; ok is false where
// nothing does.
func Clip(s almanac.Span, from, to time.Time) (clipped almanac.Span, ok bool) {
	if s.From.Before(from) {
		s.From = from
	}
	if s.To.After(to) {
		s.To = to
	}
	return s, s.From.Before(s.To)
}

// ChanceIn finds the highest moment of a stretch, to the minute or so: at an end
// or where the Moon crosses the meridian.
func ChanceIn(p place.Place, d place.Date, from, to time.Time) Chance {
	c := Chance{Date: d, From: from, To: to}
	for _, t := range append(MoonDay(p, d).Transits, from, to) {
		if t.Before(from) || t.After(to) {
			continue
		}
		if h := almanac.MoonFrom(p, t); c.Best.IsZero() || h.Altitude > c.Where.Altitude {
			c.Best, c.Where = t, h
		}
	}
	c.Limb = almanac.Moon.LimbFrom(p, c.Best)
	c.SunApart, c.Safe = almanac.Moon.SunApart(p, c.Best), !classroom.MoonTooNear(p, c.Best)
	return c
}
