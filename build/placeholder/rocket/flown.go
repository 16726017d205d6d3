package rocket

import (
	"noonbook/build/placeholder/entry"
	"noonbook/compute/quantity"
	"noonbook/compute/rocket"
)

// A zone is reckoned from some thirty flights, and several placeholders ask for one: those
// with the parts of a zone, those that tell heights, each at the speed of unit.toml and at
// that of the record. They are flown once for a rocket, a launcher and the air, which
// schools at one height have alike.
var (
	flownFar = entry.Memory[flying, farthest]{Most: 128}
	flownTo  = entry.Memory[flying, rocket.Speed]{Most: 128}
)

// A flying is what a flight depends on, and what is asked of it: the lowest angle of the
// pipe, or a height.
type flying struct {
	rocket rocket.Rocket
	launch rocket.Launch
	air    rocket.Air
	least  quantity.Angle
	height quantity.Length
}

// A farthest is the farthest landing at any angle of the pipe, and that angle.
type farthest struct {
	reach quantity.Length
	at    quantity.Angle
}

// reachOf is rocket.Farthest up to straight up.
func reachOf(r rocket.Rocket, l rocket.Launch, air rocket.Air, least quantity.Angle) (farthest, error) {
	return flownFar.Of(flying{rocket: r, launch: l, air: air, least: least}, func() (f farthest, err error) {
		f.reach, f.at, err = rocket.Farthest(r, l, air, least, quantity.Degrees(90))
		return f, err
	})
}

// speedTo is rocket.SpeedForHeight.
func speedTo(r rocket.Rocket, l rocket.Launch, air rocket.Air, height quantity.Length) (rocket.Speed, error) {
	return flownTo.Of(flying{rocket: r, launch: l, air: air, height: height}, func() (rocket.Speed, error) {
		return rocket.SpeedForHeight(r, l, air, height)
	})
}
