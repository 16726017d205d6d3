package almanac

import (
	"time"

	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// A Body is something in the sky that this package can place.
type Body int

const (
	Sun Body = iota
)

// From returns where the body's centre stands from p at t.
func (b Body) From(p place.Place, t time.Time) Horizontal {
	m := momentOf(t)
	f := frameOf(m)
	o := observerAt(p)
	return o.look(b.vector(m, f), apparentSidereal(m, f)).horizontal()
}

// vector returns the body's apparent geocentric place.
func (b Body) vector(m moment, f frame) vector {
	lon, lat, r := sunLongitude(m)
	return equatorial(lon+f.dpsi, lat, r, f)
}

// rising returns the geometric altitude at which the body rises and sets, and
// by how much, in km, the point that counts is above the centre.
func (b Body) rising() (altitude quantity.Angle, radius float64) {
	return horizon - 16*quantity.Turn/360/60, 0
}

// nodes returns how many places a track through the body's day needs.
func (b Body) nodes() int { return 3 }
