package almanac

import "math"

// How sure the quick way must be, else the day is walked hour by hour.
const (
	// A body whose hour angle at the altitude has a greater cosine stays within 14° of
	// its turning point, where it may graze the altitude or miss it.
	surely = 0.97
	// By how much that cosine may change in half a day. The hour angle of the crossing
	// then moves by 0.5/0.243 = 2.1 a day at most (0.243 is the sine whose cosine is
	// 0.97), a third of what the sky turns, so that each turn has one rise and one set
	// and no more. What goes beyond are days within a degree or so of a pole.
	steady = 0.25
	// How far, in days, a crossing may be from where the declination of the middle of
	// the day has it: steady over 0.243, in turns, and some.
	moved = 0.2
	// How far, in days, a crossing may be from where it is expected: an hour. Usually
	// it is within a minute, the Moon's within five.
	astray = 1.0 / 24
	// Where a step of the secant is shorter, in days, what is left of the error is the
	// product of the last two steps, far below a microsecond.
	settled = 1e-9
)

// spin returns the hour angle on the observer's meridian at the beginning of the day,
// and by how much it grows in a day.
func (c *course) spin() (start, rate float64) {
	start = c.k.hourAngle(c.o.lon, 0)
	if c.k.span == 0 {
		return start, 2 * math.Pi
	}
	turns := 2 * math.Pi * c.k.span // within half a turn of the truth, for any body
	return start, (turns + signed(c.k.hourAngle(c.o.lon, c.k.span)-start-turns)) / c.k.span
}

// expected finds the crossings of an ordinary day from where they must be: the hour
// angle at which a body of that declination passes the altitude, refined by the secant
// on the same track as the hourly search. It answers ok only if what it found agrees
// with the heights at both ends of the day.
func (c *course) expected(found *[most]crossing) (n int, ok bool) {
	var cosine [3]float64
	var swing float64
	for i := range cosine {
		cosine[i], swing = c.cosine(c.k.span * float64(i) / 2)
		if !(math.Abs(cosine[i]) < surely) { // nor is it a number at the pole
			return 0, false
		}
	}
	if math.Abs(cosine[1]-cosine[0]) > steady || math.Abs(cosine[2]-cosine[1]) > steady {
		return 0, false
	}
	start, rate := c.spin()
	down := c.height(0) < 0
	for half := range 2 * most { // rise and set of the turn before, then of this, …
		side, up := 1.0, half%2 == 0
		if up {
			side = -1
		}
		meridian := 2*math.Pi*float64(half/2-1) - start
		angle := math.Acos(cosine[1])
		at := (meridian + side*angle) / rate
		if at > c.k.span+moved {
			break
		}
		if at < -moved {
			continue
		}
		// Once more with the declination of that moment, by a parabola.
		s := 2*at/c.k.span - 1
		angle = math.Acos(max(-1, min(1, cosine[1]+s/2*(cosine[2]-cosine[0]+s*(cosine[2]-2*cosine[1]+cosine[0])))))
		at = (meridian + side*angle) / rate
		if at < -astray || at > c.k.span+astray {
			continue
		}
		x, good := c.secant(at, -side*swing*math.Sin(angle)*rate)
		if !good {
			return 0, false
		}
		if x <= 0 || x > c.k.span {
			continue
		}
		if up != down || n == most {
			return 0, false
		}
		found[n] = crossing{x, up}
		n++
		down = !down
	}
	return n, down == (c.height(c.k.span) < 0)
}

// cosine returns the cosine of the hour angle at which the body, where it is on the
// track then, passes the altitude, and by how much the sine of its altitude changes
// with that cosine. It is good to 0.001 of the swing (for the Moon's parallax); the
// secant does the rest.
func (c *course) cosine(day float64) (cosine, swing float64) {
	v := c.k.place(day)
	r := v.Norm()
	centre := c.o.axis*c.o.cosLat + c.o.north*c.o.sinLat // of the Earth, below the horizon's plane
	seen := r - centre*c.sin                             // from the observer, at that altitude
	up := c.sin*seen - c.cos*c.radius + centre
	swing = c.o.cosLat * math.Hypot(v.X, v.Y)
	return (up - v.Z*c.o.sinLat) / swing, swing / r
}

// secant refines where the height passes zero, from a first guess and its slope. It
// gives up where the steps do not settle nearby, or the curve goes the other way.
func (c *course) secant(guess, slope float64) (x float64, ok bool) {
	x, fx, way := guess, c.height(guess), slope
	for range 10 {
		step := -fx / slope
		if math.Abs(step) < settled {
			return x + step, true
		}
		y := x + step
		if !(math.Abs(y-guess) < astray) {
			return 0, false
		}
		fy := c.height(y)
		slope = (fy - fx) / (y - x)
		if !(slope*way > 0) {
			return 0, false
		}
		x, fx = y, fy
	}
	return 0, false
}
