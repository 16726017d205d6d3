package plan

import (
	"errors"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/place"
)

// A number without a date is that of the day of its lesson, on a page that is no
// lesson that of the first day of the term; with a date it is that of the date.
func TestNumbersAreOfTheDay(t *testing.T) {
	files := smallUnit()
	for _, name := range []string{"0-today.md", "1-alpha.md", "2-beta.md", "3-gamma.md", "extra.md"} {
		files[name] = &fstest.MapFile{Data: append(slices.Clone(files[name].Data), "\n{sun-day.in_words}\n\n{sun-day.in_words date=2027-04-30}\n\n```answer\n{sun-day.in_words}\n```\n"...)}
	}
	unit, words := read(t, files, "unit")
	_, staff := pressings(t, unit, words, unit.Settings.With(form.Values{"term.days_off": []place.Date{{Year: 2027, Month: 4, Day: 12}}}))
	for page, want := range map[string]string{"today.html": "12 April", "extra.html": "12 April", "alpha.html": "13 April", "beta.html": "14 April", "gamma.html": "16 April", "day-gamma.html": "16 April", "pupil-gamma.html": "16 April"} {
		var days []string
		for _, m := range regexp.MustCompile(`On (\d+ April) 2027 the Sun`).FindAllStringSubmatch(strings.ReplaceAll(staff[page], "\u00a0", " "), -1) {
			if m[1] != "30 April" {
				days = append(days, m[1])
			}
		}
		if len(days) == 0 || slices.ContainsFunc(days, func(d string) bool { return d != want }) {
			t.Errorf("%s tells of %v, want %s", page, days, want)
		}
		if strings.HasSuffix(page, "a.html") && page[0] != 'd' && page[0] != 'p' && !strings.Contains(strings.ReplaceAll(staff[page], "\u00a0", " "), "On 30 April 2027") {
			t.Errorf("%s does not tell of its date", page)
		}
	}
}

// What a computation warns of is told with the place of each block that is another
// computation, once for those that are alike; a fault leaves no pages at all.
func TestPressTellsWhatIsWrong(t *testing.T) {
	shaky := entry.Entry{
		Name: "class-facts", Facts: []entry.Fact{{Name: "groups", Doc: "a"}}, Sources: []string{"test"}, Settings: form.Keys{school.ClassPupils},
		Reckon: func(v form.Values) (result.Result, error) {
			if school.ClassPupils.Of(v) == 13 {
				return result.Result{}, errors.New("thirteen")
			}
			return result.Result{Facts: []result.Fact{{Name: "groups", Value: say.Text("g")}}, Warnings: []say.Phrase{say.Line("page.no_groups")}}, nil
		},
	}
	files := fstest.MapFS{
		"unit.toml": smallUnit()["unit.toml"],
		"1-a.md":    {Data: []byte("```lesson\ntitle = \"A\"\n```\n\nx {class-facts.groups} {class-facts.groups}\n\n```compute class-facts\nclass.pupils = 5\n```\n")},
	}
	unit, words := readCatalogue(t, files, []entry.Entry{shaky})
	p, err := Make(unit, words, Class, []entry.Entry{shaky})
	if err != nil {
		t.Fatal(err)
	}
	pages, problems := p.Press(unit.Settings)
	const warning = "class-facts: no pupils are entered yet"
	if want := "unit/1-a.md:5:4: warning: " + warning + "\nunit/1-a.md:7:12: warning: " + warning; problems.Error() != want || len(pages) == 0 {
		t.Errorf("%d pages and\n%v\nwant\n%s", len(pages), problems, want)
	}
	pages, problems = p.Press(unit.Settings.With(form.Values{"class.pupils": 13}))
	if problems.Faults() != 2 || !strings.HasPrefix(problems.Error(), "unit/1-a.md:5:4: class-facts: thirteen\n") || pages != nil {
		t.Errorf("%d pages and\n%v", len(pages), problems)
	}
	dated := fstest.MapFS{"unit.toml": files["unit.toml"], "1-a.md": {Data: []byte("```lesson\ntitle = \"A\"\ndate = 2027-05-20\n```\n")}}
	unit, words = readCatalogue(t, dated, []entry.Entry{shaky})
	if p, err = Make(unit, words, Class, []entry.Entry{shaky}); err != nil {
		t.Fatal(err)
	}
	if pages, problems = p.Press(unit.Settings); pages != nil || problems.Faults() != 1 {
		t.Errorf("a lesson outside the term: %d pages and %v", len(pages), problems)
	}
}

// Beside the link to sheets stands a small picture of the first of them, and all
// stand on the page that it leads to, in their order.
func TestPreviewIsTheFirstSheet(t *testing.T) {
	sheet := func(name string) []drawing.Sheet {
		d := drawing.Drawing{Name: "poster", Width: 50, Height: 20, Title: say.Line("strip-picture.name")}
		d.Label("name", drawing.Point{X: 5, Y: 10}, drawing.Start, say.Text(name))
		return drawing.PaperOf("A4").Sheets(d)
	}
	poster := entry.Entry{
		Name: "strip-picture", Printable: true, Facts: []entry.Fact{{Name: "a", Doc: "a"}}, Sources: []string{"test"},
		Reckon: func(form.Values) (result.Result, error) {
			return result.Result{Sheets: append(sheet("sheet Ume"), sheet("sheet Vau")...)}, nil
		},
	}
	unit, words := readCatalogue(t, fstest.MapFS{
		"unit.toml": smallUnit()["unit.toml"],
		"1-a.md":    {Data: []byte("```lesson\ntitle = \"A\"\n```\n\n```compute strip-picture\n```\n")},
	}, []entry.Entry{poster})
	p, err := Make(unit, words, Class, []entry.Entry{poster})
	if err != nil {
		t.Fatal(err)
	}
	files, problems := p.Press(unit.Settings)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	for _, f := range files {
		if f.Name != "a.html" && f.Name != "print-strip-picture.html" {
			continue
		}
		var shown []string
		for _, text := range parsed(t, f.Bytes).texts("text") {
			if strings.HasPrefix(text, "sheet ") {
				shown = append(shown, text)
			}
		}
		want := []string{"sheet Ume"}
		if f.Name != "a.html" {
			want = []string{"sheet Ume", "sheet Vau"}
		}
		if !slices.Equal(shown, want) {
			t.Errorf("%s shows %q, want %q", f.Name, shown, want)
		}
	}
}

// A day sheet tells the cautions of computed blocks, each once, whether the block
// stands on the sheet or elsewhere in the lesson; of a printable it tells nothing
// else, since that is printed anyway.
func TestDaySheetTellsComputedCautions(t *testing.T) {
	warns := func(name, caution string, printable bool) entry.Entry {
		return entry.Entry{
			Name: name, Printable: printable, Facts: []entry.Fact{{Name: "groups", Doc: "a"}}, Sources: []string{"test"},
			Reckon: func(form.Values) (result.Result, error) {
				d := drawing.Drawing{Name: "poster", Width: 50, Height: 20, Title: say.Line("strip-picture.name")}
				d.Line("edge", drawing.Point{}, drawing.Point{X: 9, Y: 9})
				r := result.Result{Facts: []result.Fact{{Name: "groups", Value: say.Text("fact of " + name)}}}
				r.Cautions = []say.Phrase{say.Line("kit.class", say.Text("now"), say.Text(caution))}
				if printable {
					r.Sheets = drawing.PaperOf("A4").Sheets(d)
				}
				return r, nil
			},
		}
	}
	catalogue := []entry.Entry{warns("class-facts", "Mind the wombat", false), warns("strip-picture", "Mind the quokka", true)}
	unit, words := readCatalogue(t, fstest.MapFS{
		"unit.toml": smallUnit()["unit.toml"],
		"1-a.md":    {Data: []byte("```lesson\ntitle = \"A\"\n[sheet]\nback = [\"make\"]\n```\n\n## Make\n\n```compute strip-picture\n```\n\n## Elsewhere\n\n```compute class-facts\n```\n\nmore\n\n```compute class-facts\n```\n")},
	}, catalogue)
	p, err := Make(unit, words, Staff, catalogue)
	if err != nil {
		t.Fatal(err)
	}
	files, problems := p.Press(unit.Settings)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	for _, f := range files {
		if f.Name != "day-a.html" {
			continue
		}
		page := string(f.Bytes)
		_, back, _ := strings.Cut(page, `id="nb-back"`)
		care, board := line(plainText(sheetPart(t, page, "care"))), line(plainText(back))
		if strings.Count(care, "Mind the wombat: now") != 1 || strings.Contains(board, "wombat") {
			t.Errorf("cautions are %q", care)
		}
		if strings.Count(board, "Mind the quokka: now") != 1 || strings.Contains(page, "fact of strip-picture") {
			t.Errorf("of the printable it tells %q", board)
		}
		return
	}
	t.Error("there is no day sheet")
}
