package optics_test

import (
	"math"
	"strings"
	"testing"

	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/build/typeset"
)

// stocked evaluates a placeholder at a school whose stock is the TOML text.
func stocked(t *testing.T, name, stock string) (result.Result, error) {
	t.Helper()
	e, ok := entry.Find(entries(), name)
	if !ok {
		t.Fatalf("no placeholder %s", name)
	}
	values, faults, _ := school.Settings().Read([]byte("unit.title = \"T\"\nschool.name = \"S\"\nterm.first_day = 2027-04-12\nterm.last_day = 2027-04-30\n" + entrytest.Schools["alder reach"] + "\n[class]\npupils = 27\n[stock]\n" + stock))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	return e.Reckon(e.Complete(school.Settings().Complete(values), nil, entrytest.Day(t, "2027-04-19")))
}

const box = `
[[stock.lenses]]
label = "A"
count = 12
diameter_mm = 50
focal_mm = 250
[[stock.lenses]]
label = "B"
count = 4
diameter_mm = 30
power_dioptres = 20
[[stock.lenses]]
label = "C"
count = 6
diameter_mm = 35
magnifier_times = 3
`

// The separation at 5 m is F·d/(d − F) + e, by hand 5000/19 + 50 mm; the tubes
// must allow it and the one of far things.
func TestTubePlanOf250And50(t *testing.T) {
	r := reckon(t, "alder reach", "tube-plan", "2027-04-19", "stock.front_lens_focal_mm=250", "stock.eye_lens_focal_mm=50")
	entrytest.Near(t, "magnification", entrytest.Fact(t, r, "magnification").Number, 5, 1e-12)
	entrytest.Near(t, "far", entrytest.Fact(t, r, "separation_infinity").Number, 300, 1e-9)
	entrytest.Near(t, "at 5 m", entrytest.Fact(t, r, "separation_nearest").Number, 5000.0/19+50, 1e-9)
	outer, inner := entrytest.Fact(t, r, "outer_tube").Number, entrytest.Fact(t, r, "inner_tube").Number
	longest, shortest := entrytest.Fact(t, r, "separation_most").Number, entrytest.Fact(t, r, "separation_least").Number
	if outer+inner-longest < 50 || shortest-outer < 20 || shortest-inner < 5 {
		t.Errorf("tubes of %v and %v mm do not serve %v to %v", outer, inner, shortest, longest)
	}
	words, err := typeset.Language("en", false)
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]string{"magnification": "5.0\u00a0times", "separation_infinity": "300.0\u00a0mm", "separation_nearest": "313.2\u00a0mm"} {
		if got := words.Text(entrytest.Fact(t, r, name)); got != want {
			t.Errorf("%s reads %q", name, got)
		}
	}
}

// The pieces of the cutting strip are as long as the tubes are to be cut, in
// millimetres of paper, and its marks stand where the rim of the outer tube will.
func TestCuttingStripIsTrue(t *testing.T) {
	r := reckon(t, "alder reach", "tube-plan", "2027-04-19")
	if len(r.Sheets) == 0 {
		t.Fatal("no sheets")
	}
	// The outer tube is longer than the paper is wide and comes in two parts.
	var lengths, stops []float64
	left := 0.0
	for _, s := range r.Sheets[0].Drawing.Shapes {
		switch {
		case s.Role == "cut piece" && s.Closed:
			left = s.Points[0].X
			lengths = append(lengths, s.Points[1].X-left)
		case s.Role == "stop" && s.Points[0].X == s.Points[1].X && len(lengths) == 3:
			stops = append(stops, s.Points[0].X-left)
		}
	}
	if len(lengths) != 4 || len(r.Sheets) != 1 {
		t.Fatalf("strips of %v mm on %d sheets", lengths, len(r.Sheets))
	}
	outer := lengths[0] + lengths[1]
	entrytest.Near(t, "outer tube", outer, entrytest.Fact(t, r, "outer_tube").Number, 1e-9)
	entrytest.Near(t, "inner tube", lengths[2], entrytest.Fact(t, r, "inner_tube").Number, 1e-9)
	entrytest.Near(t, "eye tube", lengths[3], entrytest.Fact(t, r, "eye_tube").Number, 1e-9)
	entrytest.Near(t, "mark of far things", stops[0], 300-outer, 1e-9)
	entrytest.Near(t, "mark of 5 m", stops[len(stops)-1], 5000.0/19+50-outer, 1e-9)
}

func TestTubesFromStock(t *testing.T) {
	r, err := stocked(t, "tube-plan", box+`
[[stock.tubes]]
label = "kitchen roll"
count = 40
inside_mm = 50
outside_mm = 52
length_mm = 230
`)
	if err != nil {
		t.Fatal(err)
	}
	// One kind only: it is slit, and its edges lap by π times twice the wall.
	entrytest.Near(t, "lap", entrytest.Fact(t, r, "lap").Number, 2*math.Pi, 1e-9)
	if entrytest.Fact(t, r, "outer_tube").Number > 3*230 || len(r.Drawings) != 1 {
		t.Errorf("the outer tube is %v", entrytest.Fact(t, r, "outer_tube").Number)
	}
	// Box B has four lenses for nine groups.
	if !entrytest.Warned(r, "tube-plan.too_few") {
		t.Errorf("warnings are %v", r.Warnings)
	}
	if got := r.Tables[1].Rows[0].Cells[2].Number; got != 9 {
		t.Errorf("%v lenses for 27 pupils in threes", got)
	}
}

// What cannot be built is said in words that tell what to do, without an error.
func TestTelescopesThatDoNotServe(t *testing.T) {
	tube := func(inside, outside, length string) string {
		return "\n[[stock.tubes]]\nlabel = \"T\"\ncount = 40\ninside_mm = " + inside + "\noutside_mm = " + outside + "\nlength_mm = " + length + "\n"
	}
	lenses := func(front, eye string) string {
		return "front_lens_focal_mm = " + front + "\neye_lens_focal_mm = " + eye + "\n"
	}
	for name, c := range map[string]struct{ stock, want string }{
		"swapped":                  {lenses("50", "250"), "lens-pairs.warn_shrinks"},
		"equal":                    {lenses("100", "100"), "lens-pairs.warn_equal"},
		"weak":                     {lenses("75", "50"), "lens-pairs.warn_weak"},
		"blurs":                    {lenses("250", "10"), "lens-pairs.warn_blurs"},
		"too long":                 {lenses("2000", "50") + tube("50", "53", "330"), "tube-plan.too_long"},
		"nearest inside":           {lenses("5000", "50"), "tube-plan.too_near"},
		"eye lens too weak":        {lenses("900", "300"), "tube-plan.weak_eye_lens"},
		"tube wide for its length": {lenses("100", "25") + tube("120", "123", "330"), "tube-plan.too_short"},
		"tubes under the overlap":  {lenses("250", "50") + tube("50", "53", "40"), "tube-plan.too_long"},
	} {
		r, err := stocked(t, "tube-plan", c.stock)
		if err != nil || !entrytest.Warned(r, c.want) {
			t.Errorf("%s: %v, %v", name, r.Warnings, err)
		}
		if _, err := stocked(t, "lens-rays", c.stock); err != nil {
			t.Errorf("%s: rays: %v", name, err)
		}
	}
	for name, c := range map[string]struct{ stock, want string }{
		"lens without a number": {"[[stock.lenses]]\nlabel = \"X\"\ndiameter_mm = 50\n", `lens "X" of stock.lenses: it has none of focal_mm`},
		"tube inside out":       {tube("53", "50", "330"), "not wider than its inside"},
	} {
		if _, err := stocked(t, "tube-plan", c.stock); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestLensPairsOfABox(t *testing.T) {
	r, err := stocked(t, "lens-pairs", box)
	if err != nil {
		t.Fatal(err)
	}
	entrytest.Near(t, "pairs", float64(len(r.Tables[0].Rows)), 9, 0)
	entrytest.Near(t, "best", entrytest.Fact(t, r, "best_magnification").Number, 5, 1e-9)
	entrytest.Near(t, "best swapped", entrytest.Fact(t, r, "best_swapped").Number, 0.2, 1e-12)
	if entrytest.Fact(t, r, "best_front").Plain != "A" || entrytest.Fact(t, r, "best_eye").Plain != "B" {
		t.Errorf("the best pair is %v and %v", entrytest.Fact(t, r, "best_front"), entrytest.Fact(t, r, "best_eye"))
	}
	// Without a pair set the telescope is the best of the box; its diameters come with it.
	plan, err := stocked(t, "lens-rays", box)
	if err != nil {
		t.Fatal(err)
	}
	entrytest.Near(t, "exit pupil", entrytest.Fact(t, plan, "exit_pupil").Number, 50.0/5, 1e-9)
	useless, err := stocked(t, "lens-pairs", "[[stock.lenses]]\nlabel = \"A\"\ncount = 2\ndiameter_mm = 50\nfocal_mm = 250\n")
	if err != nil || !entrytest.Warned(useless, "lens-pairs.no_pair") || entrytest.Fact(t, useless, "best_front").Kind != say.Nothing {
		t.Errorf("two alike: %v, %v", useless.Warnings, err)
	}
}

// 1/f = 1/o + 1/i: OpenStax, College Physics, from memory: 0.750 m and 1.50 m
// belong to 0.500 m.
func TestLensPower(t *testing.T) {
	r := reckon(t, "alder reach", "lens-power", "2027-04-19", "object_m=0.75", "image_mm=1500", "image_error_mm=0", "object_error_mm=0")
	entrytest.Near(t, "focal length", entrytest.Fact(t, r, "focal").Number, 500, 1e-9)
	entrytest.Near(t, "power", entrytest.Fact(t, r, "power").Number, 2, 1e-12)
	entrytest.Near(t, "error", entrytest.Fact(t, r, "error").Number, 0, 1e-9)
	r = reckon(t, "alder reach", "lens-power", "2027-04-19", "image_mm=252", "power_dioptres=4")
	if len(r.Warnings) != 0 {
		t.Errorf("252 mm is not taken for 4 D: %v", r.Warnings)
	}
	r = reckon(t, "alder reach", "lens-power", "2027-04-19", "image_mm=330", "power_dioptres=4")
	if !entrytest.Warned(r, "lens-power.disagree") {
		t.Error("330 mm is taken for 4 D")
	}
	r = reckon(t, "alder reach", "lens-power", "2027-04-19", "magnifier_times=3")
	entrytest.Near(t, "3×", entrytest.Fact(t, r, "focal").Number, 250.0/3, 1e-9)
	entrytest.Near(t, "3×, one added", entrytest.Fact(t, r, "most").Number, 125, 1e-9)
}

// In the drawing the beams leave the eye lens parallel, five times as steep as the
// light came, and cross the axis at the eye; turned round they are a fifth.
func TestRaysAreDrawnAsTheyRun(t *testing.T) {
	slope := func(s []float64) float64 { return (s[3] - s[1]) / (s[2] - s[0]) }
	for _, c := range []struct {
		given string
		gain  float64
	}{{"swapped=false", 5}, {"swapped=true", 0.2}} {
		r := reckon(t, "alder reach", "lens-rays", "2027-04-19", c.given, "across=1")
		var eye float64
		for _, s := range r.Drawings[0].Shapes {
			if s.Role == "eye" {
				eye = s.Points[0].X
			}
		}
		whole := 0
		for _, s := range r.Drawings[0].Shapes {
			if s.Role != "slanting" || len(s.Points) < 4 {
				continue
			}
			whole++
			p := s.Points
			in, out := slope([]float64{p[0].X, p[0].Y, p[1].X, p[1].Y}), slope([]float64{p[2].X, p[2].Y, p[3].X, p[3].Y})
			entrytest.Near(t, "gain of the angle", out/in, -c.gain, 1e-9)
			if c.gain > 1 && whole == 2 { // the middle ray crosses the axis at the eye
				axis := r.Drawings[0].Shapes[0].Points[0].Y
				entrytest.Near(t, "height at the eye", p[2].Y+out*(eye-p[2].X), axis, 1e-9)
			}
		}
		if c.gain > 1 && whole != 3 || whole == 0 {
			t.Errorf("%s: %d rays go through", c.given, whole)
		}
	}
	if r := reckon(t, "alder reach", "lens-rays", "2027-04-19", "object_m=0.2"); len(r.Drawings) != 0 || !entrytest.Warned(r, "tube-plan.too_near") {
		t.Error("a thing inside the focal length has rays")
	}
}
