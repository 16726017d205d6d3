package strip

import (
	"math"
	"time"

	"noonbook/compute/almanac"
	"noonbook/compute/quantity"
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
	ours := vector(sun.Longitude+quantity.Turn/2, -sun.Latitude, sun.Distance)
	for _, b := range Bodies() {
		s := Standing{Body: b}
		at := ours
		switch body, ok := inAlmanac(b.Name); {
		case b.Name == "earth":
		case ok:
			h := body.HeliocentricAt(t)
			at = vector(h.Longitude, h.Latitude, h.Distance)
		default:
			continue
		}
		s.Longitude = quantity.Atan2(at[1], at[0]).Bearing()
		s.Distance = quantity.Length(norm(at))
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
func seen(from, at [3]float64) (quantity.Angle, Sky) {
	sun := [3]float64{-from[0], -from[1], -from[2]}
	sight := [3]float64{at[0] - from[0], at[1] - from[1], at[2] - from[2]}
	dot := sun[0]*sight[0] + sun[1]*sight[1] + sun[2]*sight[2]
	elongation := quantity.Acos(dot / norm(sun) / norm(sight))
	switch {
	case elongation < Glare && norm(sight) > norm(sun):
		return elongation, Behind
	case elongation < Glare:
		return elongation, Before
	case elongation > Opposite:
		return elongation, Night
	case sun[0]*sight[1]-sun[1]*sight[0] > 0: // anticlockwise of the Sun is east of it
		return elongation, Evening
	}
	return elongation, Morning
}

func vector(lon, lat quantity.Angle, r quantity.Length) [3]float64 {
	m := r.Metres()
	return [3]float64{m * lat.Cos() * lon.Cos(), m * lat.Cos() * lon.Sin(), m * lat.Sin()}
}

func norm(v [3]float64) float64 { return math.Sqrt(v[0]*v[0] + v[1]*v[1] + v[2]*v[2]) }
