package flow_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"
	"time"

	"noonbook/compute/flow"
	"noonbook/compute/quantity"
)

func mm(x float64) quantity.Length { return quantity.Millimetres(x) }

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s is %v, want %v ± %v", what, got, want, within)
	}
}

func run(t *testing.T, v flow.Vessel, from, to quantity.Length) flow.Run {
	t.Helper()
	r, err := v.Run(from, to)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// Two worked examples of textbooks, both from memory, each with the g of its book.
//
// W. E. Boyce and R. C. DiPrima, Elementary Differential Equations, section 2.3, problem 6:
// a cylinder of radius 1 m with an outlet of radius 0.1 m and the contraction coefficient
// 0.6, filled to 3 m, is empty after 130.41 s (9.8 m/s²).
//
// D. G. Zill, A First Course in Differential Equations, leaking tanks: a tank of radius
// 2 ft with a hole of radius 1/2 in, filled to 10 ft, is empty after 576 √10 s or 30.36 min
// without friction, and with c = 0.6 after 50.6 min (32 ft/s²).
func TestEmptyingOfTextbooks(t *testing.T) {
	const foot, inch = 304.8, 25.4
	for name, c := range map[string]struct {
		vessel          flow.Vessel
		height, g       float64 // mm, m/s²
		seconds, within float64
	}{
		"Boyce and DiPrima":    {flow.Vessel{Width: mm(2000), Hole: mm(200), Coefficient: 0.6}, 3000, 9.8, 130.41, 0.005},
		"Zill":                 {flow.Vessel{Width: mm(4 * foot), Hole: mm(inch), Coefficient: 1}, 10 * foot, 32 * foot / 1000, 576 * math.Sqrt(10), 0.005},
		"Zill, in minutes":     {flow.Vessel{Width: mm(4 * foot), Hole: mm(inch), Coefficient: 1}, 10 * foot, 32 * foot / 1000, 30.36 * 60, 0.3},
		"Zill, with the 0.6":   {flow.Vessel{Width: mm(4 * foot), Hole: mm(inch), Coefficient: 0.6}, 10 * foot, 32 * foot / 1000, 50.6 * 60, 3},
		"four times the depth": {flow.Vessel{Width: mm(2000), Hole: mm(200), Coefficient: 0.6}, 12000, 9.8, 2 * 130.41, 0.01},
	} {
		r := run(t, c.vessel, mm(c.height), 0)
		near(t, name, r.Lasts.Seconds()*math.Sqrt(flow.Gravity/c.g), c.seconds, c.within)
	}
}

// The coefficient of a sharp edge is near that of a long slot in a large wall, for which
// theory has π/(π + 2) (G. Kirchhoff, Journal für die reine und angewandte Mathematik 70,
// 1869), and within the 0.60 to 0.62 of ISO 5167-2 (from memory).
func TestSharpEdge(t *testing.T) {
	near(t, "sharp edge", flow.SharpEdged, math.Pi/(math.Pi+2), 0.002)
	near(t, "sharp edge", flow.SharpEdged, 0.61, 0.01)
}

// scipy integrates the same bottles, made by testdata/reference/flow.py: the closed form is
// exact, and leaving the speed of the level out changes less than 1 in 500.
func TestRunsAgainstScipy(t *testing.T) {
	file, err := os.Open("../../testdata/reference/flow-runs.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	records, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	worst, furthest := 0.0, 0.0
	for _, record := range records[1:] {
		var x [7]float64
		for i, text := range record {
			if x[i], err = strconv.ParseFloat(text, 64); err != nil {
				t.Fatal(err)
			}
		}
		got := run(t, flow.Vessel{Width: mm(x[0]), Hole: mm(x[1]), Coefficient: x[2]}, mm(x[3]), mm(x[4])).Lasts.Seconds()
		near(t, "run of "+record[0]+" mm", got, x[5], 1e-7*x[5])
		near(t, "run of "+record[0]+" mm with the sinking level", got, x[6], x[6]/500)
		worst, furthest = max(worst, math.Abs(got/x[5]-1)), max(furthest, math.Abs(got/x[6]-1))
	}
	t.Logf("%d runs: %.1e from scipy; the sinking level matters by %.1e", len(records)-1, worst, furthest)
	if len(records) < 9 || furthest < 1e-4 {
		t.Errorf("%d runs; the worst of them shows nothing", len(records)-1)
	}
}

// The bottle of the lesson, 90 mm wide with a hole of 2 mm, in numbers that a pocket
// calculator gives: 2025 × √(2 × 0.18 ÷ 9.80665) ÷ 0.61 = 636.0 s from full to empty.
func TestBottleOfTheLesson(t *testing.T) {
	v := flow.Vessel{Width: mm(90), Hole: mm(2), Coefficient: 0.61}
	near(t, "emptying", run(t, v, mm(180), 0).Lasts.Seconds(), 636.0, 0.1)
	r := run(t, v, mm(180), mm(30))
	near(t, "run", r.Lasts.Seconds(), 636.04*(1-math.Sqrt(1.0/6)), 0.05)
	near(t, "after a minute", r.Height(time.Minute).Millimetres(), 180*math.Pow(1-60/636.04, 2), 0.01)
	near(t, "before the start", r.Height(-time.Minute).Millimetres(), 180, 1e-9)
	near(t, "after the end", r.Height(time.Hour).Millimetres(), 30, 1e-9)
	// 0.61 × 3.1416 mm² × 1.8789 m/s = 3.6006 mL/s
	near(t, "flow", v.Rate(mm(180)).MillilitresAMinute(), 216.04, 0.05)
	near(t, "water", flow.Upright(mm(90), mm(150)).Millilitres(), 954.26, 0.01)
	near(t, "Reynolds number", v.Reynolds(mm(180)), 1.8789*0.002/1.0034e-6, 2)
	// 4 × 0.07275 ÷ (998.2 × 9.80665 × 0.002) = 14.86 mm
	near(t, "held by its skin", v.Held().Millimetres(), 14.86, 0.01)
	near(t, "lowest", v.Lowest().Millimetres(), 29.73, 0.02)
}

// A short tube lets a third more through than a sharp edge.
func TestShortTube(t *testing.T) {
	sharp, tube := flow.Vessel{Width: mm(90), Hole: mm(2), Coefficient: flow.SharpEdged}, flow.Vessel{Width: mm(90), Hole: mm(2), Coefficient: flow.ShortTube}
	near(t, "a tube", float64(tube.Rate(mm(100))/sharp.Rate(mm(100))), 1.34, 0.01)
}

// Marks are where stepping through dh/dt in thousandths of a second finds the water, and
// their distances shrink evenly: h is a square of t.
func TestMarks(t *testing.T) {
	v := flow.Vessel{Width: mm(90), Hole: mm(2), Coefficient: 0.61}
	r := run(t, v, mm(180), mm(30))
	marks := r.Marks(time.Minute)
	if len(marks) != 7 || marks[0].After != 0 || marks[6].After != 6*time.Minute {
		t.Fatalf("marks %v", marks)
	}
	h, at := 0.18, 1
	for i := 1; i <= 360000; i++ {
		h -= 0.001 * 0.61 * math.Pow(2.0/90, 2) * math.Sqrt(2*9.80665*h)
		if i%60000 == 0 {
			near(t, "level", marks[at].Height.Millimetres(), h*1000, 0.01)
			at++
		}
	}
	second := (marks[0].Height - 2*marks[1].Height + marks[2].Height).Millimetres()
	for i := 1; i+2 < len(marks); i++ {
		near(t, "how the distances shrink", (marks[i].Height - 2*marks[i+1].Height + marks[i+2].Height).Millimetres(), second, 1e-6)
	}
	for _, step := range []time.Duration{0, -time.Second, time.Millisecond} {
		if r.Marks(step) != nil {
			t.Errorf("there are marks every %v", step)
		}
	}
}

// A run that was timed knows its marks without bottle and hole, and gives the coefficient
// back that it was made with.
func TestTimed(t *testing.T) {
	v := flow.Vessel{Width: mm(90), Hole: mm(2), Coefficient: 0.67}
	reckoned := run(t, v, mm(180), mm(30))
	timed, err := flow.Timed(mm(180), mm(30), reckoned.Lasts)
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range reckoned.Marks(30 * time.Second) {
		near(t, "mark", timed.Height(m.After).Millimetres(), m.Height.Millimetres(), 1e-9)
	}
	v.Coefficient = 0.1 // of no account
	c, err := v.CoefficientOf(timed)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "coefficient", c, 0.67, 1e-6)
}

// By hand from 160 mm to 40 mm in 4 min: √h falls from √160 by half, so it is 11.07, 9.49,
// 7.91 and 6.32 √mm: 122.5, 90, 62.5 and 40 mm. The first step is 37.5 mm, of which 120 mm
// hold 3.2: a clock with such steps shows 3 min 12 s and is 12 min slow after an hour.
// Evenly spaced marks, 30 mm apart, are furthest off where √h is midway, at 90 mm: 2 min 20 s
// shown after 2 min.
func TestEvenMarks(t *testing.T) {
	r, err := flow.Timed(mm(160), mm(40), 4*time.Minute)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []float64{160, 122.5, 90, 62.5, 40} {
		near(t, "level", r.Height(time.Duration(i)*time.Minute).Millimetres(), want, 1e-9)
	}
	near(t, "dry", r.Dry().Minutes(), 8, 1e-9)
	near(t, "copied", r.Copied(time.Minute).Seconds(), 192, 1e-6)
	near(t, "after an hour", r.AfterAnHour(r.Copied(time.Minute)).Minutes(), -12, 1e-6)
	fast, at := r.Even()
	near(t, "evenly spaced", fast.Seconds(), 20, 1e-6)
	near(t, "evenly spaced, at", at.Millimetres(), 90, 1e-9)
	for i := range 1000 { // nowhere is it more
		after := time.Duration(i) * 240 * time.Millisecond
		shown := float64((r.From-r.Height(after))/(r.From-r.To)) * 240
		if shown-after.Seconds() > fast.Seconds()+1e-6 || shown < after.Seconds()-1e-6 {
			t.Fatalf("after %v it shows %v s", after, shown)
		}
	}
}

func TestVesselsRefused(t *testing.T) {
	good := flow.Vessel{Width: mm(90), Hole: mm(2), Coefficient: 0.61}
	for name, c := range map[string]struct {
		v        flow.Vessel
		from, to float64
	}{
		"no width": {flow.Vessel{Hole: mm(2), Coefficient: 0.61}, 100, 20}, "no hole": {flow.Vessel{Width: mm(90), Coefficient: 0.61}, 100, 20},
		"no coefficient": {flow.Vessel{Width: mm(90), Hole: mm(2)}, 100, 20}, "wide hole": {flow.Vessel{Width: mm(20), Hole: mm(5.1), Coefficient: 0.61}, 100, 20},
		"upward": {good, 20, 100}, "still": {good, 100, 100}, "below the hole": {good, 100, -1}, "not a number": {good, math.NaN(), 20},
	} {
		if _, err := c.v.Run(mm(c.from), mm(c.to)); err == nil {
			t.Errorf("%s: runs", name)
		}
	}
	if _, err := flow.Timed(mm(100), mm(20), 0); err == nil {
		t.Error("a run takes no time")
	}
	if _, err := good.CoefficientOf(flow.Run{From: mm(100), To: mm(20)}); err == nil {
		t.Error("a run of no time has a coefficient")
	}
}
