package flow_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"noonbook/compute/flow"
)

var lessonGlass = flow.Glass{Hole: mm(4), Grain: mm(0.4), Bulk: flow.DrySand, Coefficient: flow.Beverloo}

// Beverloo's law by hand. No printed table was at hand; C and k are from memory. 4 mm less
// 1.4 × 0.4 mm are 3.44 mm; 0.00344 m to the power 5/2 is 6.9406e-7; times 0.58 × 1500 ×
// √9.80665 it is 1.8909e-3 kg/s, or 113.45 g/min, 75.6 mL/min.
func TestSandByHand(t *testing.T) {
	near(t, "grams a minute", lessonGlass.Rate().GramsAMinute(), 113.45, 0.01)
	near(t, "millilitres a minute", lessonGlass.VolumeRate().MillilitresAMinute(), 75.64, 0.01)
	near(t, "sand for three minutes", lessonGlass.Needs(3*time.Minute).Millilitres(), 226.9, 0.05)
	near(t, "time of it", lessonGlass.Lasts(lessonGlass.Needs(3*time.Minute)).Seconds(), 180, 1e-6)
}

// What makes the law: the flow grows as the power 5/2 of the hole less its rim (G. Hagen,
// Berlin 1852, as later books tell it), so that four times the hole and the grain give 32
// times as much; and the rim of 1.4 grains lets nothing through.
func TestSandScales(t *testing.T) {
	wide := lessonGlass
	wide.Hole, wide.Grain = 4*wide.Hole, 4*wide.Grain
	near(t, "four times as wide", float64(wide.Rate()/lessonGlass.Rate()), 32, 1e-9)
	narrow := lessonGlass
	narrow.Hole = mm(1.4 * 0.4)
	near(t, "as narrow as the rim", float64(narrow.Rate()), 0, 1e-15)
	narrow.Hole = mm(0.1)
	near(t, "narrower", float64(narrow.Rate()), 0, 0)
}

// Grains block a hole of fewer than about six: of 0.4 mm one of 2.4 mm is the narrowest.
func TestSandThatClogs(t *testing.T) {
	for hole, clogs := range map[float64]bool{2.3: true, 2.4: false, 4: false} {
		g := lessonGlass
		g.Hole = mm(hole)
		if (g.Check() != nil) != clogs {
			t.Errorf("a hole of %v mm: %v", hole, g.Check())
		}
	}
	if (flow.Glass{Hole: mm(4)}).Check() == nil {
		t.Error("sand without grains runs")
	}
}

// A glass that was timed gives its own coefficient: 100 mL in 80 s are 75 mL a minute.
func TestTimedSand(t *testing.T) {
	c, err := lessonGlass.CoefficientOf(flow.Millilitres(100), 80*time.Second)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "coefficient", c, flow.Beverloo*75/75.64, 1e-4)
	timed := lessonGlass
	timed.Coefficient = c
	near(t, "flow", timed.VolumeRate().MillilitresAMinute(), 75, 1e-9)
	if _, err := lessonGlass.CoefficientOf(0, time.Second); err == nil {
		t.Error("no sand has a coefficient")
	}
	if math.IsNaN(c) {
		t.Error("no number")
	}
}

// The lesson's bottle and glass.
func Example() {
	v := flow.Vessel{Width: mm(90), Hole: mm(2), Coefficient: flow.SharpEdged}
	r, err := v.Run(mm(180), mm(30))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("runs for %.0f s\n", r.Lasts.Seconds())
	for _, m := range r.Marks(2 * time.Minute) {
		fmt.Printf("%v at %.1f mm\n", m.After, m.Height.Millimetres())
	}
	fmt.Printf("%.0f g of sand a minute\n", lessonGlass.Rate().GramsAMinute())
	// Output:
	// runs for 376 s
	// 0s at 180.0 mm
	// 2m0s at 118.5 mm
	// 4m0s at 69.8 mm
	// 6m0s at 33.9 mm
	// 113 g of sand a minute
}
