package rocket

import (
	"fmt"

	"noonbook/compute/quantity"
	"noonbook/compute/search"
)

// Farthest returns the farthest landing at any elevation from low to high, and
// that elevation to 0.01°. The reach is flat there, so it is good to 1e-7 of
// itself. Wind as Air has it: give a tail wind for the worst.
func Farthest(r Rocket, l Launch, air Air, low, high quantity.Angle) (quantity.Length, quantity.Angle, error) {
	l.Elevation = high
	if err := check(r, l, air); err != nil {
		return 0, 0, err
	}
	if !(low >= 0 && low <= high) {
		return 0, 0, fmt.Errorf("angles from %g° to %g° are none", low.Degrees(), high.Degrees())
	}
	reach, angle := motionOf(r, air).farthest(l, low, high)
	return reach, angle, nil
}

func (m motion) reach(l Launch, elevation quantity.Angle) float64 {
	l.Elevation = elevation
	return m.fly(l, itsLanding).Reach().Metres()
}

// farthest scans the angles, since the steepest flights drift with the wind and
// the reach may have an end at either side, and then looks more closely at the best.
func (m motion) farthest(l Launch, low, high quantity.Angle) (quantity.Length, quantity.Angle) {
	const scan = 9
	best, at := -1.0, low
	for i := range scan + 1 {
		e := low + (high-low)*quantity.Angle(i)/scan
		if x := m.reach(l, e); x > best {
			best, at = x, e
		}
	}
	a := max(low, at-(high-low)/scan)
	b := min(high, at+(high-low)/scan)
	fine := quantity.Angle(search.Lowest(func(e float64) float64 { return -m.reach(l, quantity.Angle(e)) },
		float64(a), float64(b), float64(quantity.Degrees(0.01))))
	if x := m.reach(l, fine); x > best {
		return quantity.Length(x), fine
	}
	return quantity.Length(best), at
}

// SteepEnough returns the least elevation from which on, up to straight up, every
// flight ends within the room, to 0.001°. ok is false when even a flight that
// starts straight up leaves it.
func SteepEnough(r Rocket, l Launch, air Air, room quantity.Length) (least quantity.Angle, ok bool, err error) {
	far, at, err := Farthest(r, l, air, 0, quantity.Degrees(90))
	if err != nil {
		return 0, false, err
	}
	if far <= room {
		return 0, true, nil
	}
	m := motionOf(r, air)
	over := func(e float64) float64 { return m.reach(l, quantity.Angle(e)) - room.Metres() }
	e, ok := fallsThrough(over, float64(at), float64(quantity.Degrees(90)), float64(quantity.Degrees(0.001)))
	return quantity.Angle(e), ok, nil
}

// SlowEnough returns the highest launch speed up to that of l at which every flight
// at any angle from low up ends within the room, to 0.001 m/s. ok is false where the wind alone
// carries the rocket out of it.
func SlowEnough(r Rocket, l Launch, air Air, low quantity.Angle, room quantity.Length) (highest Speed, ok bool, err error) {
	far, _, err := Farthest(r, l, air, low, quantity.Degrees(90))
	if err != nil {
		return 0, false, err
	}
	if far <= room {
		return l.Speed, true, nil
	}
	m := motionOf(r, air)
	spare := func(v float64) float64 {
		slow := l
		slow.Speed = Speed(v)
		far, _ := m.farthest(slow, low, quantity.Degrees(90))
		return room.Metres() - far.Metres()
	}
	v, ok := fallsThrough(spare, 0, float64(l.Speed), 1e-3)
	return Speed(v), ok, nil
}

// DraggyEnough returns the least drag coefficient from that of r up to most at which every
// flight at any angle from low up ends within the room, to 0.001. ok is false
// where even the most does not do.
func DraggyEnough(r Rocket, l Launch, air Air, low quantity.Angle, room quantity.Length, most float64) (least float64, ok bool, err error) {
	far, _, err := Farthest(r, l, air, low, quantity.Degrees(90))
	if err != nil {
		return 0, false, err
	}
	if far <= room {
		return r.Drag, true, nil
	}
	over := func(c float64) float64 {
		r.Drag = c
		far, _ := motionOf(r, air).farthest(l, low, quantity.Degrees(90))
		return far.Metres() - room.Metres()
	}
	c, ok := fallsThrough(over, r.Drag, most, 1e-3)
	return c, ok, nil
}

// fallsThrough returns where f, positive at low, comes down to zero, on the side
// on which it is not positive, within width; false when it does not, and low
// when it is there already.
func fallsThrough(f func(float64) float64, low, high, width float64) (float64, bool) {
	a, b := f(low), f(high)
	if a <= 0 {
		return low, a == 0
	}
	if b > 0 {
		return high, false
	}
	return search.Between(f, low, a, high, b, width), true
}
