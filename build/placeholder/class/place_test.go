package class_test

import (
	"testing"

	"noonbook/build/placeholder/entrytest"
)

// Magnetic variation of Alder Reach on 2027-05-01 by WMM2025.
func TestPlaceFacts(t *testing.T) {
	r := reckon(t, "alder reach", "place-facts", "2027-05-01")
	variation := entrytest.Fact(t, r, "magnetic_variation").Number
	entrytest.Near(t, "variation", variation, -16.2, 0.05)
	entrytest.Near(t, "compass for true north", entrytest.Fact(t, r, "compass_for_true_north").Number, -variation, 1e-9)
	entrytest.Near(t, "offset", entrytest.Fact(t, r, "utc_offset").Number, -3*3600, 0)
	if got := len(reckon(t, "alder reach", "place-facts", "2031-05-01").Warnings); got != 1 {
		t.Errorf("outside the magnetic model there are %d warnings", got)
	}
}

// Where the date line lies between a school and the meridian of its clock, the working
// names the whole day that a calculator would show, by hand for 20 April 2027: Apia
// 12:00 + 11:27 + 13:00 = 36:27, Adak's zone at 173° east 12:00 − 11:32 − 9:00 = −8:32.
func TestWorkingOfNoonNamesTheDay(t *testing.T) {
	for _, c := range []struct {
		longitude, zone string
		day             bool
	}{
		{"-171.77", "Pacific/Apia", true}, {"-157.4", "Pacific/Kiritimati", true}, {"-176.5", "Pacific/Chatham", true}, {"173", "America/Adak", true},
		{"178.4", "Pacific/Fiji", false}, {"-64.77", "America/Moncton", false},
	} {
		r := reckon(t, "alder reach", "place-facts", "2027-04-20",
			"school.latitude=-13.83", "school.longitude="+c.longitude, "school.time_zone="+c.zone)
		if entrytest.Says(r.Working, "place-facts.working_noon_day") != c.day || entrytest.Says(r.Working, "place-facts.working_noon") == c.day {
			t.Errorf("%s: %s", c.zone, entrytest.Lines(t, r.Working))
		}
	}
}
