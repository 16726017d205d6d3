package almanac

import (
	"math"
	"time"

	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// MoonAt returns the Moon's apparent geocentric place of date, good to 3″ and
// 15 km.
func MoonAt(t time.Time) Apparent { return Moon.At(t) }

// MoonFrom returns where the Moon's centre stands from p at t, parallax
// included, good to 0.001° but for UTC − UT1 (see SunFrom).
func MoonFrom(p place.Place, t time.Time) Horizontal { return Moon.From(p, t) }

// MoonDay returns the Moon's rises, transits and sets on the date d at p: its
// upper limb, topocentric, 34′ below the horizon for refraction. About once in
// a month a day goes without a rise, another without a set.
func MoonDay(p place.Place, d place.Date) Day { return Moon.Day(p, d) }

// moonRadius is the Moon's mean radius in km, IAU Working Group on Cartographic
// Coordinates 2015 (Archinal et al. 2018), table 5.
const moonRadius = 1737.4

// MoonMeanDistance is the Moon's mean distance, the semi-major axis of its way round
// the Earth in the lunar theory of M. Chapront-Touzé and J. Chapront; NASA's Moon Fact
// Sheet rounds it to 384 400 km.
const MoonMeanDistance quantity.Length = 384399e3

// A wave is one row A·sin(p0 + p1·t + p2·t²), t in Julian centuries of TT.
type wave struct{ a, p0, p1, p2 float64 }

// A lunar theory has polynomials in t whose coefficients are sums of waves:
// longitude (less the mean longitude) and latitude in ″, distance in km.
type lunar struct{ longitude, latitude, distance [][]wave }

// moonLag is the light time of MoonMeanDistance, 1.2822 s, in Julian centuries. What
// the distance adds to it moves the Moon by 0.05″.
const moonLag = 1.2822 / 86400 / 36525

// moonPlace returns the Moon's geocentric longitude and latitude with light
// time, mean ecliptic and equinox of date, radians, and its distance in au.
func moonPlace(m moment) (lon, lat, r float64) {
	t := m.centuries - moonLag
	return moonLongitude(m), arcsec(swell(moonSeries.latitude, t)), swell(moonSeries.distance, t) / kilometresPerAU
}

// moonLongitude adds to the series the mean longitude W1 (Chapront & Francou
// 2003, as fitted to DE405) and the general precession p_A of Laskar 1986 with
// the IAU 2000 rate, from the inertial equinox to that of date.
func moonLongitude(m moment) float64 {
	t := m.centuries - moonLag
	mean := 3.81034409083088 + t*(8399.68473007193+t*(-3.31895204255e-5+t*3.11024944911e-8))
	precession := t * (5029.0966 - 0.29965 + t*(1.1120+t*0.000077))
	return mean + arcsec(swell(moonSeries.longitude, t)+precession)
}

func swell(powers [][]wave, t float64) float64 {
	var all float64
	for k := len(powers) - 1; k >= 0; k-- {
		var sum float64
		waves := powers[k]
		for i := len(waves) - 1; i >= 0; i-- {
			w := &waves[i]
			sum += w.a * cosine(w.p0-math.Pi/2+t*(w.p1+t*w.p2))
		}
		all = all*t + sum
	}
	return all
}
