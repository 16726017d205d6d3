package sun_test

import (
	"testing"

	"noonbook/build/placeholder/entrytest"
)

// Through the year: noon heights at the solstices are 90° less latitude plus and
// less the obliquity, 23.44°, where the air hardly lifts; at the polar circle's
// far side days of 24 h; on the equator days of 12 h and 400 s to 436 s,
// for twice the 50′ of the rising convention at 15° an hour times the cosine of
// the declination, give and take the 20 s by which noon moves in a day.
func TestSunYear(t *testing.T) {
	r := reckon(t, "alder reach", "sun-year", "2027-04-20")
	entrytest.Near(t, "highest", entrytest.Fact(t, r, "highest_noon").Number, 90-46.09+23.44, 0.02)
	entrytest.Near(t, "lowest", entrytest.Fact(t, r, "lowest_noon").Number, 90-46.09-23.44, 0.06)
	if len(r.Drawings) != 2 || len(r.Tables[0].Rows) != 36 {
		t.Errorf("%d charts, %d rows", len(r.Drawings), len(r.Tables[0].Rows))
	}
	r = reckon(t, "equator", "sun-year", "2027-04-20", "rows=monthly")
	for _, s := range entrytest.Column(t, r, "day_length") {
		entrytest.Near(t, "day on the equator", s, 12*3600+(400+436)/2, 18+20)
	}
	if len(r.Tables[0].Rows) != 12 {
		t.Errorf("%d rows", len(r.Tables[0].Rows))
	}
	entrytest.Near(t, "longest in the arctic", entrytest.Fact(t, reckon(t, "arctic", "sun-year", "2027-04-20"), "longest").Number, 24*3600, 0)
}
