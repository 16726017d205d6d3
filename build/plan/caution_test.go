package plan

import (
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"noonbook/build/placeholder"
	"noonbook/build/placeholder/entry"
)

// carePages presses a unit of one lesson with the text given.
func carePages(t *testing.T, text string) (class, staff map[string]string) {
	t.Helper()
	unit, words := read(t, fstest.MapFS{
		"unit.toml": smallUnit()["unit.toml"],
		"1-care.md": {Data: []byte("```lesson\ntitle = \"Care\"\n```\n\n" + text)},
	}, "unit")
	return pressings(t, unit, words, unit.Settings)
}

const (
	sunWords      = "Never look at the Sun, not even for a moment and not through anything"
	scissorsWords = "Pass scissors with the handles first"
	keepersWords  = "Hour keepers go in pairs"
)

// A page prints each caution once, before the first step that needs it; a block of the
// lesson's own takes the place of the one that it names, from there on; one without words
// prints what its names say.
func TestCautionsOnceAPage(t *testing.T) {
	hours, north, face := "```compute dial-hours\n```\n\n", "```compute dial-north\n```\n\n", "```compute dial-face\n```\n\n"
	for name, c := range map[string]struct {
		text  string
		order []string // words of the page, one after the other
		once  []string
		never []string
	}{
		"two blocks with one caution":     {hours + north, []string{sunWords, keepersWords, "<figcaption"}, []string{sunWords, keepersWords}, nil},
		"named before":                    {"```caution sun scissors\n```\n\nThe step.\n\n" + north + face, []string{sunWords, scissorsWords, "The step."}, []string{sunWords, scissorsWords}, nil},
		"named behind":                    {north + "```caution sun scissors\n```\n\nThe step.\n", []string{sunWords, scissorsWords, "The step."}, []string{sunWords, scissorsWords}, nil},
		"named twice":                     {"```caution sun\n```\n\n> ```caution sun\n> ```\n", nil, []string{sunWords}, nil},
		"replaced":                        {"```caution sun\nMind your eyes.\n```\n\n" + hours, []string{"Mind your eyes.", keepersWords}, []string{"Mind your eyes.", keepersWords}, []string{sunWords}},
		"replaced behind what needs it":   {hours + "```caution sun\nMind your eyes.\n```\n\n" + north, []string{sunWords, "Mind your eyes."}, []string{sunWords, "Mind your eyes."}, nil},
		"words of its own without a name": {"```caution\nMind your eyes.\n```\n\n" + north, []string{"Mind your eyes.", sunWords}, []string{sunWords}, nil},
	} {
		class, staff := carePages(t, c.text)
		for edition, page := range map[string]string{"class": class["care.html"], "staff": staff["care.html"]} {
			at := 0
			for _, want := range c.order {
				if strings.HasPrefix(want, "<") {
					continue
				}
				i := strings.Index(page[at:], want)
				if i < 0 {
					t.Errorf("%s, %s: %q is not in its place", name, edition, want)
					break
				}
				at += i
			}
			for _, want := range c.once {
				if n := strings.Count(page, want); n != 1 {
					t.Errorf("%s, %s: %q is there %d times", name, edition, want, n)
				}
			}
			for _, unwanted := range c.never {
				if strings.Contains(page, unwanted) {
					t.Errorf("%s, %s: %q is there", name, edition, unwanted)
				}
			}
		}
	}
}

// A caution that only staff see replaces none that the class needs.
func TestCautionsForStaffStayWithStaff(t *testing.T) {
	class, staff := carePages(t, "```staff\n~~~caution sun\nSay the rule twice.\n~~~\n```\n\n```compute dial-north\n```\n")
	if strings.Contains(class["care.html"], "Say the rule twice.") || !strings.Contains(class["care.html"], sunWords) {
		t.Error("the class is told what staff are, or not of the Sun")
	}
	if strings.Contains(class["safety.html"], "Say the rule twice.") || !strings.Contains(staff["safety.html"], "Say the rule twice.") || !strings.Contains(class["safety.html"], sunWords) {
		t.Error("the page of safety tells the class what staff are, or not of the Sun")
	}
	class2, staff2 := carePages(t, "```staff\n~~~compute dial-hours\n~~~\n\n~~~caution scissors\n~~~\n```\n")
	for _, words := range []string{keepersWords, scissorsWords + " and sit down to cut. An adult cuts what"} {
		if strings.Contains(line(parsed(t, []byte(class2["safety.html"])).words()), words) {
			t.Errorf("the page of safety tells the class %q, which is in a staff note", words)
		}
	}
	if !strings.Contains(staff2["safety.html"], keepersWords) {
		t.Error("the page of safety does not tell staff what is in a staff note")
	}
	if page := staff["care.html"]; strings.Count(page, "Say the rule twice.") != 1 || strings.Contains(page, sunWords) {
		t.Error("staff are not told in the lesson's own words")
	}
}

// A sheet that leaves the room carries a line of each caution that has one, on every
// piece of paper, and none twice.
func TestSheetsCarryALine(t *testing.T) {
	class, _ := carePages(t, "```compute dial-face\n```\n\n```compute tube-plan\n```\n\nWhy?\n\n```answer lines=2\nSo.\n```\n")
	carried := regexp.MustCompile(`class="care-line"[^>]*>([^<]*)<`)
	words := func(name string) string {
		var lines []string
		for _, m := range carried.FindAllStringSubmatch(class[name], -1) {
			lines = append(lines, m[1])
		}
		return strings.Join(lines, " ")
	}
	for name, lines := range map[string][]string{
		"print-dial-face.html": {"Sit down to cut.", "Never look at the Sun."},
		"print-tube-plan.html": {"Sit down to cut.", "Never look at the Sun through a lens.", "Never point the telescope at the Sun or near it."},
		"pupil-care.html":      {"Sit down to cut.", "Never look at the Sun through a lens.", "Outside: after sunset only, with an adult."},
	} {
		sheets := max(1, strings.Count(class[name], `<div class="paper-sheet`))
		for _, want := range lines {
			if n := strings.Count(words(name), want); n != sheets {
				t.Errorf("%s: %q is there %d times, on %d sheets", name, want, n, sheets)
			}
		}
	}
}

// The lines fit beside the check bar of every printable, in either language and on either
// paper: three of them above the note of a sheet's place among others, five on a sheet by
// itself, where the fifth ends 7 mm above the edge of the paper.
func TestLinesFitOnPaper(t *testing.T) {
	text := "```lesson\ntitle = \"Care\"\n```\n\n"
	for _, e := range placeholder.Catalogue() {
		if e.Printable {
			text += "```compute " + e.Name + "\n```\n\n"
		}
	}
	begins := regexp.MustCompile(`<svg class="true-size"|class="care-line"`)
	for _, language := range []string{"en", "fr"} {
		for _, paper := range []string{"A4", "Letter"} {
			settings := strings.Replace(string(smallUnit()["unit.toml"].Data), "[class]", "language = \""+language+"\"\npaper = \""+paper+"\"\n[class]", 1)
			unit, words := read(t, fstest.MapFS{"unit.toml": {Data: []byte(settings)}, "1-care.md": {Data: []byte(text)}}, "unit")
			class, _ := pressings(t, unit, words, unit.Settings)
			sheets := 0
			for name, page := range class {
				if !strings.HasPrefix(name, "print-") {
					continue
				}
				lines, most := 0, 5
				if strings.Contains(page, `class="matching-mark"`) {
					most = 3
				}
				for _, m := range begins.FindAllString(page, -1) {
					if lines++; strings.HasPrefix(m, "<svg") {
						lines = 0
						sheets++
					}
					if lines > most {
						t.Errorf("%s on %s, %s: more than %d lines of care", name, paper, language, most)
						break
					}
				}
			}
			if sheets < 20 {
				t.Errorf("%d sheets on %s, %s", sheets, paper, language)
			}
		}
	}
}

// Authors find every name with its words, and with each placeholder those that it brings.
func TestReferenceListsCautions(t *testing.T) {
	pages, _ := smallPages(t, Staff, nil)
	article := pages["reference.html"].find("article")
	words := map[string]string{}
	for _, dl := range article.all("dl") {
		means := dl.all("dd")
		for i, dt := range dl.all("dt") {
			if name := line(dt.words()); words[name] == "" {
				words[name] = line(means[i].words())
			}
		}
	}
	for name, want := range map[string]string{entry.CareSun: sunWords, entry.CareScissors: scissorsWords, entry.CareHourKeepers: keepersWords, entry.CareClearZone: "is within … of the launcher"} {
		if !strings.Contains(words[name], want) {
			t.Errorf("%s is explained as %q", name, words[name])
		}
	}
	for _, name := range entry.Cautions() {
		if len(words[name]) < 40 {
			t.Errorf("%s is explained as %q", name, words[name])
		}
	}
	if text := line(article.words()); !strings.Contains(text, "It brings these cautions: lenses, telescope, saw, scissors.") {
		t.Error("tube-plan does not name its cautions")
	}
}
