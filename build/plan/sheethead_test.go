package plan

import (
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"noonbook/build/placeholder"
	"noonbook/build/placeholder/entry"
	"noonbook/build/school"
)

// Every piece of paper of every printable says school, lesson, name and how many copies, and
// has the line of each caution that its placeholder brings and that has one, in both
// languages and on both papers.
func TestEveryPrintedSheetSaysWhatItIs(t *testing.T) {
	text := "```lesson\ntitle = \"Care of paper\"\n```\n\n"
	printables := map[string]entry.Entry{}
	for _, e := range placeholder.Catalogue() {
		if e.Printable {
			text += "```compute " + e.Name + "\n```\n\n"
			printables["print-"+e.Name+".html"] = e
		}
	}
	sheet := regexp.MustCompile(`<div class="?paper-sheet`)
	label := regexp.MustCompile(`<text class="?([a-z-]+)[^>]*>([^<]*)`)
	for _, language := range []string{"en", "fr"} {
		for _, paper := range []string{"A4", "Letter"} {
			settings := strings.Replace(string(smallUnit()["unit.toml"].Data), "[class]", "language = \""+language+"\"\npaper = \""+paper+"\"\n[class]", 1)
			unit, words := read(t, fstest.MapFS{"unit.toml": {Data: []byte(settings)}, "1-care.md": {Data: []byte(text)}}, "unit")
			class, _ := pressings(t, unit, words, unit.Settings)
			for name, e := range printables {
				sheets := sheet.Split(class[name], -1)[1:]
				if len(sheets) == 0 {
					t.Errorf("%s, %s: no sheet of %s", language, paper, name)
				}
				for i, s := range sheets {
					said := map[string]string{}
					for _, m := range label.FindAllStringSubmatch(s, -1) {
						said[m[1]] += " " + m[2]
					}
					about := said["sheet-school"] + said["sheet-lesson"]
					for what, lacks := range map[string]bool{
						"the school": !strings.Contains(about, school.Name.Of(unit.Settings)),
						"the lesson": !strings.Contains(about, "1 Care of paper"),
						"its name":   !strings.Contains(plainText(said["sheet-name"]), plainText(words.Say(e.Name+".name"))),
						"copies":     strings.TrimSpace(said["sheet-copies"]) == "",
						"the bar":    !strings.Contains(plainText(s), plainText(words.Say("sheet.check"))),
					} {
						if lacks {
							t.Errorf("%s, %s, %s: sheet %d does not say %s", language, paper, name, i+1, what)
						}
					}
					for _, caution := range append(append([]string{}, e.Cautions...), e.OnPaper...) {
						key := entry.PaperLine(caution)
						if !words.Has(key) {
							continue
						}
						for _, word := range strings.Fields(words.Say(key)) { // the line may be broken anywhere
							if !strings.Contains(said["care-line"], strings.Fields(plainText(word))[0]) {
								t.Errorf("%s, %s, %s: sheet %d lacks %q of the caution %s", language, paper, name, i+1, word, caution)
							}
						}
					}
				}
			}
		}
	}
}

// Copies follow from what a sheet holds: two single gnomons, so that ten for nine groups and
// a spare take five sheets, in the head, beside the link and in the list alike; a pair is one
// sheet each.
func TestCopiesFollowFromWhatASheetHolds(t *testing.T) {
	for pieces, want := range map[string]struct{ copies, head, list string }{
		"single": {"5 copies", "print 5 copies, 2 on each", "|5|"},
		"pair":   {"10 copies", "print 10 copies", "|10|"},
	} {
		files := inClassOf27("")
		files["1-a.md"].Data = []byte("```lesson\ntitle = \"A\"\n[[kit]]\nitem = \"gnomons\"\neach = \"group\"\nspare = 1\nprint = \"dial-gnomon\"\n```\n\n" +
			"```compute dial-gnomon\npieces = \"" + pieces + "\"\nstock.style_mm = 150\nschool.latitude = 46.09\n```\n\n```compute print-list\n```\n")
		unit, words := read(t, files, "unit")
		class, _ := pressings(t, unit, words, unit.Settings)
		sheet, page := plainText(class["print-dial-gnomon.html"]), plainText(strings.ReplaceAll(class["a.html"], "<td", "|<td"))
		if !strings.Contains(sheet, want.head) || !strings.Contains(page, "one sheet of A4, "+want.copies) || !strings.Contains(page, want.list) {
			t.Errorf("%s: want %v, the sheet says\n%s\nthe lesson\n%s", pieces, want, sheet, page)
		}
	}
}

// Two things of the kit from one placeholder: each sheet of two is told its own copies, in
// nine groups; the only sheet is told all; where sheets and things differ in number it is
// told both numbers.
func TestEachSheetTellsItsOwnCopies(t *testing.T) {
	kit := func(print, given string, shares ...string) string {
		list := ""
		for _, share := range shares {
			list += "[[kit]]\nitem = \"part " + share[:1] + "\"\neach = \"group\"\ncount = " + share + "\nprint = \"" + print + "\"\n"
		}
		return "```lesson\ntitle = \"A\"\n" + list + "```\n\n```compute " + print + "\n" + given + "```\n"
	}
	for _, c := range []struct {
		what, lesson, print string
		want                []string
	}{
		{"two things, two sheets", kit("rocket-wrap", "fins = 6\n", "2", "1"), "rocket-wrap", []string{"print 18 copies", "print 9 copies"}},
		{"two things, one sheet", kit("dial-blank", "", "2", "1"), "dial-blank", []string{"print 27 copies"}},
		{"three things, two sheets", kit("rocket-wrap", "fins = 6\n", "2", "1", "3"), "rocket-wrap", []string{"print 18, 9 and 27 copies, as the lesson lists them", "print 18, 9 and 27 copies, as the lesson lists them"}},
	} {
		files := inClassOf27("")
		files["1-a.md"].Data = []byte(c.lesson)
		unit, words := read(t, files, "unit")
		class, _ := pressings(t, unit, words, unit.Settings)
		var got []string
		for _, m := range regexp.MustCompile(`sheet-copies[^>]*>([^<]*)`).FindAllStringSubmatch(class["print-"+c.print+".html"], -1) {
			got = append(got, m[1])
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: the heads say %q, want %q", c.what, got, c.want)
		}
	}
}
