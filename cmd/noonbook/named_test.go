package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// A day by name on the command line counts from the term's first day, 12 April 2027 in
// the folder here; the Moon is full on 20 April 2027, 22:28 TT (Swiss Ephemeris,
// testdata/reference/phases.csv), 21 April in Auckland. What is wrong is said in one line.
func TestReckonOnANamedDay(t *testing.T) {
	dir := t.TempDir()
	for name, text := range map[string]string{
		"unit.toml": "unit.title = \"T\"\n[school]\nname = \"S\"\nlatitude = 46.09\nlongitude = -64.77\ntime_zone = \"America/Moncton\"\n[term]\nfirst_day = 2027-04-12\nlast_day = 2027-04-30\n",
		"1-a.md":    "```lesson\ntitle = \"A\"\n```\n",
		"2-b.md":    "```lesson\ntitle = \"B\"\ndate = \"2 days after 1-a\"\n```\n",
		"9-page.md": "```lesson\ntitle = \"P\"\npart = \"page\"\n```\n",
	} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	for _, c := range []struct {
		args []string
		want string
	}{
		{[]string{"day.date", "date=next full Moon"}, "Tuesday 20 April\n"},
		{[]string{"day.date", "date=next full Moon", "school.time_zone=Pacific/Auckland"}, "Wednesday 21 April\n"},
		{[]string{"day.date", "date=1 month after this lesson"}, "Wednesday 12 May\n"},
		{[]string{"day.date", "date=1 week after 2-b"}, "Wednesday 21 April\n"},
		{[]string{"day.days_away", "date=last day of term"}, "18\n"},
		{[]string{"day.time", "time=15:00"}, "15:00\n"},
		{[]string{"day.date", "date=first day of term", "term.first_day=2027-05-03"}, ""},
	} {
		code, out, errs := noonbook(t, append([]string{"reckon", "--content", dir}, c.args...)...)
		if c.want == "" {
			if code != wrongUse {
				t.Errorf("%v: exit %d, %q %q", c.args, code, out, errs)
			}
		} else if code != done || out != c.want || errs != "" {
			t.Errorf("%v: exit %d, %q %q, want %q", c.args, code, out, errs, c.want)
		}
	}
	for arg, want := range map[string]string{
		"date=next ful Moon":       `reckon day: date is "next ful Moon"; did you mean "next full Moon"?`,
		"date=1 week after 2-c":    `reckon day: date is "1 week after 2-c"; did you mean "1 week after 2-b"?`,
		"date=someday":             `reckon day: date is "someday", want a date such as 2027-04-20, or a day by name such as "next full Moon"`,
		"date=9-page":              `reckon day: date is "9-page", and 9-page is a page without a day; want a lesson's file`,
		"counted_from=last comet":  `reckon day: counted_from is "last comet", want a date such as 2027-04-20, or a day by name such as "next full Moon"`,
		"date=next solstice after": `reckon day: date is "next solstice after", want a date`,
	} {
		code, out, errs := noonbook(t, "reckon", "--content", dir, "day", arg)
		if code != wrongUse || !strings.HasPrefix(errs, "noonbook: "+want) || strings.Count(errs, "\n") != 1 || out != "" {
			t.Errorf("%s: exit %d, %q %q", arg, code, out, errs)
		}
	}
	list := strings.Join(strings.Fields(must(t, "reckon", "--list", "sun-day")), " ")
	if !strings.Contains(list, `a date such as 2027-04-20, or a day by name such as "next full Moon"; if missing: the lesson's day, else the first day of term`) {
		t.Errorf("the list says %s", list)
	}
	for _, verb := range []string{"reckon", "proof"} {
		if help := must(t, verb, "--help"); verb == "reckon" && !strings.Contains(help, `a day by name such as`) || verb == "proof" && !strings.Contains(help, "a date typed outside this one") {
			t.Errorf("%s --help: %s", verb, help)
		}
	}
}
