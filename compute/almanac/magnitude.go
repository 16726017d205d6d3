package almanac

import (
	"math"

	"noonbook/compute/space"
)

// magnitude returns the visual magnitude of the body for the phase angle a in
// degrees. The planets follow Mallama & Hilton 2018, Astron. Comput. 25, 10
// (those of the Astronomical Almanac), without the turning of Mars's markings
// (0.1 mag at most).
func (b Body) magnitude(m moment, s *triangle, a float64) float64 {
	delta, r := s.sight().Norm(), s.planet.Norm()
	far := 5 * math.Log10(r*delta)
	switch b {
	case Sun:
		return -26.74 + 5*math.Log10(delta) // Allen's Astrophysical Quantities, 4th ed. 2000, section 14.1
	case Moon:
		// Krisciunas & Schaefer 1991, Publ. Astron. Soc. Pacific 103, 1033,
		// equation 9, for the mean distance 0.00257 au at 1 au from the Sun;
		// good to 0.2 mag outside thin crescents.
		return -12.73 + 0.026*a + 4e-9*a*a*a*a + 5*math.Log10(r*delta/0.00257)
	case Mercury:
		return far - 0.613 + a*(6.3280e-2+a*(-1.6336e-3+a*(3.3644e-5+a*(-3.4265e-7+a*(1.6893e-9-a*3.0334e-12)))))
	case Venus:
		if a < 163.7 {
			return far - 4.384 + a*(-1.044e-3+a*(3.687e-4+a*(-2.814e-6+a*8.938e-9)))
		}
		return far + 236.05828 + a*(-2.81914+a*8.39034e-3)
	case Mars:
		if a <= 50 {
			return far - 1.601 + a*(2.267e-2-a*1.302e-4)
		}
		return far - 0.367 + a*(-0.02573+a*0.0003445)
	case Jupiter:
		return far - 9.395 + a*(-3.7e-4+a*6.16e-4)
	case Saturn:
		tilt := math.Sin(ringTilt(m, s))
		return far - 8.914 - 1.825*tilt + 0.026*a - 0.378*tilt*math.Exp(-2.25*a)
	case Uranus:
		return far - 7.110 - 8.4e-4*uranusTilt(m, s) + a*(6.587e-3+a*1.045e-4)
	case Neptune:
		year := 2000 + 100*m.centuries
		return far - 6.89 - 0.0054*max(0, min(20.37, year-1980)) + a*(7.944e-3+a*9.617e-5)
	case Pluto:
		return far - 1.00 // Meeus, Astronomical Algorithms, 2nd ed. 1998, chapter 41
	}
	return 0
}

// ringTilt returns the mean of the latitudes, positive and in radians, of Earth
// and Sun above Saturn's rings as Mallama & Hilton take it: the root of their
// product, zero when the two look on different faces. Meeus chapter 45.
func ringTilt(m moment, s *triangle) float64 {
	t := m.centuries
	i := radians(28.075216 - 0.012998*t)
	node := radians(169.508470 + 1.394681*t)
	tilt := func(v space.Vector) float64 {
		lon, lat, _ := spherical(v)
		return math.Asin(math.Sin(i)*math.Cos(lat)*math.Sin(lon-node) - math.Cos(i)*math.Sin(lat))
	}
	return math.Sqrt(max(0, tilt(s.sight())*tilt(s.planet)))
}

// uranusTilt returns the mean of the latitudes of Earth and Sun on Uranus, both
// taken positive, in degrees. The pole is that of Archinal et al. 2018 (right
// ascension 257.311°, declination −15.175°) in ecliptic coordinates; the
// flattening that would make the latitudes planetographic is left out (0.001 mag).
func uranusTilt(m moment, s *triangle) float64 {
	pole := rectangular(radians(257.647+1.397*m.centuries), radians(7.723), 1)
	latitude := func(v space.Vector) float64 { return math.Abs(90 - v.Angle(pole).Degrees()) }
	return (latitude(s.sight()) + latitude(s.planet)) / 2
}
