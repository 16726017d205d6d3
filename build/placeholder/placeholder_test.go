package placeholder_test

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"noonbook/build/placeholder"
	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/build/typeset"
)

func TestCatalogueIsSortedAndDocumented(t *testing.T) {
	names := entry.Names(placeholder.Catalogue())
	if !slices.IsSorted(names) || len(slices.Compact(slices.Clone(names))) != len(names) {
		t.Errorf("names are %v", names)
	}
	for _, e := range placeholder.Catalogue() {
		if e.Summary == "" || len(e.Facts) == 0 || len(e.Sources) == 0 {
			t.Errorf("%s lacks a summary, facts or sources", e.Name)
		}
		for _, name := range school.CalendarSettings() {
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
	for school := range entrytest.Schools {
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
	settingKey := regexp.MustCompile(`form\.Key\[.*`) // names what an author writes, not a word
	for _, folder := range []string{"../../build", "../../theme"} {
		err := filepath.WalkDir(folder, func(name string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || strings.HasSuffix(name, "_test.go") {
				return err
			}
			if ext := filepath.Ext(name); ext != ".go" && ext != ".html" {
				return nil
			}
			src, err := os.ReadFile(name)
			src = settingKey.ReplaceAll(src, nil)
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
		if text, ok := entrytest.SampleLogs[e.Name]; ok {
			r = reckonLog(t, "alder reach", e.Name, text)
		}
		if e.Name == "family-note" {
			r = reckon(t, "alder reach", e.Name, "2027-04-20", "class.pupils=24")
		}
		if e.Name == "lesson-sky" {
			r = reckon(t, "alder reach", e.Name, "2027-04-20", "lesson=1")
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
		if e, ok := entry.Find(placeholder.Catalogue(), section); ok && slices.Contains(e.FactNames(), fact) {
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
