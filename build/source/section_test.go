package source_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"noonbook/build/placeholder"
	"noonbook/build/source"
)

// The table [sheet] names headings of the lesson, and its minutes a table that
// can be set to a clock.
func TestSheetIsChecked(t *testing.T) {
	const body = "\n## Before the bell\n\nx\n\n## Minutes\n\n| Minute | What |\n|---|---|\n| 0 | a |\n| 12 | b |\n| 60 | c |\n\n" +
		"## Falling\n\n| Minute | What |\n|---|---|\n| 10 | a |\n| 5 | b |\n\n## Words\n\n| Minute | What |\n|---|---|\n| soon | a |\n"
	for name, c := range map[string]struct{ keys, want string }{
		"whole":          {`back = ["before-the-bell"]` + "\nfront = [\"minutes\"]\ndrawing = \"minutes\"\ncard = [\"words\"]", ""},
		"near miss":      {`back = ["before-the-bel"]`, `u/a.md:4:9: lesson: sheet.back: the lesson has no heading #before-the-bel; did you mean "before-the-bell"?`},
		"far miss":       {`card = ["xyz"]`, `u/a.md:4:9: lesson: sheet.card: the lesson has no heading #xyz; want one of before-the-bell, falling, minutes, words`},
		"no drawing":     {`drawing = "before-the-bel"`, `u/a.md:4:11: lesson: sheet.drawing: the lesson has no heading #before-the-bel; did you mean "before-the-bell"?`},
		"unknown part":   {`frunt = ["minutes"]`, `u/a.md:4:1: lesson: sheet.frunt is not a key; did you mean "sheet.front"?`},
		"no minutes":     {`front = ["words"]`, `u/a.md:4:9: lesson: sheet.front: no table there has whole minutes in its first column`},
		"minutes fall":   {`front = ["falling"]`, `u/a.md:4:9: lesson: sheet.front: the minutes of the table do not rise`},
		"beyond the end": {`front = ["minutes"]` + "\n[[kit]]\nitem=\"x\"", ``},
	} {
		t.Run(name, func(t *testing.T) {
			unit, problems, err := source.Read(fstest.MapFS{
				"unit.toml": {Data: []byte(settings)},
				"a.md":      {Data: []byte("```lesson\ntitle = \"A\"\n[sheet]\n" + c.keys + "\n```\n" + body)},
			}, "u", own(t), placeholder.Catalogue())
			if err != nil {
				t.Fatal(err)
			}
			first, _, _ := strings.Cut(problems.Error(), "\n")
			if len(problems) == 0 {
				first = ""
			}
			if first != c.want {
				t.Errorf("got  %s\nwant %s", first, c.want)
			}
			if name == "whole" {
				sections := unit.Lessons[0].Sheet(source.SheetFront)
				table := source.MinuteTable(sections, unit.Lessons[0].Source)
				if minutes, ok := source.Minutes(table, unit.Lessons[0].Source); !ok || len(minutes) != 3 || minutes[1].Minutes() != 12 {
					t.Errorf("the minutes are %v", minutes)
				}
			}
		})
	}
}

// Minutes after the end of the lesson are told, and do not stop the press.
func TestMinutesBeyondTheLesson(t *testing.T) {
	_, problems, err := source.Read(fstest.MapFS{
		"unit.toml": {Data: []byte(settings)},
		"a.md":      {Data: []byte("```lesson\ntitle = \"A\"\nminutes = 50\n[sheet]\nfront = [\"m\"]\n```\n\n## M\n\n| Minute | What |\n|---|---|\n| 0 | a |\n| 50 | b |\n")},
	}, "u", own(t), placeholder.Catalogue())
	if err != nil || problems.Faults() > 0 || len(problems) != 1 || !strings.Contains(problems.Error(), "goes on to minute 50, and the lesson has 50") {
		t.Errorf("%v %v", err, problems)
	}
}

// A page cannot have the name of a lesson's sheet.
func TestSheetsHaveTheirNames(t *testing.T) {
	lesson := &fstest.MapFile{Data: []byte("```lesson\ntitle = \"A\"\n```\n")}
	_, problems, err := source.Read(fstest.MapFS{
		"unit.toml": {Data: []byte(settings)},
		"1-moon.md": lesson, "2-day-moon.md": lesson, "3-day-and-night.md": lesson,
	}, "u", own(t), placeholder.Catalogue())
	if want := "u/2-day-moon.md:1:1: day-moon.html is the name of a sheet of u/1-moon.md; give the file another name"; err != nil || len(problems) != 1 || problems[0].Error() != want {
		t.Errorf("%v %v", err, problems)
	}
}
