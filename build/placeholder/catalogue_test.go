package placeholder_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"noonbook/build/placeholder"
	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/school"
	"noonbook/build/typeset"
)

func TestCatalogueIsSortedAndDocumented(t *testing.T) {
	for _, f := range school.Settings() {
		if !f.Sound() {
			t.Errorf("the default of %s is a %T, which its key does not hold", f.Name(), f.Default)
		}
	}
	names := entry.Names(placeholder.Catalogue())
	if !slices.IsSorted(names) || len(slices.Compact(slices.Clone(names))) != len(names) {
		t.Errorf("names are %v", names)
	}
	for _, e := range placeholder.Catalogue() {
		if e.Summary == "" || len(e.Facts) == 0 || len(e.Sources) == 0 {
			t.Errorf("%s lacks a summary, facts or sources", e.Name)
		}
		if (len(e.Cautions) == 0) != (len(e.Harmless) > 20) {
			t.Errorf("%s wants a caution, or else a reason why none comes with it: %q, %q", e.Name, e.Cautions, e.Harmless)
		}
		for _, name := range e.Sometimes {
			if !slices.Contains(entry.Cautions(), name) || slices.Contains(e.Cautions, name) {
				t.Errorf("%s: %s is no caution that sometimes comes with it", e.Name, name)
			}
		}
		for _, name := range slices.Concat(e.Cautions, e.OnPaper) {
			if !slices.Contains(entry.Cautions(), name) || entry.NeedsSchool(name) || slices.Contains(e.OnPaper, name) && !e.Printable {
				t.Errorf("%s: %s is no caution that always comes with it", e.Name, name)
			}
		}
		for _, f := range e.Form(school.Settings()) {
			if !f.Sound() {
				t.Errorf("%s: the default of %s is a %T, which its key does not hold", e.Name, f.Name(), f.Default)
			}
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
						if text := words.Text(f.Value); text == "" || unsaid(text) != nil {
							t.Errorf("%s, %s, %s: in %s %s reads %q", school, e.Name, date, words.Code, f.Name, text)
						}
					}
				}
				for _, words := range languages {
					if date != "2027-04-20" {
						break // one day is enough for what stands round the facts
					}
					if missing := unsaid(string(words.AppendBlock(nil, e.Name, r, nil))); missing != nil {
						t.Errorf("%s, %s: in %s its block lacks %s", school, e.Name, words.Code, strings.Join(missing, ", "))
					}
				}
				if want := e.FactNames(); !slices.Equal(slices.Sorted(slices.Values(got)), slices.Sorted(slices.Values(want))) {
					t.Errorf("%s has the facts %v, documents %v", e.Name, got, want)
				}
				for _, c := range r.Cautions {
					if name := entry.CautionName(c); !slices.Contains(e.Cautions, name) && !slices.Contains(e.Sometimes, name) {
						t.Errorf("%s gives the caution %s, which it does not announce", e.Name, name)
					}
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

// unsaid returns the keys that a text shows for want of words, and NaN where a
// number is none.
func unsaid(text string) []string {
	return regexp.MustCompile("⟦[^⟧]*⟧|NaN").FindAllString(text, -1)
}
