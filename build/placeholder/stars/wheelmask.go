package stars

import (
	"math"
	"time"

	"noonbook/build/drawing"
	"noonbook/build/placeholder/entry"
	"noonbook/build/say"
	"noonbook/compute/quantity"
	"noonbook/compute/sky"
)

// mask is the part that lies above: hours on its rim, and the horizon as a window.
func (w wheelParts) mask() drawing.Drawing {
	d := w.blank("sky-wheel.mask_title")
	d.Disc("cut mask", w.centre(), maskRadius)
	w.hours(&d)
	d.Area("cut window", w.window()...)
	w.directions(&d)
	w.pin(&d)
	clocks := w.wheel.Clocks()
	lines := []say.Value{
		say.Words("sky-wheel.step_set"), say.Words("sky-wheel.step_midnight"), say.Words("sky-wheel.step_hold"),
		say.Words("sky-wheel.step_try", entry.DayOfYear(w.date), StarWord(w.check.star), say.Number(w.check.stands.Altitude.Degrees(), "deg", 0), entry.Toward(w.check.stands.Azimuth), say.Clock(time.Time{}.Add(checkHour))),
		say.Words("sky-wheel.step_planets"),
	}
	if clocks.Forward > 0 {
		lines = append(lines, say.Words("sky-wheel.step_saving"))
	}
	if math.Abs(w.place.Latitude.Degrees()) < 72 {
		w.turning(&d)
	} else { // the window leaves no room for the arrow
		lines = append(lines, say.Words(w.way("sky-wheel.turns_against", "sky-wheel.turns_with")))
	}
	w.steps(&d, lines...)
	return d
}

// hours draws the scale of the standard clock from noon to noon, and inside it, where
// clocks change, the figures of daylight time. The last quarter of an hour is left
// out: the scale turns with the stars, a degree more than once round in a day.
func (w wheelParts) hours(d *drawing.Drawing) {
	forward := w.wheel.Clocks().Forward
	const step = 15 * time.Minute
	for clock := 12 * time.Hour; clock < 36*time.Hour-step; clock += step {
		turn := w.wheel.Hour(clock)
		role, long := "tick quarter-hour", 1.6
		switch {
		case clock%time.Hour == 0:
			role, long = "hour", 4
			w.around(d, "numeral", turn, maskRadius-7.6, clockFigure(clock))
		case clock%(30*time.Minute) == 0:
			role, long = "tick half-hour", 2.6
		}
		d.Line(role, w.on(turn, maskRadius-long), w.on(turn, maskRadius))
		if forward > 0 && (clock+forward)%time.Hour == 0 {
			w.around(d, "daylight-hour", turn, maskRadius-11.7, clockFigure(clock+forward))
		}
	}
}

func clockFigure(clock time.Duration) say.Value { return say.HourOnScale(int(clock/time.Hour) % 24) }

// window is the opening to cut: the horizon and the rim of the star map, less the pad
// round the pin and the arm that holds it, which lies along the meridian below the
// pole, where the window is narrowest. Corners that no knife could follow are left out.
func (w wheelParts) window() []drawing.Point {
	const step = 0.25 // degrees
	var outer, inner []drawing.Point
	edge := false // whether the opening has begun
	ray := func(degrees float64) {
		turn := quantity.Degrees(degrees)
		from, to := w.opening(turn)
		if from >= to {
			return
		}
		edge = true
		outer = append(outer, w.on(turn, to))
		inner = append(inner, w.on(turn, from))
	}
	open := func(degrees float64) bool {
		from, to := w.opening(quantity.Degrees(degrees))
		return from < to
	}
	here := open(-180)
	for degrees := -180.0; degrees < 180; degrees += step {
		next := open(degrees + step)
		switch {
		case here:
			ray(degrees)
			if !next {
				ray(lastOpen(open, degrees, degrees+step))
			}
		case next && !edge:
			ray(lastOpen(open, degrees+step, degrees))
		}
		here = next
	}
	for i := len(inner) - 1; i >= 0; i-- {
		outer = append(outer, inner[i])
	}
	return drawing.Thin(outer, 0.01)
}

// lastOpen halves the step between an open ray and a closed one until it is too
// small to be seen.
func lastOpen(open func(float64) bool, inside, outside float64) float64 {
	for range 20 {
		if middle := (inside + outside) / 2; open(middle) {
			inside = middle
		} else {
			outside = middle
		}
	}
	return inside
}

// opening returns from what to what distance in mm the mask is cut open on a ray.
func (w wheelParts) opening(turn quantity.Angle) (from, to float64) {
	low, high := w.wheel.Open(turn)
	from, to = max(mapRadius*low, padRadius), mapRadius*high
	if from < to && turn.Cos() < 0 {
		// A ray near the arm leaves it where it is half its width away.
		if side := math.Abs(turn.Sin()); side > 0 {
			from = max(from, armWidth/2/side)
		} else {
			from = to
		}
	}
	return from, to
}

// directions stand outside the window, at its edge, each on the side on which it is
// seen overhead.
func (w wheelParts) directions(d *drawing.Drawing) {
	c := w.centre()
	for i := range 8 {
		azimuth := quantity.Degrees(45 * float64(i))
		s, ok := w.wheel.Horizon(azimuth)
		if !ok || math.Abs(w.place.Latitude.Degrees()) > 89.9 && i > 0 {
			continue // beyond the rim; at the poles there is one direction only
		}
		// Outward is across the edge: the difference of its neighbours, turned.
		before, _ := w.wheel.Horizon(azimuth - quantity.Degrees(0.5))
		after, _ := w.wheel.Horizon(azimuth + quantity.Degrees(0.5))
		p := w.on(s.Turn, mapRadius*s.Radius)
		a, b := w.on(before.Turn, mapRadius*before.Radius), w.on(after.Turn, mapRadius*after.Radius)
		nx, ny := b.Y-a.Y, a.X-b.X
		// The window's inside is where the zenith is.
		zenith := w.zenith()
		if (zenith.X-p.X)*nx+(zenith.Y-p.Y)*ny > 0 {
			nx, ny = -nx, -ny
		}
		long := math.Hypot(nx, ny)
		if long == 0 {
			continue
		}
		nx, ny = nx/long, ny/long
		role := "direction"
		if i%2 == 1 {
			role = "half-direction"
		}
		word, near := entry.Toward(azimuth), 1.4
		if math.Abs(w.place.Latitude.Degrees()) > 89.9 { // long, and its ends near the hours
			role, word, near = "half-direction", say.Words("sky-wheel.all_round"), 0.8
		}
		// The text runs along the edge, its foot towards the window's side below it.
		turn := math.Atan2(nx, -ny) * 180 / math.Pi
		off, tick := near, 0.9
		if turn > 91 || turn < -91 {
			turn, off = turn-math.Copysign(180, turn), 3.6
		}
		if math.Hypot(p.X+3.6*nx-c.X, p.Y+3.6*ny-c.Y) > maskRadius-13 {
			off, tick = min(off, 3), 0.3
		}
		if away := math.Hypot(p.X-c.X, p.Y-c.Y); away < padRadius+2 {
			off += padRadius + 0.5 - away // clear of the pin
		}
		d.Turned(role, drawing.Point{X: p.X + off*nx, Y: p.Y + off*ny}, turn, word)
		d.Line("mark", p, drawing.Point{X: p.X + tick*nx, Y: p.Y + tick*ny})
	}
}

// zenith is where on the mask the zenith is: on the meridian, as far from the pole as
// the latitude lacks to 90°.
func (w wheelParts) zenith() drawing.Point {
	latitude := w.place.Latitude
	if w.wheel.Face == sky.South {
		latitude = -latitude
	}
	return w.on(0, mapRadius*float64((quantity.Turn/4-latitude)/(quantity.Turn/4-w.wheel.Edge)))
}

// way chooses between words for the northern and the southern face.
func (w wheelParts) way(northern, southern string) string {
	if w.wheel.Face == sky.South {
		return southern
	}
	return northern
}

// turning is an arrow that says which way the stars go round as the night goes on.
func (w wheelParts) turning(d *drawing.Drawing) {
	const mm = mapRadius + 1.8
	way := quantity.Angle(-1) // the northern sky turns anticlockwise round its pole
	if w.wheel.Face == sky.South {
		way = 1
	}
	from, to := quantity.Turn/2-way*quantity.Degrees(22), quantity.Turn/2+way*quantity.Degrees(22)
	w.arc(d, "turn-arrow", from, to-from, mm)
	d.Line("turn-arrow", w.on(to-way*quantity.Degrees(2.2), mm-1.2), w.on(to, mm), w.on(to-way*quantity.Degrees(2.2), mm+1.2))
	d.Label("small", drawing.Point{X: w.centre().X, Y: w.centre().Y - mm + 4}, drawing.Middle, say.Words("sky-wheel.turns"))
}
