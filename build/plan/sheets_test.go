package plan

import (
	"os"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"noonbook/build/form"
	"noonbook/build/placeholder"
	"noonbook/build/school"
	"noonbook/build/source"
	"noonbook/build/typeset"
)

// pressings presses both editions and returns the pages by name.
func pressings(t *testing.T, unit *source.Unit, words *typeset.Words, settings form.Values) (class, staff map[string]string) {
	t.Helper()
	var editions [2]map[string]string
	for _, edition := range []Edition{Class, Staff} {
		p, err := Make(unit, words, edition, placeholder.Catalogue())
		if err != nil {
			t.Fatal(err)
		}
		pages, problems := p.Press(settings)
		if problems.Faults() > 0 {
			t.Fatal(problems)
		}
		editions[edition] = map[string]string{}
		for _, page := range pages {
			editions[edition][page.Name] = string(page.Bytes)
		}
	}
	return editions[Class], editions[Staff]
}

// sheetParts are what noonbook puts on every day sheet, with something in them. That a
// substitute needs these is common practice, no source.
var sheetParts = []string{"care", "today"}

// Could someone teach from it? Every lesson of every unit has a day sheet in the
// staff edition alone, in which each side holds text or ruled lines; it is
// reached from the lesson, the cover and the page that is opened first.
func TestEveryLessonHasADaySheet(t *testing.T) {
	eachUnit(t, func(t *testing.T, unit *source.Unit, words *typeset.Words) {
		class, staff := pressings(t, unit, words, unit.Settings)
		for _, l := range unit.Lessons {
			name := DayFile(l)
			if class[name] != "" || strings.Contains(class["index.html"], name) {
				t.Errorf("the class edition has or names %s", name)
			}
			if l.Number == 0 {
				continue
			}
			for _, from := range []string{l.Page, "index.html"} {
				if !strings.Contains(staff[from], `href="`+name+`"`) {
					t.Errorf("%s does not lead to %s", from, name)
				}
			}
			for _, start := range unit.Lessons {
				if start.Part() == source.PartStart && !strings.Contains(staff[start.Page], `href="`+name+`"`) {
					t.Errorf("%s does not lead to %s", start.Page, name)
				}
			}
			for _, part := range sheetParts {
				text := sheetPart(t, staff[name], part)
				if len(plainText(text)) < 40 && !strings.Contains(text, "<div></div>") {
					t.Errorf("%s: the part %s has neither text nor lines: %s", name, part, text)
				}
			}
			for _, side := range []string{"front", "back"} {
				_, text, _ := strings.Cut(staff[name], `<div class="side" id="nb-`+side+`">`)
				text, _, _ = strings.Cut(text, `<div class="side"`)
				if len(plainText(text)) < 40 && !strings.Contains(text, "<div></div>") {
					t.Errorf("%s: the %s has neither text nor lines: %s", name, side, text)
				}
			}
			if boxes := strings.Count(staff[name][strings.Index(staff[name], `class="boxes"`):], "<section"); boxes != 6 {
				t.Errorf("%s has %d boxes", name, boxes)
			}
		}
	})
}

func sheetPart(t *testing.T, page, part string) string {
	t.Helper()
	_, after, ok := strings.Cut(page, `<section class="part" id="nb-`+part+`">`)
	if !ok {
		t.Fatalf("no part %s", part)
	}
	end := len(after)
	for _, next := range []string{`<section class="part"`, `<div class="boxes"`, `<div class="side"`} {
		if i := strings.Index(after, next); i >= 0 {
			end = min(end, i)
		}
	}
	return after[:end]
}

var anyTag = regexp.MustCompile(`<[^>]*>`)

func plainText(markup string) string { return anyTag.ReplaceAllString(markup, "") }

const sheetLesson = "```lesson\ntitle = \"A\"\nminutes = 40\n[sheet]\nfront = [\"early\", \"minutes\"]\nback = [\"how\", \"why\", \"back\"]\n```\n\n" +
	"## Early\n\n```caution\nEarly wombat; see [the steps](#how).\n```\n\n## Minutes\n\n| Minute | What |\n|---|---|\n| 0 | a |\n| 7 | b |\n| 35 | c |\n\n" +
	"## How\n\n### Then\n\nsteps of it\n\n## Why\n\nreasons\n\n## Elsewhere\n\n```caution\nFurther wombat\n```\n\n" +
	"## Questions\n\n1. How many?\n\n```answer lines=3\nAs many as {sun-day.rise}\n```\n\n- item\n\n7. Within\n\n   ```answer\n   So\n   ```\n\n8. Next\n\n   ```answer\n   Thus\n   ```\n\n" +
	"| What | Read |\n|---|---|\n| one | |\n| two | |\n\n```staff\n| Secret | |\n|---|---|\n| | |\n```\n\n## Back\n\n| How far | |\n|---|---|\n| one | |\n| two | |\n"

func sheetUnit(t *testing.T) (*source.Unit, *typeset.Words) {
	t.Helper()
	return read(t, fstest.MapFS{
		"unit.toml": {Data: readFile(t, "../../testdata/units/south/unit.toml")},
		"1-a.md":    {Data: []byte(sheetLesson)},
	}, "sheets")
}

// The minutes of a lesson become times of the clock that its school keeps.
func TestMinutesGetTheirClock(t *testing.T) {
	unit, words := sheetUnit(t)
	for _, c := range []struct{ times, want string }{
		{"9:00-9:50", "9:00 9:07 9:35"},
		{"13:25-14:15", "13:25 13:32 14:00"},
	} {
		spans, complaint := school.Settings().ParsePair("term.lesson_times", c.times)
		if complaint != "" {
			t.Fatal(complaint)
		}
		_, staff := pressings(t, unit, words, unit.Settings.With(form.Values{"term.lesson_times": spans}))
		var got []string
		for _, m := range regexp.MustCompile(`<td class="clock">(.*?)</td>`).FindAllStringSubmatch(staff["day-a.html"], -1) {
			got = append(got, m[1])
		}
		if strings.Join(got, " ") != c.want {
			t.Errorf("lessons at %s: %v, want %s", c.times, got, c.want)
		}
		if strings.Contains(staff["a.html"], `class="clock"`) {
			t.Error("the lesson's own page has clock times")
		}
	}
}

// A caution is shown once: before the step that it belongs to where that is on
// the sheet, else with the others. Links of the lesson lead to its page.
func TestDaySheetGathersCautions(t *testing.T) {
	unit, words := sheetUnit(t)
	_, staff := pressings(t, unit, words, unit.Settings)
	page := staff["day-a.html"]
	for word, before := range map[string]string{"Early wombat": "<h2>Minutes</h2>", "Further wombat": "<h2>Minutes</h2>", "steps of it": "<h2>Why</h2>"} {
		above, _, _ := strings.Cut(page, before)
		if !strings.Contains(above, word) || strings.Count(page, word) != 1 {
			t.Errorf("%q is not once above %s", word, before)
		}
	}
	if care := sheetPart(t, page, "care"); !strings.Contains(care, "Further wombat") || strings.Contains(care, "Early wombat") {
		t.Errorf("the gathered cautions are %s", care)
	}
	if !strings.Contains(page, `<a href="a.html#how">`) {
		t.Error("a link within the lesson does not lead to its page")
	}
	if !strings.Contains(page, "<h2>How</h2>") || !strings.Contains(page, "<h3>Then</h3>") {
		t.Error("headings of sections are not those of the sheet's parts")
	}
	for _, word := range []string{"How many?", "As many as", "Within", "Thus"} {
		if !strings.Contains(sheetPart(t, page, "answers"), word) {
			t.Errorf("%q is not among the answers", word)
		}
	}
}

// A section of the sheet that holds answers is there with the first paragraph of each and
// its number, and those answers are not gathered once more.
func TestDaySheetShowsAnswersOnce(t *testing.T) {
	lesson := strings.Replace(sheetLesson, `"why", "back"`, `"why", "questions"`, 1)
	lesson = strings.Replace(lesson, "As many as {sun-day.rise}\n", "As many as {sun-day.rise}\n\nQuokkas know why.\n", 1)
	if !strings.Contains(lesson, "Quokkas") || !strings.Contains(lesson, `"questions"`) {
		t.Fatal("the lesson is another")
	}
	unit, words := read(t, fstest.MapFS{
		"unit.toml": {Data: readFile(t, "../../testdata/units/south/unit.toml")},
		"1-a.md":    {Data: []byte(lesson)},
	}, "sheets")
	_, staff := pressings(t, unit, words, unit.Settings)
	_, page, _ := strings.Cut(staff["day-a.html"], "<main")
	for word, want := range map[string]int{"As many as": 1, "Quokkas": 0, "So": 1, "Thus": 1, "How many?": 0, ">1.<": 1, ">7.<": 1, ">8.<": 1} {
		if got := strings.Count(page, word); got != want {
			t.Errorf("%q is there %d times, want %d: %s", word, got, want, page)
		}
	}
}

// A pupils' sheet asks what the lesson asks, with the lines that it rules and
// two where it rules none; the table of the note back and of a staff block are
// not on it. The staff's copy has the answers.
func TestPupilSheet(t *testing.T) {
	unit, words := sheetUnit(t)
	class, staff := pressings(t, unit, words, unit.Settings)
	page := class["pupil-a.html"]
	_, page, _ = strings.Cut(page, "<main")
	if n := strings.Count(page, `class="ruled-lines"`); n != 3 {
		t.Errorf("%d questions have lines, want 3", n)
	}
	if n := strings.Count(page, "<div></div>"); n != 3+2+2 {
		t.Errorf("%d lines, want 7", n)
	}
	for word, want := range map[string]int{"How many?": 1, "Within": 1, ">7.<": 1, ">8.<": 1, "<table": 1, "Secret": 0, "How far": 0, "As many as": 0, "<h2>Questions</h2>": 1} {
		if got := strings.Count(page, word); got != want {
			t.Errorf("%q is there %d times, want %d", word, got, want)
		}
	}
	for _, word := range []string{"As many as", "Thus"} {
		if !strings.Contains(staff["pupil-a.html"], word) {
			t.Errorf("the staff's copy lacks %q", word)
		}
	}
	if !strings.Contains(class["a.html"], `href="pupil-a.html"`) {
		t.Error("the lesson does not lead to its sheet")
	}
}

// What a picture or a list asks can be read: the words before them come along.
func TestPupilSheetLeadsIn(t *testing.T) {
	lesson := "```lesson\ntitle = \"A\"\n```\n\nAlone.\n\nDraw the ball.\n\n![A circle](circle.svg)\n\n| Stop | |\n|---|---|\n| 1 | |\n\n```answer\nHalf\n```\n\n" +
		"Prose.\n\n- Unled\n\n```answer\nSo\n```\n\nWhich of them:\n\n- Led\n\n```answer\nThis\n```\n"
	unit, words := read(t, fstest.MapFS{
		"unit.toml":  {Data: readFile(t, "../../testdata/units/south/unit.toml")},
		"1-a.md":     {Data: []byte(lesson)},
		"circle.svg": {Data: readFile(t, "../../content/phase-sheet.svg")},
	}, "leads")
	class, _ := pressings(t, unit, words, unit.Settings)
	page := class["pupil-a.html"]
	for word, want := range map[string]int{"Alone.": 0, "Draw the ball.": 1, "<table": 1, "Prose.": 0, "Unled": 1, "Which of them:": 1, ">Led<": 1} {
		if got := strings.Count(page, word); got != want {
			t.Errorf("%q is there %d times, want %d", word, got, want)
		}
	}
}

// The pages that lessons of the demo give their pupils hold every question.
func TestPupilSheetsOfTheDemo(t *testing.T) {
	unit, words := read(t, os.DirFS("../../content"), "content")
	class, _ := pressings(t, unit, words, unit.Settings)
	for _, l := range here(t, unit, unit.Settings).Lessons {
		asks := questions(l)
		if l.Number == 0 || len(asks) == 0 {
			continue
		}
		if got := strings.Count(class[PupilFile(l)], `<section class="question">`); got != len(asks) {
			t.Errorf("%s has %d questions of %d", PupilFile(l), got, len(asks))
		}
	}
}

// What a pupil does who was away is on the day sheet, for the staff alone, and a lesson
// that does not say it has no such part.
func TestDaySheetForTheAbsent(t *testing.T) {
	const says = "Measure <three> shadows at home."
	unit, words := read(t, fstest.MapFS{
		"unit.toml": {Data: readFile(t, "../../testdata/units/south/unit.toml")},
		"1-a.md":    {Data: []byte(strings.Replace(sheetLesson, "minutes = 40\n", "minutes = 40\nabsent = \""+says+"\"\n", 1))},
		"2-b.md":    {Data: []byte("```lesson\ntitle = \"B\"\n```\n")},
	}, "sheets")
	class, staff := pressings(t, unit, words, unit.Settings)
	if got := sheetPart(t, staff["day-a.html"], "absent"); !strings.Contains(got, "<h2>For pupils who were away</h2>") || !strings.Contains(got, "Measure &lt;three> shadows at home.") {
		t.Errorf("%s", got)
	}
	if strings.Contains(staff["day-b.html"], "nb-absent") {
		t.Error("a part for the absent that says nothing")
	}
	for name, page := range class {
		if strings.Contains(page, "shadows at home") {
			t.Errorf("%s of the class edition says it", name)
		}
	}
}
