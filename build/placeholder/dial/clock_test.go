package dial_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
	"time"

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
		entrytest.Near(t, "longitude", longitude[i], 4.77*240, 0.5) // to the second
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

// At invented longitudes and dates, most of them with a correction within a second of
// half a minute, the sum of the working as it is printed is the sum of its printed parts,
// and its nearest minute is the fact; so are the rows of the table.
func TestDialClockSumIsTheFact(t *testing.T) {
	invented := rand.New(rand.NewPCG(16, 8))
	seconds := func(v say.Value) float64 { return math.Round(v.Number) }
	near := 0
	for range 50 {
		date := time.Date(2027, 1, 1+invented.IntN(365), 0, 0, 0, 0, time.UTC).Format(time.DateOnly)
		zone := []string{"America/Moncton", "Etc/GMT+4", "Australia/Lord_Howe"}[invented.IntN(3)]
		at := func(longitude float64) []string {
			return []string{fmt.Sprintf("school.longitude=%.5f", longitude), "school.time_zone=" + zone}
		}
		longitude := -64 + 8*invented.Float64()
		if zone == "Australia/Lord_Howe" {
			longitude += 220
		}
		// A degree is 240 s: move so far that the correction comes near half a minute.
		r := reckon(t, "alder reach", "dial-clock", date, at(longitude)...)
		off := math.Mod(entrytest.Fact(t, r, "dial_to_clock").Number+7200, 60) - 30
		longitude += (off + 2*invented.Float64() - 1) / 240
		r = reckon(t, "alder reach", "dial-clock", date, at(longitude)...)
		with := r.Working[0].With
		parts := seconds(with[1]) + math.Round(with[2].Number/60)*60 - seconds(with[3])
		sum, fact := seconds(with[4]), entrytest.Fact(t, r, "dial_to_clock")
		if sum != parts {
			t.Errorf("%s at %g°: the parts give %v s, printed are %v s", date, longitude, parts, sum)
		}
		if printed := math.Round(fact.Number/60) * 60; printed != math.Round(sum/60)*60 {
			t.Errorf("%s at %g°: the sum is %v s, the fact %s", date, longitude, sum, entrytest.Written(t, fact))
		}
		if math.Abs(math.Mod(sum+7200, 60)-30) <= 2 {
			near++
		}
		equation, saving := entrytest.Cells(t, r, "year", "equation_of_time"), entrytest.Cells(t, r, "year", "saving_part")
		part, total := entrytest.Cells(t, r, "year", "longitude_part"), entrytest.Cells(t, r, "year", "dial_to_clock")
		for i := range total {
			want := seconds(part[i]) + math.Round(saving[i].Number/60)*60 - seconds(equation[i])
			if math.Round(total[i].Number/60) != math.Round(want/60) {
				t.Errorf("%s at %g°, row %d: the parts give %v s, printed is %s", date, longitude, i, want, entrytest.Written(t, total[i]))
			}
		}
	}
	if near < 45 {
		t.Errorf("only %d of 50 lie near half a minute", near)
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
		// Five strips of 42 mm and 3 mm between them are 222 mm; Letter leaves 236.4 below the
		// head of the sheet, A4 254.
		if len(cells) != 5*36 {
			t.Fatalf("%d cells", len(cells))
		}
		for i, cell := range cells {
			if cell != cells[i%36] {
				t.Fatalf("cell %d of strip %d is %v, of the first %v", i%36, i/36+1, cell, cells[i%36])
			}
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
			found = found || s.Writing != nil && s.Text.Kind == say.Wording && s.Text.Phrase.Key == want
		}
		if !found {
			t.Errorf("%s: the strip does not say %s", school, want)
		}
	}
}
