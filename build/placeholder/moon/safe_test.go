package moon_test

import (
	"testing"

	"noonbook/build/placeholder/entrytest"
)

// A class is told not to search where the Moon stands nearer to the Sun than 35°, the
// bound of the page's caution, and nowhere else: new Moon on 6 April and on 6 May 2027.
func TestWordsOfWhereNotToSearch(t *testing.T) {
	told := map[string]int{}
	for _, school := range []string{"alder reach", "south", "line north"} {
		r := reckon(t, school, "moon-school", "2027-04-20", "from=2027-04-01", "to=2027-05-12", "term.lesson_times=9:10-15:00", "altitude_deg=5")
		words := entrytest.Texts(t, r, "chances", "safe")
		for i, apart := range entrytest.Column(t, r, "sun_distance") {
			want := "yes"
			if apart < 35 {
				want = "no, do not search"
			}
			if told[words[i]]++; words[i] != want {
				t.Errorf("%s: is the Moon %.0f° from the Sun safe? %s", school, apart, words[i])
			}
		}
	}
	if len(told) != 2 {
		t.Errorf("words that were tried: %v", told)
	}
}

// Nobody is sent out from home for a Moon that is less than about a tenth lit, as it is
// nearer to the Sun than 35°: (1 − cos 35°) / 2 = 9 % (Meeus, Astronomical Algorithms, ch.
// 48, the angle at the Moon being nearly 180° less that at the Earth). A month holds such
// days, and they are told.
func TestDiaryLeavesThinMoonsAlone(t *testing.T) {
	for _, school := range []string{"alder reach", "south", "line north", "line south", "far east", "half hour", "arctic"} {
		for _, date := range []string{"2027-04-12", "2027-05-06", "2027-09-01"} {
			r := reckon(t, school, "moon-diary", date, "latest=22:30", "earliest=5:00")
			places, lit := entrytest.Texts(t, r, "days", "place"), entrytest.Cells(t, r, "days", "lit")
			for i, place := range places {
				if (place == "at home, by day" || place == "with an adult") && lit[i].Number < 8 {
					t.Errorf("%s, day %d from %s: %s for a Moon %.0f %% lit", school, i, date, place, lit[i].Number)
				}
			}
			if near := entrytest.Fact(t, r, "near_sun").Number; near < 1 {
				t.Errorf("%s from %s: no day is left alone", school, date)
			}
		}
	}
}
