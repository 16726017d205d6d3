package placeholder_test

import (
	"math"
	"strings"
	"testing"

	"noonbook/build/placeholder"
	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/result"
	"noonbook/build/typeset"
)

// Every chart says below it what it shows, in one sentence of either language, wherever the
// school is. A rocket's flights may have one more for the flight that departs; pairs of
// flights have two already. A table of worlds that pupils sort gives nothing away.
func TestChartsSayWhatTheyShow(t *testing.T) {
	seen := 0
	look := func(where, name string, r result.Result) {
		sentences := 1
		if name == "rocket-log" {
			sentences = 3
		}
		for _, d := range r.Drawings {
			if strings.HasPrefix(d.Name, "chart") && d.Finding.Key == "" && name != "world-compare" {
				t.Errorf("%s at %s: the chart %s says nothing", name, where, d.Name)
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
				if !strings.HasSuffix(line, ".") || strings.Count(line+" ", ". ") > sentences || strings.Contains(line, "{") || len(line) > 120+80*sentences {
					t.Errorf("%s at %s: %q", name, where, line)
				}
			}
		}
	}
	for school := range entrytest.Schools {
		for _, e := range placeholder.Catalogue() {
			values := e.Complete(entrytest.Settings(t, school), nil, entrytest.Day(t, "2027-04-20"))
			r, err := e.Reckon(values)
			if err != nil || e.Lessons {
				continue
			}
			look(school, e.Name, r)
		}
	}
	for name, text := range entrytest.SampleLogs {
		look("a sample log", name, reckonLog(t, "alder reach", name, text))
	}
	if seen < 90 {
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
