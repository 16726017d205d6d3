package plan

import (
	"bytes"
	"io/fs"
	"path"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"noonbook/build/file"
	"noonbook/build/markup"
	"noonbook/build/output"
	"noonbook/build/placeholder"
	"noonbook/build/placeholder/entry"
	"noonbook/build/problem"
	"noonbook/build/source"
	"noonbook/build/typeset"
	"noonbook/theme"
)

// planted is an answer behind whatever stands before it.
const (
	planted       = "\n\n```answer\nQXSECRETXQ\n```\n"
	plantedSecret = "QXSECRETXQ"
)

// Whatever a lesson, unit.toml and a record hold, and whatever the lesson is called,
// reading ends in problems with places in their files or in a whole handbook: pages
// with no script but ours and no handler, names that every computer can hold, and an
// answer behind the lesson that the class does not see.
func FuzzPress(f *testing.F) {
	settings := string(readFile(f, "../../testdata/units/south/unit.toml"))
	recorded := settings + "[records]\nmoon_log = \"log.csv\"\n"
	const block = "```lesson\ntitle = \"A\"\n```\n\n"
	for _, seed := range []struct{ lesson, settings, records, name string }{
		{block + "# The Sun\n\nIt is highest at {sun-day.noon}.\n\n```compute sun-day\n```\n", settings, "", "1-a"},
		{block + "&#110;bslot0z &lt;script&gt; nb&#x73;lot1z\n", settings, "", "a"},
		{"```lesson\ntitle = \"\\u006ebslot0z \\u003cscript\\u003e\"\nsummary = \"\\U0001F52D\"\n```\n", settings, "", "é"},
		{block + "````answer lines=3\n```caution\nx\n```\n````\n\n> ~~~staff\n> x\n> ~~~\n", settings, "", "2-b"},
		{block + "| a | b |\n|---|---|\n| {place-facts.latitude} | [x](#the-sun) |\n\n1. x\n\n   ```text\n   y\n   ```\n", settings, "", "3 c"},
		{block + "[a]: <b> \"c\"\n\n![a][a] <https://example.org/?a=\"b\"> `` ` `` *_**a**_*\n", settings, "", "x.md"},
		{block, "# a comment with a bell: \a\n" + strings.Replace(settings, "Pacific/", "Pacific", 1), "", "9"},
		{block + "```compute moon-log\n```\n", recorded, "date,time,phase\n2027-05-01,18:00,full\n", "4-moon"},
		{block + "- [ ] a\n- [x] b\n\n***\n\n    code\n\nHard  \nbreak\\\n{class-facts.school school.name=\"<b> & \\\"c\\\"\"}\n", strings.Replace(settings, "name = \"", "name = \"\\u003cb\\u003e \\u0026 ", 1), "", "5"},
	} {
		f.Add(seed.lesson, seed.settings, seed.records, seed.name)
	}
	own, err := fs.Sub(theme.Files(), "pages")
	if err != nil {
		f.Fatal(err)
	}
	var catalogue []entry.Entry // few, so that a try is quick
	for _, e := range placeholder.Catalogue() {
		if slices.Contains([]string{"class-facts", "dial-table", "moon-log", "place-facts", "sun-day"}, e.Name) {
			catalogue = append(catalogue, e)
		}
	}
	words, err := typeset.Language("en", false)
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, lesson, settings, records, name string) {
		if name += ".md"; !fs.ValidPath(name) || path.Base(name) != name {
			return // no name of a file
		}
		folder := fstest.MapFS{name: {Data: []byte(lesson + planted)}, "unit.toml": {Data: []byte(settings)}, "log.csv": {Data: []byte(records)}}
		unit, problems, err := source.Read(folder, "u", own, catalogue)
		if err != nil {
			t.Fatal(err)
		}
		if problems.Faults() > 0 {
			inTheirFiles(t, folder, problems)
			return
		}
		for _, edition := range []Edition{Class, Staff} {
			p, err := Make(unit, words, edition, catalogue)
			if err != nil {
				t.Fatal(err)
			}
			files, problems := p.Press(unit.Settings)
			if problems.Faults() > 0 {
				inTheirFiles(t, folder, problems)
				return
			}
			wholeHandbook(t, files, edition)
		}
	})
}

func inTheirFiles(t *testing.T, folder fstest.MapFS, problems problem.List) {
	t.Helper()
	for _, p := range problems {
		one, ok := folder[strings.TrimPrefix(p.File, "u/")]
		if p.File != "u" && !ok {
			t.Errorf("a problem of no file: %v", p)
		}
		if ok && p.Line > bytes.Count(one.Data, []byte("\n"))+bytes.Count(one.Data, []byte("\r"))+1 {
			t.Errorf("a problem behind the end of its file: %v", p)
		}
	}
}

func wholeHandbook(t *testing.T, files []file.File, edition Edition) {
	t.Helper()
	single, err := output.Single(files)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range append(files, file.File{Name: "single.html", Bytes: single}) {
		if err := file.Sound(f.Name); err != nil {
			t.Error(err)
		}
		if edition == Class && bytes.Contains(f.Bytes, []byte(plantedSecret)) {
			t.Errorf("%s shows the answer to the class", f.Name)
		}
		if path.Ext(f.Name) != ".html" {
			continue
		}
		scripts := 0
		for piece := range markup.Pieces(f.Bytes) {
			if piece.Tag == "script" && !piece.End {
				scripts++
			}
			piece.Rewritten(func(name, value string) string {
				if strings.HasPrefix(strings.ToLower(name), "on") || strings.HasPrefix(strings.ToLower(strings.TrimSpace(value)), "javascript:") {
					t.Errorf("%s holds a script: %s", f.Name, piece.Raw)
				}
				return value
			})
		}
		if scripts > 3 {
			t.Errorf("%s holds %d scripts", f.Name, scripts)
		}
	}
	if edition == Staff && !bytes.Contains(single, []byte(plantedSecret)) {
		t.Error("the staff edition lost the answer")
	}
}
