package lens_test

import (
	"math"
	"strings"
	"testing"

	"noonbook/compute/lens"
	"noonbook/compute/quantity"
)

// A tube slit and closed is narrower by its wall on both sides: as wide outside as it
// was inside, with the same wall; its edges lap by what the way round shrinks, π times
// twice a wall. A wall of 1.5 mm tells a wrong factor.
func TestLappedTube(t *testing.T) {
	tube := lens.Tube{Inside: quantity.Millimetres(50), Outside: quantity.Millimetres(53), Length: quantity.Millimetres(300)}
	lapped := tube.Lapped()
	for what, c := range map[string][2]float64{
		"outside": {lapped.Outside.Millimetres(), 50}, "inside": {lapped.Inside.Millimetres(), 47}, "length": {lapped.Length.Millimetres(), 300},
		"slit": {tube.Slit().Millimetres(), math.Pi * 3},
	} {
		if math.Abs(c[0]-c[1]) > 1e-9 {
			t.Errorf("%s: %v mm, want %v", what, c[0], c[1])
		}
	}
}

// Detail by its three parts where each of them counts: a lens of 20 mm and 5 m at
// 100 times, with a pupil that takes the whole beam; 1.22 λ/D with 555 nm.
func TestDetailByHand(t *testing.T) {
	tel, err := lens.NewTelescope(lens.Lens{Focal: 5, Diameter: 0.020}, lens.Lens{Focal: 0.05, Diameter: 0.02})
	if err != nil {
		t.Fatal(err)
	}
	eye, edge, colour := math.Pi/180/60/100, 1.22*555e-9/0.020, 0.020/5/250
	got := float64(lens.View{Telescope: tel, Pupil: 0.006}.Detail())
	if want := math.Sqrt(eye*eye + edge*edge + colour*colour); math.Abs(got-want) > 1e-9*want {
		t.Errorf("a detail of %v rad, want %v", got, want)
	}
	if edge < 2*colour || edge < 2*eye { // or the test would not see it
		t.Error("the edge of the lens does not count here")
	}
}

// Labels and powers that are nothing, negative or without bound are refused, the least
// above nothing is not.
func TestRefusalsOnBothSides(t *testing.T) {
	for _, x := range []float64{0, -1, math.Inf(1), math.NaN()} {
		if _, err := lens.FocalOfLabel(x, lens.OverNear); err == nil || !strings.Contains(err.Error(), "label") {
			t.Errorf("a label of %v×: %v", x, err)
		}
		if _, err := lens.Focal(lens.Power(x)); err == nil || !strings.Contains(err.Error(), "dioptres") {
			t.Errorf("a power of %v: %v", x, err)
		}
		if _, err := lens.FocalOfDistances(quantity.Length(x), 1); x != math.Inf(1) && (err == nil || !strings.Contains(err.Error(), "from the thing to the lens")) {
			t.Errorf("a thing at %v m: %v", x, err)
		}
		if _, err := lens.FocalOfDistances(1, quantity.Length(x)); err == nil || !strings.Contains(err.Error(), "from the lens to its image") {
			t.Errorf("an image at %v m: %v", x, err)
		}
		if _, err := lens.NewTelescope(lens.Lens{Focal: quantity.Length(x), Diameter: 1}, lens.Lens{Focal: 1, Diameter: 1}); err == nil || !strings.Contains(err.Error(), "focal length of the front lens") {
			t.Errorf("a front lens of %v m: %v", x, err)
		}
		if _, err := lens.NewTelescope(lens.Lens{Focal: 1, Diameter: 1}, lens.Lens{Focal: 1, Diameter: quantity.Length(x)}); err == nil || !strings.Contains(err.Error(), "diameter of the eye lens") {
			t.Errorf("an eye lens %v m across: %v", x, err)
		}
	}
	for _, x := range []float64{1, 0.5, -1} {
		if _, err := lens.FocalOfLabel(x, lens.OverNearAndOne); err == nil {
			t.Errorf("a label of %v× with one added", x)
		}
	}
	if f, err := lens.FocalOfLabel(1.01, lens.OverNearAndOne); err != nil || math.Abs(f.Metres()-25) > 1e-9 {
		t.Errorf("a label of 1.01× with one added: %v m, %v", f.Metres(), err)
	}
	if f, err := lens.Focal(0.01); err != nil || f != 100 {
		t.Errorf("a power of 0.01: %v m, %v", f.Metres(), err)
	}
}
