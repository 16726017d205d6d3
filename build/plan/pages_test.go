package plan

import (
	"encoding/json"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"

	"noonbook/build/form"
	"noonbook/build/placeholder"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/place"
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

// with collects the elements that have an attribute of that value.
func (e *element) with(attribute, value string) []*element {
	var list []*element
	if e.at[attribute] == value {
		list = append(list, e)
	}
	for _, c := range e.children {
		list = append(list, c.with(attribute, value)...)
	}
	return list
}

func (e *element) texts(name string) []string {
	var list []string
	for _, c := range e.all(name) {
		list = append(list, line(c.words()))
	}
	return list
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
	var list *element
	for _, d := range pages["beta.html"].find("header").all("details") {
		if d.find("ol") != nil && d.find("input") == nil {
			list = d
		}
	}
	if list == nil {
		t.Fatal("there is no list of all pages")
	}
	// Alpha on Monday the 12th, Beta on Tuesday, a time is kept for it on Wednesday, and
	// Gamma takes both times of Thursday.
	want := []string{"Today", "1 Alpha 12 April", "2 Beta 13 April", "3 Gamma 15 April"}
	if got := list.find("ol").texts("li"); !slices.Equal(got, want) {
		t.Errorf("the lessons are %q, want %q", got, want)
	}
	if got := list.find("ul").texts("li"); len(got) != 5 || got[0] != "Extra" {
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
	if got := line(staff["day-alpha.html"].words()); !strings.Contains(got, want[1]) || !strings.Contains(got, want[2]) {
		t.Errorf("the day sheet lacks the kit: %s", got)
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

// The cover: what it says, and its dial, on which the lessons stand in the order
// of the hours. Noon is up; above the equator morning is left, as the shadow of a
// morning points west, and below it right.
func TestCover(t *testing.T) {
	for _, c := range []struct {
		latitude, longitude float64
		where               string
		morning             float64 // sign of how far right of the middle the first lesson stands
	}{
		{46.09, -64.77, "46.1° north, 64.8° west", -1},
		{-45.87, 170.5, "45.9° south, 170.5° east", 1},
		{0, 0, "0.0° north, 0.0° east", -1},
		{5, -0.2, "5.0° north, 0.2° west", -1},
		{-5, 0.2, "5.0° south, 0.2° east", 1},
	} {
		pages, _ := smallPages(t, Staff, form.Values{"school.latitude": c.latitude, "school.longitude": c.longitude})
		cover := pages["index.html"]
		text := line(cover.words())
		for _, want := range []string{"Small & <whole>", "Three lessons.", "grade 5, 12 April to 23 April 2027", c.where, "Every number was worked out for"} {
			if !strings.Contains(text, want) {
				t.Errorf("the cover lacks %q", want)
			}
		}
		svg := cover.find("svg")
		var at []float64
		var leads, numbers []string
		for _, a := range svg.all("a") {
			var x0, y0, x1, y1 float64
			if _, err := fmt.Sscanf(strings.NewReplacer("M", "", "L", " ").Replace(a.find("path").at["d"]), "%f %f %f %f", &x0, &y0, &x1, &y1); err != nil {
				t.Fatal(err)
			}
			if y1 >= y0 {
				t.Errorf("a line goes down: %s", a.find("path").at["d"])
			}
			at = append(at, x1-90) // the middle of 180 mm
			leads = append(leads, a.at["href"])
			numbers = append(numbers, line(a.words()))
		}
		if strings.Join(leads, " ") != "alpha.html beta.html gamma.html" || strings.Join(numbers, " ") != "1 2 3" {
			t.Errorf("the dial leads to %v by %v", leads, numbers)
			continue
		}
		if at[0]*c.morning <= 0 || at[1] < -0.1 || at[1] > 0.1 || at[2]*c.morning >= 0 || at[0]+at[2] > 0.1 || at[0]+at[2] < -0.1 {
			t.Errorf("at %v the lessons stand %v right of noon", c.latitude, at)
		}
		list := cover.find("ol").texts("li")
		if len(list) != 3 || !strings.HasPrefix(list[0], "1 Alpha The first.") || !strings.HasSuffix(list[0], "12 April") || !strings.Contains(list[0], "Day sheet") {
			t.Errorf("the lessons are %q", list)
		}
	}
	class, _ := smallPages(t, Class, form.Values{"class.name": ""})
	if text := line(class["index.html"].words()); strings.Contains(text, "Day sheet") || strings.Contains(text, ", 12 April to") {
		t.Errorf("the class's cover says %s", text)
	}
}

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
		if i, j := strings.Index(safety, "Today"), strings.Index(safety, "Alpha"); i < 0 || j < i || strings.Contains(safety, "Beta") || strings.Contains(safety, "Gamma") {
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
		cited := []string{"The class", "The dial's face", "Planets on the strip"}
		if edition == Staff { // the day sheets use four more
			cited = []string{"The class", "The dial's face", "The sky during the lesson", "A month of Moons", "Where we are", "Planets on the strip", "The Sun's day"}
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
		if edition == Staff && (len(sheets) != 3 || !strings.Contains(sheets[0], "Alpha Monday 12 April, 9:10 to 10:00") || !strings.HasSuffix(sheets[0], " day-alpha.html pupil-alpha.html") || !strings.HasSuffix(sheets[1], " day-beta.html")) {
			t.Errorf("staff are led to %q", sheets)
		}
	}
}

// A printable is listed on the page that has it and on its day sheet, and on no
// other; a sheet for pupils exists where something is asked.
func TestSheetsAreListedWhereTheyAreUsed(t *testing.T) {
	pages, texts := smallPages(t, Staff, nil)
	for name, page := range pages {
		leads := map[string]bool{}
		for _, a := range page.all("a") {
			leads[a.at["href"]] = true
		}
		if want := name == "alpha.html" || name == "day-alpha.html"; leads["print-dial-face.html"] != want {
			t.Errorf("%s leads to the face: %v", name, leads["print-dial-face.html"])
		}
		if want := name == "alpha.html" || name == "today.html"; leads["pupil-alpha.html"] != want {
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

// An event of the calendar file.
func eventsOf(ics string) []map[string]string {
	var events []map[string]string
	for text := range strings.SplitSeq(strings.ReplaceAll(ics, "\r\n ", ""), "\r\n") {
		key, value, _ := strings.Cut(text, ":")
		if text == "BEGIN:VEVENT" {
			events = append(events, map[string]string{})
		} else if len(events) > 0 {
			events[len(events)-1][key] = value
		}
	}
	return events
}

// The calendar file has every lesson with its reserve and the Moon's phases of the
// term; names of events are the same in each pressing, no two are alike, and those
// of another school or unit are others.
func TestAgenda(t *testing.T) {
	_, texts := smallPages(t, Class, nil)
	events := eventsOf(texts["unit.ics"])
	byName := map[string]map[string]string{}
	for _, e := range events {
		stem, _, _ := strings.Cut(e["UID"], "@")
		stem = stem[:strings.LastIndex(stem, "-")] // without the school's part
		if byName[stem] != nil {
			t.Errorf("two events are named %s", stem)
		}
		byName[stem] = e
		if e["DTSTAMP"] != "20270412T030000Z" { // the first day of the term begins, by the school's clock
			t.Errorf("%s is stamped %s", stem, e["DTSTAMP"])
		}
	}
	for name, want := range map[string]map[string]string{
		"lesson-alpha":   {"SUMMARY": "Lesson 1: Alpha", "DESCRIPTION": "The first.", "DTSTART": "20270412T121000Z", "DTEND": "20270412T130000Z", "STATUS": "CONFIRMED", "TRANSP": ""},
		"reserve-alpha":  {"SUMMARY": "In reserve: Lesson 1: Alpha", "DESCRIPTION": "If the weather spoils its own time\\, it changes places with Gamma.", "DTSTART": "20270415T121000Z", "STATUS": "TENTATIVE"},
		"lesson-beta":    {"SUMMARY": "Lesson 2: Beta", "DTSTART": "20270413T121000Z", "STATUS": "CONFIRMED"},
		"reserve-beta":   {"DESCRIPTION": "Kept for the lesson if the weather spoils its own time.", "DTSTART": "20270414T121000Z", "DTEND": "20270414T130000Z", "STATUS": "TENTATIVE"},
		"lesson-gamma":   {"DTSTART": "20270415T121000Z", "DTEND": "20270415T124500Z", "STATUS": "CONFIRMED"},
		"2-lesson-gamma": {"DTSTART": "20270415T143000Z", "DTEND": "20270415T150500Z"},
	} {
		for key, value := range want {
			if got := byName[name][key]; got != value {
				t.Errorf("%s: %s is %q, want %q", name, key, got, value)
			}
		}
	}
	if byName["reserve-gamma"] != nil {
		t.Error("a lesson that no weather spoils has a reserve")
	}
	// First quarter 13 April 22:57 UTC, full Moon 20 April 22:27 UTC: testdata/reference/phases.csv.
	moons := 0
	for name, e := range byName {
		if strings.HasPrefix(name, "sky-") {
			if e["TRANSP"] != "TRANSPARENT" || e["DTEND"] != "" {
				t.Errorf("%s takes up time: %v", name, e)
			}
			if !strings.HasPrefix(name, "sky-"+e["DTSTART"][:8]) {
				t.Errorf("%s is on %s", name, e["DTSTART"])
			}
			if strings.Contains(strings.ToLower(e["SUMMARY"]), "moon") || strings.Contains(strings.ToLower(e["SUMMARY"]), "quarter") {
				moons++
			}
			if c := e["SUMMARY"][:1]; c != strings.ToUpper(c) {
				t.Errorf("%s begins with a small letter: %s", name, e["SUMMARY"])
			}
		}
	}
	if moons < 2 {
		t.Errorf("there are %d events of the Moon in %v", moons, byName)
	}
	ids := func(over form.Values) []string {
		_, texts := smallPages(t, Staff, over)
		var list []string
		for _, e := range eventsOf(texts["unit.ics"]) {
			list = append(list, e["UID"])
		}
		return list
	}
	same := ids(nil)
	for i, e := range events {
		if same[i] != e["UID"] {
			t.Errorf("%s is called %s in another pressing", e["UID"], same[i])
		}
	}
	for _, over := range []form.Values{{"school.name": "Oak School"}, {"unit.title": "Another"}} {
		for _, id := range ids(over) {
			if slices.Contains(same, id) {
				t.Errorf("%v: two schools share the event %s", over, id)
			}
		}
	}
}

// An eclipse of the Sun stands in the calendar file with its caution, and nothing
// else there has it. On 12 August 2026 a part of the Sun is covered at the school,
// most at 17:55:52 UTC: testdata/reference/local-eclipses.csv, swisseph.
func TestAgendaCautionsOfTheSun(t *testing.T) {
	_, texts := smallPages(t, Class, form.Values{"term.first_day": place.Date{Year: 2026, Month: 8, Day: 10}, "term.last_day": place.Date{Year: 2026, Month: 8, Day: 31}})
	eclipses, others := 0, 0
	for _, e := range eventsOf(texts["unit.ics"]) {
		cautioned := strings.Contains(strings.ToLower(e["DESCRIPTION"]), "never look at the sun")
		if strings.HasPrefix(e["DTSTART"], "20260812T175") {
			eclipses++
			if !cautioned {
				t.Errorf("the eclipse says only %q", e["DESCRIPTION"])
			}
		} else if others++; cautioned {
			t.Errorf("%s on %s has the caution of an eclipse of the Sun", e["SUMMARY"], e["DTSTART"])
		}
	}
	if eclipses != 1 || others < 5 {
		t.Errorf("%d eclipses and %d other events", eclipses, others)
	}
}

// The arc of the pages: the Sun stands at the page's own place, from left to right
// in the order of the unit, and the stick's shadow falls to the other side.
func TestArc(t *testing.T) {
	pages, _ := smallPages(t, Class, nil)
	number := func(s string) float64 {
		x, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
	before := 0.0
	for _, name := range []string{"today.html", "alpha.html", "beta.html", "gamma.html"} {
		svg := pages[name].find("svg")
		var here, end float64
		for _, e := range svg.all("circle") {
			if strings.Contains(e.at["class"], "here") {
				here = number(e.at["cx"])
			}
		}
		for _, e := range svg.all("path") {
			if strings.Contains(e.at["class"], "shadow") {
				fields := strings.FieldsFunc(e.at["d"], func(r rune) bool { return strings.ContainsRune("MLH ", r) })
				end = number(fields[2])
			}
		}
		if here <= before {
			t.Errorf("on %s the Sun stands at %v, and before at %v", name, here, before)
		}
		before = here
		if (here-120)*(end-120) >= 0 { // the stick stands in the middle of 240 mm
			t.Errorf("on %s the Sun stands at %v and the shadow ends at %v", name, here, end)
		}
		stops := 0
		for _, a := range svg.all("a") {
			if a.at["href"] == name {
				t.Errorf("%s leads to itself", name)
			}
			stops++
		}
		if stops != 3 {
			t.Errorf("%s has %d other stops", name, stops)
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

// Where a sheet repeats a part of the lesson, a printable in it is not printed
// twice, and a staff note in a question leaves no lines to write on.
func TestSheetsRepeatWithoutAdding(t *testing.T) {
	files := smallUnit()
	files["1-alpha.md"] = &fstest.MapFile{Data: []byte("```lesson\ntitle = \"Alpha\"\n[sheet]\nbefore = [\"make\"]\n```\n\n## Make\n\n```compute dial-face\n```\n\n## Ask\n\n- One\n\n  ```staff\n  A hint\n  ```\n\n- Two\n\n```answer\nBoth\n```\n")}
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
