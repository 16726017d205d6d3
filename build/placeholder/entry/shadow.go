package entry

import (
	"time"

	"noonbook/build/say"
	"noonbook/compute/almanac"
	"noonbook/compute/dial"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// A Shadow is that of an upright point on level ground.
type Shadow struct {
	Bearing, Altitude quantity.Angle
	Length            quantity.Length
}

// ShadowAt follows the Sun as seen, lifted by refraction. ok is false when no
// shadow falls.
func ShadowAt(p place.Place, t time.Time, height quantity.Length) (Shadow, bool) {
	sun := almanac.SunFrom(p, t)
	altitude := sun.Altitude + almanac.Refraction(sun.Altitude)
	bearing, length, ok := dial.Shadow(height, sun.Azimuth, altitude)
	return Shadow{bearing, altitude, length}, ok
}

// LengthValue prints lengths that no playground holds as words.
func (s Shadow) LengthValue(height quantity.Length) say.Value {
	v := say.Number(s.Length.Millimetres(), "mm", 0)
	if s.Length > 50*height {
		return v.As("dial-day.very_long")
	}
	return v
}
