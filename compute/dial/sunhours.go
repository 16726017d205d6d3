package dial

import (
	"math"
	"time"

	"noonbook/compute/quantity"
)

// MaxDeclination is how far from the equator the Sun goes, 23.44°: the
// obliquity of the ecliptic, 23.4393° in 2000 and 0.013° a century less (IAU
// 2006; Meeus eq. 22.2).
const MaxDeclination quantity.Angle = 23.44 * math.Pi / 180

// ShallowLatitude is 15°. Nearer the equator the style of a level dial is too flat
// to cut and set up well (a sixth of its length high at 10°), and the lines crowd
// about noon (4.0° for the first hour, where a pole has 15°). There a polar dial is
// built. The bound is common practice, no source.
const ShallowLatitude quantity.Angle = 15 * math.Pi / 180

// Shallow reports whether the latitude is nearer the equator than
// ShallowLatitude.
func Shallow(latitude quantity.Angle) bool {
	return slope(latitude) < ShallowLatitude.Sin()
}

// NoonSpacing returns the angle between the lines of noon and one o'clock, the
// closest of all: 0° on the equator, 15° at a pole.
func NoonSpacing(latitude quantity.Angle) quantity.Angle {
	return LineAt(latitude, quantity.Hours(1)).Angle
}

// SunUp returns the hour angle at which the Sun's centre crosses the true
// horizon: it is up while its hour angle is within plus or minus that. 180°
// means that it does not set, 0° that it does not rise.
func SunUp(latitude, declination quantity.Angle) quantity.Angle {
	// sin a = sin φ sin δ + cos φ cos δ cos H, Meeus eq. 13.6, at a = 0.
	level := latitude.Sin() * declination.Sin()
	swing := latitude.Cos() * declination.Cos()
	const grazing = 1e-12 // so that a pole at an equinox has its Sun on the horizon all day
	switch {
	case level-swing >= -grazing:
		return quantity.Turn / 2
	case level+swing <= 0:
		return 0
	}
	return quantity.Acos(-level / swing)
}

// SunHours returns the sun times between which the Sun can be up on some day
// of the year, those of the longest day, to the nearest second: 6 h and 18 h on
// the equator, 0 h and 24 h where the midsummer Sun does not set.
func SunHours(latitude quantity.Angle) (from, to time.Duration) {
	longest := MaxDeclination
	if latitude < 0 {
		longest = -longest
	}
	half := sunTime(SunUp(latitude, longest)).Round(time.Second)
	return 12*time.Hour - half, 12*time.Hour + half
}
