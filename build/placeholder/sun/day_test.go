package sun_test

import (
	"testing"

	"noonbook/build/placeholder/entrytest"
	"noonbook/build/say"
)

// Polar day and night: no rise or set, a day of 24 h or none, in words.
func TestPolarDays(t *testing.T) {
	for _, c := range []struct {
		school, date, words string
		hours               float64
	}{
		{"arctic", "2027-06-21", "sun-day.polar_day", 24},
		{"arctic", "2027-12-21", "sun-day.polar_night", 0},
		{"north pole", "2027-06-21", "sun-day.polar_day", 24},
		{"north pole", "2027-12-21", "sun-day.polar_night", 0},
		{"south pole", "2027-06-21", "sun-day.polar_night", 0},
	} {
		r := reckon(t, c.school, "sun-day", c.date)
		if entrytest.Fact(t, r, "rise").Kind != say.Nothing || entrytest.Fact(t, r, "set").Kind != say.Nothing {
			t.Errorf("%s on %s: the Sun rises or sets", c.school, c.date)
		}
		entrytest.Near(t, c.school+": day length", entrytest.Fact(t, r, "day_length").Number, c.hours*3600, 0)
		if got := entrytest.Fact(t, r, "in_words").Phrase.Key; got != c.words {
			t.Errorf("%s on %s: %s", c.school, c.date, got)
		}
	}
}

// The days on which the midnight Sun begins and ends have one rise or set, or
// an uneven number; the day's length stays between 20 and 24 hours. Tromsø's
// midnight Sun lasts from about 18 May to 26 July, common practice, no source.
func TestDaysAroundTheMidnightSun(t *testing.T) {
	for _, date := range []string{"2027-05-15", "2027-05-16", "2027-05-17", "2027-05-18", "2027-05-19", "2027-07-24", "2027-07-25", "2027-07-26", "2027-07-27", "2027-07-28"} {
		hours := entrytest.Fact(t, reckon(t, "arctic", "sun-day", date), "day_length").Number / 3600
		if hours < 20 || hours > 24 {
			t.Errorf("%s lasts %v h", date, hours)
		}
	}
}

// Rise, noon and set at Alder Reach to a second, on the days of ERFA's rows of
// testdata/reference/sun-days.csv.
func TestSunDayAtAlderReach(t *testing.T) {
	days := 0
	for _, row := range entrytest.Reference(t, "sun-days.csv", "erfa") {
		if row["place"] != "alder-reach" {
			continue
		}
		days++
		r := reckon(t, "alder reach", "sun-day", row["date"])
		for fact, column := range map[string]string{"rise": "rise", "noon": "transit", "set": "set"} {
			off := entrytest.Fact(t, r, fact).Time.Sub(entrytest.Instant(t, row[column]))
			entrytest.Near(t, row["date"]+": "+fact, off.Seconds(), 0, 1)
		}
	}
	if days < 10 {
		t.Errorf("only %d days were looked at", days)
	}
}
