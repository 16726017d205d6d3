package almanac

import (
	"math"
	"time"

	"noonbook/compute/space"
)

// SunAt returns the Sun's apparent geocentric place of date, good to 0.5″.
// The distance is that between the centres of Earth and Sun.
func SunAt(t time.Time) Apparent { return Sun.At(t) }

// sunLongitude returns the Sun's geocentric ecliptic longitude and latitude of
// the mean equinox of date with aberration, in radians, and its distance in au.
func sunLongitude(m moment) (lon, lat, r float64) {
	return sunFromEarth(earthSeries.at(m.centuries))
}

// aberration is by how many seconds of arc, at 1 au, the Earth's motion holds the Sun
// back: Meeus, Astronomical Algorithms, 2nd ed. 1998, chapter 25, higher accuracy,
// equation 25.10.
const aberration = 20.4898

// sunFromEarth turns the Earth's heliocentric place round and adds aberration.
func sunFromEarth(lon, lat, r float64) (float64, float64, float64) {
	return lon + math.Pi - arcsec(aberration)/r, -lat, r
}

// sunFrom does the same to a vector.
func sunFrom(earth space.Vector) space.Vector {
	return turned(earth.Times(-1), -arcsec(aberration)/earth.Norm())
}

// EquationOfTime returns apparent minus mean solar time at t: what a sundial
// is ahead of a clock that keeps local mean time, +16 min in early November
// and −14 min in mid February. Mean solar time is UT, so it is the apparent
// Sun's Greenwich hour angle less UT and twelve hours; good to 0.05 s.
func EquationOfTime(t time.Time) time.Duration {
	m := momentOf(t)
	f := frameOf(m)
	v := Sun.vector(m, f)
	_, day := math.Modf(m.ut)
	// ut counts from noon, when the mean Sun stands on the Greenwich meridian.
	ahead := apparentSidereal(m, f) - math.Atan2(v.Y, v.X) - 2*math.Pi*day
	return time.Duration(signed(ahead) / (2 * math.Pi) * float64(24*time.Hour))
}
