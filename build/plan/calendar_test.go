package plan

import (
	"strings"
	"testing"
	"testing/fstest"

	"noonbook/build/placeholder"
	"noonbook/build/typeset"
)

// Lessons with "auto" take the school days in order, weekends and days off left
// out; two at one time are warned of.
func TestCalendar(t *testing.T) {
	lesson := func(extra string) *fstest.MapFile {
		return &fstest.MapFile{Data: []byte("```lesson\ntitle = \"L\"\n" + extra + "\n```\n")}
	}
	unit, problems := readWith(t, fstest.MapFS{
		"unit.toml": {Data: []byte(`unit.title = "T"
[school]
name = "S"
latitude = 1
longitude = 1
time_zone = "UTC"
[term]
first_day = 2027-04-15 # a Thursday
last_day = 2027-04-30
days_off = [2027-04-19]
lesson_times = ["10:00-10:45"]
`)},
		"1.md": lesson(""),
		"2.md": lesson(""),
		"3.md": lesson(`date = "auto"`),
		"4.md": lesson("date = 2027-04-22\nstart = \"9:30\"\nminutes = 31"),
		"5.md": lesson("date = 2027-04-22"),
		"6.md": lesson(""),
	}, "unit", placeholder.Catalogue())
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	p := &Plan{unit: unit, course: unit.Course(), words: english(t)}
	calendar, problems := p.calendar(unit.Settings)
	days := calendar.Held
	var got []string
	for _, d := range days[:6] {
		got = append(got, d.Date.String()[8:])
	}
	if want := "15 16 20 22 22 23"; strings.Join(got, " ") != want {
		t.Errorf("got %v, want %s", got, want)
	}
	if days[0].From.Hours() != 10 || days[0].To.Minutes() != 645 {
		t.Errorf("the first lesson is from %v to %v", days[0].From, days[0].To)
	}
	if len(problems) != 1 || !problems[0].Warning || problems[0].Error() != `unit/5.md:2:9: warning: lesson: it is held while "L" is, on 2027-04-22` {
		t.Errorf("problems are %v", problems)
	}
}

func english(t *testing.T) *typeset.Words {
	t.Helper()
	words, err := typeset.Language("en", false)
	if err != nil {
		t.Fatal(err)
	}
	return words
}
