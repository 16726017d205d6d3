package plan

import (
	"slices"
	"strings"
	"testing"

	"noonbook/build/school"
)

const dialLesson = "[[kit]]\nitem = \"gnomon sheets\"\neach = \"group\"\nspare = 1\nprint = \"dial-gnomon\"\n" +
	"[[kit]]\nitem = \"question sheets\"\neach = \"pupil\"\nprint = \"pupil-sheet\"\n" +
	"[[kit]]\nitem = \"build cards\"\neach = \"group\"\nprint = \"card\"\n" +
	"[[kit]]\nitem = \"faces\"\ncount = 2\nprint = \"dial-face\"\n" +
	"[[kit]]\nitem = \"plates & <more>\"\neach = \"group\"\nshared_by = 2\nprint = \"dial-blank\"\n[[kit]]\nitem = \"strips\"\ncount = 3\nprint = \"dial-blank\"\n" +
	"[sheet]\ncard = [\"steps\"]\n```\n\n## Steps\n\n1. Cut.\n\n```compute dial-gnomon\n```\n\n```compute dial-face\n```\n\n```compute dial-blank\n```\n\n1. Why?\n\n```answer\nSo.\n```\n\n````staff\n```compute print-list\n```\n````\n\n" // its fence closes the block

// Copies by hand for 27 pupils in nine groups of three, and 30 in ten: wherever a paper
// is linked, on the paper itself and in the list, there is the same number.
func TestCopiesAreToldEverywhere(t *testing.T) {
	files := inClassOf27("")
	files["1-a.md"].Data = []byte("```lesson\ntitle = \"A\"\n" + dialLesson)
	unit, words := read(t, files, "unit")
	for _, c := range []struct {
		pupils                                int
		gnomons, sheets, cards, faces, plates string
	}{
		{27, "10 copies", "27 copies", "9 copies", "2 copies", "plates & &lt;more>: 5; strips: 3"},
		{30, "11 copies", "30 copies", "10 copies", "2 copies", "plates & &lt;more>: 5; strips: 3"},
	} {
		class, staff := pressings(t, unit, words, unit.Settings.With(school.ClassPupils.Is(c.pupils)))
		for _, want := range []struct{ page, file, name, copies string }{
			{"print-dial-gnomon.html", "print-dial-gnomon.html", "The gnomon to cut out", c.gnomons},
			{"print-dial-face.html", "print-dial-face.html", "The dial’s face", c.faces},
			{"pupil-a.html", "pupil-a.html", "Pupils’ sheet", c.sheets},
			{"print-dial-blank.html", "print-dial-blank.html", "A plate for your own marks", c.plates},
			{"card-a.html", "card-a.html", "Build card", c.cards},
		} {
			for edition, pages := range map[string]map[string]string{"class": class, "staff": staff} {
				if !strings.Contains(plainText(pages[want.page]), want.copies) {
					t.Errorf("%d pupils, %s: %s does not say %s", c.pupils, edition, want.page, want.copies)
				}
				if link := want.name + `</a> <small>` + want.copies + `</small>`; !strings.Contains(strings.ReplaceAll(pages["a.html"], `"`, ``), `href=`+want.file+`>`+link) {
					t.Errorf("%d pupils, %s: a.html does not link %s with %s", c.pupils, edition, want.name, want.copies)
				}
			}
			if strings.HasPrefix(want.page, "print-") && !strings.Contains(staff["day-a.html"], want.name+`</a> <small>`+want.copies+`</small>`) {
				t.Errorf("%d pupils: the day sheet does not say %s of %s", c.pupils, want.copies, want.name)
			}
			count, _, plural := strings.Cut(want.copies, " copies")
			if row := plainText(strings.ReplaceAll(staff["a.html"], "<td", "|<td")); plural && !strings.Contains(row, want.name+"|Friday 9 April|"+count+"|") {
				t.Errorf("%d pupils: the list does not say %s of %s", c.pupils, count, want.name)
			}
		}
		for item, count := range map[string]string{"plates & &lt;more>": "5", "strips": "3"} {
			if row := plainText(strings.ReplaceAll(staff["a.html"], "<td", "|<td")); !strings.Contains(row, "A plate for your own marks: "+item+"|Friday 9 April|"+count+"|") {
				t.Errorf("%d pupils: the list does not say %s of %s", c.pupils, count, item)
			}
		}
		for _, gnomon := range []string{"one sheet of A4, " + c.gnomons, "one sheet of A4, " + c.faces} {
			if !strings.Contains(plainText(class["a.html"]), gnomon) {
				t.Errorf("%d pupils: the link beside the picture does not say %q", c.pupils, gnomon)
			}
		}
	}
	if problems := pressedProblems(t, files, 27); len(problems) > 0 {
		t.Errorf("problems are %v", problems)
	}
}

// A thing printed from a paper that the lesson does not have, and sheets that nothing is
// printed from, are told with their places; a unit that never says what is printed is
// not asked to.
func TestWhatIsPrintedFromNothing(t *testing.T) {
	kit := "[[kit]]\nitem = \"a\"\n"
	blocks := "```\n\n```compute dial-gnomon\n```\n\n```compute dial-gnomon\nstock.style_mm = 120\n```\n\n```compute dial-face\n```\n"
	gnomon := `warning: dial-gnomon: nothing in the lesson's kit is printed from it; write print = "dial-gnomon" for the thing that is, so that its copies are counted`
	face := `warning: dial-face: nothing in the lesson's kit is printed from it; write print = "dial-face" for the thing that is, so that its copies are counted`
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"nothing said", kit + blocks, nil},
		{"one of two", kit + "print = \"dial-face\"\n" + blocks, []string{"unit/1-a.md:8:12: " + gnomon}},
		{"misspelt", kit + "print = \"dial-fase\"\n" + blocks, []string{
			`unit/1-a.md:5:9: warning: lesson: kit: print = "dial-fase", and the lesson has no such paper; did you mean "dial-face"?`,
			"unit/1-a.md:8:12: " + gnomon, "unit/1-a.md:15:12: " + face}},
		{"no questions, no card", kit + "print = \"pupil-sheet\"\n" + kit + "print = \"card\"\n" + kit + "print = \"dial-face\"\n" + kit + "print = \"dial-gnomon\"\n" + blocks, []string{
			`unit/1-a.md:5:9: warning: lesson: kit: print = "pupil-sheet", and the lesson has no such paper; want one of dial-gnomon, dial-face`,
			`unit/1-a.md:8:9: warning: lesson: kit: print = "card", and the lesson has no such paper; want one of dial-gnomon, dial-face`}},
		{"a card", kit + "print = \"dial-face\"\n[sheet]\ncard = [\"how\"]\n```\n\n## How\n\n```compute dial-face\n```\n", []string{
			`unit/1-a.md:7:8: warning: lesson: sheet.card: nothing in the lesson's kit is printed from it; write print = "card" for the thing that is, so that its copies are counted`}},
		{"nothing to print", kit + "print = \"dial-face\"\n```\n", []string{`unit/1-a.md:5:9: warning: lesson: kit: print = "dial-face", and the lesson has no such paper; it has none to print`}},
		{"where it stands alone", kit + "print = \"dial-face\"\nonly = \"place-facts.south\"\n```\n\n````only place-facts.south\n```compute dial-face\n```\n````\n", nil},
		{"where it does not stand", kit + "print = \"dial-face\"\n```\n\n````only place-facts.south\n```compute dial-face\n```\n````\n", []string{
			`unit/1-a.md:5:9: warning: lesson: kit: print = "dial-face", and the lesson has no such paper; it has none to print`}},
	} {
		files := inClassOf27("")
		files["1-a.md"].Data = []byte("```lesson\ntitle = \"A\"\n" + c.text)
		if got := linesOf(pressedProblems(t, files, 27)); !slices.Equal(got, c.want) {
			t.Errorf("%s: got\n%s\nwant\n%s", c.name, strings.Join(got, "\n"), strings.Join(c.want, "\n"))
		}
	}
}
