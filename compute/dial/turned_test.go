package dial_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"noonbook/compute/dial"
	"noonbook/compute/quantity"
)

// off returns how fast a dial is, in minutes.
func off(t *testing.T, d dial.Dial, latitude, declination, hourAngle float64) float64 {
	t.Helper()
	fast, ok := d.Off(deg(latitude), deg(declination), deg(hourAngle))
	if !ok {
		t.Fatalf("no reading at %g°, declination %g°, hour angle %g°", latitude, declination, hourAngle)
	}
	return fast.Minutes()
}

// A dial at 46.09° N laid along a needle that points 16.2° west of true north,
// at noon. That the shadow's bearing alone would be read 1 h 28 min wrong is
// atan(tan 16.2°/sin 46.09°) = 21.96°; plate and gnomon together are less wrong.
func ExampleDial_Off() {
	latitude, turn := quantity.Degrees(46.09), quantity.Degrees(-16.2)
	right := dial.True(latitude)
	for _, declination := range []float64{-23.44, 0, 23.44} {
		face, _ := right.FaceTurned(turn).Off(latitude, quantity.Degrees(declination), 0)
		whole, _ := right.Turned(turn).Off(latitude, quantity.Degrees(declination), 0)
		fmt.Printf("declination %+.2f°: face alone %v fast, whole dial %v fast\n",
			declination, face.Round(time.Minute), whole.Round(time.Minute))
	}
	// Output:
	// declination -23.44°: face alone 1h28m0s fast, whole dial 1h5m0s fast
	// declination +0.00°: face alone 1h28m0s fast, whole dial 46m0s fast
	// declination +23.44°: face alone 1h28m0s fast, whole dial 27m0s fast
}

// A dial that is right shows the Sun's time. 1e-6 minute: rounding, blown up
// where lines crowd.
func TestTrueDialIsRight(t *testing.T) {
	for _, latitude := range []float64{90, 69.6, 46.09, 10, -10, -45.87, -90} {
		for _, declination := range []float64{-23, -5, 0, 12, 23} {
			for hourAngle := -180.0; hourAngle < 180; hourAngle += 7.5 {
				if _, altitude := dial.SunDirection(deg(latitude), deg(declination), deg(hourAngle)); altitude > deg(0.001) {
					near(t, fmt.Sprintf("%g°, %g°, %g°", latitude, declination, hourAngle),
						off(t, dial.True(deg(latitude)), latitude, declination, hourAngle), 0, 1e-6)
				}
			}
		}
	}
}

// A face turned by 1° under a true style at 45° is nearly 6 minutes wrong at
// noon, exactly 4/sin φ = 5.66 (dialling list), at any declination. Half of the
// last digit; the small-turn figure and the true one differ by 0.0006 minute.
func TestFaceTurnedByOneDegree(t *testing.T) {
	for _, declination := range []float64{-23.44, 0, 23.44} {
		near(t, "clockwise, north", off(t, dial.True(deg(45)).FaceTurned(deg(1)), 45, declination, 0), -5.66, 0.005)
		near(t, "clockwise, south", off(t, dial.True(deg(-45)).FaceTurned(deg(1)), -45, declination, 0), 5.66, 0.005)
	}
}

// At other hours the face shows the hour of the line that has come under the
// shadow: tan h = tan(X − τ)/sin φ. 1e-6 minute: rounding.
func TestFaceTurnedAtEveryHour(t *testing.T) {
	const latitude, turn = 46.09, -16.2
	for hourAngle := -75.0; hourAngle <= 75; hourAngle += 15 {
		s := math.Sin(latitude * math.Pi / 180)
		h := hourAngle * math.Pi / 180
		x := math.Atan2(s*math.Sin(h), math.Cos(h)) - turn*math.Pi/180
		shown := math.Atan2(math.Sin(x), s*math.Cos(x)) * 180 / math.Pi
		near(t, fmt.Sprintf("hour angle %g°", hourAngle),
			off(t, dial.True(deg(latitude)).FaceTurned(deg(turn)), latitude, 10, hourAngle), 4*(shown-hourAngle), 1e-6)
	}
}

// Plate and gnomon turned together by a small τ, at noon, by Off's vectors
// against the limit derived by hand. In the dial's frame the Sun's azimuth has
// changed by −τ at a fixed altitude a, a step of τ·cos a along its parallel of
// altitude. At noon that step is at right angles to the meridian, so it is all
// hour angle, worth τ·cos a/cos δ. North of the Sun cos a = sin(φ − δ), and
//
//	slow by τ · sin(φ − δ)/cos δ = τ · (sin φ − cos φ · tan δ)
//
// with the sign of sin(φ − δ) turning where the noon Sun stands in the north.
// South of the equator the hours run the other way: φ and δ change sign, and so
// does the error. The next term is of order τ³ by symmetry about noon, so a turn
// of 0.01° leaves the limit by parts in 1e-7 except near a Sun overhead, where
// tan a in the exact formula grows: 1e-6 minute a degree is left for it.
func TestTurnedAtNoonSmallTurn(t *testing.T) {
	const turn = 0.01
	for _, latitude := range []float64{69.6, 54.8, 45, 30, 10, -10, -45, -69.6} {
		for _, declination := range []float64{-20, -5, 0, 12, 20} {
			phi, delta := deg(math.Abs(latitude)), deg(math.Copysign(1, latitude)*declination)
			if phi-delta >= deg(90) {
				continue // the Sun does not rise
			}
			limit := -4 * (phi - delta).Sin() / delta.Cos() * math.Copysign(1, latitude)
			other := -4 * (phi.Sin() - phi.Cos()*delta.Tan()) * math.Copysign(1, latitude)
			near(t, "both forms", limit, other, 1e-12)
			got := off(t, dial.True(deg(latitude)).Turned(deg(turn)), latitude, declination, 0) / turn
			near(t, fmt.Sprintf("%g°, declination %g°", latitude, declination), got, limit, 2e-6)
		}
	}
}

// Any turn at any hour against the formula for the hour angle from azimuth and
// altitude, tan H = sin A/(cos A sin φ + tan a cos φ), A from the south (Meeus,
// 2nd ed., chapter 13, from memory), with A less the turn. 1e-6 minute: rounding.
func TestTurnedAtEveryHour(t *testing.T) {
	const latitude = 46.09
	phi := deg(latitude)
	for _, turn := range []float64{-16.2, 1, 30} {
		for _, declination := range []float64{-23.44, 0, 11.5, 23.44} {
			for hourAngle := -60.0; hourAngle <= 60; hourAngle += 15 {
				azimuth, altitude := dial.SunDirection(phi, deg(declination), deg(hourAngle))
				if altitude <= 0 {
					continue
				}
				a := azimuth - deg(180) - deg(turn)
				shown := quantity.Atan2(a.Sin(), a.Cos()*phi.Sin()+altitude.Tan()*phi.Cos())
				near(t, fmt.Sprintf("turn %g°, declination %g°, hour angle %g°", turn, declination, hourAngle),
					off(t, dial.True(phi).Turned(deg(turn)), latitude, declination, hourAngle),
					4*(shown-deg(hourAngle)).Signed().Degrees(), 1e-6)
			}
		}
	}
}

// At which declination does the whole dial's error at noon come to 4/sin φ? Only
// at φ − 90°, the noon Sun on the horizon: 1/sin φ = sin φ − cos φ tan δ gives
// tan δ = −cot φ. At 45° no Sun of this Earth gets there; at 70° it does, late
// in November.
func TestTwoModelsMeetAtTheHorizon(t *testing.T) {
	north := dial.True(deg(70))
	face := off(t, north.FaceTurned(deg(1)), 70, -19.999, 0)
	whole := off(t, north.Turned(deg(1)), 70, -19.999, 0)
	near(t, "70°, Sun 0.001° high", whole, face, 1e-4) // cot φ·tan a·4 minutes is 3e-5
	for _, c := range []struct{ declination, want float64 }{
		{-23.44, -4.05}, {0, -2.83}, {23.44, -1.60}, // 4·(sin 45° − cos 45°·tan δ), half of the last digit
	} {
		near(t, fmt.Sprintf("45°, declination %g°", c.declination),
			off(t, dial.True(deg(45)).Turned(deg(1)), 45, c.declination, 0), c.want, 0.005)
	}
}

func TestDialWithoutReading(t *testing.T) {
	if _, ok := dial.True(0).Off(0, deg(10), deg(30)); ok {
		t.Error("an hour was read on the equator's dial")
	}
	if _, ok := dial.True(deg(46)).Off(deg(46), 0, deg(120)); ok {
		t.Error("an hour was read at night")
	}
	// On a plate that leans to where the Sun is just below the horizon, no shadow falls.
	for _, leans := range []float64{90, 270} {
		d := dial.True(deg(46))
		d.Tilt = dial.Tilt{Toward: deg(leans), By: deg(10)}
		if _, ok := d.Line(deg(90), deg(-3)); ok {
			t.Errorf("leaning to %v°, the Sun throws a shadow from below the horizon", leans)
		}
	}
	// Turned right round at 45°, the style points at the equinox noon Sun.
	if _, ok := dial.True(deg(45)).Turned(deg(180)).Off(deg(45), 0, 0); ok {
		t.Error("an hour was read off a dot")
	}
	d := dial.True(deg(-45.87)).Turned(deg(300))
	if d.NoonLine < 0 || d.NoonLine >= quantity.Turn || d.NoonLine != d.Style.Azimuth {
		t.Errorf("turned noon line at %g°", d.NoonLine.Degrees())
	}
}
