package optics

import (
	"fmt"
	"math"

	"noonbook/build/form"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/lens"
	"noonbook/compute/quantity"
)

// Sources that more than one placeholder rests on.
const sourceLens = "Thin lenses: 1/f = 1/o + 1/i, OpenStax, College Physics, ch. 25.6; telescope: far things are magnified F/e times, ch. 26.5"

const sourceLabel = "Labels: dioptres are one over metres; × on a magnifier is about 25 cm over the focal length, and some labels add one"

const sourceDetail = "What can be seen, an estimate: eye 1′; edge of the lens 1.22 λ/D; colours of a single lens, a 250th of its aperture (I. Newton, Opticks, 1704, book 1 part 1 prop. 7); mask after C. Huygens' 3 inches on 30 feet (Dioptrica, in Opuscula postuma, 1703)"

const sourceGlass = "Light lost: 4 % at each face of glass (Fresnel, n = 1.5); pupils of 3 mm by day and 6 mm in the dark"

// optics are the settings that describe lenses.
var optics = form.Keys{
	school.StockFrontLensFocalMM, school.StockEyeLensFocalMM,
	school.StockFrontLensDiameterMM, school.StockEyeLensDiameterMM, school.StockLenses,
}

// The lenses of a school that has not said which it has.
const (
	usualFront, usualFrontDiameter = 250.0, 50.0 // mm
	usualEye, usualEyeDiameter     = 50.0, 30.0
)

// longestHeld is how long a telescope can be and still be held by a class: common
// practice, no source.
const longestHeld = 1200.0 // mm

// A boxed is a kind of lens in the school's box, with what its label says.
type boxed struct {
	lens.Kind
	label say.Value
	focus lens.Focus
}

// lensBox returns the kinds of lenses that the settings name.
func lensBox(v form.Values) ([]boxed, error) {
	if !school.StockLenses.In(v) {
		usual := func(key string, focal, diameter float64) boxed {
			f := quantity.Millimetres(focal)
			return boxed{
				Kind:  lens.Kind{Lens: lens.Lens{Focal: f, Diameter: quantity.Millimetres(diameter)}, Count: 1},
				label: say.Words(key), focus: lens.Focus{Focal: f, Least: f, Most: f},
			}
		}
		return []boxed{usual("lens-power.front", usualFront, usualFrontDiameter), usual("lens-power.eye", usualEye, usualEyeDiameter)}, nil
	}
	var box []boxed
	for _, one := range school.StockLenses.Of(v) {
		focus, err := focusOf(one)
		if err != nil {
			return nil, fmt.Errorf("lens %q of stock.lenses: %w", school.LensesLabel.Of(one), err)
		}
		box = append(box, boxed{
			Kind: lens.Kind{
				Lens:  lens.Lens{Focal: focus.Focal, Diameter: quantity.Millimetres(school.LensesDiameterMM.Of(one))},
				Count: school.LensesCount.Of(one),
			},
			label: say.Text(school.LensesLabel.Of(one)), focus: focus,
		})
	}
	return box, nil
}

// focusOf returns the focal length that the best of a lens's numbers gives.
func focusOf(v form.Values) (lens.Focus, error) {
	switch {
	case school.LensesFocalMM.In(v):
		f := quantity.Millimetres(school.LensesFocalMM.Of(v))
		return lens.Focus{Focal: f, Least: f, Most: f}, nil
	case argPowerDioptres.In(v):
		return lens.DioptreFocus(lens.Power(argPowerDioptres.Of(v)))
	case argMagnifierTimes.In(v):
		return lens.LabelFocus(argMagnifierTimes.Of(v))
	}
	return lens.Focus{}, fmt.Errorf("it has none of focal_mm, power_dioptres and magnifier_times: write one of them")
}

func kindsOf(box []boxed) []lens.Kind {
	kinds := make([]lens.Kind, len(box))
	for i, b := range box {
		kinds[i] = b.Kind
	}
	return kinds
}

// A chosen is the telescope that the settings describe, with its lenses' places in
// the box, −1 for one that is not there.
type chosen struct {
	lens.Telescope
	box            []boxed
	frontAt, eyeAt int
}

// chosenTelescope returns the telescope of the two focal lengths of the settings,
// or of the best pair of the box where one is not set.
func chosenTelescope(v form.Values) (chosen, error) {
	box, err := lensBox(v)
	if err != nil {
		return chosen{}, err
	}
	front := lens.Lens{Focal: quantity.Millimetres(usualFront), Diameter: quantity.Millimetres(usualFrontDiameter)}
	eye := lens.Lens{Focal: quantity.Millimetres(usualEye), Diameter: quantity.Millimetres(usualEyeDiameter)}
	pairs, err := lens.Pairs(kindsOf(box), quantity.Millimetres(longestHeld))
	if err != nil {
		return chosen{}, err
	}
	if len(pairs) > 0 && pairs[0].Verdict == lens.Usable {
		front, eye = pairs[0].View.Front, pairs[0].View.Eye
	}
	c := chosen{box: box}
	front, c.frontAt = picked(v, school.StockFrontLensFocalMM, school.StockFrontLensDiameterMM, front, quantity.Millimetres(usualFrontDiameter), box)
	eye, c.eyeAt = picked(v, school.StockEyeLensFocalMM, school.StockEyeLensDiameterMM, eye, quantity.Millimetres(usualEyeDiameter), box)
	c.Telescope, err = lens.NewTelescope(front, eye)
	return c, err
}

// picked returns the lens that two settings give, and its place in the box.
func picked(v form.Values, focal, diameter form.Key[float64], l lens.Lens, usual quantity.Length, box []boxed) (lens.Lens, int) {
	if focal.In(v) {
		l = lens.Lens{Focal: quantity.Millimetres(focal.Of(v)), Diameter: usual}
	}
	at := -1
	for i, b := range box {
		if math.Abs(float64(b.Focal/l.Focal)-1) <= lens.SameFocal {
			at, l.Diameter = i, b.Diameter
			break
		}
	}
	if diameter.In(v) {
		l.Diameter = quantity.Millimetres(diameter.Of(v))
	}
	return l, at
}

// named returns what the lens is called in the box, or its focal length.
func (c chosen) named(at int, l lens.Lens) say.Value {
	if at < 0 {
		return say.Words("lens-power.of_focal", opticalLength(l.Focal, 0))
	}
	return c.box[at].label
}

func opticalLength(l quantity.Length, decimals int) say.Value {
	return say.Number(l.Millimetres(), "mm", decimals)
}

// minutesOfArc is a small angle as the trade writes it.
func minutesOfArc(a quantity.Angle) say.Value {
	return say.Number(a.Degrees()*60, "arcmin", 1)
}

// times is how many times larger something looks.
func times(x float64) say.Value {
	decimals := 1
	if x < 1 {
		decimals = 2
	}
	return say.Number(x, "times", decimals)
}

// pairWarnings says what is the matter with the lenses that the school has chosen.
func pairWarnings(t lens.Telescope) []say.Phrase {
	switch t.Verdict(quantity.Millimetres(longestHeld)) {
	case lens.Shrinks:
		return []say.Phrase{say.Line("lens-pairs.warn_shrinks", times(t.Magnification()), opticalLength(t.Front.Focal, 0), opticalLength(t.Eye.Focal, 0))}
	case lens.Equal:
		return []say.Phrase{say.Line("lens-pairs.warn_equal", opticalLength(t.Front.Focal, 0))}
	case lens.Weak:
		return []say.Phrase{say.Line("lens-pairs.warn_weak", times(t.Magnification()))}
	case lens.Coloured, lens.Dim:
		return []say.Phrase{say.Line("lens-pairs.warn_blurs", times(t.Magnification()), opticalLength(t.Front.Focal, 0))}
	}
	return nil
}
