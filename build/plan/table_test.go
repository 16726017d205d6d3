package plan

import (
	"strings"
	"testing"
	"testing/fstest"
)

// A table of a lesson that is wider than a phone is one of cards, whose cells carry the
// name of their column as it is set; a narrow one is not. A computed value is marked where
// the page has it first, and only there.
func TestTablesOfALesson(t *testing.T) {
	const lesson = "```lesson\ntitle = \"A\"\n```\n\n" +
		"| Group's \"name\" | Uncharacteristically | Incomprehensibilities | |\n|---|---|---|---|\n| a | {class-facts.pupils} | Electroencephalographically | c |\n| – | 1 | – | d |\n\n" +
		"| a | b |\n|---|---|\n| 1 | 2 |\n\nSo {class-facts.pupils}, {class-facts.pupils} and {class-facts.groups}.\n"
	unit, words := read(t, fstest.MapFS{"unit.toml": {Data: []byte(oracleSettings)}, "1-a.md": {Data: []byte(lesson)}}, "unit")
	class, _ := pressings(t, unit, words, unit.Settings)
	page := class["a.html"]
	if n := strings.Count(page, `<table class="cards" role="table">`); n != 1 {
		t.Errorf("%d tables of cards in %s", n, page)
	}
	for _, want := range []string{
		`<tbody role="rowgroup"><tr role="row"><td role="cell" data-label="Group’s “name”">a</td>`,
		`<th scope="col" role="columnheader">Group’s “name”</th>`,
		`<td role="cell">c</td>`,                             // below a head without a name
		`<td role="cell" data-label="Group’s “name”">–</td>`, // the row's name stays
		`<td role="cell" data-dash>–</td>`,
		`<table><thead><tr><th scope="col">a</th>`,
	} {
		if !strings.Contains(page, want) {
			t.Errorf("the page lacks %s:\n%s", want, page)
		}
	}
	if first, all := strings.Count(page, `class="first">28<`), strings.Count(page, ">28</data>"); first != 1 || all < 3 {
		t.Errorf("28 is marked %d times of %d", first, all)
	}
	if n := strings.Count(page, `class="first">`); n != 2 {
		t.Errorf("%d values are marked", n)
	}
}
