package world

import (
	"math"
	"time"

	"noonbook/compute/quantity"
)

// A Kind sorts the worlds as a class does.
type Kind string

// The kinds. Ceres and Pluto are dwarf planets after IAU 2006 Resolution B5.
const (
	Rocky Kind = "rocky"
	Giant Kind = "giant"
	Dwarf Kind = "dwarf"
	Moon  Kind = "moon"
	Comet Kind = "comet"
)

// A World is what has been measured of a planet or another body that goes round
// the Sun. The Moon goes with the Earth and has its distance from the Sun and
// its year.
type World struct {
	Name       string // English, lower case: "mercury"; the comet is "comet", 67P
	Kind       Kind
	Orbit      quantity.Length // semi-major axis of the way round the Sun
	Year       time.Duration   // once round the Sun among the stars
	Radius     quantity.Length // mean: of the sphere with the same volume
	Equatorial quantity.Length // radius at the equator; of the giants, where the air presses as at our sea level
	GM         float64         // gravitational parameter without moons, km³/s²
	Turn       time.Duration   // once round its axis among the stars
	Tilt       quantity.Angle  // of the axis to that of the orbit; beyond 90° it turns backwards
	Moons      int             // known on MoonsAsOf
	Coldest    float64         // kelvin: see the doc of each in the table
	Warmest    float64         // kelvin
	Mean       float64         // kelvin; zero where a mean has no meaning
}

// Ground reports whether there is anything to stand on.
func (w World) Ground() bool { return w.Kind != Giant }

// Diameter is twice the mean radius.
func (w World) Diameter() quantity.Length { return 2 * w.Radius }

// gravitational is Newton's constant, 6.67430e−11 m³/(kg s²), known to 22 parts
// in a million: CODATA 2018.
const gravitational = 6.67430e-11

// Mass returns the mass in kilograms, GM over Newton's constant.
func (w World) Mass() float64 { return w.GM * 1e9 / gravitational }

// Density returns the mean density in kilograms a cubic metre.
func (w World) Density() float64 {
	r := w.Radius.Metres()
	return w.Mass() / (4 * math.Pi / 3 * r * r * r)
}

// Gravity returns the pull at the equator in m/s², GM over the square of the
// equatorial radius: what the fact sheets print. It leaves out how the body's
// bulge changes it, and the spin, which takes a sixth of it off a scale at
// Saturn's equator and less than a hundredth on the rocky worlds.
func (w World) Gravity() float64 {
	r := w.Equatorial.Metres()
	return w.GM * 1e9 / (r * r)
}

// Escape returns the speed in m/s with which a thing at the equator's surface
// never falls back, air and spin left out: √(2 GM/r).
func (w World) Escape() float64 { return math.Sqrt(2 * w.GM * 1e9 / w.Equatorial.Metres()) }

// Backwards reports whether the world turns against its way round the Sun.
func (w World) Backwards() bool { return w.Tilt > quantity.Turn/4 }

// SolarDay returns how long it is on the mean from one noon to the next: the
// turns among the stars less, or for a world that turns backwards plus, the one
// turn a year that the way round the Sun undoes.
func (w World) SolarDay() time.Duration {
	turns, years := 1/w.Turn.Seconds(), 1/w.Year.Seconds()
	if w.Backwards() {
		years = -years
	}
	return time.Duration(float64(time.Second) / math.Abs(turns-years))
}

// Find returns the world of that name.
func Find(name string) (World, bool) {
	for i := range table {
		if table[i].Name == name {
			return table[i], true
		}
	}
	return World{}, false
}

// Names returns the names of the worlds in the order of All.
func Names() []string {
	var names []string
	for _, w := range All() {
		names = append(names, w.Name)
	}
	return names
}
