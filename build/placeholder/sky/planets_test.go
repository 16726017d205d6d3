package sky_test

import (
	"math"
	"testing"

	"noonbook/build/placeholder/entrytest"
	"noonbook/build/say"
)

// The planets at 21:00 on 20 April 2027 at Alder Reach: pyephem 4.1.4, observer
// at sea level, 1010 hPa and 10 °C. Places agree to 0.01°; pyephem's phase
// formulae differ by up to 0.17 in magnitude; its elongation is topocentric.
func TestPlanetsAtAlderReach(t *testing.T) {
	r := reckon(t, "alder reach", "planets-week", "2027-04-20", "time=21:00")
	want := []struct{ azimuth, altitude, magnitude, apart float64 }{
		{299.902, math.NaN(), -1.20, 8.79}, // below the horizon
		{312.614, math.NaN(), -3.82, 29.704},
		{175.878, 60.025, 0.09, 112.332},
		{188.185, 60.392, -2.06, 106.403},
		{300.685, math.NaN(), 0.64, 11.559},
	}
	azimuth, altitude := entrytest.Cells(t, r, "planets", "bearing"), entrytest.Cells(t, r, "planets", "altitude")
	magnitude, apart, direction := entrytest.Cells(t, r, "planets", "magnitude"), entrytest.Cells(t, r, "planets", "sun_distance"), entrytest.Cells(t, r, "planets", "direction")
	for i, w := range want {
		entrytest.Near(t, "azimuth", azimuth[i].Number, w.azimuth, 0.01)
		entrytest.Near(t, "magnitude", magnitude[i].Number, w.magnitude, 0.2)
		entrytest.Near(t, "distance from the Sun", apart[i].Number, w.apart, 0.3)
		if math.IsNaN(w.altitude) {
			if altitude[i].Number > 0 || direction[i].Kind != say.Nothing {
				t.Errorf("planet %d is not below the horizon", i)
			}
			continue
		}
		entrytest.Near(t, "altitude", altitude[i].Number, w.altitude, 0.01)
	}
	// The Sun's centre 9° below the horizon, pyephem 4.1.4: 0:03:47 and 8:31:24 UTC.
	entrytest.Near(t, "dusk", entrytest.Fact(t, r, "dusk").Time.Sub(entrytest.Instant(t, "2027-04-21T00:03:47Z")).Seconds(), 0, 3)
	entrytest.Near(t, "dawn", entrytest.Fact(t, r, "dawn").Time.Sub(entrytest.Instant(t, "2027-04-21T08:31:24Z")).Seconds(), 0, 3)
}

// When planets can be seen follows from their place beside the Sun: Mars was at
// opposition on 19 February 2027 and Jupiter on 11 February; Venus was at its
// greatest elongation in the west on 3 January 2027, and passed 8° north of the
// Sun on 23 March 2025 (these dates from memory); Saturn is near the Sun in April.
func TestWhenPlanetsAreSeen(t *testing.T) {
	for _, c := range []struct{ school, date, planet, want string }{
		{"alder reach", "2027-02-15", "mars", "planets-week.through_night"},
		{"alder reach", "2027-02-15", "jupiter", "planets-week.through_night"},
		{"south", "2027-02-15", "mars", "planets-week.through_night"},
		{"alder reach", "2027-01-03", "venus", "planets-week.in_morning"},
		{"south", "2027-01-03", "venus", "planets-week.in_morning"},
		{"alder reach", "2027-04-20", "jupiter", "planets-week.in_evening"},
		{"alder reach", "2027-04-10", "saturn", "planets-week.in_glare"},
		{"arctic", "2025-03-18", "venus", "planets-week.both_ends"},
		{"arctic", "2027-06-21", "jupiter", "planets-week.no_dark"},
		{"south pole", "2027-06-21", "mars", "planets-week.too_low"}, // north of the equator
	} {
		if got := entrytest.Fact(t, reckon(t, c.school, "planets-week", c.date), c.planet+"_when").Phrase.Key; got != c.want {
			t.Errorf("%s at %s on %s: %s, want %s", c.planet, c.school, c.date, got, c.want)
		}
	}
}
