package rocket_test

import (
	"strings"
	"testing"

	"noonbook/build/placeholder/entrytest"
)

// The words of the published scale for use on land (WMO-No. 306; the Met Office prints
// the same ones; from memory), and how far each force goes in m/s. At a limit of 4 m/s
// force 2 is within it and force 3, up to 5.4 m/s, may be more.
func TestWindByWhatItMoves(t *testing.T) {
	for _, row := range []struct{ limit, good, wait string }{
		{"0", "smoke goes straight up", "smoke drifts"},
		{"2", "smoke drifts", "leaves rustle"},
		{"4", "leaves rustle", "small twigs"},
		{"5.4", "small twigs", "dust and loose paper"},
		{"9", "small branches move", "small trees with leaves begin to sway"},
		{"13.8", "large branches move", "whole trees"},
		{"15", "large branches move", "whole trees"},
	} {
		r := reckon(t, "alder reach", "rocket-zone", "2027-04-28", "field.wind_m_s="+row.limit)
		good, wait := entrytest.Shown(t, r, "wind_good"), entrytest.Shown(t, r, "wind_sign")
		if !strings.Contains(good, row.good) || !strings.Contains(wait, row.wait) {
			t.Errorf("up to %s m/s: launch while %q, wait as soon as %q", row.limit, good, wait)
		}
	}
}
