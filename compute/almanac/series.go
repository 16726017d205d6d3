package almanac

import "math"

// A term is one row A·cos(B + C·τ) of a published series.
type term struct{ a, b, c float64 }

type series []term

// An orbit holds a planet's heliocentric place as VSOP87D gives it: mean
// ecliptic and equinox of date, each coordinate a polynomial in τ (thousands
// of Julian years of TT since J2000) whose coefficients are series.
type orbit struct{ longitude, latitude, radius []series }

func (s series) sum(tau float64) float64 {
	var sum float64
	for i := len(s) - 1; i >= 0; i-- { // the small terms first, to lose no digits
		sum += s[i].a * cosine(s[i].b+s[i].c*tau)
	}
	return sum
}

// cosine is cos x to 3e-9 for |x| up to 1e6, two to three times as fast as
// math.Cos: whole turns off, then 1 − 2·sin² of half the rest by the series of the
// sine up to the 13th power. The greatest term of any table here, 6.3° of the
// Moon, is so kept to 0.0001″.
func cosine(x float64) float64 {
	const (
		s1  = math.Pi
		s3  = -s1 * math.Pi * math.Pi / (2 * 3)
		s5  = -s3 * math.Pi * math.Pi / (4 * 5)
		s7  = -s5 * math.Pi * math.Pi / (6 * 7)
		s9  = -s7 * math.Pi * math.Pi / (8 * 9)
		s11 = -s9 * math.Pi * math.Pi / (10 * 11)
		s13 = -s11 * math.Pi * math.Pi / (12 * 13)
	)
	x *= 1 / (2 * math.Pi)
	x -= math.Floor(x + 0.5)
	q := x * x
	s := x * (s1 + q*(s3+q*(s5+q*(s7+q*(s9+q*(s11+q*s13))))))
	return 1 - 2*s*s
}

func polynomial(powers []series, tau float64) float64 {
	var sum float64
	for i := len(powers) - 1; i >= 0; i-- {
		sum = sum*tau + powers[i].sum(tau)
	}
	return sum
}

// at returns heliocentric longitude and latitude in radians and radius in au,
// brought to the FK5 equinox (Meeus, Astronomical Algorithms, 2nd ed. 1998,
// equations 32.3) and from the precession of IAU 1976, which VSOP87D holds, to
// that of IAU 2000: −0.29965″ a century in longitude (Mathews, Herring &
// Buffett 2002, J. Geophys. Res. 107, B4, table 5).
func (o *orbit) at(centuries float64) (lon, lat, r float64) {
	tau := centuries / 10
	lon = polynomial(o.longitude, tau)
	lat = polynomial(o.latitude, tau)
	r = polynomial(o.radius, tau)

	turned := lon - radians(1.397)*centuries - radians(0.00031)*centuries*centuries
	sin, cos := math.Sincos(turned)
	lon += arcsec(-0.09033-0.29965*centuries) + arcsec(0.03916)*(cos+sin)*math.Tan(lat)
	lat += arcsec(0.03916) * (cos - sin)
	return lon, lat, r
}

func radians(degrees float64) float64 { return degrees * (math.Pi / 180) }
func arcsec(seconds float64) float64  { return seconds * (math.Pi / 648000) }

// turn brings an angle into 0 ≤ x < 2π; signed brings it into −π ≤ x < π.
func turn(x float64) float64 {
	x = math.Mod(x, 2*math.Pi)
	if x < 0 {
		x += 2 * math.Pi
	}
	return x
}

func signed(x float64) float64 { return x - 2*math.Pi*math.Floor(x/(2*math.Pi)+0.5) }
