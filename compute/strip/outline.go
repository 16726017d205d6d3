package strip

import (
	"fmt"
	"math"

	"noonbook/compute/quantity"
)

// A Spot is a place on a field, from any corner that the teacher measured from.
type Spot struct{ East, North quantity.Length }

// From returns the spot that lies at a distance and true bearing from s.
func (s Spot) From(bearing quantity.Angle, distance quantity.Length) Spot {
	return Spot{s.East + distance*quantity.Length(bearing.Sin()), s.North + distance*quantity.Length(bearing.Cos())}
}

// An Outline is the edge of a field, corner by corner, the last joined to the
// first. Either way round will do.
type Outline []Spot

// Rectangle returns a field whose long side runs along a true bearing. Its
// first corner is at the origin, the field lies ahead and to the right of it.
func Rectangle(long, wide quantity.Length, bearing quantity.Angle) Outline {
	var first Spot
	second := first.From(bearing, long)
	right := bearing + quantity.Turn/4
	return Outline{first, second, second.From(right, wide), first.From(right, wide)}
}

// Check fails for fewer than three corners and for corners that enclose nothing.
func (o Outline) Check() error {
	if len(o) < 3 {
		return fmt.Errorf("field of %d corners: at least three are needed", len(o))
	}
	if a := o.area(); !(math.Abs(a) > 0) || math.IsInf(a, 0) {
		return fmt.Errorf("the corners of the field enclose no ground")
	}
	return nil
}

// area is in square metres, positive anticlockwise.
func (o Outline) area() float64 {
	sum := 0.0
	for i, a := range o {
		b := o[(i+1)%len(o)]
		sum += float64(a.East*b.North-b.East*a.North) / 2
	}
	return sum
}

// Heart returns a spot inside the field for the Sun: its centre of area, or
// where that lies outside, as it does in a horseshoe, of the spots of a fine
// grid the one farthest from every edge.
func (o Outline) Heart() Spot {
	var c Spot
	area := o.area()
	for i, a := range o {
		b := o[(i+1)%len(o)]
		cross := float64(a.East*b.North-b.East*a.North) / (6 * area)
		c.East += (a.East + b.East) * quantity.Length(cross)
		c.North += (a.North + b.North) * quantity.Length(cross)
	}
	if o.Holds(c) {
		return c
	}
	low, high := o.Bounds()
	best := quantity.Length(-1)
	const steps = 64
	for i := range steps {
		for j := range steps {
			s := Spot{
				low.East + (high.East-low.East)*quantity.Length(i)/steps,
				low.North + (high.North-low.North)*quantity.Length(j)/steps,
			}
			if d := o.edge(s); o.Holds(s) && d > best {
				c, best = s, d
			}
		}
	}
	return c
}

// Bounds returns the south-western and north-eastern corners of the upright
// rectangle round the field.
func (o Outline) Bounds() (low, high Spot) {
	low, high = o[0], o[0]
	for _, s := range o {
		low = Spot{min(low.East, s.East), min(low.North, s.North)}
		high = Spot{max(high.East, s.East), max(high.North, s.North)}
	}
	return low, high
}

// Holds reports whether a spot lies inside the field, by the parity of the edges
// that a line eastward from it crosses.
func (o Outline) Holds(s Spot) bool {
	inside := false
	for i, a := range o {
		b := o[(i+1)%len(o)]
		if (a.North > s.North) != (b.North > s.North) &&
			s.East < a.East+(b.East-a.East)*(s.North-a.North)/(b.North-a.North) {
			inside = !inside
		}
	}
	return inside
}

// edge returns the distance from a spot to the nearest edge.
func (o Outline) edge(s Spot) quantity.Length {
	nearest := math.Inf(1)
	for i, a := range o {
		b := o[(i+1)%len(o)]
		east, north := float64(b.East-a.East), float64(b.North-a.North)
		t := 0.0
		if long := east*east + north*north; long > 0 {
			t = min(1, max(0, (float64(s.East-a.East)*east+float64(s.North-a.North)*north)/long))
		}
		nearest = min(nearest, math.Hypot(float64(a.East-s.East)+t*east, float64(a.North-s.North)+t*north))
	}
	return quantity.Length(nearest)
}

// Reach returns how far one can walk from a spot along a true bearing before the
// first edge: 0 from outside the field.
func (o Outline) Reach(from Spot, bearing quantity.Angle) quantity.Length {
	if !o.Holds(from) {
		return 0
	}
	u, v := bearing.Sin(), bearing.Cos()
	reach := math.Inf(1)
	for i, a := range o {
		b := o[(i+1)%len(o)]
		ax, ay := float64(a.East-from.East), float64(a.North-from.North)
		dx, dy := float64(b.East-a.East), float64(b.North-a.North)
		cross := u*dy - v*dx
		if cross == 0 {
			continue
		}
		along, where := (ax*dy-ay*dx)/cross, (ax*v-ay*u)/cross
		if where >= 0 && where <= 1 && along >= 0 {
			reach = min(reach, along)
		}
	}
	if math.IsInf(reach, 1) {
		return 0
	}
	return quantity.Length(reach)
}
