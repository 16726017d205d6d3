package dial_test

import (
	"fmt"
	"math"
	"testing"

	"noonbook/compute/dial"
	"noonbook/compute/quantity"
)

const inch = quantity.Length(0.0254) // exactly, International Yard and Pound Agreement 1959

// Style heights on a base of 5 inches: The Boy Mechanic vol. 1, 1913, "How to
// Lay Out a Sundial", table 1.
func ExampleGnomonOnBase() {
	for _, latitude := range []float64{25, 30, 40, 50, 60} {
		g, err := dial.GnomonOnBase(quantity.Degrees(latitude), 5*inch)
		if err != nil {
			fmt.Println(err)
		}
		fmt.Printf("%g° %.2f in\n", latitude, float64(g.Height/inch))
	}
	// Output:
	// 25° 2.33 in
	// 30° 2.89 in
	// 40° 4.20 in
	// 50° 5.96 in
	// 60° 8.66 in
}

// The sides of one triangle, whichever is given, both hemispheres: Pythagoras
// and the angle at the centre. 1e-12 of the side: rounding.
func TestGnomonSides(t *testing.T) {
	for _, latitude := range []float64{0.2, 35, 46.09, -45.87, 69.6, 89.9} {
		g, err := dial.GnomonOnBase(deg(latitude), quantity.Millimetres(150))
		if err != nil {
			t.Fatal(err)
		}
		near(t, "angle", g.Angle.Degrees(), math.Abs(latitude), 1e-12)
		near(t, "style", g.Style.Metres(), math.Hypot(g.Base.Metres(), g.Height.Metres()), 1e-12*g.Style.Metres())
		near(t, "slope", quantity.Atan2(g.Height.Metres(), g.Base.Metres()).Degrees(), math.Abs(latitude), 1e-12)

		h, err := dial.GnomonOfHeight(deg(latitude), g.Height)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "base again", h.Base.Metres(), g.Base.Metres(), 1e-12*g.Base.Metres())
		near(t, "style again", h.Style.Metres(), g.Style.Metres(), 1e-12*g.Style.Metres())
	}
}

func TestGnomonAtEquatorAndPole(t *testing.T) {
	flat, err := dial.GnomonOnBase(0, quantity.Millimetres(150))
	if err != nil || flat.Height != 0 || flat.Style != flat.Base {
		t.Errorf("flat on the equator: %+v, %v", flat, err)
	}
	rod, err := dial.GnomonOfHeight(deg(-90), quantity.Millimetres(150))
	if err != nil || rod.Base.Millimetres() > 1e-12 || rod.Style != rod.Height {
		t.Errorf("upright at the pole: %+v, %v", rod, err)
	}
	for _, latitude := range []float64{90, -90, 89.95, 95, math.NaN()} {
		if _, err := dial.GnomonOnBase(deg(latitude), 1); err == nil {
			t.Errorf("a base at %g° was taken", latitude)
		}
	}
	for _, latitude := range []float64{0, 0.05, -95} {
		if _, err := dial.GnomonOfHeight(deg(latitude), 1); err == nil {
			t.Errorf("a height at %g° was taken", latitude)
		}
	}
	for _, side := range []quantity.Length{0, -1, quantity.Length(math.Inf(1)), quantity.Length(math.NaN())} {
		if _, err := dial.GnomonOnBase(deg(45), side); err == nil {
			t.Errorf("a base of %g m was taken", side)
		}
	}
}
