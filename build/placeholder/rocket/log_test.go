package rocket_test

import (
	"math"
	"strings"
	"testing"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
)

func tryFlights(t *testing.T, text string, given form.Values) (result.Result, error) {
	t.Helper()
	field, _ := school.Settings().Field("records.rocket_flights")
	records, faults := field.ReadRecords([]byte(text))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	records.File = "flights.csv"
	e, _ := entry.Find(entries(), "rocket-log")
	return e.Reckon(e.Complete(entrytest.Settings(t, "alder reach"), given.With(form.Values{"records.rocket_flights": records}), entrytest.Day(t, "2027-04-28")))
}

func ReckonFlights(t *testing.T, text string) result.Result {
	t.Helper()
	r, err := tryFlights(t, text, nil)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// Heights of 11, 14, 12 m and 13, 12, 15 m: Student's t-test of scipy 1.10.1 has a
// standard error of 1.247 219 m for the difference of the means, 1 m, with 4 degrees
// of freedom, and so 3.462 84 m for 95 %. Heights from the angles are right to 0.1 mm.
func TestLogAgainstScipy(t *testing.T) {
	r, err := tryFlights(t, entrytest.TwoTests, form.Values{"group": "A"})
	if err != nil {
		t.Fatal(err)
	}
	entrytest.Near(t, "difference", entrytest.Fact(t, r, "difference").Number, 1, 0.001)
	entrytest.Near(t, "doubt", entrytest.Fact(t, r, "difference_doubt").Number, 3.46284, 0.001)
	entrytest.Near(t, "scatter", entrytest.Fact(t, r, "scatter").Number, 1.5275, 0.001)
	entrytest.Near(t, "best mean", entrytest.Fact(t, r, "best_mean").Number, 40.0/3, 0.001)
	if got := entrytest.Fact(t, r, "finding").Phrase.Key; got != "rocket-log.found_nothing" {
		t.Errorf("the flights show %s", got)
	}
	if entrytest.Fact(t, r, "fair").Number != 1 {
		t.Errorf("not fair: %v", entrytest.Fact(t, r, "fair_why"))
	}
	means := entrytest.Column(t, r, "mean")
	entrytest.Near(t, "mean of 3 fins", means[0], 37.0/3, 0.001)
	entrytest.Near(t, "mean of 5 fins", means[1], 40.0/3, 0.001)
}

// What makes a test unfair is named, the first reason first.
func TestLogFindsWhatWasNotFair(t *testing.T) {
	const head = "group,fins,nose_mm,body_mm,other,stamp,pipe_deg,angle_deg\n"
	for name, c := range map[string]struct{ rows, why, finding string }{
		"one flight":      {"A,3,,,,1,90,15\n", "rocket-log.why_nothing", "rocket-log.found_one"},
		"fair":            {"A,3,,,,1,90,15\nA,3,,,,1,90,15.1\nA,5,,,,1,90,11\nA,5,,,,1,90,11.1\n", "rocket-log.why_fair", "rocket-log.found_more"},
		"once each":       {"A,3,,,,1,90,15\nA,5,,,,1,90,12\n", "rocket-log.why_fair", "rocket-log.found_repeat"},
		"two things":      {"A,3,40,,,1,90,15\nA,5,50,,,1,90,12\n", "rocket-log.why_several", "rocket-log.found_repeat"},
		"another pipe":    {"A,3,,,,1,90,15\nA,5,,,,1,80,12\n", "rocket-log.why_pipe", "rocket-log.found_repeat"},
		"no stamps":       {"A,3,,,,,90,15\nA,5,,,,,90,12\n", "rocket-log.why_unnamed", "rocket-log.found_repeat"},
		"stamps differ":   {"A,3,,,,1,90,15\nA,5,,,,2,90,12\n", "rocket-log.why_stamps", "rocket-log.found_repeat"},
		"stamps balanced": {"A,3,,,,1,90,15\nA,5,,,,2,90,12\nA,3,,,,2,90,15\nA,5,,,,1,90,12\n", "rocket-log.why_fair", "rocket-log.found_more"},
		"something else":  {"A,,,,tape,1,90,15\nA,,,,,1,90,12\n", "rocket-log.why_fair", "rocket-log.found_repeat"},
	} {
		r := ReckonFlights(t, head+c.rows)
		if got := entrytest.Fact(t, r, "fair_why").Phrase.Key; got != c.why {
			t.Errorf("%s: %s, want %s", name, got, c.why)
		}
		if got := entrytest.Fact(t, r, "finding").Phrase.Key; got != c.finding {
			t.Errorf("%s: %s, want %s", name, got, c.finding)
		}
		if fair := entrytest.Fact(t, r, "fair").Number == 1; fair != (c.why == "rocket-log.why_fair") {
			t.Errorf("%s: fair is %v", name, fair)
		}
	}
	r := ReckonFlights(t, head+"A,3,,,,1,90,15\nA,5,,,,2,90,12\n")
	if with := entrytest.Fact(t, r, "fair_why").Phrase.With; len(with) != 1 || with[0].Plain != "1, 2" {
		t.Errorf("the stamps that differed are %v", with)
	}
}

// Two angles, one, the other one, or the time: each flight is measured by the
// best that it has.
func TestLogMeasuresByTheBestItHas(t *testing.T) {
	r := ReckonFlights(t, "angle_deg,second_angle_deg,flight_s,baseline_m,apart_m\n15,15,3,40,80\n15,,3,40,80\n,15,3,40,80\n,,3,40,80\n")
	var ways []string
	var heights []float64
	for _, table := range r.Tables {
		if table.Name == "flights" {
			for _, row := range table.Rows {
				ways = append(ways, row.Cells[4].Phrase.Key)
				heights = append(heights, row.Cells[5].Number)
			}
		}
	}
	if got := strings.Join(ways, " "); got != "rocket-log.two_stations rocket-log.one_station rocket-log.one_station rocket-log.by_time" {
		t.Error(got)
	}
	for _, h := range heights[:3] { // midway between the stations all three agree
		entrytest.Near(t, "height", h, 40*math.Tan(15*math.Pi/180)+1.35, 1e-9)
	}
	if empty := reckon(t, "alder reach", "rocket-log", "2027-04-28"); entrytest.Fact(t, empty, "best").Kind != say.Nothing || len(empty.Notes) == 0 {
		t.Error("without records something is found")
	}
}

func TestLogRefusesWhatGivesNoHeight(t *testing.T) {
	for text, want := range map[string]string{
		"fins\n3\n": "flights.csv, line 2: a flight needs",
		"angle_deg,second_angle_deg,bearing_deg,second_bearing_deg\n40,40,0,0\n80,20,80,-89\n": "", // meets far off, but it meets
		"flight_s\n20\n":                 "flights.csv, line 2: flight of 20 s",
		"angle_deg,baseline_m,apart_m\n": "",
	} {
		_, err := tryFlights(t, text, nil)
		if want == "" && err != nil || want != "" && (err == nil || !strings.Contains(err.Error(), want)) {
			t.Errorf("%q: %v", text, err)
		}
	}
	if _, err := tryFlights(t, entrytest.TwoTests, form.Values{"group": "C"}); err == nil {
		t.Error("a group that is not there")
	}
	field, _ := school.Settings().Field("records.rocket_flights")
	for _, angle := range []string{"0", "90", "-3", "135", "steep"} {
		if _, faults := field.ReadRecords([]byte("angle_deg\n" + angle + "\n")); len(faults) != 1 || faults[0].Line != 2 {
			t.Errorf("an angle of %s: %v", angle, faults)
		}
	}
}

// The middle one of five flights at 15, 15.2, 14.9, 15.1 and 24° is that at 15.1°, and the
// others lie a few hundredths of a metre to 0.3 m from it; the one at 24° is metres above.
func TestLogMarksTheFlightThatDeparts(t *testing.T) {
	const head = "group,fins,stamp,baseline_m,angle_deg\n"
	for name, c := range map[string]struct {
		rows, key, says string
		odd             int
	}{
		"departs":     {"1,3,1,41,15\n2,3,2,41,15.2\n3,3,3,41,14.9\n4,3,4,41,24\n5,3,5,41,15.1\n", "rocket-log.chart_finding_odd", "flight 4 (group\u00a04), 19.6\u00a0m.", 4},
		"no group":    {",3,1,41,15\n,3,2,41,15.2\n,3,3,41,14.9\n,3,5,41,15.1\n,3,4,41,4\n", "rocket-log.chart_finding_odd", ": flight 5, 4.2\u00a0m.", 5},
		"all agree":   {"1,3,1,41,15\n2,3,2,41,15.2\n3,3,3,41,14.9\n4,3,4,41,15.3\n5,3,5,41,15.1\n", "rocket-log.chart_finding", "compared.", 0},
		"all equal":   {"1,3,1,41,15\n2,3,2,41,15\n3,3,3,41,15\n4,3,4,41,15\n5,3,5,41,15\n", "rocket-log.chart_finding", "compared.", 0},
		"few":         {"1,3,1,41,15\n2,3,2,41,15\n3,3,3,41,15\n4,3,4,41,24\n", "rocket-log.chart_finding", "compared.", 0},
		"once each":   {"1,3,1,41,15\n2,4,2,41,15\n3,5,3,41,15\n4,6,4,41,24\n5,7,5,41,15\n", "rocket-log.chart_finding", "stamp.", 0},
		"one":         {"1,3,1,41,15\n", "rocket-log.chart_finding", "compared.", 0},
		"two rockets": {"1,3,1,41,10\n1,3,2,41,10.2\n1,3,3,41,9.9\n1,5,4,41,24\n1,5,5,41,24.1\n1,5,5,41,24.2\n", "rocket-log.chart_finding", "of 0.2\u00a0m.", 0},
	} {
		r := ReckonFlights(t, head+c.rows)
		chart := r.Drawings[0]
		if says := entrytest.English(t).Line(chart.Finding); chart.Finding.Key != c.key || !strings.HasSuffix(says, c.says) {
			t.Errorf("%s: %s, %q", name, chart.Finding.Key, says)
		}
		dots := entrytest.Roled(chart, "odd")
		if len(dots) != min(c.odd, 1) {
			t.Errorf("%s: %d dots stand out", name, len(dots))
		}
		for i, row := range r.Tables[1].Rows {
			if row.Marked != (i+1 == c.odd) {
				t.Errorf("%s: row %d is marked: %v", name, i+1, row.Marked)
			}
		}
		if c.odd > 0 { // the dot is the flight's, not its neighbour's
			far := chart.Shapes[0].Points[0]
			for _, s := range entrytest.Roled(chart, "mark") {
				if far == chart.Shapes[0].Points[0] || (s.Points[0].Y < far.Y) == (c.odd == 4) {
					far = s.Points[0]
				}
			}
			if dots[0].Points[0] != far {
				t.Errorf("%s: the dot at %v stands out, not that at %v", name, dots[0].Points[0], far)
			}
		}
	}
}
