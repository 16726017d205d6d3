package class_test

import (
	"testing"

	"noonbook/build/placeholder/entrytest"
)

// Outside the tropics the Sun passes over the side of the equator, from east to west: to
// the right for somebody who faces south, to the left for somebody who faces north
// (common practice, no source). A line drawn from left to right begins accordingly.
func TestHorizonFromLeftToRight(t *testing.T) {
	for school, want := range map[string]string{
		"alder reach": "north-east, east, south-east, south, south-west, west and north-west",
		"arctic":      "north-east, east, south-east, south, south-west, west and north-west",
		"south":       "south-west, west, north-west, north, north-east, east and south-east",
		"line north":  "north, north-east, east, south-east, south, south-west, west, north-west and north",
	} {
		if got := entrytest.Shown(t, reckon(t, school, "place-facts", "2027-04-20"), "horizon"); got != want {
			t.Errorf("%s: %s, want %s", school, got, want)
		}
	}
	if label := entrytest.English(t).Say("place-facts.fact.horizon"); label != "Horizon, from left to right" {
		t.Errorf("the line is called %q", label)
	}
}
