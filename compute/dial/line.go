package dial

import (
	"fmt"
	"math"
	"time"

	"noonbook/compute/quantity"
)

// An HourLine is the line on which the style's shadow falls at one sun time.
type HourLine struct {
	SunTime   time.Duration  // since the Sun's midnight; noon is 12 h
	HourAngle quantity.Angle // afternoon positive
	Angle     quantity.Angle // from the noon line, −180° to 180°, afternoon positive
	Bearing   quantity.Angle // true, of the line drawn from the dial centre, 0° to 360°
}

// shortestStep keeps a face to at most 1441 lines; nobody reads a shadow closer
// than a minute.
const shortestStep = time.Minute

// HourLines returns the lines of a horizontal dial in the order of the day, one
// at each whole multiple of step since the Sun's midnight that lies within from
// and to, both included. The lines of 0 h and 24 h are the same.
//
// It fails for a latitude beyond ±90°, for times that do not run forward within
// 0 h to 24 h, and for a step under a minute.
func HourLines(latitude quantity.Angle, from, to, step time.Duration) ([]HourLine, error) {
	if err := checkLines(latitude, from, to, step); err != nil {
		return nil, err
	}
	var lines []HourLine
	for t := nextMultiple(from, step); t <= to; t += step {
		line := LineAt(latitude, hourAngle(t))
		line.SunTime = t
		lines = append(lines, line)
	}
	return lines, nil
}

func checkLines(latitude quantity.Angle, from, to, step time.Duration) error {
	if err := checkLatitude(latitude); err != nil {
		return err
	}
	if from < 0 || to > 24*time.Hour || from > to {
		return fmt.Errorf("sun times from %v to %v do not run forward within 0h to 24h", from, to)
	}
	if step < shortestStep {
		return fmt.Errorf("step of %v between hour lines is under %v", step, shortestStep)
	}
	return nil
}

// LineAt returns the line of any one hour angle from −180° to 180°. Latitude is
// −90° to 90°. On the equator every line lies along the noon line.
func LineAt(latitude, hourAngle quantity.Angle) HourLine {
	// The tangent formula, with the quadrant of the hour angle.
	x := quantity.Atan2(slope(latitude)*hourAngle.Sin(), hourAngle.Cos())
	return HourLine{
		SunTime:   12*time.Hour + sunTime(hourAngle),
		HourAngle: hourAngle,
		Angle:     x,
		Bearing:   bearingOf(latitude, noonBearing(latitude), x),
	}
}

// HourAngleOf is LineAt turned round: the hour angle, −180° to 180°, whose line
// lies at the given angle from the noon line. ok is false on the equator, where
// the lines are one.
func HourAngleOf(latitude, line quantity.Angle) (hourAngle quantity.Angle, ok bool) {
	s := slope(latitude)
	return quantity.Atan2(line.Sin(), s*line.Cos()), s > 0
}

// slope is sin |φ|, how steeply the style stands.
func slope(latitude quantity.Angle) float64 { return math.Abs(latitude.Sin()) }

// noonBearing is the true bearing of the noon line of a dial laid right.
func noonBearing(latitude quantity.Angle) quantity.Angle {
	if latitude < 0 {
		return quantity.Turn / 2
	}
	return 0
}

// bearingOf returns the bearing of a line at the angle x from a noon line that
// points to noon; hours run clockwise from the equator northward.
func bearingOf(latitude, noon, x quantity.Angle) quantity.Angle {
	if latitude < 0 {
		x = -x
	}
	return (noon + x).Bearing()
}

// sunTime returns the time in which the Sun moves through an hour angle.
func sunTime(a quantity.Angle) time.Duration {
	return time.Duration(math.Round(a.Hours() * float64(time.Hour)))
}

// hourAngle returns the hour angle at a sun time since midnight.
func hourAngle(t time.Duration) quantity.Angle {
	return quantity.Hours((t - 12*time.Hour).Hours())
}

// checkLatitude lets rounding carry a pole 1e-9 degree too far, and takes NaN
// for the error that it is.
func checkLatitude(latitude quantity.Angle) error {
	if d := latitude.Degrees(); !(math.Abs(d) <= 90+1e-9) {
		return fmt.Errorf("latitude %g° is outside −90° to 90°", d)
	}
	return nil
}
