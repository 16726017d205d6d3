package source_test

import (
	"io/fs"
	"testing"
	"testing/fstest"

	"github.com/yuin/goldmark/ast"

	"noonbook/build/placeholder"
	"noonbook/build/school"
	"noonbook/build/source"
	"noonbook/theme"
)

const settings = `unit.title = "T"
[school]
name = "S"
latitude = 46.09
longitude = -64.77
time_zone = "America/Moncton"
[term]
first_day = 2027-04-12
last_day = 2027-04-30
`

func own(t testing.TB) fs.FS {
	t.Helper()
	own, err := fs.Sub(theme.Files(), "pages")
	if err != nil {
		t.Fatal(err)
	}
	return own
}

// A lesson is one tree: special nodes stand in it where they were written, in
// lists and quotes too, and know their place.
func TestLessonIsOneTree(t *testing.T) {
	text := "```lesson\ntitle = \"A\"\n```\n" + // 3 lines
		"> quoted {sun-day.noon}\n" + // 4
		"\n" +
		"1. item\n" + // 6
		"\n" +
		"   ````answer lines=2\n" + // 8
		"   The tip: {dial-day.tip_height}\n" + // 9
		"\n" +
		"   ```compute sun-day\n" + // 11
		"   ```\n" +
		"   ````\n"
	unit, problems, err := source.Read(fstest.MapFS{
		"unit.toml": {Data: []byte(settings)},
		"a.md":      {Data: []byte(text)},
	}, "u", own(t), placeholder.Catalogue())
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	type seen struct {
		kind         string
		line, column int
		within       string
	}
	var got []seen
	err = ast.Walk(unit.Lessons[0].Tree, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		if !entering {
			return ast.WalkContinue, nil
		}
		within := ""
		for p := n.Parent(); p != nil; p = p.Parent() {
			if aside, ok := p.(*source.Aside); ok {
				within = aside.Word
			}
		}
		switch n := n.(type) {
		case *source.Inline:
			got = append(got, seen{n.Entry.Name + "." + n.Fact, n.At.Line, n.At.Column, within})
		case *source.Block:
			got = append(got, seen{n.Entry.Name, n.At.Line, n.At.Column, within})
		}
		return ast.WalkContinue, nil
	})
	if err != nil {
		t.Fatal(err)
	}
	want := []seen{
		{"sun-day.noon", 4, 11, ""},
		{"dial-day.tip_height", 9, 14, "answer"},
		{"sun-day", 11, 15, "answer"},
	}
	if len(got) != len(want) {
		t.Fatalf("got %v", got)
	}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("got %v, want %v", got[i], want[i])
		}
	}
}

// The settings hold everything after reading: what was written and defaults.
func TestReadSettings(t *testing.T) {
	values, problems, err := source.ReadSettings(fstest.MapFS{"unit.toml": {Data: []byte("\ufeff" + settings)}}, "u")
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	if school.Latitude.Of(values) != 46.09 || school.StockStripSquares.Of(values) != 300 || school.Paper.Of(values) != "A4" {
		t.Errorf("got %v", values)
	}
}

// Whatever stands in a lesson, reading it ends, and every problem has a place
// within the file.
func FuzzLesson(f *testing.F) {
	for _, seed := range []string{
		"```lesson\ntitle = \"A\"\n```\n\n{sun-day.noon date=2027-04-20} \\{ `{x}`\n",
		"```lesson\ntitle = \"A\"\nglance = [\"x.y\"]\n```\n- ````answer lines=2\n  > ```compute dial-table\n  > a = 1\n",
		"```lesson\ntitle = \"A\"\n```\n![{a.b}](x) [c](d.md#e \"{f.g}\") <b> | t |\n|---|\n| {h.i} \\| |\n",
		"```lesson\r\n```\r~~~caution\n\t```staff\n",
		"\ufeff```lesson\n[[kit]]\nitem = 1\n```",
	} {
		f.Add(seed)
	}
	pages := own(f)
	f.Fuzz(func(t *testing.T, text string) {
		_, problems, err := source.Read(fstest.MapFS{
			"unit.toml": {Data: []byte(settings)},
			"a.md":      {Data: []byte(text)},
		}, "u", pages, placeholder.Catalogue())
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range problems {
			if p.File == "" || p.Text == "" || p.Line < 0 || p.Line > 0 && p.Column < 1 {
				t.Errorf("a problem without a place: %+v", p)
			}
		}
	})
}
