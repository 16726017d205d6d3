package almanac

import (
	"math"
	"time"

	"noonbook/compute/place"
	"noonbook/compute/quantity"
	"noonbook/compute/space"
)

// The slow way, against which the quick one is held: every place from the theories
// themselves, every crossing of a day looked for hour by hour.

// slowTheory returns a body's heliocentric place by its theory.
func slowTheory(b Body, t float64) space.Vector {
	theories := [...]func(float64) (lon, lat, r float64){
		mercurySeries.at, venusSeries.at, marsSeries.at, jupiterSeries.at, saturnSeries.at, uranusSeries.at, neptuneSeries.at, plutoPlace,
	}
	return rectangular(theories[b-Mercury](t))
}

// slowVector returns a body's apparent geocentric place of the true equator in km.
func slowVector(b Body, m moment, f frame) space.Vector {
	var lon, lat, r float64
	switch b {
	case Sun:
		lon, lat, r = sunLongitude(m)
	case Moon:
		lon, lat, r = moonPlace(m)
	default:
		sight := func(t float64) space.Vector {
			return slowTheory(b, t).Minus(rectangular(earthSeries.at(t)))
		}
		lag := sight(m.centuries).Norm() * lightTime
		lon, lat, r = spherical(sight(m.centuries - lag))
	}
	v := rectangular(lon+f.dpsi, lat, r*kilometresPerAU)
	return space.Vector{X: v.X, Y: v.Y*f.cosEps - v.Z*f.sinEps, Z: v.Y*f.sinEps + v.Z*f.cosEps}
}

// slowTrack follows a body by the theories.
func slowTrack(b Body, from, to time.Time) track {
	begin, end := momentOf(from), momentOf(to)
	k := track{span: end.ut - begin.ut}
	middle := momentAt((begin.ut + end.ut) / 2)
	f := frameBySeries(middle)
	nodes := b.nodes()
	k.step = k.span / float64(nodes-1)
	for i := range nodes {
		k.c[i] = slowVector(b, momentAt(begin.ut+float64(i)*k.step), f)
	}
	k.sidereal = apparentSidereal(middle, f) - siderealRate*(middle.ut-begin.ut)
	k.differences(nodes)
	return k
}

// slowCourse is what a body does on a date by the theories; its State is NoDay where
// the clock skips the date.
func slowCourse(b Body, p place.Place, d place.Date, altitude quantity.Angle, radius float64) (k track, c course, ok bool) {
	from, to := p.Day(d)
	if !from.Before(to) {
		return k, c, false
	}
	k = slowTrack(b, from, to)
	return k, course{o: observerAt(p), sin: altitude.Sin(), cos: altitude.Cos(), radius: radius}, true
}

// slope is how fast the height changes, a day.
func (c *course) slope(day float64) float64 {
	const h = 1e-4
	return math.Abs(c.height(day+h)-c.height(day-h)) / (2 * h)
}
