package rocket

// A Speed is in metres a second.
type Speed float64

// MetresASecond returns the speed in metres a second.
func (v Speed) MetresASecond() float64 { return float64(v) }

// A Mass is in kilograms.
type Mass float64

// Grams returns the mass of that many grams.
func Grams(g float64) Mass { return Mass(g / 1000) }

// Grams returns the mass in grams.
func (m Mass) Grams() float64 { return float64(m) * 1000 }

// A Density is in kilograms a cubic metre.
type Density float64

// KilogramsACubicMetre returns the density in that unit.
func (d Density) KilogramsACubicMetre() float64 { return float64(d) }

// Gravity is the standard acceleration of free fall in m/s²: 3rd CGPM (1901).
const Gravity = 9.80665

// MaxSpeed is where the package's range ends: 0.3 of the speed of sound.
const MaxSpeed Speed = 100
