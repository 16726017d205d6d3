package almanac

import "math"

// plutoPlace returns Pluto's heliocentric longitude and latitude of the mean
// ecliptic and equinox of date in radians and its radius vector in au. Meeus,
// Astronomical Algorithms, 2nd ed. 1998, chapter 37, fitted to DE200 from 1885
// to 2099; t in Julian centuries of TT.
func plutoPlace(t float64) (lon, lat, r float64) {
	j := radians(34.35 + 3034.9057*t)
	s := radians(50.08 + 1222.1138*t)
	p := radians(238.96 + 144.9600*t)
	lon, lat, r = 238.958116+144.96*t, -3.908239, 40.7241346
	for i := range plutoSeries {
		k := &plutoSeries[i]
		sin, cos := math.Sincos(k.j*j + k.s*s + k.p*p)
		lon += k.lonSin*sin + k.lonCos*cos
		lat += k.latSin*sin + k.latCos*cos
		r += k.rSin*sin + k.rCos*cos
	}
	lon, lat = toEclipticOfDate(radians(lon), radians(lat), t)
	return lon, lat, r
}

// toEclipticOfDate carries ecliptic coordinates of J2000 over to the mean
// ecliptic and equinox of date: Meeus chapter 21, equations 21.5 to 21.7 (IAU
// 1976) for the start J2000, with the precession rate of IAU 2000.
func toEclipticOfDate(lon, lat, t float64) (float64, float64) {
	eta := arcsec(t * (47.0029 + t*(-0.03302+t*0.000060)))
	node := radians(174.876384) + arcsec(t*(-869.8089+t*0.03536))
	p := arcsec(t * (5029.0966 - 0.29965 + t*(1.11113-t*0.000006)))
	sinEta, cosEta := math.Sincos(eta)
	sinArc, cosArc := math.Sincos(node - lon)
	sinLat, cosLat := math.Sincos(lat)
	a := cosEta*cosLat*sinArc - sinEta*sinLat
	b := cosLat * cosArc
	c := cosEta*sinLat + sinEta*cosLat*sinArc
	return p + node - math.Atan2(a, b), math.Asin(max(-1, min(1, c)))
}
