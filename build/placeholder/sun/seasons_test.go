package sun_test

import (
	"math"
	"strings"
	"testing"

	"noonbook/build/placeholder/entrytest"
)

// The seasons of 2026 to 2035 within 20 s of ERFA, in both hemispheres.
func TestSeasonsAgainstReference(t *testing.T) {
	local := map[string][2]string{ // season that begins at the turn, north and south
		"march-equinox": {"spring_begins", "autumn_begins"}, "june-solstice": {"summer_begins", "winter_begins"},
		"september-equinox": {"autumn_begins", "spring_begins"}, "december-solstice": {"winter_begins", "summer_begins"},
	}
	worst := 0.0
	for _, row := range entrytest.Reference(t, "seasons.csv", "erfa") {
		if year := row["tt"][:4]; year >= "2026" && year <= "2035" {
			want := entrytest.FromTT(t, row["tt"])
			for i, school := range []string{"alder reach", "south"} {
				r := reckon(t, school, "season-dates", "2027-04-20", "year="+year)
				for _, name := range []string{strings.ReplaceAll(row["season"], "-", "_"), local[row["season"]][i]} {
					off := entrytest.Fact(t, r, name).Time.Sub(want).Seconds()
					worst = max(worst, math.Abs(off))
					entrytest.Near(t, school+" "+year+" "+name, off, 0, 20)
				}
			}
		}
	}
	t.Logf("seasons of 2026 to 2035: within %.1f s of ERFA", worst)
	if got := entrytest.Fact(t, reckon(t, "south", "season-dates", "2027-04-20"), "season").Phrase.Key; got != "season.autumn" {
		t.Errorf("April in the south is %s", got)
	}
}
