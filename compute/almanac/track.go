package almanac

import (
	"math"
	"time"

	"noonbook/compute/space"
)

// A track is a body's geocentric path through a day or so: its rectangular
// coordinates interpolated through a few computed places, so that an altitude
// costs a handful of multiplications instead of a whole theory. The error over
// 25 hours is below 0.1″ for the Sun (three places; most of it nutation), 2″ for
// Mercury at its fastest and 0.3″ for the Moon (four places).
type track struct {
	span     float64 // length in days
	step     float64 // days between the computed places
	c        [4]space.Vector
	sidereal float64 // Greenwich apparent sidereal time at the first moment
}

// trackOf follows b from one instant to another.
func trackOf(b Body, from, to time.Time) track {
	return trackThrough(b.nodes(), from, to, frameOf, b.vector)
}

// trackBySeries follows the Sun or the Moon by the theories themselves, for moments
// that are remembered.
func trackBySeries(b Body, from, to time.Time) track {
	theory := func(m moment) space.Vector { return rectangular(moonPlace(m)) }
	if b == Sun {
		theory = func(m moment) space.Vector { return rectangular(sunLongitude(m)) }
	}
	return trackThrough(b.nodes(), from, to, frameBySeries, func(m moment, f frame) space.Vector {
		return equatorial(theory(m), f)
	})
}

// trackThrough computes as many places as are wanted of what moves.
func trackThrough(nodes int, from, to time.Time, orient func(moment) frame, vector func(moment, frame) space.Vector) track {
	begin, end := momentOf(from), momentOf(to)
	k := track{span: end.ut - begin.ut}
	// Of nutation one value is enough: its fastest part moves 0.05″ in half a day.
	middle := momentAt((begin.ut + end.ut) / 2)
	f := orient(middle)
	k.step = k.span / float64(nodes-1)
	for i := range nodes {
		k.c[i] = vector(momentAt(begin.ut+float64(i)*k.step), f)
	}
	k.sidereal = apparentSidereal(middle, f) - siderealRate*(middle.ut-begin.ut)
	k.differences(nodes)
	return k
}

// differences turns the places into Newton's forward differences.
func (k *track) differences(nodes int) {
	for order := 1; order < nodes; order++ {
		for i := nodes - 1; i >= order; i-- {
			k.c[i] = k.c[i].Minus(k.c[i-1])
		}
	}
	for i := nodes; i < len(k.c); i++ {
		k.c[i] = space.Vector{}
	}
}

// place returns the geocentric vector, day days after the first moment.
func (k *track) place(day float64) space.Vector {
	if k.step == 0 {
		return k.c[0]
	}
	s := day / k.step
	s2 := s * (s - 1) / 2
	s3 := s2 * (s - 2) / 3
	c := &k.c
	return space.Vector{
		X: c[0].X + s*c[1].X + s2*c[2].X + s3*c[3].X,
		Y: c[0].Y + s*c[1].Y + s2*c[2].Y + s3*c[3].Y,
		Z: c[0].Z + s*c[1].Z + s2*c[2].Z + s3*c[3].Z,
	}
}

// seen returns the topocentric vector, day days after the first moment.
func (k *track) seen(o *observer, day float64) topocentric {
	return o.look(k.place(day), k.sidereal+siderealRate*day)
}

// hourAngle returns the geocentric hour angle on the meridian of lon, −π to π.
func (k *track) hourAngle(lon, day float64) float64 {
	v := k.place(day)
	return signed(k.sidereal + siderealRate*day + lon - math.Atan2(v.Y, v.X))
}
