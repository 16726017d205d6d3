package source

import (
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"

	"noonbook/build/placeholder"
	"noonbook/build/problem"
	"noonbook/theme"
)

// What is wrong with an only or unless block, or a key of that name, is told with its
// place, and with what was meant; the places were counted in an editor.
func TestWhatIsWrongWithConditions(t *testing.T) {
	for _, c := range []struct{ name, lesson, want string }{
		{"missing fact", "```only\nx\n```\n", `u/a.md:4:8: only needs a fact that is yes or no, such as "place-facts.south"`},
		{"no placeholder", "```only place-fact.south\nx\n```\n", `u/a.md:4:9: "place-fact" is not a placeholder; did you mean "place-facts"?`},
		{"placeholder alone", "```unless sun-day\nx\n```\n", `u/a.md:4:11: unless needs a fact of sun-day; want one of rises_and_sets, stays_up, stays_down, north_noon, overhead`},
		{"no fact", "```only place-facts.tropic\nx\n```\n", `u/a.md:4:21: only: place-facts has no fact "tropic"; did you mean "tropics"?`},
		{"no yes or no", "```only sun-day.rise\nx\n```\n", `u/a.md:4:17: only: sun-day.rise is no yes or no; want one of rises_and_sets, stays_up, stays_down, north_noon, overhead`},
		{"none of them is", "```only class-facts.pupils\nx\n```\n", `u/a.md:4:21: only: class-facts has no fact that is yes or no; want one of dial-drift, dial-face, dial-lesson, dial-marks, dial-north, dial-plate, evening-plan, lens-log, lens-pairs, lesson-sky, mars-map, mission-plans, mission-record, moon-log, moon-map, moon-month, moon-school, place-facts, planets-week, rocket-log, rocket-zone, sky-map, strip-log, strip-table, sun-day, tube-parts`},
		{"words", "```only in summer\nx\n```\n", `u/a.md:4:9: only: "in" is not understood; it needs a fact that is yes or no, such as "place-facts.south"`},
		{"text after", "```only place-facts.south please\nx\n```\n", `u/a.md:4:9: only: "place-facts.south please" is not understood; after the fact stand its arguments, each as key=value`},
		{"unknown argument", "```only sun-day.overhead dat=2027-06-21\nx\n```\n", `u/a.md:4:26: sun-day: dat is not a key; did you mean "date"?`},
		{"impossible argument", "```only sun-day.overhead date=2027-06-31\nx\n```\n", `u/a.md:4:26: sun-day: date is "2027-06-31", want a date such as 2027-04-20, or a day by name such as "next full Moon"`},
		{"empty", "```only place-facts.south\n```\n", `u/a.md:4:1: only: the block is empty; write in it what stands where the fact is true`},
		{"never closed", "````only place-facts.south\nx\n```\n", "u/a.md:4:1: the only block is never closed; end it with a line of ````"},
		{"in a false branch too", "````only place-facts.north\n{sun-day.noonn}\n````\n", `u/a.md:5:10: sun-day has no fact "noonn"; did you mean "noon"?`},
		{"a link there too", "````only place-facts.north\n[x](#nowhere)\n````\n", `u/a.md:5:1: u/a.md has no heading #nowhere`},
		{"an answer there too", "````only place-facts.north\n```answer line=3\nx\n```\n````\n", `u/a.md:5:11: answer: "line=3" is not understood, want lines=N with N from 0 to 40`},
		{"capital", "```Only place-facts.south\nx\n```\n", `u/a.md:4:4: "Only" is an unknown block; did you mean "only"?`},
		{"if", "```if place-facts.south\nx\n```\n", `u/a.md:4:4: "if" is an unknown block; did you mean "only"?`},
		{"sauf", "```sauf place-facts.south\nx\n```\n", `u/a.md:4:4: "sauf" is an unknown block; did you mean "unless"?`},
		{"two backticks", "``only place-facts.south\nx\n``\n", "u/a.md:4:1: ``only begins no block; a block begins and ends with a line of three backticks, ```"},
		{"one backtick", "`only place-facts.south\nx\n\n", "u/a.md:4:1: `only place-facts.south begins no block; a block begins and ends with a line of three backticks, ```"},
		{"no fence", "only place-facts.south\n\nx\n", "u/a.md:4:1: only place-facts.south begins no block; a block begins and ends with a line of three backticks, ```"},
		{"indented too far", "    ```unless place-facts.south\n    x\n    ```\n", "u/a.md:4:5: ``` is indented too far to begin or end a block, or has no empty line before it; a block begins and ends with a line of three backticks, ```"},
	} {
		_, problems := parsedUnit(t, map[string]string{"a.md": "```lesson\ntitle = \"A\"\n```\n" + c.lesson})
		if got := problems.Error(); got != c.want && !strings.HasPrefix(got, c.want+"\n") {
			t.Errorf("%s: got\n%s\nwant\n%s", c.name, got, c.want)
		}
	}
}

// A block in a block of as many backticks ends it: what to do is told, at the inner one.
func TestOnlyRoundAFenceOfItsLength(t *testing.T) {
	_, problems := parsedUnit(t, map[string]string{"a.md": "```lesson\ntitle = \"A\"\n```\n\n```only place-facts.south\n```compute sun-day\n```\n\nmore\n```\n"})
	want := "u/a.md:6:1: the block begins with ```, and so does the block of line 5 that it stands in, which its end would end; begin and end that one with ````"
	if !strings.Contains(problems.Error(), want) || problems.Faults() < 2 {
		t.Errorf("got\n%v\nwant\n%s", problems, want)
	}
}

func TestWhatIsWrongWithKeysOfConditions(t *testing.T) {
	for _, c := range []struct{ name, block, want string }{
		{"kit", "kit = [{ item = \"a\" }, { item = \"b\", only = \"place-facts.sout\" }]", `u/a.md:3:58: only: place-facts has no fact "sout"; did you mean "south"?`},
		{"vocabulary", "[[vocabulary]]\nterm = \"t\"\nmeaning = \"m\"\nunless = \"place-facts\"", `u/a.md:6:11: unless needs a fact of place-facts; want one of daylight_saving, south, north, tropics, polar, warm_and_cold, saving, compass_works, needle_off`},
		{"empty", "only = \"\"", `u/a.md:3:9: only needs a fact that is yes or no, such as "place-facts.south"`},
		{"the whole lesson and the calendar", "only = \"lesson-sky.moon_by_day\"", `u/a.md:3:9: only lesson-sky.moon_by_day: lesson-sky reads the calendar, which cannot be made before it is known which lessons stand`},
		{"a page that every handbook has", "part = \"safety\"\nunless = \"place-facts.south\"", `u/a.md:4:11: unless place-facts.south: every handbook has the page of safety; write the condition round its text`},
	} {
		_, problems := parsedUnit(t, map[string]string{"a.md": "```lesson\ntitle = \"A\"\n" + c.block + "\n```\n", "b.md": "```lesson\ntitle = \"B\"\n```\n"})
		if got := problems.Error(); got != c.want {
			t.Errorf("%s: got\n%s\nwant\n%s", c.name, got, c.want)
		}
	}
}

// A settled unit is read without its folder, leaves out the files of what does not
// stand, and bears headings as though only what stands had been written.
func TestSettledUnits(t *testing.T) {
	folder := map[string]string{
		"a.md":      "```lesson\ntitle = \"A\"\n```\n\n````only place-facts.south\n## Way\n\n![s](south.svg)\n````\n\n````unless place-facts.south\n## Way\n\n![n](north.svg)\n````\n",
		"south.svg": `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 1"/>`,
		"north.svg": `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 2"/>`,
	}
	unit, problems := parsedUnit(t, folder)
	if len(problems) > 0 || !unit.Conditional() || len(unit.Files) != 2 {
		t.Fatal(problems, len(unit.Files))
	}
	for _, south := range []bool{true, false} {
		answers := Answers{}
		for _, c := range unit.Lessons[0].Conditions() {
			answers[c.At] = c.Wants(south)
		}
		settled, problems, err := unit.Settled(answers)
		if err != nil || len(problems) > 0 || settled.Conditional() {
			t.Fatal(err, problems)
		}
		want := map[bool]string{true: "south.svg", false: "north.svg"}[south]
		if len(settled.Files) != 1 || settled.Files[0].Name != want {
			t.Errorf("south %v: the files are %v", south, settled.Files)
		}
		if anchors := settled.Lessons[0].Anchors; len(anchors) != 1 || !anchors["way"] {
			t.Errorf("south %v: the anchors are %v", south, anchors)
		}
	}
}

func parsedUnit(t *testing.T, files map[string]string) (*Unit, problem.List) {
	t.Helper()
	folder := fstest.MapFS{"unit.toml": {Data: []byte("[unit]\ntitle = \"T\"\n[school]\nname = \"S\"\nlatitude = 46\nlongitude = -64\ntime_zone = \"America/Moncton\"\n[term]\nfirst_day = 2027-04-12\nlast_day = 2027-04-30\n")}}
	for name, text := range files {
		folder[name] = &fstest.MapFile{Data: []byte(text)}
	}
	own, err := fs.Sub(theme.Files(), "pages")
	if err != nil {
		t.Fatal(err)
	}
	unit, problems, err := Read(folder, "u", own, placeholder.Catalogue())
	if err != nil {
		t.Fatal(err)
	}
	return unit, problems
}
