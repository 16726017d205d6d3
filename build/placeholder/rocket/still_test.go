package rocket_test

import (
	"slices"
	"strings"
	"testing"

	"noonbook/build/placeholder/entrytest"
)

// The height by a flight's time is that of a flight straight up in still air, however
// hard the wind is that the clear zone is made for: by scipy 3.314 s reach 13.545 m
// (rocket-flights.csv; the rocket is scipys).
func TestHeightByTimeIsForStillAir(t *testing.T) {
	given := slices.DeleteFunc(slices.Clone(scipys), func(pair string) bool { return strings.HasPrefix(pair, "field.wind") })
	for _, wind := range []string{"0", "4", "8", "12"} {
		r := entrytest.ReckonLog(t, entries(), "alder reach", "rocket-log", "fins,flight_s\n3,3.314001\n", append(slices.Clone(given), "field.wind_m_s="+wind)...)
		heights, ways := entrytest.Cells(t, r, "flights", "height"), entrytest.Cells(t, r, "flights", "way")
		if len(heights) != 1 || ways[0].Phrase.Key != "rocket-log.by_time" {
			t.Fatalf("%d flights", len(heights))
		}
		entrytest.Near(t, "height by time in a wind of "+wind+" m/s", heights[0].Number, 13.5454470303, 0.01)
	}
}
