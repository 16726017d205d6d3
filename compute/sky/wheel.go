package sky

import (
	"math"
	"time"

	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// A Face names the celestial pole about which a wheel turns.
type Face int

const (
	North Face = iota
	South
)

// Faces returns the faces that show all of the sky at a latitude: one about the
// pole that is up, and both within 20° of the equator, where a single face would
// stretch the far side of the sky beyond recognition.
func Faces(latitude quantity.Angle) []Face {
	switch {
	case math.Abs(latitude.Degrees()) < 20:
		return []Face{North, South}
	case latitude < 0:
		return []Face{South}
	}
	return []Face{North}
}

// A Wheel is a disc of stars with dates on its rim, and a mask above it with hours
// on its rim and a window that is the horizon of one latitude. Both have one
// centre, the celestial pole; the dates run so that a date stands where the mean
// Sun is among the stars, and the hours so that they stand where it is over the
// place.
type Wheel struct {
	Face Face
	Edge quantity.Angle // declination, as on a northern face, of the rim of the star map

	latitude quantity.Angle // as on a northern face
	rim      quantity.Angle // altitude of the window's edge
	sign     float64        // 1 north, −1 south
	sinLat   float64        // of latitude
	cosLat   float64
	sinRim   float64 // of rim
	clocks   Clocks
	place    place.Place
	year     int
}

// A Spot of disc or mask: its angle clockwise from the ray that points down, and how
// far from the centre it lies, 1 at the rim of the star map.
type Spot struct {
	Turn   quantity.Angle
	Radius float64
}

// Rim is the geometric altitude at which stars rise and set: 34′ of refraction, as
// in compute/almanac. Nearer to the equator than that, where both poles would be up,
// a wheel takes the altitude of the poles instead, so that its window is one piece.
const Rim = quantity.Angle(-34.0 / 60 * math.Pi / 180)

// WheelOf returns the wheel of a place for the dates and clocks of a year.
func WheelOf(p place.Place, year int, face Face) Wheel {
	w := Wheel{Face: face, sign: 1, place: p, year: year, clocks: ClocksOf(p, year)}
	if face == South {
		w.sign = -1
	}
	w.latitude = quantity.Angle(w.sign) * p.Latitude
	w.rim = max(Rim, -quantity.Angle(math.Abs(float64(p.Latitude))))
	w.sinLat, w.cosLat, w.sinRim = w.latitude.Sin(), w.latitude.Cos(), w.rim.Sin()
	w.Edge = max(w.latitude-quantity.Turn/4+w.rim, -quantity.Turn/4)
	if len(Faces(p.Latitude)) == 2 {
		w.Edge = quantity.Degrees(-30)
	}
	return w
}

// Disc returns where a direction stands on the disc. ok is false beyond its rim.
func (w Wheel) Disc(d Direction) (Spot, bool) {
	dec := quantity.Angle(w.sign) * d.Declination
	return Spot{quantity.Angle(w.sign) * d.RightAscension, w.radius(dec)}, dec >= w.Edge
}

// radius is equidistant from the pole.
func (w Wheel) radius(dec quantity.Angle) float64 {
	return float64((quantity.Turn/4 - dec) / (quantity.Turn/4 - w.Edge))
}

// The hour from which dates and hours are counted: exact then, and at every other
// hour of the night that began on the date.
const evening = 21 * time.Hour

// siderealHour is how far the sky turns in an hour by the clock: 15° and, as the
// year has one turn more than it has days, 2.46′.
const siderealHour = 15.0410686 // degrees; 360.98564737°/24, IAU 2000 Resolution B1.8

// Date returns where on the rim of the disc a date stands.
func (w Wheel) Date(d place.Date) quantity.Angle {
	t := d.UTC().Add(evening - w.clocks.Standard)
	sidereal := almanac.MeanSiderealTime(t) + w.place.Longitude
	return (quantity.Angle(w.sign) * (sidereal - w.sunAngle())).Bearing()
}

// Hour returns where on the rim of the mask an hour of the standard clock stands,
// counted from the midnight before the evening: 26 h is two in the morning after.
func (w Wheel) Hour(clock time.Duration) quantity.Angle {
	past := quantity.Degrees((clock - evening).Hours() * siderealHour)
	return (-quantity.Angle(w.sign) * (w.sunAngle() + past)).Bearing()
}

// sunAngle is the hour angle of the mean Sun at the evening hour: the standard clock
// less twelve, and four minutes a degree that the place is east of its meridian.
func (w Wheel) sunAngle() quantity.Angle {
	return quantity.Hours((evening-w.clocks.Standard).Hours()-12) + w.place.Longitude
}

// Open returns from what to what radius the sky above the horizon lies on the ray of
// the mask at an angle; none where from is not below to. With A = sin φ and B =
// cos φ cos H, sin h = A sin δ + B cos δ = M sin(δ + ψ), so that δ lies between
// asin(sin h₀/M) − ψ and its supplement.
func (w Wheel) Open(turn quantity.Angle) (from, to float64) {
	a, b := w.sinLat, w.cosLat*turn.Cos()
	m, psi := math.Hypot(a, b), math.Atan2(b, a)
	low, high := -math.Pi/2, math.Pi/2
	if ratio := w.sinRim / max(m, 1e-12); ratio > -1 {
		// The rim is not above the horizon, so the ratio never reaches 1.
		low, high = math.Asin(ratio)-psi, math.Pi-math.Asin(ratio)-psi
		if low > math.Pi/2 {
			low, high = low-2*math.Pi, high-2*math.Pi
		} else if high < -math.Pi/2 {
			low, high = low+2*math.Pi, high+2*math.Pi
		}
	}
	low, high = max(low, w.Edge.Radians()), min(high, math.Pi/2)
	if low >= high {
		return 0, 0
	}
	return w.radius(quantity.Angle(high)), w.radius(quantity.Angle(low))
}

// Horizon returns where on the mask the point of the horizon lies that has the
// azimuth. ok is false where it lies beyond the rim of the star map.
func (w Wheel) Horizon(azimuth quantity.Angle) (s Spot, ok bool) {
	lat := w.place.Latitude
	sin, cos := w.rim.Sin(), w.rim.Cos()
	dec := quantity.Asin(lat.Sin()*sin + lat.Cos()*cos*azimuth.Cos())
	hour := quantity.Atan2(-azimuth.Sin()*cos, sin*lat.Cos()-cos*lat.Sin()*azimuth.Cos())
	dec *= quantity.Angle(w.sign)
	const rounding = 1e-9
	return Spot{(-quantity.Angle(w.sign) * hour).Bearing(), w.radius(dec)}, dec >= w.Edge-rounding
}

// Year returns the dates of the wheel's year.
func (w Wheel) Year() []place.Date {
	var dates []place.Date
	for d := (place.Date{Year: w.year, Month: time.January, Day: 1}); d.Year == w.year; d = d.Add(1) {
		dates = append(dates, d)
	}
	return dates
}

// Clocks returns what the clocks of the wheel's place do in its year.
func (w Wheel) Clocks() Clocks { return w.clocks }
