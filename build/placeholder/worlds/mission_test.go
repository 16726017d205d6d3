package worlds_test

import (
	"io/fs"
	"strings"
	"testing"

	"noonbook/build/placeholder/entrytest"
	"noonbook/build/result"
	"noonbook/build/school"
	"noonbook/build/typeset"
	"noonbook/compute/strip"
	"noonbook/content"
)

// The first visit and the highest rung of each world, in the order of the file whatever
// the order of its flights. Years: NASA's list of the missions to each planet.
func TestRecordOfMissions(t *testing.T) {
	r := entrytest.ReckonLog(t, entries(), "alder reach", "mission-record", entrytest.Missions)
	for name, want := range map[string]string{"ladder": "Saturn 3 and Titan 4", "worlds": "2", "as_of": "30 April 2026", "kept": "yes"} {
		if got := entrytest.Written(t, entrytest.Fact(t, r, name)); !strings.Contains(got, want) {
			t.Errorf("%s is %q, want %q", name, got, want)
		}
	}
	for column, want := range map[string]string{"first": "Pioneer 11, 1979|Huygens, 2005", "highest": "Cassini, 2004|Huygens, 2005"} {
		if got := strings.Join(entrytest.TextsOf(t, r, "worlds", column), "|"); got != want {
			t.Errorf("%s: %s, want %s", column, got, want)
		}
	}
}

// The term of the settings begins on 12 April 2027. A plan of 12 April 2026 is a year
// old, one of the day before is older.
func TestOldPlansAreToldOf(t *testing.T) {
	old := plansOf(t, entrytest.Missions)
	if got := entrytest.Written(t, entrytest.Fact(t, old, "as_of")); !strings.Contains(got, "11 April 2026") {
		t.Errorf("the plans are as of %q", got)
	}
	if entrytest.Fact(t, old, "plans").Number != 3 || entrytest.Fact(t, old, "under_way").Number != 1 {
		t.Errorf("of three plans with one under way: %v", old.Facts)
	}
	if entrytest.Fact(t, old, "old").Number != 1 || len(old.Warnings) != 1 {
		t.Fatalf("nothing is said of plans a year and a day old: %v", old.Warnings)
	}
	for language, want := range map[string][]string{
		"en": {"as of 11 April 2026", "more than a year before the term"},
		"fr": {"en date du 11\u00a0avril 2026", "plus d’un an avant"},
	} {
		words, err := typeset.Language(language, false)
		if err != nil {
			t.Fatal(err)
		}
		for _, part := range want {
			for _, got := range []string{words.Line(old.Warnings[0]), words.Line(old.ForProof()[0])} {
				if !strings.Contains(got, part) {
					t.Errorf("%s: %q does not say %q", language, got, part)
				}
			}
		}
		if got := words.Line(old.Warnings[0]); strings.Contains(got, "log.csv") {
			t.Errorf("%s: the page asks pupils to mend a file: %q", language, got)
		}
		if got := words.Line(old.ForProof()[0]); !strings.Contains(got, "log.csv") {
			t.Errorf("%s: proof does not name the file to mend: %q", language, got)
		}
	}
	young := plansOf(t, strings.ReplaceAll(entrytest.Missions, "2026-04-11", "2026-04-12"))
	if entrytest.Fact(t, young, "old").Number == 1 || len(young.Warnings)+len(young.Upkeep) > 0 {
		t.Errorf("plans of a year are called old: %v", young.Warnings)
	}
	none := plansOf(t, "world,flight,task,rung,year,as_of\n")
	if entrytest.Fact(t, none, "old").Number == 1 || entrytest.Fact(t, none, "kept").Number == 1 || len(none.Notes) != 1 {
		t.Errorf("without a plan: %v %v", none.Facts, none.Notes)
	}
}

func plansOf(t *testing.T, text string) result.Result {
	t.Helper()
	return entrytest.ReckonLog(t, entries(), "alder reach", "mission-plans", text)
}

// The file of the demo agrees with the dated firsts of the strip of the space age, which
// are those that the agencies publish; and no flight was done after the day beside it.
func TestMissionsOfTheDemoAgreeWithTheStrip(t *testing.T) {
	text, err := fs.ReadFile(content.Files(), "missions.csv")
	if err != nil {
		t.Fatal(err)
	}
	field, _ := school.Settings().Field(school.RecordsMissions.Name())
	records, faults := field.ReadRecords(text)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	years := map[string]int{}
	for _, m := range strip.Missions() {
		years[m.Name] = m.Date.Year
	}
	flights := map[string]string{
		"The Moon, Luna 2": "luna_2", "The Moon, Apollo 11": "apollo_11", "The Moon, Chang’e 6": "change_6",
		"Mercury, Mariner 10": "mariner_10", "Venus, Mariner 2": "mariner_2", "Mars, Mariner 4": "mariner_4", "Mars, Sojourner": "pathfinder",
		"Ceres, Dawn": "dawn", "Jupiter, Pioneer 10": "pioneer_10", "Saturn, Pioneer 11": "pioneer_11", "Saturn, Cassini": "cassini",
		"Titan, Huygens": "huygens", "Uranus, Voyager 2": "voyager_uranus", "Neptune, Voyager 2": "voyager_neptune", "Pluto, New Horizons": "new_horizons",
	}
	for _, row := range records.Rows {
		name := school.MissionsWorld.Of(row) + ", " + school.MissionsFlight.Of(row)
		year, done := school.MissionsYear.Of(row), school.MissionsState.Of(row) == "done"
		if first, both := flights[name]; both && year != years[first] {
			t.Errorf("%s is of %d in the file, of %d on the strip", name, year, years[first])
		}
		if delete(flights, name); done && year > school.MissionsAsOf.Of(row).Year {
			t.Errorf("%s was done in %d, after the day of its line", name, year)
		}
	}
	if len(flights) > 0 {
		t.Errorf("the file lacks %v", flights)
	}
}
