package almanac

import (
	"math"

	"noonbook/compute/search"
)

// How near, in days, passages are found, and turning points, round which so little
// changes that nothing hangs on it.
const (
	microsecond = 1e-11
	tenthSecond = 1e-6
)

// A course is a track seen from a place, with the altitude whose passages are
// looked for.
type course struct {
	k        *track
	o        observer
	sin, cos float64 // of the geometric altitude
	radius   float64 // km by which the point looked for is above the centre
}

// most is more events of one kind than a day of any zone can hold.
const most = 8

type crossing struct {
	day float64
	up  bool
}

// height returns how far the point looked for stands above the altitude, as a
// difference of sines: it has the same zeros and spares two arc functions.
func (c *course) height(day float64) float64 {
	v := c.k.seen(&c.o, day)
	r := math.Sqrt(v.dot(v))
	if c.radius == 0 {
		return v.up/r - c.sin
	}
	limb := min(1, c.radius/r)
	return v.up/r - (c.sin*math.Sqrt(1-limb*limb) - c.cos*limb)
}

// crossings finds every passage in the day, in order, and returns how many.
func (c *course) crossings(found *[most]crossing) int {
	if n, ok := c.expected(found); ok {
		return n
	}
	return c.hourly(found)
}

// hourly steps through the day hour by hour; where the body turns round close to
// the altitude between two steps, it looks at the turning point, so that a body
// that peeps over the horizon for a few minutes is not missed.
func (c *course) hourly(found *[most]crossing) int {
	const steps = 24
	n, step := 0, c.k.span/steps
	add := func(a, fa, b, fb float64) {
		if (fa < 0) != (fb < 0) && n < most {
			found[n] = crossing{search.Between(c.height, a, fa, b, fb, microsecond), fa < 0}
			n++
		}
	}
	before := c.height(-step)
	here := c.height(0)
	for i := range steps {
		t := float64(i) * step
		next := c.height(t + step)
		if (here < 0) == (next < 0) && c.turns(before, here, next, c.height(t+2*step)) {
			at := c.turning(t, t+step, here < 0)
			top := c.height(at)
			add(t, here, at, top)
			add(at, top, t+step, next)
		} else {
			add(t, here, t+step, next)
		}
		before, here = here, next
	}
	return n
}

// turns reports whether, of four heights an hour apart, the curve through them
// may turn towards the altitude and reach it between the middle two. Within half
// an hour of its turning a sine changes by 0.0086 of its swing at most; 0.05 is
// ample.
func (c *course) turns(a, b, m, d float64) bool {
	if b < 0 {
		a, b, m, d = -a, -b, -m, -d
	}
	return b-a < 0 && d-m > 0 && min(b, m) < 0.05
}

// turning returns where between a and b the height is greatest, or least if not
// top.
func (c *course) turning(a, b float64, top bool) float64 {
	if top {
		return search.Lowest(func(x float64) float64 { return -c.height(x) }, a, b, tenthSecond)
	}
	return search.Lowest(c.height, a, b, tenthSecond)
}

// transits finds every upper transit in the day, in order, and returns how
// many: Newton's method on the hour angle of the moving body.
func (c *course) transits(found *[most]float64) int {
	n := 0
	start, rate := c.spin()
	for lap := range most { // the first may lie before the day
		x := (2*math.Pi*float64(lap-1) - start) / rate
		if x > c.k.span+0.1 {
			break
		}
		if x < -0.1 {
			continue
		}
		for range 20 {
			h := c.k.hourAngle(c.o.lon, x)
			x -= h / rate
			if math.Abs(h) < 1e-9 {
				break
			}
		}
		if x >= 0 && x < c.k.span {
			found[n] = x
			n++
		}
	}
	return n
}
