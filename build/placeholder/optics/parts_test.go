package optics_test

import (
	"maps"
	"regexp"
	"slices"
	"testing"

	"noonbook/build/placeholder/entrytest"
	"noonbook/build/typeset"
)

// Pupils find focal lengths, the distance of the lenses and the magnification themselves:
// their picture has no number in it, in words or labels. It is the plan's picture all the
// same, part by part.
func TestPartsOfTheTelescopeTellNoNumber(t *testing.T) {
	words, err := typeset.Language("en", false)
	if err != nil {
		t.Fatal(err)
	}
	digit := regexp.MustCompile(`[0-9]`)
	for _, given := range [][]string{nil, {"stock.front_lens_focal_mm=400", "nearest_m=8"}} {
		plan := reckon(t, "alder reach", "tube-plan", "2027-04-19", given...)
		r := reckon(t, "alder reach", "tube-parts", "2027-04-19", given...)
		if len(plan.Drawings) != len(r.Drawings) || len(r.Tables)+len(r.Notes)+len(r.Working)+len(r.Sheets) > 0 || len(r.Warnings) > len(plan.Warnings) {
			t.Fatalf("%v: %d drawings of %d, %d warnings of %d, or more than a drawing", given, len(r.Drawings), len(plan.Drawings), len(r.Warnings), len(plan.Warnings))
		}
		if len(r.Drawings) == 0 {
			continue
		}
		d := r.Drawings[0]
		texts := append(slices.Collect(maps.Keys(entrytest.Labels(t, d))), words.Line(d.Title), words.Line(d.Description))
		for _, text := range texts {
			if digit.MatchString(text) {
				t.Errorf("%v: pupils read %q", given, text)
			}
		}
		for _, role := range []string{"tube", "lens"} {
			if got, want := len(entrytest.Roled(d, role)), len(entrytest.Roled(plan.Drawings[0], role)); got != want || got < 2 {
				t.Errorf("%v: %d shapes of role %s, %d in the plan", given, got, role, want)
			}
		}
	}
	for focal, fits := range map[string]bool{"250": true, "30": false} { // 30 mm is too short for tubes that overlap
		r := reckon(t, "alder reach", "tube-parts", "2027-04-19", "stock.front_lens_focal_mm="+focal, "stock.eye_lens_focal_mm=20")
		if got := entrytest.Fact(t, r, "fits").Number == 1; got != fits || len(r.Drawings) > 0 != fits {
			t.Errorf("a front lens of %s mm: it fits is %v, with %d drawings", focal, got, len(r.Drawings))
		}
	}
}
