package dial

import (
	"math"
	"time"

	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
	"noonbook/compute/search"
)

// A Drift is how far hour marks are off on a later date, when they were made by
// the watch round a style that points to the pole. At the same clock time the
// Sun's hour angle has changed by the equation of time and by what was done to
// the clock, and by nothing else; so every mark is off by the same time.
type Drift struct {
	On       place.Date
	Equation time.Duration // part that the Sun's uneven course makes
	Clock    time.Duration // part that a change of the clocks makes
}

// DriftOn returns the drift on a date of marks made on another, both at midday
// by the clock.
func DriftOn(p place.Place, marked, on place.Date) Drift {
	then, now := p.Clock(marked, 12, 0), p.Clock(on, 12, 0)
	return Drift{
		On:       on,
		Equation: almanac.EquationOfTime(now) - almanac.EquationOfTime(then),
		Clock:    withoutDays(p.UTCOffset(then) - p.UTCOffset(now)), // a place that changes sides of the date line skips a day, not an hour
	}
}

// Fast is what the marks show less what the clock shows: minus an hour from
// the day on which the clocks went forward, for the shadow knows nothing of it.
func (d Drift) Fast() time.Duration { return d.Equation + d.Clock }

// Moved returns how far the shadow lies from the mark of an hour angle, on the
// level dial of the latitude, afternoon positive.
func (d Drift) Moved(latitude, mark quantity.Angle) quantity.Angle {
	now := mark + quantity.Hours(d.Fast().Hours())
	return (LineAt(latitude, now).Angle - LineAt(latitude, mark).Angle).Signed()
}

// MarksHold returns the first drift after the marking day, within a year, that
// is more than the limit; ok is false where there is none. clock says whether
// changes of the clock count or the watch is kept as it was.
func MarksHold(p place.Place, marked place.Date, limit time.Duration, clock bool) (end Drift, ok bool) {
	over := func(days int) bool {
		end = DriftOn(p, marked, marked.Add(days))
		if !clock {
			end.Clock = 0
		}
		return end.Fast().Abs() > limit
	}
	const stride = 7 // the equation of time changes by 30 s a day at most: under 4 min between looks
	for days := stride; days <= 366; days += stride {
		if !over(days) {
			continue
		}
		for d := days - stride + 1; ; d++ {
			if over(d) {
				return end, true
			}
		}
	}
	return Drift{}, false
}

// Marked is a dial of any style on which hours were marked by the shadow itself
// on a day when the Sun had the declination, instead of being drawn.
type Marked struct {
	Style       Style
	Tilt        Tilt
	Declination quantity.Angle
}

// farthest is how far from the true hour a reading of marks is looked for, and
// nextMark how far apart it looks.
const (
	farthest = 4 * quantity.Turn / 24
	nextMark = quantity.Turn / 24 / 6
)

// Off returns what the marks show less the true sun time, for a Sun of another
// declination and a true hour angle: which mark the shadow lies on, were there
// one for every moment. The nearest one counts where there are several. ok is
// false where no shadow falls, now or at the mark's time on the marking day, and
// where the mark is more than four hours away. An upright stick in the tropics
// can have a shadow that falls on no mark.
func (m Marked) Off(latitude, declination, hourAngle quantity.Angle) (fast time.Duration, ok bool) {
	now, ok := m.shadow(latitude, declination, hourAngle)
	if !ok {
		return 0, false
	}
	beside := func(away quantity.Angle) float64 { // NaN where no shadow fell
		then, ok := m.shadow(latitude, m.Declination, hourAngle+away)
		if !ok {
			return math.NaN()
		}
		return float64((then - now).Signed())
	}
	if beside(0) == 0 {
		return 0, true
	}
	for away := quantity.Angle(0); away < farthest; away += nextMark {
		for _, side := range []quantity.Angle{1, -1} {
			if root, found := between(beside, side*away, side*(away+nextMark)); found {
				return sunTime(root), true
			}
		}
	}
	return 0, false
}

func (m Marked) shadow(latitude, declination, hourAngle quantity.Angle) (quantity.Angle, bool) {
	azimuth, altitude := SunDirection(latitude, declination, hourAngle)
	shadow, ok := m.Style.Shadow(m.Tilt.Sees(azimuth, altitude))
	return shadow, ok && altitude > 0
}

// between finds f's change of sign in a step, to 1e-9 of a nextMark. A jump from half a turn to minus half a turn is no such change.
func between(f func(quantity.Angle) float64, a, b quantity.Angle) (quantity.Angle, bool) {
	fa, fb := f(a), f(b)
	if !(fa*fb <= 0) || math.Abs(fa-fb) > math.Pi {
		return 0, false
	}
	shadows := true
	a, b = search.Halve(a, b, 1e-9*nextMark, func(x quantity.Angle) bool {
		fx := f(x)
		shadows = shadows && !math.IsNaN(fx)
		return fa*fx <= 0
	})
	return (a + b) / 2, shadows
}
