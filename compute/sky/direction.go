package sky

import (
	"math"
	"time"

	"noonbook/compute/almanac"
	"noonbook/compute/quantity"
)

// A Direction is a place in the sky of the mean equator and equinox of date.
type Direction struct {
	RightAscension quantity.Angle
	Declination    quantity.Angle // north positive
}

// At returns the star's mean place of date: proper motion along a straight line
// (no star of the table comes near enough to make the difference of 1″), then
// precession. It is within 40″ of the apparent place, which nutation and
// aberration shift.
func (s Star) At(t time.Time) Direction {
	c := centuries(t)
	return directionOf(precession(c).turn(s.place.plus(s.motion.times(100 * c))))
}

// centuries returns Julian centuries of TT since J2000, held within ten of them so
// that no time gives a number without meaning.
func centuries(t time.Time) float64 {
	const j2000 = 946728000 // 2000-01-01 12:00, Unix seconds
	days := (float64(t.Unix()-j2000) + almanac.DeltaT(t).Seconds()) / 86400
	return max(-10, min(10, days/36525))
}

// precession returns the rotation from J2000 to the mean equator and equinox of
// date, t centuries later: Capitaine, Wallace & Chapront 2003, Astron. Astrophys.
// 412, 567, equation 40 (IAU 2006), R3(−z) R2(θ) R3(−ζ). The tilt of the ICRS
// against J2000, 0.02″, is left out.
func precession(t float64) rotation {
	zeta := arcsec(2.650545 + t*(2306.083227+t*(0.2988499+t*0.01801828)))
	z := arcsec(-2.650545 + t*(2306.077181+t*(1.0927348+t*0.01826837)))
	theta := arcsec(t * (2004.191903 + t*(-0.4294934-t*0.04182264)))
	return about3(-z).after(about2(theta)).after(about3(-zeta))
}

// obliquity returns the mean obliquity of the ecliptic: Hilton et al. 2006, Celest.
// Mech. Dyn. Astron. 94, 351, ε_A of the IAU 2006 precession.
func obliquity(t float64) float64 {
	return arcsec(84381.406 + t*(-46.836769+t*(-0.0001831+t*0.00200340)))
}

// Equator returns the celestial equator as points, once round in steps of two
// degrees; the last is the first.
func Equator() []Direction { return greatCircle(0) }

// Ecliptic returns the mean ecliptic of date, the road of Sun, Moon and planets, in
// the same way.
func Ecliptic(t time.Time) []Direction { return greatCircle(obliquity(centuries(t))) }

// greatCircle climbs from the vernal equinox at a tilt to the equator.
func greatCircle(tilt float64) []Direction {
	const steps = 180
	points := make([]Direction, 0, steps+1)
	sinTilt, cosTilt := math.Sincos(tilt)
	for i := range steps + 1 {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / steps)
		points = append(points, directionOf(vector{cos, sin * cosTilt, sin * sinTilt}))
	}
	return points
}

func arcsec(s float64) float64 { return s / 3600 * math.Pi / 180 }

// A vector has right-handed rectangular coordinates.
type vector struct{ x, y, z float64 }

func (d Direction) vector() vector {
	cos := d.Declination.Cos()
	return vector{cos * d.RightAscension.Cos(), cos * d.RightAscension.Sin(), d.Declination.Sin()}
}

func directionOf(v vector) Direction {
	return Direction{quantity.Atan2(v.y, v.x).Bearing(), quantity.Atan2(v.z, math.Hypot(v.x, v.y))}
}

func (v vector) plus(w vector) vector   { return vector{v.x + w.x, v.y + w.y, v.z + w.z} }
func (v vector) times(s float64) vector { return vector{s * v.x, s * v.y, s * v.z} }
func (v vector) dot(w vector) float64   { return v.x*w.x + v.y*w.y + v.z*w.z }

// A rotation is a matrix by its rows.
type rotation [3]vector

func (r rotation) turn(v vector) vector { return vector{r[0].dot(v), r[1].dot(v), r[2].dot(v)} }

// after returns the rotation that turns by s first and by r then.
func (r rotation) after(s rotation) rotation {
	var product rotation
	for i, row := range r {
		product[i] = s[0].times(row.x).plus(s[1].times(row.y)).plus(s[2].times(row.z))
	}
	return product
}

// about3 and about2 turn the axes by an angle about the third and second axis.
func about3(a float64) rotation {
	sin, cos := math.Sincos(a)
	return rotation{{cos, sin, 0}, {-sin, cos, 0}, {0, 0, 1}}
}

func about2(a float64) rotation {
	sin, cos := math.Sincos(a)
	return rotation{{cos, 0, -sin}, {0, 1, 0}, {sin, 0, cos}}
}
