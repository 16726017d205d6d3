package almanac

import (
	"fmt"
	"time"

	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// A Body is something in the sky that this package can place. A Body that is
// none of the constants has no direction: its angles come out as zero.
type Body int

// The bodies, in the order in which a class meets them.
const (
	Sun Body = iota
	Moon
	Mercury
	Venus
	Mars
	Jupiter
	Saturn
	Uranus
	Neptune
	Pluto
)

// NakedEye returns the planets that can be seen without a telescope, outward.
func NakedEye() [5]Body { return [5]Body{Mercury, Venus, Mars, Jupiter, Saturn} }

// String returns the English name, "Sun" to "Pluto".
func (b Body) String() string {
	names := [...]string{"Sun", "Moon", "Mercury", "Venus", "Mars", "Jupiter", "Saturn", "Uranus", "Neptune", "Pluto"}
	if b < 0 || int(b) >= len(names) {
		return fmt.Sprintf("Body(%d)", int(b))
	}
	return names[b]
}

// At returns the body's apparent geocentric place of date. The Sun is good to
// 0.5″, the Moon to 3″, the planets and Pluto to 10″.
func (b Body) At(t time.Time) Apparent {
	m := momentOf(t)
	f := frameOf(m)
	return apparent(b.sight(m), f)
}

// From returns where the body's centre stands from p at t.
func (b Body) From(p place.Place, t time.Time) Horizontal {
	m := momentOf(t)
	f := frameOf(m)
	o := observerAt(p)
	return o.look(b.vector(m, f), apparentSidereal(m, f)).horizontal()
}

// SunApart returns how far the body's centre stands from the Sun's as p sees them,
// without the air. The Moon, which is near, is by up to a degree elsewhere than from
// the Earth's centre, for which AspectAt has the elongation.
func (b Body) SunApart(p place.Place, t time.Time) quantity.Angle {
	m := momentOf(t)
	f := frameOf(m)
	o, sidereal := observerAt(p), apparentSidereal(m, f)
	return o.look(b.vector(m, f), sidereal).apart(o.look(Sun.vector(m, f), sidereal))
}

// Day returns the body's rises, transits and sets on the date d at p: by its
// centre for planets, by the upper limb for the Moon, with 34′ of refraction,
// and for the Sun as SunDay says.
func (b Body) Day(p place.Place, d place.Date) Day {
	altitude, radius := b.rising()
	return b.past(p, d, altitude, radius)
}

// Past returns when the body's centre passes the geometric, topocentric
// altitude on the date d at p, upwards (Rises) and downwards (Sets): for the Sun
// with CivilTwilight, the first light of civil twilight and its last. State says
// whether it stays above or below that altitude all day.
func (b Body) Past(p place.Place, d place.Date, altitude quantity.Angle) Day {
	return b.past(p, d, altitude, 0)
}

// rising returns the geometric altitude at which the body rises and sets, and
// by how much, in km, the point that counts is above the centre.
func (b Body) rising() (altitude quantity.Angle, radius float64) {
	switch b {
	case Sun:
		return horizon - sunRadius - sunParallax, 0
	case Moon:
		return horizon, moonRadius
	}
	return horizon, 0
}

// nodes returns how many places a track through the body's day needs.
func (b Body) nodes() int {
	if b == Moon {
		return 4
	}
	return 3
}
