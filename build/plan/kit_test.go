package plan

import (
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"noonbook/build/school"
)

const classOf27 = `unit.title = "T"
[school]
name = "S"
latitude = 46
longitude = -64
time_zone = "America/Moncton"
[class]
pupils = 27
group_size = 3
[term]
first_day = 2027-04-12
last_day = 2027-04-30
lesson_times = ["9:00-9:50"]
`

func inClassOf27(lesson string) fstest.MapFS {
	return fstest.MapFS{"unit.toml": {Data: []byte(classOf27)}, "1-a.md": {Data: []byte("```lesson\ntitle = \"A\"\n" + lesson + "```\n")}}
}

var cellTag = regexp.MustCompile(`<td[^>]*>`)

// What several share is counted alike on the lesson's page, its day sheet and every list.
func TestSharedKitEverywhere(t *testing.T) {
	files := inClassOf27("[[kit]]\nitem = \"compasses\"\neach = \"group\"\nshared_by = 3\nspare = 1\n[[kit]]\nitem = \"jars\"\neach = \"pupil\"\nshared_by = 4\nsource = \"home\"\n")
	files["1-a.md"].Data = append(files["1-a.md"].Data, "\n```compute kit-list\nby_lesson = true\n```\n\n```compute family-note\n```\n"...)
	unit, words := read(t, files, "unit")
	for _, c := range []struct {
		pupils int
		lines  []string
		cells  map[string]int
	}{
		{27, []string{"compasses: 4 (1 for 3 groups, 1 spare)", "jars: 7 (1 for 4 pupils)"}, map[string]int{"<td>4</td>": 2, "<td>7</td>": 3}}, // nine groups, 27/4 = 6.75
		{30, []string{"compasses: 5 (1 for 3 groups, 1 spare)", "jars: 8 (1 for 4 pupils)"}, map[string]int{"<td>5</td>": 2, "<td>8</td>": 3}}, // ten groups, 30/4 = 7.5
	} {
		_, staff := pressings(t, unit, words, unit.Settings.With(school.ClassPupils.Is(c.pupils)))
		for _, line := range c.lines {
			total, _, _ := strings.Cut(line, " (") // the day sheet has no room for more
			if !strings.Contains(staff["a.html"], line) || !strings.Contains(staff["day-a.html"], total+"<") {
				t.Errorf("%d pupils: %q is not on the page and its day sheet", c.pupils, line)
			}
		}
		for cell, n := range c.cells {
			if got := strings.Count(cellTag.ReplaceAllString(staff["a.html"], "<td>"), cell); got != n {
				t.Errorf("%d pupils: %q is there %d times, want %d", c.pupils, cell, got, n)
			}
		}
	}
}
