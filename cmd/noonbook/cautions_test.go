package main

import (
	"encoding/json"
	"fmt"
	"html"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"noonbook/build/placeholder"
	"noonbook/build/placeholder/entry"
)

// careUnit is an ordinary school for the table, with lenses that make no telescope.
const careUnit = `[unit]
title = "Cautions"
[school]
name = "Alder Reach School"
latitude = 46.09
longitude = -64.77
time_zone = "America/Moncton"
language = "LANGUAGE"
[class]
pupils = 27
group_size = 3
[term]
first_day = 2027-04-12
last_day = 2027-07-30
lesson_times = ["9:00-9:30", "9:30-10:00", "10:00-10:30", "10:30-11:00", "11:00-11:30", "11:30-12:00"]
lessons_a_day = 6
[stock]
front_lens_focal_mm = 250
eye_lens_focal_mm = 50
pipe_outside_mm = 21.3
rocket_mass_g = 4.0
launch_speed_m_s = 20
[[stock.lenses]]
label = "window lens"
count = 2
diameter_mm = 50
focal_mm = 100
[field]
width_m = 92
length_m = 118
margin_percent = 50
wind_m_s = 4
`

// careLessons are the first lessons of that unit, for the note to families and for
// the sky of a lesson: the new Moon of May 2027 is on the 6th.
var careLessons = []string{
	"title = \"In the Sun\"\nneeds = [\"sun\"]",
	"title = \"In the dark\"\nneeds = [\"dark\"]\nstart = 22:00:00\ndate = 2027-04-13",
	"title = \"Indoors\"",
	"title = \"At new Moon\"\ndate = 2027-05-06\nstart = 12:00:00",
	"title = \"On the field\"\nneeds = [\"dry\"]",
}

// usesOf groups the table by placeholder, in its order: a lesson each.
func usesOf(table []warned) [][]warned {
	var groups [][]warned
	for _, c := range table {
		if n := len(groups); n > 0 && groups[n-1][0].name == c.name {
			groups[n-1] = append(groups[n-1], c)
		} else {
			groups = append(groups, []warned{c})
		}
	}
	return groups
}

// fresh are the cautions of a use that no use before it on the page has told.
func fresh(uses []warned, at int) (cautions []said) {
	same := func(list []said, s said) bool {
		return slices.ContainsFunc(list, func(other said) bool { return slices.Equal(other.en, s.en) })
	}
	for _, s := range uses[at].cautions {
		told := slices.ContainsFunc(uses[:at], func(c warned) bool { return same(c.cautions, s) })
		if !told || same(uses[at].renewed, s) {
			cautions = append(cautions, s)
		}
	}
	return cautions
}

func (c warned) speaks() bool { return len(c.cautions)+len(c.warnings)+len(c.also)+len(c.paper) > 0 }

// careFolder writes a unit with a lesson for each placeholder: a block for each use
// in a section that is on the day sheet, and one in a section that is not.
func careFolder(t *testing.T, language string, table []warned) string {
	t.Helper()
	files := map[string]string{"unit.toml": strings.Replace(careUnit, "LANGUAGE", language, 1)}
	for i, block := range careLessons {
		files[fmt.Sprintf("%d-before-%d.md", i+1, i+1)] = "```lesson\n" + block + "\n```\n\nWords.\n"
	}
	for i, uses := range usesOf(table) {
		beforehand, work := "", ""
		for _, c := range uses {
			block := "```compute " + c.name + "\n" + c.given + "```\n\nThe step.\n\n"
			work += block
			if c.speaks() {
				beforehand += block
			}
		}
		if e, ok := entry.Find(placeholder.Catalogue(), uses[0].name); ok && e.ForStaff {
			work, beforehand = "````staff\n"+work+"````\n\n", "````staff\n"+beforehand+"````\n"
		}
		files[fmt.Sprintf("%d-%s.md", len(careLessons)+i+1, uses[0].name)] = "```lesson\ntitle = \"" + uses[0].name + "\"\n[sheet]\nback = [\"work\"]\n```\n\n## Work\n\n" + work + "## Beforehand\n\n" + beforehand
	}
	dir := t.TempDir()
	for name, text := range files {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

// A careHandbook is both editions of a unit as they lie on the disk.
type careHandbook struct {
	language     string
	class, staff map[string]string    // by page
	bound        [2]map[string]string // class and staff in one file, by page
	printed      string               // what press said of problems
}

func pressCare(t *testing.T, content, language string) careHandbook {
	t.Helper()
	out := filepath.Join(t.TempDir(), "book")
	code, _, errs := noonbook(t, "press", "--staff", "--single", "--content", content, "--out", out)
	if code != done {
		t.Fatalf("exit %d\n%s", code, errs)
	}
	h := careHandbook{language: language, class: tree(t, out+"/"), staff: tree(t, out+"-staff/"), printed: plain(errs)}
	for i, name := range []string{out + ".html", out + "-staff.html"} {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		h.bound[i] = pagesOf(string(text))
	}
	return h
}

var pageStart = regexp.MustCompile(`<section class="page[^"]*" id="([^"]*)">`)

// pagesOf takes a handbook in one file apart again.
func pagesOf(text string) map[string]string {
	pages := map[string]string{}
	starts := pageStart.FindAllStringSubmatchIndex(text, -1)
	for i, at := range starts {
		end := len(text)
		if i+1 < len(starts) {
			end = starts[i+1][0]
		}
		pages[text[at[2]:at[3]]+".html"] = text[at[1]:end]
	}
	return pages
}

// inline are the tags within a word or sentence; any other parts words.
var inline = []string{"a", "b", "code", "data", "em", "i", "small", "span", "strong", "time"}

// plain is what a reader reads of a piece of a page, with plain spaces and
// apostrophes.
func plain(page string) string {
	var b strings.Builder
	for page != "" {
		text, tag, _ := strings.Cut(page, "<")
		b.WriteString(text)
		tag, page, _ = strings.Cut(tag, ">")
		name, _, _ := strings.Cut(strings.TrimPrefix(tag, "/"), " ")
		if !slices.Contains(inline, name) {
			b.WriteByte(' ')
		}
	}
	text := strings.NewReplacer("\u00a0", " ", "\u202f", " ", "’", "'").Replace(html.UnescapeString(b.String()))
	return strings.Join(strings.Fields(text), " ")
}

// missing returns the parts of sentences that a text lacks, in any language.
func missing(text, language string, all ...[]said) (parts []string) {
	for _, s := range slices.Concat(all...) {
		rest := text
		for _, part := range s.in(language) {
			_, after, ok := strings.Cut(rest, part)
			if !ok {
				parts = append(parts, part)
				continue
			}
			rest = after
		}
	}
	return parts
}

func (s said) in(language string) []string {
	if language == "fr" {
		return s.fr
	}
	return s.en
}

// A guarded is JSON that reckon answers, what matters here of it.
type guarded struct {
	Cautions, Warnings []string
	Facts              map[string]struct{ Text string }
}

func (c warned) pairs() []string {
	var words []string
	for line := range strings.Lines(c.given) {
		key, value, _ := strings.Cut(strings.TrimSpace(line), " = ")
		words = append(words, key+"="+strings.Trim(value, `"[]`))
	}
	return words
}

// Each placeholder tells its cautions and warnings wherever a reader can meet it:
// the pages of both editions, the day sheet, the sheets to print, the page of
// safety, the handbook in one file, the terminal and JSON; no others; and in French
// the same.
func TestEveryPlaceholderWarns(t *testing.T) {
	unraced(t)
	speaking := slices.DeleteFunc(slices.Clone(everyPlaceholder), func(c warned) bool { return !c.speaks() })
	content := careFolder(t, "en", everyPlaceholder)
	english := pressCare(t, content, "en")
	french := pressCare(t, careFolder(t, "fr", speaking), "fr")
	for _, e := range placeholder.Catalogue() {
		if !slices.ContainsFunc(everyPlaceholder, func(c warned) bool { return c.name == e.Name }) {
			t.Errorf("%s is not in the table: which caution must it give, or none?", e.Name)
		}
	}
	for _, table := range [][]warned{everyPlaceholder, speaking} {
		for _, uses := range usesOf(table) {
			e, ok := entry.Find(placeholder.Catalogue(), uses[0].name)
			if !ok {
				t.Errorf("%s is no placeholder", uses[0].name)
				continue
			}
			spoken := 0 // uses with a second block on the page
			for i, c := range uses {
				at := []int{i}
				if c.speaks() {
					at = append(at, len(uses)+spoken)
					spoken++
				}
				h := english
				if len(table) < len(everyPlaceholder) {
					h = french
				}
				t.Run(strings.TrimSpace(h.language+" "+c.name+" "+c.when), func(t *testing.T) {
					c.onPages(t, h, e, at, fresh(uses, i))
					if h.language == "en" && c.speaks() {
						c.inJSON(t, content)
						c.inTerminal(t, content)
						if lacks := missing(h.printed, "en", c.warnings); lacks != nil {
							t.Errorf("press does not print %q", lacks)
						}
					}
				})
			}
		}
	}
	for _, h := range []careHandbook{english, french} {
		for edition, pages := range map[string]map[string]string{"class": h.class, "staff": h.staff, "class, single file": h.bound[0], "staff, single file": h.bound[1]} {
			safetyIsWhole(t, h.language+" "+edition, pages)
		}
	}
	t.Run("fr JSON", func(t *testing.T) {
		for _, uses := range usesOf(speaking) {
			uses[0].inFrenchJSON(t, content) // the others say their words in the same way
		}
	})
}

var toldInside = regexp.MustCompile(`(?s)<(?:p|li)>(.*?)</(?:p|li)>`)

// safetyIsWhole wants every caution that any page of an edition shows on its page of
// safety, and each of the placeholders' there once.
func safetyIsWhole(t *testing.T, edition string, pages map[string]string) {
	t.Helper()
	safety, told := plain(pages["safety.html"]), 0
	for name, page := range pages {
		for _, section := range careSection.FindAllString(page, -1) {
			for _, m := range toldInside.FindAllStringSubmatch(section, -1) {
				if text := plain(m[1]); !strings.Contains(safety, text) {
					t.Errorf("%s: %s says %q, and the page of safety does not", edition, name, text)
				}
				told++
			}
		}
	}
	if told < 10 {
		t.Errorf("%s: only %d cautions were found", edition, told)
	}
	for _, section := range careSection.FindAllString(pages["safety.html"], -1) {
		if text, _, ok := strings.Cut(section, "<small>"); ok && strings.Count(safety, plain(text)) != 1 {
			t.Errorf("%s: the page of safety says %d times %q", edition, strings.Count(safety, plain(text)), plain(text))
		}
	}
}

func (c warned) json(t *testing.T, content string, more ...string) guarded {
	t.Helper()
	var g guarded
	args := slices.Concat([]string{"reckon", c.name, "--json", "--content", content}, c.pairs(), more)
	if err := json.Unmarshal([]byte(must(t, args...)), &g); err != nil {
		t.Fatal(err)
	}
	if len(g.Cautions) != len(c.cautions) || len(g.Warnings) != len(c.warnings) {
		t.Fatalf("JSON has %d cautions and %d warnings, want %d and %d: %q %q", len(g.Cautions), len(g.Warnings), len(c.cautions), len(c.warnings), g.Cautions, g.Warnings)
	}
	return g
}

func (c warned) inJSON(t *testing.T, content string) {
	t.Helper()
	g := c.json(t, content)
	for i, s := range c.cautions {
		if lacks := missing(plain(g.Cautions[i]), "en", []said{s}); lacks != nil {
			t.Errorf("caution %d in JSON lacks %q", i+1, lacks)
		}
	}
	for i, s := range c.warnings {
		if lacks := missing(plain(g.Warnings[i]), "en", []said{s}); lacks != nil {
			t.Errorf("warning %d in JSON lacks %q", i+1, lacks)
		}
	}
	if c.name == "rocket-zone" { // the caution names the zone and the wind of the facts
		for _, fact := range []string{"clear", "wind"} {
			if value := g.Facts[fact].Text; value == "" || !strings.Contains(g.Cautions[1], value) {
				t.Errorf("the caution does not name the %s, %q: %s", fact, value, g.Cautions[1])
			}
		}
	}
}

// inFrenchJSON wants as many sentences as in English, with other words.
func (c warned) inFrenchJSON(t *testing.T, content string) {
	t.Helper()
	g := c.json(t, content, "school.language=fr")
	texts := slices.Concat(g.Cautions, g.Warnings)
	for i, s := range slices.Concat(c.cautions, c.warnings) {
		if why := s.unlikeFrench(plain(texts[i])); why != "" {
			t.Errorf("%s: %s", c.name, why)
		}
	}
}

// unlikeFrench says why a text is not the sentence in French, "" if it may be.
func (s said) unlikeFrench(text string) string {
	if lacks := missing(text, "fr", []said{s}); lacks != nil {
		return fmt.Sprintf("%q lacks %q", text, lacks)
	}
	if len(text) < len(strings.Join(s.en, " ")) || missing(text, "en", []said{s}) == nil {
		return fmt.Sprintf("%q is not %q in French", text, s.en)
	}
	return ""
}

// inTerminal wants cautions and warnings before the first number, each on a line
// with a mark.
func (c warned) inTerminal(t *testing.T, content string) {
	t.Helper()
	text := must(t, append([]string{"reckon", c.name, "--content", content}, c.pairs()...)...)
	var marked []string
	lines := strings.Split(text, "\n")
	for len(lines) > 0 && strings.HasPrefix(lines[0], "! ") {
		marked, lines = append(marked, plain(lines[0])), lines[1:]
	}
	want := slices.Concat(c.cautions, c.warnings)
	if len(marked) != len(want) {
		t.Errorf("the terminal begins with %d marked lines, want %d: %q", len(marked), len(want), marked)
		return
	}
	for j, s := range want {
		if lacks := missing(marked[j], "en", []said{s}); lacks != nil {
			t.Errorf("line %d of the terminal lacks %q", j+1, lacks)
		}
	}
	if lacks := missing(plain(text), "en", c.also); lacks != nil {
		t.Errorf("the terminal lacks %q", lacks)
	}
}

var (
	printTarget      = regexp.MustCompile(`<p class="print-link"><a href="([^"]*)">`)
	substance        = regexp.MustCompile(`<(?:table|svg|dl|details|div)\b`)
	careSection      = regexp.MustCompile(`(?s)<section class="caution">.*?</section>`)
	warningParagraph = regexp.MustCompile(`(?s)<p class="warning">.*?</p>`)
	partOfSheet      = regexp.MustCompile(`<section class="part"(?: id="(?:[^"/]*/)?nb-([a-z]+)")?>`)
)

// computedFigure begins a computed block; a large picture is one too.
var computedFigure = regexp.MustCompile(`<figure class="?computed[^>]*>`)

// blocks returns what stands in each computed block of a page.
func blocks(page string) []string {
	list := computedFigure.Split(page, -1)[1:]
	for i := range list {
		list[i], _, _ = strings.Cut(list[i], "</figure>")
	}
	return list
}

// onPages looks at every page and sheet that the blocks of a use stand on, as the
// numbers of at say. The first block tells the cautions that are new on the page, and
// no second block does.
func (c warned) onPages(t *testing.T, h careHandbook, e entry.Entry, at []int, new []said) {
	t.Helper()
	page := c.name + ".html"
	for _, where := range []struct {
		name  string
		pages map[string]string
	}{{"class page", h.class}, {"staff page", h.staff}, {"class, single file", h.bound[0]}, {"staff, single file", h.bound[1]}} {
		figures := blocks(where.pages[page])
		if e.ForStaff && strings.HasPrefix(where.name, "class") {
			if len(figures) > 0 {
				t.Errorf("%s: it holds %s, which is for staff", where.name, c.name)
			}
			continue
		}
		if len(figures) <= at[len(at)-1] {
			t.Fatalf("%s: %d blocks on %s", where.name, len(figures), page)
		}
		for n, i := range at {
			c.inBlock(t, where.name, figures[i], h.language, new[:len(new)*(1-n)])
			if lacks := missing(plain(figures[i]), h.language, c.also); len(c.also) > 0 && lacks != nil {
				t.Errorf("%s lacks %q", where.name, lacks)
			}
		}
		if e.Printable {
			c.onPrintable(t, where.name, printTarget.FindAllStringSubmatch(h.class[page], -1)[at[0]][1], where.pages, h.language)
		}
		if lacks := missing(gatheredFrom(where.pages, c.name), h.language, c.cautions); lacks != nil {
			t.Errorf("%s: on the page of safety stands no %q", where.name, lacks)
		}
	}
	c.onDaySheet(t, "day sheet", h.staff["day-"+page], e, at, h.language)
	c.onDaySheet(t, "day sheet, single file", h.bound[1]["day-"+page], e, at, h.language)
}

// gatheredFrom returns what the page of safety repeats from the page of that title: the
// cautions that name it, then those under it.
func gatheredFrom(pages map[string]string, title string) string {
	safety := pages["safety.html"]
	var parts []string
	for _, section := range careSection.FindAllString(safety, -1) {
		if _, where, ok := strings.Cut(section, "<small>"); ok && strings.Contains(where, `">`+title+"</a>") {
			parts = append(parts, section)
		}
	}
	_, own, _ := strings.Cut(safety, `">`+title+"</a></h2>")
	own, _, _ = strings.Cut(own, `<section class="from-lesson">`)
	return plain(strings.Join(append(parts, own), " "))
}

// inBlock wants the cautions, then the warnings, before anything else of a block,
// and no others.
func (c warned) inBlock(t *testing.T, where, figure, language string, cautions []said) {
	t.Helper()
	if link, rest, ok := strings.Cut(figure, "</small></p>"); ok && strings.HasPrefix(link, `<p class="print-link">`) {
		figure = rest
	}
	head := figure
	if at := substance.FindStringIndex(figure); at != nil {
		head = figure[:at[0]]
	}
	told := careSection.FindString(head)
	if lacks := missing(plain(told), language, cautions); lacks != nil {
		t.Errorf("%s: the cautions before the rest of the block lack %q", where, lacks)
	}
	if n := strings.Count(told, "<p>"); n != len(cautions) {
		t.Errorf("%s: %d cautions, want %d: %s", where, n, len(cautions), plain(told))
	}
	heeds := warningParagraph.FindAllString(head, -1)
	if len(heeds) != len(c.warnings) {
		t.Errorf("%s: %d warnings, want %d: %q", where, len(heeds), len(c.warnings), heeds)
		return
	}
	for i, s := range c.warnings {
		if lacks := missing(plain(heeds[i]), language, []said{s}); lacks != nil {
			t.Errorf("%s: the warnings before the rest of the block lack %q", where, lacks)
		}
		if why := s.unlikeFrench(plain(heeds[i])); language == "fr" && why != "" {
			t.Errorf("%s: %s", where, why)
		}
	}
	for _, s := range c.unsaid {
		if parts := s.in(language); strings.Contains(plain(figure), parts[0]) {
			t.Errorf("%s: it says %q", where, parts[0])
		}
	}
}

// onPrintable looks at a page of sheets. Cautions and warnings stand before the
// sheets; what goes home or outside on paper stands on the paper too.
func (c warned) onPrintable(t *testing.T, where, target string, pages map[string]string, language string) {
	t.Helper()
	head, sheets, ok := strings.Cut(pages[target], `<div class="paper-sheet`)
	if !ok {
		t.Fatalf("%s: no sheets on %s", where, target)
	}
	if lacks := missing(plain(head), language, c.cautions, c.warnings); lacks != nil {
		t.Errorf("%s: before the sheets of %s stands no %q", where, target, lacks)
	}
	if lacks := missing(plain(sheets), language, c.paper); len(c.paper) > 0 && lacks != nil {
		t.Errorf("%s: the sheets of %s lack %q", where, target, lacks)
	}
}

// onDaySheet looks for the block in the section that is on the sheet, and for what
// is gathered from the one that is not.
func (c warned) onDaySheet(t *testing.T, where, page string, e entry.Entry, at []int, language string) {
	t.Helper()
	parts := daySheetParts(page)
	figures := blocks(parts["sections"])
	if len(figures) <= at[0] {
		t.Fatalf("%s: %d blocks in the sections", where, len(figures))
	}
	c.inBlock(t, where, figures[at[0]], language, nil) // they stand among what is gathered, before the sections
	if lacks := missing(plain(figures[at[0]]), language, c.also); !e.Printable && len(c.also) > 0 && lacks != nil {
		t.Errorf("%s: the sections lack %q", where, lacks)
	}
	if len(at) == 1 {
		return
	}
	care := plain(parts["care"])
	for _, s := range slices.Concat(c.cautions, c.warnings) { // of all uses, so in another order
		if lacks := missing(care, language, []said{s}); lacks != nil {
			t.Errorf("%s: what is gathered lacks %q", where, lacks)
		}
	}
}

// daySheetParts takes a day sheet apart, by the names of its parts; those of the lesson
// are the sections.
func daySheetParts(page string) map[string]string {
	parts := map[string]string{}
	starts := partOfSheet.FindAllStringSubmatchIndex(page, -1)
	for i, at := range starts {
		end := len(page)
		if i+1 < len(starts) {
			end = starts[i+1][0]
		}
		name := "sections"
		if at[2] >= 0 {
			name = page[at[2]:at[3]]
		}
		parts[name] += page[at[1]:end]
	}
	return parts
}

// A unit in French, pressed as its school presses it, has every caution of its pages on
// its page of safety.
func TestFrenchSafetyIsWhole(t *testing.T) {
	unraced(t)
	h := pressCare(t, "../../testdata/units/french", "fr")
	for edition, pages := range map[string]map[string]string{"class": h.class, "staff": h.staff, "class, single file": h.bound[0], "staff, single file": h.bound[1]} {
		safetyIsWhole(t, edition, pages)
	}
}

// The numbers of the day on every day sheet name the compass, so the sheet says
// where no compass works, also when the lesson has no block that does.
func TestDaySheetWarnsOfTheCompass(t *testing.T) {
	h := pressCare(t, "../../testdata/units/pole", "en")
	for _, page := range []string{"day-shadows.html", "day-strip.html"} {
		if lacks := missing(plain(daySheetParts(h.staff[page])["today"]), "en", []said{noCompass}); lacks != nil {
			t.Errorf("%s lacks %q", page, lacks)
		}
	}
}

// An eclipse of the Sun stands in the calendar file with its caution. Nothing else
// there needs one.
func TestCalendarFileWarnsOfTheEclipse(t *testing.T) {
	unit := strings.NewReplacer("LANGUAGE", "en", "latitude = 46.09", "latitude = 36.5", "longitude = -64.77", "longitude = -6.3", "America/Moncton", "Europe/Madrid",
		"2027-04-12", "2027-07-26", "2027-07-30", "2027-08-06").Replace(careUnit)
	out := filepath.Join(t.TempDir(), "book")
	must(t, "press", "--content", folder(t, map[string]string{"unit.toml": unit, "1-sun.md": "```lesson\ntitle = \"Sun\"\n```\n\nWords.\n"}), "--out", out)
	text := strings.ReplaceAll(tree(t, out)["/unit.ics"], "\r\n ", "")
	found := 0
	summary := regexp.MustCompile(`(?m)^SUMMARY:.*eclipse of the Sun`)
	for event := range strings.SplitSeq(text, "BEGIN:VEVENT") {
		event = strings.NewReplacer(`\,`, ",", `\;`, ";").Replace(event)
		eclipse := summary.MatchString(event)
		if eclipse {
			found++
		}
		if eclipse != (missing(plain(event), "en", []said{sunEclipsed}) == nil) {
			t.Errorf("that it is an eclipse is %v: %s", eclipse, event)
		}
	}
	if found != 1 {
		t.Errorf("%d eclipses of the Sun in %s", found, text)
	}
}
