package worlds_test

import (
	"math"
	"strings"
	"testing"

	"noonbook/build/placeholder/entrytest"
	"noonbook/build/say"
)

// The goal stands ahead of the Earth at the start by 180° less what it goes
// meanwhile, behind where that is negative: Hohmann's half ellipse of axis (1 + a)/2
// takes √(axis³)/2 years, the goal √(a³). Axes: NASA's fact sheets, from memory.
func TestGoalsAheadOrBehind(t *testing.T) {
	for name, a := range map[string]float64{"mercury": 0.3871, "venus": 0.7233, "mars": 1.5237, "jupiter": 5.2034, "saturn": 9.54} {
		r := reckon(t, "alder reach", "journey-table", "2027-04-20", "world="+name)
		years := math.Pow((1+a)/2, 1.5) / 2
		ahead := math.Remainder(180-360*years/math.Pow(a, 1.5), 360)
		entrytest.Near(t, name+": ahead", entrytest.Fact(t, r, "ahead").Number, ahead, 0.6)
		entrytest.Near(t, name+": way", entrytest.Fact(t, r, "transfer").Number, years*365.25, years*1.5)
		synodic := 365.256 / math.Abs(1-1/math.Pow(a, 1.5))
		entrytest.Near(t, name+": from window to window", entrytest.Fact(t, r, "synodic").Number, synodic, synodic/300)
		// vis-viva with the Earth's 29.785 km/s
		leave := 29.785 * math.Abs(math.Sqrt(2-2/(1+a))-1)
		entrytest.Near(t, name+": speed", entrytest.Fact(t, r, "leave_speed").Number, leave, 0.05)
		if got := entrytest.Shown(t, r, "ahead"); strings.HasPrefix(got, "-") != (ahead < -0.5) {
			t.Errorf("%s: %v° ahead is printed %s", name, ahead, got)
		}
		window, arrival := entrytest.Fact(t, r, "window"), entrytest.Fact(t, r, "arrival")
		if window.Kind != say.Nothing {
			if days := arrival.Time.Sub(window.Time).Hours() / 24; math.Abs(days-years*365.25) > 0.25*years*365.25 {
				t.Errorf("%s: from window to arrival it is %v days, want about %v", name, days, years*365.25)
			}
			if window.Time.Before(entrytest.Day(t, "2027-04-20").UTC()) {
				t.Errorf("%s: the next window was on %s", name, entrytest.Written(t, window))
			}
		}
	}
}

// What turns backwards leans by more than a right angle: Venus, Uranus and Pluto.
// Their years and noons: NASA's fact sheets, from memory.
func TestWorldsThatTurnBackwards(t *testing.T) {
	for name, w := range map[string]struct{ tilt, turn, noon, year float64 }{ // degrees, hours, hours, days
		"mercury": {0.0, 1407.6, 4222.6, 87.97}, "venus": {177.4, 5832.5, 2802.0, 224.7}, "earth": {23.4, 23.9345, 24, 365.26}, "mars": {25.2, 24.6229, 24.6597, 686.98},
		"jupiter": {3.1, 9.925, 9.9259, 4332.6}, "saturn": {26.7, 10.656, 10.656, 10755.7}, "uranus": {97.8, 17.24, 17.24, 30687}, "neptune": {28.3, 16.11, 16.11, 60190}, "pluto": {119.5, 153.2928, 153.282, 90560},
	} {
		r := reckon(t, "alder reach", "world-cards", "2027-04-20", "world="+name)
		entrytest.Near(t, name+": tilt", entrytest.Fact(t, r, "tilt").Number, w.tilt, 0.6)
		turn := entrytest.Fact(t, r, "turn")
		entrytest.Near(t, name+": turn", math.Abs(turn.Number)/3600, w.turn, 0.01*w.turn)
		entrytest.Near(t, name+": noon to noon", entrytest.Fact(t, r, "day").Number/3600, w.noon, 0.01*w.noon)
		entrytest.Near(t, name+": year", entrytest.Fact(t, r, "year").Number/86400, w.year, 0.005*w.year)
		if got := strings.Contains(entrytest.Written(t, turn), "backwards"); got != (w.tilt > 90) {
			t.Errorf("%s leans by %v° and turns %s", name, w.tilt, entrytest.Written(t, turn))
		}
	}
	// On the card the end from which it is seen to turn anticlockwise is up for the
	// Earth's like, right of up by the tilt, and down for Venus.
	for name, tilt := range map[string]float64{"mars": 25.2, "saturn": 26.7, "uranus": 97.8, "venus": 177.4, "earth": 23.4} {
		r := reckon(t, "alder reach", "world-cards", "2027-04-20", "worlds="+name)
		d := r.Sheets[0].Drawing
		globe, end := entrytest.Roled(d, "globe")[0].Points[0], entrytest.Roled(d, "north")[0].Points[0]
		if got := math.Atan2(end.X-globe.X, globe.Y-end.Y) * 180 / math.Pi; math.Abs(got-tilt) > 0.6 {
			t.Errorf("%s: the end of its axis is drawn %v° from up, want %v", name, got, tilt)
		}
	}
}

// Features by the IAU's gazetteer (from memory): north and south, east and west.
func TestFeaturesBySide(t *testing.T) {
	r := reckon(t, "alder reach", "world-cards", "2027-04-20")
	names := entrytest.Texts(t, r, "features", "feature")
	latitudes, longitudes := entrytest.Texts(t, r, "features", "latitude"), entrytest.Texts(t, r, "features", "longitude")
	found := 0
	for i, name := range names {
		want, ok := map[string][2]string{
			"Olympus Mons": {"19° N", "134° W"}, "Tycho": {"43° S", "11° W"}, "Valles Marineris": {"14° S", "59° W"}, "Great Red Spot": {"22° S", ""}, "Maxwell Montes": {"65° N", "3° E"},
		}[name]
		if !ok {
			continue
		}
		found++
		if latitudes[i] != want[0] || want[1] != "" && longitudes[i] != want[1] {
			t.Errorf("%s lies at %s, %s", name, latitudes[i], longitudes[i])
		}
	}
	if found < 2 {
		t.Errorf("%d features of %v", found, names)
	}
}

// Scales, forces, jumps and throws for a mass of 37 kg, a jump of 0.45 m and a throw
// of 13 m, by the pulls of NASA's fact sheets (from memory): on the giants there is
// no ground, from the comet nothing comes back.
func TestWeightsByHand(t *testing.T) {
	pulls := map[string]float64{"mercury": 3.70, "venus": 8.87, "earth": 9.80, "mars": 3.71, "jupiter": 24.79, "saturn": 10.44, "uranus": 8.87, "neptune": 11.15, "moon": 1.62}
	for name, g := range pulls {
		r := reckon(t, "alder reach", "weight-table", "2027-04-20", "world="+name, "mass_kg=37", "jump_m=0.45", "throw_m=13")
		loose := 0.012
		switch name { // whose pull here leaves the spin out
		case "jupiter", "saturn", "uranus", "neptune":
			loose = 0.08
		}
		entrytest.Near(t, name+": scale", entrytest.Fact(t, r, "scale").Number, 37*g/9.80, loose*37*g/9.80)
		entrytest.Near(t, name+": force", entrytest.Fact(t, r, "force").Number, 37*g, loose*37*g)
		entrytest.Near(t, name+": pull", entrytest.Fact(t, r, "pull").Number, g/9.80, loose*g/9.80)
		giant := loose > 0.05
		for fact, want := range map[string]float64{"jump": 0.45 * 9.80 / g, "throw": 13 * 9.80 / g} {
			v := entrytest.Fact(t, r, fact)
			if (v.Kind == say.Nothing) != giant || giant && entrytest.Written(t, v) != "no ground" {
				t.Errorf("%s: %s is %s", name, fact, entrytest.Written(t, v))
			}
			if !giant {
				entrytest.Near(t, name+": "+fact, v.Number, want, 0.012*want)
			}
		}
		if got := entrytest.Shown(t, r, "heaviest_on") + ", " + entrytest.Shown(t, r, "lightest_on"); got != "Jupiter, comet 67P" && !strings.HasPrefix(got, "Jupiter, ") {
			t.Error(got)
		}
	}
	// The chart's bars are as long as the scale shows, the Earth's set off.
	r := reckon(t, "alder reach", "weight-table", "2027-04-20", "mass_kg=37")
	d := r.Drawings[0]
	scales := entrytest.Column(t, r, "scale")
	unit := 0.0
	bars := append(entrytest.Roled(d, "bar"), entrytest.Roled(d, "earth")...)
	if len(bars) != len(scales) || len(entrytest.Roled(d, "earth")) != 1 {
		t.Fatalf("%d bars for %d worlds", len(bars), len(scales))
	}
	earth := entrytest.Roled(d, "earth")[0]
	unit = (earth.Points[1].X - earth.Points[0].X) / 37
	for _, bar := range bars {
		row := int(math.Round((bar.Points[0].Y - 4.6) / 6))
		entrytest.Near(t, "bar", (bar.Points[1].X-bar.Points[0].X)/unit, scales[row], 1e-6)
	}
	for i, row := range r.Tables[0].Rows {
		if row.Marked != (math.Abs(scales[i]-37) < 1e-9) {
			t.Errorf("row %d is marked: %v", i, row.Marked)
		}
	}
}

// Which is first and last of each order: NASA's fact sheets, from memory.
func TestOrdersOfWorlds(t *testing.T) {
	for by, want := range map[string][2]string{
		"distance": {"Mercury", "Pluto"}, "diameter": {"Jupiter", ""}, "mass": {"Jupiter", ""}, "gravity": {"Jupiter", ""},
		"year": {"Pluto", "Mercury"}, "moons": {"Saturn", ""}, "tilt": {"Venus", ""},
	} {
		r := reckon(t, "alder reach", "world-compare", "2027-04-20", "sort="+by)
		first, last := entrytest.Shown(t, r, "first"), entrytest.Shown(t, r, "last")
		if first != want[0] && last != want[0] || want[1] != "" && first != want[1] && last != want[1] {
			t.Errorf("by %s: from %s to %s", by, first, last)
		}
	}
	r := reckon(t, "alder reach", "world-compare", "2027-04-20")
	if floats := entrytest.Shown(t, r, "floats"); !strings.Contains(floats, "Saturn") || strings.Contains(floats, "Uranus") || strings.Contains(floats, "Jupiter") {
		t.Error("less dense than water:", floats)
	}
	for fact, want := range map[string]string{"rocky": "Mercury, Venus, Earth and Mars", "giants": "Jupiter, Saturn, Uranus and Neptune", "dwarfs": "Ceres and Pluto"} {
		if got := entrytest.Shown(t, r, fact); got != want {
			t.Errorf("%s: %s", fact, got)
		}
	}
	entrytest.Near(t, "Moons in the Earth", entrytest.Fact(t, r, "moons_in_earth").Number, math.Pow(6371.0/1737.4, 3), 0.2)
}

// A life of 130 years is the longest; one that begins tomorrow is none.
func TestLivesOnBothSides(t *testing.T) {
	for born, want := range map[string]string{"1897-04-20": "", "1896-04-20": "more than 130 years", "2027-04-20": "", "2027-04-21": "after the date"} {
		if got := complaint(t, "weight-table", "2027-04-20", "born="+born); want == "" && got != "" || !strings.Contains(got, want) {
			t.Errorf("born on %s: %q", born, got)
		}
	}
	// Of someone born eleven years ago to the day, where nothing is said.
	r := reckon(t, "alder reach", "weight-table", "2027-04-20")
	entrytest.Near(t, "age here", entrytest.Fact(t, r, "age_here").Number, 11, 0)
	for date, age := range map[string]float64{"2027-04-19": 10, "2027-04-20": 11, "2027-04-21": 11} {
		r := reckon(t, "alder reach", "weight-table", date, "born=2016-04-20", "world=mars")
		entrytest.Near(t, "age on "+date, entrytest.Fact(t, r, "age_here").Number, age, 0)
		days := float64(entrytest.Day(t, "2016-04-20").DaysUntil(entrytest.Day(t, date)))
		entrytest.Near(t, "age on Mars", entrytest.Fact(t, r, "age").Number, days/686.98, 0.001)
		number := math.Ceil(days / 686.98)
		entrytest.Near(t, "next on Mars", entrytest.Fact(t, r, "next_number").Number, number, 0)
		next := entrytest.Fact(t, r, "next_birthday").Time.Sub(entrytest.Day(t, "2016-04-20").UTC()).Hours() / 24
		entrytest.Near(t, "day of it", next, number*686.98, 0.6)
	}
}

// Ways by hand: 0.98483 au to Mars on 20 April 2027 (pyephem 4.1.4) at 4 km/h; to the Moon
// half an ellipse from 6678 km to 384 400 km round 398 600 km³/s².
func TestWaysByHand(t *testing.T) {
	r := reckon(t, "alder reach", "journey-table", "2027-04-20", "world=mars", "class.walk_km_h=4")
	km := 0.98483 * 149597870.7
	entrytest.Near(t, "walk", entrytest.Fact(t, r, "walk").Number, km/4/24/365.25, 3)
	entrytest.Near(t, "light", entrytest.Fact(t, r, "light").Number, km/299792.458, 0.5)
	entrytest.Near(t, "distance", entrytest.Fact(t, r, "distance").Number, km/1e6, 0.1)
	a := (6678.0 + 384400) / 2
	entrytest.Near(t, "to the Moon", entrytest.Fact(t, r, "moon_days").Number, math.Pi*math.Sqrt(a*a*a/398600)/86400, 0.01)
	entrytest.Tells(t, []say.Phrase{r.Tables[2].Title}, "journey-table.title_windows", "Mars", "2100")
	speeds := entrytest.Cells(t, r, "transfers", "leave_speed")
	names := entrytest.Texts(t, r, "transfers", "world")
	for i, name := range names {
		if name == "Mars" {
			entrytest.Near(t, "leaving for Mars", speeds[i].Number, 2.945, 0.01) // NASA's Basics of Space Flight, from memory
		}
	}
}

// Temperatures: 288 K are 15 °C on the Earth, 737 K 464 °C on Venus and everywhere the
// same there, 210 K -63 °C on Mars; giants are told at our sea-level pressure, 165 K -108 °C
// on Jupiter, 72 K -201 °C on Neptune (NSSDCA fact sheets; extremes of the Earth from the
// WMO, of Mars from NASA's Mars facts).
func TestWarmthInWords(t *testing.T) {
	for name, want := range map[string]string{
		"earth":   "15 °C on the mean; -89 °C to 57 °C",
		"venus":   "464 °C everywhere, day and night",
		"mars":    "-63 °C on the mean; -153 °C to 20 °C",
		"jupiter": "-108 °C at our sea-level pressure",
		"neptune": "-201 °C at our sea-level pressure",
	} {
		got := entrytest.Shown(t, reckon(t, "alder reach", "world-cards", "2027-04-20", "world="+name), "temperature")
		if got != want {
			t.Errorf("%s: %q, want %q", name, got, want)
		}
	}
	// The column that the order is by stands in the table.
	for by, column := range map[string]string{"year": "year", "tilt": "tilt", "mass": "day"} {
		r := reckon(t, "alder reach", "world-compare", "2027-04-20", "sort="+by)
		if got := r.Tables[0].Columns[6].Name; got != column {
			t.Errorf("ordered by %s, the table has the column %s", by, got)
		}
	}
	r := reckon(t, "alder reach", "world-compare", "2027-04-20", "sort=mass")
	for _, table := range r.Tables {
		if table.Name != "groups" {
			continue
		}
		if got := strings.Join(entrytest.Texts(t, r, "groups", "moons"), " | "); !strings.HasPrefix(got, "0 to 2 | ") { // Mercury and Venus have none, Mars two
			t.Error("moons of the groups:", got)
		}
		if got := entrytest.Texts(t, r, "groups", "diameters")[0]; got != "4879 km to 12742 km" && got != "4879 km to 12 742 km" {
			t.Error("rocky planets measure", got)
		}
		if got := strings.Join(entrytest.Texts(t, r, "groups", "ground"), " "); got != "yes no yes" {
			t.Error("ground of the groups:", got)
		}
	}
}
