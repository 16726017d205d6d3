package rocket

import (
	"fmt"
	"math"

	"noonbook/compute/quantity"
)

// Air is what the rocket flies through: its density, and the steady level wind,
// positive where it blows along the rocket's way (a tail wind) and to its right.
type Air struct {
	Density       Density
	Along, Across Speed
}

// The standard atmosphere below 11 km: ISO 2533:1975, tables 1 and 2; U.S.
// Standard Atmosphere 1976, section 1.2.
const (
	seaPressure    = 101325.0  // Pa
	seaTemperature = 288.15    // K
	lapse          = 0.0065    // K/m, falling with height
	gasConstant    = 287.05287 // J/(kg·K), of dry air
	kelvin         = 273.15    // 0 °C
)

// Still returns still air at a height above sea level. The pressure is that of
// the standard atmosphere at the height, the temperature the given one: warm air
// is thinner. Damp air is up to 1 % lighter than this, and the weather's pressure
// moves it by 3 %. It fails outside −500 m to 11 km and −60 °C to 60 °C.
func Still(height quantity.Length, celsius float64) (Air, error) {
	h := height.Metres()
	if !(h >= -500 && h <= 11000) {
		return Air{}, fmt.Errorf("height of %g m is outside −500 m to 11 000 m", h)
	}
	if !(celsius >= -60 && celsius <= 60) {
		return Air{}, fmt.Errorf("air of %g °C is outside −60 °C to 60 °C", celsius)
	}
	return Air{Density: Density(pressure(h) / (gasConstant * (celsius + kelvin)))}, nil
}

// pressure is in Pa. Heights are taken as geopotential, 0.1 % too high at 6 km.
func pressure(h float64) float64 {
	return seaPressure * math.Pow(1-lapse*h/seaTemperature, Gravity/(gasConstant*lapse))
}
