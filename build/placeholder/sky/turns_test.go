package sky_test

import (
	"slices"
	"testing"

	"noonbook/build/placeholder/entrytest"
)

// What the list of days says of the solstices, in each hemisphere and between the
// tropics: seasonnames_test.go of the Sun's topic has the sources.
func TestTurnsInTheList(t *testing.T) {
	for _, c := range []struct{ school, reckoning, want string }{
		{"alder reach", "astronomical", "The season that begins here: summer."},
		{"alder reach", "calendar", "By the calendar it is summer here already."},
		{"south", "astronomical", "The season that begins here: winter."},
		{"south", "calendar", "By the calendar it is winter here already."},
		{"line north", "calendar", "The Sun is as far north as it comes."},
		{"equator", "astronomical", "The Sun is as far north as it comes."},
	} {
		r := reckon(t, c.school, "sky-alerts", "2027-06-15", "from=2027-06-15", "to=2027-06-25", "school.seasons="+c.reckoning)
		looks, found := entrytest.Texts(t, r, "days", "look"), false
		for i, what := range entrytest.Texts(t, r, "days", "what") {
			if what == "June solstice" {
				found = true
				if looks[i] != c.want {
					t.Errorf("%s, %s: %s", c.school, c.reckoning, looks[i])
				}
			}
		}
		if !found {
			t.Errorf("%s: no solstice in June", c.school)
		}
	}
	december := reckon(t, "line north", "sky-alerts", "2027-12-15", "from=2027-12-15", "to=2027-12-25")
	if looks := entrytest.Texts(t, december, "days", "look"); !slices.Contains(looks, "The Sun is as far south as it comes.") {
		t.Errorf("in December near the equator: %v", looks)
	}
}
