package plan

import (
	"slices"
	"strings"
	"testing"

	"noonbook/build/placeholder"
	"noonbook/build/school"
)

// Warnings of what does not travel: a date outside the term, and a sentence into which
// "there is none" was put. A date after "as of" says how old a fact is, and a cell of a
// table that says "none" is no sentence.
func TestWarningsOfWhatDoesNotTravel(t *testing.T) {
	unit, words := read(t, dayUnit("auto", "Seen on 21 June 2027, 20 April 2027 and 20 July 1969; as of 31 December 2026.\nThe clock {place-facts.next_clock_change} or {place-facts.next_clock_change school.time_zone=\"Africa/Nairobi\"}.\n\n| a | b |\n|---|---|\n| {place-facts.next_clock_change school.time_zone=\"Africa/Lagos\"} | no {place-facts.next_clock_change school.time_zone=\"Africa/Accra\"} |\n\n```compute sun-day\ndate = 2027-06-21\n```"), "unit")
	want := []string{
		`unit/1-a.md:4:9: warning: 21 June 2027 is outside the term, 2027-04-12 to 2027-04-30; a day by name, such as "next full Moon", travels with the term`,
		`unit/1-a.md:5:47: warning: place-facts.next_clock_change has no value at this school, and the sentence says "no clock change is due" in its place`,
		`unit/1-a.md:9:73: warning: place-facts.next_clock_change has no value at this school, and the sentence says "no clock change is due" in its place`,
		`unit/1-a.md:12:8: warning: date = 2027-06-21 is outside the term, 2027-04-12 to 2027-04-30; a day by name, such as "next full Moon", travels with the term`,
	}
	for _, edition := range []Edition{Class, Staff} {
		p, err := Make(unit, words, edition, placeholder.Catalogue())
		if err != nil {
			t.Fatal(err)
		}
		_, problems := p.Press(unit.Settings)
		var got []string
		for _, problem := range problems {
			got = append(got, problem.Error())
		}
		if !slices.Equal(got, want) {
			t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
		}
		summer := school.TermFirstDay.Is(dayOn(t, "2027-06-14")).With(school.TermLastDay.Is(dayOn(t, "2027-06-25")))
		if _, problems := p.Press(unit.Settings.With(summer)); len(problems) != 3 || !strings.Contains(problems[0].Error(), "20 April 2027 is outside the term") {
			t.Errorf("in June: %v", problems)
		}
	}
}
