package almanac

import (
	"math"
	"time"

	"noonbook/compute/place"
	"noonbook/compute/quantity"
	"noonbook/compute/space"
)

// A Face is how the Moon turns to somebody and to the Sun. Longitudes on the Moon are
// east positive, toward its Mare Crisium, −half a turn to half a turn; latitudes north
// positive: the mean-Earth/polar-axis frame, in which maps of the Moon are drawn.
type Face struct {
	Longitude, Latitude       quantity.Angle // of the middle of the disc: the libration
	SunLongitude, SunLatitude quantity.Angle // of where the Sun stands overhead
	Axis                      quantity.Angle // position angle of the north end of the Moon's axis, from celestial north through east
	Lean                      quantity.Angle // of the same as seen, from straight up clockwise; for the Earth's centre, which has no up, 0
	Radius                    quantity.Angle // of the disc as seen
}

// MoonFace returns the face that the Moon turns to the Earth's centre, good to 0.05°.
func MoonFace(t time.Time) Face {
	m := momentOf(t)
	f := frameOf(m)
	return moonAxesOf(m, f).face(Moon.vector(m, f), Sun.vector(m, f))
}

// MoonFaceFrom returns the face that the Moon turns to somebody at p, good to 0.05°.
// Somebody on the Earth's rim sees up to 1° further round the Moon than its centre
// would. A Moon straight overhead is faced looking north.
func MoonFaceFrom(p place.Place, t time.Time) Face {
	m := momentOf(t)
	f := frameOf(m)
	o := observerAt(p)
	sin, cos := math.Sincos(apparentSidereal(m, f) + o.lon)
	here := space.Vector{X: o.axis * cos, Y: o.axis * sin, Z: o.north}
	up := space.Vector{X: o.cosLat * cos, Y: o.cosLat * sin, Z: o.sinLat}

	axes := moonAxesOf(m, f)
	moon := Moon.vector(m, f)
	face := axes.face(moon.Minus(here), Sun.vector(m, f).Minus(here))
	face.Lean = (positionAngle(moon.Minus(here), up) - face.Axis).Bearing()
	return face
}

// Colongitude returns the selenographic colongitude of the Sun, 0 to one turn: the
// longitude of the sunrise terminator at the Moon's equator, counted westward. It is
// about 0° at first quarter, 90° at full Moon, 180° at last quarter.
func (f Face) Colongitude() quantity.Angle { return (quantity.Turn/4 - f.SunLongitude).Bearing() }

// SunAltitude returns how high the Sun's centre stands at a place of the Moon.
func (f Face) SunAltitude(longitude, latitude quantity.Angle) quantity.Angle {
	sun := space.At(f.SunLongitude, f.SunLatitude, 1)
	return quantity.Asin(space.At(longitude, latitude, 1).Dot(sun))
}

// Lit returns the fraction of the disc that is lit, as Aspect.Lit.
func (f Face) Lit() float64 {
	viewer, sun := space.At(f.Longitude, f.Latitude, 1), space.At(f.SunLongitude, f.SunLatitude, 1)
	return (1 + viewer.Dot(sun)) / 2
}

// moonAxes are the axes of the Moon's frame in the true equator and equinox of date.
type moonAxes struct{ x, y, z space.Vector }

// moonAxesOf follows Cassini's laws with the physical libration. The Moon's equator
// crosses the ecliptic at the node of its orbit, where the orbit rises and the
// equator goes down, inclined by I = 1°32′32.7″; its prime meridian is turned half
// round from the mean longitude. Meeus, Astronomical Algorithms, 2nd ed. 1998,
// chapter 53, here by vectors instead of his first-order equations.
func moonAxesOf(m moment, f frame) moonAxes {
	a := lunarArguments(m.centuries)
	inclination := radians(1.54242)
	rho, sigma, tau := a.physicalLibration()
	sinI := math.Sin(inclination)

	node := a.node + sigma/sinI + f.dpsi // where the equator goes down
	spin := a.f + tau - sigma/sinI + math.Pi
	sinNode, cosNode := math.Sincos(node)
	sinTilt, cosTilt := math.Sincos(inclination + rho)
	sinSpin, cosSpin := math.Sincos(spin)

	along := space.Vector{X: cosNode, Y: sinNode}                                    // to the node
	across := space.Vector{X: -sinNode * cosTilt, Y: cosNode * cosTilt, Z: -sinTilt} // in the equator, a quarter on
	pole := space.Vector{X: -sinNode * sinTilt, Y: cosNode * sinTilt, Z: cosTilt}
	turned := func(v space.Vector) space.Vector { // from the ecliptic to the equator
		return space.Vector{X: v.X, Y: v.Y*f.cosEps - v.Z*f.sinEps, Z: v.Y*f.sinEps + v.Z*f.cosEps}
	}
	return moonAxes{
		x: turned(along.Times(cosSpin).Along(sinSpin, across)),
		y: turned(across.Times(cosSpin).Along(-sinSpin, along)),
		z: turned(pole),
	}
}

// face looks along moon, from the viewer to the Moon, with the Sun in the direction sun.
func (a moonAxes) face(moon, sun space.Vector) Face {
	f := Face{Axis: positionAngle(moon, a.z), Radius: quantity.Asin(moonRadius / moon.Norm())}
	f.Longitude, f.Latitude = a.place(moon.Times(-1))
	f.SunLongitude, f.SunLatitude = a.place(sun.Minus(moon))
	return f
}

// place returns over which place of the Moon a direction from its centre points.
func (a moonAxes) place(v space.Vector) (lon, lat quantity.Angle) {
	lon, lat, _ = space.Vector{X: v.Dot(a.x), Y: v.Dot(a.y), Z: v.Dot(a.z)}.Spherical()
	return lon, lat
}

// positionAngle returns in which direction something points for somebody who looks
// along sight, from celestial north through east.
func positionAngle(sight, way space.Vector) quantity.Angle {
	u := sight.Unit()
	east := space.Vector{Z: 1}.Cross(u)
	return quantity.Atan2(way.Dot(east), way.Dot(u.Cross(east))).Bearing()
}

// arguments are the Moon's and the Sun's mean arguments, radians: Meeus, chapter 47.
type arguments struct{ d, m, n, f, node, e, k1, k2 float64 }

func lunarArguments(t float64) arguments {
	return arguments{
		d:    radians(297.8501921 + t*(445267.1114034+t*(-0.0018819+t/545868))),
		m:    radians(357.5291092 + t*(35999.0502909-t*0.0001536)),
		n:    radians(134.9633964 + t*(477198.8675055+t*(0.0087414+t/69699))),
		f:    radians(93.2720950 + t*(483202.0175233+t*(-0.0036539-t/3526000))),
		node: radians(125.0445479 + t*(-1934.1362891+t*(0.0020754+t/467441))),
		e:    1 - t*(0.002516+t*0.0000074),
		k1:   radians(119.75 + 131.849*t),
		k2:   radians(72.56 + 20.186*t),
	}
}

// physicalLibration returns Eckhardt's ρ, σ and τ in radians, at most 0.04°: D. H.
// Eckhardt, Moon and Planets 25 (1981), 3, in the terms of Meeus, page 373.
func (a arguments) physicalLibration() (rho, sigma, tau float64) {
	d, m, n, f := a.d, a.m, a.n, a.f
	sin, cos := math.Sin, math.Cos
	rho = -0.02752*cos(n) - 0.02245*sin(f) + 0.00684*cos(n-2*f) - 0.00293*cos(2*f) -
		0.00085*cos(2*f-2*d) - 0.00054*cos(n-2*d) - 0.00020*sin(n+f) - 0.00020*cos(n+2*f) -
		0.00020*cos(n-f) + 0.00014*cos(n+2*f-2*d)
	sigma = -0.02816*sin(n) + 0.02244*cos(f) - 0.00682*sin(n-2*f) - 0.00279*sin(2*f) -
		0.00083*sin(2*f-2*d) + 0.00069*sin(n-2*d) + 0.00040*cos(n+f) - 0.00025*sin(2*n) -
		0.00023*sin(n+2*f) + 0.00020*cos(n-f) + 0.00019*sin(n-f) + 0.00013*sin(n+2*f-2*d) -
		0.00010*cos(n-3*f)
	tau = 0.02520*a.e*sin(m) + 0.00473*sin(2*n-2*f) - 0.00467*sin(n) + 0.00396*sin(a.k1) +
		0.00276*sin(2*n-2*d) + 0.00196*sin(a.node) - 0.00183*cos(n-f) + 0.00115*sin(n-2*d) -
		0.00096*sin(n-d) + 0.00046*sin(2*f-2*d) - 0.00039*sin(n-f) - 0.00032*sin(n-m-d) +
		0.00027*sin(2*n-m-2*d) + 0.00023*sin(a.k2) - 0.00014*sin(2*d) + 0.00014*cos(2*n-2*f) -
		0.00012*sin(n-2*f) - 0.00012*sin(2*n) + 0.00011*sin(2*n-2*m-2*d)
	return radians(rho), radians(sigma), radians(tau)
}
