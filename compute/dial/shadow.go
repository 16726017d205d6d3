package dial

import (
	"math"

	"noonbook/compute/quantity"
)

// Shadow returns where the shadow of a point, such as the tip of a gnomon, at
// a height above a level plate falls: the true bearing and the distance from
// the foot of its plumb line. With the Sun overhead the length is zero and the
// bearing means nothing. ok is false when the Sun is not above the horizon or
// the height is negative. Whether the altitude is as seen or freed of refraction
// is the caller's choice; shadows follow the Sun as seen.
func Shadow(height quantity.Length, azimuth, altitude quantity.Angle) (bearing quantity.Angle, length quantity.Length, ok bool) {
	sun := toward(azimuth, altitude)
	if !(sun.up > 0 && height >= 0) {
		return 0, 0, false
	}
	tip := vector{up: height.Metres()}
	fall := tip.up / sun.up // how far along the ray the plate is
	foot := tip.plus(sun.times(-fall))
	return foot.bearing(), quantity.Metres(math.Hypot(foot.east, foot.north)), true
}

// A Style is a straight edge that rises from the dial centre.
type Style struct {
	Azimuth   quantity.Angle // true bearing toward which it rises
	Elevation quantity.Angle // above the level plate, 0° to 90°
}

// PolarStyle returns the style of a true dial: it points to the pole above the
// horizon, due north at the latitude, below the equator due south.
func PolarStyle(latitude quantity.Angle) Style {
	return Style{Azimuth: noonBearing(latitude), Elevation: quantity.Angle(math.Abs(latitude.Radians()))}
}

// Shadow returns the true bearing, from the dial centre, of the style's shadow
// on a level plate. ok is false when the Sun is not above the horizon, and when
// the style points at it so that the shadow is a dot.
func (s Style) Shadow(azimuth, altitude quantity.Angle) (bearing quantity.Angle, ok bool) {
	return shadowOf(toward(s.Azimuth, s.Elevation), toward(azimuth, altitude))
}

// shadowOf is Style.Shadow by unit vectors along the edge and to the Sun.
func shadowOf(edge, sun vector) (bearing quantity.Angle, ok bool) {
	if !(sun.up > 0) {
		return 0, false
	}
	// A point of the edge carried down the ray lands at edge − sun·(edge.up/sun.up);
	// times sun.up, so that a low Sun does not send it to infinity.
	foot := edge.times(sun.up).plus(sun.times(-edge.up))
	const dot = 1e-12 // the rounding of the products above, a few times over
	return foot.bearing(), math.Hypot(foot.east, foot.north) > dot
}

// SunDirection returns the azimuth and altitude of the Sun, without refraction
// or parallax, from its place among hours and declinations. With the Sun
// overhead the azimuth means nothing.
func SunDirection(latitude, declination, hourAngle quantity.Angle) (azimuth, altitude quantity.Angle) {
	// Meeus eq. 13.5 and 13.6, as components and with azimuth from north.
	meridian := declination.Cos() * hourAngle.Cos() // toward the equator's highest point
	sun := vector{
		east:  -declination.Cos() * hourAngle.Sin(),
		north: declination.Sin()*latitude.Cos() - meridian*latitude.Sin(),
		up:    declination.Sin()*latitude.Sin() + meridian*latitude.Cos(),
	}
	return sun.bearing(), quantity.Atan2(sun.up, math.Hypot(sun.east, sun.north))
}

// A vector is a direction or a point above a level plate.
type vector struct{ east, north, up float64 }

// toward is the unit vector in a direction.
func toward(azimuth, altitude quantity.Angle) vector {
	level := altitude.Cos()
	return vector{level * azimuth.Sin(), level * azimuth.Cos(), altitude.Sin()}
}

func (v vector) times(k float64) vector { return vector{k * v.east, k * v.north, k * v.up} }

func (v vector) plus(w vector) vector {
	return vector{v.east + w.east, v.north + w.north, v.up + w.up}
}

func (v vector) bearing() quantity.Angle { return quantity.Atan2(v.east, v.north).Bearing() }
