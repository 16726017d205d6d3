package placeholder_test

import (
	"testing"
	"time"

	"noonbook/build/placeholder/entrytest"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/classroom"
)

// A unit has one number of school days on which the Moon can be looked for in lesson
// time: the table of lesson times, the diary and the alerts count the same days, and
// the calendar gives a lesson that needs the Moon no other.
func TestOneCountOfMoonsInLessonTime(t *testing.T) {
	const times = "term.lesson_times=9:10-10:00,10:15-11:05,13:15-14:05"
	counted := 0.0
	for where := range entrytest.Schools {
		days := entrytest.Fact(t, reckon(t, where, "moon-school", "2027-04-12", times, "from=2027-04-12", "to=2027-05-09"), "days").Number
		diary := reckon(t, where, "moon-diary", "2027-04-12", times)
		if got := entrytest.Fact(t, diary, "in_lessons").Number; got != days {
			t.Errorf("%s: the diary has %v days, the table %v", where, got, days)
		}
		alerts := 0.0
		for _, what := range entrytest.Cells(t, reckon(t, where, "sky-alerts", "2027-04-12", times, "from=2027-04-12", "to=2027-05-09"), "days", "what") {
			switch what.Phrase.Key {
			case "sky-alerts.day_moon":
				alerts++
			case "sky-alerts.day_moon_until":
				alerts += what.Phrase.With[1].Number
			}
		}
		if alerts != days {
			t.Errorf("%s: the alerts have %v days, the table %v", where, alerts, days)
		}
		v := entrytest.Settings(t, where)
		sky, looked := classroom.Over(school.Place(v)), entrytest.Cells(t, diary, "days", "place")
		for i := range looked {
			d := entrytest.Day(t, "2027-04-12").Add(i)
			for _, from := range []time.Duration{9*time.Hour + 10*time.Minute, 10*time.Hour + 15*time.Minute, 13*time.Hour + 15*time.Minute} {
				slot := classroom.Slot{Date: d, Span: classroom.Span{From: from, To: from + 50*time.Minute}}
				need := classroom.Need{Kind: classroom.MoonUp, Height: classroom.MoonLeast, Window: 10 * time.Minute}
				if school.Term(v).Teaches(d) && sky.Meets(need, slot) && (looked[i].Kind != say.Wording || looked[i].Phrase.Key != "moon-diary.lesson") {
					t.Errorf("%s: the calendar finds the Moon in a lesson of %v, the diary does not", where, d)
				}
			}
		}
		counted += days
	}
	if counted < 30 {
		t.Errorf("only %v days are counted", counted)
	}
}
