package lens_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"noonbook/compute/lens"
	"noonbook/compute/quantity"
)

var mm = quantity.Millimetres

// near fails unless got is within tolerance of want.
func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %.12g, want %.12g ± %g", what, got, want, tolerance)
	}
}

// OpenStax, College Physics, ch. 25.6: a lens of 2.25 D.
func ExampleFocal() {
	f, err := lens.Focal(2.25)
	fmt.Printf("%.1f cm %v\n", f.Millimetres()/10, err)
	// Output: 44.4 cm <nil>
}

// OpenStax, College Physics, ch. 25.6, from memory: a bulb 0.750 m before a lens
// of 0.500 m.
func ExampleLens_Image() {
	l := lens.Lens{Focal: 0.500}
	image, ok := l.Image(0.750)
	fmt.Printf("%.2f m %v\n", image.Metres(), ok)
	// Output: 1.50 m true
}

// Whole fractions, by hand: 1/6 = 1/10 + 1/15 and so on; rounding only.
func TestImageInExactFractions(t *testing.T) {
	for _, c := range []struct{ f, object, image float64 }{
		{6, 10, 15},
		{20, 30, 60},
		{10, 20, 20},
		{12, 8, -24}, // inside the focal length: virtual
		{12, 6, -12}, // at half of it
		{10, 110, 11},
	} {
		l := lens.Lens{Focal: mm(c.f)}
		image, ok := l.Image(mm(c.object))
		if !ok {
			t.Errorf("%v: no image", c)
		}
		near(t, "image", image.Millimetres(), c.image, 1e-12*math.Abs(c.image))
		if c.image > 0 {
			f, err := lens.FocalOfDistances(mm(c.object), mm(c.image))
			if err != nil {
				t.Error(err)
			}
			near(t, "focal length", f.Millimetres(), c.f, 1e-12*c.f)
		}
	}
}

func TestImageAtTheLimits(t *testing.T) {
	l := lens.Lens{Focal: mm(250)}
	if image, ok := l.Image(lens.Infinity); !ok || image != l.Focal {
		t.Errorf("of the sky: %v, %v", image, ok)
	}
	if _, ok := l.Image(l.Focal); ok {
		t.Error("a thing at the focal length has an image")
	}
	if image, _ := l.Image(0.999 * l.Focal); image > -100*l.Focal {
		t.Errorf("just inside the focal length: %v", image)
	}
	if image, _ := l.Image(1.001 * l.Focal); image < 100*l.Focal {
		t.Errorf("just beyond the focal length: %v", image)
	}
}

// A magnifier's label is about 25 cm over f, and some labels add one: from memory.
func TestLabels(t *testing.T) {
	for _, c := range []struct {
		times float64
		label lens.Label
		f     float64
	}{{2.5, lens.OverNear, 100}, {3, lens.OverNear, 250.0 / 3}, {3, lens.OverNearAndOne, 125}, {10, lens.OverNear, 25}, {6, lens.OverNearAndOne, 50}} {
		f, err := lens.FocalOfLabel(c.times, c.label)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "focal length", f.Millimetres(), c.f, 1e-9)
		near(t, "and back", lens.Lens{Focal: f}.Times(c.label), c.times, 1e-12*c.times)
	}
	focus, err := lens.LabelFocus(3)
	if err != nil || focus.Least != focus.Focal || math.Abs(focus.Most.Millimetres()-125) > 1e-9 {
		t.Errorf("3× is %v, %v", focus, err)
	}
	if focus, err := lens.LabelFocus(1); err != nil || focus.Most != focus.Least {
		t.Errorf("1× is %v, %v", focus, err)
	}
}

// The least and the most of a measurement are reached at the corners of the
// errors, and no point between them lies outside.
func TestMeasurementLimits(t *testing.T) {
	m := lens.Measurement{Object: mm(3000), Image: mm(273), ObjectError: mm(20), ImageError: mm(3)}
	f, err := m.Focus()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "focal length", f.Focal.Millimetres(), 3000.0*273/3273, 1e-9)
	least, most := math.Inf(1), math.Inf(-1)
	for i := -10; i <= 10; i++ {
		for j := -10; j <= 10; j++ {
			o, k := 3000+2*float64(i), 273+0.3*float64(j)
			one := o * k / (o + k)
			least, most = min(least, one), max(most, one)
		}
	}
	near(t, "least", f.Least.Millimetres(), least, 1e-9)
	near(t, "most", f.Most.Millimetres(), most, 1e-9)
	near(t, "error", f.Error().Millimetres(), (most-least)/2, 1e-9)

	far := lens.Measurement{Object: lens.Infinity, Image: mm(250), ImageError: mm(2)}
	if f, err := far.Focus(); err != nil || f.Focal != mm(250) || f.Error() > mm(2.0001) {
		t.Errorf("of the horizon: %v, %v", f, err)
	}
	// A label of 4 D in quarters: 1/4.125 and 1/3.875 m.
	d, err := lens.DioptreFocus(4)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "4 D", d.Focal.Millimetres(), 250, 1e-9)
	near(t, "4 D at least", d.Least.Millimetres(), 1000/4.125, 1e-9)
	near(t, "4 D at most", d.Most.Millimetres(), 1000/3.875, 1e-9)
	if !d.Overlap(f) || d.Overlap(lens.Focus{Focal: mm(300), Least: mm(290), Most: mm(310)}) {
		t.Error("250 mm measured belongs to 4 D, 300 mm does not")
	}
}

func TestRefusals(t *testing.T) {
	good := lens.Lens{Focal: mm(250), Diameter: mm(50)}
	scope := func(front, eye lens.Lens) error { _, err := lens.NewTelescope(front, eye); return err }
	for name, c := range map[string]struct {
		err  error
		want string
	}{
		"no power":          {second(lens.Focal(0)), "0 dioptres is not positive"},
		"negative power":    {second(lens.Focal(-4)), "thicker in the middle"},
		"power without end": {second(lens.Focal(lens.Power(math.Inf(1)))), "not positive"},
		"no image":          {second(lens.FocalOfDistances(1, 0)), "to its image of 0 mm"},
		"no object":         {second(lens.FocalOfDistances(-1, 1)), "to the lens of -1000 mm"},
		"label 0":           {second(lens.FocalOfLabel(0, lens.OverNear)), "0×"},
		"label 1 and one":   {second(lens.FocalOfLabel(1, lens.OverNearAndOne)), "1×"},
		"weak dioptres":     {second(lens.DioptreFocus(0.1)), "too weak"},
		"negative front":    {scope(lens.Lens{Focal: mm(-250), Diameter: mm(50)}, good), "front lens of -250 mm"},
		"no eye lens":       {scope(good, lens.Lens{Diameter: mm(50)}), "eye lens of 0 mm"},
		"no diameter":       {scope(good, lens.Lens{Focal: mm(50)}), "diameter of the eye lens"},
		"NaN":               {scope(lens.Lens{Focal: mm(math.NaN()), Diameter: mm(50)}, good), "not a positive length"},
		"error beyond":      {second(lens.Measurement{Object: 1, Image: mm(2), ImageError: mm(3)}.Focus()), "image of -1 mm"},
		"negative error":    {second(lens.Measurement{Object: 1, Image: mm(2), ImageError: mm(-3)}.Focus()), "neither may be negative"},
		"no measurements":   {second(lens.Summarise(nil)), "no measurements"},
		"zero measured":     {second(lens.Summarise([]quantity.Length{0})), "not a positive length"},
	} {
		if c.err == nil || !strings.Contains(c.err.Error(), c.want) {
			t.Errorf("%s: got %v, want it to speak of %q", name, c.err, c.want)
		}
	}
}

func second[T any](_ T, err error) error { return err }
