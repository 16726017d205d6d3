package optics

import (
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/lens"
	"noonbook/compute/quantity"
)

// What the entry takes.
const (
	argImageMM        form.Key[float64] = "image_mm"
	argObjectM        form.Key[float64] = "object_m"
	argImageErrorMM   form.Key[float64] = "image_error_mm"
	argObjectErrorMM  form.Key[float64] = "object_error_mm"
	argPowerDioptres  form.Key[float64] = "power_dioptres"
	argMagnifierTimes form.Key[float64] = "magnifier_times"
)

func lensPower() entry.Entry {
	return entry.Entry{
		Name:    "lens-power",
		Summary: "The focal length of a lens, from a measurement or a label, and of each lens in the box.",
		Arguments: form.Form{
			{Key: argImageMM, Unit: "mm", Min: 1, Max: 20000, Doc: "Measured distance from the lens to the sharp picture on a wall."},
			{Key: argObjectM, Unit: "m", Min: 0.01, Max: 100000, Assumed: "so far away that it makes no difference", Doc: "Distance from the lens to the window or lamp whose picture it is."},
			{Key: argImageErrorMM, Unit: "mm", Min: 0, Max: 1000, Default: 3.0, Doc: "How far the first distance may be wrong, either way."},
			{Key: argObjectErrorMM, Unit: "mm", Min: 0, Max: 10000, Default: 20.0, Doc: "How far the second distance may be wrong, either way."},
			{Key: argPowerDioptres, Unit: "dioptres", Min: 0.2, Max: 200, Doc: "Power on a label, as of reading glasses."},
			{Key: argMagnifierTimes, Unit: "times", Min: 0.05, Max: 50, Doc: "The number before × on a magnifier's label."},
		},
		Settings: optics,
		Facts: []entry.Fact{
			{Name: "focal", Unit: "mm", Doc: "focal length, from the measurement if one is given, else from a label, else of the front lens"},
			{Name: "least", Unit: "mm", Doc: "the least that it can be"},
			{Name: "most", Unit: "mm", Doc: "the most that it can be"},
			{Name: "error", Unit: "mm", Doc: "half of the width between them"},
			{Name: "power", Unit: "dioptre", Doc: "power of the lens"},
			{Name: "times_plain", Unit: "times", Doc: "what a magnifier's label would say, as 25 cm over the focal length"},
			{Name: "times_more", Unit: "times", Doc: "what it would say where one is added"},
			{Name: "far_enough", Unit: "m", Doc: "how far a window must be for the picture to lie within one part in a hundred of the focal length"},
		},
		Sources:  []string{sourceLens, sourceLabel},
		Cautions: []string{entry.CareLenses},
		Reckon:   reckonLensPower,
	}
}

// A way is one of the ways in which a focal length is known.
type way struct {
	name  say.Value
	focus lens.Focus
}

func reckonLensPower(v form.Values) (result.Result, error) {
	c, err := chosenTelescope(v)
	if err != nil {
		return result.Result{}, err
	}
	given, working, err := waysGiven(v)
	if err != nil {
		return result.Result{}, err
	}
	ways := given
	for _, b := range c.box {
		ways = append(ways, way{b.label, b.focus})
	}
	r := result.Result{Working: working, Notes: []say.Phrase{say.Line("lens-power.note")}}
	main := lens.Focus{Focal: c.Front.Focal, Least: c.Front.Focal, Most: c.Front.Focal}
	if len(given) > 0 {
		main = given[0].focus
		for _, other := range given[1:] {
			if !main.Overlap(other.focus) {
				r.Warnings = append(r.Warnings, say.Line("lens-power.disagree", given[0].name, opticalLength(main.Focal, 0), other.name, opticalLength(other.focus.Focal, 0)))
			}
		}
	}
	l := lens.Lens{Focal: main.Focal}
	r.Facts = []result.Fact{
		{Name: "focal", Value: opticalLength(main.Focal, 1)},
		{Name: "least", Value: opticalLength(main.Least, 1)},
		{Name: "most", Value: opticalLength(main.Most, 1)},
		{Name: "error", Value: opticalLength(main.Error(), 1)},
		{Name: "power", Value: say.Number(float64(l.Power()), "dioptre", 2)},
		{Name: "times_plain", Value: times(l.Times(lens.OverNear))},
		{Name: "times_more", Value: times(l.Times(lens.OverNearAndOne))},
		{Name: "far_enough", Value: say.Number(100*main.Focal.Metres(), "m", 0)},
	}
	table := result.Table{
		Name: "lenses", Title: say.Line("lens-power.title"),
		Columns: []result.Column{
			{Name: "lens"}, {Name: "focal", Unit: "mm"}, {Name: "least", Unit: "mm"}, {Name: "most", Unit: "mm"},
			{Name: "power", Unit: "dioptre"}, {Name: "times_plain", Unit: "times"}, {Name: "times_more", Unit: "times"},
		},
	}
	for i, w := range ways {
		l := lens.Lens{Focal: w.focus.Focal}
		table.Rows = append(table.Rows, result.Row{Marked: i < len(given), Cells: []say.Value{
			w.name, opticalLength(w.focus.Focal, 0), opticalLength(w.focus.Least, 0), opticalLength(w.focus.Most, 0),
			say.Number(float64(l.Power()), "dioptre", 1), times(l.Times(lens.OverNear)), times(l.Times(lens.OverNearAndOne)),
		}})
	}
	r.Tables = []result.Table{table}
	power := say.Number(float64(l.Power()), "dioptre", 2)
	focal := entry.Enough(power, func(x []float64) float64 { return 1000 / x[0] }, opticalLength(main.Focal, 0))
	r.Working = append(r.Working, say.Line("lens-power.working_power", focal[0], power))
	return r.InMetric(), nil
}

// waysGiven returns the focal lengths of the arguments, the most trustworthy first.
func waysGiven(v form.Values) (ways []way, working []say.Phrase, err error) {
	if argImageMM.In(v) {
		m := lens.Measurement{
			Object: lens.Infinity, Image: quantity.Millimetres(argImageMM.Of(v)),
			ObjectError: quantity.Millimetres(argObjectErrorMM.Of(v)), ImageError: quantity.Millimetres(argImageErrorMM.Of(v)),
		}
		if argObjectM.In(v) {
			m.Object = quantity.Metres(argObjectM.Of(v))
		}
		focus, err := m.Focus()
		if err != nil {
			return nil, nil, err
		}
		ways = append(ways, way{say.Words("lens-power.measured"), focus})
		if m.Object < lens.Infinity {
			focal := opticalLength(focus.Focal, 1)
			o := entry.Enough(focal, func(x []float64) float64 { return x[0] * x[1] / (x[0] + x[1]) }, opticalLength(m.Object, 0), opticalLength(m.Image, 0))
			working = append(working, say.Line("lens-power.working_distances", o[0], o[1], focal))
		} else {
			working = append(working, say.Line("lens-power.working_far", opticalLength(focus.Focal, 1)))
		}
	}
	if argPowerDioptres.In(v) {
		focus, err := lens.DioptreFocus(lens.Power(argPowerDioptres.Of(v)))
		if err != nil {
			return nil, nil, err
		}
		ways = append(ways, way{say.Words("lens-power.label_dioptres", say.Number(argPowerDioptres.Of(v), "dioptre", 2)), focus})
	}
	if argMagnifierTimes.In(v) {
		focus, err := lens.LabelFocus(argMagnifierTimes.Of(v))
		if err != nil {
			return nil, nil, err
		}
		ways = append(ways, way{say.Words("lens-power.label_times", say.Number(argMagnifierTimes.Of(v), "", 1)), focus})
	}
	return ways, working, nil
}
