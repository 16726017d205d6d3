package rocket

import (
	"fmt"
	"math"
	"time"

	"noonbook/compute/quantity"
)

// A Care says how well things are read: by how much an angle, a length along the
// ground or a time may be wrong to either side.
type Care struct {
	Angle  quantity.Angle
	Length quantity.Length
	Time   time.Duration
}

// A Height is a measured height above the ground. The other fields say how much
// one mistake of its Care changes it, to the side on which it changes more.
type Height struct {
	Value                     quantity.Length
	ByAngle, ByLength, ByTime quantity.Length
}

// Spread returns the changes together, as the root of the sum of their squares:
// mistakes that have nothing to do with one another seldom all pull one way.
func (h Height) Spread() quantity.Length {
	return quantity.Length(math.Hypot(math.Hypot(h.ByAngle.Metres(), h.ByLength.Metres()), h.ByTime.Metres()))
}

// OneStation returns the height of what is seen at an angle from a baseline away:
// baseline × tan angle + eye. It takes the rocket to be straight above the
// launcher at its top. It fails for angles that are not between 0° and 90° and
// for a baseline that is not positive. An angle that its care brings to 90° has a
// ByAngle without bound, +Inf.
func OneStation(angle quantity.Angle, baseline, eye quantity.Length, care Care) (Height, error) {
	if err := checkSight(angle, baseline, eye); err != nil {
		return Height{}, err
	}
	value := baseline * quantity.Length(angle.Tan())
	byAngle := quantity.Length(math.Inf(1))
	if higher := angle + care.Angle; higher < quarter {
		byAngle = baseline * quantity.Length(higher.Tan()-angle.Tan())
	}
	return Height{
		Value:    value + eye,
		ByAngle:  byAngle,
		ByLength: care.Length * quantity.Length(angle.Tan()),
	}, nil
}

const quarter = quantity.Turn / 4

func checkSight(angle quantity.Angle, baseline, eye quantity.Length) error {
	switch {
	case !(angle > 0 && angle < quarter):
		return fmt.Errorf("an angle of %g° gives no height, want one between 0° and 90°", angle.Degrees())
	case !(baseline > 0) || math.IsInf(baseline.Metres(), 1):
		return fmt.Errorf("baseline of %g m: it must be positive", baseline.Metres())
	case !(eye >= 0 && eye <= 10):
		return fmt.Errorf("eye %g m above the ground is outside 0 m to 10 m", eye.Metres())
	}
	return nil
}

// A Sighting is what one of two stations reads: how high the rocket stood, and
// the angle on the ground from the line between the stations to the rocket.
type Sighting struct{ Elevation, Bearing quantity.Angle }

// TwoStations returns the height from sightings at both ends of a baseline; it
// does not matter where between or beside them the rocket was:
//
//	h = L · tan a · tan d / (cos b · tan d + cos c · tan a)
//
// with the elevations a, d and the bearings b, c (NASA Glenn). With the launcher
// between the stations on one line both bearings are 0. It fails where OneStation
// does, for bearings outside −90° to 90°, and where the sightings meet nowhere.
func TwoStations(first, second Sighting, baseline, eye quantity.Length, care Care) (Height, error) {
	for _, s := range []Sighting{first, second} {
		if err := checkSight(s.Elevation, baseline, eye); err != nil {
			return Height{}, err
		}
		if !(s.Bearing > -quarter && s.Bearing < quarter) {
			return Height{}, fmt.Errorf("a bearing of %g° is not between −90° and 90° of the baseline", s.Bearing.Degrees())
		}
	}
	at := [4]quantity.Angle{first.Elevation, first.Bearing, second.Elevation, second.Bearing}
	rise := twoStations(at) // height of one metre of baseline
	if !(rise > 0) || math.IsInf(rise, 1) {
		return Height{}, fmt.Errorf("sightings at %g° and %g° meet nowhere", first.Elevation.Degrees(), second.Elevation.Degrees())
	}
	byAngle := 0.0
	for i := range at {
		change := 0.0
		for _, by := range []quantity.Angle{-care.Angle, care.Angle} {
			other := at
			other[i] += by
			r := twoStations(other)
			if !(r > 0) || other[i] >= quarter {
				r = math.Inf(1)
			}
			change = math.Max(change, math.Abs(r-rise))
		}
		byAngle = math.Hypot(byAngle, change)
	}
	return Height{
		Value:    baseline*quantity.Length(rise) + eye,
		ByAngle:  baseline * quantity.Length(byAngle),
		ByLength: care.Length * quantity.Length(rise),
	}, nil
}

// twoStations is the formula for a baseline of one, written with cotangents: the
// parts of the baseline below the rocket add up.
func twoStations(at [4]quantity.Angle) float64 {
	return 1 / (at[1].Cos()/at[0].Tan() + at[3].Cos()/at[2].Tan())
}

// Disagreement returns by how much the heights that each of two stations finds
// from its own elevation differ, relative to their mean, where the bearings place
// the rocket by the sine rule. ok is false where the bearings cross nowhere, as
// with both at 0.
func Disagreement(first, second Sighting) (part float64, ok bool) {
	b, c := first.Bearing.Sin(), second.Bearing.Sin()
	apart := (first.Bearing + second.Bearing).Sin()
	one, two := c/apart*first.Elevation.Tan(), b/apart*second.Elevation.Tan()
	if !(one > 1e-9 && two > 1e-9) || math.IsInf(one+two, 1) {
		return 0, false
	}
	return math.Abs(one-two) / ((one + two) / 2), true
}

// FromTime returns the height of a flight that lasted the time, launched as l but
// for its speed. What the drag coefficient is not known to adds to its Spread; it
// is not in it.
func FromTime(r Rocket, l Launch, air Air, lasting time.Duration, care Care) (Height, error) {
	top := func(d time.Duration) (quantity.Length, error) {
		v, err := SpeedForTime(r, l, air, d)
		if err != nil {
			return 0, err
		}
		launch := l
		launch.Speed = v
		return motionOf(r, air).fly(launch, itsTop).Apogee.Up, nil
	}
	value, err := top(lasting)
	if err != nil {
		return Height{}, err
	}
	h := Height{Value: value}
	if longer, err := top(lasting + care.Time); err == nil {
		h.ByTime = longer - value
	} else {
		h.ByTime = quantity.Length(math.Inf(1))
	}
	return h, nil
}

// NoAirHeight returns how high a flight of that length rises without air, from
// the ground: g t²/8, half of the time being the fall.
func NoAirHeight(lasting time.Duration) quantity.Length {
	t := lasting.Seconds()
	return quantity.Length(Gravity * t * t / 8)
}

// Baselines returns the baselines from which every height between low and high is
// seen at angles from least to most. ok is false where no single baseline does,
// since the heights are too far apart.
func Baselines(low, high, eye quantity.Length, least, most quantity.Angle) (from, to quantity.Length, ok bool) {
	from = (high - eye) / quantity.Length(most.Tan())
	to = (low - eye) / quantity.Length(least.Tan())
	return from, to, low > eye && high >= low && from <= to
}
