package register_test

import (
	"net/http"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

const recordsUnit = unitFile + "\r\n[records]\r\nmoon_log = \"moon-log.csv\"\r\n"

// Rows that nobody changed stay to the byte, others are written with the file's own
// separator, decimal mark and line ends, and what a person types is understood.
func TestRowsAreWritten(t *testing.T) {
	const commas = "\ufeffGroup,date,time,\"lit_percent\",seen\r\n\"a, b\",2027-04-20, 20:30 ,50 %,YES\r\n,,,,\r\nc,2027-04-21,21:00,,\r\n"
	const semicolons = "date;time;lit_percent;seen\n2027-04-20;20:30;12,5;no\n2027-04-21;21:00;;cloud" // no line end
	for _, c := range []struct {
		name, file string
		typ        []string
		want       string
	}{
		{"nothing", commas, nil, commas},
		{"one cell", commas, []string{"1.lit_percent", "62"}, strings.Replace(commas, "21:00,,", "21:00,62,", 1)},
		{"a row more", commas, []string{"2.group", "d", "2.date", "22 April 2027", "2.time", "21h05"}, commas + "d,2027-04-22,21:05,,\r\n"},
		{"a gap between new rows", commas, []string{"4.date", "2027-04-22", "4.time", "9:05", "4.group", `x "y", z`}, commas + "\"x \"\"y\"\", z\",2027-04-22,9:05,,\r\n"},
		{"a column that the file lacks", commas, []string{"0.direction", "west"}, strings.NewReplacer("seen\r\n", "seen,direction\r\n", "\"a, b\",2027-04-20, 20:30 ,50 %,YES", "\"a, b\",2027-04-20,20:30,50,yes,west").Replace(commas)},
		{"a row less", commas, []string{"0.group", "", "0.date", "", "0.time", "", "0.lit_percent", "", "0.seen", ""}, strings.Replace(commas, "\"a, b\",2027-04-20, 20:30 ,50 %,YES\r\n", "", 1)},
		{"a decimal comma", semicolons, []string{"1.lit_percent", "37.5"}, strings.Replace(semicolons, "21:00;;cloud", "21:00;37,5;cloud\n", 1)},
		{"behind a line without an end", semicolons, []string{"2.date", "2027-04-22", "2.time", "21:30"}, semicolons + "\n2027-04-22;21:30;;\n"},
	} {
		b := newBench(t, map[string]string{"unit.toml": recordsUnit, "moon-log.csv": c.file})
		b.with("moon-log", c.typ...)
		b.saved(c.name)
		if got := b.file("moon-log.csv"); got != c.want {
			t.Errorf("%s:\n got %q\nwant %q", c.name, got, c.want)
		}
		if b.pressed != 1 || b.header.Get("Location") != "moon-log?saved" || b.file("unit.toml") != recordsUnit {
			t.Errorf("%s: pressed %d times, led to %q", c.name, b.pressed, b.header.Get("Location"))
		}
		if b.get("moon-log?saved"); !strings.Contains(b.text(), "Saved.") {
			t.Errorf("%s: %s", c.name, b.text())
		}
	}
}

// A wrong cell comes back beside itself, in the words of proof, and nothing is written.
func TestWrongCellsComeBack(t *testing.T) {
	const file = "group,date,time,lit_percent\na,2027-04-20,20:30,50\n"
	for _, c := range []struct {
		name string
		typ  []string
		cell string
		want string
	}{
		{"out of bounds", []string{"0.lit_percent", "150"}, "cell-0-3", "Row 1, How much was lit : 150 percent is outside 0 percent to 100 percent."},
		{"no date", []string{"1.date", "someday", "1.time", "9:00"}, "cell-1-1", `New row, Day : This is "someday", want a date`},
		{"a missing time", []string{"3.date", "2027-04-21"}, "cell-1-2", "New row, Time : This is missing: a time of day"},
		{"a control character", []string{"0.group", "a\x1b[31m"}, "cell-0-0", "This holds the control character U+001B"},
	} {
		b := newBench(t, map[string]string{"unit.toml": recordsUnit, "moon-log.csv": file})
		b.with("moon-log", c.typ...)
		text := strings.NewReplacer(" :", " :").Replace(b.text())
		if b.code != http.StatusUnprocessableEntity || b.file("moon-log.csv") != file || b.pressed != 0 {
			t.Errorf("%s: %d", c.name, b.code)
		}
		if !strings.Contains(text, c.want) && !strings.Contains(text, strings.Replace(c.want, " : ", ": ", 1)) {
			t.Errorf("%s: no %q in %s", c.name, c.want, text)
		}
		for _, want := range []string{`<a href="#` + c.cell + `">`, `id="` + c.cell + `-wrong"`, `aria-describedby="` + c.cell + `-wrong"`} {
			if !strings.Contains(b.body, want) {
				t.Errorf("%s: no %s", c.name, want)
			}
		}
	}
}

// A kind of records whose file is not there is begun, and unit.toml then names it.
func TestRecordsAreBegun(t *testing.T) {
	b := newBench(t, map[string]string{"unit.toml": unitFile})
	b.with("strip-log", "0.body", "mars", "0.squares", "12", "0.group", "a")
	b.saved("the first row")
	if got, want := b.file("strip-log.csv"), "group,body,squares,past_cm\r\na,mars,12,\r\n"; got != want {
		t.Errorf("%q", got)
	}
	if want := unitFile + "\r\n[records]\r\nstrip_log = \"strip-log.csv\"\r\n"; b.file("unit.toml") != want {
		t.Errorf("%s", b.file("unit.toml"))
	}
	b.get("strip-log")
	if b.typed().Get("0.body") != "mars" || b.typed().Get("1.body") != "" || !b.typed().Has("5.body") || b.typed().Has("6.body") {
		t.Errorf("%v", b.typed())
	}
}

// Rows that another saved meanwhile are kept, and those that were typed stand below.
func TestRowsChangedMeanwhile(t *testing.T) {
	b := newBench(t, map[string]string{"unit.toml": recordsUnit, "moon-log.csv": "group,date,time\na,2027-04-20,20:30\nb,2027-04-20,20:40\n"})
	b.get("moon-log")
	v := b.typed()
	v.Set("1.time", "20:50")
	v.Set("2.group", "d")
	v.Set("2.date", "2027-04-22")
	v.Set("2.time", "21:30")
	const theirs = "time,date,group\n20:30,2027-04-20,a\n21:00,2027-04-21,c\n"
	b.save("moon-log.csv", theirs)
	b.post("moon-log", v)
	if b.code != http.StatusConflict || b.file("moon-log.csv") != theirs || b.pressed != 0 {
		t.Fatalf("%d %s", b.code, b.file("moon-log.csv"))
	}
	again := b.typed()
	var got []string
	for _, cell := range []string{"0.group", "1.group", "2.group", "2.time", "3.group", "3.time"} {
		got = append(got, again.Get(cell))
	}
	if strings.Join(got, " ") != "a c a 20:30 b 20:50" && strings.Join(got, " ") != "a c b 20:50 d 21:30" {
		t.Errorf("%v", got)
	}
	if !strings.Contains(b.text(), "as you typed it") {
		t.Errorf("%s", b.text())
	}
	b.post("moon-log", again)
	b.saved("the second time")
	if got := b.file("moon-log.csv"); !strings.HasPrefix(got, theirs) || !strings.Contains(got, "20:50,2027-04-20,b\n") || !strings.Contains(got, "21:30,2027-04-22,d\n") {
		t.Errorf("%q", got)
	}
}

// A file that is no table of these records is shown as it is told by proof, and left.
func TestStrangeRecordsAreLocked(t *testing.T) {
	for _, file := range []string{"group,datum,time\n", "a\"b,date\n", "# A lesson\n", "date,time\n2027-04-20,\"20:30\n"} {
		b := newBench(t, map[string]string{"unit.toml": recordsUnit, "moon-log.csv": file})
		b.get("moon-log")
		if b.code != 200 || strings.Contains(b.body, "<form") || !strings.Contains(b.text(), "moon-log.csv:") {
			t.Errorf("%q: %d %s", file, b.code, b.text())
		}
	}
}

// A name in unit.toml leads to no file outside the folder, and to none that is not
// records.
func TestRecordsStayInTheFolder(t *testing.T) {
	outside := filepath.Join(t.TempDir(), "x.csv")
	if err := os.WriteFile(outside, []byte("group,date,time\n"), 0o666); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"../x.csv", "/etc/passwd", outside, "unit.toml", "UNIT.toml", "link.csv", "."} {
		b := newBench(t, map[string]string{"unit.toml": strings.Replace(recordsUnit, "moon-log.csv", name, 1)})
		if err := os.Symlink(outside, filepath.Join(b.folder, "link.csv")); err != nil {
			noLinks(t, err)
		}
		before := b.file("unit.toml")
		if b.get("moon-log"); b.code == http.StatusOK {
			t.Errorf("%s: %s", name, b.text())
		}
		b.get("strip-log") // whose token is another
		v := b.typed()
		b.post("moon-log", v)
		text, err := os.ReadFile(outside)
		if err != nil || string(text) != "group,date,time\n" || b.file("unit.toml") != before {
			t.Errorf("%s was written: %s, %v", name, text, err)
		}
	}
	// A link within the folder stays one.
	b := newBench(t, map[string]string{"unit.toml": recordsUnit, "real.csv": "date,time\n"})
	if err := os.Symlink("real.csv", filepath.Join(b.folder, "moon-log.csv")); err != nil {
		noLinks(t, err)
	}
	b.with("moon-log", "0.date", "2027-04-20", "0.time", "20:30")
	b.saved("through a link")
	if info, err := os.Lstat(filepath.Join(b.folder, "moon-log.csv")); err != nil || info.Mode()&os.ModeSymlink == 0 || b.file("real.csv") != "date,time\n2027-04-20,20:30\n" {
		t.Errorf("%v, %q", err, b.file("real.csv"))
	}
}

// What cannot be written is told on the page, with what was typed; there is no half
// file, and none that is in the way.
func TestRowsThatCannotBeWritten(t *testing.T) {
	b := newBench(t, map[string]string{"unit.toml": recordsUnit})
	if err := os.Symlink("nowhere.csv", filepath.Join(b.folder, "moon-log.csv")); err != nil {
		noLinks(t, err)
	}
	b.with("moon-log", "0.date", "2027-04-20", "0.time", "20:30")
	if b.code != http.StatusInternalServerError || !strings.Contains(b.text(), "is a link that leads nowhere") || b.typed().Get("0.time") != "20:30" || b.pressed != 0 {
		t.Errorf("%d %s", b.code, b.text())
	}
	if entries, _ := os.ReadDir(b.folder); len(entries) != 2 {
		t.Errorf("the folder holds %v", entries)
	}
}

// noLinks ends a test that could make no symbolic link: Windows may refuse one to a user
// without that right (from memory), no other system does.
func noLinks(t *testing.T, err error) {
	t.Helper()
	if runtime.GOOS == "windows" {
		t.Skip(err)
	}
	t.Fatal(err)
}
