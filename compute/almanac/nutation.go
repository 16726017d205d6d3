package almanac

import "math"

// Nutation by the IAU 1980 theory (Wahr; Seidelmann 1982), the terms of Meeus,
// Astronomical Algorithms, 2nd ed. 1998, table 22.A down to 0.0045″: within
// 0.03″ of the IAU 2000A model in longitude, 0.002 s of a transit.

// A frame is the orientation of the true equator and equinox of date.
type frame struct {
	dpsi           float64 // nutation in longitude, radians
	sinEps, cosEps float64 // of the true obliquity of the ecliptic
}

func frameBySeries(m moment) frame {
	dpsi, deps := nutation(m.centuries)
	sin, cos := math.Sincos(meanObliquity(m.centuries) + deps)
	return frame{dpsi, sin, cos}
}

// meanObliquity follows the IAU 2006 precession: Hilton et al. 2006, Celest.
// Mech. Dyn. Astron. 94, 351, equation for ε_A; t in Julian centuries of TT.
func meanObliquity(t float64) float64 {
	return arcsec(84381.406 + t*(-46.836769+t*(-0.0001831+t*0.00200340)))
}

// nutation returns Δψ and Δε in radians.
func nutation(t float64) (dpsi, deps float64) {
	// Delaunay's arguments in degrees, Meeus chapter 22 (IAU 1980).
	d := radians(297.85036 + t*(445267.111480+t*-0.0019142))
	m := radians(357.52772 + t*(35999.050340+t*-0.0001603))
	n := radians(134.96298 + t*(477198.867398+t*0.0086972))
	f := radians(93.27191 + t*(483202.017538+t*-0.0036825))
	node := radians(125.04452 + t*(-1934.136261+t*0.0020708))
	for i := len(nutationTerms) - 1; i >= 0; i-- {
		k := &nutationTerms[i]
		sin, cos := math.Sincos(k.d*d + k.m*m + k.n*n + k.f*f + k.node*node)
		dpsi += (k.s0 + k.s1*t) * sin
		deps += (k.c0 + k.c1*t) * cos
	}
	return arcsec(dpsi / 1e4), arcsec(deps / 1e4)
}

// nutationTerms has the multiples of D, M, M′, F and Ω, then the coefficients
// of the sine for Δψ and of the cosine for Δε with their secular parts, in
// units of 0.0001″.
var nutationTerms = [...]struct{ d, m, n, f, node, s0, s1, c0, c1 float64 }{
	{0, 0, 0, 0, 1, -171996, -174.2, 92025, 8.9},
	{-2, 0, 0, 2, 2, -13187, -1.6, 5736, -3.1},
	{0, 0, 0, 2, 2, -2274, -0.2, 977, -0.5},
	{0, 0, 0, 0, 2, 2062, 0.2, -895, 0.5},
	{0, 1, 0, 0, 0, 1426, -3.4, 54, -0.1},
	{0, 0, 1, 0, 0, 712, 0.1, -7, 0},
	{-2, 1, 0, 2, 2, -517, 1.2, 224, -0.6},
	{0, 0, 0, 2, 1, -386, -0.4, 200, 0},
	{0, 0, 1, 2, 2, -301, 0, 129, -0.1},
	{-2, -1, 0, 2, 2, 217, -0.5, -95, 0.3},
	{-2, 0, 1, 0, 0, -158, 0, 0, 0},
	{-2, 0, 0, 2, 1, 129, 0.1, -70, 0},
	{0, 0, -1, 2, 2, 123, 0, -53, 0},
	{2, 0, 0, 0, 0, 63, 0, 0, 0},
	{0, 0, 1, 0, 1, 63, 0.1, -33, 0},
	{2, 0, -1, 2, 2, -59, 0, 26, 0},
	{0, 0, -1, 0, 1, -58, -0.1, 32, 0},
	{0, 0, 1, 2, 1, -51, 0, 27, 0},
	{-2, 0, 2, 0, 0, 48, 0, 0, 0},
	{0, 0, -2, 2, 1, 46, 0, -24, 0},
}
