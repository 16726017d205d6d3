package plan

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"noonbook/build/form"
	"noonbook/build/placeholder"
)

// smallUnit has a page of each sort: a start, three lessons and one page more.
func smallUnit() fstest.MapFS {
	return fstest.MapFS{
		"unit.toml": {Data: []byte(`[unit]
title = "Small & <whole>"
summary = "Three lessons."
[school]
name = "Elm School"
latitude = 46.09
longitude = -64.77
time_zone = "America/Moncton"
[class]
name = "grade 5"
pupils = 28
group_size = 3
[term]
first_day = 2027-04-12
last_day = 2027-04-23
lesson_times = ["9:10-10:00", "11:30-12:20"]
`)},
		"0-today.md": {Data: []byte("```lesson\ntitle = \"Today\"\npart = \"start\"\n```\n\nRead this first.\n\n```caution\nStart with care.\n```\n")},
		"1-alpha.md": {Data: []byte("```lesson\ntitle = \"Alpha\"\nsummary = \"The first.\"\ngoals = [\"count\", \"say <why>\"]\n" +
			"vocabulary = [{ term = \"style\", meaning = \"An edge.\" }, { term = \"Plate\", meaning = \"A face.\" }]\n" +
			"kit = [{ item = \"lamp\" }, { item = \"sheets\", count = 0.5, each = \"pupil\", spare = 2 }, { item = \"card\", count = 2, each = \"group\" }, { item = \"globe\", spare = 1 }, { item = \"pencils\", each = \"pupil\" }, { item = \"tape\", count = 0.25, each = \"group\", spare = 1 }]\n" +
			"minutes = 50\nneeds = [\"dry\"]\nif_wet = \"change\"\nchange_with = \"3-gamma.md\"\n```\n\n" +
			"See [gamma](3-gamma.md), [Beta](2-beta.md#part) and [more of the same](extra.md).\n\n```caution\nAlpha caution, see [here](#asked).\n```\n\n```compute dial-face\n```\n\n" +
			"## Asked\n\nHow many?\n\n```answer lines=4\nSeven.\n\n~~~caution\nA caution of the answer.\n~~~\n```\n\n```compute class-facts\n```\n\n```compute strip-table\nshow = [\"places\"]\n```\n")},
		"2-beta.md":  {Data: []byte("```lesson\ntitle = \"Beta\"\nvocabulary = [{ term = \"gnomon\", meaning = \"A triangle.\" }, { term = \"style\", meaning = \"Again.\" }]\nneeds = [\"dry\"]\nif_wet = \"keep\"\n```\n\n## Part\n\n```compute strip-table\nshow = [\"places\"]\n```\n\n```compute strip-table\nshow = [\"places\"]\nstock.strip_squares = 100\n```\n")},
		"3-gamma.md": {Data: []byte("```lesson\ntitle = \"Gamma\"\nminutes = 35\nvisits = 2\n```\n\nNothing outdoors.\n")},
		"extra.md":   {Data: []byte("```lesson\ntitle = \"Extra\"\npart = \"page\"\n```\n\nMore.\n")},
	}
}

// smallPages presses the small unit and reads its pages.
func smallPages(t *testing.T, edition Edition, over form.Values) (map[string]*element, map[string]string) {
	t.Helper()
	unit, words := read(t, smallUnit(), "unit")
	p, err := Make(unit, words, edition, placeholder.Catalogue())
	if err != nil {
		t.Fatal(err)
	}
	files, problems := p.Press(unit.Settings.With(over))
	if problems.Faults() > 0 {
		t.Fatal(problems)
	}
	pages, texts := map[string]*element{}, map[string]string{}
	for _, f := range files {
		texts[f.Name] = string(f.Bytes)
		if strings.HasSuffix(f.Name, ".html") {
			pages[f.Name] = parsed(t, f.Bytes)
		}
	}
	return pages, texts
}

// Links lead from each page to the one before and the one after it, in the order
// of the unit; pages besides the lessons have neither.
func TestPagesFollowOneAnother(t *testing.T) {
	for _, edition := range []Edition{Class, Staff} {
		pages, _ := smallPages(t, edition, nil)
		for page, want := range map[string][2]string{
			"today.html": {"", "alpha.html Alpha"}, "alpha.html": {"today.html Today", "beta.html Beta"},
			"beta.html": {"alpha.html Alpha", "gamma.html Gamma"}, "gamma.html": {"beta.html Beta", ""},
			"extra.html": {}, "safety.html": {}, "glossary.html": {},
		} {
			for i, rel := range []string{"prev", "next"} {
				got := ""
				for _, a := range pages[page].with("rel", rel) {
					got += a.at["href"] + " " + line(a.words())
				}
				if got != want[i] {
					t.Errorf("%s, %s: %q, want %q", page, rel, got, want[i])
				}
			}
			var here []string
			for _, a := range pages[page].with("aria-current", "page") {
				here = append(here, a.at["href"])
			}
			if !slices.Equal(here, []string{page}) {
				t.Errorf("%s says that one is on %v", page, here)
			}
		}
	}
}

// The list of all pages names each with its number and date; lessons alone have
// one, and the others stand behind them.
func TestListOfAllPages(t *testing.T) {
	pages, _ := smallPages(t, Class, nil)
	lists := pages["beta.html"].find("footer").with("id", "nb-pages")
	if len(lists) != 1 || len(pages["beta.html"].find("header").with("href", "#nb-pages")) != 1 {
		t.Fatal("there is no list of all pages, or no link to it")
	}
	list := lists[0]
	// Alpha on Monday the 12th, Beta on Tuesday, a time is kept for it on Wednesday, and
	// Gamma takes both times of Thursday.
	want := []string{"Today", "1 Alpha 12 April", "2 Beta 13 April", "3 Gamma 15 April"}
	if got := list.find("ol").texts("li"); !slices.Equal(got, want) {
		t.Errorf("the lessons are %q, want %q", got, want)
	}
	if got := list.find("ul").texts("li"); len(got) != 4 || got[0] != "Extra" {
		t.Errorf("the other pages are %q", got)
	}
	for page, want := range map[string]string{"today.html": "Today", "alpha.html": "1 Alpha", "gamma.html": "3 Gamma", "extra.html": "Extra"} {
		if got := line(pages[page].find("h1").words()); got != want {
			t.Errorf("%s is headed %q, want %q", page, got, want)
		}
	}
}

// A lesson's margin and what to have ready, worked out by hand for 28 pupils in
// nine groups, one of four and eight of three.
func TestMarginAndKit(t *testing.T) {
	pages, _ := smallPages(t, Class, nil)
	alpha := pages["alpha.html"].find("article")
	if got := line(alpha.find("aside").words()); !strings.Contains(got, "Monday 12 April, 9:10 to 10:00") || !strings.Contains(got, "1 of 4 and 8 of 3") {
		t.Errorf("the margin says %q", got)
	}
	if got := line(pages["extra.html"].find("article").words()); strings.Contains(got, "April") || strings.Contains(got, "Groups") {
		t.Errorf("a page that is no lesson has a time: %q", got)
	}
	for _, c := range []struct {
		pupils, size int
		want         string
	}{{27, 3, "9 of 3"}, {26, 3, "8 of 3 and 1 of 2"}, {0, 3, "no pupils are entered yet"}, {2, 3, "1 of 2"}, {29, 3, "9 of 3 and 1 of 2"}} {
		over := form.Values{"class.pupils": c.pupils, "class.group_size": c.size}
		others, _ := smallPages(t, Staff, over)
		for _, page := range []string{"alpha.html", "day-alpha.html"} {
			if got := line(others[page].words()); !strings.Contains(got, c.want) {
				t.Errorf("%d pupils by %d, %s: it does not say %q", c.pupils, c.size, page, c.want)
			}
		}
	}
	// 28 halves and 2; 2 for each of 9; a quarter for each of 9 is 2.25, so 3, and 1.
	want := []string{
		"lamp: 1", "sheets: 16 (0.5 a pupil, 2 spare)", "card: 18 (2 a group)", "globe: 2, 1 of them spare", "pencils: 28 (1 a pupil)", "tape: 4 (0.2 a group, 1 spare)",
	}
	var kit []string
	for _, ul := range alpha.all("ul") {
		if items := ul.texts("li"); len(items) > 0 && strings.HasPrefix(items[0], "lamp") {
			kit = items
		}
	}
	if len(kit) != len(want) {
		t.Fatalf("the kit is %q", kit)
	}
	for i := range want {
		if kit[i] != want[i] && i != 5 { // of a quarter one decimal is shown, up or down
			t.Errorf("it says %q, want %q", kit[i], want[i])
		}
	}
	if !strings.HasPrefix(kit[5], "tape: 4 (0.") {
		t.Errorf("it says %q", kit[5])
	}
	staff, _ := smallPages(t, Staff, nil)
	for _, thing := range want[1:3] {
		total, _, _ := strings.Cut(thing, " (")
		if got := line(staff["day-alpha.html"].words()); !strings.Contains(got, total) {
			t.Errorf("the day sheet lacks %s: %s", total, got)
		}
	}
}

// What a page tells machines is what it tells people.
func TestResource(t *testing.T) {
	pages, _ := smallPages(t, Class, nil)
	about := func(page string) map[string]any {
		var found map[string]any
		for _, s := range pages[page].all("script") {
			if s.at["type"] == "application/ld+json" {
				if err := json.Unmarshal([]byte(s.words()), &found); err != nil {
					t.Fatalf("%s: %v", page, err)
				}
			}
		}
		return found
	}
	for page, want := range map[string]map[string]string{
		"index.html": {"name": "Small & <whole>", "description": "Three lessons.", "learningResourceType": "unit", "educationalLevel": "grade 5", "provider": "map[@type:EducationalOrganization name:Elm School]", "isPartOf": "<nil>", "timeRequired": "<nil>", "inLanguage": "en", "isAccessibleForFree": "true"},
		"alpha.html": {"name": "Alpha", "description": "The first.", "learningResourceType": "lesson", "timeRequired": "PT50M", "teaches": "[count say <why>]", "keywords": "[style Plate]", "isPartOf": "map[@type:LearningResource name:Small & <whole>]"},
		"beta.html":  {"name": "Beta", "timeRequired": "PT50M", "teaches": "<nil>", "keywords": "[gnomon style]"},
		"gamma.html": {"name": "Gamma", "timeRequired": "PT35M"},
		"extra.html": {"name": "Extra", "learningResourceType": "<nil>", "timeRequired": "<nil>"},
	} {
		got := about(page)
		for key, value := range want {
			if fmt.Sprint(got[key]) != value {
				t.Errorf("%s: %s is %v, want %s", page, key, got[key], value)
			}
		}
	}
}

// A file that answers alone show is no part of the class edition, and a title of
// the page that a link leads to is printed where its words do not say it.
func TestLinksOnPaper(t *testing.T) {
	pages, _ := smallPages(t, Class, nil)
	want := map[string]string{"gamma.html": "", "beta.html#part": "", "extra.html": "Extra"}
	for _, a := range pages["alpha.html"].find("article").all("a") {
		if title, ok := want[a.at["href"]]; ok && a.at["data-title"] != title {
			t.Errorf("the link %q has the title %q for paper, want %q", line(a.words()), a.at["data-title"], title)
		}
	}
}

// A page is shown when all of it is read: its head expects its last element. Of the
// expected element a browser waits for the beginning alone (seen in Chromium 156), so
// nothing may follow it.
func TestPagesAreShownWhole(t *testing.T) {
	for _, edition := range []Edition{Class, Staff} {
		_, texts := smallPages(t, edition, nil)
		for name, text := range texts {
			if !strings.HasSuffix(name, ".html") {
				continue
			}
			if strings.Count(text, `<link rel="expect" href="#nb-end" blocking="render">`) != 1 {
				t.Errorf("%s does not expect its end", name)
			}
			if !strings.HasSuffix(text, `<div id="nb-end" hidden></div></body></html>`) {
				t.Errorf("%s ends %q", name, text[len(text)-60:])
			}
		}
	}
}
