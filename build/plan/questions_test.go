package plan

import (
	"slices"
	"strings"
	"testing"
	"testing/fstest"
)

const asking = "```lesson\ntitle = \"Ask\"\n[sheet]\nfront = [\"before\", \"minutes\", \"board\"]\nback = [\"today\", \"rain\", \"tidy\", \"note\"]\n```\n\n" +
	"## Before\n\n| x | |\n|---|---|\n| | |\n\nEarly?\n\n```answer\nno\n```\n\n" +
	"## Minutes\n\n| Minute | What |\n|---|---|\n| 0 | |\n| 5 | |\n\n" +
	"## Board\n\n| x | |\n|---|---|\n| | |\n\n## Rain\n\n| x | |\n|---|---|\n| | |\n\n## Tidy\n\n| x | |\n|---|---|\n| | |\n\n## Note\n\n| x | |\n|---|---|\n| | |\n\n" +
	"## Today\n\nWhat do you see?\n\n```answer lines=1\nseen\n```\n\n" +
	"## One\n\nWords before.\n\n1. First\n\n   ```answer lines=3\n   a\n   ```\n\n2. Second\n\n   ```answer\n   b\n   ```\n\n" +
	"| one cell | |\n|---|---|\n| to fill | |\n\n| two cells | |\n|---|---|\n| a | |\n| b | |\n\n" +
	"### Two\n\nHow far? ![far](far.svg)\n\n```answer lines=0\nc\n```\n\nAnd how near?\n\n```answer lines=2\nd\n```\n\n```staff\nHidden?\n\n~~~answer\ne\n~~~\n```\n\n" +
	"````caution\nHow hot?\n\n```answer lines=5\nf\n```\n````\n\n- [ ] one\n- [ ] two\n\n```answer\ng\n```\n\nNot this.\n\n```caution\ncare\n```\n\n![far](far.svg)\n\n```answer\ni\n```\n\nFill it in.\n\n| two cells | |\n|---|---|\n| a | |\n| b | |\n\n```answer\nh\n```\n"

// The sheet for pupils asks what the lesson asks, under its headings, numbered as
// in the lesson, with the lines that it rules and two where it rules fewer; what
// the teacher's sheet takes, what is for staff, and a table of one empty cell are no
// questions. The staff's copy has the answers in place of the lines.
func TestWhatPupilsAreAsked(t *testing.T) {
	unit, words := read(t, fstest.MapFS{
		"unit.toml": smallUnit()["unit.toml"],
		"1-ask.md":  {Data: []byte(asking)},
		"far.svg":   {Data: []byte(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 1"/>`)},
	}, "unit")
	class, staff := pressings(t, unit, words, unit.Settings)
	asked := func(page string) []string {
		main := parsed(t, []byte(page)).find("main")
		var out []string
		under := ""
		for _, e := range main.children {
			switch e.name {
			case "h2", "h3", "h4":
				under = e.name + " " + line(e.words())
			case "section":
				var q tokens
				for _, c := range e.children {
					q.read(c, "section")
				}
				q.flush()
				out = append(out, under+": "+strings.Join(slices.DeleteFunc(q.list, func(s string) bool { return bareTags[s] }), " "))
			}
		}
		return out
	}
	table := "<table> <thead> <tr> <th> two cells </th> <th> </th> </tr> </thead> <tbody> <tr> <td> a </td> <td> </td> </tr> <tr> <td> b </td> <td> </td> </tr> </tbody> </table>"
	for who, c := range map[string]struct {
		page string
		want []string
	}{
		"pupils": {class["pupil-ask.html"], []string{
			"h2 Today: What do you see? ⟦ruled 2⟧",
			"h2 One: 1. First ⟦ruled 3⟧",
			"h2 One: 2. Second ⟦ruled 2⟧",
			"h2 One: " + table,
			"h2 Two: How far? <img .svg far > ⟦ruled 2⟧",
			"h2 Two: And how near? ⟦ruled 2⟧",
			"h2 Two: Take care How hot? ⟦ruled 5⟧", // a caution stands before what is asked after it
			"h2 Two: How hot? ⟦ruled 5⟧",
			"h2 Two: <ul> <li> ☐ one </li> <li> ☐ two </li> </ul> ⟦ruled 2⟧",
			"h2 Two: Take care care",
			"h2 Two: <img .svg far > ⟦ruled 2⟧",           // a caution ends what is asked
			"h2 Two: Fill it in. " + table + " ⟦ruled 2⟧", // the table belongs to what is asked
		}},
		"staff": {staff["pupil-ask.html"], []string{
			"h2 Today: What do you see? ⟦answer⟧ seen ⟦/answer⟧",
			"h2 One: 1. First ⟦answer⟧ a ⟦/answer⟧",
			"h2 One: 2. Second ⟦answer⟧ b ⟦/answer⟧",
			"h2 One: " + table,
			"h2 Two: How far? <img .svg far > ⟦answer⟧ c ⟦/answer⟧",
			"h2 Two: And how near? ⟦answer⟧ d ⟦/answer⟧",
			"h2 Two: Take care How hot? ⟦answer⟧ f ⟦/answer⟧",
			"h2 Two: How hot? ⟦answer⟧ f ⟦/answer⟧",
			"h2 Two: <ul> <li> ☐ one </li> <li> ☐ two </li> </ul> ⟦answer⟧ g ⟦/answer⟧",
			"h2 Two: Take care care",
			"h2 Two: <img .svg far > ⟦answer⟧ i ⟦/answer⟧",
			"h2 Two: Fill it in. " + table + " ⟦answer⟧ h ⟦/answer⟧",
		}},
	} {
		if got := asked(c.page); !slices.Equal(got, c.want) {
			t.Errorf("%s are asked\n%s\nwant\n%s", who, strings.Join(got, "\n"), strings.Join(c.want, "\n"))
		}
	}
	heads := parsed(t, []byte(class["pupil-ask.html"])).find("main").texts("h2")
	if !slices.Equal(heads, []string{"Today", "One", "Two"}) {
		t.Errorf("headings are %q", heads)
	}
}
