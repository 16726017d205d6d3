package dial

import (
	"math"
	"time"

	"noonbook/compute/quantity"
)

// PolarFirst and PolarLast are the whole hours that a plate of a useful width holds:
// at 75° from noon a line is 3.7 heights away, at 82.5° already 7.6.
const (
	PolarFirst = 7 * time.Hour
	PolarLast  = 17 * time.Hour
)

// A PolarDial is a polar dial as it is set up. PolarAt makes one that is right.
type PolarDial struct {
	Slope quantity.Angle // of the plate out of the level, its north edge up positive
	Turn  quantity.Angle // plate and style about the vertical, clockwise seen from above
	Lean  Tilt           // of the ground on which its props stand
}

// PolarAt returns the dial that is set up right: its plate slopes by the latitude.
func PolarAt(latitude quantity.Angle) PolarDial { return PolarDial{Slope: latitude} }

// Steeper returns the dial with its upper edge raised by an angle more; on the
// equator that is the north edge.
func (d PolarDial) Steeper(by quantity.Angle) PolarDial {
	if d.Slope < 0 {
		by = -by
	}
	d.Slope += by
	return d
}

// Shown returns the hour angle that the dial shows with the Sun in the given
// direction, −90° to 90°. ok is false where no shadow falls: the Sun is down or behind
// the plate.
func (d PolarDial) Shown(azimuth, altitude quantity.Angle) (hourAngle quantity.Angle, ok bool) {
	on, above := d.Lean.Sees(azimuth-d.Turn, altitude)
	on, above = Tilt{Toward: quantity.Turn / 2, By: d.Slope}.Sees(on, above)
	const grazing = 1e-9 // a Sun in the plane of the plate throws no shadow on it
	return quantity.Atan2(-above.Cos()*on.Sin(), above.Sin()), above > grazing && altitude > 0
}

// Off returns what the dial shows less the true sun time, as Dial.Off does.
func (d PolarDial) Off(latitude, declination, hourAngle quantity.Angle) (fast time.Duration, ok bool) {
	shown, ok := d.Shown(SunDirection(latitude, declination, hourAngle))
	if !ok {
		return 0, false
	}
	return sunTime((shown - hourAngle).Signed()), true
}

// PolarDistance returns how far the line of an hour angle is from the noon line of a
// polar dial whose style has the height: afternoon, which is east, positive. ok is
// false from six hours from noon on, where no shadow falls.
func PolarDistance(height quantity.Length, hourAngle quantity.Angle) (distance quantity.Length, ok bool) {
	const sixth = 1e-9 // of the cosine: six o'clock is at infinity, whatever rounding says
	if hourAngle.Cos() <= sixth {
		return 0, false
	}
	return height * quantity.Length(hourAngle.Sin()/hourAngle.Cos()), true
}

// PolarHourAngle is PolarDistance turned round.
func PolarHourAngle(height, distance quantity.Length) quantity.Angle {
	return quantity.Atan2(distance.Metres(), height.Metres())
}

// PolarHours returns the sun times whose lines are within reach of the noon line, at
// most a quarter of an hour before PolarFirst and after PolarLast.
func PolarHours(height, reach quantity.Length) (from, to time.Duration) {
	const beyond = 15 * time.Minute
	half := min(sunTime(PolarHourAngle(height, max(reach, 0))), PolarLast+beyond-12*time.Hour)
	return 12*time.Hour - half, 12*time.Hour + half
}

// PolarMoved returns how far the shadow is from the mark of an hour angle on a polar
// dial, afternoon positive. ok is false where one of the two is six hours from noon
// or more.
func (d Drift) PolarMoved(height quantity.Length, mark quantity.Angle) (distance quantity.Length, ok bool) {
	now, falls := PolarDistance(height, mark+quantity.Hours(d.Fast().Hours()))
	then, fell := PolarDistance(height, mark)
	return now - then, falls && fell
}

// FitPolarMarks is FitMarks for marks on a polar dial. The Line of each is
// PolarHourAngle of its distance from the noon line, and Gnomon is how much too
// steep the plate was, which carries the style. Near the equator a turned plate and
// a wrong slope show only as far as the Sun is from the equator, so marks of an
// equinox leave both open.
func FitPolarMarks(latitude quantity.Angle, marks []Mark, ask Unknown) (Fit, error) {
	return fitMarks(model{latitude: latitude, marks: marks, ask: ask.causes(), polar: true}, ask)
}

// polarShown predicts marks on a polar dial from causes.
func (m model) polarShown(x causeValues) func(sunAt) (line quantity.Angle, ok bool) {
	d := PolarAt(m.latitude).Steeper(quantity.Angle(x[sloped]))
	d.Turn = quantity.Angle(math.Remainder(x[turned], 2*math.Pi))
	return func(sun sunAt) (quantity.Angle, bool) { return d.Shown(sun.azimuth, sun.altitude) }
}
