package almanac

import (
	"math"
	"slices"
	"time"

	"noonbook/compute/quantity"
	"noonbook/compute/search"
	"noonbook/compute/space"
)

// An EclipseKind says how deep an eclipse is.
type EclipseKind int

// The kinds, from shallow to deep.
const (
	NoEclipse EclipseKind = iota
	Penumbral             // of the Moon: it only dims
	Partial
	Annular // of the Sun: a ring stays
	Hybrid  // of the Sun: annular in some places, total in others
	Total
)

// String returns "none", "penumbral", "partial", "annular", "hybrid" or "total".
func (k EclipseKind) String() string {
	return [...]string{"none", "penumbral", "partial", "annular", "hybrid", "total"}[max(0, min(5, k))]
}

// A SolarEclipse is an eclipse of the Sun for the Earth as a whole. Never is
// the Sun safe to look at while any of it shows: see the handbook's cautions.
type SolarEclipse struct {
	Kind     EclipseKind
	Greatest time.Time // when the shadow's axis passes nearest to the Earth's centre, UTC
	Gamma    float64   // its distance then, in equatorial radii, positive north
	// Magnitude is the fraction of the Sun's diameter that is covered at Latitude
	// and Longitude at that moment; for a central eclipse, and one whose umbra
	// grazes the Earth, the ratio of the two diameters.
	Magnitude float64
	Central   bool           // the axis meets the Earth
	Latitude  quantity.Angle // geodetic, where the eclipse is then deepest
	Longitude quantity.Angle // east positive
}

// SolarEclipses returns the eclipses of the Sun whose greatest moment falls in
// the year, UTC, two to five of them. Moments are good to 10 s, ΔT apart, gamma
// to 0.0003. A partial eclipse of magnitude below 0.003 may be missed. The
// error is a *RangeError.
func SolarEclipses(year int) ([]SolarEclipse, error) {
	if err := coversYear(year); err != nil {
		return nil, err
	}
	return slices.Clone(solarYears.of(year, solarYearOf).list), nil
}

func solarEclipses(year int) (list []SolarEclipse) {
	syzygies(year, NewMoon, func(t time.Time) {
		s := shadowOf(t)
		if e := s.solar(); e.Kind != NoEclipse && e.Greatest.Year() == year {
			list = append(list, e)
		}
	})
	return list
}

// A cone is the Moon's shadow at a moment: Explanatory Supplement to the
// Astronomical Almanac, 3rd ed. 2013, section 11.3 (Bessel's method). Lengths
// are km, equatorial axes of date.
type cone struct {
	moon, axis   space.Vector // the Moon; unit vector from the Moon to the Sun
	foot         space.Vector // where the axis passes nearest to the Earth's centre
	tan1, tan2   float64      // of the half angles of penumbra and umbra
	outer, inner float64      // their radii in the plane of foot; inner is negative before the umbra's tip
}

func (s *shadow) cone(day float64) cone {
	sun, moon := s.sun.place(day), s.moon.place(day)
	way := sun.Minus(moon)
	c := cone{moon: moon, axis: way.Unit()}
	z := moon.Dot(c.axis)
	c.foot = moon.Along(-z, c.axis)
	sin1, sin2 := (sunLimb+moonPenumbra)/way.Norm(), (sunLimb-moonUmbra)/way.Norm()
	c.tan1, c.tan2 = sin1/math.Sqrt(1-sin1*sin1), sin2/math.Sqrt(1-sin2*sin2)
	c.outer = z*c.tan1 + moonPenumbra*c.tan1/sin1
	c.inner = z*c.tan2 - moonUmbra*c.tan2/sin2
	return c
}

// squashed is the distance of the axis from the Earth's centre after the
// ellipsoid has been drawn out to a sphere, with the vector that makes it.
func (c *cone) squashed() (distance float64, foot, axis space.Vector) {
	axis = space.Vector{X: c.axis.X, Y: c.axis.Y, Z: c.axis.Z * polarScale}.Unit()
	foot = space.Vector{X: c.foot.X, Y: c.foot.Y, Z: c.foot.Z * polarScale}
	foot = foot.Along(-foot.Dot(axis), axis)
	return foot.Norm(), foot, axis
}

// deepest returns the point of the Earth where the eclipse is deepest.
func (c *cone) deepest() space.Vector {
	d, foot, axis := c.squashed()
	if d < earthRadius {
		foot = foot.Along(math.Sqrt(earthRadius*earthRadius-d*d), axis)
	} else {
		foot = space.Vector{X: foot.X * earthRadius / d, Y: foot.Y * earthRadius / d, Z: foot.Z * earthRadius / d}
	}
	foot.Z /= polarScale
	return foot
}

// solar describes the eclipse round the middle of the shadow's tracks.
func (s *shadow) solar() SolarEclipse {
	day := search.Lowest(func(x float64) float64 { c := s.cone(x); return c.foot.Dot(c.foot) }, 0, s.span(), tenthSecond)
	c := s.cone(day)
	e := SolarEclipse{Greatest: s.at(day), Gamma: math.Copysign(c.foot.Norm()/earthRadius, c.foot.Z)}

	d, _, _ := c.squashed()
	point := c.deepest()
	height := point.Dot(c.axis)
	outer, inner := c.outer-height*c.tan1, c.inner-height*c.tan2
	switch {
	case d < earthRadius:
		e.Central = true
		e.Kind = Annular
		if inner < 0 {
			e.Kind = s.totalOrHybrid(day)
		}
		e.Magnitude = (outer - inner) / (outer + inner)
	case d < earthRadius+math.Abs(inner):
		e.Kind = Annular
		if inner < 0 {
			e.Kind = Total
		}
		e.Magnitude = (outer - inner) / (outer + inner)
	case d < earthRadius+outer:
		e.Kind = Partial
		e.Magnitude = (outer - (d - earthRadius)) / (outer + inner)
	}
	e.Latitude, e.Longitude = geodetic(point, s.sun.sidereal+siderealRate*day)
	return e
}

// totalOrHybrid tells an eclipse that is total at its greatest from one that is
// annular where its path begins or ends on the Earth's edge.
func (s *shadow) totalOrHybrid(day float64) EclipseKind {
	miss := func(x float64) float64 {
		c := s.cone(x)
		d, _, _ := c.squashed()
		return d - earthRadius
	}
	for _, edge := range [...]float64{0, s.span()} {
		c := s.cone(search.Root(miss, day, edge, microsecond))
		if c.inner-c.deepest().Dot(c.axis)*c.tan2 > 0 {
			return Hybrid
		}
	}
	return Total
}

// geodetic turns a point of the ellipsoid into latitude and east longitude.
func geodetic(v space.Vector, sidereal float64) (lat, lon quantity.Angle) {
	lat = quantity.Atan2(v.Z*polarScale*polarScale, math.Hypot(v.X, v.Y))
	lon = quantity.Angle(signed(math.Atan2(v.Y, v.X) - sidereal))
	return lat, lon
}
