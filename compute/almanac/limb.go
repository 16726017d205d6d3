package almanac

import (
	"math"
	"time"

	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// A Limb is how the lit part of a disc, the Moon's above all, is turned for an
// observer: a picture drawn from it is right in either hemisphere and near the
// equator, where the Moon lies on its back.
type Limb struct {
	Lit           float64        // fraction of the disc that is lit, 0 to 1
	Waxing        bool           // east of the Sun: the lit part grows (of the Moon)
	PositionAngle quantity.Angle // of the bright limb's middle, from celestial north through east
	Lean          quantity.Angle // of the same as seen, from straight up clockwise: 90° is right
	Side          Side           // Lean in words
}

// A Side is where the lit part of a disc lies for somebody who faces it.
type Side int

// The sides, clockwise from the top.
const (
	NoSide Side = iota // less than 1 % is lit
	Top
	UpperRight
	Right
	LowerRight
	Bottom
	LowerLeft
	Left
	UpperLeft
	AllSides // more than 99 % is lit
)

// String returns "right", "upper left" and so on, "none" and "all".
func (s Side) String() string {
	return [...]string{
		"none", "top", "upper right", "right", "lower right",
		"bottom", "lower left", "left", "upper left", "all",
	}[max(0, min(9, s))]
}

// LimbFrom returns how the body's lit part is turned as seen from p at t, by
// the great circle from the body to the Sun (Meeus, Astronomical Algorithms,
// 2nd ed. 1998, chapter 48, here by vectors and with parallax); good to 0.1°
// but for discs nearly full or nearly dark, whose limb has no middle.
// A body straight overhead is faced looking north.
func (b Body) LimbFrom(p place.Place, t time.Time) Limb {
	m := momentOf(t)
	f := frameOf(m)
	o, sidereal := observerAt(p), apparentSidereal(m, f)
	body := o.look(b.vector(m, f), sidereal)
	sun := o.look(Sun.vector(m, f), sidereal)

	aspect := b.AspectAt(t)
	limb := Limb{Lit: aspect.Lit, Waxing: aspect.East}
	limb.Lean = body.direction(sun, topocentric{up: 1}).Bearing()
	// Position angles run the other way round, from the pole, not the zenith.
	pole := topocentric{north: o.cosLat, up: o.sinLat}
	limb.PositionAngle = (-body.direction(sun, pole)).Bearing()
	limb.Side = sideOf(limb.Lit, limb.Lean)
	return limb
}

func sideOf(lit float64, lean quantity.Angle) Side {
	switch {
	case lit < 0.01:
		return NoSide
	case lit > 0.99:
		return AllSides
	}
	return Top + Side(math.Floor(lean.Degrees()/45+0.5))%8
}

// direction returns the angle at v from the direction of one point to that of
// another, clockwise for somebody who faces v.
func (v topocentric) direction(to, from topocentric) quantity.Angle {
	// Of both points only what is across the line of sight counts. Clockwise is
	// from × to along the line of sight, in axes north, east, up (left-handed).
	r := math.Sqrt(v.dot(v))
	if r == 0 {
		return 0
	}
	u := topocentric{v.north / r, v.east / r, v.up / r}
	cross := topocentric{
		north: from.east*to.up - from.up*to.east,
		east:  from.up*to.north - from.north*to.up,
		up:    from.north*to.east - from.east*to.north,
	}
	across := from.dot(to) - from.dot(u)*to.dot(u)
	return quantity.Atan2(-cross.dot(u), across)
}

func (v topocentric) dot(w topocentric) float64 { return v.north*w.north + v.east*w.east + v.up*w.up }
