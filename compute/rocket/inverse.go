package rocket

import (
	"fmt"
	"math"
	"time"

	"noonbook/compute/quantity"
	"noonbook/compute/search"
)

// SpeedForHeight returns the launch speed at which the rocket, launched as l but
// for its speed, climbs to the height above the ground, to 1e-9 of itself. It
// fails when the height is not above the pipe's end, or MaxSpeed does not reach it.
func SpeedForHeight(r Rocket, l Launch, air Air, height quantity.Length) (Speed, error) {
	if !(height > l.Height) {
		return 0, fmt.Errorf("height of %g m is not above the pipe's end at %g m", height.Metres(), l.Height.Metres())
	}
	if l.Elevation <= 0 {
		return 0, fmt.Errorf("a launch at %g° does not climb", l.Elevation.Degrees())
	}
	v, err := speedFor(r, l, air, itsTop, func(f Flight) float64 { return f.Apogee.Up.Metres() - height.Metres() })
	if err != nil {
		return 0, fmt.Errorf("height of %g m: %w", height.Metres(), err)
	}
	return v, nil
}

// SpeedForTime returns the launch speed at which the flight lasts the time, from
// launch to landing, to 1e-9 of itself. It fails as SpeedForHeight does.
func SpeedForTime(r Rocket, l Launch, air Air, lasting time.Duration) (Speed, error) {
	l.Speed = 0
	f, err := Fly(r, l, air)
	if err != nil {
		return 0, err
	}
	if !(lasting > f.Landing.Time) || l.Elevation <= 0 {
		return 0, fmt.Errorf("a flight of %g s is no longer than a fall from the pipe", lasting.Seconds())
	}
	v, err := speedFor(r, l, air, itsLanding, func(f Flight) float64 { return f.Landing.Time.Seconds() - lasting.Seconds() })
	if err != nil {
		return 0, fmt.Errorf("flight of %g s: %w", lasting.Seconds(), err)
	}
	return v, nil
}

// speedFor finds where excess, which grows with the speed, passes zero, in a
// bracket that is doubled from 1 m/s on.
func speedFor(r Rocket, l Launch, air Air, want wanted, excess func(Flight) float64) (Speed, error) {
	l.Speed = MaxSpeed
	if err := check(r, l, air); err != nil {
		return 0, err
	}
	m := motionOf(r, air)
	at := func(v float64) float64 {
		l.Speed = Speed(v)
		g := excess(m.fly(l, want))
		if math.Abs(g) < 1e-11 { // m or s
			return 0
		}
		return g
	}
	low, a := 0.0, at(0)
	high, b := 1.0, at(1)
	for b < 0 {
		if high >= float64(MaxSpeed) {
			return 0, fmt.Errorf("no launch speed up to %g m/s does it", float64(MaxSpeed))
		}
		low, a = high, b
		high = math.Min(2*high, float64(MaxSpeed))
		b = at(high)
	}
	return Speed(search.Between(at, low, a, high, b, 1e-10*high)), nil
}
