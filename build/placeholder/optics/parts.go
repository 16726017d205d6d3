package optics

import (
	"slices"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/school"
	"noonbook/compute/lens"
)

// tubeParts is the picture by which pupils put the telescope together. tube-plan draws the
// same one with what they are to find out: how far apart the lenses are, and what that
// magnifies.
func tubeParts() entry.Entry {
	return entry.Entry{
		Name:    "tube-parts",
		Plate:   true,
		Summary: "The telescope cut open with the names of its parts, without the numbers that pupils find out.",
		Arguments: form.Form{
			{Key: argNearestM, Unit: "m", Min: 0.1, Max: 1000, Default: 5.0, Doc: "Distance of the nearest thing that should come out sharp."},
			{Key: argEyeDioptres, Unit: "dioptres", Min: 0, Max: 10, Default: 4.0, Doc: "How far eyes without their glasses may differ from a relaxed eye of normal sight, either way."},
		},
		Settings: slices.Concat(optics, form.Keys{school.StockTubes}),
		Facts:    []entry.Fact{entry.Truth("fits", "whether our tubes serve the two lenses, so that the telescope can be drawn")},
		Sources:  []string{"Drawn to scale, with the lengths of tube-plan"},
		Cautions: []string{entry.CareLenses, entry.CareTelescope},
		Reckon: func(v form.Values) (result.Result, error) {
			s, warnings, err := settingOf(v)
			if err != nil {
				return result.Result{}, err
			}
			r := result.Result{Warnings: warnings, Facts: []result.Fact{entry.True("fits", s.plan.fit == lens.Fits)}}
			if s.plan.fit == lens.Fits {
				r.Drawings = []drawing.Drawing{s.parts()}
			}
			return r, nil
		},
	}
}
