package almanac

import (
	"math"
	"time"
)

// A Phase is one of the Moon's four principal phases.
type Phase int

// The principal phases, in their order.
const (
	NewMoon Phase = iota
	FirstQuarter
	FullMoon
	LastQuarter
)

// String returns "new Moon", "first quarter", "full Moon" or "last quarter".
func (p Phase) String() string {
	return [...]string{"new Moon", "first quarter", "full Moon", "last quarter"}[max(0, min(3, p))]
}

// A PhaseTime is a principal phase and its moment, UTC.
type PhaseTime struct {
	Phase Phase
	At    time.Time
}

// Phases returns the principal phases of the Moon from an instant to before
// another, in order: the moments when its apparent geocentric longitude,
// aberration and light time included, is 0°, 90°, 180° and 270° ahead of the
// Sun's. They are good to 5 s. The error is a *RangeError; a day beyond the range
// at either end is allowed, for local calendars.
func Phases(from, to time.Time) ([]PhaseTime, error) {
	// A clock far from Greenwich begins and ends the years up to 14 hours apart.
	for _, t := range [...]time.Time{from.Add(24 * time.Hour), to.Add(-24 * time.Hour)} {
		if err := Covers(t); err != nil {
			return nil, err
		}
	}
	if !from.Before(to) {
		return nil, nil
	}
	begin := momentOf(from).centuries
	quarter := int(math.Floor(meanElongation(begin)/(math.Pi/2))) - 1
	list := make([]PhaseTime, 0, 3+int(to.Sub(from).Hours()/24/7))
	for ; ; quarter++ {
		at := timeOf(phase(quarter))
		if !at.Before(to) {
			return list, nil
		}
		if !at.Before(from) {
			list = append(list, PhaseTime{Phase(quarter & 3), at})
		}
	}
}

// phaseAt returns the moment, Julian centuries of TT, at which the Moon has
// gained the given number of quarter turns on the Sun. Newton's method: first on
// a short elongation, which brings it within half an hour, then on the whole
// one, with the slope of the short.
func phaseAt(quarter int) float64 {
	want := float64(quarter) * math.Pi / 2
	t := (want - radians(297.8501921)) / radians(445267.1114034)
	for range 3 {
		e, slope := shortElongation(t)
		t += (want - e) / slope
	}
	for range 10 {
		_, slope := shortElongation(t)
		off := signed(longElongation(t) - want)
		t -= off / slope
		if math.Abs(off) < 1e-8 { // 0.004 s, and a hundredth of it after this step
			break
		}
	}
	return t
}

// longElongation returns the Moon's longitude less the Sun's, in which nutation
// and most of precession cancel.
func longElongation(t float64) float64 {
	m := moment{centuries: t}
	sun, _, _ := sunLongitude(m)
	return moonLongitude(m) - sun
}

// meanElongation returns D: Meeus, Astronomical Algorithms, 2nd ed. 1998,
// equation 47.2.
func meanElongation(t float64) float64 {
	return radians(297.8501921 + t*(445267.1114034+t*(-0.0018819+t/545868)))
}

// shortElongation returns the elongation in longitude to about 0.2° and its
// slope in radians a century: Meeus equation 48.4 taken from the Moon's side.
func shortElongation(t float64) (e, slope float64) {
	d := meanElongation(t)
	m := radians(357.5291092 + t*35999.0502909)
	n := radians(134.9633964 + t*(477198.8675055+t*0.0087414))
	const rateD, rateM, rateN = 7771.377144, 628.301955, 8328.691425 // of the same three, radians a century
	e, slope = d, rateD
	for _, w := range [...]struct{ degrees, d, m, n float64 }{
		{6.289, 0, 0, 1},
		{-2.100, 0, 1, 0},
		{1.274, 2, 0, -1},
		{0.658, 2, 0, 0},
		{0.214, 0, 0, 2},
		{0.110, 1, 0, 0},
	} {
		sin, cos := math.Sincos(w.d*d + w.m*m + w.n*n)
		e += radians(w.degrees) * sin
		slope += radians(w.degrees) * cos * (w.d*rateD + w.m*rateM + w.n*rateN)
	}
	return e, slope
}
