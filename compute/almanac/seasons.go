package almanac

import (
	"math"
	"time"
)

// A Season names the moment that begins one, by its month, since the seasons
// themselves are opposite in the two hemispheres.
type Season int

// The beginnings of the seasons, in their order.
const (
	MarchEquinox Season = iota
	JuneSolstice
	SeptemberEquinox
	DecemberSolstice
)

// String returns "March equinox" and so on.
func (s Season) String() string {
	return [...]string{"March equinox", "June solstice", "September equinox", "December solstice"}[max(0, min(3, s))]
}

// Seasons returns the two equinoxes and two solstices of the year, UTC, indexed
// by Season: the moments when the Sun's apparent geocentric longitude is 0°,
// 90°, 180° and 270°. They are good to 10 s, in which the Sun moves 0.4″.
// The error is a *RangeError.
func Seasons(year int) ([4]time.Time, error) {
	if err := coversYear(year); err != nil {
		return [4]time.Time{}, err
	}
	return *seasonYears.of(year, seasonsOf), nil
}

func seasonsOf(year int) (moments [4]time.Time) {
	for i := range moments {
		// 20 March, 20 June, 22 September and 21 December within two days.
		start := time.Date(year, time.Month(3+3*i), 21, 0, 0, 0, 0, time.UTC)
		moments[i] = timeOf(sunReaches(float64(i)*math.Pi/2, momentOf(start).centuries))
	}
	return moments
}

// sunReaches returns the moment near t at which the Sun's apparent longitude
// is the given one.
func sunReaches(longitude, t float64) float64 {
	const rate = 628.3319667 // mean motion in radians a century, within 3.4 % of the true
	for range 20 {
		m := moment{centuries: t}
		lon, _, _ := sunLongitude(m)
		dpsi, _ := nutation(t)
		off := signed(lon + dpsi - longitude)
		t -= off / rate
		if math.Abs(off) < 1e-9 { // 0.005 s
			break
		}
	}
	return t
}
