package space_test

import (
	"fmt"
	"math"
	"testing"

	"noonbook/compute/quantity"
	"noonbook/compute/space"
)

// Meeus, Astronomical Algorithms, 2nd ed. 1998, example 17.a: Arcturus (213.9154°,
// +19.1825°) and Spica (201.2983°, −11.1614°) are 32.7930° apart.
func ExampleVector_Angle() {
	deg := quantity.Degrees
	arcturus, spica := space.At(deg(213.9154), deg(19.1825), 1), space.At(deg(201.2983), deg(-11.1614), 1)
	fmt.Printf("%.4f°\n", arcturus.Angle(spica).Degrees())
	// Output: 32.7930°
}

// There and back again, and which axis is which.
func TestAtAndBack(t *testing.T) {
	for _, lon := range []float64{-179.9, -90, 0, 33, 180} {
		for _, lat := range []float64{-89.9, -12, 0, 47} {
			v := space.At(quantity.Degrees(lon), quantity.Degrees(lat), 7)
			x, y, r := v.Spherical()
			if math.Abs((x-quantity.Degrees(lon)).Signed().Degrees()) > 1e-12 || math.Abs(y.Degrees()-lat) > 1e-12 || math.Abs(r-7) > 1e-14 {
				t.Errorf("%g° %g°: %v came back as %.15g° %.15g° %.15g", lon, lat, v, x.Degrees(), y.Degrees(), r)
			}
		}
	}
	// The axes: longitude 0 is x, 90° is y, the pole is z.
	for _, c := range []struct {
		lon, lat float64
		want     space.Vector
	}{{0, 0, space.Vector{X: 2}}, {90, 0, space.Vector{Y: 2}}, {45, 90, space.Vector{Z: 2}}} {
		if got := space.At(quantity.Degrees(c.lon), quantity.Degrees(c.lat), 2); got.Minus(c.want).Norm() > 1e-15 {
			t.Errorf("%g° %g°: %v", c.lon, c.lat, got)
		}
	}
}

// By hand, in whole numbers.
func TestProducts(t *testing.T) {
	v, w := space.Vector{1, 2, 3}, space.Vector{4, -5, 6}
	for name, c := range map[string]struct{ got, want space.Vector }{
		"plus":         {v.Plus(w), space.Vector{5, -3, 9}},
		"minus":        {v.Minus(w), space.Vector{-3, 7, -3}},
		"times":        {v.Times(-2), space.Vector{-2, -4, -6}},
		"along":        {v.Along(2, w), space.Vector{9, -8, 15}},
		"cross":        {v.Cross(w), space.Vector{27, 6, -13}},
		"unit":         {space.Vector{3, 0, -4}.Unit(), space.Vector{0.6, 0, -0.8}},
		"unit of zero": {space.Vector{}.Unit(), space.Vector{}},
	} {
		if c.got != c.want {
			t.Errorf("%s: %v, want %v", name, c.got, c.want)
		}
	}
	if v.Dot(w) != 12 || (space.Vector{2, 3, 6}).Norm() != 7 {
		t.Errorf("dot %g, norm %g", v.Dot(w), space.Vector{2, 3, 6}.Norm())
	}
}

// Small and nearly straight angles, where a cosine alone has lost its digits.
func TestAngleNearItsEnds(t *testing.T) {
	x := space.Vector{X: 1}
	for _, small := range []float64{1e-12, 1e-6} {
		if got := x.Angle(space.Vector{X: 1, Y: small}).Radians(); math.Abs(got/small-1) > 1e-9 {
			t.Errorf("%g came out as %g", small, got)
		}
		if got := math.Pi - x.Angle(space.Vector{X: -1, Y: small}).Radians(); math.Abs(got-small) > 1e-15 {
			t.Errorf("half a turn less %g came out as %g", small, got)
		}
	}
	if x.Angle(space.Vector{}) != 0 {
		t.Error("the zero vector makes an angle")
	}
}
