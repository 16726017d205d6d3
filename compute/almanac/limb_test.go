package almanac_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// Meeus, Astronomical Algorithms, 2nd ed. 1998, example 48.a, 1992 April 12 at
// 0h TD: lit 0.6786 (phase angle 69.0756°), bright limb at 285.0°. The
// geocentre is no place; for one with the Moon at the zenith parallax vanishes.
func TestLimbOfMeeus(t *testing.T) {
	x := dynamical(t, "1992-04-12T00:00:00Z")
	moon := almanac.MoonAt(x)
	under := place.Place{
		Latitude:  moon.Declination,
		Longitude: (moon.RightAscension - almanac.SiderealTime(x)).Signed(),
	}
	limb := almanac.Moon.LimbFrom(under, x)
	if math.Abs(limb.Lit-0.6786) > 0.0002 {
		t.Errorf("lit %.5f", limb.Lit)
	}
	if math.Abs(limb.PositionAngle.Degrees()-285.0) > limbMiddleLimit {
		t.Errorf("bright limb at %.2f°", limb.PositionAngle.Degrees())
	}
	if !limb.Waxing {
		t.Error("waning")
	}
}

// Common practice, no source: the half Moon of the evening is lit on the right
// north of the tropics, on the left south of them; that of the morning the other
// way round. Near the equator the young Moon lies on its back (in June, when the
// ecliptic stands upright there).
func TestLitSideByHemisphere(t *testing.T) {
	north := at(t, 46.09, -64.77, "America/Moncton")
	south := at(t, -45.87, 170.5, "Pacific/Auckland")
	equator := at(t, -0.2, -78.5, "America/Guayaquil")
	for _, c := range []struct {
		name      string
		p         place.Place
		date      string
		hour, min int
		waxing    bool
		side      almanac.Side
	}{
		{"north, evening", north, "2027-04-13", 20, 30, true, almanac.Right},
		{"south, evening", south, "2027-04-14", 18, 30, true, almanac.Left},
		{"equator, evening", equator, "2027-06-07", 18, 45, true, almanac.Bottom},
		{"north, morning", north, "2027-10-22", 7, 0, false, almanac.Left},
		{"south, morning", south, "2027-10-23", 6, 0, false, almanac.Right},
		{"equator, morning", equator, "2027-12-24", 5, 30, false, almanac.Bottom},
	} {
		t.Run(c.name, func(t *testing.T) {
			limb := almanac.Moon.LimbFrom(c.p, c.p.Clock(date(t, c.date), c.hour, c.min))
			if limb.Waxing != c.waxing || limb.Side != c.side {
				t.Errorf("waxing %v, %.2f lit %s at %.0f°", limb.Waxing, limb.Lit, limb.Side, limb.Lean.Degrees())
			}
		})
	}
}

func TestSides(t *testing.T) {
	p := at(t, 46.09, -64.77, "America/Moncton")
	for _, c := range []struct {
		at   string
		want almanac.Side
	}{
		{"2027-04-06T20:51:00-03:00", almanac.NoSide},
		{"2027-04-20T19:27:00-03:00", almanac.AllSides},
	} {
		if got := almanac.Moon.LimbFrom(p, utc(t, c.at)).Side; got != c.want {
			t.Errorf("%s: %s, want %s", c.at, got, c.want)
		}
	}
}

// First quarter over a northern school: the right half is lit.
func ExampleBody_LimbFrom() {
	school := place.Place{Latitude: quantity.Degrees(46.09), Longitude: quantity.Degrees(-64.77)}
	limb := almanac.Moon.LimbFrom(school, time.Date(2027, 4, 13, 23, 0, 0, 0, time.UTC))
	fmt.Printf("%.0f %% lit, %s\n", 100*limb.Lit, limb.Side)
	// Output: 50 % lit, right
}
