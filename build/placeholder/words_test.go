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

	"noonbook/build/form"
	"noonbook/build/placeholder"
	"noonbook/build/placeholder/class"
	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/build/typeset"
	"noonbook/compute/globe"
)

// Every word that is asked for is in the words file, and every word of the file
// is asked for: by a literal in the code or a template, or by a name of the
// catalogue. What is missing among these is told before anything is evaluated,
// which takes longer and finds only keys that follow from a result.
func TestWordsAreThereAndUsed(t *testing.T) {
	words, err := typeset.Language("en", false)
	if err != nil {
		t.Fatal(err)
	}
	asked := slices.Concat(literalKeys(t, words), documentedKeys(), builtKeys(), formKeys(words))
	missing(t, words, asked)
	asked = append(asked, resultKeys(t)...)
	missing(t, words, asked)
	for _, k := range words.Keys() {
		for _, section := range []string{"twelve-hour.instead.", "month-first.instead."} { // of a line that is asked for
			k = strings.TrimPrefix(k, section)
		}
		if !slices.Contains(asked, k) {
			t.Errorf("nobody asks for %s", k)
		}
	}
}

// missing ends the test where the words file lacks keys, and names all of them.
func missing(t *testing.T, words *typeset.Words, keys []string) {
	t.Helper()
	lacking := slices.DeleteFunc(slices.Clone(keys), words.Has)
	if slices.Sort(lacking); len(lacking) > 0 {
		t.Fatalf("theme/words/en.toml lacks:\n%s", strings.Join(slices.Compact(lacking), "\n"))
	}
}

// literalKeys are the keys that stand in the code and in templates. A text with a
// full stop is one if the words file has its section; a fact in the documentation
// of glance only looks like one.
func literalKeys(t *testing.T, words *typeset.Words) (keys []string) {
	t.Helper()
	sections := map[string]bool{}
	for _, k := range words.Keys() {
		section, _, _ := strings.Cut(k, ".")
		sections[section] = true
	}
	key := regexp.MustCompile("[\"`]([a-z][a-z-]*)\\.([a-z_]+[0-9]*)[\"`]")
	files := []string{"html", "css", "js", "toml", "csv", "svg"}
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
			for _, m := range key.FindAllSubmatch(settingKey.ReplaceAll(src, nil), -1) {
				section, word := string(m[1]), string(m[2])
				e, ok := entry.Find(placeholder.Catalogue(), section)
				fact := ok && slices.Contains(e.FactNames(), word)
				if k := section + "." + word; words.Has(k) || sections[section] && !fact && !slices.Contains(files, word) {
					keys = append(keys, k)
				}
			}
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	return keys
}

// documentedKeys are the names of the placeholders, of their topics and of their facts.
func documentedKeys() (keys []string) {
	for _, e := range placeholder.Catalogue() {
		keys = append(keys, e.Name+".name", "reference.topic."+e.Topic)
		for _, f := range e.Facts {
			keys = append(keys, e.Name+".fact."+f.Name)
		}
	}
	return keys
}

// noLine are the cautions that say nothing on a sheet: they are for grown-ups, or of
// places where no sheet goes.
var noLine = []string{
	entry.CareHourKeepers, entry.CarePlanets, entry.CareEclipse, entry.CareViewers, entry.CareMoonEclipse, entry.CareDarkRoom, entry.CareLauncher, entry.CareSaw,
	entry.CareFamilySun, entry.CareFamilyOutside, entry.CareFamilyEvening,
}

// formKeys are the names that a page at the desk has for settings, columns and their
// groups. A key without a name of its own goes by its own words.
func formKeys(words *typeset.Words) (keys []string) {
	for _, field := range school.Settings() {
		table, _, _ := strings.Cut(field.Name(), ".")
		keys = append(keys, "label."+field.Name(), "help."+field.Name(), "form-group."+table, "form-why."+table)
		for _, one := range append(form.Form{field}, field.Fields...) {
			keys = append(keys, "column."+one.Name())
			for _, choice := range one.Choices {
				keys = append(keys, "option."+choice)
			}
		}
	}
	keys = append(keys, "form-group.place", "form-why.place")
	return slices.DeleteFunc(keys, func(k string) bool { return !words.Has(k) })
}

// builtKeys are those that the code puts together.
func builtKeys() (keys []string) {
	for i := range 12 {
		keys = append(keys, fmt.Sprint("month.", i+1), fmt.Sprint("weekday.", i%7), fmt.Sprint("weekday-short.", i%7))
	}
	for _, share := range []string{"class", "group", "group_shared", "pupil", "pupil_shared"} {
		keys = append(keys, "kit."+share, "kit."+share+"_spare", "share."+share)
	}
	for _, part := range []string{"prepare", "teach", "understand", "after"} {
		for _, kind := range []string{"", "hour_", "class_", "class_hour_"} {
			keys = append(keys, "opening."+kind+part)
		}
	}
	for _, aside := range []string{"caution", "answer", "staff"} {
		keys = append(keys, "page."+aside)
	}
	for _, name := range entry.Cautions() {
		if keys = append(keys, entry.Caution(name).Key); !slices.Contains(noLine, name) {
			keys = append(keys, entry.PaperLine(name))
		}
		if !strings.HasPrefix(name, "family-") {
			keys = append(keys, class.HazardKey(name))
		}
	}
	for _, kind := range []string{"one", "few", "even", "odd"} { // of what a class measured
		keys = append(keys, "moon-log.finding_"+kind, "strip-log.finding_"+kind)
	}
	keys = append(keys, "moon-log.finding_none")                                    // where looks saw no Moon; a place on the strip is always measured
	keys = append(keys, "season-dates.year.within", "season-model.stations.within") // by the calendar
	for _, half := range []string{"morning", "afternoon"} {
		keys = append(keys, "twelve-hour."+half, "twelve-hour."+half+"_hour")
	}
	for _, unit := range []string{"h", "min", "s", "in", "inch", "ft", "mi", "million_mi", "mi_s", "mph", "fahrenheit", "lb", "celsius", "kg"} { // of durations and customary measure
		keys = append(keys, "units."+unit)
	}
	for _, w := range []globe.World{globe.Moon, globe.Mars} {
		for _, s := range globe.Spots(w) {
			if s.Kind == globe.Site {
				continue
			}
			keys = append(keys, "map-kind."+strings.ReplaceAll(s.Kind, " ", "_"))
			if w == globe.Moon {
				keys = append(keys, "moon-name."+strings.NewReplacer(" ", "_", "ö", "o").Replace(strings.ToLower(s.Name)))
			}
		}
	}
	for _, role := range []string{"low", "high", "volcano", "crater"} {
		keys = append(keys, "mars-map.key_"+role)
	}
	for _, site := range []string{"crew", "rover", "samples", "impact", "lander"} {
		keys = append(keys, "map-site."+site, "map-site.key_"+site)
	}
	for _, code := range typeset.Languages() { // of a district's schools
		keys = append(keys, "district."+code)
	}
	return keys
}

// resultKeys are the columns and units of every placeholder's results, and the
// names in the cells of some.
func resultKeys(t *testing.T) (keys []string) {
	t.Helper()
	for _, e := range placeholder.Catalogue() {
		r := reckon(t, "alder reach", e.Name, "2027-04-20")
		if e.Name == "kit-list" {
			r = reckon(t, "alder reach", e.Name, "2027-04-20", "by_lesson=true")
		}
		if text, ok := entrytest.SampleLogs[e.Name]; ok {
			r = reckonLog(t, "alder reach", e.Name, text)
		}
		if e.Name == "moon-map" { // a list that an evening near full Moon has not
			r.Tables = append(r.Tables, reckon(t, "alder reach", e.Name, "2027-04-13").Tables...)
		}
		if e.Name == "rocket-log" { // a table that only flights in pairs have
			r.Tables = append(r.Tables, reckonLog(t, "alder reach", e.Name, entrytest.ThreePairs).Tables...)
		}
		if e.Name == "mars-map" { // a column of schools that name a way
			r = reckon(t, "alder reach", e.Name, "2027-04-20", "school.way_to=Halifax", "school.way_km=185")
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
		if strings.HasPrefix(e.Name, "dial-") { // columns that only a polar dial has
			r.Tables = append(r.Tables, reckon(t, "line north", e.Name, "2027-04-20").Tables...)
		}
		for _, table := range r.Tables {
			for _, c := range table.Columns {
				keys = append(keys, e.Name+"."+table.Name+"."+c.Name)
				if c.Unit != "" {
					keys = append(keys, "units."+c.Unit)
				}
			}
		}
		if e.Name == "strip-table" {
			for _, row := range r.Tables[0].Rows {
				keys = append(keys, row.Cells[0].Phrase.Key)
			}
		}
		if e.Name == "world-cards" { // names, airs, questions and features of the worlds
			for _, table := range r.Tables {
				for _, row := range table.Rows {
					for _, cell := range row.Cells {
						if cell.Phrase.Key != "" {
							keys = append(keys, cell.Phrase.Key)
						}
					}
				}
			}
		}
		for _, f := range r.Facts {
			if f.Value.Kind == say.Quantity && f.Value.Unit != "" {
				keys = append(keys, "units."+f.Value.Unit)
			}
		}
	}
	return keys
}
