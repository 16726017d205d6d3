package almanac

import (
	"time"

	"noonbook/compute/quantity"
	"noonbook/compute/space"
)

// A Heliocentric is a place as seen from the Sun, geometric (without light
// time), of the mean ecliptic and equinox of date.
type Heliocentric struct {
	Longitude quantity.Angle // 0 to one turn
	Latitude  quantity.Angle // north positive
	Distance  quantity.Length
}

// HeliocentricAt returns where a planet or Pluto is on its way round the Sun,
// good to 10″. Of the Sun, the Moon and anything else it returns zeros.
func (b Body) HeliocentricAt(t time.Time) Heliocentric {
	lon, lat, r := spherical(b.heliocentric(momentOf(t).centuries))
	return Heliocentric{
		Longitude: quantity.Angle(turn(lon)),
		Latitude:  quantity.Angle(lat),
		Distance:  quantity.AstronomicalUnit * quantity.Length(r),
	}
}

// lightTime is the time that light takes over one astronomical unit,
// 499.004784 s (149 597 870.7 km / 299 792.458 km/s), in Julian centuries.
const lightTime = 499.004784 / 86400 / 36525

// A triangle has Sun, Earth and a planet for corners, as light shows it: the
// planet and the Earth at the moment the light left the planet. Vectors are of
// the mean ecliptic and equinox of date, au.
type triangle struct {
	earth, planet space.Vector // heliocentric
	sun           space.Vector // apparent, from the Earth at the moment of seeing
}

// sight returns the planet as seen from the Earth.
func (s *triangle) sight() space.Vector { return s.planet.Minus(s.earth) }

// triangleOf places both corners at the light's departure: light time moves the
// planet, and taking the Earth at the same earlier moment is its annual
// aberration to the first order (Meeus, Astronomical Algorithms, 2nd ed. 1998,
// chapter 33, the second method); what is left out is below 0.1″.
func (b Body) triangleOf(m moment) triangle {
	s := triangle{earth: earthSky.at(m.centuries), planet: b.heliocentric(m.centuries)}
	s.sun = sunFrom(s.earth)
	lag := s.sight().Norm() * lightTime
	s.earth = earthSky.at(m.centuries - lag)
	s.planet = b.heliocentric(m.centuries - lag)
	return s
}
