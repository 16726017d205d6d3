package dial_test

import (
	"fmt"
	"math"
	"testing"

	"noonbook/compute/dial"
	"noonbook/compute/quantity"
)

// Style heights on a base of 5 inches: The Boy Mechanic vol. 1, 1913, "How to
// Lay Out a Sundial", table 1.
func ExampleGnomonOfStyle() {
	for _, latitude := range []float64{25, 30, 40, 50, 60} {
		g, err := dial.GnomonOfStyle(quantity.Degrees(latitude), 1)
		if err != nil {
			fmt.Println(err)
		}
		fmt.Printf("%g° %.2f in\n", latitude, 5*float64(g.Height/g.Base))
	}
	// Output:
	// 25° 2.33 in
	// 30° 2.89 in
	// 40° 4.20 in
	// 50° 5.96 in
	// 60° 8.66 in
}

// The sides of the triangle, both hemispheres: Pythagoras and the angle at the
// centre. 1e-12 of the side: rounding.
func TestGnomonSides(t *testing.T) {
	for _, latitude := range []float64{0.2, 35, 46.09, -45.87, 69.6, 89.9} {
		g, err := dial.GnomonOfStyle(deg(latitude), quantity.Millimetres(150))
		if err != nil {
			t.Fatal(err)
		}
		near(t, "angle", g.Angle.Degrees(), math.Abs(latitude), 1e-12)
		near(t, "style", g.Style.Metres(), 0.150, 0)
		near(t, "Pythagoras", math.Hypot(g.Base.Metres(), g.Height.Metres()), 0.150, 1e-12*0.150)
		near(t, "slope", quantity.Atan2(g.Height.Metres(), g.Base.Metres()).Degrees(), math.Abs(latitude), 1e-12)
	}
}

func TestGnomonAtEquatorAndPole(t *testing.T) {
	flat, err := dial.GnomonOfStyle(0, quantity.Millimetres(150))
	if err != nil || flat.Height != 0 || flat.Style != flat.Base {
		t.Errorf("flat on the equator: %+v, %v", flat, err)
	}
	rod, err := dial.GnomonOfStyle(deg(-90), quantity.Millimetres(150))
	if err != nil || rod.Base.Millimetres() > 1e-12 || rod.Style != rod.Height {
		t.Errorf("upright at the pole: %+v, %v", rod, err)
	}
	for _, latitude := range []float64{95, -95, math.NaN()} {
		if _, err := dial.GnomonOfStyle(deg(latitude), 1); err == nil {
			t.Errorf("a style at %g° was taken", latitude)
		}
	}
	for _, side := range []quantity.Length{0, -1, quantity.Length(math.Inf(1)), quantity.Length(math.NaN())} {
		if _, err := dial.GnomonOfStyle(deg(45), side); err == nil {
			t.Errorf("a style of %g m was taken", side)
		}
	}
}
