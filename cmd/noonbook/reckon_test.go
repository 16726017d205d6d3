package main

import (
	"encoding/json"
	"math"
	"regexp"
	"strings"
	"testing"
)

// reckoned is the JSON that reckon answers.
type reckoned struct {
	Placeholder string
	Facts       map[string]struct {
		Value any
		Unit  string
		Text  string
	}
	Tables []struct {
		Name, Title string
		Columns     []struct{ Name, Unit string }
		Rows        [][]any
	}
	Working, Sources, Warnings []string
}

func TestReckonJSON(t *testing.T) {
	t.Chdir(t.TempDir()) // the demo's school
	var r reckoned
	if err := json.Unmarshal([]byte(must(t, "reckon", "dial-table", "--json", "school.latitude=44")), &r); err != nil {
		t.Fatal(err)
	}
	if f := r.Facts["gnomon_angle"]; f.Value != 44.0 || f.Unit != "deg" || f.Text != "44.0°" {
		t.Errorf("gnomon_angle is %v", f)
	}
	columns := map[string]int{}
	for i, c := range r.Tables[0].Columns {
		columns[c.Name] = i
	}
	six := 0
	for _, row := range r.Tables[0].Rows {
		h, x := row[columns["hour_angle"]].(float64), row[columns["line_angle"]].(float64)
		if math.Abs(h) == 90 {
			six++
			if math.Abs(math.Abs(x)-90) > 1e-9 {
				t.Errorf("six o'clock is at %v", x)
			}
		}
		if clock := row[columns["clock_time"]].(string); !regexp.MustCompile(`^2027-04-1\dT\d\d:\d\d:\d\d-03:00$`).MatchString(clock) {
			t.Errorf("clock time %s", clock)
		}
	}
	if six != 2 || r.Placeholder != "dial-table" || len(r.Working) == 0 || len(r.Sources) == 0 || r.Warnings == nil {
		t.Errorf("%d six o'clock lines in %+v", six, r)
	}
}

func TestReckonCSVAndText(t *testing.T) {
	t.Chdir(t.TempDir())
	csv := must(t, "reckon", "--csv", "strip-table", "stock.strip_squares=200", "to=pluto", "show=places")
	if !strings.HasPrefix(csv, "fact,value,unit,text\r\nstrip_length,22,m,22.0\u00a0m\r\n") {
		t.Errorf("csv begins %.90q", csv)
	}
	_, csv, _ = strings.Cut(csv, "\r\n\r\n") // behind the facts
	if !strings.HasPrefix(csv, "body,orbit_au,bode_au,bode_off_percent,squares,seam,past_cm,metres_m,fits\r\nSun,0,,,0,0,0,0,true\r\n") {
		t.Errorf("csv's table begins %.90q", csv)
	}
	if lines := strings.Count(csv, "\r\n"); lines != 12 {
		t.Errorf("%d lines", lines)
	}
	text := must(t, "reckon", "sun-day", "date=2027-04-20")
	if !strings.Contains(text, "On 20 April 2027 the Sun rises at 6:24 and sets at 20:13") {
		t.Errorf("it says %s", text)
	}
	list := must(t, "reckon", "--list")
	for _, name := range []string{"dial-table", "step_minutes", "gnomon_angle", "school.time_zone"} {
		if !strings.Contains(list, name) {
			t.Errorf("the list lacks %s", name)
		}
	}
}
