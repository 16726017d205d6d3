package dial_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"noonbook/build/placeholder/entrytest"
	"noonbook/build/say"
)

// From 20 April to 2 July 2027 the equation of time goes from +65 s to −244 s
// (astropy with ERFA, testdata/reference/equation-of-time.csv, between its rows),
// past the five minutes wanted. From 7 November the clocks are back, and marks of
// April run an hour faster.
func TestDialDrift(t *testing.T) {
	r := reckon(t, "alder reach", "dial-drift", "2027-11-08", "marked=2027-04-20", "weeks=52")
	if got := entrytest.Fact(t, r, "mark_again").Time.Format(time.DateOnly); got != "2027-07-02" {
		t.Errorf("mark again on %s", got)
	}
	entrytest.Near(t, "clock part", entrytest.Fact(t, r, "clock_part").Number, 3600, 0)
	entrytest.Near(t, "equation part in November", entrytest.Fact(t, r, "equation_part").Number/60, 16.2-1.1, 0.3) // NPL FAQ: about +16 min on 3 November
	entrytest.Near(t, "sum", entrytest.Fact(t, r, "fast").Number, entrytest.Fact(t, r, "equation_part").Number+3600, 1e-6)
	equation, clock, fast := entrytest.Column(t, r, "equation_part"), entrytest.Column(t, r, "clock_part"), entrytest.Column(t, r, "fast")
	for i := range fast {
		entrytest.Near(t, "row", fast[i], equation[i]+clock[i], 1e-6)
	}
	if len(fast) != 53 || fast[0] != 0 {
		t.Errorf("%d rows from %v s", len(fast), fast[0])
	}
}

// Marks round an upright stick at three: the azimuth of the Sun by the formula
// tan A = sin H/(cos H sin φ − tan δ cos φ) (Meeus, 2nd ed., equation 13.5) at the
// hour that the stick shows on the marking day is that of three on the later day.
// Declinations of 20 April and 15 June 2027, +11.5° and +23.3°, from memory; half
// a minute is a tenth of a degree of them.
func TestStickDrifts(t *testing.T) {
	r := reckon(t, "alder reach", "dial-drift", "2027-06-15", "marked=2027-04-20")
	rad := math.Pi / 180
	azimuth := func(hour, declination float64) float64 {
		return math.Atan2(math.Sin(hour*rad), math.Cos(hour*rad)*math.Sin(46.09*rad)-math.Tan(declination*rad)*math.Cos(46.09*rad)) / rad
	}
	shown := (entrytest.Fact(t, r, "stick").Number - entrytest.Fact(t, r, "fast").Number) / 240
	entrytest.Near(t, "azimuth", azimuth(45+shown, 11.5), azimuth(45, 23.3), 0.15)
}

// The rule of thumb against the small-turn limit that compute/dial derives: a
// turned dial 4 sin φ minutes a degree at an equinox noon, a leaning one 4 cos φ. Turned
// clockwise a northern dial is slow and a southern one fast; with its east side low
// any dial is fast. The page says which, as the number does.
func TestRulesOfThumb(t *testing.T) {
	for school, latitude := range map[string]float64{"alder reach": 46.09, "south": -45.87, "half hour": 27.7} {
		r := reckon(t, school, "dial-drift", "2027-04-20")
		phi := latitude * math.Pi / 180
		entrytest.Near(t, school+": turned", entrytest.Fact(t, r, "turned_at_noon").Number/60, -4*math.Sin(phi), 0.005)
		entrytest.Near(t, school+": leaning", entrytest.Fact(t, r, "leaning_at_noon").Number/60, 4*math.Cos(phi), 0.005)
		side := "slow"
		if latitude < 0 {
			side = "fast"
		}
		turned := fmt.Sprintf("%.1f min %s", math.Abs(4*math.Sin(phi)), side)
		leaning, steep := fmt.Sprintf("%.1f min fast", 4*math.Cos(phi)), entrytest.Shown(t, r, "steep_at_three")
		if got := entrytest.Shown(t, r, "turned_at_noon"); got != turned {
			t.Errorf("%s: turned it is %s, want %s", school, got, turned)
		}
		if got := entrytest.Shown(t, r, "leaning_at_noon"); got != leaning {
			t.Errorf("%s: leaning it is %s, want %s", school, got, leaning)
		}
		entrytest.Tells(t, r.Notes, "dial-drift.rule", "turned clockwise, "+turned, "east side low, "+leaning, "too steep", steep+" three hours after")
	}
}

// A gnomon of the wrong slope is right at noon and wrong to opposite sides
// before and after it.
func TestSlopeIsRightAtNoon(t *testing.T) {
	table := reckon(t, "alder reach", "dial-drift", "2027-04-20").Tables[1]
	for _, row := range table.Rows[:3] {
		cells := row.Cells[2:]
		entrytest.Near(t, "noon", cells[2].Number, 0, 1)
		for i := range 2 {
			if cells[i].Kind == say.Lasting && cells[4-i].Kind == say.Lasting {
				entrytest.Near(t, "both sides", cells[i].Number, -cells[4-i].Number, 1)
			}
		}
	}
}

// In the week after the equation of time turns, in the middle of May, it changes by a few
// seconds; in four months by minutes (TestDialDrift).
func TestDriftSaysWhatItsChartShows(t *testing.T) {
	for weeks, want := range map[string]string{"1": "dial-drift.finding_none", "16": "dial-drift.finding"} {
		if got := reckon(t, "alder reach", "dial-drift", "2027-05-12", "weeks="+weeks).Drawings[0].Finding.Key; got != want {
			t.Errorf("%s weeks: %s", weeks, got)
		}
	}
}
