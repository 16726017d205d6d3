package world

import (
	"math"
	"time"

	"noonbook/compute/almanac"
	"noonbook/compute/quantity"
	"noonbook/compute/space"
)

// An ellipse is Kepler's way round the Sun at an epoch, ecliptic J2000.
type ellipse struct {
	epoch                             float64 // days of TT since J2000
	axis, eccentricity                float64 // au
	inclination, node, argument, mean float64 // degrees
}

// comet67P is the way of 67P/Churyumov–Gerasimenko around its perihelion of 2
// November 2021: JPL Small-Body Database, from memory, held in the tests against
// its published passages. Jupiter moves it: see known.
var comet67P = ellipse{7975.55, 3.4559, 0.64970, 3.871, 36.33, 22.14, 0}

// The span in which comet67P is trusted, days of TT since J2000: 2019 to 2030. In
// November 2018 and again after the next perihelion in 2028 the pull of Jupiter
// counts.
const cometFrom, cometTo = 6940, 11323

// A Sight is how far a world is.
type Sight struct {
	Distance    quantity.Length // from the Earth's centre
	SunDistance quantity.Length // from the Sun's centre
}

// At returns how far the world is at t. Planets, Pluto and the Moon are those of
// compute/almanac; Ceres is good to 0.01 au and 0.3° from 1950 to 2100, the comet to
// 0.05 au from 2019 to 2030. ok is false for the comet outside these years and for
// the Earth, which has no distance from itself; its SunDistance is there.
func (w World) At(t time.Time) (s Sight, ok bool) {
	switch w.Name {
	case "earth":
		return Sight{SunDistance: almanac.Sun.At(t).Distance}, false
	case "ceres", "comet":
		days := daysOf(t)
		if w.Name == "comet" && (days < cometFrom || days > cometTo) {
			return Sight{}, false
		}
		r := w.heliocentric(days)
		return Sight{Distance: length(r.Minus(earthAt(t))), SunDistance: length(r)}, true
	}
	a := bodyOf(w.Name).AspectAt(t)
	return Sight{a.Distance, a.SunDistance}, true
}

// Heliocentric returns the longitude (mean equinox of date), latitude and
// distance of a world as seen from the Sun, without light time. ok is false for
// the Moon, for the comet and beyond the years for which a place is known.
func (w World) Heliocentric(t time.Time) (h almanac.Heliocentric, ok bool) {
	if w.Kind == Comet || w.Kind == Moon || almanac.Covers(t) != nil {
		return h, false
	}
	switch w.Name {
	case "earth":
		sun := almanac.Sun.At(t)
		return almanac.Heliocentric{Longitude: (sun.Longitude + quantity.Turn/2).Bearing(), Latitude: -sun.Latitude, Distance: sun.Distance}, true
	case "ceres":
		r := w.heliocentric(daysOf(t))
		lon, lat, _ := r.Spherical()
		return almanac.Heliocentric{
			Longitude: (lon + precession(daysOf(t))).Bearing(),
			Latitude:  lat,
			Distance:  length(r),
		}, true
	}
	return bodyOf(w.Name).HeliocentricAt(t), true
}

// bodyOf returns the almanac's body for a world that it follows.
func bodyOf(name string) almanac.Body {
	switch name {
	case "mercury":
		return almanac.Mercury
	case "venus":
		return almanac.Venus
	case "moon":
		return almanac.Moon
	case "mars":
		return almanac.Mars
	case "jupiter":
		return almanac.Jupiter
	case "saturn":
		return almanac.Saturn
	case "uranus":
		return almanac.Uranus
	case "neptune":
		return almanac.Neptune
	case "pluto":
		return almanac.Pluto
	}
	return almanac.Sun
}

// heliocentric returns the place of Ceres or the comet, au, ecliptic J2000. That
// of Ceres is weighed between the two nearest ways, by how near each is.
func (w World) heliocentric(days float64) space.Vector {
	if w.Kind == Comet {
		return comet67P.at(days)
	}
	i := 0
	for i < len(ceresOrbits)-2 && ceresOrbits[i+1].epoch <= days {
		i++
	}
	a, b := ceresOrbits[i], ceresOrbits[i+1]
	part := max(0, min(1, (days-a.epoch)/(b.epoch-a.epoch)))
	r, s := a.at(days), b.at(days)
	return r.Along(part, s.Minus(r))
}

// gauss is Gauss's constant: mean motion in radians a day at 1 au, IAU 1976.
const gauss = 0.01720209895

// at follows the ellipse: Meeus, Astronomical Algorithms, 2nd ed. 1998, chapters
// 30 and 33, with Kepler's equation solved by Newton's steps.
func (e ellipse) at(days float64) space.Vector {
	mean := math.Mod(radians(e.mean)+gauss/math.Pow(e.axis, 1.5)*(days-e.epoch), 2*math.Pi)
	x := mean + e.eccentricity*math.Sin(mean)
	for range 50 {
		step := (x - e.eccentricity*math.Sin(x) - mean) / (1 - e.eccentricity*math.Cos(x))
		x -= step
		if math.Abs(step) < 1e-12 {
			break
		}
	}
	r := e.axis * (1 - e.eccentricity*math.Cos(x))
	u := math.Atan2(math.Sqrt(1-e.eccentricity*e.eccentricity)*math.Sin(x), math.Cos(x)-e.eccentricity) + radians(e.argument)
	sinU, cosU := math.Sincos(u)
	sinN, cosN := math.Sincos(radians(e.node))
	sinI, cosI := math.Sincos(radians(e.inclination))
	return space.Vector{X: r * (cosN*cosU - sinN*sinU*cosI), Y: r * (sinN*cosU + cosN*sinU*cosI), Z: r * sinU * sinI}
}

// earthAt returns the Earth's place, au, in the ecliptic of date turned back to
// the equinox of J2000; the ecliptic itself tilts by 47″ a century, 0.0003 au.
func earthAt(t time.Time) space.Vector {
	sun := almanac.Sun.At(t)
	lon := sun.Longitude + quantity.Turn/2 - precession(daysOf(t))
	return space.At(lon, 0, float64(sun.Distance/quantity.AstronomicalUnit))
}

// precession is how far the equinox has moved since J2000, 50.29″ a year: Meeus,
// chapter 21.
func precession(days float64) quantity.Angle { return quantity.ArcSeconds(50.29 * days / 365.25) }

// daysOf returns days of TT since J2000.
func daysOf(t time.Time) float64 {
	j2000 := time.Date(2000, 1, 1, 12, 0, 0, 0, time.UTC)
	return (t.Sub(j2000) + almanac.DeltaT(t)).Hours() / 24
}

func length(au space.Vector) quantity.Length {
	return quantity.Length(au.Norm()) * quantity.AstronomicalUnit
}

func radians(degrees float64) float64 { return degrees * math.Pi / 180 }
