package placeholder_test

import (
	"math"
	"strings"
	"testing"

	"noonbook/build/placeholder"
	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/typeset"
)

// Every chart says below it what it shows, in one sentence of either language, wherever the
// school is, unless there is nothing to say (no marks, no Sun).
func TestChartsSayWhatTheyShow(t *testing.T) {
	silent := map[string]bool{ // what needs a class's own records, or is a table in another shape
		"moon-log": true, "strip-log": true, "dial-marks": true, "rocket-log": true, "lens-log": true,
		"sun-path": true, "dial-drift": true, // at schools where the Sun stays down or nothing is off
		"world-compare": true, "weight-table": true, // pupils sort and compare them themselves
	}
	seen := 0
	for school := range entrytest.Schools {
		for _, e := range placeholder.Catalogue() {
			values := e.Complete(entrytest.Settings(t, school), nil, entrytest.Day(t, "2027-04-20"))
			r, err := e.Reckon(values)
			if err != nil || e.Lessons {
				continue
			}
			for _, d := range r.Drawings {
				chart := strings.HasPrefix(d.Name, "chart")
				if chart && d.Finding.Key == "" && !silent[e.Name] {
					t.Errorf("%s at %s: the chart %s says nothing", e.Name, school, d.Name)
				}
				if d.Finding.Key == "" {
					continue
				}
				seen++
				for _, language := range []string{"en", "fr"} {
					words, err := typeset.Language(language, false)
					if err != nil {
						t.Fatal(err)
					}
					line := words.For(r).Line(d.Finding)
					if !strings.HasSuffix(line, ".") || strings.Count(line, ". ") > 0 && e.Name != "rocket-log" || strings.Contains(line, "{") || len(line) > 200 {
						t.Errorf("%s at %s: %q", e.Name, school, line)
					}
				}
			}
		}
	}
	if seen < 30 {
		t.Errorf("only %d charts say what they show", seen)
	}
}

// What the curve of noons says is what geometry says: outside the tropics the Sun's greatest
// height is 90° less the latitude and 23.44°, the obliquity of the ecliptic (IAU 2006).
func TestFindingOfTheNoons(t *testing.T) {
	for _, c := range []struct{ latitude, want string }{{"60", "2027-06"}, {"-40", "2027-12"}} {
		e, _ := entry.Find(placeholder.Catalogue(), "sun-year")
		values, complaint := entrytest.Pairs(e, []string{"school.latitude=" + c.latitude})
		if complaint != "" {
			t.Fatal(complaint)
		}
		r, err := e.Reckon(e.Complete(entrytest.Settings(t, "alder reach"), values, entrytest.Day(t, "2027-04-20")))
		if err != nil {
			t.Fatal(err)
		}
		finding := r.Drawings[1].Finding.With
		latitude := map[string]float64{"60": 60, "-40": 40}[c.latitude]
		if got := finding[0].Number; math.Abs(got-(90-latitude+23.44)) > 0.05 {
			t.Errorf("%s: highest %v", c.latitude, got)
		}
		if got := finding[1].Time.Format("2006-01"); got != c.want {
			t.Errorf("%s: highest in %s", c.latitude, got)
		}
	}
}
