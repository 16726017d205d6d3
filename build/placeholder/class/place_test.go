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
