package main

import (
	"bytes"
	"context"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"noonbook/build/form"
	"noonbook/build/school"
	"noonbook/build/source"
	"noonbook/content"
)

// ours is a school of nobody: what a unit must know of it, and what it usually knows.
func ours(words ...string) []string {
	return append([]string{`school.name=Harbour Street School`, "school.latitude=-45.87", "school.longitude=170.50", "school.time_zone=Pacific/Auckland",
		"term.first_day=2028-02-07", "term.last_day=2028-03-17"}, words...)
}

func laidOut(t *testing.T, words ...string) (dir, said string) {
	t.Helper()
	dir = filepath.Join(t.TempDir(), "a", "unit")
	return dir, must(t, append([]string{"starter", dir}, words...)...)
}

func settingsIn(t *testing.T, dir string) form.Values {
	t.Helper()
	settings, problems, err := source.ReadSettings(os.DirFS(dir), dir)
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	return settings
}

// The whole unit is laid out for the school that is given: every lesson and picture,
// nothing of the demo's own school.
func TestStarterLaysOutTheWholeUnit(t *testing.T) {
	dir, said := laidOut(t, ours("class.pupils=23", "term.days_off=2028-02-08,2028-02-09", `school.colour="#123456"`)...)
	if want := "a new unit is in " + dir + ": edit unit.toml, then noonbook press " + dir + "\n"; said != want {
		t.Errorf("it says %q, want %q", said, want)
	}
	settings := settingsIn(t, dir)
	for key, want := range map[form.AnyKey]string{
		school.Name: "Harbour Street School", school.Latitude: "-45.87", school.Longitude: "170.5", school.TimeZone: "Pacific/Auckland", school.Paper: "A4",
		school.ClassPupils: "23", school.TermDaysOff: "[2028-02-08 2028-02-09]", school.Colour: "#123456", school.TermFirstDay: "2028-02-07", school.SuppliesCurrency: "",
	} {
		if got := fmt.Sprint(settings[key.Name()]); got != want {
			t.Errorf("%s is %q, want %q", key.Name(), got, want)
		}
	}
	theirs, _, err := source.ReadSettings(content.Files(), "demo")
	if err != nil {
		t.Fatal(err)
	}
	crest, name := school.Crest.Of(theirs), school.Name.Of(theirs)
	if crest == "" || name == "" {
		t.Fatal("the demo has no crest or no name to look for")
	}
	files := tree(t, dir)
	err = fs.WalkDir(content.Files(), ".", func(file string, d fs.DirEntry, err error) error {
		_, there := files["/"+file]
		want := !d.IsDir() && file != crest && filepath.Ext(file) != ".go"
		if there != want {
			t.Errorf("%s is there: %v, want %v", file, there, want)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	strangers := []string{name, strings.Join(strings.Fields(name)[:2], " "), school.TimeZone.Of(theirs).String(), fmt.Sprint(school.Latitude.Of(theirs)), fmt.Sprint(school.Longitude.Of(theirs))}
	for file, text := range files {
		for _, stranger := range strangers {
			example := file == "/unit.toml" && stranger == "America/Moncton" // of the key's own explanation
			if strings.Contains(text, stranger) && !example {
				t.Errorf("%s says %s", file, stranger)
			}
		}
	}
}

// Every lesson reads as the demo's does, except that no thing has a price.
func TestStarterTakesPricesAway(t *testing.T) {
	dir, _ := laidOut(t, ours()...)
	priced := 0
	line := regexp.MustCompile(`(?m)^(?:price|pack) = [\d.]+\n`)
	names, err := fs.Glob(content.Files(), "*.md")
	if err != nil || len(names) < 15 {
		t.Fatal(names, err)
	}
	for _, name := range names {
		theirs, err := fs.ReadFile(content.Files(), name)
		if err != nil {
			t.Fatal(err)
		}
		got, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil {
			t.Fatal(err)
		}
		block, _, _ := strings.Cut(string(got), "\n```\n")
		if word := regexp.MustCompile(`\b(price|pack)\s*=`).FindString(block); word != "" {
			t.Errorf("%s has %s", name, word)
		}
		priced += len(line.FindAll(theirs, -1))
		if want := line.ReplaceAllString(string(theirs), ""); string(got) != want {
			t.Errorf("%s is changed elsewhere", name)
		}
	}
	if priced == 0 {
		t.Error("the demo has no prices, so nothing was looked at")
	}
}

var typedDate = regexp.MustCompile(`(?m)^date = \d{4}-\d\d-\d\d`)

// The whole unit presses without a problem for schools north and south, in either
// language, with records that are empty. Dates that are typed in lessons are left to
// noonbook here, for another term has other days.
func TestWholeUnitPressesForOurSchool(t *testing.T) {
	unraced(t)
	for _, words := range [][]string{
		ours("class.pupils=23", "term.lesson_times=9:00-9:50,10:00-10:50,13:00-13:50"),
		ours(),
		{"school.name=École du Lac", "school.latitude=48.4", "school.longitude=-71.1", "school.time_zone=America/Toronto", "school.language=fr",
			"term.first_day=2027-09-07", "term.last_day=2027-11-30", "class.pupils=21", "term.lesson_times=8:30-9:20,10:00-10:50,13:15-14:05"},
	} {
		dir, _ := laidOut(t, words...)
		for file, text := range tree(t, dir) {
			if filepath.Ext(file) == ".md" {
				if err := os.WriteFile(filepath.Join(dir, file), []byte(typedDate.ReplaceAllString(text, `date = "auto"`)), 0o666); err != nil {
					t.Fatal(err)
				}
			}
		}
		if code, out, errs := noonbook(t, "proof", dir); code != done {
			t.Errorf("%v\n%s%s", words, out, errs)
		}
	}
}

// The two short lessons, with settings written the same way, press without a word.
func TestStarterSmallPressesWithoutAProblem(t *testing.T) {
	dir, _ := laidOut(t, ours("--small", "class.pupils=24", "term.lesson_times=9:30-10:20,11:00-11:50")...)
	if out := must(t, "proof", dir); out != "0 problems, 0 warnings\n" {
		t.Errorf("proof says %s", out)
	}
	must(t, "press", "--content", dir, "--out", filepath.Join(t.TempDir(), "handbook"))
	files := tree(t, dir)
	if len(files) != 9 || files["/1-first-lesson.md"] == "" {
		t.Errorf("it has %d files, want two lessons, six records and unit.toml", len(files))
	}
	if settings := settingsIn(t, dir); school.UnitTitle.Of(settings) != "Shadows and planets" || !strings.Contains(files["/unit.toml"], "# Title of the unit, on the cover.") {
		t.Errorf("unit.toml is\n%s", files["/unit.toml"])
	}
}

// A blank file of each kind of record lies in the new unit, with its columns as
// the settings have them, named in unit.toml and read without a complaint. Flights to
// other worlds are no school's own: the whole unit brings them along, the small one has
// no lesson that needs them.
func TestStarterHasBlankRecords(t *testing.T) {
	for _, more := range []string{"--small", "class.pupils=20"} {
		dir, _ := laidOut(t, ours(more)...)
		settings := settingsIn(t, dir)
		kinds := 0
		for _, field := range school.Settings() {
			if field.Kind() != form.CSV {
				continue
			}
			kinds++
			records := field.Key.(form.Key[form.Records]).Of(settings)
			if field.Name() == school.RecordsMissions.Name() && more != "--small" {
				want, err := fs.ReadFile(content.Files(), records.File)
				text, errOurs := os.ReadFile(filepath.Join(dir, records.File))
				if err != nil || errOurs != nil || len(records.Rows) < 30 || !bytes.Equal(text, want) {
					t.Errorf("%s has %d rows and is not the one of the lessons (%v, %v)", records.File, len(records.Rows), err, errOurs)
				}
				continue
			}
			if records.File != school.RecordsFile(field) || len(records.Rows) != 0 {
				t.Errorf("%s is %q with %d rows", field.Name(), records.File, len(records.Rows))
				continue
			}
			text, err := os.ReadFile(filepath.Join(dir, records.File))
			if want := strings.Join(field.Fields.Names(), ",") + "\r\n"; err != nil || string(text) != want {
				t.Errorf("%s holds %q, want %q (%v)", records.File, text, want, err)
			}
		}
		if kinds < 5 {
			t.Errorf("there are %d kinds of records, want five or more", kinds)
		}
	}
}

// What is wrong with the words is said, all of it, and nothing is written.
func TestStarterReportsEveryMistake(t *testing.T) {
	const example = `school.name, school.latitude, school.longitude, school.time_zone, term.first_day, term.last_day are missing; write for example: noonbook starter FOLDER school.name="Harbour Street School" school.latitude=-45.87 school.longitude=170.50 school.time_zone=Pacific/Auckland term.first_day=2028-02-07 term.last_day=2028-03-17`
	for _, c := range []struct {
		words []string
		want  []string
	}{
		{nil, []string{example}},
		{ours()[:5], []string{"term.last_day is missing; write for example: noonbook starter FOLDER term.last_day=2028-03-17"}},
		{ours("school.paper=A5", "schol.name=x", "class.pupils=many", "records.moon_log=x.csv", "stock.balls=3", "school.name=Again"), []string{
			`school.paper "A5" is unknown, want "A4" or "Letter"`, `schol.name is not a key; did you mean "school.name"?`, `class.pupils is "many", want a whole number from 0 to 500`,
			"records.moon_log cannot be set here; starter lays its file out, and unit.toml can name another", "stock.balls cannot be set here; write its tables into unit.toml", "school.name is there twice"}},
		{[]string{"school.latitude=95", "school.name=", "school.longitude=1", "school.time_zone=Moncton", "term.first_day=soon"}, []string{
			"school.latitude 95° is outside −90° to 90°", "school.name is empty", `school.time_zone "Moncton" is not in the IANA`, `term.first_day is "soon"`, "term.last_day is missing; write for example: "}},
		{ours("class.pupils=2", "class.group_size=3", "term.lesson_times=9:00-9:50,9:30-10:00", "school.crest=crest.svg"), []string{
			"class.group_size 3 is more than the 2 of class.pupils", "term.lesson_times: this one begins before the one before it ends", "school.crest: there is no file crest.svg beside unit.toml"}},
		{append(ours()[:5], "term.last_day=2028-01-01"), []string{"term.last_day 2028-01-01 is before term.first_day 2028-02-07"}},
	} {
		dir := filepath.Join(t.TempDir(), "unit")
		code, out, errs := noonbook(t, append([]string{"starter", dir}, c.words...)...)
		lines := strings.Split(strings.TrimSuffix(errs, "\n"), "\n")
		if code != wrongUse || out != "" || len(lines) != len(c.want) {
			t.Errorf("%v: exit %d, %q\n%s", c.words, code, out, errs)
		}
		for _, want := range c.want {
			if !slices.ContainsFunc(lines, func(line string) bool { return strings.HasPrefix(line, "noonbook: starter: "+want) }) {
				t.Errorf("%v lacks %s:\n%s", c.words, want, errs)
			}
		}
		if _, err := os.Stat(dir); err == nil {
			t.Errorf("%v: the folder is there", c.words)
		}
	}
	dir, _ := laidOut(t, ours("--small")...)
	if code, _, errs := noonbook(t, append([]string{"starter", dir}, ours()...)...); code != wrongUse || !strings.Contains(errs, "holds files already") {
		t.Errorf("a second starter: exit %d, %s", code, errs)
	}
}

// A place that its clock belies is a warning where nobody can be asked.
func TestStarterWarnsOfADoubtfulPlace(t *testing.T) {
	words := ours("--small")
	words[1] = "school.latitude=45.87"
	code, _, errs := noonbook(t, append([]string{"starter", filepath.Join(t.TempDir(), "unit")}, words...)...)
	if code != done || !strings.HasPrefix(errs, "warning: school.latitude: the clock of Pacific/Auckland is put forward in the summer of the south") {
		t.Errorf("exit %d, %s", code, errs)
	}
}

// At a terminal, each answer on a line of its own.
func atTerminal(t *testing.T, answers string, words ...string) (dir, out string, err error) {
	t.Helper()
	dir = filepath.Join(t.TempDir(), "unit")
	var o, e bytes.Buffer
	who := console{strings.NewReader(answers), true, time.Date(2028, 2, 7, 10, 0, 0, 0, time.UTC)}
	err = layOut(context.Background(), append([]string{dir, "--small"}, words...), who, &o, &e)
	return dir, o.String(), err
}

func TestStarterAsks(t *testing.T) {
	dir, out, err := atTerminal(t, strings.Join([]string{
		"", "Harbour Street School", // a name there must be
		"", // English
		"here", "45° 52′ S 170° 30′ O", "45° 52′ S 170° 30′ E",
		"Auckland", "Pacific/Auckland",
		"perhaps", "", // noon is right
		"", // paper
		"Room 7", "none", "23",
		"7 Feb", "2028-02-07",
		"2028-01-07", "2028-03-17",
		"9:00-8:00", "9:00-9:50, 10:00-10:50",
	}, "\n")+"\n")
	if err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	for _, want := range []string{
		"name of the school: ", "language of what noonbook adds, en or fr [en]: ",
		`  "here" has "here", which is no direction; write latitude and longitude, such as 46.09 -64.77 or 46°05′N 64°46′W` + "\n",
		"has an O, which is west in French and east in other languages",
		`  school.time_zone "Auckland" is not in the IANA time zone database; want a name such as "America/Moncton"` + "\n",
		"there the Sun is highest at 13:52 by the clock on 7 February; is that right? [yes]: ", `  "perhaps" is neither yes nor no`,
		"paper to print on, A4 or Letter [A4]: ", "how many pupils [24]: ", `  class.pupils is "none", want a whole number from 0 to 500`,
		"  the last day 2028-01-07 is before the first, 2028-02-07\n", "[9:00-9:50, 10:00-10:50, 11:00-11:50, 13:00-13:50, 14:00-14:50]: ", `  term.lesson_times is "9:00-8:00"`,
	} {
		if !strings.Contains(out, want) {
			t.Errorf("it lacks %q:\n%s", want, out)
		}
	}
	settings := settingsIn(t, dir)
	for key, want := range map[form.AnyKey]string{
		school.Name: "Harbour Street School", school.Latitude: "-45.86667", school.Longitude: "170.5", school.TimeZone: "Pacific/Auckland", school.Paper: "A4", school.Language: "en",
		school.ClassName: "Room 7", school.ClassPupils: "23", school.TermFirstDay: "2028-02-07", school.TermLastDay: "2028-03-17", school.TermLessonTimes: "[{9h0m0s 9h50m0s} {10h0m0s 10h50m0s}]",
	} {
		if got := fmt.Sprint(settings[key.Name()]); got != want {
			t.Errorf("%s is %q, want %q", key.Name(), got, want)
		}
	}
}

// What the words say is not asked, and Enter takes what is shown.
func TestStarterAsksForTheRestOnly(t *testing.T) {
	dir, out, err := atTerminal(t, "\n\n\n\n", ours("school.language=fr")...)
	if err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	for _, not := range []string{"name of the school", "latitude", "zone", "first day", "highest"} {
		if strings.Contains(out, not) {
			t.Errorf("it asks for %s:\n%s", not, out)
		}
	}
	if !strings.Contains(out, "the lessons are in English, for you to translate; what noonbook adds is in French\n") {
		t.Errorf("it does not tell of the language:\n%s", out)
	}
	settings := settingsIn(t, dir)
	if school.ClassPupils.Of(settings) != 24 || len(school.TermLessonTimes.Of(settings)) != 5 || school.ClassName.Of(settings) != "" {
		t.Errorf("it holds %v", settings)
	}
}

// A noon that cannot be right is asked about until the place is another, or the same
// a second time; one that is denied is asked for again.
func TestStarterAsksAgainWhereNoonIsWrong(t *testing.T) {
	const rest = "\n\n\n2028-02-07\n2028-03-17\n\n"
	for _, c := range []struct {
		name, answers string
		lat, lon      float64
		says          string
	}{
		{"a sign is missing", "46.09 64.77\nAmerica/Moncton\n46.09 -64.77\nAmerica/Moncton\nyes\n", 46.09, -64.77, "is the sign of the longitude wrong?"},
		{"the same again", "46.09 64.77\nAmerica/Moncton\n46.09 64.77\nAmerica/Moncton\n", 46.09, 64.77, "the same again, so it is taken as you write it"},
		{"denied", "46.09 -64.77\nAmerica/Moncton\nno\n47 -65\nAmerica/Moncton\ny\n", 47, -65, "is that right?"},
	} {
		dir, out, err := atTerminal(t, c.answers+rest, "school.name=S", "school.language=en")
		if err != nil || !strings.Contains(out, c.says) {
			t.Errorf("%s: %v\n%s", c.name, err, out)
			continue
		}
		text, err := os.ReadFile(filepath.Join(dir, "unit.toml"))
		if err != nil {
			t.Fatal(err)
		}
		settings, _, _ := school.Settings().Read(text)
		if school.Latitude.Of(settings) != c.lat || school.Longitude.Of(settings) != c.lon || school.Paper.Of(settings) != "Letter" && c.lon < 0 {
			t.Errorf("%s: it holds %v", c.name, settings)
		}
	}
}

// The end of the answers ends it, wherever it comes, and nothing is written.
func TestStarterEndsWithItsAnswers(t *testing.T) {
	answers := "S\n\n46.09 -64.77\nAmerica/Moncton\n\n\n\n\n2028-02-07\n2028-03-17\n\n"
	for n := range strings.Count(answers, "\n") {
		some := strings.Join(strings.SplitAfter(answers, "\n")[:n], "")
		dir, out, err := atTerminal(t, some)
		if err == nil || err.Error() != "starter: the answers ended before the last question; nothing is written" {
			t.Errorf("after %d answers: %v\n%s", n, err, out)
		}
		if _, err := os.Stat(dir); err == nil {
			t.Errorf("after %d answers the folder is there", n)
		}
	}
	if _, out, err := atTerminal(t, answers); err != nil {
		t.Errorf("with all of them: %v\n%s", err, out)
	}
}

// Ctrl-C ends it while it waits for an answer.
func TestStarterEndsWithItsContext(t *testing.T) {
	in, other, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	defer in.Close()
	defer other.Close()
	ctx, stop := context.WithCancel(context.Background())
	time.AfterFunc(20*time.Millisecond, stop)
	dir := filepath.Join(t.TempDir(), "unit")
	var o bytes.Buffer
	err = layOut(ctx, []string{dir}, console{in, true, time.Now()}, &o, &o)
	if err == nil || !strings.Contains(err.Error(), "nothing is written") {
		t.Error(err)
	}
	if _, err := os.Stat(dir); err == nil {
		t.Error("the folder is there")
	}
}
