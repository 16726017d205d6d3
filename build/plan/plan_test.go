package plan

import (
	"bytes"
	"fmt"
	"io/fs"
	"os"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"testing"
	"testing/fstest"
	"time"
	"unicode"

	"noonbook/build/concordance"
	"noonbook/build/drawing"
	"noonbook/build/file"
	"noonbook/build/form"
	"noonbook/build/placeholder"
	"noonbook/build/placeholder/entry"
	"noonbook/build/problem"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/build/source"
	"noonbook/build/typeset"
	"noonbook/theme"
)

// read reads a unit and fails the test when it has a fault.
func read(t *testing.T, files fs.FS, root string) (*source.Unit, *typeset.Words) {
	t.Helper()
	unit, problems := readWith(t, files, root, placeholder.Catalogue())
	return sound(t, unit, problems)
}

func readCatalogue(t *testing.T, files fs.FS, catalogue []entry.Entry) (*source.Unit, *typeset.Words) {
	t.Helper()
	unit, problems := readWith(t, files, "unit", catalogue)
	return sound(t, unit, problems)
}

func sound(t *testing.T, unit *source.Unit, problems problem.List) (*source.Unit, *typeset.Words) {
	t.Helper()
	if problems.Faults() > 0 {
		t.Fatalf("the unit has problems:\n%v", problems)
	}
	words, err := typeset.Language("en", school.Measure.Of(unit.Settings) == "customary")
	if err != nil {
		t.Fatal(err)
	}
	return unit, words.In(typeset.Manner{
		TwelveHour: school.Clock.Of(unit.Settings) == school.TwelveHour,
		MonthFirst: school.Dates.Of(unit.Settings) == school.MonthFirst,
	})
}

func readWith(t *testing.T, files fs.FS, root string, catalogue []entry.Entry) (*source.Unit, problem.List) {
	t.Helper()
	own, err := fs.Sub(theme.Files(), "pages")
	if err != nil {
		t.Fatal(err)
	}
	unit, problems, err := source.Read(files, root, own, catalogue)
	if err != nil {
		t.Fatal(err)
	}
	return unit, problems
}

// units are the demo and the units for tests that have no fault.
var units = []string{
	"content",
	"testdata/units/south",
	"testdata/units/line-south",
	"testdata/units/line-north",
	"testdata/units/arctic",
	"testdata/units/pole",
}

func eachUnit(t *testing.T, do func(t *testing.T, unit *source.Unit, words *typeset.Words)) {
	for _, name := range units {
		t.Run(name, func(t *testing.T) {
			unit, words := read(t, os.DirFS("../../"+name), name)
			do(t, here(t, unit, unit.Settings), words)
		})
	}
}

// here returns the unit as it is at a school.
func here(t *testing.T, unit *source.Unit, settings form.Values) *source.Unit {
	t.Helper()
	settled, problems, err := Settled(unit, settings, &entry.Known{})
	if err != nil || settled == nil {
		t.Fatal(err, problems)
	}
	return settled
}

// plainly writes a draft the slow and obviously right way: the slots filled in
// the markup first, the whole minified then.
func plainly(t *testing.T, d *draft, s *pressing) []byte {
	t.Helper()
	s = s.onPage()
	marks := regexp.MustCompile(d.plan.token + `(\d+)z`)
	filled := marks.ReplaceAllFunc(d.markup, func(mark []byte) []byte {
		n, err := strconv.Atoi(string(marks.FindSubmatch(mark)[1]))
		if err != nil {
			t.Fatal(err)
		}
		return d.slots[n](nil, s)
	})
	small, err := minified(filled)
	if err != nil {
		t.Fatal(err)
	}
	return small
}

func TestPlannedPageIsThePlainPage(t *testing.T) {
	same := func(t *testing.T, unit *source.Unit, words *typeset.Words) {
		for _, edition := range []Edition{Class, Staff} {
			p, drafts, err := drafted(unit, words, edition, placeholder.Catalogue(), newToken())
			if err != nil {
				t.Fatal(err)
			}
			s, problems := p.reckon(unit.Settings, &entry.Known{})
			if problems.Faults() > 0 {
				t.Fatal(problems)
			}
			for _, d := range drafts {
				page, err := d.page(nil)
				if err != nil {
					t.Fatal(err)
				}
				got, _ := page.fill(nil, s)
				if want := plainly(t, d, s); !bytes.Equal(got, want) {
					t.Errorf("edition %d, %s: %s", edition, d.name, firstDifference(got, want))
				}
			}
		}
	}
	eachUnit(t, same)
	t.Run("golden", func(t *testing.T) {
		files := parseArchive(readFile(t, "../../testdata/golden/language.txtar")).unit()
		files["unit.toml"].Data = bytes.ReplaceAll(files["unit.toml"].Data, []byte("Golden School"), []byte("Ash &amp <Elm> & &#98; \\\"Co\\\""))
		unit, words := read(t, files, "golden")
		same(t, unit, words)
	})
	t.Run("standing", func(t *testing.T) {
		unit, words := read(t, parseArchive(readFile(t, "../../testdata/golden/standing.txtar")).unit(), "standing")
		for _, latitude := range []float64{46.09, -33.9} {
			unit := here(t, unit, unit.Settings.With(school.Latitude.Is(latitude)))
			unit.Settings = unit.Settings.With(school.Latitude.Is(latitude))
			same(t, unit, words)
		}
	})
}

func firstDifference(got, want []byte) string {
	i := 0
	for i < min(len(got), len(want)) && got[i] == want[i] {
		i++
	}
	around := func(b []byte) []byte { return b[max(0, i-60):min(len(b), i+60)] }
	return fmt.Sprintf("at byte %d\n got …%s…\nwant …%s…", i, around(got), around(want))
}

// One plan pressed for two schools at once gives each the bytes that it gets alone; run
// with -race.
func TestPlanIsPressedByTwoAtOnce(t *testing.T) {
	unit, words := read(t, os.DirFS("../../content"), "content")
	planned := func() *Plan {
		p, err := Make(unit, words, Class, placeholder.Catalogue())
		if err != nil {
			t.Fatal(err)
		}
		return p
	}
	schools := []form.Values{unit.Settings, unit.Settings.With(form.Values{"school.latitude": -33.9, "school.name": "Another School", "class.pupils": 31})}
	var together [2][]file.File
	var wait sync.WaitGroup
	p := planned()
	for i := range together {
		wait.Go(func() { together[i], _ = p.Press(schools[i]) })
	}
	wait.Wait()
	for i, files := range together {
		alone, problems := planned().Press(schools[i])
		if problems.Faults() > 0 || len(files) != len(alone) {
			t.Fatalf("school %d: %d and %d files, %v", i, len(files), len(alone), problems)
		}
		for k, f := range files {
			if !bytes.Equal(f.Bytes, alone[k].Bytes) {
				t.Errorf("school %d: %s differs", i, f.Name)
			}
		}
	}
}

// What the finder takes from the plan and from the slots is what it takes from the
// finished pages.
func TestFinderKnowsTheFinishedPages(t *testing.T) {
	eachUnit(t, func(t *testing.T, unit *source.Unit, words *typeset.Words) {
		for _, edition := range []Edition{Class, Staff} {
			p, err := Make(unit, words, edition, placeholder.Catalogue())
			if err != nil {
				t.Fatal(err)
			}
			known := &entry.Known{}
			for _, over := range []form.Values{nil, {"school.name": "The <h2 id=x>Other</h2> School", "class.pupils": 31}} {
				files, problems := p.PressKnowing(unit.Settings.With(over), known)
				if problems.Faults() > 0 {
					t.Fatal(problems)
				}
				pages := files[:len(p.pages)]
				var ready []concordance.Ready
				for _, f := range pages {
					ready = append(ready, concordance.Ready{Name: f.Name, Bytes: [][]byte{f.Bytes}})
				}
				finished := concordance.New(words.Code, ready)
				var read []concordance.Page
				for i, f := range pages {
					read = append(read, finished.Read(i, f.Bytes, []int{0}))
				}
				inWords, inLines, err := finished.Of(read)
				if err != nil {
					t.Fatal(err)
				}
				for _, f := range files[len(pages):] {
					want := map[string][]byte{concordance.File: inWords, concordance.LinesFile: inLines}[f.Name]
					if want != nil && !bytes.Equal(f.Bytes, want) {
						t.Errorf("edition %d, %s: %s", edition, f.Name, firstDifference(f.Bytes, want))
					}
				}
			}
		}
	})
}

// One plan of the demo is pressed for schools far away: the lessons hold there
// too, and each school gets its own numbers.
func TestOnePlanForManySchools(t *testing.T) {
	unit, words := read(t, os.DirFS("../../content"), "content")
	p, err := Make(unit, words, Staff, placeholder.Catalogue())
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]string{}
	for name, over := range map[string]form.Values{
		"home":    nil,
		"south":   {"school.latitude": -45.87, "school.longitude": 170.5, "school.time_zone": zone(t, "Pacific/Auckland"), "school.paper": "A4"},
		"equator": {"school.latitude": 0.0, "school.longitude": 6.7, "school.time_zone": zone(t, "Africa/Lagos")},
		"arctic":  {"school.latitude": 69.6, "school.longitude": 18.95, "school.time_zone": zone(t, "Europe/Oslo")},
		"pole":    {"school.latitude": 90.0, "school.longitude": 0.0, "school.time_zone": zone(t, "UTC")},
		"empty":   {"class.pupils": 0, "stock.strip_squares": 3},
	} {
		pages, problems := p.Press(unit.Settings.With(over))
		if problems.Faults() > 0 {
			t.Errorf("%s: %v", name, problems)
			continue
		}
		for _, page := range pages {
			if i := bytes.Index(page.Bytes, []byte("⟦")); i >= 0 {
				t.Errorf("%s: %s lacks words: %.60s", name, page.Name, page.Bytes[i:])
			}
			if page.Name == "shadow-clock.html" {
				for other, text := range seen {
					if text == string(page.Bytes) {
						t.Errorf("%s has the numbers of %s", name, other)
					}
				}
				seen[name] = string(page.Bytes)
			}
		}
	}
	if len(seen) != 6 {
		t.Errorf("%d schools were pressed", len(seen))
	}
}

func zone(t *testing.T, name string) *time.Location {
	t.Helper()
	z, err := time.LoadLocation(name)
	if err != nil {
		t.Fatal(err)
	}
	return z
}

// No byte of an answer, of a staff note, or of a caution within one reaches the
// class edition; the staff edition has them all.
func TestClassEditionHoldsNoAnswer(t *testing.T) {
	secret := []string{"quokka", "wombat", "bilby", "numbat"}
	files := fstest.MapFS{
		"unit.toml": {Data: readFile(t, "../../testdata/units/south/unit.toml")},
		"1-a.md": {Data: []byte("```lesson\ntitle = \"A\"\n```\n\n" +
			"````answer lines=2\n## A quokka\n\n```caution\nA wombat\n```\n\n| bilby |\n|---|\n| {sun-day.rise} |\n````\n\n" +
			"```staff\nA numbat\n```\n\n- item\n\n  ```answer\n  One more quokka\n  ```\n")},
	}
	unit, words := read(t, files, "secret")
	for _, c := range []struct {
		edition Edition
		want    bool
	}{{Class, false}, {Staff, true}} {
		p, err := Make(unit, words, c.edition, placeholder.Catalogue())
		if err != nil {
			t.Fatal(err)
		}
		pages, problems := p.Press(unit.Settings)
		if problems.Faults() > 0 {
			t.Fatal(problems)
		}
		var all strings.Builder
		for _, page := range pages {
			all.Write(page.Bytes)
		}
		for _, word := range secret {
			if strings.Contains(all.String(), word) != c.want {
				t.Errorf("edition %d: %q present is not %v", c.edition, word, c.want)
			}
		}
	}
}

// A compute block that has sheets gets a page of them, named after its
// placeholder, and a link to it with the number of sheets.
func TestPrintablesHaveAPage(t *testing.T) {
	poster := entry.Entry{
		Name: "strip-picture", Printable: true, Facts: []entry.Fact{{Name: "a", Doc: "a"}}, Sources: []string{"test"},
		Reckon: func(form.Values) (result.Result, error) {
			d := drawing.Drawing{Name: "poster", Width: 300, Height: 100, Title: say.Line("strip-picture.name")}
			d.Line("edge", drawing.Point{X: 0, Y: 0}, drawing.Point{X: 300, Y: 100})
			return result.Result{Sheets: drawing.PaperOf("A4").Sheets(d)}, nil
		},
	}
	unit, words := readCatalogue(t, fstest.MapFS{
		"unit.toml": {Data: readFile(t, "../../testdata/units/south/unit.toml")},
		"1-a.md":    {Data: []byte("```lesson\ntitle = \"A\"\n```\n\n```compute strip-picture\n```\n\n````caution\n```compute strip-picture\n```\n````\n")},
	}, []entry.Entry{poster})
	p, err := Make(unit, words, Class, []entry.Entry{poster})
	if err != nil {
		t.Fatal(err)
	}
	pages, problems := p.Press(unit.Settings)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	found := map[string]string{}
	for _, page := range pages {
		found[page.Name] = string(page.Bytes)
	}
	for name, want := range map[string][]string{
		"a.html":                   {`href="print-strip-picture.html"`, `href="print-strip-picture-2.html"`, "2 sheets of A4"},
		"print-strip-picture.html": {`width="210mm" height="297mm"`, `href="a.html"`, `M11 285L111 285`},
	} {
		for _, w := range want {
			if !strings.Contains(found[name], w) {
				t.Errorf("%s lacks %s:\n%s", name, w, found[name])
			}
		}
	}
}

// A mark cannot be written by an author, in plain letters or escaped, since nobody
// can guess it; whatever looks like one stands on the page as it was written.
func TestMarksCanNotBeForged(t *testing.T) {
	lesson := []byte("```lesson\ntitle = \"\\u006ebslot0z\"\nsummary = \"nbslot1z\"\n```\n\nnbslot0z, &#110;bslot99z and nb&#x73;lotq1z at {sun-day.noon}\n")
	unit, words := read(t, fstest.MapFS{"unit.toml": {Data: readFile(t, "../../testdata/units/south/unit.toml")}, "1-a.md": {Data: lesson}}, "marks")
	var pressed [2][]byte
	tokens := map[string]bool{}
	for i := range pressed {
		p, err := Make(unit, words, Class, placeholder.Catalogue())
		if err != nil {
			t.Fatal(err)
		}
		files, _ := p.Press(unit.Settings)
		for _, f := range files {
			if f.Name == "a.html" {
				pressed[i] = f.Bytes
			}
			if bytes.Contains(f.Bytes, []byte(p.token)) {
				t.Errorf("%s holds a mark", f.Name)
			}
		}
		if tokens[p.token] = true; !regexp.MustCompile("^nb[a-z]{26,}$").MatchString(p.token) {
			t.Errorf("a mark begins with %q", p.token)
		}
	}
	if len(tokens) != 2 {
		t.Error("the marks of two plans are the same")
	}
	if !bytes.Contains(pressed[0], []byte("<p>nbslot0z, nbslot99z and nbslotq1z at <time ")) || !bytes.Contains(pressed[0], []byte("</span> nbslot0z</h1>")) || !bytes.Equal(pressed[0], pressed[1]) {
		t.Errorf("the author's letters are gone:\n%s", pressed[0])
	}
}

// No control character reaches a page, in whatever way it is written: HTML Standard,
// section 13.2.3.5, "control-character-in-input-stream".
func TestNoControlCharacters(t *testing.T) {
	unit, words := read(t, fstest.MapFS{"unit.toml": {Data: readFile(t, "../../testdata/units/south/unit.toml")}, "1-a.md": {Data: []byte("```lesson\ntitle = \"A\"\n```\n\na&#27;b&#x9b;c&#7;d\n")}}, "controls")
	p, err := Make(unit, words, Class, placeholder.Catalogue())
	if err != nil {
		t.Fatal(err)
	}
	files, _ := p.Press(unit.Settings)
	for _, f := range files {
		if i := bytes.IndexFunc(f.Bytes, func(c rune) bool { return unicode.IsControl(c) && c != '\n' && c != '\r' && c != '\t' }); i >= 0 {
			t.Errorf("%s holds %q", f.Name, f.Bytes[max(0, i-10):i+10])
		}
		if f.Name == "a.html" && !bytes.Contains(f.Bytes, []byte("a\ufffdb\ufffdc\ufffdd")) {
			t.Errorf("%s lost its letters", f.Name)
		}
	}
}

// Files that would take each other's place are a problem where the author can mend it.
func TestOneNameEach(t *testing.T) {
	settings := readFile(t, "../../testdata/units/south/unit.toml")
	block := "```lesson\ntitle = \"A\"\n```\n"
	for _, c := range []struct{ name, text, want string }{
		{"print-dial-face.md", block + "\n```compute dial-face\n```\n", "/print-dial-face.md:1:1: the handbook has a file print-dial-face.html of its own; give this one another name"},
		{"a.md", block + "[x](Sun-Day-Table.csv)\n\n```compute sun-day\n```\n", ""},
		{"a.md", block + "[x](DIAL-table-lines.csv)\n\n```compute dial-table\n```\n", "/a.md:4:1: dial-table-lines.csv and DIAL-table-lines.csv are one file on some computers; give this one another name"},
	} {
		unit, words := read(t, fstest.MapFS{"unit.toml": {Data: settings}, c.name: {Data: []byte(c.text)}, "Sun-Day-Table.csv": {Data: []byte("1")}, "DIAL-table-lines.csv": {Data: []byte("1")}}, "u")
		p, err := Make(unit, words, Class, placeholder.Catalogue())
		if err != nil {
			t.Fatal(err)
		}
		files, problems := p.Press(unit.Settings)
		if c.want == "" && problems.Faults() == 0 {
			continue
		}
		if len(files) > 0 || problems.Faults() != 1 || !strings.HasSuffix(problems.Error(), c.want) {
			var names []string
			for _, f := range files {
				names = append(names, f.Name)
			}
			t.Errorf("got %v, want %s; files %v", problems, c.want, names)
		}
	}
}

func readFile(t testing.TB, name string) []byte {
	t.Helper()
	b, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return b
}
