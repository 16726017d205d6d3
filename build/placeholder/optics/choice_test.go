package optics_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"noonbook/build/placeholder/entrytest"
)

// Coloured rims are warned of as thin beams are. Behind the mask that makers settled on,
// D² / f = 0.655 mm (Huygens, 3 inches on 30 feet, from memory), a point has a coloured
// disc of D / 250 f (Newton, from memory), the eye lens makes it F/e times wider, and
// the beam is D e/F; the bounds are 8′ and 0.7 mm, common practice, no source.
func TestBlurredPicturesAreWarnedOf(t *testing.T) {
	coloured, dim, clear := 0, 0, 0
	for _, eye := range []float64{60, 40, 30, 25, 20, 18, 16, 12, 9} {
		const front = 250.0
		times, mask := front/eye, math.Sqrt(0.655*front)
		rim, beam := times*mask/250/front*180/math.Pi*60, mask/times
		r := equipped(t, "lens-rays", "", fmt.Sprintf("front_lens_focal_mm = %g\neye_lens_focal_mm = %g\neye_lens_diameter_mm = 12\nfront_lens_diameter_mm = 50\n", front, eye))
		want := true
		switch {
		case beam < 0.7:
			dim++
		case rim > 8:
			coloured++
		default:
			clear++
			want = false
		}
		if got := entrytest.Says(r.Warnings, "lens-pairs.warn_blurs"); got != want {
			t.Errorf("%.1f times, a rim of %.1f′, a beam of %.2f mm: warned of is %v", times, rim, beam, got)
		}
	}
	if coloured < 2 || dim < 2 || clear < 2 {
		t.Errorf("%d coloured, %d dim, %d clear", coloured, dim, clear)
	}
}

// A focal length of the settings is that of a lens in the box where the two differ by 2 %
// at most, what a label may be off; then the lens has the width of the box's. Any other
// has the usual 50 mm, and no lens of the box is named for it.
func TestLensOfTheBoxWithinTwoPerCent(t *testing.T) {
	box := lensOf("burning glass", 9, 40, 250) + lensOf("E", 9, 30, 50)
	for focal, same := range map[float64]bool{225: false, 244: false, 246: true, 250: true, 254: true, 256: false, 275: false} {
		r := equipped(t, "lens-rays", "", fmt.Sprintf("front_lens_focal_mm = %g\neye_lens_focal_mm = 50\n", focal)+box)
		width := 50.0
		if same {
			width = 40
		}
		entrytest.Near(t, fmt.Sprintf("beam behind %g mm", focal), entrytest.Fact(t, r, "exit_pupil").Number, width*50/focal, 1e-9)
		plan := equipped(t, "tube-plan", "pupils = 27\n", fmt.Sprintf("front_lens_focal_mm = %g\neye_lens_focal_mm = 50\n", focal)+box)
		named := ""
		for _, table := range plan.Tables {
			for _, row := range table.Rows {
				for _, cell := range row.Cells {
					named += entrytest.Written(t, cell) + "\n"
				}
			}
		}
		if got := strings.Contains(named, "burning glass"); got != same {
			t.Errorf("a front lens of %g mm is the one of 250 mm in the box: %v", focal, got)
		}
	}
}

// A tube has a wall: one that is as wide outside as inside was measured wrongly, as is
// one that is wider inside.
func TestTubesHaveWalls(t *testing.T) {
	for outside, wrong := range map[float64]bool{52: false, 51: false, 50.5: false, 50: true, 49: true} {
		_, err := stocked(t, "tube-plan", "front_lens_focal_mm = 250\neye_lens_focal_mm = 50\n"+tube("roll", 40, 50, outside, 330))
		if got := err != nil && strings.Contains(err.Error(), `tube "roll" of stock.tubes`); got != wrong || err != nil && !wrong {
			t.Errorf("50 mm inside, %g mm outside: %v", outside, err)
		}
	}
}
