package rocket

import (
	"fmt"
	"math"

	"noonbook/compute/quantity"
)

// Flights in empty space from a height h above the ground, in closed form. They
// need no drag coefficient, so that a zone can be built on them that no doubt in
// it moves. A throw at the angle a comes down at the distance R where
//
//	0 = h + R tan a − g R² (1 + tan² a) / 2v²
//
// (the parabola of any textbook of mechanics). For an angle that is a quadratic in
// tan a, for a speed it is linear in v². The farthest of all throws has
// tan a = v / √(v² + 2 g h), 45° from the ground and less from above it.

// NoAir returns the flight in empty space: the bound of every flight in still air.
// Its path holds launch, apogee and landing only.
func NoAir(l Launch) Flight {
	v, h := float64(l.Speed), l.Height.Metres()
	u, w := v*l.Elevation.Cos(), v*l.Elevation.Sin()
	up := math.Max(0, w) / Gravity
	top := h + w*up - Gravity*up*up/2
	down := up + math.Sqrt(2*top/Gravity)
	f := Flight{
		Apogee:  Point{quantity.Length(u * up), 0, quantity.Length(top), duration(up)},
		Landing: Point{Along: quantity.Length(u * down), Time: duration(down)},
		Impact:  Speed(math.Sqrt(v*v + 2*Gravity*h)),
	}
	f.Path = []Point{{Up: l.Height}, f.Apogee, f.Landing}
	return f
}

// NoAirReach returns the farthest landing in empty space at any angle from low up,
// and that angle. At the best of all angles it is v/g · √(v² + 2 g h), which is
// v²/g from the ground; a low angle beyond the best one is the best that is left.
func NoAirReach(l Launch, low quantity.Angle) (quantity.Length, quantity.Angle) {
	v := float64(l.Speed)
	if best := freeBest(v, l.Height); low <= best {
		return quantity.Length(v / Gravity * math.Sqrt(v*v+2*Gravity*l.Height.Metres())), best
	}
	l.Elevation = low
	return NoAir(l).Landing.Along, low
}

// freeBest is the angle of the farthest throw.
func freeBest(v float64, height quantity.Length) quantity.Angle {
	return quantity.Atan2(v, math.Sqrt(v*v+2*Gravity*height.Metres()))
}

// NoAirSteepEnough returns the least elevation from which on, up to straight up,
// every flight in empty space ends within the room: the steeper root of the
// quadratic, or 0 where no throw at all leaves the room. It fails for a room that
// is not positive.
func NoAirSteepEnough(l Launch, room quantity.Length) (quantity.Angle, error) {
	if err := checkRoom(room); err != nil {
		return 0, err
	}
	if far, _ := NoAirReach(l, 0); far <= room {
		return 0, nil
	}
	v, h, r := float64(l.Speed), l.Height.Metres(), room.Metres()
	a := Gravity * r * r / (2 * v * v)
	return quantity.Atan2(r+math.Sqrt(math.Max(0, r*r-4*a*(a-h))), 2*a), nil
}

// NoAirSlowEnough returns the highest launch speed at which every flight in empty
// space at any angle from low up ends within the room. At the best angle
//
//	v² = −g h + √(g² h² + R² g²),
//
// and, where low is steeper than the best angle at that speed, v² = g R² (1 + tan²
// low) / 2 (h + R tan low). It is +Inf for a pipe that stands straight up. It fails
// for a room that is not positive.
func NoAirSlowEnough(height quantity.Length, low quantity.Angle, room quantity.Length) (Speed, error) {
	if err := checkRoom(room); err != nil {
		return 0, err
	}
	h, r := height.Metres(), room.Metres()
	v := math.Sqrt(-Gravity*h + Gravity*math.Hypot(h, r))
	if low <= freeBest(v, height) {
		return Speed(v), nil
	}
	if low >= quarter {
		return Speed(math.Inf(1)), nil
	}
	t := low.Tan()
	return Speed(math.Sqrt(Gravity * r * r * (1 + t*t) / (2 * (h + r*t)))), nil
}

func checkRoom(room quantity.Length) error {
	if !(room > 0) || math.IsInf(room.Metres(), 1) {
		return fmt.Errorf("room of %g m: it must be positive", room.Metres())
	}
	return nil
}
