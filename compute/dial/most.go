package dial

import (
	"math"
	"time"

	"noonbook/compute/quantity"
)

// A Laid dial shows some time, right or wrong, as Dial.Off says.
type Laid interface {
	Off(latitude, declination, hourAngle quantity.Angle) (fast time.Duration, ok bool)
}

// The search of MostOff: degrees of declination, about, and quarter hours.
const (
	mostSteps    = 24 // of declination, to either side of the equator
	mostQuarters = 48 // to either side of noon
)

// MostOff searches the year and the day, by degrees of declination and quarter hours, for
// the largest error of a dial while the Sun stands 10° high. ok is false where it never
// stands so high, or throws no shadow then.
func MostOff(d Laid, latitude quantity.Angle) (most time.Duration, ok bool) {
	if turned, is := d.(Dial); is && turned.Tilt == (Tilt{}) {
		if most, ok = turned.mostOffQuickly(latitude); ok {
			return most, ok
		}
	}
	eachHigh(latitude, func(declination, hour quantity.Angle, _, _ float64) {
		if off, falls := d.Off(latitude, declination, hour); falls && off.Abs() > most.Abs() {
			most, ok = off, true
		}
	})
	return most, ok
}

// eachHigh walks the places of the Sun that are 10° high or more, with the sine and the
// cosine of the declination.
func eachHigh(latitude quantity.Angle, do func(declination, hour quantity.Angle, sinDec, cosDec float64)) {
	const hair = 1e-9 // of the sine, within which only the angle itself decides
	lowest := quantity.Degrees(10)
	sinLat, cosLat, sinLow := latitude.Sin(), latitude.Cos(), lowest.Sin()
	for i := -mostSteps; i <= mostSteps; i++ {
		declination := MaxDeclination * quantity.Angle(i) / mostSteps
		sinDec, cosDec := declination.Sin(), declination.Cos()
		for quarter := -mostQuarters; quarter <= mostQuarters; quarter++ {
			hour := quantity.Hours(float64(quarter) / 4)
			above := sinDec*sinLat + cosDec*cosLat*hour.Cos() - sinLow // as a sine; Meeus equation 13.6
			if above < -hair {
				continue
			}
			if above < hair {
				if _, altitude := SunDirection(latitude, declination, hour); altitude < lowest {
					continue
				}
			}
			do(declination, hour, sinDec, cosDec)
		}
	}
}

// mostOffQuickly is MostOff by two walks: one finds about how large the error is, from
// vectors alone, where Off goes by angles to and fro; the other asks Off where it is as
// large. ok is false where that finds nothing.
func (d Dial) mostOffQuickly(latitude quantity.Angle) (most time.Duration, ok bool) {
	const apart = 1e-9 // radians, far above the rounding of both
	sinLat, cosLat := latitude.Sin(), latitude.Cos()
	edge, steep := toward(d.Style.Azimuth, d.Style.Elevation), slope(d.Drawn)
	sinNoon, cosNoon := d.NoonLine.Sin(), d.NoonLine.Cos()
	side := 1.0
	if d.Drawn < 0 { // hours run anticlockwise
		side = -1
	}
	type spot struct {
		declination, hour quantity.Angle
		off               float64
	}
	var spots []spot
	largest := 0.0
	eachHigh(latitude, func(declination, hour quantity.Angle, sinDec, cosDec float64) {
		sinHour, cosHour := math.Sincos(hour.Radians())
		sun := vector{-cosDec * sinHour, sinDec*cosLat - cosDec*cosHour*sinLat, sinDec*sinLat + cosDec*cosHour*cosLat}
		foot := edge.times(sun.up).plus(sun.times(-edge.up)) // as in Style.Shadow
		shown := quantity.Atan2(side*(foot.east*cosNoon-foot.north*sinNoon), steep*(foot.north*cosNoon+foot.east*sinNoon))
		off := math.Abs((shown - hour).Signed().Radians())
		if off > largest+apart {
			spots = spots[:0]
		}
		if off >= largest-apart {
			spots = append(spots, spot{declination, hour, off})
			largest = max(largest, off)
		}
	})
	for _, s := range spots {
		if s.off < largest-apart {
			continue
		}
		if off, falls := d.Off(latitude, s.declination, s.hour); falls && off.Abs() > most.Abs() {
			most, ok = off, true
		}
	}
	return most, ok
}
