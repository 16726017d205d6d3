package dial_test

import (
	"math"
	"testing"
	"time"

	"noonbook/build/placeholder/class"
	"noonbook/build/school"

	"noonbook/build/placeholder/entrytest"
)

// tan X = sin φ · tan h, the standard formula of the horizontal dial, on every
// row in both hemispheres, and six o'clock lines square to the noon line.
func TestDialTableObeysTheFormula(t *testing.T) {
	for _, where := range []string{"alder reach", "south", "arctic", "north pole", "half hour"} {
		r := reckon(t, where, "dial-table", "2027-04-20")
		sin := math.Sin(math.Abs(school.Latitude.Of(entrytest.Settings(t, where))) * math.Pi / 180)
		hours, lines := entrytest.Column(t, r, "hour_angle"), entrytest.Column(t, r, "line_angle")
		for i, h := range hours {
			x, h := lines[i]*math.Pi/180, h*math.Pi/180
			// The formula without its poles: both directions have the same ratio.
			entrytest.Near(t, where+": direction", math.Sin(x)*math.Cos(h), math.Cos(x)*sin*math.Sin(h), 1e-9)
			if math.Abs(math.Abs(hours[i])-90) < 1e-9 {
				entrytest.Near(t, where+": six o'clock line", math.Abs(lines[i]), 90, 1e-9)
			}
		}
		if len(hours) < 13 {
			t.Errorf("%s has only %d lines", where, len(hours))
		}
	}
}

// A published worked dial for 54.8° N: 1 to 6 hours from noon.
func TestDialTablePublishedRow(t *testing.T) {
	r := reckon(t, "alder reach", "dial-table", "2027-04-20", "school.latitude=54.8")
	hours, lines := entrytest.Column(t, r, "hour_angle"), entrytest.Column(t, r, "line_angle")
	want := map[float64]float64{15: 12.35, 30: 25.26, 45: 39.25, 60: 54.76, 75: 71.85, 90: 90}
	found := 0
	for i, h := range hours {
		if w, ok := want[math.Round(h)]; ok {
			entrytest.Near(t, "line", lines[i], w, 0.005) // half of the last printed digit
			entrytest.Near(t, "line of the morning", lines[len(lines)-1-i], -w, 0.005)
			found++
		}
	}
	if found != len(want) {
		t.Errorf("%d of %d hours are there", found, len(want))
	}
}

// Below the equator the hours run anticlockwise, as true bearings show, and the
// noon shadow points south; from the equator up the other way about.
func TestHemispheres(t *testing.T) {
	for _, c := range []struct {
		school       string
		turns, noon  string
		afternoon    float64 // side of the compass on which bearings of the afternoon lie, sine
		dialNoonLine float64
	}{
		{"alder reach", "dial-table.clockwise", "compass.true_north", 1, 0},
		{"south", "dial-table.anticlockwise", "compass.true_south", 1, 180},
	} {
		r := reckon(t, c.school, "dial-table", "2027-05-05")
		if got := entrytest.Fact(t, r, "turns").Phrase.Key; got != c.turns {
			t.Errorf("%s turns %s", c.school, got)
		}
		hours, bearings := entrytest.Column(t, r, "hour_angle"), entrytest.Column(t, r, "bearing")
		for i, h := range hours {
			if h == 0 {
				entrytest.Near(t, c.school+": noon line", bearings[i], c.dialNoonLine, 1e-9)
			}
			if h == 45 && math.Sin(bearings[i]*math.Pi/180)*c.afternoon <= 0 {
				t.Errorf("%s: the line of three o'clock bears %v", c.school, bearings[i])
			}
		}
		if got := entrytest.Fact(t, reckon(t, c.school, "dial-day", "2027-05-05"), "noon_shadow_points").Phrase.Key; got != c.noon {
			t.Errorf("%s: noon shadow points %s", c.school, got)
		}
	}
}

// Dial to clock is longitude and daylight saving less the equation of time.
// Landmarks of the equation of time: about +16 min on 3 November and −14 min on
// 11 February, National Physical Laboratory FAQ.
func TestDialClock(t *testing.T) {
	r := reckon(t, "alder reach", "dial-clock", "2027-11-03")
	equation := entrytest.Fact(t, r, "equation_of_time").Number
	entrytest.Near(t, "equation of time in November", equation/60, 16.4, 0.2)
	entrytest.Near(t, "longitude part", entrytest.Fact(t, r, "longitude_part").Number, (64.77-60)*4*60, 0.5)
	entrytest.Near(t, "correction", entrytest.Fact(t, r, "dial_to_clock").Number, (64.77-60)*240+3600-equation, 0.5)
	r = reckon(t, "alder reach", "dial-clock", "2027-02-11")
	entrytest.Near(t, "equation of time in February", entrytest.Fact(t, r, "equation_of_time").Number/60, -14.2, 0.2)
	entrytest.Near(t, "correction in winter", entrytest.Fact(t, r, "dial_to_clock").Number, (64.77-60)*240-entrytest.Fact(t, r, "equation_of_time").Number, 0.5)
	if got := len(r.Tables[0].Rows); got != 36 {
		t.Errorf("%d rows in a year", got)
	}
}

// What an uncorrected compass costs at Alder Reach. The face alone: atan(tan τ /
// sin φ), τ the variation, which is the dialist's bound of an hour and a half;
// plate and gnomon together, for a small turn τ (sin φ − cos φ tan δ), less.
func TestNeedleFacts(t *testing.T) {
	r := reckon(t, "alder reach", "dial-table", "2027-04-20")
	rad := math.Pi / 180
	variation := entrytest.Fact(t, entrytest.Reckon(t, class.Entries(), "alder reach", "place-facts", "2027-04-20"), "magnetic_variation").Number * rad
	face := math.Atan(math.Tan(-variation)/math.Sin(46.09*rad)) / rad * 240
	entrytest.Near(t, "face alone", entrytest.Fact(t, r, "needle_face").Number, face, 1)
	entrytest.Near(t, "face alone, in hours", face/3600, 1.5, 0.05)
	whole := -variation / rad * 240 * (math.Sin(46.09*rad) - math.Cos(46.09*rad)*math.Tan(11.5*rad))
	entrytest.Near(t, "plate and gnomon", entrytest.Fact(t, r, "needle_noon").Number, whole, 120) // second order in τ
	if most := entrytest.Fact(t, r, "needle_most").Number; most < whole || most > face {
		t.Errorf("the most of the year is %v s", most)
	}
}

// A dial day follows the clock over a change: 24 whole hours less one in spring.
func TestDialDayOnAClockChange(t *testing.T) {
	r := reckon(t, "arctic", "dial-day", "2027-06-21")
	if got := len(r.Tables[0].Rows); got != 24 {
		t.Errorf("%d hours of midnight Sun", got)
	}
	if r := reckon(t, "arctic", "dial-day", "2027-12-21"); len(r.Tables) != 0 || len(r.Warnings) == 0 {
		t.Error("a shadow falls in the polar night")
	}
	rows := reckon(t, "alder reach", "dial-day", "2027-03-14").Tables[0].Rows
	for i := 1; i < len(rows); i++ {
		if step := rows[i].Cells[0].Time.Sub(rows[i-1].Cells[0].Time); step != time.Hour {
			t.Errorf("a step of %v", step)
		}
	}
}
