package dial

import (
	"math"
	"time"

	"noonbook/compute/quantity"
)

// A Face is a way in which the plate of a dial stands.
type Face int

const (
	Level       Face = iota // lying, read from above
	Wall                    // upright, facing due south; below the equator due north
	PoleSide                // parallel to the equator, the side toward the pole above the horizon
	EquatorSide             // the other side of that plate
	Polar                   // parallel to the Earth's axis, under a style that is parallel to it: see PolarDial
)

// Latitude returns the latitude at which the plate, carried along the meridian
// without turning it, would lie level with its face up. Every dial is the level
// dial of that place: LineAt, HourAngleOf and the gnomons take it in place of
// the latitude. A wall's is 90° nearer to the other pole, so its hours run the
// other way and its style makes the angle 90° − |φ| with it; both sides of an
// equatorial plate have a pole's, where lines are even and the style upright. A
// polar plate has the equator's, where no style can rise from a centre; its lines
// are those of PolarDistance instead.
//
// On a Wall the noon line points straight down, on an equatorial plate down its
// slope, and the dial centre is above.
func (f Face) Latitude(latitude quantity.Angle) quantity.Angle {
	pole := quantity.Turn / 4
	if latitude < 0 {
		pole = -pole
	}
	switch f {
	case Wall:
		return latitude - pole
	case PoleSide:
		return pole
	case EquatorSide:
		return -pole
	case Polar:
		return 0
	}
	return latitude
}

// Tilt returns how the plate is tilted out of the level.
func (f Face) Tilt(latitude quantity.Angle) Tilt {
	return Tilt{Toward: quantity.Turn / 2, By: latitude - f.Latitude(latitude)}
}

// Hours returns the sun times between which the Sun can shine on the face on
// some day of the year; they are the same at a pole's EquatorSide, where it
// never does. A Wall, an EquatorSide and a Polar plate are lit longest near the
// equinoxes, from 6 h to 18 h: before that in summer the Sun is behind them, in
// winter down.
func (f Face) Hours(latitude quantity.Angle) (from, to time.Duration) {
	if f == Level || f == PoleSide {
		return SunHours(latitude)
	}
	if f == EquatorSide && math.Abs(latitude.Cos()) < 1e-9 {
		return 12 * time.Hour, 12 * time.Hour
	}
	return 6 * time.Hour, 18 * time.Hour
}

// Readable reports whether hours can be read off the face: a level dial cannot
// near the equator, a wall dial near a pole (see ShallowLatitude).
func (f Face) Readable(latitude quantity.Angle) bool {
	return f == Polar || !Shallow(f.Latitude(latitude))
}

// FaceFor returns the face of the dial to build at a latitude: a Polar one where a
// level dial is too shallow, elsewhere a Level one.
func FaceFor(latitude quantity.Angle) Face {
	if Shallow(latitude) {
		return Polar
	}
	return Level
}

// A Tilt takes a plate out of the level: its side at the bearing Toward goes
// down by the angle By, about a level axis through the dial centre.
type Tilt struct {
	Toward quantity.Angle // true bearing of the lowered side
	By     quantity.Angle // 0° is level, 90° upright with the face looking toward it
}

// Sees returns where a Sun in the given direction stands over the tilted
// plate: its height above the plate, and its bearing on the plate, counted from
// the line that pointed true north before the plate was tilted.
func (t Tilt) Sees(azimuth, altitude quantity.Angle) (onPlate, above quantity.Angle) {
	if t.By == 0 {
		return azimuth, altitude
	}
	// Parts of the Sun's direction toward the lowered side, across it, and up;
	// the plate turns about the line across.
	turned := toward(azimuth-t.Toward, altitude)
	low := turned.north*t.By.Cos() - turned.up*t.By.Sin()
	up := turned.north*t.By.Sin() + turned.up*t.By.Cos()
	return (quantity.Atan2(turned.east, low) + t.Toward).Bearing(), quantity.Atan2(up, math.Hypot(turned.east, low))
}
