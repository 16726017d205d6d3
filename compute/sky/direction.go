package sky

import (
	"math"
	"time"

	"noonbook/compute/almanac"
	"noonbook/compute/quantity"
	"noonbook/compute/space"
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
func (s Star) At(t time.Time) Direction { return At(t)(s) }

// At returns what Star.At returns for any star at one moment, quicker for many.
func At(t time.Time) func(Star) Direction {
	c := centuries(t)
	ofDate := precession(c)
	return func(s Star) Direction { return directionOf(ofDate.turn(s.place.Plus(s.motion.Times(100 * c)))) }
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
		points = append(points, directionOf(space.Vector{X: cos, Y: sin * cosTilt, Z: sin * sinTilt}))
	}
	return points
}

func arcsec(s float64) float64 { return s / 3600 * math.Pi / 180 }

func (d Direction) vector() space.Vector { return space.At(d.RightAscension, d.Declination, 1) }

func directionOf(v space.Vector) Direction {
	ra, dec, _ := v.Spherical()
	return Direction{ra.Bearing(), dec}
}

// A rotation is a matrix by its rows.
type rotation [3]space.Vector

func (r rotation) turn(v space.Vector) space.Vector {
	return space.Vector{X: r[0].Dot(v), Y: r[1].Dot(v), Z: r[2].Dot(v)}
}

// after returns the rotation that turns by s first and by r then.
func (r rotation) after(s rotation) rotation {
	var product rotation
	for i, row := range r {
		product[i] = s[0].Times(row.X).Plus(s[1].Times(row.Y)).Plus(s[2].Times(row.Z))
	}
	return product
}

// about3 and about2 turn the axes by an angle about the third and second axis.
func about3(a float64) rotation {
	sin, cos := math.Sincos(a)
	return rotation{{X: cos, Y: sin}, {X: -sin, Y: cos}, {Z: 1}}
}

func about2(a float64) rotation {
	sin, cos := math.Sincos(a)
	return rotation{{X: cos, Z: -sin}, {Y: 1}, {X: sin, Z: cos}}
}
