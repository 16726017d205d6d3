package plan

import (
	"strings"
	"testing"
	"testing/fstest"

	"noonbook/build/form"
	"noonbook/build/placeholder"
	"noonbook/build/result"
	"noonbook/build/school"
	"noonbook/compute/place"
)

// dayUnit is two lessons and a page; text is the first lesson's from line 4 of its file.
func dayUnit(date, text string) fstest.MapFS {
	return fstest.MapFS{
		"unit.toml": {Data: []byte(`[unit]
title = "Days"
[school]
name = "Elm School"
latitude = 46.09
longitude = -64.77
time_zone = "America/Moncton"
[term]
first_day = 2027-04-12
last_day = 2027-04-30
lesson_times = ["9:10-10:00"]
`)},
		"1-a.md":    {Data: []byte("```lesson\ntitle = \"A\"\n```\n" + text + "\n")},
		"2-b.md":    {Data: []byte("```lesson\ntitle = \"B\"\ndate = \"" + date + "\"\n```\n\nHere {day.date}, then {day.date date=\"next full Moon\"}, before {day.date date=\"last full Moon\"}.\n")},
		"3-page.md": {Data: []byte("```lesson\ntitle = \"P\"\npart = \"page\"\n```\n\nPage {day.date date=\"next full Moon\"}, {day.days_away date=\"2-b\"}.\n")},
	}
}

// One plan gives each school its own days. The Moon was full on 22 March 2027, 10:45 TT,
// is full on 20 April, 22:28, and 20 May, 11:00 (Swiss Ephemeris,
// testdata/reference/phases.csv): in Dunedin, twelve hours ahead of Greenwich, thirteen in
// March, on 22 March, 21 April and 20 May; at Elm School, three behind, on 22 March, 20
// April and 20 May.
func TestNamedDaysOfTwoSchools(t *testing.T) {
	unit, words := read(t, dayUnit("next full Moon", "\nNext {day.date date=\"next full Moon\"}, last {day.date date=\"last full Moon\"}; {day.date date=\"28 days after 2-b\"}; {day.date date=\"1 month before this lesson\"}; {moon-month.full_moon month=\"next full Moon after last day of term\"}."), "unit")
	p, err := Make(unit, words, Staff, placeholder.Catalogue())
	if err != nil {
		t.Fatal(err)
	}
	dunedin := school.Latitude.Is(-45.87).With(school.Longitude.Is(170.5)).With(school.TimeZone.Is(zone(t, "Pacific/Auckland")))
	for name, c := range map[string]struct {
		over form.Values
		want map[string]string
	}{
		"Elm School": {nil, map[string]string{
			"a.html":    "Next Tuesday 20 April, last Monday 22 March; Tuesday 18 May; Friday 12 March; 20 May 2027 at 7:59.",
			"b.html":    "Here Tuesday 20 April, then Thursday 20 May, before Tuesday 20 April.",
			"page.html": "Page Tuesday 20 April, 8.",
		}},
		"Dunedin": {dunedin, map[string]string{
			"a.html":    "Next Wednesday 21 April, last Monday 22 March; Wednesday 19 May; Friday 12 March; 20 May 2027 at 22:59.",
			"b.html":    "Here Wednesday 21 April, then Thursday 20 May, before Wednesday 21 April.",
			"page.html": "Page Wednesday 21 April, 9.",
		}},
		"the next term": {school.TermFirstDay.Is(dayOn(t, "2028-05-01")).With(school.TermLastDay.Is(dayOn(t, "2028-06-09"))), map[string]string{
			// Full on 9 April 2028 at 10:27 UT, 8 May, 19:49, and 7 June, 6:09 (the same table).
			"b.html":    "Here Monday 8 May, then Wednesday 7 June, before Monday 8 May.",
			"page.html": "Page Monday 8 May, 7.",
		}},
	} {
		files, problems := p.Press(unit.Settings.With(c.over))
		if problems.Faults() > 0 {
			t.Fatalf("%s: %v", name, problems)
		}
		for _, f := range files {
			if want, ok := c.want[f.Name]; ok && !strings.Contains(plainText(string(f.Bytes)), want) {
				t.Errorf("%s, %s: it lacks %q:\n%s", name, f.Name, want, plainText(string(f.Bytes)))
			}
		}
	}
}

// A day by name and the same day typed are one evaluation.
func TestNamedDayIsEvaluatedOnce(t *testing.T) {
	catalogue := placeholder.Catalogue()
	count := 0
	for i, e := range catalogue {
		if e.Name == "sun-day" {
			reckon := e.Reckon
			catalogue[i].Reckon = func(v form.Values) (result.Result, error) {
				count++
				return reckon(v)
			}
		}
	}
	unit, words := readCatalogue(t, dayUnit("2027-04-20", "\n{sun-day.noon date=\"next full Moon\"} {sun-day.noon date=2027-04-20} {sun-day.noon date=\"2-b\"} {sun-day.noon date=\"8 days after this lesson\"}\n"), catalogue)
	p, err := Make(unit, words, Class, catalogue)
	if err != nil {
		t.Fatal(err)
	}
	if _, problems := p.Press(unit.Settings); problems.Faults() > 0 || count != 1 {
		t.Errorf("%d evaluations (%v)", count, problems)
	}
}

// What is wrong with a day at one school alone is told with its place when it is pressed.
func TestNamedDaysAstray(t *testing.T) {
	for _, c := range []struct{ date, text, want string }{
		{"next full Moon", "{day.date date=\"next clock change\"}", ""},
		{"auto", "{day.date date=\"last clock change\" school.time_zone=\"Africa/Nairobi\"}", "unit/1-a.md:4:2: day: date is \"last clock change\": the school's clock does not change in the two years before 2027-04-12"},
		{"auto", "{moon-month.phase date=\"9999 weeks after this lesson\"}", "unit/1-a.md:4:2: moon-month: year 2218 is outside 1950 to 2100, for which the sky is computed"},
		{"auto", "{sun-day.noon date=\"next full Moon after 9999 weeks after this lesson\"}", "unit/1-a.md:4:2: sun-day: date is \"next full Moon after 9999 weeks after this lesson\": year 2218 is outside 1950 to 2100, for which the sky is computed"},
		{"next full Moon after last day of term", "", "unit/2-b.md:3:8: lesson: date \"next full Moon after last day of term\", 2027-05-20, is outside the term, 2027-04-12 to 2027-04-30"},
		{"5 days after 1-a", "", "unit/2-b.md:3:8: lesson: date \"5 days after 1-a\", 2027-04-17, is a Saturday, not a school day"},
		{"last first-quarter Moon before 9999 weeks before 1-a", "", "unit/2-b.md:3:8: lesson: date is \"last first-quarter Moon before 9999 weeks before 1-a\": year 1835 is outside 1950 to 2100, for which the sky is computed"},
	} {
		unit, words := read(t, dayUnit(c.date, c.text), "unit")
		p, err := Make(unit, words, Staff, placeholder.Catalogue())
		if err != nil {
			t.Fatal(err)
		}
		_, problems := p.Press(unit.Settings)
		if got := problems.Error(); len(problems) == 0 && c.want != "" || len(problems) > 0 && (got != c.want || c.want == "") {
			t.Errorf("%s, %s: got %s\nwant %s", c.date, c.text, got, c.want)
		}
	}
}

// A lesson that pushes on the one that it depends on is told that no calendar settles it.
func TestNamedDaysWithoutEnd(t *testing.T) {
	files := dayUnit("auto", "")
	files["1-a.md"] = &fstest.MapFile{Data: []byte("```lesson\ntitle = \"A\"\ndate = \"1 day after 2-b\"\n```\n")}
	unit, words := read(t, files, "unit")
	p, err := Make(unit, words, Staff, placeholder.Catalogue())
	if err != nil {
		t.Fatal(err)
	}
	_, problems := p.Press(unit.Settings)
	if want := `unit/1-a.md:3:8: lesson: date is "1 day after 2-b": its day and those of the other lessons push each other on without end; want a day that depends on the term or the sky, or on a lesson before it`; problems.Error() != want {
		t.Errorf("got %v\nwant %s", problems, want)
	}
}

func dayOn(t *testing.T, s string) place.Date {
	t.Helper()
	d, err := place.ParseDate(s)
	if err != nil {
		t.Fatal(err)
	}
	return d
}
