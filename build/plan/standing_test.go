package plan

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"noonbook/build/file"
	"noonbook/build/form"
	"noonbook/build/placeholder"
	"noonbook/build/placeholder/entry"
	"noonbook/build/school"
	"noonbook/build/source"
)

var (
	standingFence = regexp.MustCompile("^([ >]*)(`{3,}|~{3,})[ ]*(only|unless)\\b")
	anyFence      = regexp.MustCompile("^[ >]*(`{3,}|~{3,})[ ]*(\\w*)")
	listItem      = regexp.MustCompile(`^[ >]*(?:[-*+]|\d+[.)]) `)
)

// standing writes a lesson as though its only and unless blocks had never been asked
// for: the oracle of what a settled page says. Blank lines take the place of their
// fences; what does not stand is cut out, and leaves a comment, which ends a list, unless
// it was a list itself. stands holds, by the line of its fence, whether a block stands.
func standing(t *testing.T, text string, stands map[int]bool) string {
	t.Helper()
	type open struct {
		fence      string
		ours, code bool
	}
	var within []open
	var cut []string // lines of what does not stand
	hidden := 0      // blocks that do not stand, within one another
	var out []string
	for i, text := range strings.Split(text, "\n") {
		fence := anyFence.FindStringSubmatch(text)
		ours := standingFence.FindStringSubmatch(text)
		bare := strings.Trim(text, " >`~") == ""
		switch {
		case fence != nil && bare && len(within) > 0 && strings.HasPrefix(fence[1], within[len(within)-1].fence):
			last := within[len(within)-1]
			within = within[:len(within)-1]
			if !last.ours {
				break
			}
			if hidden > 0 {
				if hidden--; hidden == 0 && !isList(cut) {
					indent := text[:len(text)-len(strings.TrimLeft(text, " "))] // of the item that it was in
					out = append(out, "", indent+"<!-- -->", "")
				}
				continue
			}
			out = append(out, strings.TrimRight(text, "`~"))
			continue
		case fence != nil && (len(within) == 0 || !within[len(within)-1].code):
			markdown := slices.Contains([]string{"only", "unless", "caution", "answer", "staff"}, fence[2])
			within = append(within, open{fence[1], ours != nil, !markdown})
			if ours == nil {
				break
			}
			stand, known := stands[i+1]
			if hidden == 0 && !known {
				t.Fatalf("line %d has no answer: %s", i+1, text)
			}
			if hidden > 0 || !stand {
				if hidden == 0 {
					cut = nil
				}
				hidden++
				continue
			}
			out = append(out, ours[1])
			continue
		}
		if hidden > 0 {
			cut = append(cut, text)
			continue
		}
		out = append(out, text)
	}
	return strings.Join(out, "\n")
}

func isList(lines []string) bool {
	for _, text := range lines {
		if strings.TrimSpace(text) != "" {
			return listItem.MatchString(text)
		}
	}
	return false
}

// answersOf returns the answers of the blocks that were asked, by file and line.
func answersOf(t *testing.T, unit *source.Unit, settings form.Values) map[string]map[int]bool {
	t.Helper()
	p := &Plan{unit: unit, settlements: newSettlements()}
	answers, problems, err := p.answers(settings, &entry.Known{})
	if err != nil || problems.Faults() > 0 {
		t.Fatal(err, problems)
	}
	lines := map[string]map[int]bool{}
	for at, stands := range answers {
		if lines[at.File] == nil {
			lines[at.File] = map[int]bool{}
		}
		lines[at.File][at.Line] = stands
	}
	return lines
}

// southAndNorth is a unit with everything in what stands at some schools.
const southAndNorth = "```lesson\ntitle = \"Both\"\n```\n\nFirst.\n\n" +
	"````only place-facts.south\n## Southern\n\n| a | {class-facts.pupils} |\n|---|---|\n| b | `c` |\n\n```compute class-facts\n```\n\n```answer lines=3\nsouthern answer\n```\n````\n\n" +
	"~~~~unless place-facts.south\n### *Northern*\n\n~~~caution\nice\n~~~\n\n`````unless place-facts.tropics\nnot hot {place-facts.latitude}\n\n````only place-facts.polar\nnever\n````\n`````\n~~~~\n\n" +
	"1. one\n2. two\n\n```only place-facts.south\n1. south three\n```\n```unless place-facts.south\n1. north three\n2. north four\n```\n\n1. last\n\n" +
	"- a\n\n````only place-facts.polar\na word\n````\n\n- b\n\n> q\n>\n> ```only place-facts.south\n> - in a quote\n> ```\n>\n> r\n\n```staff\nfor staff\n\n~~~only place-facts.south\nof the south\n~~~\n```\n"

func bothUnit() fstest.MapFS {
	return fstest.MapFS{"unit.toml": {Data: []byte(oracleSettings)}, "1-both.md": {Data: []byte(southAndNorth)}}
}

// A page of a settled unit says what CommonMark gives for its text without what does not
// stand, in both editions and both hemispheres.
func TestStandingTextIsWhatCommonMarkGives(t *testing.T) {
	whole, words := read(t, bothUnit(), "unit")
	for _, latitude := range []float64{-33.5, 46, 10} {
		settings := whole.Settings.With(school.Latitude.Is(latitude))
		unit := here(t, whole, settings)
		stands := map[int]bool{}
		for i, text := range strings.Split(southAndNorth, "\n") { // answered by hand
			if m := standingFence.FindStringSubmatch(text); m != nil {
				fact := map[string]bool{"south": latitude < 0, "tropics": latitude == 10, "polar": false}[text[strings.LastIndex(text, ".")+1:]]
				stands[i+1] = fact == (m[3] == "only")
			}
		}
		for _, edition := range []Edition{Class, Staff} {
			for _, page := range bare(t, unit, words, edition) {
				if page.name != "both.html" {
					continue
				}
				want := foreseen(t, standing(t, southAndNorth, stands), edition, func(string) string { return "⟪⟫" })
				agree(t, fmt.Sprintf("%v°, edition %d", latitude, edition), seen(t, page.markup, "", "⟪⟫"), want)
				if len(want) < 40 {
					t.Errorf("the lesson has only %d tokens", len(want))
				}
			}
		}
	}
}

// One plan pressed for many schools, by several at once, gives each the bytes that it
// gets alone, and makes one plan for those that answer alike.
func TestSchoolsThatAnswerAlikeShareAPlan(t *testing.T) {
	unit, words := read(t, bothUnit(), "unit")
	press := func(p *Plan, latitude float64) []file.File {
		files, problems := p.Press(unit.Settings.With(school.Latitude.Is(latitude)))
		if problems.Faults() > 0 {
			t.Error(problems)
		}
		return files
	}
	one, err := Make(unit, words, Staff, placeholder.Catalogue())
	if err != nil {
		t.Fatal(err)
	}
	latitudes := []float64{-33, -45, 46, 52, 10, -10, 70}
	var all sync.WaitGroup
	together := make([][]file.File, len(latitudes))
	for i, latitude := range latitudes {
		all.Add(1)
		go func() {
			defer all.Done()
			together[i] = press(one, latitude)
		}()
	}
	all.Wait()
	for i, latitude := range latitudes {
		alone, err := Make(unit, words, Staff, placeholder.Catalogue())
		if err != nil {
			t.Fatal(err)
		}
		for j, f := range press(alone, latitude) {
			if !bytes.Equal(f.Bytes, together[i][j].Bytes) {
				t.Errorf("%v°: %s differs from the one pressed alone", latitude, f.Name)
			}
		}
	}
	// south of the equator; north of the tropics; north within them; beyond the circle
	if one.settlements.plans.Len() != 4 {
		t.Errorf("%d plans were made, want 4", one.settlements.plans.Len())
	}
}

// A condition is asked with the day of its lesson, and what stands in a block that does
// not stand is not asked at all: to ask it may be a fault, as of marks of a group that made none.
func TestConditionsHaveTheDayOfTheirLesson(t *testing.T) {
	lesson := "```lesson\ntitle = \"%s\"\ndate = %s\n```\n\n````only sun-day.stays_up\nmidnight sun\n````\n\n````only place-facts.tropics\n```only dial-marks.kept group=\"Z\"\nnever asked\n```\n````\n"
	unit, words := read(t, fstest.MapFS{
		"unit.toml": {Data: []byte("[unit]\ntitle = \"T\"\n[school]\nname = \"N\"\nlatitude = 69.6\nlongitude = 18.95\ntime_zone = \"Europe/Oslo\"\n[term]\nfirst_day = 2027-04-12\nlast_day = 2027-06-30\n[records]\ndial_marks = \"marks.csv\"\n")},
		"marks.csv": {Data: []byte("group,date,time,angle_deg\nOwls,2027-04-13,9:00,-44\n")},
		"1-a.md":    {Data: fmt.Appendf(nil, lesson, "April", "2027-04-13")},
		"2-b.md":    {Data: fmt.Appendf(nil, lesson, "June", "2027-06-15")},
	}, "unit")
	class, _ := pressings(t, unit, words, unit.Settings)
	if strings.Contains(class["a.html"], "midnight sun") || !strings.Contains(class["b.html"], "midnight sun") {
		t.Error("the Sun of Tromsø stays up in June, and not in April")
	}
}

// A lesson that stands nowhere here is in no list: no page, no day, no sheet, no number.
func TestALessonStandsOrNot(t *testing.T) {
	files := fstest.MapFS{
		"unit.toml": {Data: []byte(oracleSettings)},
		"1-a.md":    {Data: []byte("```lesson\ntitle = \"Alpha\"\n```\n\n[Go](2-b.md)\n")},
		"2-b.md":    {Data: []byte("```lesson\ntitle = \"Zanzibar\"\nonly = \"place-facts.north\"\nkit = [{ item = \"quagga\" }]\n```\n\n```answer\nx\n```\n\n![p](p.svg)\n")},
		"3-c.md":    {Data: []byte("```lesson\ntitle = \"Gamma\"\nchange_with = \"4-d.md\"\n```\n\n{unit-plan.lessons}\n")},
		"4-d.md":    {Data: []byte("```lesson\ntitle = \"Zebedee\"\nunless = \"place-facts.south\"\n```\n")},
		"p.svg":     {Data: []byte(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 1"/>`)},
	}
	unit, words := read(t, files, "unit")
	class, staff := pressings(t, unit, words, unit.Settings) // 33.5° south
	for _, edition := range []map[string]string{class, staff} {
		for name, text := range edition {
			for _, gone := range []string{"Zanzibar", "quagga", "zanzibar", "Zebedee"} {
				if strings.Contains(text, gone) || strings.Contains(name, "b.html") || name == "p.svg" {
					t.Errorf("%s holds %s", name, gone)
				}
			}
		}
		if !strings.Contains(edition["a.html"], "<p>Go</p>") {
			t.Error("the link is not its words")
		}
	}
	class, _ = pressings(t, unit, words, unit.Settings.With(school.Latitude.Is(46)))
	if !strings.Contains(class["b.html"], "quagga") || class["p.svg"] == "" || !strings.Contains(class["a.html"], `<a href="b.html"`) {
		t.Error("the lesson does not stand in the north")
	}
}
