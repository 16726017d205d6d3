package almanac

import (
	"time"

	"noonbook/compute/quantity"
)

// An Aspect is how a body shows itself to the Earth's centre.
type Aspect struct {
	Elongation  quantity.Angle  // from the Sun's centre, 0 to half a turn
	East        bool            // east of the Sun: up after sunset; west of it: up before sunrise
	PhaseAngle  quantity.Angle  // at the body between Sun and Earth, 0 to half a turn
	Lit         float64         // fraction of the disc that is lit, 0 to 1
	Magnitude   float64         // visual, smaller is brighter
	Diameter    quantity.Angle  // of the disc, across the equator
	Distance    quantity.Length // from the Earth's centre, when the light left
	SunDistance quantity.Length // from the Sun's centre
}

// AspectAt returns the body's aspect at t. The elongation is good to 0.01°, the
// phase angle to 0.02°, the lit fraction to 0.0005, magnitudes as doc.go says, by
// the formulae named at each (magnitude.go). The Sun's own elongation is zero, its disc lit.
// Lit fraction: Meeus, Astronomical Algorithms, 2nd ed. 1998, equation 41.1.
func (b Body) AspectAt(t time.Time) Aspect {
	m := momentOf(t)
	s := b.triangleFor(m)
	sight := s.sight()

	delta, r := sight.Norm(), s.planet.Norm()
	a := Aspect{
		Distance:    quantity.AstronomicalUnit * quantity.Length(delta),
		SunDistance: quantity.AstronomicalUnit * quantity.Length(r),
		Diameter:    b.diameter(delta),
		Lit:         1,
	}
	if b != Sun {
		a.Elongation = sight.Angle(s.sun)
		a.East = s.sun.X*sight.Y-s.sun.Y*sight.X > 0
		a.PhaseAngle = sight.Angle(s.planet)
		a.Lit = (1 + a.PhaseAngle.Cos()) / 2
	}
	a.Magnitude = b.magnitude(m, &s, a.PhaseAngle.Degrees())
	return a
}

// triangleFor extends triangleOf to the Moon and the Sun, which need no
// planet's theory.
func (b Body) triangleFor(m moment) triangle {
	switch b {
	case Sun:
		earth := earthSky.at(m.centuries)
		return triangle{earth: earth, sun: sunFrom(earth)}
	case Moon:
		earth := earthSky.at(m.centuries)
		return triangle{earth: earth, planet: earth.Plus(moonSky.at(m.centuries)), sun: sunFrom(earth)}
	}
	return b.triangleOf(m)
}

// radius returns the body's equatorial radius in km: the Sun's nominal one, IAU
// 2015 Resolution B3; the others Archinal et al. 2018, Celest. Mech. Dyn.
// Astron. 130, 22, tables 4 and 5.
func (b Body) radius() float64 {
	radii := [...]float64{695700, moonRadius, 2440.53, 6051.8, 3396.19, 71492, 60268, 25559, 24764, 1188.3}
	if b < 0 || int(b) >= len(radii) {
		return 0
	}
	return radii[b]
}

func (b Body) diameter(au float64) quantity.Angle {
	if au == 0 {
		return 0
	}
	return 2 * quantity.Asin(b.radius()/(au*kilometresPerAU))
}

// Semidiameter returns half the apparent diameter of the body's disc at the
// given distance from its centre.
func (b Body) Semidiameter(distance quantity.Length) quantity.Angle {
	return b.diameter(float64(distance/quantity.AstronomicalUnit)) / 2
}
