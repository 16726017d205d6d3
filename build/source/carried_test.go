package source_test

import (
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"testing/fstest"

	"noonbook/build/placeholder"
	"noonbook/build/problem"
	"noonbook/build/source"
)

// onDisk reads a unit from a folder of the file system, which has links and pipes.
func onDisk(t *testing.T, files map[string]string, more func(dir string) error) (*source.Unit, problem.List) {
	t.Helper()
	dir := t.TempDir()
	for name, text := range files {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.WriteFile(filepath.Join(dir, "unit.toml"), []byte(settings), 0o666); err != nil {
		t.Fatal(err)
	}
	if err := more(dir); err != nil {
		t.Fatal(err)
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		t.Fatal(err)
	}
	defer root.Close()
	unit, problems, err := source.Read(root.FS(), "u", own(t), placeholder.Catalogue())
	if err != nil {
		t.Fatal(err)
	}
	return unit, problems
}

// A lesson, unit.toml or a record is never carried along, under whatever name it is
// linked or shown: it would bring its answers to the class.
func TestWhatAUnitIsMadeOfIsNotCarried(t *testing.T) {
	const secret = "```lesson\ntitle = \"B\"\n```\n\n```answer\nSECRET\n```\n"
	csv := "distance_m,height_deg\n20,45\n"
	for name, link := range map[string]string{
		"a lesson as a picture":       "![b](2-b.md)",
		"a lesson in other letters":   "![b](2-b.MD)",
		"unit.toml":                   "[settings](unit.toml)",
		"unit.toml as a picture":      "![settings](unit.toml)",
		"a link to a lesson":          "[b](b.txt)",
		"a link to it as a picture":   "![b](b.png)",
		"a copy of a lesson":          "[b](copy.txt)",
		"a lesson that a system kept": "[b](2-b.md.txt)",
		"settings by another name":    "[b](unit.toml.txt)",
		"a record":                    "[log](log.csv)",
		"an editor's copy":            "[b](2-b.txt~)",
		"a hidden file":               "[b](.b.txt)",
		"no picture":                  "![b](fake.png)",
	} {
		unit, problems := onDisk(t, map[string]string{
			"1-a.md": head + "x " + link + "\n\n```compute rocket-log\nrecords.rocket_flights = \"log.csv\"\n```\n", "2-b.md": secret, "copy.txt": secret, "2-b.md.txt": secret,
			"unit.toml.txt": "x", "log.csv": csv, "2-b.txt~": secret, ".b.txt": secret, "fake.png": "no picture", "2-b.MD": "x",
		}, func(dir string) error {
			for _, link := range []string{"b.txt", "b.png"} {
				if err := os.Symlink("2-b.md", filepath.Join(dir, link)); err != nil {
					return err
				}
			}
			return os.Remove(filepath.Join(dir, "2-b.MD"))
		})
		faults := 0
		for _, p := range problems {
			if !p.Warning && p.File == "u/1-a.md" && p.Line == 4 && p.Column == 3 {
				faults++
			}
		}
		if faults != 1 {
			t.Errorf("%s: %v", name, problems)
		}
		for _, f := range unit.Files {
			t.Errorf("%s: %s is carried along", name, f.Name)
		}
	}
}

// A drawing that could run or load anything, or that holds another language, is
// refused with the place in it; one that only draws is not. What is refused follows
// SVG 2, sections 2.2 and 13.3 (secure static mode) and 15 (scripting).
func TestDrawingsOnlyDraw(t *testing.T) {
	svg := func(body string) string {
		return `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" viewBox="0 0 4 1">` + body + `</svg>`
	}
	for body, want := range map[string]string{
		`<script>alert(1)</script>`:                                            "<script>",
		`<g><path d="M0 0" onclick="x()"/></g>`:                                "a script: onclick=",
		`<path d="M0 0" ONLOAD="x()"/>`:                                        "a script: ONLOAD=",
		`<foreignObject><b>x</b></foreignObject>`:                              "<foreignObject>",
		`<h:iframe xmlns:h="http://www.w3.org/1999/xhtml" src="#"/>`:           "another language that browsers read: <iframe>",
		`<m:mi xmlns:m="http://www.w3.org/1998/Math/MathML" href="x">x</m:mi>`: "another language that browsers read: <mi>",
		`<image href="https://example.org/a.png"/>`:                            "a reference to something outside it: https://example.org/a.png",
		`<image xlink:href="//example.org/a.png"/>`:                            "a reference to something outside it: //example.org/a.png",
		`<use href="other.svg#a"/>`:                                            "a reference to something outside it: other.svg#a",
		`<image href="data:image/svg+xml;base64,PHN2Zy8+"/>`:                   "a reference to something outside it: data:image/svg+xml;base64,PHN2Zy8+",
		`<a href="javascript:alert(1)"><text>x</text></a>`:                     "<a>",
		`<animate attributeName="href" to="javascript:alert(1)"/>`:             "<animate>",
		`<set attributeName="onload" to="x"/>`:                                 "<set>",
		`<style>@import "https://example.org/a.css";</style>`:                  "a style that may load something: @import",
		`<style>@im<!-- -->port "a.css";</style>`:                              "a style that may load something: @import",
		`<style><![CDATA[path{fill:url(https://example.org)}]]></style>`:       "a style that may load something: url(h",
		`<style>path{fill:u\72l(x)}</style>`:                                   `a style that may load something: \`,
		`<rect fill="url(http://example.org/#a)"/>`:                            "a style that may load something: fill=",
		`<rect style="fill:url( 'x.svg#a')"/>`:                                 "a style that may load something: style=",
		`<svg xmlns="http://www.w3.org/1999/xhtml"/>`:                          "another language that browsers read: <svg>",
		`<g xml:base="https://example.org/"/>`:                                 `base="https://example.org/"`,
		`<b>unclosed`:                                                          "<b>",
		`<g>`:                                                                  "what is no sound XML: line 1: element <g> closed by </svg>",
	} {
		_, problems := unitOf(t, map[string]string{"a.md": head + "![a](l.svg)\n", "l.svg": svg(body)})
		if len(problems) != 1 || !strings.HasPrefix(problems[0].Error(), "u/l.svg:1:") || !strings.HasSuffix(problems[0].Error(), ": the drawing holds "+want+"; a handbook carries no drawing that could run or load anything") {
			t.Errorf("%s: got %v, want %s", body, problems, want)
		}
	}
	for _, whole := range []string{
		"<?xml-stylesheet href='https://example.org/a.css'?>" + svg(""),
		`<!DOCTYPE svg [<!ENTITY a "b">]>` + svg("&a;"),
		`<?xml version="1.0" encoding="UTF-16"?>` + svg(""),
		"no drawing <",
	} {
		if _, problems := unitOf(t, map[string]string{"a.md": head + "[a](l.svg)\n", "l.svg": whole}); problems.Faults() != 1 {
			t.Errorf("%s: %v", whole, problems)
		}
	}
	for _, sound := range []string{
		`<defs><linearGradient id="g"><stop offset="0"/></linearGradient></defs><rect fill="url(#g)" style="stroke:url('#g')" width="1" height="1"/>`,
		`<style>.a{fill:#123}</style><text class="a">On a click</text><use href="#x"/><use xlink:href="#x"/>`,
		`<image href="data:image/png;base64,iVBORw0KGgo="/>`,
		`<metadata><r:RDF xmlns:r="http://www.w3.org/1999/02/22-rdf-syntax-ns#"/></metadata><n:view xmlns:n="http://example.org/notes" n:onload="x"/>`,
	} {
		for _, before := range []string{"", "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<!DOCTYPE svg PUBLIC \"-//W3C//DTD SVG 1.1//EN\" \"http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd\">\n"} {
			if _, problems := unitOf(t, map[string]string{"a.md": head + "![a](l.svg)\n", "l.svg": before + svg(sound)}); len(problems) > 0 {
				t.Errorf("%s: %v", sound, problems)
			}
		}
	}
}

// A crest is a drawing like any other.
func TestCrestOnlyDraws(t *testing.T) {
	_, problems, err := source.Read(fstest.MapFS{
		"unit.toml": {Data: []byte(strings.Replace(settings, "[school]\n", "[school]\ncrest = \"c.svg\"\n", 1))},
		"a.md":      {Data: []byte(head)},
		"c.svg":     {Data: []byte("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 1 1\">\n<script/></svg>")},
	}, "u", own(t), placeholder.Catalogue())
	if want := "u/c.svg:2:1: school.crest holds <script>; a handbook carries no drawing that could run or load anything"; err != nil || len(problems) != 1 || problems[0].Error() != want {
		t.Errorf("got %v, %v", problems, err)
	}
}

// What editors and systems leave in a folder is passed over in silence; what is no
// file is not opened; a lesson that a system gave another ending is pointed out.
func TestLeavingsOfAFolder(t *testing.T) {
	unit, problems := onDisk(t, map[string]string{
		"1-a.md": head, "1-a.md~": "x", "#1-a.md#": "x", ".#1-a.md": "x", "._1-a.md": "\x00\x05\x16\x07", ".hidden.md": "x", "#new.md#": "x", "2-b.md.txt": "x",
	}, func(dir string) error { return os.MkdirAll(filepath.Join(dir, "3-folder.md"), 0o777) })
	if want := "u/2-b.md.txt: warning: this file is not read, for the name of a lesson ends in .md; take the .txt away"; len(problems) != 1 || problems[0].Error() != want {
		t.Errorf("got %v", problems)
	}
	if unit.Lessons[0].Page != "a.html" || len(unit.Files) > 0 {
		t.Errorf("there are %v", unit.Lessons)
	}
	for name, want := range map[string]string{"2-b.md": "u/2-b.md: this is no file that can be read, but a pipe", "unit.toml": "u/unit.toml: this is no file that can be read, but a pipe", "log.csv": "u/log.csv: this is no file that can be read, but a pipe", "l.svg": "u/1-a.md:4:1: picture l.svg is not a file"} {
		_, problems := onDisk(t, map[string]string{"1-a.md": head + "![x](l.svg)\n\n```compute rocket-log\nrecords.rocket_flights = \"log.csv\"\n```\n", "l.svg": `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 1"/>`, "log.csv": "distance_m,height_deg\n"}, func(dir string) error {
			_ = os.Remove(filepath.Join(dir, name))
			return syscall.Mkfifo(filepath.Join(dir, name), 0o666)
		})
		if !strings.Contains(problems.Error(), want) {
			t.Errorf("a pipe named %s: got %v", name, problems)
		}
	}
	_, problems, err := source.Read(fstest.MapFS{"unit.toml.txt": {Data: []byte(settings)}, "a.md": {Data: []byte(head)}}, "u", own(t), placeholder.Catalogue())
	if err != nil || !strings.Contains(problems.Error(), "u/unit.toml: the file is missing; without it we do not know where the school is; unit.toml.txt is here, whose .txt is too much") {
		t.Errorf("got %v, %v", problems, err)
	}
}

// Names that are one on some system are one here: accents in either form are found,
// and pages and files that would take each other's place are a problem.
func TestNamesThatAreOne(t *testing.T) {
	svg := `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 1"/>`
	apart, composed := "e\u0301t\u0065\u0301", "\u00e9t\u00e9"
	unit, problems := unitOf(t, map[string]string{
		"a.md":                       head + "![x](" + composed + "/" + apart + ".svg) ![y](" + apart + "/" + composed + ".svg) [z](" + composed + ".md)\n",
		apart + ".md":                head,
		apart + "/" + apart + ".svg": svg,
	})
	if len(problems) > 0 || len(unit.Files) != 1 {
		t.Errorf("accents: %v, %d files", problems, len(unit.Files))
	}
	for _, c := range []struct {
		files map[string]string
		want  string
	}{
		{map[string]string{"a.md": head + "[x](A.csv) [y](a.csv)\n", "A.csv": "1", "a.csv": "2"}, "u/a.md:4:12: A.csv and a.csv would both be a.csv in the handbook"},
		{map[string]string{"1-" + apart + ".md": head, "2-" + composed + ".md": head}, "two lessons would be the page"},
		{map[string]string{"con.md": head}, `u/con.md:1:1: the page of this lesson cannot be written: the file name "con.html" is taken on Windows`},
		{map[string]string{"a:b.md": head}, `u/a:b.md:1:1: the page of this lesson cannot be written: the file name "a:b.html" holds :`},
		{map[string]string{"a\nb.md": head}, `the file name "a\nb.html" holds the character U+000A`},
		{map[string]string{"a.md": head + "[x](nul.csv)\n", "nul.csv": "1"}, `u/a.md:4:1: file nul.csv: the file name "nul.csv" is taken on Windows`},
		{map[string]string{"a.md": head + `[x](art\l.svg)` + "\n", "art/l.svg": svg}, `u/a.md:4:1: art\l.svg has a backslash`},
		{map[string]string{"a.md": head + "[x](leave.svg)\n", "leaf.svg": svg}, `u/a.md:4:1: file leave.svg is not in the content folder; did you mean "leaf.svg"?`},
	} {
		_, problems := unitOf(t, c.files)
		if problems.Faults() != 1 || !strings.Contains(problems.Error(), c.want) {
			t.Errorf("got %v, want %s", problems, c.want)
		}
	}
}
