package plan

import (
	"slices"
	"strings"
	"testing"
	"testing/fstest"
)

// What an early lesson takes from the school and a later one buys is told, by the days of
// the lessons and not by their order in the unit.
func TestBoughtForALaterLesson(t *testing.T) {
	lesson := func(date, source string) []byte {
		return []byte("```lesson\ntitle = \"L" + date + "\"\ndate = " + date + "\n[[kit]]\nitem = \"glue\"\n[[kit]]\nitem = \"Glue sticks\"\nsource = \"" + source + "\"\nused_up = true\n```\n")
	}
	told := func(file, lesson, title, date string) string {
		return `unit/` + file + `:7:8: warning: lesson: kit: "Glue sticks" is from the school here, and is bought only for lesson ` + lesson + `, "` + title + `", on ` + date + `; write source = "buy" here too, or the same source in both`
	}
	for _, c := range []struct {
		name          string
		first, second []byte
		want          []string
	}{
		{"bought later", lesson("2027-04-13", "school"), lesson("2027-04-20", "buy"), []string{told("1-a.md", "2", "L2027-04-20", "2027-04-20")}},
		{"bought before", lesson("2027-04-13", "buy"), lesson("2027-04-20", "school"), nil},
		{"bought for both", lesson("2027-04-13", "buy"), lesson("2027-04-20", "buy"), nil},
		{"bought for none", lesson("2027-04-13", "school"), lesson("2027-04-20", "school"), nil},
		{"from home first", lesson("2027-04-13", "home"), lesson("2027-04-20", "buy"), nil},
		{"the second is held first", lesson("2027-04-20", "buy"), lesson("2027-04-13", "school"), []string{told("2-b.md", "1", "L2027-04-20", "2027-04-20")}},
	} {
		files := inClassOf27("")
		files["1-a.md"].Data = c.first
		files["2-b.md"] = &fstest.MapFile{Data: c.second}
		if got := linesOf(pressedProblems(t, files, 27)); !slices.Equal(got, c.want) {
			t.Errorf("%s: got\n%s\nwant\n%s", c.name, strings.Join(got, "\n"), strings.Join(c.want, "\n"))
		}
	}
}
