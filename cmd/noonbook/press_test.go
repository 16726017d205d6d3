package main

import (
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"noonbook/content"
)

// The demo presses in a folder that holds nothing, and twice alike.
func TestPressDemoInAnEmptyFolder(t *testing.T) {
	t.Chdir(t.TempDir())
	out := must(t, "press", "--staff")
	if !regexp.MustCompile(`^\d+ pages, \d+ computed values, \d+ warnings?, \d+ kB in \d+ ms: open handbook/index.html\n$`).MatchString(out) {
		t.Errorf("it says %q", out)
	}
	first, staff := tree(t, "handbook"), tree(t, "handbook-staff")
	if len(first) < 8 || len(staff) <= len(first) {
		t.Errorf("%d and %d files", len(first), len(staff))
	}
	alone := forStaffInDemo(t)
	linked := strings.Builder{} // all that the class edition's pages lead to
	for name, text := range first {
		if path.Ext(name) == ".html" {
			linked.WriteString(text)
		}
	}
	for name := range staff {
		switch {
		case path.Ext(name) == ".csv" && first[name] == "": // a table of answers
		case strings.HasPrefix(name, "/print-") && first[name] == "": // a sheet of a block that is for staff
			if strings.Contains(linked.String(), `href="`+name[1:]) {
				t.Errorf("the class edition leads to %s and is without it", name)
			}
		case (strings.HasPrefix(name, "/day-") || alone[name]) == (first[name] != ""):
			t.Errorf("%s is in both editions, or in one that it is not for", name)
		}
	}
	for name := range first {
		if staff[name] == "" {
			t.Errorf("the staff edition is without %s", name)
		}
	}
	for _, sheet := range []string{"/print-strip-cards.html", "/print-world-cards.html"} { // they hold what pupils are to find out
		if staff[sheet] == "" || first[sheet] != "" {
			t.Errorf("%s is not for staff alone", sheet)
		}
	}
	must(t, "press", "--staff")
	for name, text := range tree(t, "handbook") {
		if first[name] != text {
			t.Errorf("%s differs between two pressings", name)
		}
	}
	for name, text := range tree(t, "handbook-staff") {
		if staff[name] != text {
			t.Errorf("staff edition: %s differs between two pressings", name)
		}
	}
}

// forStaffInDemo are the pages of the demo that the class edition is without, because their
// lesson block says so, and noonbook's own page for whoever edits the handbook.
func forStaffInDemo(t *testing.T) map[string]bool {
	t.Helper()
	pages := map[string]bool{"/reference.html": true}
	files, err := fs.Glob(content.Files(), "*.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		text, err := fs.ReadFile(content.Files(), file)
		if err != nil {
			t.Fatal(err)
		}
		if strings.Contains(string(text), "\nreader = \"staff\"\n") {
			pages["/"+stem(strings.TrimSuffix(file, ".md"))+".html"] = true
		}
	}
	return pages
}

// No page of a handbook loads anything from a network: no address but in links
// to follow, and no script but the handbook's own file.
func TestPagesLoadNothing(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "out")
	must(t, "press", "--content", "../../content", "--out", dir)
	loads := regexp.MustCompile(`(src|srcset|data|poster|action|xlink:href)="?(https?:)?//|url\(|@import|<script|<iframe|<link [^>]*href="(https?:)?//`)
	own := strings.NewReplacer(`<script src="noonbook.js" defer>`, "", `<script src="noonbook.js" defer blocking="render">`, "", `<script src="room.js" defer>`, "", `<script type="application/ld+json">`, "")
	pages := 0
	for name, text := range tree(t, dir) {
		if ext := filepath.Ext(name); ext == ".html" || ext == ".css" || ext == ".svg" {
			pages++
			text = own.Replace(text)
			if m := loads.FindString(text); m != "" {
				t.Errorf("%s loads something: %s", name, m)
			}
		}
	}
	if pages < 8 {
		t.Errorf("only %d files were looked at", pages)
	}
}

// Every link between pages leads to a file, and to an anchor that is there.
func TestLinksLead(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "out")
	must(t, "press", "--staff", "--content", "../../content", "--out", dir)
	for _, edition := range []string{dir, dir + "-staff"} {
		linksLead(t, tree(t, edition))
	}
}

func linksLead(t *testing.T, files map[string]string) {
	t.Helper()
	links, checked := regexp.MustCompile(`(?:href|src)="([^"#:]*)(#[^"]*)?"`), 0
	for name, text := range files {
		if filepath.Ext(name) != ".html" {
			continue
		}
		for _, m := range links.FindAllStringSubmatch(text, -1) {
			target := text
			if m[1] != "" {
				var ok bool
				if target, ok = files["/"+m[1]]; !ok {
					t.Errorf("%s links to %s, which is not there", name, m[1])
					continue
				}
			}
			if m[2] != "" && !strings.Contains(target, `id="`+m[2][1:]+`"`) {
				t.Errorf("%s links to %s%s: no such anchor", name, m[1], m[2])
			}
			checked++
		}
	}
	if checked < 50 {
		t.Errorf("only %d links were checked", checked)
	}
}

// The demo as one file to mail is small, all links lead within it, and it and the
// zip are the same bytes every time.
func TestPressInOneFile(t *testing.T) {
	parent := t.TempDir()
	dir := filepath.Join(parent, "out")
	press := []string{"press", "--content", "../../content", "--out", dir, "--staff", "--single", "--zip"}
	must(t, press...)
	first := tree(t, parent)
	must(t, press...)
	again := tree(t, parent)
	for _, name := range []string{"/out.html", "/out-staff.html", "/out.zip", "/out-staff.zip"} {
		page := first[name]
		// 4 MB go by mail everywhere: attachments of 10 MB are refused in places, and a
		// third is added on the way (from memory).
		if len(page) < 10_000 || len(page) > 4_000_000 {
			t.Errorf("%s has %d bytes", name, len(page))
		}
		if again[name] != page {
			t.Errorf("%s differs between two pressings", name)
		}
	}
	for _, name := range []string{"/out.html", "/out-staff.html"} {
		names := map[string]int{}
		for _, m := range regexp.MustCompile(` id="([^"]*)"`).FindAllStringSubmatch(first[name], -1) {
			names[m[1]]++
			if names[m[1]] == 2 {
				t.Errorf("%s: two places are named %s", name, m[1])
			}
		}
		links := 0
		for _, m := range regexp.MustCompile(`<[^>]* (?:href|src)="([^"]*)"`).FindAllStringSubmatch(first[name], -1) {
			links++
			if place, within := strings.CutPrefix(m[1], "#"); within && names[place] == 0 || !within && !regexp.MustCompile("^(data|https?|mailto):").MatchString(m[1]) {
				t.Errorf("%s: %.60s leads nowhere", name, m[1])
			}
		}
		if links < 200 {
			t.Errorf("%s: only %d links were checked", name, links)
		}
		if noindex := strings.Contains(first[name], `name="robots" content="noindex"`); noindex != (name == "/out-staff.html") {
			t.Errorf("%s: kept out of indexes is %v", name, noindex)
		}
	}
}

// The school's crest stands on every page with its size, and its colour in the
// style sheet, darkened where it is too pale, which is told.
func TestSchoolsOwnLook(t *testing.T) {
	dir := folder(t, map[string]string{"1-a.md": lesson + "![A leaf](leaf.svg)\n", "leaf.svg": `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 1"/>`, "our crest.svg": `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 2 3"/>`})
	name := filepath.Join(dir, "unit.toml")
	settings, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	write := func(colour, crest string) {
		own := fmt.Sprintf("[school]\ncolour = %q\ncrest = %q\n", colour, crest)
		if err := os.WriteFile(name, []byte(strings.Replace(string(settings), "[school]\n", own, 1)), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	write("#ffe000", "our crest.svg")
	out := filepath.Join(t.TempDir(), "handbook")
	code, _, errs := noonbook(t, "press", "--content", dir, "--out", out)
	if code != done || !strings.Contains(errs, "unit.toml:6:10: warning: school.colour #ffe000 is too pale for words on paper (1.3 to 1") {
		t.Errorf("exit %d, says %s", code, errs)
	}
	files := tree(t, out)
	for file, want := range map[string]string{
		"/index.html":    `<img class="crest" src="our%20crest.svg" alt width="1200" height="1800"> `,
		"/a.html":        `<img src="leaf.svg" alt="A leaf" width="1200" height="300">`,
		"/noonbook.css":  "--cover-band:#ffe000;",
		"/our crest.svg": "<svg",
	} {
		if !strings.Contains(files[file], want) {
			t.Errorf("%s lacks %s", file, want)
		}
	}
	for _, c := range []struct{ colour, crest, want string }{
		{"yellow", "", `unit.toml:6:10: school.colour "yellow" is no colour`},
		{"", "none.png", `unit.toml:7:9: school.crest: there is no file none.png`},
		{"", "../crest.svg", `school.crest "../crest.svg" is no SVG, PNG or JPEG file beside unit.toml`},
		{"", "1-a.md", `school.crest "1-a.md" is no SVG`},
	} {
		write(c.colour, c.crest)
		if code, _, errs := noonbook(t, "proof", dir); code != contentFault || !strings.Contains(errs, c.want) {
			t.Errorf("%v: exit %d, says %s", c, code, errs)
		}
	}
}

const lesson = "```lesson\ntitle = \"A lesson\"\n```\n\n"

const southern = `unit.title = "T"
school.name = "S"
school.latitude = -45.87
school.longitude = 170.5
school.time_zone = "Pacific/Auckland"
[term]
first_day = 2027-05-03
last_day = 2027-05-28
`

func TestBadInput(t *testing.T) {
	outside := filepath.Join(t.TempDir(), "secret.md")
	if err := os.WriteFile(outside, []byte(lesson), 0o666); err != nil {
		t.Fatal(err)
	}
	linked := folder(t, map[string]string{"1-a.md": lesson})
	if err := os.Symlink(outside, filepath.Join(linked, "2-b.md")); err != nil {
		t.Fatal(err)
	}
	bare := t.TempDir()
	for _, c := range []struct {
		name, dir, want string
		code            int
	}{
		{"empty folder", bare, "unit.toml: the file is missing", contentFault},
		{"no lessons", folder(t, nil), "no lessons are here", contentFault},
		{"no folder", filepath.Join(bare, "none"), "there is no folder", wrongUse},
		{"zone misspelt", folder(t, map[string]string{"1-a.md": lesson, "unit.toml": strings.Replace(southern, "Auckland", "Auklan", 1)}), "unit.toml:5:20: school.time_zone \"Pacific/Auklan\" is not in the IANA time zone database", contentFault},
		{"decimal comma", folder(t, map[string]string{"1-a.md": "```lesson\ntitle = \"A\"\ndate = 2027-05-07\n```\n", "unit.toml": strings.Replace(southern, "-45.87", "-45,87", 1)}), "unit.toml:3:19: school.latitude is -45,87; write -45.87, with a point in place of the comma", contentFault},
		{"empty settings", folder(t, map[string]string{"1-a.md": lesson, "unit.toml": ""}), "unit.toml:1:1: [school] is missing: school.latitude, a number from −90° to 90°", contentFault},
		{"settings of another encoding", folder(t, map[string]string{"1-a.md": lesson, "unit.toml": "\xff\xfe"}), "unit.toml:1:1: byte 0xff is not UTF-8", contentFault},
		{"empty lesson", folder(t, map[string]string{"1-a.md": ""}), "1-a.md:1:1: the file does not begin with a ```lesson block", contentFault},
		{"50 MB", folder(t, map[string]string{"1-a.md": lesson + strings.Repeat("A line of text.\n", 50<<20/16)}), "1-a.md: the file has 51200 kB; up to 512 kB are read", contentFault},
		{"lesson outside by a link", linked, "2-b.md: the file leads outside the content folder", contentFault},
		{"byte of another encoding", folder(t, map[string]string{"1-a.md": lesson + "caf\xe9"}), "1-a.md:5:4: byte 0xe9 is not UTF-8", contentFault},
		{"quotes without end", folder(t, map[string]string{"1-a.md": lesson + strings.Repeat("> ", 100000)}), "1-a.md:5:1: quotes and lists within one another, more than 100 deep", contentFault},
		{"index", folder(t, map[string]string{"index.md": lesson}), "index is the name of the cover", contentFault},
		{"two of one name", folder(t, map[string]string{"a.md": lesson, "b/a.md": lesson}), "two lessons would be the page a.html", contentFault},
		{"no lesson times", folder(t, map[string]string{"1-a.md": lesson, "unit.toml": southern + "lesson_times = []\n"}), "unit.toml:9:16: term.lesson_times is empty", contentFault},
		{"lesson times over one another", folder(t, map[string]string{"1-a.md": lesson, "unit.toml": southern + "lesson_times = [\"9:00-9:50\", \"9:30-10:20\"]\n"}), "unit.toml:9:30: term.lesson_times: this one begins before the one before it ends", contentFault},
		{"no school day", folder(t, map[string]string{"1-a.md": lesson, "unit.toml": southern + "school_days = [\"sunday\"]\ndays_off = [2027-05-09, 2027-05-16, 2027-05-23]\n"}), "unit.toml:8:12: there is no school day from 2027-05-03 to 2027-05-28", contentFault},
		{"a term of years", folder(t, map[string]string{"1-a.md": lesson, "unit.toml": strings.Replace(southern, "2027-05-28", "2029-05-28", 1)}), "unit.toml:8:12: term.last_day is 756 days after term.first_day; a unit may last up to 400", contentFault},
		{"a day off", folder(t, map[string]string{"1-a.md": "```lesson\ntitle = \"A\"\ndate = 2027-05-07\n```\n", "unit.toml": southern + "days_off = [2027-05-07]\n"}), "1-a.md:3:8: lesson: date 2027-05-07 is a Friday, not a school day", contentFault},
		{"group of nobody", folder(t, map[string]string{"1-a.md": lesson, "unit.toml": southern + "[class]\ngroup_size = 0\n"}), "unit.toml:10:14: class.group_size 0 is outside 1 to 30", contentFault},
		{"group above the class", folder(t, map[string]string{"1-a.md": lesson, "unit.toml": southern + "[class]\npupils = 4\ngroup_size = 5\n"}), "unit.toml:11:14: class.group_size 5 is more than the 4 of class.pupils", contentFault},
		{"a crowd of lessons", folder(t, map[string]string{"1-a.md": lesson, "2-b.md": lesson, "3-c.md": lesson, "unit.toml": strings.Replace(southern, "2027-05-28", "2027-05-04", 1)}), "3-c.md:2:9: lesson: no school day is left for it before term.last_day 2027-05-04; one more school day or term.lessons_a_day = 2 would do", contentFault},
		{"visits", folder(t, map[string]string{"1-a.md": "```lesson\ntitle = \"A\"\nvisits = 3\n```\n", "unit.toml": southern + "lesson_times = [\"9:00-9:50\", \"10:00-10:50\"]\n"}), "1-a.md:2:9: lesson: no school day has lesson times enough for it", contentFault},
		{"follows nothing", folder(t, map[string]string{"1-a.md": lesson, "2-b.md": "```lesson\ntitle = \"A\"\nfollows = \"1-b.md\"\n```\n"}), "2-b.md:3:11: lesson: follows \"1-b.md\" is no lesson of the unit; did you mean \"1-a.md\"?", contentFault},
		{"follows a later one", folder(t, map[string]string{"1-a.md": "```lesson\ntitle = \"A\"\nfollows = \"2-b.md\"\n```\n", "2-b.md": lesson}), "1-a.md:3:11: lesson: follows wants a lesson before this one, and \"A lesson\" is not", contentFault},
		{"need misspelt", folder(t, map[string]string{"1-a.md": "```lesson\ntitle = \"A\"\nneeds = [\"sum\"]\n```\n"}), "1-a.md:3:10: lesson: needs \"sum\" is unknown, want \"sun\", \"moon\", \"dark\" or \"dry\"", contentFault},
		{"key misspelt", folder(t, map[string]string{"1-a.md": "```lesson\ntitle = \"A\"\nday_after = 2\n```\n"}), "1-a.md:3:1: lesson: day_after is not a key; did you mean \"days_after\"?", contentFault},
		{"more lessons than days", folder(t, map[string]string{"1-a.md": "```lesson\ntitle = \"A\"\ndate = 2027-05-28\n```\n", "2-b.md": lesson}), "2-b.md:2:9: lesson: no school day is left for it", contentFault},
	} {
		t.Run(c.name, func(t *testing.T) {
			out := filepath.Join(t.TempDir(), "handbook")
			code, _, errs := noonbook(t, "press", "--content", c.dir, "--out", out)
			if code != c.code || !strings.Contains(errs, c.want) {
				t.Errorf("exit %d, says %s", code, errs)
			}
			if _, err := os.Stat(out); err == nil {
				t.Error("a handbook was written")
			}
			code, _, errs = noonbook(t, "proof", c.dir)
			if code != c.code || !strings.Contains(errs, c.want) || strings.Contains(errs, "0000-00-00") {
				t.Errorf("proof: exit %d, says %s", code, errs)
			}
		})
	}
}

// A byte order mark and line ends of other systems are no problem, and places
// stay right behind them.
func TestMarkAndLineEnds(t *testing.T) {
	text := lesson + "One line\nanother {sun-day.noon}.\n"
	dos := "\ufeff" + strings.ReplaceAll(text, "\n", "\r\n")
	out, other := filepath.Join(t.TempDir(), "handbook"), filepath.Join(t.TempDir(), "handbook")
	must(t, "press", "--content", folder(t, map[string]string{"1-a.md": dos}), "--out", out)
	must(t, "press", "--content", folder(t, map[string]string{"1-a.md": text}), "--out", other)
	if got, want := tree(t, out)["/a.html"], tree(t, other)["/a.html"]; got != want || got == "" {
		t.Errorf("got  %s\nwant %s", got, want)
	}
	_, _, errs := noonbook(t, "proof", folder(t, map[string]string{"1-a.md": strings.ReplaceAll(dos, "noon", "nooon")}))
	if !strings.Contains(errs, `1-a.md:6:18: sun-day has no fact "nooon"; did you mean "noon"?`) {
		t.Errorf("it says %s", errs)
	}
}

// A file that no lesson refers to stays behind; one that is referred to comes.
func TestOnlyWhatIsReferredToIsCopied(t *testing.T) {
	dir := folder(t, map[string]string{
		"1-a.md":       lesson + "![a leaf](art/leaf.svg) and [a list](list.csv)\n",
		"art/leaf.svg": "<svg xmlns=\"http://www.w3.org/2000/svg\"/>",
		"list.csv":     "a,b\r\n",
		"content.go":   "package content",
		"notes.txt":    "private",
	})
	out := filepath.Join(t.TempDir(), "handbook")
	must(t, "press", "--content", dir, "--out", out)
	files := tree(t, out)
	for name, want := range map[string]bool{"/art-leaf.svg": true, "/list.csv": true, "/content.go": false, "/notes.txt": false, "/unit.toml": false} {
		if _, ok := files[name]; ok != want {
			t.Errorf("%s is there: %v", name, ok)
		}
	}
	if !strings.Contains(files["/a.html"], `src="art-leaf.svg"`) {
		t.Error("the picture's name was not followed")
	}
}

func TestPressLeavesSomeonesFolderAlone(t *testing.T) {
	dir := folder(t, map[string]string{"1-a.md": lesson})
	out := folder(t, map[string]string{"thesis.txt": "my own"})
	before := tree(t, out)
	code, _, errs := noonbook(t, "press", "--content", dir, "--out", out)
	if code != wrongUse || !strings.Contains(errs, "holds files that noonbook did not write") {
		t.Errorf("exit %d, says %s", code, errs)
	}
	if after := tree(t, out); len(after) != len(before) || after["/thesis.txt"] != "my own" {
		t.Errorf("the folder now holds %v", after)
	}
}
