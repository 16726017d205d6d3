package moon_test

import (
	"slices"
	"strings"
	"testing"

	"noonbook/build/placeholder/entrytest"
)

func TestMoonLogAgainstPyephem(t *testing.T) {
	r := reckonLog(t, "alder reach", "moon-log", entrytest.MoonAtAlderReach)
	var verdicts []string
	for _, row := range r.Tables[0].Rows {
		verdicts = append(verdicts, entrytest.English(t).Text(row.Cells[len(row.Cells)-1]))
	}
	want := []string{
		"fits",
		"the Moon was down: wrong time or date",
		"it was down",
		"the lit part, the side, the direction and the height",
		"fits",
		"cloud",
		"it was up",
	}
	if !slices.Equal(verdicts, want) {
		t.Errorf("in the order of time the verdicts are\n%q, want\n%q", verdicts, want)
	}
	for name, want := range map[string]float64{"looks": 7, "seen": 4, "clouded": 1, "fit": 2} {
		if got := entrytest.Fact(t, r, name).Number; got != want {
			t.Errorf("%s is %v, want %v", name, got, want)
		}
	}
	// (|50 − 48.3| + |80 − 81.4| + |30 − 81.4|) / 3; pyephem gives the lit part for the
	// Earth's centre, 0.3 % from the school's at most for a Moon at 57 radii.
	entrytest.Near(t, "lit_off", entrytest.Fact(t, r, "lit_off").Number, (1.7+1.4+51.4)/3, 0.4)
}

// A Moon overhead has no side and no direction that two pupils would agree on: pyephem
// 4.1.4 for 1.4° N, 103.8° E has it 83.6° high at 2027-04-17 14:00 UTC, 86.8 % lit, and
// 74.6° high at 2027-04-15 13:00 UTC, azimuth 346.7°, where a wrong direction counts.
func TestMoonLogOverhead(t *testing.T) {
	const head = "date,time,lit_percent,lit_side,direction,altitude_deg\n"
	for row, fit := range map[string]float64{
		"2027-04-17,22:00,85,left,west,85\n": 1, "2027-04-17,22:00,85,right,south,85\n": 1, "2027-04-17,22:00,85,right,south,60\n": 0,
		"2027-04-15,21:00,70,,north,75\n": 1, "2027-04-15,21:00,70,,south,75\n": 0,
	} {
		if got := entrytest.Fact(t, reckonLog(t, "line north", "moon-log", head+row), "fit").Number; got != fit {
			t.Errorf("%q: %v fit, want %v", row, got, fit)
		}
	}
}

// South of the equator the same Moon is lit on the other side: pyephem for
// 45.87° S, 170.5° E at 2027-04-13 05:00 UTC has 41.6 % lit, azimuth 16.9°,
// altitude 15.7°, lit at 278° from the top.
func TestMoonLogInTheSouth(t *testing.T) {
	const head = "date,time,lit_percent,lit_side,direction,altitude_deg\n"
	if r := reckonLog(t, "south", "moon-log", head+"2027-04-13,17:00,40,left,north,15\n"); entrytest.Fact(t, r, "fit").Number != 1 {
		t.Errorf("a true look does not fit: %v", r.Tables[0].Rows)
	}
	north := reckonLog(t, "south", "moon-log", head+strings.Repeat("2027-04-13,17:00,40,right,north,15\n", 3))
	if entrytest.Fact(t, north, "fit").Number != 0 || len(north.Notes) != 1 || north.Notes[0].Key != "moon-log.mirrored" {
		t.Errorf("a diary of mirrored Moons is not told: %v", north.Notes)
	}
}

func TestMoonLogContradictsItself(t *testing.T) {
	_, err := tryLog(t, "alder reach", "moon-log", "date,time,seen,lit_percent\n2027-04-13,16:00,cloud,40\n")
	if err == nil || !strings.Contains(err.Error(), `log.csv, line 2: seen is not "yes"`) {
		t.Errorf("got %v", err)
	}
	_, err = tryLog(t, "alder reach", "moon-log", "date,time\n9000-04-13,16:00\n")
	if err == nil || !strings.Contains(err.Error(), "log.csv, line 2: ") {
		t.Errorf("got %v", err)
	}
}

// Looks at one Moon, 48.3 % lit by pyephem (entrytest.MoonAtAlderReach).
func TestMoonLogMarksTheLookThatDeparts(t *testing.T) {
	const head, good = "group,date,time,seen,lit_percent\n", "A,2027-04-13,16:00,yes,50\nB,2027-04-13,16:00,yes,45\nC,2027-04-13,16:00,yes,40\nD,2027-04-13,16:00,yes,50\nE,2027-04-13,16:00,yes,55\n"
	for name, c := range map[string]struct {
		rows, says string
		odd        int
	}{
		"departs":   {good + "Owls,2027-04-13,16:01,yes,90\n", "The lit parts that we judged are usually 5\u00a0% from the almanac’s; the look that departs most is that of 13 April 2027 (group\u00a0Owls), by 42\u00a0%.", 1},
		"no group":  {good + ",2027-04-13,16:01,yes,90\n", "The lit parts that we judged are usually 5\u00a0% from the almanac’s; the look that departs most is that of 13 April 2027, by 42\u00a0%.", 1},
		"agree":     {good, "The lit parts that we judged are usually 3\u00a0% from the almanac’s and at most 8\u00a0%; none departs clearly from the others.", 0},
		"all equal": {strings.Repeat("A,2027-04-13,16:00,yes,30\n", 5), "The lit parts that we judged are usually 18\u00a0% from the almanac’s and at most 18\u00a0%; none departs clearly from the others.", 0},
		"few":       {"A,2027-04-13,16:00,yes,50\nA,2027-04-13,16:00,yes,90\n", "The 2 lit parts that we judged are at most 42\u00a0% from the almanac’s; they are too few to tell which one is wrong.", 0},
		"one":       {"A,2027-04-13,16:00,yes,50\nB,2027-04-14,16:00,cloud,\n", "The one lit part that we judged is 2\u00a0% from the almanac’s.", 0},
		"cloud":     {"B,2027-04-14,16:00,cloud,\n", "Nobody has written down a lit part yet; the curve is the almanac’s.", 0},
	} {
		r := reckonLog(t, "alder reach", "moon-log", head+c.rows)
		if got := entrytest.English(t).Line(r.Drawings[0].Finding); got != c.says {
			t.Errorf("%s: %q", name, got)
		}
		if odd := entrytest.Roled(r.Drawings[0], "odd"); len(odd) != c.odd {
			t.Errorf("%s: %d dots stand out", name, len(odd))
		}
	}
	if none := reckonLog(t, "alder reach", "moon-log", head); len(none.Drawings) != 0 {
		t.Error("a chart of nothing")
	}
}
