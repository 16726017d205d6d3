package strip

import (
	"math"
	"time"

	"noonbook/compute/almanac"
	"noonbook/compute/quantity"
	"noonbook/compute/space"
)

// A Standing is where a body is at one moment, seen from the Sun, and how it
// looks from the Earth. Directions are of the ecliptic and equinox of date; at
// one moment means without the light's delay.
type Standing struct {
	Body
	Longitude  quantity.Angle  // from the Sun, 0 to one turn
	Distance   quantity.Length // from the Sun, not its mean but today's
	Elongation quantity.Angle  // from the Earth: between Sun and body, 0 to half a turn
	Sky        Sky
}

// A Sky says where a body stands for people on the Earth.
type Sky int

const (
	Ours    Sky = iota // the Earth itself
	Behind             // beyond the Sun, lost in its light
	Before             // between us and the Sun, lost in its light
	Evening            // east of the Sun: up after sunset
	Morning            // west of the Sun: up before sunrise
	Night              // opposite the Sun: up nearly all night
)

// Glare is the angle from the Sun within which a planet is called lost in its
// light, Opposite the one beyond which it is called up all night: common
// practice, no source; how bright the planet is and how the ecliptic leans at
// the place decide it in truth.
const (
	Glare    = 15 * math.Pi / 180
	Opposite = 150 * math.Pi / 180
)

// StandingsAt returns the planets and Pluto outward. Ceres is left out. Known is
// false where almanac.Covers says that the moment is out of range: there the
// almanac has been held against nothing and its series for Pluto soon goes wild.
//
// Within the range longitudes hold to 0.01° (the Earth's is that of the Sun as
// seen, with 20″ of aberration in it) and distances to 0.02 %.
func StandingsAt(t time.Time) (standings []Standing, known bool) {
	sun := almanac.Sun.At(t)
	ours := space.At(sun.Longitude+quantity.Turn/2, -sun.Latitude, sun.Distance.Metres())
	for _, b := range Bodies() {
		s := Standing{Body: b}
		at := ours
		switch body, ok := inAlmanac(b.Name); {
		case b.Name == "earth":
		case ok:
			h := body.HeliocentricAt(t)
			at = space.At(h.Longitude, h.Latitude, h.Distance.Metres())
		default:
			continue
		}
		lon, _, r := at.Spherical()
		s.Longitude, s.Distance = lon.Bearing(), quantity.Metres(r)
		if b.Name != "earth" {
			s.Elongation, s.Sky = seen(ours, at)
		}
		standings = append(standings, s)
	}
	return standings, almanac.Covers(t) == nil
}

func inAlmanac(name string) (almanac.Body, bool) {
	bodies := map[string]almanac.Body{
		"mercury": almanac.Mercury, "venus": almanac.Venus, "mars": almanac.Mars, "jupiter": almanac.Jupiter,
		"saturn": almanac.Saturn, "uranus": almanac.Uranus, "neptune": almanac.Neptune, "pluto": almanac.Pluto,
	}
	b, ok := bodies[name]
	return b, ok
}

// seen says how a body at one place looks from another, both from the Sun.
func seen(from, at space.Vector) (quantity.Angle, Sky) {
	sun, sight := from.Times(-1), at.Minus(from)
	elongation := quantity.Acos(sun.Dot(sight) / sun.Norm() / sight.Norm())
	switch {
	case elongation < Glare && sight.Norm() > sun.Norm():
		return elongation, Behind
	case elongation < Glare:
		return elongation, Before
	case elongation > Opposite:
		return elongation, Night
	case sun.Cross(sight).Z > 0: // anticlockwise of the Sun is east of it
		return elongation, Evening
	}
	return elongation, Morning
}
