package almanac

import "noonbook/compute/quantity"

// Refraction returns by how much ordinary air (1010 hPa, 10 °C) lifts a body
// that stands at the given geometric altitude, so altitude + Refraction is
// where it is seen. Sæmundsson 1986, in Meeus, Astronomical Algorithms, 2nd ed.
// 1998, equation 16.4, with the term that makes it vanish at the zenith; good
// to 0.1′ above 15°, but at the horizon weather changes it by several minutes
// of arc. It says 29′ at geometric altitude 0° and 34′ where the body is seen
// on the horizon. Below −1° nothing is seen; there it fades in proportion to
// the height above the nadir, so that curves through the horizon have no step.
func Refraction(altitude quantity.Angle) quantity.Angle {
	h := altitude.Degrees()
	if h < -1 {
		return Refraction(quantity.Degrees(-1)) * quantity.Angle(max(0, 90+h)/89)
	}
	minutes := 1.02/quantity.Degrees(h+10.3/(h+5.11)).Tan() + 0.0019279
	return quantity.Degrees(minutes / 60)
}
