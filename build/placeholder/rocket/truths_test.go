package rocket_test

import (
	"testing"

	"noonbook/build/placeholder/entrytest"
)

// At Tromsø the Sun is down all day on 21 December and up on 20 April.
func TestTheSunIsUpAtTheLaunches(t *testing.T) {
	for day, want := range map[string]float64{"2027-12-21": 0, "2027-04-20": 1} {
		if got := entrytest.Fact(t, reckon(t, "arctic", "rocket-zone", day, "day="+day, "time=12:00"), "sun_up").Number; got != want {
			t.Errorf("on %s: %v, want %v", day, got, want)
		}
	}
}
