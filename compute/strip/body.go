package strip

import (
	"math"
	"time"

	"noonbook/compute/quantity"
)

// A Body is the Sun or something that goes round it.
type Body struct {
	Name     string          // English, lower case: "mercury"
	Orbit    quantity.Length // semi-major axis, zero for the Sun
	Diameter quantity.Length // mean
	Term     int             // place in the Titius–Bode series, Mercury's is 1; zero for the Sun
}

// Bodies returns the Sun, the eight planets, Ceres and Pluto in order from the
// Sun. The slice is the caller's own. Sources are in the package comment.
func Bodies() []Body {
	au := func(a float64) quantity.Length { return quantity.Length(a) * quantity.AstronomicalUnit }
	km := quantity.Kilometres
	return []Body{
		{"sun", 0, km(2 * 695700), 0},
		{"mercury", au(0.38710), km(4879), 1},
		{"venus", au(0.72334), km(12104), 2},
		{"earth", au(1.00000), km(12742), 3},
		{"mars", au(1.52371), km(6779), 4},
		{"ceres", au(2.77), km(939), 5},
		{"jupiter", au(5.20289), km(139822), 6},
		{"saturn", au(9.53668), km(116464), 7},
		{"uranus", au(19.18916), km(50724), 8},
		{"neptune", au(30.06992), km(49244), 9},
		{"pluto", au(39.48212), km(2376), 10},
	}
}

// AU returns the semi-major axis in astronomical units.
func (b Body) AU() float64 { return float64(b.Orbit / quantity.AstronomicalUnit) }

// Bode returns the distance that the Titius–Bode rule gives the body, and false
// for the Sun, which has none.
func (b Body) Bode() (quantity.Length, bool) {
	if b.Term < 1 {
		return 0, false
	}
	return TitiusBode(b.Term), true
}

// BodeExcess returns how far the rule's distance is from the measured one, in
// per cent of the measured one, positive when the rule puts the body too far
// out. It is false for the Sun.
func (b Body) BodeExcess() (percent float64, ok bool) {
	rule, ok := b.Bode()
	if !ok {
		return 0, false
	}
	return 100 * float64(rule/b.Orbit-1), true
}

// TitiusBode returns the n-th distance of the rule, n from 1: 0.4 au, then
// 0.4 + 0.3·2^(n−2) au: 0.7, 1.0, 1.6, 2.8 and so on. The first term is special;
// the doubling would make it 0.55.
func TitiusBode(n int) quantity.Length {
	if n <= 1 {
		return 0.4 * quantity.AstronomicalUnit
	}
	return quantity.Length(0.4+math.Ldexp(0.3, n-2)) * quantity.AstronomicalUnit
}

// speedOfLight is in metres a second, exactly: the SI's definition of the metre.
const speedOfLight = 299792458

// LightTime returns how long light takes for a distance, to the nanosecond. It
// holds up to 292 light years, as far as a time.Duration reaches.
func LightTime(distance quantity.Length) time.Duration {
	return time.Duration(math.Round(distance.Metres() / speedOfLight * float64(time.Second)))
}
