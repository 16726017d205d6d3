package main

import (
	"bytes"
	"context"
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"noonbook/build/district"
	"noonbook/build/form"
	"noonbook/build/output"
	"noonbook/build/school"
)

// townSchools are schools that differ in much. What is empty is that of unit.toml.
var townSchools = [][]string{
	{"folder", "town", "school.name", "school.latitude", "school.longitude", "school.time_zone", "school.language", "school.measure", "school.clock", "school.dates", "school.paper", "class.pupils", "term.first_day", "term.last_day", "term.days_off", "term.lesson_times"},
	{"", "Dunedin", "", "", "", "", "", "", "", "", "", "", "", "", "", ""},
	{"aulnes", "Moncton", "École des Aulnes", "46.09", "-64.77", "America/Moncton", "fr", "", "", "", "Letter", "23", "2027-04-26", "2027-05-21", "2027-05-17", "9:10-10:00; 13:15-14:05"},
	{"", "", "Prairie “Wind” School", "41.88", "-93.1", "America/Chicago", "", "customary", "12-hour", "month first", "Letter", "31", "", "", "2027-05-07; 2027-05-10", "8:30-9:20"},
	{"", "Nairobi", "Acacia Road School", "-1.29", "36.82", "Africa/Nairobi", "en", "metric", "", "", "A4", "40", "2027-05-03", "2027-05-28", "", ""},
}

var townFolders = []string{"tussock-point-school", "aulnes", "prairie-wind-school", "acacia-road-school"}

// listOf writes a list of schools.
func listOf(t *testing.T, rows [][]string) string {
	t.Helper()
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	if err := w.WriteAll(rows); err != nil {
		t.Fatal(err)
	}
	name := filepath.Join(t.TempDir(), "schools.csv")
	lay(t, name, b.String())
	return name
}

func lay(t *testing.T, name, text string) {
	t.Helper()
	if err := os.WriteFile(name, []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
}

// townUnit is a unit in which something stands at some schools only.
func townUnit(t *testing.T) string {
	t.Helper()
	return folder(t, map[string]string{
		"1-a.md": lesson + "Noon at {sun-day.noon}.\n\n```only place-facts.south\nFar south.\n```\n\n```compute dial-day\n```\n\n```answer lines=2\nAnswer words\n```\n",
		"2-b.md": "```lesson\ntitle = \"B\"\nonly = \"place-facts.north\"\n```\n\n## Steps\n\nFar north.\n\n```compute strip-balls\n```\n",
	})
}

// Each school has, byte for byte, what a press of a folder gives whose unit.toml says what
// its row says: in French, in customary measure, south of the equator and near it.
func TestDistrictIsAsManyPresses(t *testing.T) {
	unit, list := townUnit(t), listOf(t, townSchools)
	out := filepath.Join(t.TempDir(), "town")
	zips := filepath.Join(t.TempDir(), "zips")
	must(t, "press", unit, "--schools", list, "--out", out, "--staff", "--single")
	must(t, "press", unit, "--schools", list, "--out", zips, "--zip")
	alone := t.TempDir()
	for i, row := range townSchools[1:] {
		changes := form.Values{}
		for k, cell := range row {
			if f, ok := school.Settings().Field(townSchools[0][k]); ok && cell != "" {
				v, complaint := f.ParseText(strings.ReplaceAll(cell, ";", ","))
				if complaint != "" {
					t.Fatal(complaint)
				}
				changes[f.Name()] = v
			}
		}
		dir := t.TempDir()
		if err := os.CopyFS(dir, os.DirFS(unit)); err != nil {
			t.Fatal(err)
		}
		src, err := os.ReadFile(filepath.Join(unit, "unit.toml"))
		if err != nil {
			t.Fatal(err)
		}
		text, err := school.Rewrite(src, changes)
		if err != nil {
			t.Fatal(err)
		}
		lay(t, filepath.Join(dir, "unit.toml"), string(text))
		must(t, "press", dir, "--out", filepath.Join(alone, townFolders[i]), "--staff", "--single", "--zip")
	}
	want, got, packed := tree(t, alone), tree(t, out), tree(t, zips)
	for name, text := range want {
		in := got
		if strings.HasSuffix(name, "-staff.zip") {
			continue
		} else if strings.HasSuffix(name, ".zip") {
			in = packed
		}
		if in[name] != text {
			t.Errorf("%s is another than one press alone gives (%d and %d bytes)", name, len(in[name]), len(text))
		}
	}
	for name := range got {
		if want[name] == "" && name != "/index.html" && !strings.HasPrefix(name, "/.noonbook-district/") {
			t.Errorf("%s is written by the district alone", name)
		}
	}
	for name := range packed {
		if name != "/index.html" && !strings.HasPrefix(name, "/.noonbook-district/") && !strings.HasSuffix(name, ".zip") {
			t.Errorf("%s is written beside archives", name)
		}
	}
	if !strings.Contains(got["/aulnes/a.html"], "Midi") && !strings.Contains(got["/aulnes/index.html"], "lang=\"fr\"") || !strings.Contains(got["/prairie-wind-school/b.html"], "Far north") || got["/tussock-point-school/b.html"] != "" {
		t.Error("the schools are not those that the list describes")
	}
}

// pressedTown presses a list and returns what it says.
func pressedTown(t *testing.T, want int, args ...string) (out, errs string) {
	t.Helper()
	code, out, errs := noonbook(t, append([]string{"press"}, args...)...)
	if code != want {
		t.Fatalf("%v: exit %d, want %d\n%s%s", args, code, want, out, errs)
	}
	return out, errs
}

// A school is pressed again when something has changed that went into its handbook, or
// when a file of it is missing; no other school is touched then.
func TestDistrictLeavesTheUnchangedAlone(t *testing.T) {
	unit, list := townUnit(t), listOf(t, townSchools)
	out := filepath.Join(t.TempDir(), "town")
	args := []string{unit, "--schools", list, "--out", out}
	says := func(want string, more ...string) {
		t.Helper()
		got, _ := pressedTown(t, done, append(args, more...)...)
		if !strings.HasPrefix(got, want+", ") {
			t.Errorf("it says %q, want %q", got, want)
		}
	}
	says("4 schools: 4 pressed, 0 unchanged")
	before := tree(t, out)
	old := time.Now().Add(-time.Hour)
	for _, name := range townFolders {
		if err := os.Chtimes(filepath.Join(out, name, "index.html"), old, old); err != nil {
			t.Fatal(err)
		}
	}
	says("4 schools: 0 pressed, 4 unchanged")

	rows := append([][]string(nil), townSchools...)
	rows[3] = append([]string(nil), rows[3]...)
	rows[3][11] = "30"
	rows[2] = append([]string(nil), rows[2]...)
	rows[2][1] = "another town, which is on the board's page alone"
	args[2] = listOf(t, rows)
	says("4 schools: 1 pressed, 3 unchanged")
	for i, name := range townFolders {
		info, err := os.Stat(filepath.Join(out, name, "index.html"))
		if err != nil || info.ModTime().After(old.Add(time.Minute)) != (i == 2) {
			t.Errorf("%s was written anew: %v, %v", name, i != 2, err)
		}
	}
	args[2] = list
	says("4 schools: 1 pressed, 3 unchanged")

	for _, lost := range []string{"aulnes", "aulnes/a.html", "../town/.noonbook-district/aulnes/pressed"} {
		if err := os.RemoveAll(filepath.Join(out, lost)); err != nil {
			t.Fatal(err)
		}
		says("4 schools: 1 pressed, 3 unchanged")
	}
	for name, text := range tree(t, out) {
		if before[name] != text {
			t.Errorf("%s is not as it was", name)
		}
	}
	says("4 schools: 4 pressed, 0 unchanged", "--single")
	says("4 schools: 0 pressed, 4 unchanged", "--single")
	lay(t, filepath.Join(unit, "1-a.md"), lesson+"Other words.\n")
	says("4 schools: 4 pressed, 0 unchanged", "--single")
}

// Shares of a list write, file for file, what one run writes: the board's page and the
// records too. The board's page is whole behind every one of them.
func TestDistrictInParts(t *testing.T) {
	unit, list := townUnit(t), listOf(t, townSchools)
	whole, parts := filepath.Join(t.TempDir(), "town"), filepath.Join(t.TempDir(), "town")
	must(t, "press", unit, "--schools", list, "--out", whole, "--zip", "--single")
	want := tree(t, whole)
	for k := 3; k > 0; k-- {
		must(t, "press", unit, "--schools", list, "--out", parts, "--zip", "--single", "--part", fmt.Sprint(k, "/3"))
		if tree(t, parts)["/index.html"] != want["/index.html"] {
			t.Errorf("the board's page is another behind part %d", k)
		}
	}
	got := tree(t, parts)
	for name, text := range want {
		if got[name] != text {
			t.Errorf("%s is another in parts", name)
		}
	}
	if len(got) != len(want) {
		t.Errorf("parts write %d files, want %d", len(got), len(want))
	}
}

// What is wrong with a row is told at its cell, and the other schools have their
// handbooks; a school that left the list keeps its own.
func TestDistrictTellsBadRows(t *testing.T) {
	unit := townUnit(t)
	rows := append([][]string(nil), townSchools...)
	rows[2] = append([]string(nil), rows[2]...)
	rows[2][3], rows[2][5] = "146.09", "America/Monkton"
	list := listOf(t, rows)
	out := filepath.Join(t.TempDir(), "town")
	said, errs := pressedTown(t, contentFault, unit, "--schools", list, "--out", out)
	for _, want := range []string{
		list + ":3:34: school.latitude 146.09° is outside −90° to 90°\n    aulnes,Moncton,École des Aulnes,146.09,",
		list + `:3:48: "America/Monkton" is not in`,
	} {
		if want = strings.Replace(want, `: "America`, `: school.time_zone "America`, 1); !strings.Contains(errs, want) {
			t.Errorf("it does not say\n%s\nbut\n%s", want, errs)
		}
	}
	if !strings.HasPrefix(said, "4 schools: 3 pressed, 0 unchanged, 1 with problems, ") {
		t.Errorf("it says %q", said)
	}
	page := tree(t, out)["/index.html"]
	if !strings.Contains(page, "No handbook yet: line 3 of the list has a mistake.") || strings.Contains(page, "aulnes/index.html") || !strings.Contains(page, "acacia-road-school/index.html") {
		t.Error("the board's page does not name the school without a handbook")
	}
	gone, _ := pressedTown(t, done, unit, "--schools", listOf(t, append(append([][]string(nil), rows[:2]...), rows[4])), "--out", out)
	if !strings.HasPrefix(gone, "no longer in ") || !strings.Contains(gone, "left as they are: prairie-wind-school\n2 schools: 0 pressed, 2 unchanged, ") {
		t.Errorf("it says %q", gone)
	}
	if output.Trace(filepath.Join(out, "prairie-wind-school")) == "" {
		t.Error("the handbook of a school that left is not whole")
	}
	proofed, _, _ := noonbook(t, "proof", unit, "--schools", list)
	if proofed != contentFault {
		t.Errorf("proof ends with %d", proofed)
	}
}

// What every school has is told once, with how many have it.
func TestDistrictTellsOnceWhatManyHave(t *testing.T) {
	unit := folder(t, map[string]string{"1-a.md": lesson + "On 3 May 2026 {sun-day.noon}.\n"})
	rows := townSchools[:1:1]
	for i := range 30 {
		row := append([]string(nil), townSchools[4]...)
		row[2], row[3] = fmt.Sprint("School ", i), fmt.Sprint(-1-float64(i)/10)
		rows = append(rows, row)
	}
	list := listOf(t, rows)
	out, errs := pressedTown(t, done, unit, "--schools", list, "--out", filepath.Join(t.TempDir(), "town"))
	if strings.Count(errs, "warning") != 1 || !strings.Contains(errs, "3 May 2026 is outside the term, 2027-05-03 to 2027-05-28;") || !strings.Contains(errs, "(at 30 schools, the first School 0, "+list+":2)") {
		t.Errorf("it says\n%s", errs)
	}
	if !strings.HasPrefix(out, "30 schools: 30 pressed, 0 unchanged, 30 warnings in ") {
		t.Errorf("it says %q", out)
	}
	lay(t, filepath.Join(unit, "2-b.md"), "```lesson\ntitle = \"B\"\n```\n\n{sun-dya.noon}\n")
	out, errs = pressedTown(t, contentFault, unit, "--schools", list, "--out", filepath.Join(t.TempDir(), "town"))
	if strings.Count(errs, "sun-dya") != 2 || !strings.HasPrefix(out, "30 schools: 0 pressed, 0 unchanged, 30 with problems, ") { // the message and its line
		t.Errorf("it says\n%s%s", out, errs)
	}
}

// A folder that holds what noonbook did not write is not touched; somebody's file in one
// school's handbook keeps that one back alone.
func TestDistrictLeavesOthersFiles(t *testing.T) {
	unit, list := townUnit(t), listOf(t, townSchools)
	out := t.TempDir()
	lay(t, filepath.Join(out, "mine.txt"), "mine")
	_, errs := pressedTown(t, wrongUse, unit, "--schools", list, "--out", out)
	if !strings.Contains(errs, "holds files that noonbook did not write, such as mine.txt") || len(tree(t, out)) != 1 {
		t.Errorf("it says %q and leaves %v", errs, tree(t, out))
	}
	if err := os.Remove(filepath.Join(out, "mine.txt")); err != nil {
		t.Fatal(err)
	}
	must(t, "press", unit, "--schools", list, "--out", out)
	lay(t, filepath.Join(out, "aulnes", "mine.txt"), "mine")
	lay(t, filepath.Join(out, ".DS_Store"), "notes of a file manager")
	said, errs := pressedTown(t, contentFault, unit, "--schools", list, "--out", out)
	if !strings.HasPrefix(said, "4 schools: 0 pressed, 3 unchanged, 1 with problems") || !strings.Contains(errs, ":3:1: ") || !strings.Contains(errs, "such as mine.txt") {
		t.Errorf("it says %q, %q", said, errs)
	}
	if err := os.Remove(filepath.Join(out, "aulnes", "mine.txt")); err != nil {
		t.Fatal(err)
	}
	lay(t, filepath.Join(out, "index.html"), "my own page")
	if _, errs := pressedTown(t, wrongUse, unit, "--schools", list, "--out", out); !strings.Contains(errs, "index.html was not written by noonbook") {
		t.Errorf("it says %q", errs)
	}
	if text := tree(t, out)["/index.html"]; text != "my own page" {
		t.Errorf("the page holds %q", text)
	}
}

// One who stops the work has whole handbooks, and the next press goes on from there.
func TestDistrictStopped(t *testing.T) {
	unit := townUnit(t)
	rows := townSchools[:1:1]
	for i := range 24 {
		row := append([]string(nil), townSchools[4]...)
		row[2], row[3] = fmt.Sprint("School ", i), fmt.Sprint(-1-float64(i)/10)
		rows = append(rows, row)
	}
	list, out := listOf(t, rows), filepath.Join(t.TempDir(), "town")
	ctx, stop := context.WithCancel(context.Background())
	go func() {
		for ctx.Err() == nil {
			if _, err := os.Stat(filepath.Join(out, "school-1")); err == nil {
				stop()
			}
			time.Sleep(time.Millisecond)
		}
	}()
	var said, errs bytes.Buffer
	code := run(ctx, []string{"press", unit, "--schools", list, "--out", out}, &said, &errs)
	stop()
	if code != machineFault {
		t.Fatalf("exit %d: %s%s", code, &said, &errs)
	}
	whole := 0
	entries, err := os.ReadDir(out)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if strings.HasPrefix(e.Name(), "school-") {
			whole++
			if output.Trace(filepath.Join(out, e.Name())) == "" {
				t.Errorf("%s is not whole", e.Name())
			}
		}
	}
	if whole == 0 || whole == 24 {
		t.Errorf("%d handbooks are there", whole)
	}
	rest := must(t, "press", unit, "--schools", list, "--out", out)
	m := regexp.MustCompile(`^24 schools: (\d+) pressed, (\d+) unchanged`).FindStringSubmatch(rest)
	if m == nil || m[2] == "0" || m[1] == "0" {
		t.Errorf("it says %q", rest)
	}
}

// No byte of an answer or a staff note is in what a board may host: the class editions
// and, without staff editions, the page of the board.
func TestNothingLeaksFromADistrict(t *testing.T) {
	unraced(t)
	var words []string
	text := planted(everyCorner, &words)
	for n := 10; n >= 0; n-- {
		word := secret(1000 + n)
		text = strings.ReplaceAll(text, fmt.Sprint("SECRET", n), word)
		words = append(words, word)
	}
	unit := folder(t, map[string]string{"1-corners.md": text, "only-an-answer.svg": fmt.Sprintf(drawn, secret(2000)), "shared.svg": fmt.Sprintf(drawn, "for everyone")})
	words = append(words, secret(2000))
	list, parent := listOf(t, townSchools[:3]), t.TempDir()
	must(t, "press", unit, "--schools", list, "--out", filepath.Join(parent, "town"), "--staff", "--single")
	must(t, "press", unit, "--schools", list, "--out", filepath.Join(parent, "zips"), "--staff", "--zip")
	must(t, "press", unit, "--schools", list, "--out", filepath.Join(parent, "hosted"))
	staff, looked := "", 0
	for name, content := range tree(t, parent) {
		if strings.Contains(name, "-staff") {
			staff += content
			continue
		}
		looked++
		if noindex := strings.Contains(content, `name="robots" content="noindex"`); noindex != (name == "/town/index.html" || name == "/zips/index.html") {
			t.Errorf("%s: that search engines leave it out is %v", name, noindex)
		}
		for how, bytes := range unpacked(name, []byte(content)) {
			lower := strings.ToLower(string(bytes))
			for _, word := range words {
				if strings.Contains(lower, word[3:10]) {
					t.Errorf("%s of %s holds %s", how, name, word)
				}
			}
		}
	}
	if looked < 50 {
		t.Errorf("only %d files were looked through", looked)
	}
	for _, word := range words {
		if !strings.Contains(staff, word) {
			t.Errorf("%s is nowhere in the staff editions", word)
		}
	}
}

// The list of invented schools is sound, and one in a hundred has its handbook of the
// demo; all of them would take a minute.
func TestExampleDistrict(t *testing.T) {
	const list = "../../testdata/district/schools.csv"
	unit, err := filepath.Abs("../../content")
	if err != nil {
		t.Fatal(err)
	}
	if out := must(t, "proof", unit, "--schools", list); out != "200 schools: 0 with problems, 0 warnings\n" {
		t.Errorf("proof says %q", out)
	}
	out := must(t, "press", unit, "--schools", list, "--out", filepath.Join(t.TempDir(), "district"), "--zip", "--part", "70/100")
	if !strings.HasPrefix(out, "2 schools: 2 pressed, 0 unchanged, ") {
		t.Errorf("press says %q", out)
	}
}

// Progress says how quick the work is once that is known.
func TestPaced(t *testing.T) {
	for _, c := range []struct {
		done, pressed int
		lasted        time.Duration
		want          string
	}{
		{0, 0, 0, "pressing: 0 of 200 schools …"},
		{50, 40, 10 * time.Second, "pressing: 50 of 200 schools, 4.0 a second, 30s left"},
		{150, 0, time.Second / 10, "pressing: 150 of 200 schools …"},
	} {
		if got := paced(district.Progress{Done: c.done, Of: 200, Pressed: c.pressed}, c.lasted); got != c.want {
			t.Errorf("it says %q, want %q", got, c.want)
		}
	}
}
