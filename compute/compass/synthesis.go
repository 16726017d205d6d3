package compass

import (
	"math"

	"noonbook/compute/quantity"
)

// The figure of the Earth, in km: WGS 84 (NIMA TR8350.2, third edition, table
// 3.1) and the geomagnetic reference radius of the WMM.
const (
	equatorialRadius = 6378.137
	flattening       = 1 / 298.257223563
	referenceRadius  = 6371.2
)

// vector returns the field in nT in the geodetic frame, the given number of
// years after the epoch.
func (model *gaussModel) vector(latitude, longitude quantity.Angle, elevation quantity.Length, years float64) (north, east, down float64) {
	radius, sinLat, cosLat := geocentric(latitude, elevation.Kilometres())
	x, y, z := model.geocentricVector(radius, sinLat, cosLat, longitude.Radians(), years)

	// Turn by ψ = geocentric − geodetic latitude about the east axis.
	sinPsi := sinLat*latitude.Cos() - cosLat*latitude.Sin()
	cosPsi := cosLat*latitude.Cos() + sinLat*latitude.Sin()
	return x*cosPsi - z*sinPsi, y, x*sinPsi + z*cosPsi
}

// geocentric returns the distance from the Earth's centre in km and the
// geocentric latitude of a point height km above the ellipsoid.
func geocentric(latitude quantity.Angle, height float64) (radius, sinLat, cosLat float64) {
	const e2 = flattening * (2 - flattening)
	sin, cos := latitude.Sin(), latitude.Cos()
	prime := equatorialRadius / math.Sqrt(1-e2*sin*sin) // radius in the prime vertical
	p := (prime + height) * cos
	z := (prime*(1-e2) + height) * sin
	radius = math.Hypot(p, z)
	return radius, z / radius, p / radius
}

// geocentricVector sums minus the gradient of the potential, towards geocentric
// north, east and down.
func (model *gaussModel) geocentricVector(radius, sinLat, cosLat, lon, years float64) (x, y, z float64) {
	// Colatitude θ: cos θ is the sine of the latitude, and the other way round.
	cosTheta, sinTheta := sinLat, cosLat
	q := legendre(cosTheta, sinTheta)
	shrink := (referenceRadius / radius) * (referenceRadius / radius)
	for n := 1; n <= degree; n++ {
		shrink *= referenceRadius / radius
		for m := 0; m <= n; m++ {
			c := model[n][m]
			g, h := c.g+years*c.dg, c.h+years*c.dh
			sin, cos := math.Sincos(float64(m) * lon)
			along, across := g*cos+h*sin, g*sin-h*cos
			p, slope := q.value(n, m, sinTheta), q.slope(n, m, cosTheta, sinTheta)
			x += shrink * along * slope
			z -= shrink * float64(n+1) * along * p
			if m > 0 {
				y += shrink * float64(m) * across * q[n][m]
			}
		}
	}
	return x, y, z
}

// A legendreTable holds the Schmidt semi-normalised functions by degree and
// order: P for order 0, P/sin θ for the others. So the east component, which
// divides by sin θ, needs no division and holds at the poles as elsewhere.
type legendreTable [degree + 1][degree + 1]float64

// legendre fills the table by the usual recursion in the degree:
//
//	√(n²−m²) P(n, m) = (2n−1) cos θ P(n−1, m) − √((n−1)²−m²) P(n−2, m)
//	P(m, m) = √((2m−1)/2m) sin θ P(m−1, m−1) for m > 1; P(1, 1) = sin θ; P(0, 0) = 1
func legendre(cosTheta, sinTheta float64) (q legendreTable) {
	q[0][0], q[1][1] = 1, 1
	for m := 2; m <= degree; m++ {
		q[m][m] = math.Sqrt(float64(2*m-1)/float64(2*m)) * sinTheta * q[m-1][m-1]
	}
	for m := 0; m <= degree; m++ {
		for n := m + 1; n <= degree; n++ {
			sum := float64(2*n-1) * cosTheta * q[n-1][m]
			if n > m+1 {
				sum -= math.Sqrt(float64((n-1)*(n-1)-m*m)) * q[n-2][m]
			}
			q[n][m] = sum / math.Sqrt(float64(n*n-m*m))
		}
	}
	return q
}

// value returns P(n, m; cos θ).
func (q *legendreTable) value(n, m int, sinTheta float64) float64 {
	if m == 0 {
		return q[n][0]
	}
	return q[n][m] * sinTheta
}

// slope returns dP(n, m; cos θ)/dθ:
//
//	−√(n(n+1)/2) P(n, 1)                          for order 0
//	[n cos θ P(n, m) − √(n²−m²) P(n−1, m)]/sin θ  for the others
func (q *legendreTable) slope(n, m int, cosTheta, sinTheta float64) float64 {
	if m == 0 {
		return -math.Sqrt(float64(n*(n+1))/2) * sinTheta * q[n][1]
	}
	return float64(n)*cosTheta*q[n][m] - math.Sqrt(float64(n*n-m*m))*q[n-1][m]
}
