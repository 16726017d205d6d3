package dial_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"noonbook/compute/almanac"
	"noonbook/compute/dial"
	"noonbook/compute/place"
)

// Shadows of equal length lie alike on both sides of the meridian but for the
// change of declination: differencing sin δ = sin φ sin a + cos φ cos a cos A at a
// fixed altitude, with cos a sin A = −cos δ sin H, leaves dA = dδ/(cos φ sin H) in
// the afternoon, and the middle moves half of that. The formula is of
// first order in Δδ; 0.005° is left for the rest. The table of shadow bearings in
// testdata/reference holds the azimuths themselves.
func TestEqualShadows(t *testing.T) {
	for _, p := range []place.Place{school(t, 46.09, -64.77, "America/Moncton"), school(t, -45.87, 170.5, "Pacific/Auckland"), school(t, 10, 0, "UTC")} {
		for _, on := range []string{"2027-03-20", "2027-04-20", "2027-06-21", "2027-09-23", "2027-12-21"} {
			noon := almanac.SunDay(p, date(t, on)).Transits[0]
			for _, hours := range []float64{1, 2, 3} {
				before := noon.Add(-time.Duration(hours * float64(time.Hour)))
				after, off, ok := dial.EqualShadow(p, noon, before)
				name := fmt.Sprintf("%g°, %s, %g h", p.Latitude.Degrees(), on, hours)
				if !ok {
					t.Errorf("%s: none", name)
					continue
				}
				near(t, name+": altitude", almanac.SunFrom(p, after).Altitude.Degrees(), almanac.SunFrom(p, before).Altitude.Degrees(), 0.001)
				near(t, name+": half way", after.Sub(noon).Minutes(), hours*60, 2)
				change := almanac.SunAt(after).Declination - almanac.SunAt(before).Declination
				want := change.Degrees() / (2 * p.Latitude.Cos() * math.Sin(hours*15*math.Pi/180))
				if p.Latitude > deg(20) || p.Latitude < deg(-20) { // overhead, azimuths swing
					near(t, name+": middle", off.Degrees(), want, 0.005)
				}
			}
		}
	}
	// The most that EqualShadow's comment promises, through a year.
	for _, latitude := range []float64{-60, 0, 60} {
		p := school(t, latitude, 0, "UTC")
		for d := date(t, "2027-01-01"); d.Year == 2027; d = d.Add(5) {
			noon := almanac.SunDay(p, d).Transits[0]
			for _, ahead := range []time.Duration{30 * time.Minute, 3 * time.Hour} {
				if _, off, ok := dial.EqualShadow(p, noon, noon.Add(-ahead)); ok {
					near(t, fmt.Sprintf("%g°, %v, %v: middle", latitude, d, ahead), off.Degrees(), 0, 0.15)
				}
			}
		}
	}
	pole := school(t, 90, 0, "UTC")
	at := time.Date(2027, 5, 1, 12, 0, 0, 0, time.UTC)
	if _, _, ok := dial.EqualShadow(pole, at, at.Add(-3*time.Hour)); ok {
		t.Error("at the pole a shadow got as long again")
	}
	if _, _, ok := dial.EqualShadow(pole, at, at); ok {
		t.Error("no time before noon was taken")
	}
}
