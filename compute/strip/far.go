package strip

import (
	"math"

	"noonbook/compute/quantity"
	"noonbook/compute/world"
)

// A Far is something beyond the planets, or near home, with its distance.
type Far struct {
	Name     string
	Distance quantity.Length
}

// ToTheMoon is the mean distance of the Moon and MoonDiameter its mean diameter.
const (
	ToTheMoon    = world.ToTheMoon
	MoonDiameter = world.MoonDiameter
)

// LightYear is the way of light in 365.25 days.
const LightYear quantity.Length = speedOfLight * 365.25 * 86400

// NearestStar is the distance of Proxima Centauri, from its parallax of
// 768.0665 mas (Gaia Data Release 3, 2022, source 5853498713190525696): 4.2465 light years,
// good to its last digit.
const NearestStar quantity.Length = quantity.AstronomicalUnit * (180 * 3600 / math.Pi) * 1000 / 768.0665

// Outskirts returns what lies beyond Neptune besides Pluto, outward. The
// heliopause and the star are measured: Voyager 1 crossed the one at 121.6 au
// (E. C. Stone and others, Science 341, 150, 2013). The others are the round
// numbers in use, common practice, no source: nobody has seen the Oort cloud.
func Outskirts() []Far {
	au := func(a float64) quantity.Length { return quantity.Length(a) * quantity.AstronomicalUnit }
	return []Far{
		{"kuiper_belt", au(50)},
		{"heliopause", au(121.6)},
		{"oort_inner", au(2000)},
		{"oort_outer", au(100000)},
		{"nearest_star", NearestStar},
	}
}

// A Craft is something whose speed is known, to say how long a way is.
type Craft struct {
	Name  string
	Speed float64 // m/s
}

// Crafts returns what may be asked for a way: speeds from the Sun in their long
// coasts (Voyager 1 and 2, New Horizons; JPL Horizons and NASA, as of 2024), of the
// fastest of all near the Sun (Parker Solar Probe, December 2024), and of an
// airliner, common practice. They are held for the whole way, which none does.
func Crafts() []Craft {
	return []Craft{
		{"voyager_1", 16900},
		{"voyager_2", 15300},
		{"new_horizons", 13600},
		{"parker", 192000},
		{"airliner", 250},
	}
}

// year is the Julian year in seconds, in which light years are counted.
const year = 365.25 * 86400

// Years returns how long a way takes at a speed in metres a second.
func Years(way quantity.Length, speed float64) float64 { return way.Metres() / speed / year }

// EarthRound is the way once round the Earth, with its mean radius of 6371.0 km
// (of the sphere; the real circumference differs by 0.3 % with the direction).
const EarthRound quantity.Length = 2 * math.Pi * 6371.0e3

// Landing returns where a way over the ground ends that starts at a latitude and
// longitude along a true bearing, on a sphere, which is wrong by 0.5 % of the
// way at most. Longitude is −half a turn to half a turn.
func Landing(latitude, longitude, bearing quantity.Angle, way quantity.Length) (lat, lon quantity.Angle) {
	arc := quantity.Turn * quantity.Angle(way/EarthRound)
	lat = quantity.Asin(latitude.Sin()*arc.Cos() + latitude.Cos()*arc.Sin()*bearing.Cos())
	lon = longitude + quantity.Atan2(bearing.Sin()*arc.Sin()*latitude.Cos(), arc.Cos()-latitude.Sin()*lat.Sin())
	return lat, lon.Signed()
}

// RoundUp returns the smallest round number that is no less than x: 1, 1.5, 2,
// 2.5, 3, 4, 5, 6 or 8 times a power of ten. It returns 0 for what is not a
// positive finite number.
func RoundUp(x float64) float64 {
	if !(x > 0) || math.IsInf(x, 1) {
		return 0
	}
	unit := math.Pow10(int(math.Floor(math.Log10(x))))
	for _, by := range []float64{1, 1.5, 2, 2.5, 3, 4, 5, 6, 8} {
		if by*unit >= x*(1-1e-12) {
			return by * unit
		}
	}
	return 10 * unit
}
