package dial_test

import (
	"testing"

	"noonbook/build/placeholder/entrytest"
	"noonbook/build/say"
)

// On every row the causes add up to what is added, and daylight saving is its
// own column: at Alder Reach from 14 March to 7 November 2027 (IANA database).
func TestDialClockCausesAddUp(t *testing.T) {
	r := reckon(t, "alder reach", "dial-clock", "2027-04-20", "every_days=1")
	equation, longitude := entrytest.Column(t, r, "equation_of_time"), entrytest.Column(t, r, "longitude_part")
	saving, total := entrytest.Column(t, r, "saving_part"), entrytest.Column(t, r, "dial_to_clock")
	summer := 0
	for i := range total {
		entrytest.Near(t, "sum", total[i], longitude[i]+saving[i]-equation[i], 1e-6)
		entrytest.Near(t, "longitude", longitude[i], 4.77*240, 1e-6)
		if saving[i] == 3600 {
			summer++
		} else if saving[i] != 0 {
			t.Errorf("day %d: daylight saving of %v s", i, saving[i])
		}
	}
	if summer != 238 { // 14 March to 6 November, both included
		t.Errorf("%d days of daylight saving", summer)
	}
}

// The strip to glue on the dial leaves daylight saving out, for its dates change
// from year to year, and fits on one sheet of either paper.
func TestPocketStrip(t *testing.T) {
	for _, paper := range []string{"A4", "Letter"} {
		r := reckon(t, "alder reach", "dial-clock", "2027-04-20", "school.paper="+paper)
		if len(r.Sheets) != 1 || r.Sheets[0].Paper.Name != paper {
			t.Fatalf("%d sheets", len(r.Sheets))
		}
		var cells []float64
		for _, s := range r.Sheets[0].Drawing.Shapes {
			if s.Role == "cell" {
				cells = append(cells, s.Text.Number)
			}
		}
		if len(cells) != 36 {
			t.Fatalf("%d cells", len(cells))
		}
		// 1 January and 11 February: 19.08 min for the longitude, and what the dial is
		// slow by the equation of time, −3.5 and −14.2 min (NPL FAQ; astropy's table for
		// the first).
		entrytest.Near(t, "1 January", cells[0], 19.08+3.4, 1)
		entrytest.Near(t, "11 February", cells[4], 19.08+14.2, 1)
	}
	foot := map[string]string{"alder reach": "dial-clock.strip_saving", "half hour": "dial-clock.strip_no_saving", "south": "dial-clock.strip_saving"}
	for school, want := range foot {
		found := false
		for _, s := range reckon(t, school, "dial-clock", "2027-04-20").Sheets[0].Drawing.Shapes {
			found = found || s.Text.Kind == say.Wording && s.Text.Phrase.Key == want
		}
		if !found {
			t.Errorf("%s: the strip does not say %s", school, want)
		}
	}
}
