package strip

import (
	"math"
	"time"

	"noonbook/compute/quantity"
	"noonbook/compute/world"
)

// A Body is the Sun or something that goes round it.
type Body struct {
	Name     string          // English, lower case: "mercury"
	Orbit    quantity.Length // semi-major axis, zero for the Sun
	Diameter quantity.Length // mean
	Term     int             // place in the Titius–Bode series, Mercury's is 1; zero for the Sun
}

// Bodies returns the Sun, the eight planets, Ceres and Pluto in order from the
// Sun, with what compute/world knows of them. The slice is the caller's own.
func Bodies() []Body {
	bodies := []Body{{Name: "sun", Diameter: world.SunDiameter}}
	for _, w := range world.All() {
		if w.Kind != world.Moon && w.Kind != world.Comet {
			bodies = append(bodies, Body{w.Name, w.Orbit, w.Diameter(), len(bodies)})
		}
	}
	return bodies
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
