package almanac

import (
	"math"
	"slices"
	"time"

	"noonbook/compute/search"
)

// A LunarEclipse is an eclipse of the Moon, the same for everybody who has the
// Moon above the horizon. Moments that do not occur are zero times.
type LunarEclipse struct {
	Kind               EclipseKind
	Greatest           time.Time // when the Moon's centre is nearest to the shadow's axis, UTC
	Magnitude          float64   // fraction of the Moon's diameter in the umbra; negative where it misses
	PenumbralMagnitude float64   // the same for the penumbra
	Gamma              float64   // distance from the axis in equatorial radii of the Earth, positive north
	PenumbraBegins     time.Time
	PartialBegins      time.Time
	TotalBegins        time.Time
	TotalEnds          time.Time
	PartialEnds        time.Time
	PenumbraEnds       time.Time
}

// LunarEclipses returns the eclipses of the Moon whose greatest moment falls in
// the year, UTC, penumbral ones included. The shadow is enlarged by Danjon's
// rule, 1 % of the Moon's parallax, as in Espenak & Meeus, Five Millennium
// Canon of Lunar Eclipses, NASA/TP-2009-214172, section 1.4 (the older rule of
// Chauvenet, 2 % of the whole, gives magnitudes 0.005 greater). Greatest is
// good to 10 s, contacts with the umbra to 25 s, with the penumbra to 70 s; the
// shadow's edge is no sharper. The error is a *RangeError.
func LunarEclipses(year int) ([]LunarEclipse, error) {
	if err := coversYear(year); err != nil {
		return nil, err
	}
	return slices.Clone(*lunarYears.of(year, lunarEclipses)), nil
}

func lunarEclipses(year int) (list []LunarEclipse) {
	syzygies(year, FullMoon, func(t time.Time) {
		s := shadowOf(t)
		if e := s.lunar(); e.Kind != NoEclipse && e.Greatest.Year() == year {
			list = append(list, e)
		}
	})
	return list
}

// A disc is the Earth's shadow where the Moon crosses it, angles in radians.
type disc struct{ off, penumbra, umbra, moon float64 }

func (s *shadow) disc(day float64) disc {
	sun, moon := s.sun.place(day), s.moon.place(day)
	off := moon.Angle(sun.Times(-1))
	parallax := 1.01 * math.Asin(earthRadius/moon.Norm())
	limb, sunParallax := math.Asin(sunLimb/sun.Norm()), math.Asin(earthRadius/sun.Norm())
	return disc{
		off:      float64(off),
		penumbra: parallax + limb + sunParallax,
		umbra:    parallax - limb + sunParallax,
		moon:     math.Asin(moonPenumbra / moon.Norm()),
	}
}

func (s *shadow) lunar() LunarEclipse {
	day := search.Lowest(func(x float64) float64 { return s.disc(x).off }, 0, s.span(), tenthSecond)
	d := s.disc(day)
	e := LunarEclipse{
		Greatest:           s.at(day),
		Magnitude:          (d.umbra + d.moon - d.off) / (2 * d.moon),
		PenumbralMagnitude: (d.penumbra + d.moon - d.off) / (2 * d.moon),
	}
	moon := s.moon.place(day)
	sun := s.sun.place(day).Unit()
	foot := moon.Along(-moon.Dot(sun), sun)
	e.Gamma = math.Copysign(foot.Norm()/earthRadius, foot.Z)
	switch {
	case e.Magnitude >= 1:
		e.Kind = Total
	case e.Magnitude > 0:
		e.Kind = Partial
	case e.PenumbralMagnitude > 0:
		e.Kind = Penumbral
	}
	e.PenumbraBegins, e.PenumbraEnds = s.passage(day, func(d disc) float64 { return d.off - d.penumbra - d.moon })
	e.PartialBegins, e.PartialEnds = s.passage(day, func(d disc) float64 { return d.off - d.umbra - d.moon })
	e.TotalBegins, e.TotalEnds = s.passage(day, func(d disc) float64 { return d.off - d.umbra + d.moon })
	return e
}

// passage returns the moments before and after middle between which the given
// distance from an edge is negative, or zero times.
func (s *shadow) passage(middle float64, edge func(disc) float64) (begin, end time.Time) {
	f := func(day float64) float64 { return edge(s.disc(day)) }
	inside := f(middle)
	if before, after := f(0), f(s.span()); inside < 0 && before > 0 && after > 0 {
		begin = s.at(search.Between(f, 0, before, middle, inside, microsecond))
		end = s.at(search.Between(f, middle, inside, s.span(), after, microsecond))
	}
	return begin, end
}
