package dial

import (
	"fmt"
	"time"

	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// A Correction is what lies between dial time and clock time.
type Correction struct {
	Equation  time.Duration // equation of time, apparent minus mean
	Longitude time.Duration // standard clock minus local mean time, within 12 h: positive west of the zone's meridian
	Saving    time.Duration // by how much the clock is ahead of its standard time
}

// CorrectionOn returns the correction at midday of the place's clock. During a
// day the equation of time changes by up to 30 s, half of that from midday.
//
// Saving is taken from the clock itself: the lead over the neighbouring part of
// the year that the IANA database marks the other way (half an hour on Lord Howe
// Island; an hour in Dublin's summer, whichever half the law calls standard).
//
// Where the date line lies between a place and the meridian of its zone, the two
// are on different dates. A dial shows no date, so whole days are left out.
func CorrectionOn(p place.Place, d place.Date) Correction {
	midday := p.Clock(d, 12, 0)
	saving := savingAt(p, midday)
	return Correction{
		Equation:  almanac.EquationOfTime(midday),
		Longitude: withoutDays(p.UTCOffset(midday) - saving - meridianTime(p)),
		Saving:    saving,
	}
}

// Total is what is added to dial time to get clock time.
func (c Correction) Total() time.Duration { return c.Fixed() - c.Equation }

// Fixed is the part that a face can carry in its lines: all but the equation of
// time.
func (c Correction) Fixed() time.Duration { return c.Longitude + c.Saving }

// withoutDays leaves whole days out of a difference between two clocks, down to
// −12 h to 12 h.
func withoutDays(d time.Duration) time.Duration { return d - d.Round(24*time.Hour) }

// meridianTime is local mean time less UT: four minutes a degree east.
func meridianTime(p place.Place) time.Duration { return sunTime(p.Longitude) }

func savingAt(p place.Place, t time.Time) time.Duration {
	const season = 366 * 24 * time.Hour // further off is history, not a season
	t = t.In(p.Zone)
	begin, end := t.ZoneBounds()
	least := p.UTCOffset(t)
	for _, beside := range []time.Time{begin.Add(-time.Second), end.Add(time.Second)} {
		if gap := beside.Sub(t).Abs(); gap < season && beside.In(p.Zone).IsDST() != t.IsDST() {
			least = min(least, p.UTCOffset(beside))
		}
	}
	return p.UTCOffset(t) - least
}

// SunAt returns the Sun's hour angle at the place and its declination, as seen
// from the Earth's centre.
func SunAt(p place.Place, t time.Time) (hourAngle, declination quantity.Angle) {
	sun := almanac.SunAt(t)
	return (almanac.SiderealTime(t) + p.Longitude - sun.RightAscension).Signed(), sun.Declination
}

// A ClockLine is the line on which the shadow falls when a clock that leaves
// out the equation of time shows a round time.
type ClockLine struct {
	Clock time.Duration // since the clock's midnight, 0 h to 24 h
	HourLine
}

// ClockLines returns lines at the whole multiples of step of a clock that is
// ahead of the Sun by a fixed correction, within the sun times from and to.
// What is read off them differs from the clock by the equation of time alone.
// It fails as HourLines does, and for a correction beyond one day.
func ClockLines(latitude quantity.Angle, from, to, step, fixed time.Duration) ([]ClockLine, error) {
	if err := checkLines(latitude, from, to, step); err != nil {
		return nil, err
	}
	const day = 24 * time.Hour
	if fixed.Abs() > day {
		return nil, fmt.Errorf("a clock that is %v from the Sun is none", fixed)
	}
	var lines []ClockLine
	for clock := nextMultiple(from+fixed, step); clock-fixed <= to; clock += step {
		line := LineAt(latitude, hourAngle(clock-fixed))
		line.SunTime = clock - fixed
		lines = append(lines, ClockLine{(clock%day + day) % day, line})
	}
	return lines, nil
}

// nextMultiple returns the first whole multiple of step from t on.
func nextMultiple(t, step time.Duration) time.Duration {
	n := t / step // toward zero
	if t%step > 0 {
		n++
	}
	return n * step
}
