package source_test

import (
	"slices"
	"strings"
	"testing"

	"noonbook/build/school"
)

// Dates that are typed in a sentence, in English and French, with their places. What is
// no sentence holds none.
func TestTypedDates(t *testing.T) {
	text := `On 13 April 2027, April 13, 2027 and 2027-04-13; in *June 2027*.
Le 1er mai
2027 et le 13&nbsp;x, en août 2026; **3 décembre 2026**.

> A quote of 4 July
> 2027 here.

| Day |
|---|
| 5 May 2027 |

` + "`6 May 2027` [x](2027-05-07.svg) 31 April 2027, 113 April 1969, 12027-04-13, in May, 2027 stars\n\n```\n8 May 2027\n```\n"
	unit, _ := unitOf(t, map[string]string{"a.md": head + text, "2027-05-07.svg": `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 1"/>`})
	var got []string
	for _, typed := range unit.Lessons[0].Typed {
		got = append(got, strings.TrimPrefix(typed.At.String(), "u/a.md:")+" "+typed.Text+" "+typed.First.String()+" "+typed.Last.String())
	}
	slices.Sort(got)
	want := []string{
		"4:19 April 13, 2027 2027-04-13 2027-04-13",
		"4:38 2027-04-13 2027-04-13 2027-04-13",
		"4:4 13 April 2027 2027-04-13 2027-04-13",
		"4:54 June 2027 2027-06-01 2027-06-30",
		"5:4 1er mai 2027 2027-05-01 2027-05-01",
		"6:26 août 2026 2026-08-01 2026-08-31",
		"6:40 3 décembre 2026 2026-12-03 2026-12-03",
		"8:14 4 July 2027 2027-07-04 2027-07-04",
		"13:3 5 May 2027 2027-05-05 2027-05-05",
	}
	slices.Sort(want)
	for _, w := range want {
		if !slices.Contains(got, w) {
			t.Errorf("it lacks %s", w)
		}
	}
	for _, g := range got {
		if !slices.Contains(want, g) && !strings.Contains(g, "April 2027 2027-04-01") && !strings.Contains(g, "April 1969 1969-04-01") {
			t.Errorf("it holds %s", g)
		}
	}
}

// A date lies outside the term where its year is near and it is in no list of history.
func TestTypedOutsideTheTerm(t *testing.T) {
	unit, _ := unitOf(t, map[string]string{"a.md": head + `In the term 13 April 2027, before it 11 April 2027, after it May 2027, across April 2027.
History on 20 July 1969, plans of May 2031, May 2030.

- on 4 October 1957
- on 2 May 2026

| When |
|---|
| 2 May 2025 |

{sun-day.noon date=2027-06-21} {sun-day.noon date=1969-07-20} {moon-month.phase month=2027-07} {season-dates.next school.name="x"}
`})
	var got []string
	for _, typed := range unit.Lessons[0].Typed {
		if typed.Outside(school.TermFirstDay.Of(unit.Settings), school.TermLastDay.Of(unit.Settings)) {
			got = append(got, typed.Text)
		}
	}
	slices.Sort(got)
	want := []string{"11 April 2027", "2 May 2025", "May 2027", "May 2030", "date = 2027-06-21", "month = 2027-07"}
	if !slices.Equal(got, want) {
		t.Errorf("outside are %q, want %q", got, want)
	}
}
