package plan

import (
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
)

// Pages that gather: every caution under its lesson, but for those of answers in
// the class edition; words by the alphabet, each with its lesson; the sources of
// what is used and of nothing else; the sheets for staff.
func TestGatheringPages(t *testing.T) {
	for _, edition := range []Edition{Class, Staff} {
		pages, _ := smallPages(t, edition, nil)
		safety := line(pages["safety.html"].find("article").words())
		for _, want := range []string{"Start with care.", "Alpha caution, see here."} {
			if strings.Count(safety, want) != 1 {
				t.Errorf("edition %d: the safety page has %q %d times", edition, want, strings.Count(safety, want))
			}
		}
		if strings.Contains(safety, "A caution of the answer.") != (edition == Staff) {
			t.Errorf("edition %d: the caution of an answer is there, or not: %s", edition, safety)
		}
		own := safety[strings.Index(safety, "Today"):]
		if !strings.Contains(safety, "The school’s fire rules come first.Alpha, Beta") || strings.Count(safety, "is a trip hazard") != 1 {
			t.Errorf("edition %d: the caution of the strip does not name its lessons: %s", edition, safety)
		}
		if !strings.Contains(own, "Alpha") || strings.Contains(own, "Beta") || strings.Contains(safety, "Gamma") {
			t.Errorf("edition %d: cautions stand under %s", edition, safety)
		}
		led := false
		for _, a := range pages["safety.html"].find("article").all("a") {
			led = led || a.at["href"] == "alpha.html#asked"
		}
		if !led {
			t.Errorf("edition %d: a link of a caution does not lead back to its lesson", edition)
		}

		glossary := pages["glossary.html"].find("article")
		var words []string
		names := map[string]bool{}
		for _, div := range glossary.all("div") {
			if dt := div.find("dt"); dt != nil {
				words = append(words, line(dt.words())+": "+line(div.find("dd").words())+" "+div.find("a").at["href"])
				names[dt.at["id"]] = true
			}
		}
		want := []string{"gnomon: A triangle. Beta beta.html", "Plate: A face. Alpha alpha.html", "style: An edge. Alpha alpha.html", "style: Again. Beta beta.html"}
		if !slices.Equal(words, want) || len(names) != len(want) {
			t.Errorf("edition %d: the glossary is %q by %v", edition, words, names)
		}

		var used []string
		for _, h := range pages["sources.html"].find("article").all("h2") {
			used = append(used, line(h.words()))
		}
		cited := []string{"The class", "The dial’s face", "Planets on the strip"}
		if edition == Staff { // the day sheets use four more
			cited = []string{"The class", "The dial’s face", "The sky during the lesson", "A month of Moons", "Where we are", "Planets on the strip", "The Sun’s day"}
		}
		if !slices.Equal(used, cited) {
			t.Errorf("edition %d: sources are of %q, want %q", edition, used, cited)
		}

		start := pages["today.html"].find("article")
		var sheets []string
		for _, li := range start.all("li") {
			var leads []string
			for _, a := range li.all("a") {
				leads = append(leads, a.at["href"])
			}
			sheets = append(sheets, line(li.words())+" "+strings.Join(leads, " "))
		}
		if edition == Class && len(sheets) > 0 {
			t.Errorf("the class is led to %q", sheets)
		}
		if edition == Staff && (len(sheets) != 3 || !strings.Contains(sheets[0], "Alpha Monday 12 April, 9:10 to 10:00") || !strings.HasSuffix(sheets[0], " day-alpha.html pupil-alpha.html room-alpha.html") || !strings.HasSuffix(sheets[1], " day-beta.html room-beta.html")) {
			t.Errorf("staff are led to %q", sheets)
		}
	}
}

// A printable is listed on the page that has it, on its day sheet and on the cover, and
// on no other; a sheet for pupils exists where something is asked.
func TestSheetsAreListedWhereTheyAreUsed(t *testing.T) {
	pages, texts := smallPages(t, Staff, nil)
	for name, page := range pages {
		leads := map[string]bool{}
		for _, a := range page.all("a") {
			leads[a.at["href"]] = true
		}
		if want := name == "alpha.html" || name == "day-alpha.html" || name == "index.html"; leads["print-dial-face.html"] != want {
			t.Errorf("%s leads to the face: %v", name, leads["print-dial-face.html"])
		}
		if want := name == "alpha.html" || name == "today.html" || name == "index.html"; leads["pupil-alpha.html"] != want {
			t.Errorf("%s leads to the pupils' sheet: %v", name, leads["pupil-alpha.html"])
		}
	}
	for name, want := range map[string]bool{"print-dial-face.html": true, "print-dial-face-2.html": false, "pupil-alpha.html": true, "pupil-beta.html": false, "pupil-gamma.html": false, "day-gamma.html": true, "day-today.html": false, "day-extra.html": false} {
		if _, ok := texts[name]; ok != want {
			t.Errorf("%s is there: %v", name, ok)
		}
	}
	class, _ := smallPages(t, Class, nil)
	for name := range class {
		if strings.HasPrefix(name, "day-") {
			t.Errorf("the class has %s", name)
		}
	}
	if n := ruledLines(class["pupil-alpha.html"].with("class", "ruled-lines")[0]); n != 4 {
		t.Errorf("the pupils have %d lines", n)
	}
	back := false
	for _, a := range pages["print-dial-face.html"].all("a") {
		back = back || a.at["href"] == "alpha.html"
	}
	if !back || !strings.Contains(line(pages["print-dial-face.html"].words()), "Alpha") {
		t.Error("the face does not lead back to its lesson")
	}
}

// Tables that are alike share one file, others have a number; each is named where
// it stands and holds what stands there.
func TestTableFilesAreShared(t *testing.T) {
	pages, texts := smallPages(t, Class, nil)
	files := func(page string) []string {
		var list []string
		for _, a := range pages[page].find("article").all("a") {
			if strings.HasSuffix(a.at["href"], ".csv") {
				list = append(list, a.at["href"])
			}
		}
		return list
	}
	alpha, beta := files("alpha.html"), files("beta.html")
	first := func(list []string, prefix string) (found []string) {
		for _, name := range list {
			if strings.HasPrefix(name, prefix) {
				found = append(found, name)
			}
		}
		return found
	}
	a, b := first(alpha, "strip-table-places"), first(beta, "strip-table-places")
	if !slices.Equal(a, []string{"strip-table-places.csv"}) || !slices.Equal(b, []string{"strip-table-places.csv", "strip-table-places-2.csv"}) {
		t.Fatalf("the tables are in %v and %v", alpha, beta)
	}
	if texts["strip-table-places.csv"] == texts["strip-table-places-2.csv"] {
		t.Error("two strips give the same table")
	}
	// Neptune on the last seam: 300 squares, and 100.
	for name, squares := range map[string]string{"strip-table-places.csv": "300", "strip-table-places-2.csv": "100"} {
		if !regexp.MustCompile(`(?m)^Neptune,.*,` + squares + `(\.0*)?,`).MatchString(texts[name]) {
			t.Errorf("%s lacks Neptune at %s: %s", name, squares, texts[name])
		}
	}
	for name := range texts {
		if strings.HasSuffix(name, ".csv") && !slices.Contains(append(alpha, beta...), name) {
			t.Errorf("%s is linked from nowhere", name)
		}
	}
}

// Where a sheet repeats a part of the lesson, a printable in it is not printed
// twice, and a staff note in a question leaves no lines to write on.
func TestSheetsRepeatWithoutAdding(t *testing.T) {
	files := smallUnit()
	files["1-alpha.md"] = &fstest.MapFile{Data: []byte("```lesson\ntitle = \"Alpha\"\n[sheet]\nback = [\"make\"]\n```\n\n## Make\n\n```compute dial-face\n```\n\n## Ask\n\n- One\n\n  ```staff\n  A hint\n  ```\n\n- Two\n\n```answer\nBoth\n```\n")}
	files["3-gamma.md"] = &fstest.MapFile{Data: []byte("```lesson\ntitle = \"Gamma\"\n```\n")}
	unit, words := read(t, files, "unit")
	class, staff := pressings(t, unit, words, unit.Settings)
	for _, pages := range []map[string]string{class, staff} {
		if pages["print-dial-face.html"] == "" || pages["print-dial-face-2.html"] != "" {
			t.Error("the face has no page, or two")
		}
	}
	if strings.Count(staff["day-alpha.html"], `href="print-dial-face.html"`) != 1 {
		t.Error("the day sheet does not lead to the face once")
	}
	ruled := 0
	for _, div := range parsed(t, []byte(class["pupil-alpha.html"])).all("div") {
		ruled += ruledLines(div)
	}
	if ruled != 2 { // the least that a pupil gets where the lesson rules none
		t.Errorf("there are %d lines to write on, want 2", ruled)
	}
}

// A unit's own safety page keeps its words and its cautions in their place, once,
// before those that it gathers.
func TestOwnSafetyPage(t *testing.T) {
	files := smallUnit()
	files["z-care.md"] = &fstest.MapFile{Data: []byte("```lesson\ntitle = \"Care\"\npart = \"safety\"\n```\n\nOur rules.\n\n```caution\nOur own caution.\n```\n")}
	unit, words := read(t, files, "unit")
	class, _ := pressings(t, unit, words, unit.Settings)
	text := line(parsed(t, []byte(class["z-care.html"])).find("article").words())
	at := []int{strings.Index(text, "Our rules."), strings.Index(text, "Our own caution."), strings.Index(text, "Start with care."), strings.Index(text, "Alpha caution")}
	if !slices.IsSorted(at) || at[0] < 0 || strings.Count(text, "Our own caution.") != 1 {
		t.Errorf("it says %s", text)
	}
}
