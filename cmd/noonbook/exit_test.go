package main

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"noonbook/build/output"
)

// What the command ends with, and what it leaves behind: 0 done, 1 problems in the
// content, 2 wrong use, 3 the machine failed, as its help says.
func TestExitCodes(t *testing.T) {
	good := folder(t, map[string]string{"1-a.md": lesson + "Words.\n"})
	bad := folder(t, map[string]string{"1-a.md": lesson + "{sun-dya.noon}\n"})
	mine := filepath.Join(t.TempDir(), "mine")
	if err := os.WriteFile(mine, []byte("my own"), 0o666); err != nil {
		t.Fatal(err)
	}
	schools := listOf(t, townSchools)
	for _, c := range []struct {
		name string
		args []string
		code int
		says string // on the error stream
	}{
		{"press", []string{"press", "--content", good, "--out", filepath.Join(t.TempDir(), "h")}, 0, ""},
		{"press with flags behind", []string{"press", "--out", filepath.Join(t.TempDir(), "h"), "--content", good, "--zip", "--single"}, 0, ""},
		{"press with a problem", []string{"press", "--content", bad, "--out", filepath.Join(t.TempDir(), "h")}, 1, "1 problem, 0 warnings"},
		{"press over a file", []string{"press", "--content", good, "--out", mine}, 3, "looking into"},
		{"press below a file", []string{"press", "--content", good, "--out", filepath.Join(mine, "h")}, 3, "not a directory"},
		{"press from a file", []string{"press", "--content", mine, "--out", filepath.Join(t.TempDir(), "h")}, 3, "not a directory"},
		{"press from nowhere", []string{"press", "--content", filepath.Join(mine, "..", "none")}, 2, "there is no folder"},
		{"press a list that is not there", []string{"press", good, "--schools", filepath.Join(mine, "..", "none.csv")}, 2, "there is no list"},
		{"press a list that is a folder", []string{"press", good, "--schools", good}, 2, "is no file"},
		{"press a list that is none", []string{"press", good, "--schools", mine, "--out", filepath.Join(t.TempDir(), "d")}, 1, `the head "my own" is not a key of unit.toml`},
		{"press a list below a file", []string{"press", good, "--schools", schools, "--out", filepath.Join(mine, "d")}, 3, "not a directory"},
		{"press a list", []string{"press", good, "--schools", schools, "--out", filepath.Join(t.TempDir(), "d")}, 0, ""},
		{"press a share of nothing", []string{"press", good, "--part", "1/2"}, 2, "--part goes with --schools"},
		{"press a share that is none", []string{"press", good, "--schools", schools, "--part", "3/2"}, 2, "--part 3/2 is no share of the list"},
		{"press a share without an end", []string{"press", good, "--schools", schools, "--part", "3"}, 2, "--part 3 is no share of the list"},
		{"proof of a list", []string{"proof", good, "--schools", schools}, 0, ""},
		{"proof of a list that is none", []string{"proof", good, "--schools", mine}, 1, "is not a key"},
		{"proof", []string{"proof", good}, 0, ""},
		{"proof with a problem", []string{"proof", bad}, 1, `"sun-dya" is not a placeholder; did you mean "sun-day"?`},
		{"proof of nowhere", []string{"proof", filepath.Join(mine, "..", "none")}, 2, "there is no folder"},
		{"reckon", []string{"reckon", "class-facts", "--content", good}, 0, ""},
		{"reckon with a problem in a lesson that it does not read", []string{"reckon", "class-facts", "--content", bad}, 0, ""},
		{"reckon with a problem in a lesson that it reads", []string{"reckon", "unit-plan", "--content", bad}, 1, "sun-dya"},
		{"reckon what cannot be", []string{"reckon", "lens-power", "image_mm=100", "object_m=0.01", "object_error_mm=10000", "--content", good}, 2, "reckon lens-power: "},
		{"starter in a file", []string{"starter", mine}, 3, "looking into"},
		{"starter in two", []string{"starter", "a", "b"}, 2, "name one folder"},
		{"starter where files are", []string{"starter", good}, 2, "holds files already"},
		{"starter where one file is", []string{"starter", filepath.Dir(mine)}, 2, "holds files already, such as mine"},
		{"desk below no port", []string{"desk", "--content", good, "--port", "-1"}, 2, "port -1 is outside 0 to 65535"},
		{"desk above all ports", []string{"desk", "--content", good, "--port", "65536"}, 2, "port 65536 is outside 0 to 65535"},
		{"a flag of another verb", []string{"proof", "--staff"}, 2, "proof: flag provided but not defined"},
		{"a number that is none", []string{"desk", "--port", "x"}, 2, "desk: invalid value"},
	} {
		t.Run(c.name, func(t *testing.T) {
			code, out, errs := noonbook(t, c.args...)
			if code != c.code || !strings.Contains(errs, c.says) || c.says == "" && errs != "" {
				t.Errorf("exit %d, want %d\n%s%s", code, c.code, out, errs)
			}
		})
	}
	if text, err := os.ReadFile(mine); err != nil || string(text) != "my own" {
		t.Errorf("the file holds %q, %v", text, err)
	}
}

// A problem leaves the handbook that was there, in both editions and beside them;
// someone's own file beside it is left alone, and then nothing is written at all.
func TestPressLeavesTheOldHandbook(t *testing.T) {
	dir := folder(t, map[string]string{"1-a.md": lesson + "First words.\n"})
	parent := t.TempDir()
	out := filepath.Join(parent, "book")
	press := []string{"press", "--content", dir, "--out", out, "--staff", "--single", "--zip"}
	must(t, press...)
	before := tree(t, parent)
	for _, name := range []string{"/book/index.html", "/book-staff/index.html", "/book.html", "/book-staff.html", "/book.zip", "/book-staff.zip"} {
		if before[name] == "" {
			t.Errorf("%s was not written", name)
		}
	}
	same := func(when string) {
		t.Helper()
		after := tree(t, parent)
		for name, text := range before {
			if after[name] != text {
				t.Errorf("%s: %s changed", when, name)
			}
		}
		if len(after) != len(before) {
			t.Errorf("%s: there are %d files, and were %d", when, len(after), len(before))
		}
	}
	save := func(text string) {
		if err := os.WriteFile(filepath.Join(dir, "1-a.md"), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	save(lesson + "Second words {sun-dya.noon}.\n")
	if code, _, _ := noonbook(t, press...); code != contentFault {
		t.Errorf("exit %d", code)
	}
	same("with a problem")
	save(lesson + "Third words.\n")
	for _, name := range []string{"/book.zip", "/book/a.html"} {
		if err := os.WriteFile(parent+name, []byte("mine"), 0o666); err != nil {
			t.Fatal(err)
		}
		old := before[name]
		before[name] = "mine"
		if code, _, errs := noonbook(t, press...); code != wrongUse || !strings.Contains(errs, filepath.Base(name)) {
			t.Errorf("%s: exit %d, %s", name, code, errs)
		}
		same("with a file that someone changed, " + name)
		before[name] = old
		if err := os.WriteFile(parent+name, []byte(old), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	must(t, press...)
	if text := tree(t, parent)["/book/a.html"]; !strings.Contains(text, "Third words") || strings.Contains(text, "First words") {
		t.Error("the new handbook did not take its place")
	}
}

// A teacher is told where a file is that was saved while noonbook wrote.
func TestTellKept(t *testing.T) {
	var out strings.Builder
	tellKept(&out, []output.Kept{{Name: "/home/book/notes.txt", Now: "/home/book/notes.txt"}, {Name: "/home/book/a.html", Now: "/home/book/a-kept.html"}})
	const want = `noonbook: /home/book/notes.txt was saved while the handbook was written; it is still there
noonbook: /home/book/a.html was changed while the handbook was written; your version is kept as /home/book/a-kept.html
`
	if out.String() != want {
		t.Errorf("it says\n%s", &out)
	}
}

// Beside the folder stands what was asked for, and nothing else.
func TestPressWritesWhatIsAskedFor(t *testing.T) {
	dir := folder(t, map[string]string{"1-a.md": lesson})
	for _, c := range []struct{ flags, want string }{
		{"", "book"}, {"--zip", "book book.zip"}, {"--single", "book book.html"}, {"--staff", "book book-staff"}, {"--staff --zip", "book book-staff book-staff.zip book.zip"},
	} {
		parent := t.TempDir()
		must(t, append([]string{"press", "--content", dir, "--out", filepath.Join(parent, "book")}, strings.Fields(c.flags)...)...)
		entries, err := os.ReadDir(parent)
		if err != nil {
			t.Fatal(err)
		}
		var names []string
		for _, e := range entries {
			names = append(names, e.Name())
		}
		if got := strings.Join(names, " "); got != c.want {
			t.Errorf("%s writes %s, want %s", c.flags, got, c.want)
		}
	}
}

// Proof looks into answers and staff notes too, which the class edition does not
// have, and press says the same when it presses for staff.
func TestProofLooksIntoAnswers(t *testing.T) {
	const impossible = "{lens-power.focal image_mm=100 object_m=0.01 object_error_mm=10000}"
	for _, word := range []string{"answer", "staff"} {
		dir := folder(t, map[string]string{"1-a.md": lesson + "How far?\n\n```" + word + "\n" + impossible + "\n```\n"})
		for _, args := range [][]string{{"proof", dir}, {"press", "--staff", "--content", dir, "--out", filepath.Join(t.TempDir(), "book")}} {
			if code, _, errs := noonbook(t, args...); code != contentFault || !strings.Contains(errs, "1-a.md:8:2: lens-power: ") {
				t.Errorf("%s, %s: exit %d, %s", word, args[0], code, errs)
			}
		}
	}
}

// What press says of its work is true of what it wrote.
func TestPressCountsWhatItWrote(t *testing.T) {
	dir := folder(t, map[string]string{"1-a.md": lesson + "At {sun-day.noon} or {sun-day.noon}.\n\n```compute class-facts\n```\n", "2-b.md": "```lesson\ntitle = \"B\"\nneeds = [\"dark\"]\ndate = 2027-05-04\nstart = \"12:00\"\n```\n"})
	for _, staff := range []bool{false, true} {
		out := filepath.Join(t.TempDir(), "book")
		args := []string{"press", "--content", dir, "--out", out}
		if staff {
			args = append(args, "--staff")
		}
		said := must(t, args...)
		files := tree(t, out)
		if staff {
			for name, text := range tree(t, out+"-staff") {
				files["staff"+name] = text
			}
		}
		pages, size := 0, 0
		for name, text := range files {
			if strings.HasSuffix(name, ".html") {
				pages++
			}
			if !strings.HasSuffix(name, "/.noonbook-files") {
				size += len(text)
			}
		}
		m := regexp.MustCompile(`^(\d+) pages, (\d+) computed values, (\d+) warnings?, (\d+) kB in \d+ ms: open (.*)\n$`).FindStringSubmatch(said)
		warnings := "1" // the lesson at noon that needs the dark, told once for both editions
		if m == nil || m[1] != fmt.Sprint(pages) || m[4] != fmt.Sprintf("%.0f", float64(size)/1e3) || m[5] != filepath.Join(out, "index.html") || m[3] != warnings {
			t.Errorf("it says %q of %d pages and %d bytes", said, pages, size)
		}
		if !staff && m != nil && m[2] != "3" {
			t.Errorf("it says %q of 3 uses of placeholders", said)
		}
	}
}

// The class edition lists and holds nothing of the staff edition: no page, no
// table and no file that only answers show.
func TestClassEditionHasNoStaffFiles(t *testing.T) {
	dir := folder(t, map[string]string{
		"1-a.md":   lesson + "How many?\n\n````answer lines=2\n[list](own.csv)\n\n```compute class-facts\n```\n\n```compute strip-table\nshow = [\"places\"]\n```\n````\n",
		"own.csv":  "a,b\r\n",
		"also.csv": "c,d\r\n",
	})
	out := filepath.Join(t.TempDir(), "book")
	must(t, "press", "--content", dir, "--out", out, "--staff")
	class, staff := tree(t, out), tree(t, out+"-staff")
	for name, want := range map[string][2]bool{
		"/own.csv": {false, true}, "/also.csv": {false, false}, "/strip-table-places.csv": {false, true}, "/day-a.html": {false, true}, "/pupil-a.html": {true, true}, "/a.html": {true, true}, "/unit.ics": {true, true},
	} {
		_, inClass := class[name]
		_, inStaff := staff[name]
		if inClass != want[0] || inStaff != want[1] {
			t.Errorf("%s is in the class edition %v, in the staff edition %v", name, inClass, inStaff)
		}
	}
	for name, text := range class {
		if strings.Contains(text, "day-a.html") || strings.Contains(text, "own.csv") || strings.Contains(text, "strip-table-places") {
			t.Errorf("%s of the class edition names a file of the staff edition", name)
		}
	}
}

// Pairs of the command line stand for arguments and settings of one evaluation,
// and say what they are of.
func TestReckonPairs(t *testing.T) {
	dir := folder(t, map[string]string{"1-a.md": lesson})
	facts := func(args ...string) map[string]any {
		t.Helper()
		var r reckoned
		if err := json.Unmarshal([]byte(must(t, append(args, "--json", "--content", dir)...)), &r); err != nil {
			t.Fatal(err)
		}
		got := map[string]any{}
		for name, f := range r.Facts {
			got[name], got[name+" text"] = f.Value, f.Text
		}
		return got
	}
	for _, c := range []struct {
		args       []string
		fact, want string
	}{
		{[]string{"reckon", "class-facts"}, "pupils", "24"},
		{[]string{"reckon", "class-facts", "class.pupils=7"}, "pupils", "7"},
		{[]string{"reckon", "class-facts", "class.pupils=7", "class.group_size=2"}, "groups", "4"}, // 3.5 is 4
		{[]string{"reckon", "class-facts", `school.name="A = B"`}, "school", "A = B"},
		{[]string{"reckon", "--json", "class-facts", "school.name=A B"}, "school", "A B"},
		{[]string{"reckon", "place-facts", "school.latitude=12.5"}, "latitude", "12.5"},
		{[]string{"reckon", "place-facts", "school.latitude=-12.5"}, "latitude text", "12.50° south"},
		{[]string{"reckon", "dial-table", "school.measure=customary", "stock.style_mm=254"}, "gnomon_style text", "10 in"},
		{[]string{"reckon", "place-facts", "school.language=fr"}, "latitude text", "45,87° sud"},
		// The first day of the term, 3 May 2027, is winter time there, and 7 February summer time.
		{[]string{"reckon", "place-facts"}, "utc_offset", "43200"},
		{[]string{"reckon", "place-facts", "date=2027-02-07"}, "utc_offset", "46800"},
		{[]string{"reckon", "place-facts", "school.time_zone=UTC"}, "utc_offset", "0"},
	} {
		got := strings.ReplaceAll(fmt.Sprint(facts(c.args...)[c.fact]), "\u00a0", " ")
		if got != c.want {
			t.Errorf("%v: %s is %s, want %s", c.args, c.fact, got, c.want)
		}
	}
	for _, c := range []struct{ args, want string }{
		{"class-facts class.pupls=7", `reckon class-facts: class.pupls is not a key; did you mean "class.pupils"?`},
		{"class-facts class.pupils=501", "reckon class-facts: class.pupils 501 is outside 0 to 500"},
		{"class-facts class.pupils=7.5", `reckon class-facts: class.pupils is 7.5, want a whole number from 0 to 500`},
		{"class-facts school.latitude=7", "reckon class-facts: school.latitude is not a key"},
		{"class-facts =7", "reckon class-facts: "},
		{"sun-day date=2027-02-30", `reckon sun-day: date is "2027-02-30", want a date such as 2027-04-20`},
	} {
		code, _, errs := noonbook(t, append([]string{"reckon", "--content", dir}, strings.Fields(c.args)...)...)
		if code != wrongUse || !strings.Contains(errs, c.want) {
			t.Errorf("%s: exit %d, %s", c.args, code, errs)
		}
	}
}

// A golden problem points at what it says: its line is that of the file, its caret
// stands below the column that it names, and a word that it quotes as found begins
// there.
func TestGoldenProblemsPointAtTheirPlace(t *testing.T) {
	golden, err := os.ReadFile("../../testdata/golden/broken.txt")
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(string(golden), "\n")
	place := regexp.MustCompile(`^(\S+):(\d+):(\d+): (.*)$`)
	looked, quoted := 0, 0
	for i, text := range lines {
		m := place.FindStringSubmatch(text)
		if m == nil || i+2 >= len(lines) || !strings.HasPrefix(lines[i+1], "    ") {
			continue
		}
		src, err := os.ReadFile(m[1])
		if err != nil {
			t.Fatal(err)
		}
		var n, column int
		fmt.Sscan(m[2], &n)
		fmt.Sscan(m[3], &column)
		all := strings.Split(string(src), "\n")
		if n > len(all) || column > len(all[n-1])+1 {
			t.Errorf("%s points beyond the file", text)
			continue
		}
		there := all[n-1][column-1:]
		shown, caret := strings.TrimPrefix(lines[i+1], "    "), strings.TrimPrefix(lines[i+2], "    ")
		at := len([]rune(caret)) - 1
		if strings.Trim(caret, " ") != "^" || at > len([]rune(shown)) {
			t.Errorf("%s: the caret is %q", text, caret)
			continue
		}
		looked++
		rest := strings.TrimSuffix(string([]rune(shown)[at:]), "…")
		if rest = strings.TrimPrefix(rest, "\ufffd"); len(rest) == 0 || there[0] >= 0x80 { // what is no UTF-8 is shown as a sign
			continue
		}
		if !strings.HasPrefix(there, strings.TrimRight(rest, " ")[:min(len(rest), 12)]) && !strings.HasPrefix(there, rest) {
			t.Errorf("%s\npoints at %.20q, and the caret stands below %.20q", text, there, rest)
		}
		if found := regexp.MustCompile(`^(?:[\w.-]+: )?(?:\w+ )?"([^"]+)" is (?:no|not|unknown|too much)`).FindStringSubmatch(m[4]); found != nil {
			quoted++
			if !strings.HasPrefix(strings.TrimLeft(there, `"'`), found[1]) {
				t.Errorf("%s: there stands %.20q", text, there)
			}
		}
	}
	if looked < 30 || quoted < 5 {
		t.Errorf("only %d places and %d words were looked at", looked, quoted)
	}
}
