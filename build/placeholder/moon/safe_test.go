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
