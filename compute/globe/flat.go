package globe

import (
	"math"
	"slices"

	"noonbook/compute/quantity"
)

// A Flat is where a point is on a map in the plate carrée projection, in degrees from
// the middle: longitudes straight across, latitudes straight up (J. P. Snyder, Map
// Projections, USGS Professional Paper 1395, 1987, equations 12-1 and 12-2 with the equator
// as the standard parallel). The scale holds along the equator and along every meridian;
// east to west everything is drawn wider, by 1 / cos φ, and a pole is a line.
type Flat struct{ East, North float64 }

// Flat returns where the point is on the map, which is cut at 180°.
func (p Point) Flat() Flat { return Flat{p.Longitude.Degrees(), p.Latitude.Degrees()} }

// Strip returns how long the way from p to q is by a straight strip on the map and the
// scale of its equator. No strip goes over the edge of the map.
func (w World) Strip(p, q Point) quantity.Length {
	a, b := p.Flat(), q.Flat()
	return quantity.Length(quantity.Degrees(math.Hypot(b.East-a.East, b.North-a.North)).Radians()) * w.Radius()
}

// FlatRing returns the circle round a point on the map, as far from it along the ground as
// the angle says, in pieces where the edge of the map cuts it. A circle round a pole is a
// band along the edge.
func FlatRing(p Point, radius quantity.Angle, n int) [][]Flat {
	ring := make([]Flat, n)
	for i, q := range Ring(p, radius, n) {
		ring[i] = q.Flat()
	}
	if pole := math.Copysign(90, p.Latitude.Degrees()); math.Abs(pole-p.Latitude.Degrees()) < radius.Degrees() {
		return [][]Flat{band(ring, pole)}
	}
	for i := range ring { // no farther round than half the globe from its middle
		ring[i].East = p.Longitude.Degrees() + quantity.Degrees(ring[i].East-p.Longitude.Degrees()).Signed().Degrees()
	}
	return cutAtEdges(ring)
}

// band closes a line round a pole along the edge of the map.
func band(ring []Flat, pole float64) []Flat {
	slices.SortFunc(ring, func(a, b Flat) int {
		if a.East < b.East {
			return -1
		}
		return 1
	})
	edge := (ring[0].North + ring[len(ring)-1].North) / 2
	closed := append([]Flat{{-180, pole}, {-180, edge}}, ring...)
	return append(closed, Flat{180, edge}, Flat{180, pole})
}

// cutAtEdges returns what of an area is on the map, and what of it comes in again from the
// other side (I. E. Sutherland and G. W. Hodgman, Communications of the ACM 17, 1974, page 32).
func cutAtEdges(area []Flat) (pieces [][]Flat) {
	for _, shift := range []float64{0, -360, 360} {
		piece := make([]Flat, len(area))
		for i, q := range area {
			piece[i] = Flat{q.East + shift, q.North}
		}
		piece = kept(kept(piece, 1), -1)
		if len(piece) > 2 {
			pieces = append(pieces, piece)
		}
	}
	return pieces
}

// kept is what of an area is on the inner side of an edge: the eastern one for 1, the
// western one for −1.
func kept(area []Flat, side float64) (inner []Flat) {
	for i, to := range area {
		from := area[(i+len(area)-1)%len(area)]
		a, b := 180-side*from.East, 180-side*to.East
		if a*b < 0 {
			inner = append(inner, Flat{side * 180, from.North + (to.North-from.North)*a/(a-b)})
		}
		if b >= 0 {
			inner = append(inner, to)
		}
	}
	return inner
}

// FlatWay returns the shortest way from p to q on the map, in n steps, in two pieces where
// it goes over the edge.
func FlatWay(p, q Point, n int) [][]Flat {
	bearing, far := p.Toward(q), p.Angle(q)
	pieces := [][]Flat{{p.Flat()}}
	for i := 1; i <= n; i++ {
		at := p.Going(bearing, far*quantity.Angle(i)/quantity.Angle(n)).Flat()
		last := len(pieces) - 1
		before := pieces[last][len(pieces[last])-1]
		if step := at.East - before.East; math.Abs(step) > 180 {
			side := -math.Copysign(180, step) // where it leaves the map
			whole := 360 - math.Abs(step)
			f := (side - before.East) / math.Copysign(max(whole, 1e-9), side)
			edge := before.North + f*(at.North-before.North)
			pieces[last] = append(pieces[last], Flat{side, edge})
			pieces = append(pieces, []Flat{{-side, edge}})
			last++
		}
		pieces[last] = append(pieces[last], at)
	}
	return pieces
}
