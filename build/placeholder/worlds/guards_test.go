package worlds_test

import (
	"math"
	"testing"

	"noonbook/build/placeholder/entrytest"
	"noonbook/build/say"
)

// The sum for the least-energy way begins with half the long axis of an ellipse that
// touches both orbits, (1 + a) / 2: W. Hohmann, 1925. Axes: NASA's fact sheets, from
// memory.
func TestAxisOfTheWayInTheWorking(t *testing.T) {
	for name, a := range map[string]float64{"mercury": 0.387, "venus": 0.723, "mars": 1.524, "jupiter": 5.20} {
		r := reckon(t, "alder reach", "journey-table", "2027-04-20", "world="+name)
		orbit, axis := false, false
		for _, line := range r.Working {
			for _, v := range line.With {
				orbit = orbit || v.Unit == "au" && math.Abs(v.Number-a) < 0.004
				axis = axis || v.Unit == "au" && math.Abs(v.Number-(1+a)/2) < 0.002
			}
		}
		if !orbit || !axis {
			t.Errorf("%s: an orbit of %v au and an ellipse of %v au are not in the working:\n%s", name, a, (1+a)/2, entrytest.Lines(t, r.Working))
		}
	}
}

// Who leaves on a window arrives half an ellipse later, about as many days as the same
// row says; the row of the goal has the dates of the facts and of the list of windows.
func TestArrivalsComeAfterTheirWindows(t *testing.T) {
	r := reckon(t, "alder reach", "journey-table", "2027-04-20", "world=mars")
	names, days := entrytest.Texts(t, r, "transfers", "world"), entrytest.Cells(t, r, "transfers", "transfer")
	windows, arrivals := entrytest.Cells(t, r, "transfers", "window"), entrytest.Cells(t, r, "transfers", "arrival")
	dated := 0
	for i, name := range names {
		if windows[i].Time.IsZero() {
			continue
		}
		dated++
		// Orbits are ellipses, and ways differ from the mean by up to a quarter; Pluto goes
		// out to 49.3 au, where ((1 + 49.3) / 2)^1.5 is 1.39 times that of 39.5 au.
		near := days[i].Number / 4
		if name == "Pluto" {
			near = 0.4 * days[i].Number
		}
		took := arrivals[i].Time.Sub(windows[i].Time).Hours() / 24
		entrytest.Near(t, "days to "+name, took, days[i].Number, near)
		if name != "Mars" {
			continue
		}
		for what, want := range map[string]say.Value{"window": windows[i], "arrival": arrivals[i]} {
			if got := entrytest.Shown(t, r, what); got != entrytest.Written(t, want) {
				t.Errorf("the %s is %s, and %s in the table", what, got, entrytest.Written(t, want))
			}
		}
		if got := entrytest.Texts(t, r, "windows", "arrive")[0]; got != entrytest.Written(t, arrivals[i]) {
			t.Errorf("the first arrival is %s, and %s in the table", got, entrytest.Written(t, arrivals[i]))
		}
	}
	if dated < 5 {
		t.Errorf("%d worlds have a window", dated)
	}
}

// Frost has its sign, and warmth has none: mean temperatures in °C by NASA's fact sheets,
// from memory (giants at our sea-level pressure), to 3° for what their editions differ by.
func TestFrostHasItsSign(t *testing.T) {
	for name, want := range map[string]float64{"earth": 15, "venus": 464, "mars": -63, "jupiter": -108, "saturn": -139, "uranus": -197, "neptune": -201} {
		v := entrytest.Fact(t, reckon(t, "alder reach", "world-cards", "2027-04-20", "world="+name), "temperature")
		entrytest.Near(t, name, v.Number, want, 3)
		if v.Unit != "celsius" {
			t.Errorf("%s: a temperature in %q", name, v.Unit)
		}
	}
	// Spans run from the coldest to the warmest: on Mercury and on the Moon from far
	// below freezing to far above boiling.
	for _, name := range []string{"mercury", "moon"} {
		span := entrytest.Fact(t, reckon(t, "alder reach", "world-cards", "2027-04-20", "world="+name), "temperature").Phrase.With
		if n := len(span); n < 2 || span[n-2].Number > -100 || span[n-1].Number < 100 {
			t.Errorf("%s: %v", name, span)
		}
	}
}
