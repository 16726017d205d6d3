package almanac

import (
	"math"
	"time"
)

// Constants of eclipses.
const (
	earthRadius     = 6378.137                  // km, equatorial, WGS 84
	polarScale      = 1 / (1 - 1/298.257223563) // makes the ellipsoid a sphere
	sunLimb         = 696000.0                  // km: 959.63″ at 1 au (Auwers 1891), as eclipse canons take it
	moonPenumbra    = 0.2725076 * earthRadius   // km, mean limb, IAU 1982
	moonUmbra       = 0.272281 * earthRadius    // km, valleys of the limb: Espenak & Meeus, NASA/TP-2006-214141, section 1.4
	eclipseHalfSpan = 4 * time.Hour             // holds every contact on either side of greatest eclipse
)

// A shadow has the tracks of Sun and Moon round an eclipse, eight hours long,
// on one clock of days from its beginning.
type shadow struct {
	from      time.Time
	sun, moon track
}

func shadowOf(middle time.Time) shadow {
	from, to := middle.Add(-eclipseHalfSpan), middle.Add(eclipseHalfSpan)
	return shadow{from, trackBySeries(Sun, from, to), trackBySeries(Moon, from, to)}
}

func (s *shadow) span() float64 { return s.moon.span }

func (s *shadow) at(day float64) time.Time {
	return s.from.Add(time.Duration(day * float64(24*time.Hour)).Round(time.Millisecond))
}

// syzygies calls found with the moment of every new Moon (or full Moon) that
// may touch a year: those of the year and a day on either side.
func syzygies(year int, p Phase, found func(time.Time)) {
	begin := momentOf(time.Date(year, 1, 1, 0, 0, 0, 0, time.UTC)).centuries
	first := int(math.Floor(meanElongation(begin)/(2*math.Pi)))*4 + int(p)
	for q := first - 4; q <= first+4*14; q += 4 {
		t := phase(q)
		// Meeus, Astronomical Algorithms, 2nd ed. 1998, chapter 54: no eclipse
		// happens where |sin F| > 0.36, that is 1.85° from the ecliptic.
		if _, lat, _ := moonPlace(moment{centuries: t}); math.Abs(lat) < radians(1.85) {
			found(timeOf(t))
		}
	}
}
