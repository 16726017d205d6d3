package plan

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"

	"noonbook/build/placeholder"
	"noonbook/build/school"
)

var update = flag.Bool("update", false, "rewrite what the golden files expect")

// An archive is the text form of a few files: each begins with a line
// "-- name --".
type archive struct {
	comment []byte
	files   []archived
}

type archived struct {
	name string
	data []byte
}

func parseArchive(src []byte) archive {
	var a archive
	for line := range bytes.Lines(src) {
		name, ok := bytes.CutPrefix(bytes.TrimSpace(line), []byte("-- "))
		name, closed := bytes.CutSuffix(name, []byte(" --"))
		switch {
		case ok && closed:
			a.files = append(a.files, archived{name: string(name)})
		case len(a.files) == 0:
			a.comment = append(a.comment, line...)
		default:
			last := &a.files[len(a.files)-1]
			last.data = append(last.data, line...)
		}
	}
	return a
}

// unit returns the files that are not what is wanted.
func (a archive) unit() fstest.MapFS {
	files := fstest.MapFS{}
	for _, f := range a.files {
		if !strings.HasPrefix(f.name, "want ") {
			files[f.name] = &fstest.MapFile{Data: f.data}
		}
	}
	return files
}

func (a archive) bytes() []byte {
	b := bytes.Clone(a.comment)
	for _, f := range a.files {
		b = fmt.Appendf(b, "-- %s --\n%s", f.name, f.data)
	}
	return b
}

// Each golden file holds a unit and what it must give: "want problems" the
// problems, "want class" and "want staff" the text of the first lesson's page; with
// "at" and degrees behind, as though the school were at that latitude.
func TestGolden(t *testing.T) {
	names, err := filepath.Glob("../../testdata/golden/*.txtar")
	if err != nil || len(names) == 0 {
		t.Fatalf("no golden files: %v", err)
	}
	for _, name := range names {
		t.Run(strings.TrimSuffix(filepath.Base(name), ".txtar"), func(t *testing.T) {
			a := parseArchive(readFile(t, name))
			files := a.unit()
			for i, f := range a.files {
				what, ok := strings.CutPrefix(f.name, "want ")
				if !ok {
					continue
				}
				got := gives(t, files, what)
				if *update {
					a.files[i].data = got
				} else if !bytes.Equal(got, f.data) {
					t.Errorf("%s:\n%s", f.name, difference(t, f.data, got))
				}
			}
			if *update {
				if err := os.WriteFile(name, a.bytes(), 0o666); err != nil {
					t.Fatal(err)
				}
			}
		})
	}
}

// margin is the theme's, and changes with the look.
var margin = regexp.MustCompile(`(?s)<aside class="(?:glance|numbers-today)".*?</aside>|<div class="horizon".*?</div>|<nav class="horizon".*?</nav>|<svg class="drawing day-arc".*?</svg>`)

// gives returns what a unit gives of the thing wanted, with a line end after
// each tag that ends a block, so that a person can read the difference.
func gives(t *testing.T, files fstest.MapFS, what string) []byte {
	t.Helper()
	unit, problems := readWith(t, files, "unit", placeholder.Catalogue())
	settings := unit.Settings
	what, latitude, moved := strings.Cut(what, " at ")
	if moved {
		degrees, err := strconv.ParseFloat(latitude, 64)
		if err != nil {
			t.Fatal(err)
		}
		settings = settings.With(school.Latitude.Is(degrees))
	}
	if what == "problems" && moved {
		p, err := Make(unit, english(t), Staff, placeholder.Catalogue())
		if err != nil {
			t.Fatal(err)
		}
		_, problems = p.Press(settings)
		return []byte(problems.Error() + "\n")
	}
	if what == "problems" {
		_, more := (&Plan{unit: unit, course: unit.Course(), words: english(t)}).calendar(unit.Settings)
		problems = append(problems, more...)
		return []byte(problems.Sorted().Error() + "\n")
	}
	_, words := read(t, files, "unit")
	p, err := Make(unit, words, map[string]Edition{"class": Class, "staff": Staff}[what], placeholder.Catalogue())
	if err != nil {
		t.Fatal(err)
	}
	pages, problems := p.Press(settings)
	if problems.Faults() > 0 {
		t.Fatal(problems)
	}
	page := pages[1].Bytes // after the cover
	start, end := bytes.Index(page, []byte("</h1>")), bytes.Index(page, []byte("</article>"))
	if start < 0 || end < 0 {
		t.Fatalf("no article in %s", page)
	}
	text := margin.ReplaceAllString(string(page[start+len("</h1>"):end]), "")
	for _, tag := range []string{"p", "li", "ul", "ol", "tr", "table", "figure", "section", "h2", "h3", "pre", "div", "dl", "blockquote"} {
		text = strings.ReplaceAll(text, "</"+tag+">", "</"+tag+">\n")
	}
	return []byte(text)
}

// difference is the unified difference of two texts, by the diff of the system
// where there is one.
func difference(t *testing.T, want, got []byte) string {
	t.Helper()
	a, b := filepath.Join(t.TempDir(), "want"), filepath.Join(t.TempDir(), "got")
	for name, data := range map[string][]byte{a: want, b: got} {
		if err := os.WriteFile(name, data, 0o666); err != nil {
			t.Fatal(err)
		}
	}
	out, err := exec.Command("diff", "-u", a, b).Output()
	if len(out) == 0 && err != nil {
		return fmt.Sprintf("got\n%s\nwant\n%s", got, want)
	}
	return string(out)
}
