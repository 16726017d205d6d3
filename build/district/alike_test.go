package district

import (
	"bytes"
	"fmt"
	"io/fs"
	"os"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"noonbook/build/file"
	"noonbook/build/form"
	"noonbook/build/placeholder"
	"noonbook/build/placeholder/entry"
	"noonbook/build/plan"
	"noonbook/build/problem"
	"noonbook/build/school"
	"noonbook/build/source"
	"noonbook/build/typeset"
	"noonbook/compute/place"
	"noonbook/theme"
)

// wordsOf is how the command finds the words.
func wordsOf(v form.Values) (*typeset.Words, error) {
	w, err := typeset.Language(school.Language.Of(v), school.Measure.Of(v) == "customary")
	if err != nil {
		return nil, err
	}
	return w.In(typeset.Manner{TwelveHour: school.Clock.Of(v) == school.TwelveHour, MonthFirst: school.Dates.Of(v) == school.MonthFirst}), nil
}

const drawnCrest = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %d 10"><path d="M0 0L9 9"/></svg>`

// alikeUnit is a unit that looks at much: conditions, a kit, records, a crest, sheets.
func alikeUnit(t *testing.T) fstest.MapFS {
	t.Helper()
	const south = "../../testdata/units/south"
	files := fstest.MapFS{}
	text, err := os.ReadFile(south + "/unit.toml")
	if err != nil {
		t.Fatal(err)
	}
	files["unit.toml"] = &fstest.MapFile{Data: text}
	files["1-less.md"] = &fstest.MapFile{Data: []byte("```lesson\ntitle = \"Less\"\n```\n\n```compute dial-day\n```\n")}
	files["4-more.md"] = &fstest.MapFile{Data: []byte("```lesson\ntitle = \"More\"\nglance = [\"class-facts.groups\"]\n[[kit]]\nitem = \"lens\"\ncount = 2\neach = \"group\"\n```\n\n" +
		"```only place-facts.south\nSouth of the equator.\n```\n\n```unless place-facts.south\nNorth of the equator.\n```\n\n## Steps\n\n1. One {class-facts.pupils}\n\n```answer lines=2\nYes\n```\n\n" +
		"```compute evening-plan\n```\n\n```compute moon-log\n```\n\n```compute lens-log\n```\n\n```compute rocket-zone\n```\n\n[rows](rows.csv)\n")}
	files["rows.csv"] = &fstest.MapFile{Data: []byte("a,b\n1,2\n")}
	files["crest.svg"] = &fstest.MapFile{Data: fmt.Appendf(nil, drawnCrest, 10)}
	files["other.svg"] = &fstest.MapFile{Data: fmt.Appendf(nil, drawnCrest, 20)}
	for _, f := range school.Settings() {
		if f.Kind() == form.CSV {
			var head []string
			for _, column := range f.Fields {
				head = append(head, column.Name())
			}
			files[school.RecordsFile(f)] = &fstest.MapFile{Data: []byte(strings.Join(head, ",") + "\n")}
		}
	}
	return files
}

// others are values for keys whose other value a test cannot think of by itself, and what
// must go with some.
var others = map[string]form.Values{
	school.UnitLeaveOut.Name():     {school.UnitLeaveOut.Name(): []string{"1-less"}},
	school.Colour.Name():           {school.Colour.Name(): "#1a5c3a"},
	school.Crest.Name():            {school.Crest.Name(): "other.svg"},
	school.WayTo.Name():            {school.WayTo.Name(): "the harbour", school.WayKm.Name(): 12.0},
	school.WayKm.Name():            {school.WayTo.Name(): "the harbour", school.WayKm.Name(): 12.0},
	school.TermLastDay.Name():      {school.TermLastDay.Name(): place.Date{Year: 2027, Month: time.June, Day: 4}},
	school.TermFirstDay.Name():     {school.TermFirstDay.Name(): place.Date{Year: 2027, Month: time.May, Day: 10}},
	school.ClassPupils.Name():      {school.ClassPupils.Name(): 19},
	school.TermHalfDays.Name():     {school.TermHalfDays.Name(): []place.Date{{Year: 2027, Month: time.May, Day: 12}}},
	school.TermHalfDayUntil.Name(): {school.TermHalfDayUntil.Name(): 11 * time.Hour, school.TermHalfDays.Name(): []place.Date{{Year: 2027, Month: time.May, Day: 12}}},
	school.TermCycleDays.Name():    {school.TermCycleDays.Name(): 6},
	school.TermCycleFirst.Name():   {school.TermCycleFirst.Name(): 3, school.TermCycleDays.Name(): 6},
	school.EveningFirstDay.Name():  {school.EveningFirstDay.Name(): place.Date{Year: 2027, Month: time.May, Day: 12}},
	school.EveningLastDay.Name():   {school.EveningLastDay.Name(): place.Date{Year: 2027, Month: time.May, Day: 14}},
	school.EveningEndsBy.Name():    {school.EveningEndsBy.Name(): 20 * time.Hour},
	school.TermCycle.Name(): {school.TermCycleDays.Name(): 6, school.TermCycle.Name(): []form.Values{
		{school.CycleDay.Name(): 1, school.CycleTimes.Name(): []form.TimeSpan{{From: 10 * time.Hour, To: 11 * time.Hour}}}}},
	school.StockBalls.Name():   {school.StockBalls.Name(): []form.Values{{school.BallsName.Name(): "pea", school.BallsDiameterMM.Name(): 7.0, school.BallsCount.Name(): 3}}},
	school.StockLenses.Name():  {school.StockLenses.Name(): []form.Values{{school.LensesLabel.Name(): "A", school.LensesCount.Name(): 9, school.LensesDiameterMM.Name(): 30.0, school.LensesFocalMM.Name(): 200.0}, {school.LensesLabel.Name(): "B", school.LensesCount.Name(): 9, school.LensesDiameterMM.Name(): 30.0, school.LensesFocalMM.Name(): 40.0}}},
	school.StockTubes.Name():   {school.StockTubes.Name(): []form.Values{{school.TubesLabel.Name(): "long", school.TubesCount.Name(): 9, school.TubesInsideMM.Name(): 52.0, school.TubesOutsideMM.Name(): 55.0, school.TubesLengthMM.Name(): 400.0}}},
	school.FieldOutline.Name(): {school.FieldOutline.Name(): []form.Values{{school.OutlineEastM.Name(): 0.0, school.OutlineNorthM.Name(): 0.0}, {school.OutlineEastM.Name(): 60.0, school.OutlineNorthM.Name(): 0.0}, {school.OutlineEastM.Name(): 60.0, school.OutlineNorthM.Name(): 80.0}}},
}

// other is a value of the key that is none of those that hold.
func other(t *testing.T, f form.Field, holds any) form.Values {
	t.Helper()
	if v, ok := others[f.Name()]; ok {
		return v
	}
	var x any
	switch f.Kind() {
	case form.Number:
		near, _ := holds.(float64)
		x = min(max(near*1.07+0.3, f.Min), f.Max)
	case form.Whole:
		near, _ := holds.(int)
		x = min(max(near+2, int(f.Min)), int(f.Max))
	case form.Text:
		x = "Other words"
		for _, choice := range f.Choices {
			if choice != holds {
				x = choice
			}
		}
	case form.Texts:
		x = f.Choices[1:4]
	case form.Dates:
		x = []place.Date{{Year: 2027, Month: time.May, Day: 12}}
	case form.Spans:
		x = []form.TimeSpan{{From: 11 * time.Hour, To: 12 * time.Hour}}
	case form.Zone:
		x, _ = time.LoadLocation("Pacific/Chatham")
	case form.CSV:
		x = form.Records{File: school.RecordsFile(f)}
	default:
		t.Fatalf("%s: think of another value, and put it into others", f.Name())
	}
	return form.Values{f.Name(): x}
}

// A school that shares a plan has, byte for byte, what a plan of its own gives, whichever
// key of unit.toml it has other than the school that the plan was made for. A new key that
// reading or planning looks at, and that looked does not name, is found here.
func TestAlike(t *testing.T) {
	folder := alikeUnit(t)
	own, err := fs.Sub(theme.Files(), "pages")
	if err != nil {
		t.Fatal(err)
	}
	list, _ := ReadList("schools.csv", []byte("school.name\nA\n"))
	unit := Unit{Folder: folder, Root: "unit", Own: own, Catalogue: placeholder.Catalogue(), Words: wordsOf}
	d, problems, err := New(unit, list)
	if err != nil || d == nil {
		t.Fatal(problems, err)
	}
	nowhere := func(string) problem.Place { return problem.Place{} }
	press := func(d *District, v form.Values) []file.File {
		t.Helper()
		given := source.Given{Values: v, Place: nowhere}
		settings, problems, err := given.Check(folder, "unit")
		if err != nil || problems.Faults() > 0 {
			t.Fatalf("%v %v", problems, err)
		}
		read, err := d.read(given, settings, []plan.Edition{plan.Staff})
		if err != nil || read.problems.Faults() > 0 {
			t.Fatalf("%v %v", read, err)
		}
		files, found := read.plans[0].PressKnowing(settings, &entry.Known{})
		if len(files) == 0 {
			t.Fatalf("%v", found)
		}
		return files
	}
	base := d.base.With(form.Values{school.Crest.Name(): "crest.svg"})
	at := press(d, base)
	shared, told := 0, 0
	for _, f := range list.keys {
		v := base.With(other(t, f, list.keys.Complete(base)[f.Name()]))
		if fmt.Sprint(v[f.Name()]) == fmt.Sprint(base[f.Name()]) {
			t.Errorf("%s is no other", f.Name())
		}
		if d.alikeAs(list.keys.Complete(v)) != d.alikeAs(list.keys.Complete(base)) {
			continue // its plan is its own
		}
		shared++
		got := press(d, v)
		alone, _, err := New(unit, list)
		if err != nil {
			t.Fatal(err)
		}
		want := press(alone, v)
		if fmt.Sprint(namesOf(got)) != fmt.Sprint(namesOf(want)) {
			t.Errorf("%s: the files are %v, want %v", f.Name(), namesOf(got), namesOf(want))
			continue
		}
		for i := range got {
			if !bytes.Equal(got[i].Bytes, want[i].Bytes) {
				t.Errorf("%s: %s is another by a shared plan", f.Name(), got[i].Name)
			}
		}
		if len(got) != len(at) || slices.ContainsFunc(got, func(f file.File) bool {
			return !slices.ContainsFunc(at, func(g file.File) bool { return bytes.Equal(f.Bytes, g.Bytes) })
		}) {
			told++
		}
	}
	t.Logf("%d of %d keys share the plan, %d change a file", shared, len(list.keys), told)
	if shared < 55 || told < 25 {
		t.Errorf("only %d keys share the plan, and %d change a file", shared, told)
	}
}

func namesOf(files []file.File) (names []string) {
	for _, f := range files {
		names = append(names, f.Name)
	}
	return names
}
