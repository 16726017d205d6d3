package plan

import (
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"noonbook/build/source"
	"noonbook/build/typeset"
)

const roomLesson = "```lesson\ntitle = \"Room\"\nsummary = \"s\"\n[sheet]\nfront = [\"minutes\"]\n```\n\n" +
	"# Prepare: staff\n\n## Secretly\n\nNumbat.\n\n" +
	"# Teach: class\n\n## The question\n\nWhich is wrong?\n\nWrite it down.\n\n| | My guess |\n|---|---|\n| When? | |\n| Where? | |\n\n" +
	"## Parts\n\n![The parts](far.svg)\n\nPoint to each.\n\n" +
	"## Cut\n\nFor the maker.\n\n```caution tip\nFold tape over it.\n```\n\n1. Draw a line.\n2. Cut it.\n\n   ~~~staff\n   Numbat in a step.\n   ~~~\n\n   - Gently\n\n     ~~~staff\n     Numbat deeper.\n     ~~~\n\n3. Bend it.\n\nIt worked if it stays.\n\n```compute dial-gnomon\n```\n\n" +
	"## Go out\n\n```caution sun\n```\n\n1. Hold it.\n2. Turn it. ![Turned](far.svg)\n3. It worked if it fits.\n\n```compute dial-hours\n```\n\nFinished early? Look round.\n\n" +
	"# Teach: staff\n\n## Minutes\n\n| Minute | What |\n|---|---|\n| 0 | The question |\n| 7 | [Numbat](#cut) |\n| 20 | Go outside. |\n| 30 | *Go out* |\n| 45 | In |\n\n> Numbat aloud.\n\n" +
	"# After: class\n\n## Questions\n\n1. How far?\n\n```answer lines=2\nQuokka far.\n\nBecause of {sun-day.rise}.\n```\n\n2. How near?\n\n```answer\nQuokka near.\n```\n\nAnd why?\n\n```answer lines=1\nQuokka so.\n```\n\n" +
	"## Go further\n\n- At home\n- At school\n\n# After: staff\n\n## Rain\n\nNumbat.\n"

func roomPages(t *testing.T) (class, staff map[string]string) {
	t.Helper()
	unit, words := read(t, fstest.MapFS{
		"unit.toml": smallUnit()["unit.toml"],
		"1-room.md": {Data: []byte(roomLesson)},
		"far.svg":   {Data: []byte(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 1"/>`)},
	}, "unit")
	return pressings(t, unit, words, unit.Settings)
}

// viewsOf returns the headings of a page for the room and what each of its views shows.
func viewsOf(t *testing.T, page string) []string {
	t.Helper()
	var list []string
	for _, e := range parsed(t, []byte(page)).find("main").children {
		switch {
		case e.at["class"] == "view":
			text := line(spaced(e))
			for range e.all("img") {
				text += " [picture]"
			}
			list = append(list, e.at["data-kind"]+": "+text)
		case strings.HasPrefix(e.name, "h"):
			list = append(list, line(e.words()))
		case e.at["class"] == "view-until":
			list = append(list, "("+line(e.words())+")")
		}
	}
	return list
}

// spaced are the words of an element with blanks between those of its parts.
func spaced(e *element) string {
	text := e.text
	for _, c := range e.children {
		text += " " + spaced(c)
	}
	return text
}

// A class sees one thing at a time: words, a table, a picture with its line, each step.
// Whether it worked is told with the last step, and a caution before the first, also that
// of a computed block below the steps. What is for staff is not there.
func TestLessonInTheRoom(t *testing.T) {
	class, staff := roomPages(t)
	for edition, page := range map[string]string{"class": class["room-room.html"], "staff": staff["room-room.html"]} {
		until := func(s string) []string {
			if edition == "staff" { // the table of minutes is for staff
				return []string{"(until " + s + ")"}
			}
			return nil
		}
		answer := func(s string) string {
			if edition == "staff" {
				return " Answer Quokka " + s
			}
			return ""
		}
		want := slices.Concat(
			[]string{"The question"}, until("9:17"),
			[]string{"words: Which is wrong? Write it down.", "table: My guess When? Where?",
				"Parts", "picture: Point to each. [picture]",
				"Cut"}, until("9:30"),
			[]string{"care: Take care Fold tape over it.", "care: Take care Pass scissors",
				"step: 1 For the maker. Draw a line.", "step: 2 Cut it. Gently", "step: 3 Bend it. It worked if it stays.",
				"Go out"}, until("9:55"),
			[]string{"care: Take care Never look at the Sun", "care: Take care Hour keepers",
				"step: 1 Hold it.", "step: 2 Turn it. It worked if it fits. [picture]", "table: Hours to mark", "words: The last column",
				"words: Finished early? Look round.",
				"Questions", "question: 1 How far?" + answer("far."), "question: 2 How near?" + answer("near."), "question: And why?" + answer("so."),
				"Go further", "words: At home At school"})
		got := viewsOf(t, page)[1:] // the first is the title
		for i := range max(len(got), len(want)) {
			if i >= len(got) || i >= len(want) || !strings.HasPrefix(got[i], want[i]) || strings.HasPrefix(want[i], "step") && got[i] != want[i] {
				t.Errorf("%s: the class sees\n%s\nwant\n%s", edition, strings.Join(got, "\n"), strings.Join(want, "\n"))
				break
			}
		}
		if strings.Contains(page, "Numbat") {
			t.Errorf("%s: what is for staff is on the wall", edition)
		}
	}
	if !strings.Contains(class["room.html"], `href="room-room.html"`) || !strings.Contains(staff["room.html"], `href="room-room.html"`) {
		t.Error("the lesson does not lead to it")
	}
}

// The class edition has no answer, and nothing that offers one; the staff's are shown on
// demand, where there are scripts.
func TestNoAnswerInTheRoom(t *testing.T) {
	class, staff := roomPages(t)
	for name, page := range class {
		if strings.Contains(page, "Quokka") || strings.HasPrefix(name, "room-") && regexp.MustCompile(`class="answer"|data-part="answer"|ruled-lines`).MatchString(page) {
			t.Errorf("%s of the class edition has an answer or offers one", name)
		}
	}
	page := staff["room-room.html"]
	if n := strings.Count(page, `class="answer"`); n != 3 || !strings.Contains(page, `data-part="answer"`) {
		t.Errorf("the staff edition has %d answers, want 3 and what shows them", n)
	}
}

// Every lesson of every unit has a page for the room, which its page leads to; on it is
// each caution that the lesson's own page tells the class, and the page runs no script but
// those beside it.
func TestEveryLessonIsInTheRoom(t *testing.T) {
	caution := regexp.MustCompile(`(?s)<section class="caution">.*?</section>`)
	eachUnit(t, func(t *testing.T, unit *source.Unit, words *typeset.Words) {
		class, staff := pressings(t, unit, words, unit.Settings)
		for _, l := range here(t, unit, unit.Settings).Lessons {
			page := class[RoomFile(l)]
			if l.Number == 0 {
				if page != "" {
					t.Errorf("%s is no lesson, and in the room", l.File)
				}
				continue
			}
			if !strings.Contains(class[l.Page], `href="`+RoomFile(l)+`"`) || staff[RoomFile(l)] == "" {
				t.Errorf("%s does not lead to the room", l.Page)
			}
			told := plainText(page)
			for _, m := range caution.FindAllString(class[l.Page], -1) {
				for p := range strings.SplitSeq(m, "</p>") {
					if text := line(plainText(p)); text != "" && !strings.Contains(line(told), text) {
						t.Errorf("%s: on the wall there is no %q", l.File, text)
					}
				}
			}
			for _, m := range regexp.MustCompile(`<script[^>]*>`).FindAllString(page, -1) {
				if m != `<script src="noonbook.js" defer>` && m != `<script src="room.js" defer>` {
					t.Errorf("%s has %s", RoomFile(l), m)
				}
			}
		}
	})
}
