package main

import (
	"encoding/json"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"noonbook/build/placeholder"
	"noonbook/build/school"
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
	Working, Sources, Warnings, Cautions, Notes []string

	Date  *string
	Place *struct {
		Name                string
		Latitude, Longitude float64
		ElevationM          float64 `json:"elevation_m"`
		TimeZone            string  `json:"time_zone"`
	}
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
	if !strings.HasPrefix(csv, "fact,value,unit,text\r\nstrip_length,23,m,23.0\u00a0m\r\n") {
		t.Errorf("csv begins %.90q", csv)
	}
	_, csv, _ = strings.Cut(csv, "\r\n\r\n") // behind the facts
	if !strings.HasPrefix(csv, "body,orbit_au,bode_au,bode_off_percent,squares,seam,past_cm,metres_m,fits\r\nSun,0,,,0,0,0,0,true\r\n") {
		t.Errorf("csv's table begins %.90q", csv)
	}
	if lines := strings.Count(csv, "\r\n"); lines != 12 {
		t.Errorf("%d lines", lines)
	}
	for want, given := range map[string][]string{
		"On April 20, 2027, the Sun rises at 6:24\u00a0a.m. and sets at 8:13\u00a0p.m.":                nil, // as the demo's school says it
		"On 20 April 2027 the Sun rises at 6:24 and sets at 20:13":                                     {"school.clock=24-hour", "school.dates=day first"},
		"Le 20\u00a0avril 2027, le Soleil se lève à 6\u00a0h\u00a024 et se couche à 20\u00a0h\u00a013": {"school.language=fr"},
	} {
		if text := must(t, append([]string{"reckon", "sun-day", "date=2027-04-20"}, given...)...); !strings.Contains(text, want) {
			t.Errorf("%v: it says %s", given, text)
		}
	}
	if bare := must(t, "reckon", "--json", "sun-day.rise", "date=2027-04-20"); !strings.Contains(bare, `"2027-04-20T06:24:`) {
		t.Errorf("JSON says %s", bare)
	}
	list := must(t, "reckon", "--list")
	for _, name := range []string{"dial-table", "step_minutes", "gnomon_angle", "school.time_zone"} {
		if !strings.Contains(list, name) {
			t.Errorf("the list lacks %s", name)
		}
	}
}

// The day and the place of an answer are those that it was computed for: what the
// pairs say, else what unit.toml says; none where an answer is the same everywhere.
func TestReckonSaysWhenAndWhere(t *testing.T) {
	dir := folder(t, map[string]string{"1-a.md": lesson})
	answer := func(args ...string) (r reckoned) {
		t.Helper()
		if err := json.Unmarshal([]byte(must(t, append([]string{"reckon", "--json", "--content", dir}, args...)...)), &r); err != nil {
			t.Fatal(err)
		}
		return r
	}
	own := answer("sun-day")
	if own.Date == nil || *own.Date != "2027-05-03" || own.Place == nil || own.Place.Latitude != -45.87 || own.Place.Longitude != 170.5 || own.Place.TimeZone != "Pacific/Auckland" || own.Place.Name == "" {
		t.Errorf("on the first day of term at the school: %v, %+v", own.Date, own.Place)
	}
	other := answer("sun-day", "date=2027-06-21", "school.latitude=12.5", "school.longitude=-3", "school.elevation_m=100", "school.time_zone=UTC")
	if *other.Date != "2027-06-21" || other.Place.Latitude != 12.5 || other.Place.Longitude != -3 || other.Place.ElevationM != 100 || other.Place.TimeZone != "UTC" {
		t.Errorf("elsewhere: %v, %+v", *other.Date, *other.Place)
	}
	if none := answer("lens-power"); none.Date != nil || none.Place != nil {
		t.Errorf("a lens: %v, %v", none.Date, none.Place)
	}
	if r := answer("dial-north"); len(r.Cautions) == 0 || len(r.Sources) == 0 || r.Warnings == nil || r.Notes == nil {
		t.Errorf("cautions %v, notes %v, sources %v", r.Cautions, r.Notes, r.Sources)
	}
}

// The place of an answer is as much of it as the placeholder reads.
func TestPlacesAreWhatIsRead(t *testing.T) {
	dir := folder(t, map[string]string{"1-a.md": lesson})
	tried := map[int]int{}
	for _, e := range placeholder.Catalogue() {
		parts := map[string]bool{}
		for _, key := range school.Where() {
			if slices.Contains(e.Settings, key) {
				parts[strings.TrimPrefix(key.Name(), "school.")] = true
			}
		}
		if tried[len(parts)]++; tried[len(parts)] > 2 {
			continue // two of each kind are enough
		}
		var r struct{ Place map[string]any }
		if code, out, _ := noonbook(t, "reckon", "--json", "--content", dir, e.Name); code != done {
			tried[len(parts)]-- // one that wants arguments
			continue
		} else if err := json.Unmarshal([]byte(out), &r); err != nil {
			t.Fatal(err)
		}
		if (r.Place != nil) != (len(parts) > 0) {
			t.Errorf("%s reads %v, and its place is %v", e.Name, parts, r.Place)
		}
		for name, v := range r.Place {
			if name != "name" && (v != nil) != parts[name] {
				t.Errorf("%s reads %v, and its place is %v", e.Name, parts, r.Place)
			}
		}
	}
	if tried[0] == 0 || tried[1] == 0 || tried[4] == 0 {
		t.Errorf("tried were %v", tried)
	}
}

// A fact by itself is its words on one line, for a script; cautions and warnings go
// where a script does not look, and are not lost.
func TestReckonOneFact(t *testing.T) {
	dir := folder(t, map[string]string{"1-a.md": lesson})
	reckon := func(args ...string) (out, errs string) {
		t.Helper()
		return mustAll(t, append([]string{"reckon", "--content", dir}, args...)...)
	}
	for want, args := range map[string][]string{
		"24\n":                {"class-facts.pupils"},
		"7\n":                 {"class-facts.pupils", "class.pupils=7"},
		"45.87°\u00a0south\n": {"place-facts.latitude"},
		"45,87°\u00a0sud\n":   {"place-facts.latitude", "school.language=fr"},
		"10\u00a0in\n":        {"dial-table.gnomon_style", "school.measure=customary", "stock.style_mm=254"},
		"a\\nb”; c\n":         {"class-facts.school", "school.name=a\nb\x22; c"},
	} {
		if out, _ := reckon(args...); out != want {
			t.Errorf("%q says %q, want %q", args, out, want)
		}
	}
	_, errs := reckon("dial-north.noon_shadow")
	whole := must(t, "reckon", "--content", dir, "dial-north")
	lines := 0
	for line := range strings.Lines(whole) {
		if strings.HasPrefix(line, "! ") {
			lines++
			if !strings.Contains(errs, line) {
				t.Errorf("the fact comes without %q", line)
			}
		}
	}
	if lines == 0 || strings.Count(errs, "\n") != lines {
		t.Errorf("%d cautions and warnings, and it says %q", lines, errs)
	}
	var r reckoned
	out, _ := reckon("dial-north.noon_shadow", "--json")
	if err := json.Unmarshal([]byte(out), &r); err != nil {
		t.Fatal(err)
	}
	if _, ok := r.Facts["noon_shadow"]; !ok || len(r.Facts) != 1 || len(r.Tables) != 0 || len(r.Cautions)+len(r.Warnings) != lines || len(r.Sources) == 0 || r.Placeholder != "dial-north" {
		t.Errorf("as JSON it is %s", out)
	}
	if out, _ := reckon("class-facts.pupils", "--csv"); out != "fact,value,unit,text\r\npupils,24,,24\r\n" {
		t.Errorf("as CSV it is %q", out)
	}
	for want, args := range map[string][]string{
		`reckon: class-facts has no fact "pupil"; did you mean "pupils"?`:         {"class-facts.pupil"},
		`reckon: class-facts has no fact ""; want one of `:                        {"class-facts."},
		`reckon: "class-fact" is not a placeholder; did you mean "class-facts"?`:  {"class-fact.pupils"},
		`reckon: --json and --csv are two forms`:                                  {"class-facts", "--json", "--csv"},
		`reckon: "class-fact" is not a placeholder; did you mean "class-facts"? `: {"--list", "class-fact"},
		`reckon: "moon-day" is too much`:                                          {"--list", "class-facts", "moon-day"},
	} {
		code, out, errs := noonbook(t, append([]string{"reckon"}, args...)...)
		if code != wrongUse || !strings.HasPrefix(errs, strings.TrimRight("noonbook: "+want, " ")) || strings.Count(errs, "\n") != 1 || out != "" {
			t.Errorf("%v: exit %d, %q %q", args, code, out, errs)
		}
	}
}

// The list of one placeholder is its part of the whole list.
func TestListOfOnePlaceholder(t *testing.T) {
	whole := "\n" + must(t, "reckon", "--list") + "\n"
	for _, e := range placeholder.Catalogue() {
		one := must(t, "reckon", "--list", e.Name)
		if !strings.HasPrefix(one, e.Name+"\n") || !strings.Contains(whole, "\n"+one+"\n") {
			t.Errorf("%s: %s", e.Name, one)
		}
		for _, name := range append(e.FactNames(), e.Arguments.Names()...) {
			if !strings.Contains(one, " "+name+" ") {
				t.Errorf("%s: the list lacks %s", e.Name, name)
			}
		}
	}
}
