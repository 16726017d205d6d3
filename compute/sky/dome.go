package sky

import (
	"math"
	"time"

	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
	"noonbook/compute/space"
)

// A Dome is the sky over a place at a moment.
type Dome struct {
	Sidereal quantity.Angle // local mean sidereal time, 0 to one turn

	sinLat, cosLat           float64
	sinSidereal, cosSidereal float64
	century                  float64
	ofDate                   rotation // from J2000
}

// DomeAt returns the sky over p at t. UTC is taken for the Earth's rotation, as in
// compute/almanac; stars are so far away that parallax has no part.
func DomeAt(p place.Place, t time.Time) Dome {
	sin, cos := math.Sincos(p.Latitude.Radians())
	c := centuries(t)
	sidereal := (almanac.MeanSiderealTime(t) + p.Longitude).Bearing()
	sinSidereal, cosSidereal := math.Sincos(sidereal.Radians())
	return Dome{
		Sidereal: sidereal,
		sinLat:   sin, cosLat: cos,
		sinSidereal: sinSidereal, cosSidereal: cosSidereal,
		century: c, ofDate: precession(c),
	}
}

// Star returns where a star stands: geometric, good to 40″ (1950 to 2100).
func (d Dome) Star(s Star) almanac.Horizontal {
	return d.look(d.ofDate.turn(s.place.Plus(s.motion.Times(100 * d.century))))
}

// At returns where a direction of date stands, geometric and without parallax.
func (d Dome) At(a Direction) almanac.Horizontal { return d.look(a.vector()) }

// look turns a vector of date by the hour angle and the latitude.
func (d Dome) look(v space.Vector) almanac.Horizontal {
	sin, cos := d.sinSidereal, d.cosSidereal
	out, east := v.X*cos+v.Y*sin, v.Y*cos-v.X*sin // in the plane of the equator: to the meridian, to the east
	north := v.Z*d.cosLat - out*d.sinLat
	up := out*d.cosLat + v.Z*d.sinLat
	return almanac.Horizontal{
		Azimuth:  quantity.Atan2(east, north).Bearing(),
		Altitude: quantity.Atan2(up, math.Hypot(north, east)),
	}
}

// Equator returns where the celestial equator runs, as Equator has it.
func (d Dome) Equator() []almanac.Horizontal { return d.all(Equator()) }

// Ecliptic returns where the ecliptic runs, as Ecliptic has it.
func (d Dome) Ecliptic() []almanac.Horizontal { return d.all(greatCircle(obliquity(d.century))) }

func (d Dome) all(directions []Direction) []almanac.Horizontal {
	points := make([]almanac.Horizontal, len(directions))
	for i, a := range directions {
		points[i] = d.At(a)
	}
	return points
}

// Seen returns h as ordinary air shows it, lifted by refraction.
func Seen(h almanac.Horizontal) almanac.Horizontal {
	h.Altitude += almanac.Refraction(h.Altitude)
	return h
}
