package lens_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"noonbook/compute/lens"
	"noonbook/compute/quantity"
)

func telescope(t *testing.T, front, eye float64) lens.Telescope {
	t.Helper()
	scope, err := lens.NewTelescope(lens.Lens{Focal: mm(front), Diameter: mm(50)}, lens.Lens{Focal: mm(eye), Diameter: mm(30)})
	if err != nil {
		t.Fatal(err)
	}
	return scope
}

func separation(t *testing.T, scope lens.Telescope, object quantity.Length, eye lens.Power) float64 {
	t.Helper()
	s, err := scope.Separation(object, eye)
	if err != nil {
		t.Fatal(err)
	}
	return s.Millimetres()
}

// Two published physics problems: lenses of 0.833 and 0.111 m; lenses of 46.0 and
// 1.50 cm.
func ExampleTelescope_Magnification() {
	for _, f := range [][2]float64{{833, 111}, {460, 15}} {
		t, err := lens.NewTelescope(lens.Lens{Focal: quantity.Millimetres(f[0]), Diameter: 1}, lens.Lens{Focal: quantity.Millimetres(f[1]), Diameter: 1})
		if err != nil {
			fmt.Println(err)
		}
		length, err := t.Separation(lens.Infinity, 0)
		fmt.Printf("%.3g× %.3f m %v\n", t.Magnification(), length.Metres(), err)
	}
	// Output:
	// 7.5× 0.944 m <nil>
	// 30.7× 0.475 m <nil>
}

// F·d/(d − F) + e, in whole fractions: F 250, d 5000: 250·5000/4750 = 5000/19.
func TestSeparation(t *testing.T) {
	scope := telescope(t, 250, 50)
	near(t, "far", separation(t, scope, lens.Infinity, 0), 300, 1e-10)
	near(t, "at 5 m", separation(t, scope, 5, 0), 5000.0/19+50, 1e-10)
	near(t, "at 500 mm", separation(t, scope, mm(500), 0), 550, 1e-10)
	// An eye of +4 D looks at 25 cm: 1/(1/50 + 1/250) = 41⅔; of −4 D: 1/(1/50 − 1/250) = 62½.
	near(t, "eye of +4 D", separation(t, scope, lens.Infinity, 4), 250+125.0/3, 1e-10)
	near(t, "eye of −4 D", separation(t, scope, lens.Infinity, -4), 250+62.5, 1e-10)
	least, most, err := scope.Travel(5, 4)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "least", least.Millimetres(), 250+125.0/3, 1e-10)
	near(t, "most", most.Millimetres(), 5000.0/19+62.5, 1e-10)

	if _, err := scope.Separation(mm(250), 0); err == nil || !strings.Contains(err.Error(), "step back") {
		t.Errorf("a target at the focal length: %v", err)
	}
	if _, err := scope.Separation(mm(100), 0); err == nil || !strings.Contains(err.Error(), "100 mm is not beyond") {
		t.Errorf("a target inside the focal length: %v", err)
	}
	if _, err := telescope(t, 500, 250).Separation(lens.Infinity, -4); err == nil || !strings.Contains(err.Error(), "too weak for an eye") {
		t.Errorf("an eye too long of sight: %v", err)
	}
}

func TestSwappedIsTheReciprocal(t *testing.T) {
	for _, f := range [][2]float64{{250, 50}, {833, 111}, {100, 100}, {7, 4000}} {
		scope := telescope(t, f[0], f[1])
		near(t, "product", scope.Magnification()*scope.Swapped().Magnification(), 1, 1e-15)
		near(t, "length", separation(t, scope.Swapped(), lens.Infinity, 0), f[0]+f[1], 1e-10)
	}
}

// For lenses at any distance, things at any distance and rays in any direction, the
// trace lands where the formulas say, to 1e-9 of the lengths.
func TestTraceAgreesWithTheFormulas(t *testing.T) {
	worst := 0.0
	check := func(what string, got, want float64) {
		t.Helper()
		off := math.Abs(got-want) / max(1, math.Abs(want))
		worst = max(worst, off)
		near(t, what, off, 0, 1e-12) // rounding alone
	}
	for _, f := range [][2]float64{{250, 50}, {833, 111}, {460, 15}, {50, 250}, {100, 100}} {
		scope := telescope(t, f[0], f[1])
		// Parallel light in, parallel light out, magnified and turned over.
		for _, slope := range []float64{-0.05, 0.001, 0.03} {
			far := mm(separation(t, scope, lens.Infinity, 0))
			a, b := scope.Trace(far, lens.Ray{Height: mm(11), Slope: slope}), scope.Trace(far, lens.Ray{Height: mm(-7), Slope: slope})
			check("parallel", a.Eye.Slope, b.Eye.Slope)
			check("magnification", a.Eye.Slope, -slope*scope.Magnification())
			image := crossing(a.Within, b.Within)
			check("image", image.Millimetres(), f[0])
			// The beam narrows as much as angles grow: what it carries is kept.
			check("beam", (a.Eye.Height-b.Eye.Height).Millimetres()*a.Eye.Slope, mm(18).Millimetres()*slope)
			centre := scope.Trace(far, lens.Ray{Slope: slope})
			if relief, ok := scope.EyeRelief(far); ok {
				check("pupil", centre.Eye.Onward(relief).Height.Millimetres(), 0)
				edge := scope.Trace(far, lens.Ray{Height: mm(25), Slope: slope})
				v := lens.View{Telescope: scope, Pupil: lens.DayPupil}
				check("exit pupil", -edge.Eye.Onward(relief).Height.Millimetres(), v.ExitPupil().Millimetres()/2)
			}
		}
		for _, d := range []float64{1200, 5000, 80000} {
			for _, eye := range []lens.Power{-3, 0, 4} {
				s, err := scope.Separation(mm(d), eye)
				if err != nil {
					continue // too long of sight for this eye lens
				}
				a := scope.Trace(s, lens.From(mm(d), mm(30), mm(20)))
				b := scope.Trace(s, lens.From(mm(d), mm(30), mm(-15)))
				image := crossing(a.Within, b.Within)
				want, _ := scope.Front.Image(mm(d))
				check("image", image.Millimetres(), want.Millimetres())
				check("height", a.Within.Onward(image).Height.Millimetres(), -30*float64(want/mm(d))) // as image to thing
				// What the eye gets spreads as its accommodation asks: vergence −A.
				check("vergence", (a.Eye.Slope-b.Eye.Slope)/(a.Eye.Height-b.Eye.Height).Metres(), float64(eye))
			}
		}
	}
	t.Logf("worst difference %.2g", worst)
}

// crossing is how far beyond their plane two rays meet.
func crossing(a, b lens.Ray) quantity.Length {
	return (b.Height - a.Height) / quantity.Length(a.Slope-b.Slope)
}

// Rays within the field reach the eye lens, rays beyond do not.
func TestFieldByTracing(t *testing.T) {
	scope := telescope(t, 250, 50)
	half := (lens.View{Telescope: scope, Pupil: lens.DayPupil}).Field() / 2
	for _, c := range []struct {
		share  float64
		passes bool
	}{{0.999, true}, {1.001, false}, {-0.999, true}} {
		slope := (half * quantity.Angle(c.share)).Tan()
		if got := scope.Passes(scope.Trace(mm(300), lens.Ray{Slope: slope})); got != c.passes {
			t.Errorf("at %v of the field: %v", c.share, got)
		}
	}
	near(t, "field", 2*half.Degrees(), 2*math.Atan(15.0/300)*180/math.Pi, 1e-9)
}

// Numbers by hand for 250 and 50 mm: the exit pupil is 50/5 mm, its place
// 300·50/250 mm behind the eye lens. A pupil of 3 mm takes in 15 mm of the front lens.
func TestView(t *testing.T) {
	scope := telescope(t, 250, 50)
	open := lens.View{Telescope: scope, Pupil: lens.DayPupil}
	relief, ok := scope.EyeRelief(mm(300))
	if !ok {
		t.Error("no eye relief")
	}
	near(t, "relief", relief.Millimetres(), 60, 1e-9)
	near(t, "exit pupil", open.ExitPupil().Millimetres(), 10, 1e-9)
	four := math.Pow(0.96, 4) // faces of glass, each throws 4 % back
	near(t, "brightness", open.Brightness(), four, 1e-12)
	near(t, "star", open.StarGain(), four*25, 1e-9)
	thin := lens.View{Telescope: scope, Pupil: lens.NightPupil, Mask: mm(15)}
	near(t, "brightness behind a mask", thin.Brightness(), four*0.25, 1e-12)
	near(t, "star behind a mask", thin.StarGain(), four*15*15/36, 1e-9)
	if _, ok := scope.EyeRelief(mm(50)); ok {
		t.Error("relief behind lenses at one focal length")
	}
	// One millimetre on 300: 0.19°, more than a third of the Moon.
	near(t, "shake", scope.Shake(mm(1)).Degrees(), math.Atan(1.0/300)*180/math.Pi, 1e-12)
	near(t, "Moons", float64(scope.Shake(mm(1))/lens.MoonWidth), 0.37, 0.005)
}

// Galileo's better lens, 980 mm stopped down to 15, with his 20 times: observers
// who tested it name some 10″ to 20″; from memory, and all that the estimate claims
// is to be right to half of itself. Huygens' own 30 feet must give his 3 inches.
func TestDetailAndMask(t *testing.T) {
	v := lens.View{Telescope: telescope(t, 980, 49), Mask: mm(15), Pupil: lens.NightPupil}
	near(t, "Galileo's detail", v.Detail().ArcSeconds(), 15, 7.5)
	if bare := lens.EyeDetail(); v.Detail() >= bare {
		t.Error("a telescope shows no more than the eye")
	}
	foot := 12 * 26.2 // Rhineland, mm, from memory
	hole, ok := lens.Telescope{Front: lens.Lens{Focal: mm(30 * foot), Diameter: 1}}.MaskDiameter()
	if !ok {
		t.Error("no mask")
	}
	near(t, "Huygens' aperture", hole.Millimetres(), 3*26.2, 1e-9)
	small := lens.Telescope{Front: lens.Lens{Focal: mm(1000), Diameter: mm(10)}}
	if hole, ok := small.MaskDiameter(); ok || hole != mm(10) {
		t.Errorf("a small lens is masked to %v", hole)
	}
	// Twice the hole, twice the colour.
	scope := telescope(t, 250, 50)
	one := lens.View{Telescope: scope, Mask: mm(6), Pupil: lens.NightPupil}
	two := lens.View{Telescope: scope, Mask: mm(12), Pupil: lens.NightPupil}
	near(t, "fringe", float64(two.Fringe()/one.Fringe()), 2, 1e-12)
}
