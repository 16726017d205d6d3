// Without the race detector, which sees nothing in one goroutine and takes minutes.

//go:build !race

package plan

import (
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"noonbook/build/placeholder"
	"noonbook/build/typeset"
)

// An example of the CommonMark specification.
type example struct {
	Markdown string
	HTML     string
	Example  int
	Section  string
}

// examples reads the suite of CommonMark 0.31.2 (https://spec.commonmark.org/0.31.2/)
// that goldmark carries for its own tests.
func examples(t *testing.T) []example {
	t.Helper()
	dir, err := exec.Command("go", "list", "-m", "-f", "{{.Dir}}", "github.com/yuin/goldmark").Output()
	if err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(filepath.Join(strings.TrimSpace(string(dir)), "_test", "spec.json"))
	if err != nil {
		t.Fatal(err)
	}
	var list []example
	if err := json.Unmarshal(text, &list); err != nil {
		t.Fatal(err)
	}
	return list
}

// aboutFiles are problems of the files and headings that an example names, which are
// not there.
var aboutFiles = regexp.MustCompile("is not in the content folder|has no heading|leads outside|is not a web address|are not carried along|it is no picture|has a backslash|tells no size|is not a link|is not a file|a handbook loads nothing")

// refused are the examples that are a problem in a lesson, besides those with raw HTML,
// with words of the problem: what could be an answer that its author fenced badly, and
// a star with a no-break space, which is no list and looks like one.
var refused = map[int]string{
	24: "is an unknown block", 34: "is an unknown block", 142: "is an unknown block", 143: "is an unknown block", 144: "is an unknown block", 146: "is an unknown block",
	126: "is never closed", 127: "is never closed", 128: "is never closed", 137: "is never closed", 139: "is never closed", 237: "is never closed",
	134: "is indented too far", 138: "cannot stand on one line", 145: "cannot stand on one line", 347: "cannot stand on one line",
	353: "does not break, so this is no list",
}

// Every example of CommonMark's suite goes the whole way of a lesson, through the
// minifier, and gives what CommonMark says; white space counts as a browser shows it.
// Raw HTML is refused, and so are the examples that are listed with their reason.
func TestCommonMarkSuite(t *testing.T) {
	folder := fstest.MapFS{"unit.toml": {Data: readFile(t, "../../testdata/units/south/unit.toml")}}
	suite := examples(t)
	for _, e := range suite {
		folder[fmt.Sprintf("example%d.md", e.Example)] = &fstest.MapFile{Data: []byte("```lesson\ntitle = \"A\"\npart = \"page\"\n```\n\n" + e.Markdown)}
	}
	unit, problems := readWith(t, folder, "u", placeholder.Catalogue())
	words, err := typeset.Language("en", false)
	if err != nil {
		t.Fatal(err)
	}
	found := map[string][]string{}
	for _, p := range problems {
		if !aboutFiles.MatchString(p.Text) {
			found[p.File] = append(found[p.File], p.Text)
		}
	}
	p, err := Make(unit, words, Class, placeholder.Catalogue())
	if err != nil {
		t.Fatal(err)
	}
	pages := map[string][]byte{}
	for _, page := range p.pages {
		pages[page.name] = slices.Concat(page.ready...)
	}
	good, raw := 0, 0
	for _, e := range suite {
		name := fmt.Sprintf("example%d", e.Example)
		told := strings.Join(found["u/"+name+".md"], "; ")
		switch {
		case strings.Contains(told, "raw HTML"):
			raw++
			continue
		case !strings.Contains(told, refused[e.Example]) || (told == "") != (refused[e.Example] == ""):
			t.Errorf("example %d (%s) %q: problems %q, want %q", e.Example, e.Section, e.Markdown, told, refused[e.Example])
		}
		got := shownAs(seen(t, pages[name+".html"], "", ""))
		if want := shownAs(tokensOf(parsed(t, []byte(e.HTML)))); got != want {
			t.Errorf("example %d (%s) %q:\n got %s\nwant %s", e.Example, e.Section, e.Markdown, got, want)
			continue
		}
		if told == "" {
			good++
		}
	}
	t.Logf("CommonMark 0.31.2: %d of %d examples as they should be, %d refused for raw HTML, %d for their fences or what is pasted", good, len(suite), raw, len(refused))
	if good+raw+len(refused) != len(suite) {
		t.Error("they do not add up")
	}
}

// tokensOf reads what CommonMark gives; a heading of the first level is one of the
// second in a lesson, whose title is the first.
func tokensOf(root *element) []string {
	var lower func(*element)
	lower = func(e *element) {
		if e.name == "h1" {
			e.name = "h2"
		}
		for _, c := range e.children {
			lower(c)
		}
	}
	lower(root)
	out := tokens{}
	out.read(root, "article")
	out.flush()
	return out.list
}

var inCode = strings.NewReplacer("<code> ", "<code>", " </code>", "</code>", " href >", " >", " alt >", " >")

// shownAs joins tokens as a browser shows them: a space at either end of code shows
// nothing at the end of a line, and an attribute without value is one that is empty.
func shownAs(list []string) string {
	return strings.Join(strings.Fields(strings.ReplaceAll(inCode.Replace(inCode.Replace(strings.Join(list, "\n"))), "</code>", "</code> ")), " ")
}
