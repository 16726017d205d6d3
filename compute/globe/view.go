package globe

import (
	"math"

	"noonbook/compute/quantity"
	"noonbook/compute/space"
)

// A View is a globe seen from far off, an orthographic projection: how the Moon looks to
// the eye. Of the Moon the Earth is near enough that its very rim, 0.26° of it, is hidden.
type View struct {
	Centre Point          // in the middle of the disc
	Turn   quantity.Angle // how far the north end of the axis is turned from straight up, clockwise
}

// A Spotted is where a point of the globe shows in a view, in radii of the disc from its
// middle: X to the right, Y down, as on a drawing. Toward is how far the point is in front
// of the disc's plane: it is on the side that shows if that is positive.
type Spotted struct{ X, Y, Toward float64 }

// Shows reports whether the point is on the side of the globe that shows.
func (s Spotted) Shows() bool { return s.Toward > 0 }

// At returns where a point shows. With north up, east on the globe is to the right.
func (v View) At(p Point) Spotted { return v.of(p.Vector()) }

func (v View) of(p space.Vector) Spotted {
	sinLon, cosLon := math.Sincos(float64(v.Centre.Longitude))
	sinLat, cosLat := math.Sincos(float64(v.Centre.Latitude))
	out := p.X*cosLon + p.Y*sinLon // in the plane of the equator, toward the viewer's meridian
	east := p.Y*cosLon - p.X*sinLon
	north := p.Z*cosLat - out*sinLat
	sin, cos := math.Sincos(float64(v.Turn))
	return Spotted{X: east*cos + north*sin, Y: east*sin - north*cos, Toward: p.Z*sinLat + out*cosLat}
}

// Rim moves a point that does not show to the rim of the disc, straight outward, and
// leaves one that shows: so an outline that goes round the rim stays an outline.
func (s Spotted) Rim() Spotted {
	if s.Shows() {
		return s
	}
	if r := math.Hypot(s.X, s.Y); r > 0 {
		return Spotted{X: s.X / r, Y: s.Y / r}
	}
	return s
}

// Ring returns n points of the circle round a point, as far from it along the ground as the
// angle at the globe's middle says, clockwise from north.
func Ring(p Point, radius quantity.Angle, n int) []Point {
	points := make([]Point, n)
	for i := range points {
		points[i] = p.Going(quantity.Turn*quantity.Angle(i)/quantity.Angle(n), radius)
	}
	return points
}

// Going returns the point that a walk from p reaches along a great circle that sets out
// in the direction of the bearing.
func (p Point) Going(bearing, far quantity.Angle) Point {
	sinLat, cosLat := math.Sincos(float64(p.Latitude))
	sinFar, cosFar := math.Sincos(float64(far))
	lat := quantity.Asin(sinLat*cosFar + cosLat*sinFar*bearing.Cos())
	lon := p.Longitude + quantity.Atan2(bearing.Sin()*sinFar*cosLat, cosFar-sinLat*lat.Sin())
	return Point{Latitude: lat, Longitude: lon.Signed()}
}

// Arc is the angle at the globe's middle of a length along the ground.
func (w World) Arc(l quantity.Length) quantity.Angle { return quantity.Angle(l / w.Radius()) }
