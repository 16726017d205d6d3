package dial_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"noonbook/compute/dial"
)

// The Sun's centre is on the horizon at the hour angle that SunUp answers: by
// its direction, found another way. 1e-9°: rounding, as the crossing is steep at
// these latitudes.
func TestSunUpIsOnTheHorizon(t *testing.T) {
	for _, latitude := range []float64{0, 0.2, 46.09, -45.87, 66, -66} {
		for _, declination := range []float64{-23.44, -10, 0, 15, 23.44} {
			half := dial.SunUp(deg(latitude), deg(declination))
			_, altitude := dial.SunDirection(deg(latitude), deg(declination), half)
			near(t, fmt.Sprintf("altitude at %g°, declination %g°", latitude, declination), altitude.Degrees(), 0, 1e-9)
		}
	}
}

// Polar day begins at 90° less the Sun's declination: common knowledge of the
// trade, no source.
func TestSunUpAllDayOrNever(t *testing.T) {
	for _, c := range []struct{ latitude, declination, want float64 }{
		{69.6, 23.44, 180}, {69.6, -23.44, 0},
		{-69.6, -23.44, 180}, {-69.6, 23.44, 0},
		{66.55, 23.44, math.Acos(-math.Tan(66.55*math.Pi/180)*math.Tan(23.44*math.Pi/180)) * 180 / math.Pi},
		{66.57, 23.44, 180},
		{90, 0, 180}, {90, 0.1, 180}, {90, -0.1, 0}, {-90, -0.1, 180},
		{0, 23.44, 90}, {46.09, 0, 90},
	} {
		got := dial.SunUp(deg(c.latitude), deg(c.declination)).Degrees()
		near(t, fmt.Sprintf("%g°, declination %g°", c.latitude, c.declination), got, c.want, 1e-9)
	}
}

func TestSunHours(t *testing.T) {
	for _, c := range []struct {
		latitude float64
		from, to time.Duration
	}{
		{0, 6 * time.Hour, 18 * time.Hour},
		{69.6, 0, 24 * time.Hour},
		{-90, 0, 24 * time.Hour},
	} {
		from, to := dial.SunHours(deg(c.latitude))
		if from != c.from || to != c.to {
			t.Errorf("%g°: %v to %v, want %v to %v", c.latitude, from, to, c.from, c.to)
		}
	}
	northFrom, northTo := dial.SunHours(deg(46.09))
	southFrom, southTo := dial.SunHours(deg(-46.09))
	if northFrom != southFrom || northTo != southTo {
		t.Error("the longest days of the two hemispheres differ")
	}
	if northFrom+northTo != 24*time.Hour || northFrom > 5*time.Hour || northFrom < 4*time.Hour {
		t.Errorf("46.09°: from %v to %v", northFrom, northTo)
	}
}

func TestCrowding(t *testing.T) {
	near(t, "equator", dial.NoonSpacing(0).Degrees(), 0, 0)
	near(t, "pole", dial.NoonSpacing(deg(90)).Degrees(), 15, 1e-12)
	near(t, "10° south", dial.NoonSpacing(deg(-10)).Degrees(), 2.66, 0.005) // atan(0.17365·0.26795)
	for latitude, want := range map[float64]bool{0: true, -14.9: true, 14.9: true, 15.1: false, -15.1: false, 90: false} {
		if dial.Shallow(deg(latitude)) != want {
			t.Errorf("%g° shallow: want %v", latitude, want)
		}
	}
}
