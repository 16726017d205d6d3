package dial

import (
	"time"

	"noonbook/compute/quantity"
)

// A Dial is a horizontal dial as it stands: what its face was drawn for, how
// the face was laid and where the style points. True makes one that is right.
// With a Tilt, plate and style were tilted together after they were laid, and
// bearings are counted on the plate as Tilt.Sees counts them.
type Dial struct {
	Drawn    quantity.Angle // latitude that the hour lines were drawn for
	NoonLine quantity.Angle // true bearing of the noon line
	Style    Style
	Tilt     Tilt
}

// True returns a dial drawn and laid for the latitude, its style to the pole.
func True(latitude quantity.Angle) Dial {
	return Dial{Drawn: latitude, NoonLine: noonBearing(latitude), Style: PolarStyle(latitude)}
}

// Turned returns the dial with face and style turned together about the
// vertical, clockwise seen from above positive: a dial laid along a needle that
// points 16° west of true north is turned by −16°.
func (d Dial) Turned(turn quantity.Angle) Dial {
	d = d.FaceTurned(turn)
	d.Style.Azimuth = (d.Style.Azimuth + turn).Bearing()
	return d
}

// FaceTurned returns the dial with its face alone turned, clockwise positive;
// the style stays as it is.
func (d Dial) FaceTurned(turn quantity.Angle) Dial {
	d.NoonLine = (d.NoonLine + turn).Bearing()
	return d
}

// Reading returns the hour angle that the dial shows, −180° to 180°, with the
// Sun in the given direction. ok is false where no shadow of the style falls
// (see Style.Shadow) and for a face drawn for the equator.
func (d Dial) Reading(azimuth, altitude quantity.Angle) (hourAngle quantity.Angle, ok bool) {
	line, ok := d.Line(azimuth, altitude)
	hourAngle, readable := HourAngleOf(d.Drawn, line)
	return hourAngle, ok && readable
}

// Line returns the angle from the noon line at which the style's shadow falls,
// −180° to 180°, afternoon positive. ok is false where none falls: the Sun is
// down or behind the plate, or the style points at it.
func (d Dial) Line(azimuth, altitude quantity.Angle) (line quantity.Angle, ok bool) {
	shadow, ok := d.Style.Shadow(d.Tilt.Sees(azimuth, altitude))
	return d.fromNoon(shadow), ok && altitude > 0
}

// fromNoon returns the angle from the noon line of a shadow with the bearing, −180° to 180°,
// afternoon positive.
func (d Dial) fromNoon(shadow quantity.Angle) quantity.Angle {
	line := shadow - d.NoonLine
	if d.Drawn < 0 { // hours run anticlockwise
		line = -line
	}
	return line.Signed()
}

// Off returns what the dial shows less the true sun time, within ±12 h, for a
// Sun of the given declination and true hour angle over the given latitude:
// positive when the dial is fast. ok is as for Reading.
func (d Dial) Off(latitude, declination, hourAngle quantity.Angle) (fast time.Duration, ok bool) {
	shown, ok := d.Reading(SunDirection(latitude, declination, hourAngle))
	if !ok {
		return 0, false
	}
	return sunTime((shown - hourAngle).Signed()), true
}
