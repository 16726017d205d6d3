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

// At Alder Reach Venus is 5° high half an hour after the dawn of 21 April 2027, which
// pyephem puts at 5:31 (above): it is no planet of that morning.
func TestPlanetAfterDawnIsNotSeen(t *testing.T) {
	r := reckon(t, "alder reach", "planets-week", "2027-04-20")
	venus := entrytest.Fact(t, r, "venus_when")
	if venus.Phrase.Key != "planets-week.twilight" {
		t.Errorf("Venus: %s", entrytest.Written(t, venus))
	}
	if from := venus.Phrase.With[0].Time; !from.After(entrytest.Instant(t, "2027-04-21T08:31:24Z")) {
		t.Errorf("Venus is high enough from %v, which is before dawn", from)
	}
	if got := entrytest.Shown(t, r, "morning"); got != "none" {
		t.Errorf("in the morning sky: %s", got)
	}
	if got := entrytest.Shown(t, r, "brightest"); got != "Jupiter" {
		t.Errorf("the brightest is %s", got)
	}
}

// Whatever the date: a planet that is seen in the morning from an hour until dawn is
// there before the dawn that the same page names, one of the evening after its dusk.
func TestPlanetsAreSeenBetweenDuskAndDawn(t *testing.T) {
	mornings, evenings, between := 0, 0, 0
	for _, school := range []string{"alder reach", "south", "line north", "arctic", "far east"} {
		for d := entrytest.Day(t, "2026-01-05"); d.Year < 2028; d = d.Add(12) {
			r := reckon(t, school, "planets-week", d.String())
			dusk, dawn := entrytest.Fact(t, r, "dusk"), entrytest.Fact(t, r, "dawn")
			for _, planet := range []string{"mercury", "venus", "mars", "jupiter", "saturn"} {
				when := entrytest.Fact(t, r, planet+"_when").Phrase
				switch when.Key {
				case "planets-week.in_morning":
					mornings++
					if dawn.Kind == say.Nothing || !when.With[0].Time.Before(dawn.Time) {
						t.Errorf("%s on %v: %s from %s, dawn is %s", school, d, planet, entrytest.Written(t, when.With[0]), entrytest.Written(t, dawn))
					}
				case "planets-week.in_evening":
					evenings++
					if dusk.Kind == say.Nothing || !when.With[0].Time.After(dusk.Time) {
						t.Errorf("%s on %v: %s until %s, dusk is %s", school, d, planet, entrytest.Written(t, when.With[0]), entrytest.Written(t, dusk))
					}
				case "planets-week.twilight":
					between++
				}
			}
		}
	}
	if mornings < 100 || evenings < 100 || between < 10 {
		t.Errorf("%d mornings, %d evenings, %d in twilight: too few to tell", mornings, evenings, between)
	}
}

// In June it does not get dark within the arctic circle, and in April it does at Alder
// Reach: as dusk has a time or has none.
func TestDarkEnough(t *testing.T) {
	for school, want := range map[string]string{"alder reach": "yes", "arctic": "no", "south": "yes"} {
		r := reckon(t, school, "planets-week", "2027-06-21")
		if got := entrytest.Shown(t, r, "dark"); got != want || (got == "yes") == (entrytest.Fact(t, r, "dusk").Kind == say.Nothing) {
			t.Errorf("%s: dark enough: %s, dusk %v", school, got, entrytest.Fact(t, r, "dusk"))
		}
	}
}
