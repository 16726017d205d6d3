package source_test

import (
	"slices"
	"strings"
	"testing"
)

// dated is a lesson with a line in its block and a text from line 5.
func dated(line, text string) string {
	return "```lesson\ntitle = \"L\"\n" + line + "\n```\n" + text + "\n"
}

// Days by name in lessons: each case gives exactly these problems, with their places.
func TestDaysByNameInALesson(t *testing.T) {
	page := "```lesson\ntitle = \"P\"\npart = \"page\"\n```\n"
	want := `a date such as 2027-04-20, or a day by name such as "next full Moon"`
	for _, c := range []struct {
		name  string
		files map[string]string
		want  []string
	}{
		{"wherever a date can stand", map[string]string{
			"1-a.md": dated(`date = "next full Moon"`, "x {sun-day.noon date=\"13 weeks after this lesson\"} {moon-month.phase month=\"next new Moon\"}\n\n```compute sun-day\ndate = \"28 days after 2-b\"\n```"),
			"2-b.md": dated(`date = "1 week after 1-A"`, "{sun-day.noon date=\"next clock change\"}"),
			"c.md":   page + "{sun-day.noon date=1-a} {sun-day.noon date=\"next full Moon after last day of term\"}\n",
		}, nil},
		{"a name misspelt in a sentence", map[string]string{"1-a.md": dated("", "x {sun-day.noon date=\"next ful Moon\"}")},
			[]string{`u/1-a.md:5:17: sun-day: date is "next ful Moon"; did you mean "next full Moon"?`}},
		{"a name misspelt in a block", map[string]string{"1-a.md": dated("", "```compute sun-day\ndate = \"a week after this lesson\"\n```")},
			[]string{`u/1-a.md:6:8: sun-day: date is "a week after this lesson"; did you mean "1 week after this lesson"?`}},
		{"a file misspelt", map[string]string{"1-a.md": dated("", "x {sun-day.noon date=\"2 weeks before 2-later-on\"}"), "2-later.md": dated("", "")},
			[]string{`u/1-a.md:5:17: sun-day: date is "2 weeks before 2-later-on", want ` + want}},
		{"a file nearly right", map[string]string{"1-a.md": dated("", "```compute sun-day\ndate = \"2 weeks before 2-latr\"\n```"), "2-later.md": dated("", "")},
			[]string{`u/1-a.md:6:8: sun-day: date is "2 weeks before 2-latr"; did you mean "2 weeks before 2-later"?`}},
		{"a page without a day", map[string]string{"1-a.md": dated("", "x {sun-day.noon date=\"1 day after c\"}"), "c.md": page},
			[]string{`u/1-a.md:5:17: sun-day: date is "1 day after c", and c is a page without a day; want a lesson's file`}},
		{"this lesson on a page", map[string]string{"c.md": page + "x {sun-day.noon date=\"1 day after this lesson\"}\n"},
			[]string{`u/c.md:5:17: sun-day: date is "1 day after this lesson", and this page is no lesson; want "first day of term", or a lesson's file`}},
		{"in the margin", map[string]string{"1-a.md": "```lesson\ntitle = \"L\"\nglance = ['sun-day.noon date=\"nextfull Moon\"']\n```\n"},
			[]string{`u/1-a.md:3:25: sun-day: date is "nextfull Moon"; did you mean "next full Moon"?`}},
		{"a lesson's own date misspelt", map[string]string{"1-a.md": dated(`date = "tomorrow"`, "")},
			[]string{`u/1-a.md:3:8: lesson: date is "tomorrow", want a date such as 2027-04-20, a day by name such as "next full Moon", or "auto"`}},
		{"auto misspelt", map[string]string{"1-a.md": dated(`date = "Auto"`, "")},
			[]string{`u/1-a.md:3:8: lesson: date is "Auto"; write "auto"`}},
		{"a page with a date", map[string]string{"c.md": "```lesson\ntitle = \"P\"\npart = \"page\"\ndate = \"next full Moon\"\n```\n"},
			[]string{`u/c.md:4:8: lesson: date is "next full Moon", and a page has no date; want part = "lesson"`}},
		{"a lesson dated by itself", map[string]string{"1-a.md": dated(`date = "1 week after this lesson"`, "")},
			[]string{`u/1-a.md:3:8: lesson: date is "1 week after this lesson", and a lesson cannot be dated by itself`}},
		{"a lesson dated by its own file", map[string]string{"1-a.md": dated(`date = "next full Moon after 1-a"`, "")},
			[]string{`u/1-a.md:3:8: lesson: date is "next full Moon after 1-a", and a lesson cannot be dated by itself`}},
		{"two dated by each other", map[string]string{"1-a.md": dated(`date = "1 week before 2-b"`, ""), "2-b.md": dated(`date = "1 week after 1-a"`, "")},
			[]string{`u/1-a.md:3:8: lesson: dates go round in a circle: 1-a is dated by 2-b, which is dated by 1-a`}},
		{"three in a circle, and one that runs into it", map[string]string{
			"1-a.md": dated(`date = "1 day after 2-b"`, ""), "2-b.md": dated(`date = "1 day after 3-c"`, ""),
			"3-c.md": dated(`date = "1 day after 4-d"`, ""), "4-d.md": dated(`date = "1 day after 2-b"`, "")},
			[]string{`u/2-b.md:3:8: lesson: dates go round in a circle: 2-b is dated by 3-c, which is dated by 4-d, which is dated by 2-b`}},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, problems := unitOf(t, c.files)
			var got []string
			for _, p := range problems {
				got = append(got, p.Error())
			}
			if !slices.Equal(got, c.want) {
				t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(c.want, "\n"))
			}
		})
	}
}
