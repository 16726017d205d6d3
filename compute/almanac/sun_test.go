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

// Meeus, Astronomical Algorithms, 2nd ed. 1998, example 25.b (VSOP87, higher
// accuracy), 1992 October 13 at 0h TD, whose full solution is λ 199°54′21.818″,
// β +0.721″, R 0.99760775 au, α 13h13m30.749s, δ −7°47′01.74″ (from
// memory).
func TestSunOfMeeus(t *testing.T) {
	sun := almanac.SunAt(dynamical(t, "1992-10-13T00:00:00Z"))
	for _, c := range []struct {
		name           string
		got, want, tol float64
	}{
		{"longitude ″", sun.Longitude.ArcSeconds(), 199*3600 + 54*60 + 21.818, sunPlaceLimit},
		{"latitude ″", sun.Latitude.ArcSeconds(), 0.721, sunPlaceLimit},
		{"right ascension ″", sun.RightAscension.ArcSeconds(), 15 * (13*3600 + 13*60 + 30.749), sunPlaceLimit},
		{"declination ″", sun.Declination.ArcSeconds(), -(7*3600 + 47*60 + 1.74), sunPlaceLimit},
		{"distance au", float64(sun.Distance / quantity.AstronomicalUnit), 0.99760775, 1e-5},
	} {
		if math.Abs(c.got-c.want) > c.tol {
			t.Errorf("%s: got %.4f, want %.4f", c.name, c.got, c.want)
		}
	}
}

// Example 25.a gives the same instant by a low-accuracy method, good to 0.01°
// (the book's words): a cross-check against check-values of another kind.
func TestSunOfLowAccuracyMethod(t *testing.T) {
	sun := almanac.SunAt(dynamical(t, "1992-10-13T00:00:00Z"))
	if got, want := sun.Longitude.Degrees(), 199+54./60+32./3600; math.Abs(got-want) > 0.01 {
		t.Errorf("longitude %.5f°, want %.5f°", got, want)
	}
	if got, want := sun.Declination.Degrees(), -(7 + 47./60 + 6./3600); math.Abs(got-want) > 0.01 {
		t.Errorf("declination %.5f°, want %.5f°", got, want)
	}
}

func TestEquationOfTime(t *testing.T) {
	for _, c := range []struct {
		at        time.Time
		want, tol float64 // seconds
		source    string
	}{
		// Meeus evaluates the mean Sun at TD where UT defines it, 0.16 s for
		// ΔT 59 s; his mean longitude is 0.03 s ahead of Greenwich's; he rounds
		// to 0.1 s. (Ex. 28.b, 42.7 s, is by a formula of lower accuracy.)
		{dynamical(t, "1992-10-13T00:00:00Z"), 13*60 + 42.6 - 0.19, 0.06, "Meeus ex. 28.a"},
		// 14.641503 min with ΔT 67 s and its own mean longitude, again of TT.
		{utc(t, "2003-10-17T19:30:30Z"), 14.641503*60 - 0.18, 0.2, "Reda & Andreas table A5.1"},
		// Landmarks of the National Physical Laboratory, to the minute and day.
		{utc(t, "2026-11-03T12:00:00Z"), 16 * 60, 30, "NPL"},
		{utc(t, "2027-02-11T12:00:00Z"), -14 * 60, 30, "NPL"},
		{utc(t, "2027-04-15T12:00:00Z"), 0, 20, "NPL: a day is 15 s here"},
		{utc(t, "2027-06-13T12:00:00Z"), 0, 15, "NPL"},
		{utc(t, "2027-09-01T12:00:00Z"), 0, 20, "NPL"},
		{utc(t, "2027-12-25T12:00:00Z"), 0, 30, "NPL: a day is 30 s here"},
	} {
		if got := almanac.EquationOfTime(c.at).Seconds(); math.Abs(got-c.want) > c.tol {
			t.Errorf("%s: %.2f s, want %.2f s (%s)", c.at, got, c.want, c.source)
		}
	}
}

// Reda & Andreas, NREL/TP-560-34302, table A5.1: topocentric, with ΔT 67 s
// where this package has 64.184 s (0.00003° of the Sun's motion), with UT1
// taken as UTC there too. Rounding and series leave 0.0002°.
func TestSunOfNREL(t *testing.T) {
	golden := place.Place{
		Latitude:  quantity.Degrees(39.742476),
		Longitude: quantity.Degrees(-105.1786),
		Elevation: quantity.Metres(1830.14),
	}
	h := almanac.SunFrom(golden, utc(t, "2003-10-17T12:30:30-07:00"))
	if got := h.Azimuth.Degrees(); math.Abs(got-194.34024) > 0.0002 {
		t.Errorf("azimuth %.5f°", got)
	}
	// Their refraction is scaled to 820 mbar and 11 °C.
	air := almanac.Refraction(h.Altitude).Degrees() * 820 / 1010 * 283 / 284
	if got := 90 - h.Altitude.Degrees() - air; math.Abs(got-50.11162) > 0.0002 {
		t.Errorf("zenith distance %.5f°", got)
	}
}

// Meeus, example 16.a and the text of chapter 16: a body seen on the horizon
// is lifted 34′, one at geometric altitude 0° 29′; 24.618′ for the true
// altitude 33′20″ (from memory). The formula is good to 0.1′ there.
func TestRefraction(t *testing.T) {
	for _, c := range []struct{ altitude, want, tol float64 }{
		{-34. / 60, 34, 0.8}, // Bennett's inverse and this formula differ by 0.1′, the text rounds
		{0, 29, 0.5},
		{33./60 + 20./3600, 24.618, 0.1},
		{90, 0, 0.001},
	} {
		got := almanac.Refraction(quantity.Degrees(c.altitude)).Degrees() * 60
		if math.Abs(got-c.want) > c.tol {
			t.Errorf("at %g°: %.3f′, want %g′", c.altitude, got, c.want)
		}
	}
	step := almanac.Refraction(quantity.Degrees(-1)) - almanac.Refraction(quantity.Degrees(-1.000001))
	if math.Abs(step.Degrees()) > 1e-5 {
		t.Errorf("a step of %g° at −1°", step.Degrees())
	}
}

// The demo school by ERFA, to the minute of its clock: 09:28:10, 16:21:44 and
// 23:14:25 UTC in testdata/reference/sun-days.csv.
func ExampleSunDay() {
	zone, _ := time.LoadLocation("America/Moncton")
	school := place.Place{Latitude: quantity.Degrees(46.09), Longitude: quantity.Degrees(-64.77), Zone: zone}
	day := almanac.SunDay(school, place.Date{Year: 2027, Month: time.August, Day: 23})
	for _, event := range []time.Time{day.Rises[0], day.Transits[0], day.Sets[0]} {
		fmt.Println(event.Round(time.Minute).Format("15:04"))
	}
	// Output:
	// 06:28
	// 13:22
	// 20:14
}
