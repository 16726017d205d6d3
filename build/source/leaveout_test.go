package source

import (
	"strings"
	"testing"
	"testing/fstest"

	"noonbook/build/placeholder"
)

// What unit.toml leaves out and what is a draft go, and what followed them closes up;
// a name that no lesson has is a problem with the nearest.
func TestLeaveOut(t *testing.T) {
	const head = `school.name = "S"
school.latitude = 46.09
school.longitude = -64.77
school.time_zone = "America/Moncton"
term.first_day = 2027-04-12
term.last_day = 2027-04-23
unit.title = "T"
`
	lesson := func(lines string) *fstest.MapFile {
		return &fstest.MapFile{Data: []byte("```lesson\ntitle = \"L\"\n" + lines + "\n```\n")}
	}
	for _, c := range []struct{ name, leave, stay, gone, problems string }{
		{"nothing", `[]`, "1-dial 2-moon 3-strip 13-strip 5-safety", "4-worlds (draft)", ""},
		{"by its name", `["2-moon"]`, "1-dial 3-strip 13-strip 5-safety", "2-moon (leave_out), 4-worlds (draft)", ""},
		{"without its number", `["moon"]`, "1-dial 3-strip 13-strip 5-safety", "2-moon (leave_out), 4-worlds (draft)", ""},
		{"with its ending, and a draft", `["2-moon.md", "worlds"]`, "1-dial 3-strip 13-strip 5-safety", "2-moon (leave_out), 4-worlds (leave_out)", ""},
		{"one that others follow", `["dial"]`, "2-moon 3-strip 13-strip 5-safety", "1-dial (leave_out), 4-worlds (draft), what 3-strip asks of the days since 1-dial", ""},
		{"the safety page, for which noonbook's own stands in", `["safety"]`, "1-dial 2-moon 3-strip 13-strip safety", "5-safety (leave_out), 4-worlds (draft)", ""},
		{"which", `["strip"]`, "1-dial 2-moon 3-strip 13-strip 5-safety", "4-worlds (draft)", `unit.toml:8:19: unit.leave_out: "strip" is 3-strip or 13-strip; write which`},
		{"a slip", `["2-mon"]`, "1-dial 2-moon 3-strip 13-strip 5-safety", "4-worlds (draft)", `unit.toml:8:19: unit.leave_out: there is no lesson "2-mon"; did you mean "2-moon"?`},
		{"a slip without the number", `["dail"]`, "1-dial 2-moon 3-strip 13-strip 5-safety", "4-worlds (draft)", `unit.toml:8:19: unit.leave_out: there is no lesson "dail"; did you mean "dial"?`},
	} {
		t.Run(c.name, func(t *testing.T) {
			unit, problems, err := Read(fstest.MapFS{
				"unit.toml": {Data: []byte(head + "unit.leave_out = " + c.leave + "\n")},
				"1-dial.md": lesson(""), "2-moon.md": lesson(""), "3-strip.md": lesson("follows = \"1-dial.md\"\ndays_after = 3"),
				"13-strip.md": lesson("part = \"glossary\""), "4-worlds.md": lesson("draft = true"), "5-safety.md": lesson("part = \"safety\""),
			}, "", fstest.MapFS{"en/safety.md": lesson("part = \"safety\""), "en/sources.md": lesson("part = \"sources\""), "en/reference.md": lesson("part = \"reference\"")}, placeholder.Catalogue())
			if err != nil {
				t.Fatal(err)
			}
			var stay, told []string
			for _, l := range unit.Lessons {
				if l.Stem() != "sources" && l.Stem() != "reference" {
					stay = append(stay, l.Stem())
				}
			}
			for _, p := range problems {
				if !strings.Contains(p.Error(), "would be the page") { // 3-strip and 13-strip
					told = append(told, p.Error())
				}
			}
			got := strings.Fields(strings.Join(stay, " "))
			for _, want := range strings.Fields(c.stay) {
				if !strings.Contains(" "+strings.Join(got, " ")+" ", " "+want+" ") {
					t.Errorf("%s is not there; %v are", want, got)
				}
			}
			if len(got) != len(strings.Fields(c.stay)) {
				t.Errorf("%v stay, want %s", got, c.stay)
			}
			if gone := strings.Join(unit.Gone, ", "); gone != c.gone {
				t.Errorf("gone: %s\nwant: %s", gone, c.gone)
			}
			if strings.Join(told, "\n") != c.problems {
				t.Errorf("problems: %s\nwant: %s", strings.Join(told, "\n"), c.problems)
			}
			for i, l := range unit.Taught() {
				if l.Page == "strip.html" && (l.After.Least == 3) == strings.Contains(c.gone, "1-dial") {
					t.Errorf("lesson %d asks for %+v", i+1, l.After)
				}
			}
		})
	}
}
