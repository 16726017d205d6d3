package plan

import (
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"noonbook/build/placeholder"
)

const cycled = `unit.title = "T"
[school]
name = "S"
latitude = 46.09
longitude = -64.77
time_zone = "America/Moncton"
[term]
first_day = 2027-04-12 # a Monday
last_day = 2027-04-23
days_off = [2027-04-14]
lesson_times = ["9:10-10:00", "10:15-11:05"]
cycle_days = 6
half_days = [2027-04-16]
half_day_until = "11:00"
[[term.cycle]]
day = 1
times = []
`

// tags are what a page has besides its words.
var tags = regexp.MustCompile(`<[^>]*>`)

// Pages say which day of the cycle a lesson has: by a wall calendar, without
// Wednesday 14 April, which is a day off, Tuesday is day 2, Thursday day 3.
func TestPagesNameTheDayOfTheCycle(t *testing.T) {
	unit, words := read(t, fstest.MapFS{
		"unit.toml": {Data: []byte(cycled)},
		"1-a.md":    {Data: []byte("```lesson\ntitle = \"First\"\n```\n")},
		"2-b.md":    {Data: []byte("```lesson\ntitle = \"Second\"\n```\n")},
		"3-c.md":    {Data: []byte("```lesson\ntitle = \"Weeks\"\npart = \"page\"\n```\n\n```compute unit-plan\n```\n")},
	}, "unit")
	class, staff := pressings(t, unit, words, unit.Settings)
	for page, wants := range map[string][]string{
		"index.html": {"13 April (day 2)", "15 April (day 3)"},
		"a.html":     {"Tuesday 13 April, day 2, 9:10 to 10:00"},
		"c.html":     {"Tuesday 13 April, day 2", "Thursday 15 April, day 3"},
	} {
		text := strings.ReplaceAll(tags.ReplaceAllString(class[page], ""), "\u00a0", " ")
		for _, want := range wants {
			if !strings.Contains(text, want) {
				t.Errorf("%s does not say %q:\n%s", page, want, text)
			}
		}
	}
	if text := strings.ReplaceAll(tags.ReplaceAllString(staff["day-b.html"], ""), "\u00a0", " "); !strings.Contains(text, "Thursday 15 April, day 3, 9:10 to 10:00") {
		t.Errorf("the day sheet does not name day 3:\n%s", text)
	}
	if !strings.Contains(class["print-unit-plan.html"], "12 Apr, day\u00a01") {
		t.Error("the calendar for the wall does not number its days")
	}
}

// A date of its own may be one without lesson times, or too late on a half day; the
// lesson is held, and its author told.
func TestDatesOffTheTimetable(t *testing.T) {
	unit, problems := readWith(t, fstest.MapFS{
		"unit.toml": {Data: []byte(cycled)},
		"1-a.md":    {Data: []byte("```lesson\ntitle = \"First\"\ndate = 2027-04-12\n```\n")},
		"2-b.md":    {Data: []byte("```lesson\ntitle = \"Second\"\ndate = 2027-04-16\nstart = \"10:15\"\n```\n")},
		"3-c.md":    {Data: []byte("```lesson\ntitle = \"Third\"\ndate = 2027-04-19\nstart = \"10:15\"\n```\n")},
	}, "unit", placeholder.Catalogue())
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	p := &Plan{unit: unit, course: unit.Course(), words: english(t)}
	calendar, problems := p.calendar(unit.Settings)
	var got []string
	for _, one := range problems {
		got = append(got, one.Error())
	}
	want := "unit/1-a.md:3:8: warning: lesson: 2027-04-12, a Monday, has no lesson times\n" +
		"unit/2-b.md:3:8: warning: lesson: 2027-04-16 is a half day, and school ends before the lesson does"
	if strings.Join(got, "\n") != want {
		t.Errorf("got  %s\nwant %s", strings.Join(got, "\n"), want)
	}
	if h := calendar.Held[1]; h.To-h.From != 50*60*1e9 {
		t.Errorf("the second lesson lasts %v", h.To-h.From)
	}
}
