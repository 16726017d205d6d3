package moon_test

import (
	"testing"

	"noonbook/build/placeholder/entrytest"
)

// The Moon goes round the Earth eastward, counterclockwise as seen from above the north
// pole (any atlas of the sky; Meeus, Astronomical Algorithms, ch. 47: its longitude grows
// by 13.2° a day). Somebody who stands upright in the north and follows it turns to the
// left, and in the south, where up is the other way, to the right. A growing Moon is lit on
// the right in the north and on the left in the south (common practice, no source).
func TestTurnWithTheMoon(t *testing.T) {
	for school, side := range map[string]string{"alder reach": "left", "line north": "left", "arctic": "left", "south": "right"} {
		other := map[string]string{"left": "right", "right": "left"}[side]
		r := reckon(t, school, "moon-month", "2027-04-20")
		for fact, want := range map[string]string{"turn": side, "growing_side": other, "shrinking_side": side} {
			if got := entrytest.Shown(t, r, fact); got != want {
				t.Errorf("%s: %s is %s, want %s", school, fact, got, want)
			}
		}
	}
	for fact, want := range map[string]string{"turn": "Turn to the", "growing_side": "Lit while it grows", "shrinking_side": "Lit while it shrinks"} {
		if label := entrytest.English(t).Say("moon-month.fact." + fact); label != want {
			t.Errorf("%s is called %q", fact, label)
		}
	}
}

// A lesson has a Moon to look for where the table has a safe one.
func TestSomeMoonInLessons(t *testing.T) {
	for _, days := range [][2]string{{"2027-04-12", "2027-04-16"}, {"2027-05-05", "2027-05-06"}} {
		r := reckon(t, "alder reach", "moon-school", days[0], "from="+days[0], "to="+days[1])
		want := "no"
		if len(r.Tables) > 0 {
			for _, safe := range entrytest.Texts(t, r, "chances", "safe") {
				if safe == "yes" {
					want = "yes"
				}
			}
		}
		if got := entrytest.Shown(t, r, "some"); got != want {
			t.Errorf("%v: a Moon in lessons: %s, want %s", days, got, want)
		}
	}
}
