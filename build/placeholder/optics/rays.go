package optics

import (
	"slices"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/lens"
	"noonbook/compute/quantity"
	"noonbook/compute/world"
)

// What the entry takes.
const (
	argAcross  form.Key[int]  = "across"
	argSwapped form.Key[bool] = "swapped"
)

func lensRays() entry.Entry {
	return entry.Entry{
		Name:    "lens-rays",
		Summary: "The way of light through both lenses, to scale, and what the eye gets.",
		Arguments: form.Form{
			{Key: argObjectM, Unit: "m", Min: 0.01, Max: 1e6, Assumed: "as far as the Moon", Doc: "Distance of the thing that is looked at."},
			{Key: argAcross, Min: 1, Max: 10, Assumed: "1, and more where the telescope is so long that rays would lie on one another", Doc: "How many times larger than along the tube the drawing is across it."},
			{Key: argSwapped, Default: false, Doc: "Look through the telescope from the wrong end."},
		},
		Settings: optics,
		Facts: []entry.Fact{
			{Name: "magnification", Unit: "times", Doc: "how many times larger far things look"},
			{Name: "front", Doc: "what the front lens is called in the box"},
			{Name: "eye", Doc: "what the eye lens is called there"},
			{Name: "front_focal", Unit: "mm", Doc: "focal length of the front lens"},
			{Name: "eye_focal", Unit: "mm", Doc: "focal length of the eye lens"},
			{Name: "front_power", Unit: "dioptre", Doc: "power of the front lens"},
			{Name: "eye_power", Unit: "dioptre", Doc: "power of the eye lens"},
			{Name: "image_distance", Unit: "mm", Doc: "from the front lens to the picture that it throws"},
			{Name: "separation", Unit: "mm", Doc: "from lens to lens, for the thing and a relaxed eye"},
			{Name: "eye_relief", Unit: "mm", Doc: "from the eye lens to where the eye belongs"},
			{Name: "exit_pupil", Unit: "mm", Doc: "width of the beam that leaves the eye lens, without a mask"},
			{Name: "mask", Unit: "mm", Doc: "hole of a mask before the front lens that keeps colours bearable"},
			{Name: "fringe", Unit: "arcmin", Doc: "width of the coloured rim of a bright point, as it looks with the mask in the evening"},
			{Name: "fringe_open", Unit: "arcmin", Doc: "the same without the mask"},
			{Name: "brightness", Unit: "percent", Doc: "how bright a wall looks by day with the mask, beside how it looks without a telescope"},
			{Name: "brightness_open", Unit: "percent", Doc: "the same without the mask"},
			{Name: "star_gain", Unit: "times", Doc: "how much more light of a star gets into an eye in the dark, without the mask"},
			{Name: "field", Unit: "deg", Doc: "angle across the sky that is seen at once"},
			{Name: "field_moons", Doc: "how many Moons go side by side into it"},
			{Name: "field_at_50_m", Unit: "m", Doc: "how much of a wall 50 m away is seen at once"},
			{Name: "detail", Unit: "arcmin", Doc: "the smallest angle that can be told apart, an estimate"},
			{Name: "moon_detail", Unit: "km", Doc: "how large that is on the Moon"},
			{Name: "moon_looks", Unit: "deg", Doc: "how large the Moon looks"},
			{Name: "shake", Unit: "deg", Doc: "how far the telescope turns when one end moves 1 mm aside"},
			{Name: "shake_looks", Doc: "how far the picture then jumps, in Moons as they look without a telescope"},
		},
		Sources:  []string{sourceLens, sourceDetail, sourceGlass},
		Cautions: []string{entry.CareLenses},
		Reckon:   reckonLensRays,
	}
}

func reckonLensRays(v form.Values) (result.Result, error) {
	c, err := chosenTelescope(v)
	if err != nil {
		return result.Result{}, err
	}
	r := result.Result{}
	if argSwapped.Of(v) {
		c.Telescope, c.frontAt, c.eyeAt = c.Swapped(), c.eyeAt, c.frontAt
		r.Notes = append(r.Notes, say.Line("lens-rays.swapped", times(c.Magnification())))
	} else {
		r.Warnings = pairWarnings(c.Telescope)
	}
	object := lens.Infinity
	if argObjectM.In(v) {
		object = quantity.Metres(argObjectM.Of(v))
	}
	image, separation, relief := say.None("lens-rays.no_image"), say.None("lens-rays.no_image"), say.None("lens-rays.no_image")
	s, err := c.Separation(object, 0)
	if err != nil {
		r.Warnings = append(r.Warnings, noFocus(c.Telescope, lens.Demand{Nearest: object}))
	} else {
		at, _ := c.Front.Image(object)
		image, separation = opticalLength(at, 1), opticalLength(s, 1)
		behind, _ := c.EyeRelief(s)
		relief = opticalLength(behind, 0)
		frame := frameOf(c.Telescope, s, argAcross.Of(v))
		r.Drawings = []drawing.Drawing{rayDrawing(c, object, s, frame)}
		r.Notes = append(r.Notes, rayNote(frame))
	}
	r.Facts = slices.Concat([]result.Fact{
		{Name: "magnification", Value: times(c.Magnification())},
		{Name: "front", Value: c.named(c.frontAt, c.Front)},
		{Name: "eye", Value: c.named(c.eyeAt, c.Eye)},
		{Name: "front_focal", Value: opticalLength(c.Front.Focal, 0)},
		{Name: "eye_focal", Value: opticalLength(c.Eye.Focal, 0)},
		{Name: "front_power", Value: say.Number(float64(c.Front.Power()), "dioptre", 1)},
		{Name: "eye_power", Value: say.Number(float64(c.Eye.Power()), "dioptre", 1)},
		{Name: "image_distance", Value: image},
		{Name: "separation", Value: separation},
		{Name: "eye_relief", Value: relief},
	}, viewFacts(c.Telescope))
	beam := opticalLength(c.Front.Diameter/quantity.Length(c.Magnification()), 1)
	o := entry.Enough(beam, func(x []float64) float64 { return x[0] / x[1] }, opticalLength(c.Front.Diameter, 0), times(c.Magnification()))
	r.Working = []say.Phrase{
		say.Line("lens-rays.working_image"),
		say.Line("lens-rays.working_pupil", o[0], o[1], beam),
		say.Line("lens-rays.working_detail"),
	}
	return r.InMetric(), nil
}

// viewFacts says what the eye gets.
func viewFacts(t lens.Telescope) []result.Fact {
	day, evening := t.Masked(lens.DayPupil), t.Masked(lens.NightPupil)
	openDay := lens.View{Telescope: t, Pupil: lens.DayPupil}
	open := lens.View{Telescope: t, Pupil: lens.NightPupil}
	hole, masked := t.MaskDiameter()
	mask := opticalLength(hole, 0)
	if !masked {
		mask = say.None("lens-rays.no_mask")
	}
	moon := quantity.Length(evening.Detail().Tan()) * world.ToTheMoon
	shake := t.Shake(quantity.Millimetres(1))
	field := day.Field()
	return []result.Fact{
		{Name: "exit_pupil", Value: opticalLength(open.ExitPupil(), 1)},
		{Name: "mask", Value: mask},
		{Name: "fringe", Value: minutesOfArc(evening.Fringe())},
		{Name: "fringe_open", Value: minutesOfArc(open.Fringe())},
		{Name: "brightness", Value: say.Number(100*day.Brightness(), "percent", 0)},
		{Name: "brightness_open", Value: say.Number(100*openDay.Brightness(), "percent", 0)},
		{Name: "star_gain", Value: times(open.StarGain())},
		{Name: "field", Value: say.Number(field.Degrees(), "deg", 1)},
		{Name: "field_moons", Value: say.Number(float64(field/lens.MoonWidth), "", 0)},
		{Name: "field_at_50_m", Value: say.Number(100*(field/2).Tan(), "m", 1)},
		{Name: "detail", Value: minutesOfArc(evening.Detail())},
		{Name: "moon_detail", Value: say.Number(moon.Kilometres(), "km", 0)},
		{Name: "moon_looks", Value: say.Number((2 * quantity.Atan2(t.Magnification()*(lens.MoonWidth/2).Tan(), 1)).Degrees(), "deg", 1)},
		{Name: "shake", Value: say.Number(shake.Degrees(), "deg", 2)},
		{Name: "shake_looks", Value: say.Number(t.Magnification()*float64(shake/lens.MoonWidth), "", 1)},
	}
}
