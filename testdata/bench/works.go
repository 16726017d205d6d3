package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"

	"noonbook/build/form"
	"noonbook/build/placeholder"
	"noonbook/build/placeholder/entry"
	"noonbook/build/plan"
	"noonbook/build/school"
	"noonbook/build/source"
	"noonbook/build/typeset"
	"noonbook/theme"
)

// works are the lines of the table. Goals are the project's own.
func works() []work {
	return []work{
		// First, since Linux counts for a process what the one that started it had.
		{name: "memory, many schools ÷ a tenth", must: 1.1, aim: 1, measure: memory},
		{name: "one more school ÷ Convert", must: 3.5, aim: 2, measure: oneMoreSchool},
		{name: "a school of a district, zip ÷ Convert", must: 6, aim: 4, fails: 2.8, measure: schoolAsZip},
		{name: "a school of a district, folder ÷ its writing", must: 2.2, aim: 1.7, measure: schoolAsFolder},
		{name: "class edition ÷ bare program", must: 2, aim: 1.6, fails: 3.2, measure: wholeProcess},
		{name: "both editions ÷ class edition", must: 1.5, aim: 1.35, measure: bothEditions},
		{name: "unchanged district ÷ full run", must: 0.15, aim: 0.05, measure: unchangedDistrict},
		{name: "two workers ÷ one, on the clock", must: 1.7, aim: 1.9, atLeast: true, measure: twoWorkers},
		{name: "other library ÷ a year of Sun", must: 40, aim: 100, atLeast: true, measure: yearOfSun},
		{name: "lesson saved to page shown ÷ 0.68 s", must: 0.15, aim: 0.1, measure: editOfLesson},
		{name: "unit.toml saved to page shown ÷ 0.68 s", must: 0.37, aim: 0.3, measure: editOfSettings},
		{name: "growth with schools, exponent", must: 1.05, aim: 1, measure: growthOfDistrict},
		{name: "growth with lessons, exponent", must: 1.05, aim: 1, measure: growthOfUnit},
		{name: "80 lessons without a date planned, s", must: 1, aim: 0.5, measure: planner},
	}
}

// worksNamed are the lines whose names hold the words.
func worksNamed(words string) []work {
	return slices.DeleteFunc(works(), func(w work) bool { return !strings.Contains(w.name, words) })
}

// convert renders the frozen unit's lessons with goldmark, as a side on one processor.
func convert() (side, error) {
	names, err := filepath.Glob(filepath.Join(unitFolder, "*.md"))
	if err != nil || len(names) == 0 {
		return nil, errors.Join(err, fmt.Errorf("%d lessons in %s", len(names), unitFolder))
	}
	var lessons [][]byte
	for _, name := range names {
		text, err := os.ReadFile(name)
		if err != nil {
			return nil, err
		}
		lessons = append(lessons, text)
	}
	markdown := goldmark.New(goldmark.WithExtensions(extension.Table))
	return onOne(func() error {
		for _, text := range lessons {
			if err := markdown.Convert(text, &bytes.Buffer{}); err != nil {
				return err
			}
		}
		return nil
	}), nil
}

// onOne makes a side of work that is done in this process, by one processor.
func onOne(do func() error) side {
	return func() (time.Duration, error) {
		defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
		runtime.GC()
		before := processor()
		err := do()
		return processor() - before, err
	}
}

// oneMoreSchool presses the class edition for one school after another, each at another
// place, from one plan, in memory.
func oneMoreSchool(b *bench) (measured, error) {
	own, err := fs.Sub(theme.Files(), "pages")
	if err != nil {
		return measured{}, err
	}
	unit, problems, err := source.Read(os.DirFS(unitFolder), unitFolder, own, placeholder.Catalogue())
	if err != nil || problems.Faults() > 0 {
		return measured{}, errors.Join(err, problems)
	}
	settled, problems, err := plan.Settled(unit, unit.Settings, &entry.Known{})
	if err != nil || problems.Faults() > 0 {
		return measured{}, errors.Join(err, problems)
	}
	words, err := typeset.Language(school.Language.Of(unit.Settings), false)
	if err != nil {
		return measured{}, err
	}
	ready, err := plan.Make(settled, words, plan.Class, placeholder.Catalogue())
	if err != nil {
		return measured{}, err
	}
	schools := 0
	press := func() error {
		schools++
		files, problems := ready.Press(unit.Settings.With(form.Values{
			school.Latitude.Name():   43 + float64(schools)*0.173,
			school.Longitude.Name():  -70 + float64(schools)*0.117,
			school.ElevationM.Name(): float64(schools) * 7,
		}))
		if len(files) == 0 {
			return problems
		}
		return nil
	}
	if err := press(); err != nil { // the first has the sky to fit
		return measured{}, err
	}
	base, err := convert()
	if err != nil {
		return measured{}, err
	}
	return ratio(b.rounds, onOne(press), base)
}

// process runs a program on so many processors, and tells what it took.
func process(processors int, program string, args ...string) (*os.ProcessState, time.Duration, error) {
	cmd := exec.Command(program, args...)
	cmd.Env = append(os.Environ(), "GOMAXPROCS="+strconv.Itoa(processors))
	var said bytes.Buffer
	cmd.Stdout, cmd.Stderr = &said, &said
	begin := time.Now()
	err := cmd.Run()
	took := time.Since(begin)
	if err != nil {
		return nil, 0, fmt.Errorf("%s %s: %w: %s", filepath.Base(program), strings.Join(args, " "), err, last(said.String(), 300))
	}
	return cmd.ProcessState, took, nil
}

func last(text string, n int) string { return text[max(0, len(text)-n):] }

// asProcess makes a side of a program that writes into a folder, by its processor time.
func (b *bench) asProcess(program string, args func(target string) []string) side {
	return func() (time.Duration, error) {
		target := fresh(b.dir, "handbook")
		defer os.RemoveAll(filepath.Dir(target))
		ended, _, err := process(1, program, args(target)...)
		if err != nil {
			return 0, err
		}
		return ended.UserTime() + ended.SystemTime(), nil
	}
}

func pressing(more ...string) func(string) []string {
	return func(target string) []string {
		return append([]string{"press", "--content", unitFolder, "--out", target}, more...)
	}
}

// wholeProcess presses the class edition, beside the program that does the least.
func wholeProcess(b *bench) (measured, error) {
	pressed := fresh(b.dir, "pressed")
	if _, _, err := process(1, b.noonbook, pressing()(pressed)...); err != nil {
		return measured{}, err
	}
	return ratio(b.rounds, b.asProcess(b.noonbook, pressing()), b.asProcess(b.bare, func(target string) []string {
		return []string{unitFolder, pressed, target}
	}))
}

func bothEditions(b *bench) (measured, error) {
	return ratio(b.rounds, b.asProcess(b.noonbook, pressing("--staff")), b.asProcess(b.noonbook, pressing()))
}

// district writes a list of so many schools, each at another place.
func (b *bench) district(schools int) (string, error) {
	name := filepath.Join(b.dir, fmt.Sprintf("schools-%d.csv", schools))
	var list strings.Builder
	fmt.Fprintf(&list, "%s,%s,%s,%s\n", school.Name.Name(), school.Latitude.Name(), school.Longitude.Name(), school.ElevationM.Name())
	for i := range schools {
		golden := math.Mod(float64(i)*(math.Sqrt(5)-1)/2, 1)
		fmt.Fprintf(&list, "School %04d,%.3f,%.3f,%d\n", i, 43+9*golden, -70+8*float64(i)/float64(schools), 5+i%300)
	}
	return name, os.WriteFile(name, []byte(list.String()), 0o666)
}

// districtSide presses a district of so many schools, by its processor time.
func (b *bench) districtSide(schools int, more ...string) (side, error) {
	list, err := b.district(schools)
	return b.asProcess(b.noonbook, pressing(append([]string{"--schools", list}, more...)...)), err
}

// A few rounds of a district are many rounds of a school.
const districtRounds = 2

// perSchool divides what a district takes by its schools.
func perSchool(m measured, schools int) measured {
	m.value /= float64(schools)
	m.of = fmt.Sprintf("(%s) ÷ %d", m.of, schools)
	return m
}

func schoolAsZip(b *bench) (measured, error) {
	many, err := b.districtSide(b.schools, "--zip")
	if err != nil {
		return measured{}, err
	}
	base, err := convert()
	if err != nil {
		return measured{}, err
	}
	leastOfFive := func() (time.Duration, error) { // beside so long a work one is nothing
		least := time.Duration(math.MaxInt64)
		for range 5 {
			took, err := base()
			if err != nil {
				return 0, err
			}
			least = min(least, took)
		}
		return least, nil
	}
	m, err := ratio(districtRounds, many, leastOfFive)
	return perSchool(m, b.schools), err
}

// schoolAsFolder presses a district as folders, beside a loop that writes the same bytes.
func schoolAsFolder(b *bench) (measured, error) {
	many, err := b.districtSide(b.schools)
	if err != nil {
		return measured{}, err
	}
	list, err := b.district(b.schools)
	if err != nil {
		return measured{}, err
	}
	pressed := fresh(b.dir, "pressed")
	if _, _, err := process(runtime.NumCPU(), b.noonbook, pressing("--schools", list)(pressed)...); err != nil {
		return measured{}, err
	}
	files := map[string][]byte{}
	err = filepath.WalkDir(pressed, func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		inside, err := filepath.Rel(pressed, name)
		if err != nil {
			return err
		}
		files[inside], err = os.ReadFile(name)
		return err
	})
	if err != nil {
		return measured{}, err
	}
	return ratio(districtRounds, many, onOne(func() error {
		target := fresh(b.dir, "bare")
		defer os.RemoveAll(filepath.Dir(target))
		for name, text := range files {
			if err := write(filepath.Join(target, name), text); err != nil {
				return err
			}
		}
		return nil
	}))
}

func write(name string, text []byte) error {
	if err := os.MkdirAll(filepath.Dir(name), 0o777); err != nil {
		return err
	}
	f, err := os.Create(name)
	if err != nil {
		return err
	}
	_, err = f.Write(text)
	return errors.Join(err, f.Sync(), f.Close())
}

func unchangedDistrict(b *bench) (measured, error) {
	list, err := b.district(b.schools)
	if err != nil {
		return measured{}, err
	}
	pressed := fresh(b.dir, "pressed")
	again := func() (time.Duration, error) {
		ended, _, err := process(1, b.noonbook, pressing("--schools", list)(pressed)...)
		if err != nil {
			return 0, err
		}
		return ended.UserTime() + ended.SystemTime(), nil
	}
	full, err := again()
	if err != nil {
		return measured{}, err
	}
	return ratio(districtRounds, again, func() (time.Duration, error) { return full, nil })
}

func memory(b *bench) (measured, error) {
	var most [2]float64
	for i, schools := range []int{b.schools, b.schools / 10} {
		list, err := b.district(schools)
		if err != nil {
			return measured{}, err
		}
		target := fresh(b.dir, "district")
		ended, _, err := process(1, b.noonbook, pressing("--schools", list, "--zip")(target)...)
		if err != nil {
			return measured{}, err
		}
		if most[i] = peak(ended); most[i] == 0 {
			return measured{}, errors.New("the system does not say how much memory a process had")
		}
		if err := os.RemoveAll(filepath.Dir(target)); err != nil {
			return measured{}, err
		}
	}
	return measured{most[0] / most[1], fmt.Sprintf("%.0f MB ÷ %.0f MB", most[0]/1e6, most[1]/1e6), true}, nil
}

func twoWorkers(b *bench) (measured, error) {
	if runtime.NumCPU() < 2 {
		return measured{}, errors.New("here is one processor")
	}
	list, err := b.district(b.schools)
	if err != nil {
		return measured{}, err
	}
	with := func(processors int) side {
		return func() (time.Duration, error) {
			target := fresh(b.memory, "district")
			defer os.RemoveAll(filepath.Dir(target))
			_, took, err := process(processors, b.noonbook, pressing("--schools", list, "--zip")(target)...)
			return took, err
		}
	}
	return ratio(districtRounds, with(1), with(2))
}

// yearOfSun asks the benchmark of the almanac, which takes turns with the other library and
// wants as many events of it; the Sun comes first.
func yearOfSun(*bench) (measured, error) {
	said, err := exec.Command("go", "test", "./compute/almanac", "-run", "^$", "-bench", "BesideAstronomyEngine", "-benchtime", "5x", "-v").CombinedOutput()
	if err != nil {
		return measured{}, fmt.Errorf("%w: %s", err, last(string(said), 300))
	}
	found := regexp.MustCompile(`([\d.]+) ms-here\s+([\d.]+) ms-there\s+([\d.]+) times-faster`).FindStringSubmatch(string(said))
	if found == nil {
		return measured{}, errors.New("the other library is not here: npm --prefix testdata/bench install")
	}
	times, err := strconv.ParseFloat(found[3], 64)
	return measured{times, fmt.Sprintf("%s ms ÷ %s ms", found[2], found[1]), true}, err
}

// growth is the exponent of what grows to so many times as much when its size grows tenfold.
func growth(m measured) measured {
	m.value = math.Log10(m.value)
	return m
}

func growthOfDistrict(b *bench) (measured, error) {
	many, err := b.districtSide(b.schools, "--zip")
	if err != nil {
		return measured{}, err
	}
	few, err := b.districtSide(b.schools/10, "--zip")
	if err != nil {
		return measured{}, err
	}
	m, err := ratio(districtRounds, many, few)
	return growth(m), err
}

// manyLessons writes a unit of so many short lessons without a date, in one long term.
func (b *bench) manyLessons(lessons int) (string, error) {
	folder := filepath.Join(b.dir, fmt.Sprintf("lessons-%d", lessons))
	if err := os.MkdirAll(folder, 0o777); err != nil {
		return "", err
	}
	for i := range lessons {
		text := fmt.Sprintf("```lesson\ntitle = \"Shadow %[1]d\"\nneeds = [\"sun\"]\n```\n\n## Look %[1]d\n\nAt {sun-day.noon} the shadow is shortest. Mark its tip, and write the time beside it.\n\n- Stand the stick upright.\n- Wait, and mark again.\n", i+1)
		if err := os.WriteFile(filepath.Join(folder, fmt.Sprintf("%04d.md", i+1)), []byte(text), 0o666); err != nil {
			return "", err
		}
	}
	settings := "[unit]\ntitle = \"Shadows\"\nsummary = \"Many short lessons.\"\n\n[school]\nname = \"Long Bench School\"\nlatitude = 46.09\nlongitude = -64.77\nelevation_m = 20\ntime_zone = \"America/Moncton\"\n\n[class]\nname = \"grade 5\"\npupils = 27\n\n" +
		"[term]\nfirst_day = 2027-09-06\nlast_day = 2028-06-30\nlessons_a_day = 5\nlesson_times = [\"9:10-10:00\", \"10:15-11:05\", \"11:10-12:00\", \"13:15-14:05\", \"14:10-15:00\"]\n"
	return folder, os.WriteFile(filepath.Join(folder, "unit.toml"), []byte(settings), 0o666)
}

func (b *bench) unitSide(lessons int) (side, error) {
	folder, err := b.manyLessons(lessons)
	return b.asProcess(b.noonbook, func(target string) []string {
		return []string{"press", "--content", folder, "--out", target}
	}), err
}

func growthOfUnit(b *bench) (measured, error) {
	many, err := b.unitSide(b.lessons)
	if err != nil {
		return measured{}, err
	}
	few, err := b.unitSide(b.lessons / 10)
	if err != nil {
		return measured{}, err
	}
	m, err := ratio(districtRounds, many, few)
	return growth(m), err
}

// planner proofs a unit of eighty lessons without a date, in seconds of a processor.
func planner(b *bench) (measured, error) {
	folder, err := b.manyLessons(80)
	if err != nil {
		return measured{}, err
	}
	ended, _, err := process(1, b.noonbook, "proof", folder)
	if err != nil {
		return measured{}, err
	}
	took := ended.UserTime() + ended.SystemTime()
	return measured{took.Seconds(), milliseconds(took), true}, nil
}
