package almanac

import (
	"math"
	"time"

	"noonbook/compute/quantity"
)

// spin is the Earth's rotation in turns a day of UT1: IAU 2000 Resolution B1.8.
const spin = 1.00273781191135448

// siderealRate is the growth of mean sidereal time in radians a day: the spin and
// the precession in right ascension, 4612.156534″ a century (see below).
const siderealRate = 2 * math.Pi * (spin + 4612.156534/36525/1296000)

// MeanSiderealTime returns Greenwich mean sidereal time at t, 0 to one turn,
// with UTC taken as UT1 (an error of 13″ at most): Earth rotation angle and the
// polynomial of Capitaine, Wallace & Chapront 2003, Astron. Astrophys. 412,
// 567, equation 42 (IAU 2006).
func MeanSiderealTime(t time.Time) quantity.Angle {
	return quantity.Angle(turn(meanSidereal(momentOf(t))))
}

// SiderealTime returns Greenwich apparent sidereal time at t, 0 to one turn:
// the mean one with the equation of the equinoxes Δψ·cos ε.
func SiderealTime(t time.Time) quantity.Angle {
	m := momentOf(t)
	return quantity.Angle(turn(apparentSidereal(m, frameOf(m))))
}

func apparentSidereal(m moment, f frame) float64 { return meanSidereal(m) + f.dpsi*f.cosEps }

func meanSidereal(m moment) float64 {
	_, day := math.Modf(m.ut)
	rotation := 2 * math.Pi * (day + 0.7790572732640 + (spin-1)*m.ut)
	t := m.centuries
	return rotation + arcsec(0.014506+t*(4612.156534+t*(1.3915817-t*0.00000044)))
}
