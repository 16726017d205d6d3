package dial_test

import (
	"math"
	"testing"

	"noonbook/build/placeholder/entrytest"
)

// The middle of two equal shadows is true north but for what the table says of
// it, and the stick's shadows are as long as each other, in both hemispheres.
func TestDialNorth(t *testing.T) {
	for _, school := range []string{"alder reach", "south", "half hour", "line north"} {
		r := reckon(t, school, "dial-north", "2027-04-20")
		before, after, off := entrytest.Column(t, r, "before_bearing"), entrytest.Column(t, r, "after_bearing"), entrytest.Column(t, r, "middle_off")
		if len(off) != 3 {
			t.Errorf("%s: %d pairs", school, len(off))
		}
		for i := range off {
			sum := math.Mod(before[i]+after[i], 360) / 2 // the middle, or the direction opposite to it
			gap := math.Remainder(sum-off[i], 180)
			entrytest.Near(t, school+": middle", math.Abs(math.Remainder(gap, 90)), 0, 1e-6)
			if math.Abs(off[i]) > 0.5 {
				t.Errorf("%s: the middle is off by %v°", school, off[i])
			}
		}
	}
	// Alder Reach on 20 April 2027: 64.77° W is 4 h 19 min 5 s behind UT, its clock 3 h,
	// and the Sun about 1 min ahead (testdata/reference/equation-of-time.csv), so noon
	// is at 13:18; variation −16.2° (WMM2025).
	r := reckon(t, "alder reach", "dial-north", "2027-04-20")
	if noon := entrytest.Fact(t, r, "noon").Time; noon.Hour() != 13 || noon.Minute() < 17 || noon.Minute() > 19 {
		t.Errorf("noon at %v", noon)
	}
	entrytest.Near(t, "variation", entrytest.Fact(t, r, "magnetic_variation").Number, -16.2, 0.1)
	entrytest.Near(t, "compass", entrytest.Fact(t, r, "compass_for_true_north").Number, 16.2, 0.1)
	// With the Sun 55.3° high the shadow is 300 mm/tan 55.3° long: 90° − 46.09° + 11.4°.
	entrytest.Near(t, "noon shadow", entrytest.Fact(t, r, "noon_shadow").Number, 300/math.Tan(55.36*math.Pi/180), 2)
}

func TestNorthWithoutSun(t *testing.T) {
	r := reckon(t, "arctic", "dial-north", "2027-12-21")
	if len(r.Tables) != 0 || entrytest.Fact(t, r, "before").Phrase.Key != "dial-north.no_pair" {
		t.Error("equal shadows in the polar night")
	}
	if r := reckon(t, "north pole", "dial-north", "2027-06-21"); len(r.Tables) != 0 {
		t.Error("equal shadows at the pole, where all are equal")
	}
	// On the equator at an equinox the Sun passes within a degree of the zenith.
	short := false
	for _, w := range reckon(t, "equator", "dial-north", "2027-03-20").Warnings {
		short = short || w.Key == "dial-north.overhead"
	}
	if !short {
		t.Error("nothing said of a noon without a shadow")
	}
}
