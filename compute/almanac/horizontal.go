package almanac

import (
	"math"
	"time"

	"noonbook/compute/place"
	"noonbook/compute/quantity"
	"noonbook/compute/space"
)

// A Horizontal is where a body stands for an observer: topocentric, with
// parallax, and geometric, as if there were no air (see Refraction).
type Horizontal struct {
	Azimuth  quantity.Angle // from true north through east, 0 to one turn
	Altitude quantity.Angle // above the horizon of the ellipsoid
}

// SunFrom returns where the Sun's centre stands from p at t, good to 0.0002°
// but for UTC − UT1, up to 0.9 s, in which the sky turns by 0.004°. At the poles, where every direction is south
// or north, azimuths keep to the meridian of p's longitude: at the North Pole a
// body over that meridian has azimuth 180°, at the South Pole 0°.
func SunFrom(p place.Place, t time.Time) Horizontal { return Sun.From(p, t) }

// An observer is a place as the equations want it.
type observer struct {
	lon            float64 // east positive
	sinLat, cosLat float64 // geodetic
	axis, north    float64 // km from the Earth's axis and north of the equator
}

// observerAt uses the WGS 84 ellipsoid: a = 6378.137 km, f = 1/298.257223563.
func observerAt(p place.Place) observer {
	const a, flattening = 6378.137, 1 / 298.257223563
	const e2 = flattening * (2 - flattening)
	sin, cos := math.Sincos(float64(p.Latitude))
	n := a / math.Sqrt(1-e2*sin*sin)
	h := p.Elevation.Kilometres()
	return observer{float64(p.Longitude), sin, cos, (n + h) * cos, (n*(1-e2) + h) * sin}
}

// A topocentric vector is where a body stands from an observer, in kilometres.
type topocentric struct{ north, east, up float64 }

// look turns a geocentric vector into a topocentric one, sidereal being
// Greenwich apparent sidereal time in radians.
func (o *observer) look(v space.Vector, sidereal float64) topocentric {
	sin, cos := math.Sincos(sidereal + o.lon)
	x := v.X*cos + v.Y*sin - o.axis // outward in the plane of the meridian
	z := v.Z - o.north
	return topocentric{
		north: z*o.cosLat - x*o.sinLat,
		east:  v.Y*cos - v.X*sin,
		up:    x*o.cosLat + z*o.sinLat,
	}
}

func (v topocentric) altitude() float64 { return math.Atan2(v.up, math.Hypot(v.north, v.east)) }

func (v topocentric) apart(w topocentric) quantity.Angle {
	return space.Vector{X: v.north, Y: v.east, Z: v.up}.Angle(space.Vector{X: w.north, Y: w.east, Z: w.up})
}

func (v topocentric) horizontal() Horizontal {
	return Horizontal{
		Azimuth:  quantity.Angle(turn(math.Atan2(v.east, v.north))),
		Altitude: quantity.Angle(v.altitude()),
	}
}
