package placeholder_test

import (
	"fmt"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"noonbook/build/form"
	"noonbook/build/placeholder"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/build/typeset"
	"noonbook/compute/classroom"
	"noonbook/compute/place"
)

// schools are far apart: both hemispheres, the line, the polar day and night,
// the pole, zones with half hours and on the other side of the date line.
var schools = map[string]string{
	"alder reach": `school.latitude = 46.09
school.longitude = -64.77
school.time_zone = "America/Moncton"`,
	"south": `school.latitude = -45.87
school.longitude = 170.5
school.time_zone = "Pacific/Auckland"`,
	"line south": `school.latitude = -0.2
school.longitude = -78.5
school.time_zone = "America/Guayaquil"`,
	"equator": `school.latitude = 0
school.longitude = 6.7
school.time_zone = "Africa/Lagos"`,
	"line north": `school.latitude = 1.4
school.longitude = 103.8
school.time_zone = "Asia/Singapore"`,
	"arctic": `school.latitude = 69.6
school.longitude = 18.95
school.time_zone = "Europe/Oslo"`,
	"north pole": `school.latitude = 90
school.longitude = 0
school.time_zone = "UTC"`,
	"south pole": `school.latitude = -90
school.longitude = 180
school.time_zone = "Antarctica/McMurdo"`,
	"half hour": `school.latitude = 27.7
school.longitude = 85.3
school.time_zone = "Asia/Kathmandu"`,
	"far east": `school.latitude = 1.87
school.longitude = -157.4
school.time_zone = "Pacific/Kiritimati"`,
}

func settings(t testing.TB, where string) form.Values {
	t.Helper()
	text := "unit.title = \"T\"\nschool.name = \"S\"\nterm.first_day = 2027-04-12\nterm.last_day = 2027-04-30\n" + schools[where]
	values, faults, _ := school.Settings().Read([]byte(text))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	return school.Settings().Complete(values)
}

// lessons are those of a small unit, for entries that read them.
var lessons = []classroom.Lesson{
	{Title: "Build", Page: "build.html", Start: classroom.AnyTime, Needs: []classroom.Need{{Kind: classroom.SunUp, Height: classroom.SunLeast}, {Kind: classroom.Dry}}, Kit: []classroom.Thing{
		{Item: "card", Count: 1, Share: classroom.PerGroup, Spare: 2},
		{Item: "scissors", Count: 1, Share: classroom.PerPupil},
		{Item: "box", Count: 1, Share: classroom.PerGroup, Source: classroom.FromHome},
	}},
	{Title: "Read", Page: "read.html", Start: classroom.AnyTime, Needs: []classroom.Need{{Kind: classroom.SunUp, Height: classroom.SunLeast, Window: 30 * time.Minute}}, Length: 90 * time.Minute},
	{Title: "Strip", Page: "strip.html", Start: classroom.AnyTime, Kit: []classroom.Thing{{Item: "card", Count: 3}}},
	{Title: "Stars", Page: "stars.html", Start: 20 * time.Hour, Length: time.Hour, Needs: []classroom.Need{{Kind: classroom.Dark}}},
}

func day(t *testing.T, date string) place.Date {
	t.Helper()
	d, err := place.ParseDate(date)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// reckon evaluates a placeholder at a school; given are key=value pairs.
func reckon(t *testing.T, where, name, date string, given ...string) result.Result {
	t.Helper()
	entry, ok := placeholder.Find(placeholder.Catalogue(), name)
	if !ok {
		t.Fatalf("no placeholder %s", name)
	}
	values := form.Values{}
	for _, pair := range given {
		key, value, _ := strings.Cut(pair, "=")
		v, complaint := entry.Form(school.Settings()).ParsePair(key, value)
		if complaint != "" {
			t.Fatal(complaint)
		}
		values[key] = v
	}
	complete := entry.Complete(settings(t, where), values, day(t, date))
	r, err := entry.Reckon(entry.WithLessons(complete, lessons, placeholder.Calendar(complete, lessons), 2))
	if err != nil {
		t.Fatalf("%s at %s: %v", name, where, err)
	}
	return r
}

func fact(t *testing.T, r result.Result, name string) say.Value {
	t.Helper()
	v, ok := r.Fact(name)
	if !ok {
		t.Fatalf("no fact %s", name)
	}
	return v
}

// column returns the numbers of a column of the first table.
func column(t *testing.T, r result.Result, name string) []float64 {
	t.Helper()
	i := slices.IndexFunc(r.Tables[0].Columns, func(c result.Column) bool { return c.Name == name })
	if i < 0 {
		t.Fatalf("no column %s", name)
	}
	var numbers []float64
	for _, row := range r.Tables[0].Rows {
		numbers = append(numbers, row.Cells[i].Number)
	}
	return numbers
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s is %v, want %v ± %v", what, got, want, tolerance)
	}
}

func TestCatalogueIsSortedAndDocumented(t *testing.T) {
	names := placeholder.Names(placeholder.Catalogue())
	if !slices.IsSorted(names) || len(slices.Compact(slices.Clone(names))) != len(names) {
		t.Errorf("names are %v", names)
	}
	for _, e := range placeholder.Catalogue() {
		if e.Summary == "" || len(e.Facts) == 0 || len(e.Sources) == 0 {
			t.Errorf("%s lacks a summary, facts or sources", e.Name)
		}
		for _, name := range placeholder.CalendarSettings() {
			if e.Lessons && !slices.Contains(e.Settings, name) {
				t.Errorf("%s reads lessons and not %s, on which their days depend", e.Name, name)
			}
		}
	}
}

// Everywhere and on every kind of day a placeholder answers exactly the facts
// that it documents, and every value can be written, in each language and measure.
func TestFactsAreTheDocumentedOnes(t *testing.T) {
	var languages []*typeset.Words
	for _, code := range typeset.Languages() {
		for _, customary := range []bool{false, true} {
			words, err := typeset.Language(code, customary)
			if err != nil {
				t.Fatal(err)
			}
			languages = append(languages, words)
		}
	}
	for school := range schools {
		for _, e := range placeholder.Catalogue() {
			for _, date := range []string{"2027-01-01", "2027-04-20", "2027-06-21", "2027-11-07", "2027-12-21"} {
				r := reckon(t, school, e.Name, date)
				var got []string
				for _, f := range r.Facts {
					got = append(got, f.Name)
					for _, words := range languages {
						if text := words.Text(f.Value); text == "" || strings.Contains(text, "⟦") || strings.Contains(text, "NaN") {
							t.Errorf("%s, %s, %s: in %s %s reads %q", school, e.Name, date, words.Code, f.Name, text)
						}
					}
				}
				for _, words := range languages {
					if date != "2027-04-20" {
						break // one day is enough for what stands round the facts
					}
					if block := string(words.AppendBlock(nil, e.Name, r, nil)); strings.Contains(block, "⟦") || strings.Contains(block, "NaN") {
						t.Errorf("%s, %s: in %s a word or a number is missing: %s", school, e.Name, words.Code, block)
					}
				}
				if want := e.FactNames(); !slices.Equal(slices.Sorted(slices.Values(got)), slices.Sorted(slices.Values(want))) {
					t.Errorf("%s has the facts %v, documents %v", e.Name, got, want)
				}
				for _, table := range r.Tables {
					for _, row := range table.Rows {
						if len(row.Cells) != len(table.Columns) {
							t.Errorf("%s: a row of %d cells under %d columns", e.Name, len(row.Cells), len(table.Columns))
						}
					}
				}
			}
		}
	}
}

// Every word that is asked for is in the words file, and every word of the file
// is asked for: by a literal in the code or a template, or by a name of the
// catalogue.
func TestWordsAreThereAndUsed(t *testing.T) {
	words, err := typeset.Language("en", false)
	if err != nil {
		t.Fatal(err)
	}
	asked := map[string]bool{}
	key := regexp.MustCompile("[\"`]([a-z][a-z-]*\\.[a-z_]+[0-9]*)[\"`]")
	for _, folder := range []string{"../../build", "../../theme"} {
		err := filepath.WalkDir(folder, func(name string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || strings.HasSuffix(name, "_test.go") {
				return err
			}
			if ext := filepath.Ext(name); ext != ".go" && ext != ".html" {
				return nil
			}
			src, err := os.ReadFile(name)
			for _, m := range key.FindAllSubmatch(src, -1) {
				asked[string(m[1])] = true
			}
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	var derived []string
	for _, e := range placeholder.Catalogue() {
		derived = append(derived, e.Name+".name")
		for _, f := range e.Facts {
			derived = append(derived, e.Name+".fact."+f.Name)
		}
		r := reckon(t, "alder reach", e.Name, "2027-04-20")
		if e.Name == "kit-list" {
			r = reckon(t, "alder reach", e.Name, "2027-04-20", "by_lesson=true")
		}
		if e.Name == "dial-marks" {
			r = reckonMarks(t, "alder reach", twoGroups)
		}
		if e.Name == "moon-log" || e.Name == "strip-log" {
			r = reckonLog(t, "alder reach", e.Name, sampleLogs[e.Name])
		}
		if e.Name == "family-note" {
			r = reckon(t, "alder reach", e.Name, "2027-04-20", "class.pupils=24")
		}
		if e.Name == "lesson-sky" {
			r = reckon(t, "alder reach", e.Name, "2027-04-20", "lesson=1")
		}
		if e.Name == "rocket-log" {
			r = reckonFlights(t, twoTests)
		}
		if e.Name == "world-compare" { // columns that only some orders have
			for _, order := range []string{"sort=year", "sort=tilt"} {
				r.Tables = append(r.Tables, reckon(t, "alder reach", e.Name, "2027-04-20", order).Tables...)
			}
		}
		for _, table := range r.Tables {
			for _, c := range table.Columns {
				derived = append(derived, e.Name+"."+table.Name+"."+c.Name)
				if c.Unit != "" {
					derived = append(derived, "units."+c.Unit)
				}
			}
		}
		if e.Name == "strip-table" {
			for _, row := range r.Tables[0].Rows {
				derived = append(derived, row.Cells[0].Phrase.Key)
			}
		}
		if e.Name == "world-cards" { // names, airs, questions and features of the worlds
			for _, table := range r.Tables {
				for _, row := range table.Rows {
					for _, cell := range row.Cells {
						if cell.Phrase.Key != "" {
							derived = append(derived, cell.Phrase.Key)
						}
					}
				}
			}
		}
		for _, f := range r.Facts {
			if f.Value.Kind == say.Quantity && f.Value.Unit != "" {
				derived = append(derived, "units."+f.Value.Unit)
			}
		}
	}
	for i := range 12 {
		derived = append(derived, fmt.Sprint("month.", i+1), fmt.Sprint("weekday.", i%7))
	}
	for _, share := range []string{"class", "group", "pupil"} {
		derived = append(derived, "kit."+share, "kit."+share+"_spare")
	}
	for _, aside := range []string{"answer", "staff"} {
		derived = append(derived, "page."+aside)
	}
	for _, unit := range []string{"h", "min", "s", "in", "inch", "ft", "mi", "million_mi", "mi_s", "mph", "fahrenheit", "lb", "celsius", "kg"} { // of durations and customary measure
		derived = append(derived, "units."+unit)
	}
	for _, k := range derived {
		asked[k] = true
		if !words.Has(k) {
			t.Errorf("the words file lacks %s", k)
		}
	}
	sections := map[string]bool{}
	for _, k := range words.Keys() {
		section, _, _ := strings.Cut(k, ".")
		sections[section] = true
	}
	for k := range asked {
		section, fact, _ := strings.Cut(k, ".")
		if e, ok := placeholder.Find(placeholder.Catalogue(), section); ok && slices.Contains(e.FactNames(), fact) {
			continue // an example in the documentation of glance
		}
		if sections[section] && !words.Has(k) {
			t.Errorf("the words file lacks %s", k)
		}
	}
	for _, k := range words.Keys() {
		if !asked[k] {
			t.Errorf("nobody asks for %s", k)
		}
	}
}
