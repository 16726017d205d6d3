package optics_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
)

// equipped evaluates a placeholder at a school with these lines of [class] and
// [stock]; given are key=value pairs of its arguments.
func equipped(t *testing.T, name, class, stock string, given ...string) result.Result {
	t.Helper()
	e, _ := entry.Find(entries(), name)
	values, faults, _ := school.Settings().Read([]byte("unit.title = \"T\"\nschool.name = \"S\"\nterm.first_day = 2027-04-12\nterm.last_day = 2027-04-30\n" + entrytest.Schools["alder reach"] + "\n[class]\n" + class + "\n[stock]\n" + stock))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	arguments := form.Values{}
	for _, pair := range given {
		key, value, _ := strings.Cut(pair, "=")
		v, complaint := e.Form(school.Settings()).ParsePair(key, value)
		if complaint != "" {
			t.Fatal(complaint)
		}
		arguments[key] = v
	}
	r, err := e.Reckon(e.Complete(school.Settings().Complete(values), arguments, entrytest.Day(t, "2027-04-19")))
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func tube(label string, count int, inside, outside, length float64) string {
	return fmt.Sprintf("[[stock.tubes]]\nlabel = %q\ncount = %d\ninside_mm = %g\noutside_mm = %g\nlength_mm = %g\n", label, count, inside, outside, length)
}

func lensOf(label string, count int, diameter, focal float64) string {
	return fmt.Sprintf("[[stock.lenses]]\nlabel = %q\ncount = %d\ndiameter_mm = %g\nfocal_mm = %g\n", label, count, diameter, focal)
}

// A telescope of 300 and 60 mm in tubes of 52 and 51.5 mm, for 4 m and eyes of
// ±3 dioptres, by hand with 1/f = 1/o + 1/i:
//
//	far things               300 + 60                            = 360 mm
//	4 m                      300 · 4000 / 3700 + 60               = 384.324
//	at least (far, +3 D)     300 + 60 / (1 + 3 · 0.06)            = 350.847
//	at most (4 m, −3 D)      324.324 + 60 / (1 − 3 · 0.06)        = 397.495
//	outer tube               at least − 20 to hold, to 5 mm, and no longer than 330
//	inner tube               at most + 52 of overlap − outer, up to 5 mm
//	eye tube                 60 · 360 / 300 − 15 for lashes, down to 5 mm
func TestTubesByHand(t *testing.T) {
	stock := lensOf("F", 7, 45, 300) + lensOf("E", 6, 28, 60) + tube("wide", 7, 52, 55, 330) + tube("slim", 6, 49, 51.5, 330)
	given := []string{"nearest_m=4", "eye_dioptres=3"}
	r := equipped(t, "tube-plan", "pupils = 26\ngroup_size = 4\n", stock, given...)
	for name, want := range map[string]float64{
		"magnification": 5, "separation_infinity": 360, "separation_nearest": 300*4000.0/3700 + 60,
		"separation_least": 300 + 60/1.18, "separation_most": 300*4000.0/3700 + 60/0.82,
		"travel":     300*4000.0/3700 + 60/0.82 - 300 - 60/1.18,
		"outer_tube": 330, "inner_tube": 120, "overlap": 330 + 120 - (300*4000.0/3700 + 60/0.82),
		"eye_tube": 55, "sticks_out": 30, "tubes": 2, "nearest": 4,
	} {
		entrytest.Near(t, name, entrytest.Fact(t, r, name).Number, want, 1e-6)
	}
	if got := entrytest.Shown(t, r, "lap"); got != "no tube is slit" {
		t.Error("lap:", got)
	}
	entrytest.Tells(t, r.Notes, "tube-plan.play", "0.5 mm of play")
	entrytest.Tells(t, r.Working, "tube-plan.working_magnification", "300 mm ÷ 60 mm = 5.0 times")
	entrytest.Tells(t, r.Working, "tube-plan.working_far", "300 mm + 60 mm = 360.0 mm")
	entrytest.Tells(t, r.Working, "tube-plan.working_near", "4000 mm away: 300 mm × 4000 mm ÷ (4000 mm - 300 mm) + 60 mm = 384.3 mm")
	entrytest.Tells(t, r.Working, "tube-plan.working_cut", "397.5 mm apart", "diameter, 52 mm", "they are 450 mm")
	// How far to draw out for each distance: 300 d/(d − 300) + 60 less the outer tube.
	targets, apart, out := entrytest.Texts(t, r, "focus", "target"), entrytest.Cells(t, r, "focus", "separation"), entrytest.Cells(t, r, "focus", "sticks_out")
	if strings.Join(targets, ", ") != "far things, 50 m, 20 m, 10 m, 5 m, 4 m" {
		t.Errorf("targets are %v", targets)
	}
	for i, d := range []float64{1e12, 50e3, 20e3, 10e3, 5e3, 4e3} {
		entrytest.Near(t, "lens to lens", apart[i].Number, 300*d/(d-300)+60, 1e-5)
		entrytest.Near(t, "sticks out", out[i].Number, 300*d/(d-300)+60-330, 1e-5)
		if marked := r.Tables[0].Rows[i].Marked; marked != (i == 0) {
			t.Errorf("row %d is marked: %v", i, marked)
		}
	}
	// 26 pupils in fours are seven groups (6.5, rounded). Of the eye lens and the
	// slim tube there are six.
	if got := strings.Join(entrytest.Texts(t, r, "kit", "needed"), " "); got != "7 7 7 7" {
		t.Error("needed:", got)
	}
	if got := strings.Join(entrytest.Texts(t, r, "kit", "stock"), " "); got != "7 6 7 6" {
		t.Error("in stock:", got)
	}
	if got := entrytest.Lines(t, r.Warnings); strings.Count(got, "are needed") != 2 || !strings.Contains(got, "E: 7 are needed, and the box holds 6.") || !strings.Contains(got, "slim: 7 are needed, and the box holds 6.") {
		t.Error(got)
	}
	// Six groups have enough; no pupils are one telescope.
	for class, want := range map[string]string{"pupils = 25\ngroup_size = 4\n": "6 6 6 6", "pupils = 0\n": "1 1 1 1", "pupils = 1\n": "1 1 1 1"} {
		r := equipped(t, "tube-plan", class, stock, given...)
		if got := strings.Join(entrytest.Texts(t, r, "kit", "needed"), " "); got != want || len(r.Warnings) > 0 {
			t.Errorf("%q: %s, %v", class, got, entrytest.Lines(t, r.Warnings))
		}
	}

	// Cut open: the eye lens is 360 mm behind the front lens, the inner tube ends
	// there, and the eye tube follows.
	d := r.Drawings[0]
	tubes := entrytest.Roled(d, "tube")
	left := func(s drawing.Shape) (low, high float64) {
		low, high = math.Inf(1), math.Inf(-1)
		for _, p := range s.Points {
			low, high = math.Min(low, p.X), math.Max(high, p.X)
		}
		return low, high
	}
	start, end := left(tubes[0])
	mm := (end - start) / 330
	inFrom, inTo := math.Inf(1), math.Inf(-1)
	eyeTo := 0.0
	for _, s := range tubes {
		low, high := left(s)
		if math.Abs(high-low-120*mm) < 1e-6 {
			inFrom, inTo = (low-start)/mm, (high-start)/mm
		}
		eyeTo = math.Max(eyeTo, (high-start)/mm)
	}
	entrytest.Near(t, "inner tube from", inFrom, 240, 1e-6)
	entrytest.Near(t, "inner tube to", inTo, 360, 1e-6)
	entrytest.Near(t, "eye tube to", eyeTo, 415, 1e-6)
	labels := entrytest.Labels(t, d)
	for _, want := range []string{"outer tube 330 mm", "inner tube 120 mm", "eye tube 55 mm", "lens to lens 360 mm, for far things"} {
		if _, ok := labels[want]; !ok {
			t.Errorf("the section lacks %q", want)
		}
	}
	// The mask's hole is √(0.655 mm × focal length), after Huygens' 3 inches on 30 feet.
	strip := r.Sheets[0].Drawing
	var discs []float64
	for _, s := range strip.Shapes {
		if s.Radius > 0 {
			discs = append(discs, 2*s.Radius)
		}
	}
	if len(discs) != 2 {
		t.Fatalf("discs of %v mm", discs)
	}
	entrytest.Near(t, "mask", discs[0], 45, 1e-9)
	entrytest.Near(t, "hole", discs[1], math.Sqrt(0.655*300), 1e-6)
	if _, ok := entrytest.Labels(t, strip)["Mask of card for the front lens: 45 mm across, hole 14 mm"]; !ok {
		t.Error("the mask has no words")
	}
}

// A tube of which one telescope takes two, one of them slit, is counted twice.
func TestOneKindOfTube(t *testing.T) {
	for count, short := range map[int]bool{13: true, 14: false} {
		stock := lensOf("F", 20, 45, 300) + lensOf("E", 20, 28, 60) + tube("roll", count, 50, 52, 340)
		r := equipped(t, "tube-plan", "pupils = 26\ngroup_size = 4\n", stock, "nearest_m=4", "eye_dioptres=3")
		if got := entrytest.Says(r.Warnings, "tube-plan.too_few"); got != short {
			t.Errorf("%d tubes for 7 telescopes: %v", count, entrytest.Lines(t, r.Warnings))
		}
		if short {
			entrytest.Tells(t, r.Warnings, "tube-plan.too_few", "roll: 14 are needed, and the box holds 13")
		}
		entrytest.Tells(t, r.Notes, "tube-plan.lapped", "by 6 mm") // π × twice a wall of 1 mm
		if entrytest.Says(r.Notes, "tube-plan.joined") {
			t.Error("two tubes are joined")
		}
	}
	// Shorter ones are joined: of 200 mm the inner tube takes two:
	// 397.5 + 50 − 200 is 250 mm up to the lens, and 55 mm behind it.
	r := equipped(t, "tube-plan", "pupils = 26\n", lensOf("F", 20, 45, 300)+lensOf("E", 20, 28, 60)+tube("roll", 90, 50, 52, 200), "nearest_m=4", "eye_dioptres=3")
	if n := entrytest.Fact(t, r, "tubes").Number; n != 3 || !entrytest.Says(r.Notes, "tube-plan.joined") {
		t.Errorf("tubes of 200 mm: %v", n)
	}
	entrytest.Tells(t, r.Notes, "tube-plan.joined", "takes 1 outer and 2 inner")
	// Without tubes the lengths hold for one as wide as the lens.
	r = equipped(t, "tube-plan", "pupils = 26\n", lensOf("F", 20, 45, 300)+lensOf("E", 20, 28, 60), "nearest_m=4", "eye_dioptres=3")
	entrytest.Tells(t, r.Notes, "tube-plan.assumed", "an outer tube 45 mm wide inside")
	if entrytest.Says(r.Notes, "tube-plan.play") || len(r.Tables[1].Rows) != 2 {
		t.Errorf("no tubes are entered, and the page counts them: %v", entrytest.Lines(t, r.Notes))
	}
}

// The words of what does not serve name the numbers, each in its place.
func TestMisfitsAreNamed(t *testing.T) {
	tell := func(stock, key string, parts ...string) {
		t.Helper()
		r := equipped(t, "tube-plan", "pupils = 27\n", stock)
		entrytest.Tells(t, r.Warnings, key, parts...)
		if strings.HasPrefix(key, "tube-plan.too_") || key == "tube-plan.weak_eye_lens" {
			for _, name := range []string{"outer_tube", "inner_tube", "eye_tube", "overlap", "sticks_out", "tubes"} {
				if got := entrytest.Shown(t, r, name); got != "not with these tubes" {
					t.Errorf("%s: %s is %s", key, name, got)
				}
			}
			if len(r.Drawings) > 0 {
				t.Errorf("%s: a telescope is drawn", key)
			}
		}
	}
	pair := func(front, eye int) string {
		return fmt.Sprintf("front_lens_focal_mm = %d\neye_lens_focal_mm = %d\n", front, eye)
	}
	tell(pair(50, 250), "lens-pairs.warn_shrinks", "0.20 times their size", "the one of 250 mm comes to the front and the one of 50 mm to the eye")
	tell(pair(100, 100), "lens-pairs.warn_equal", "Two lenses of 100 mm")
	tell(pair(75, 50), "lens-pairs.warn_weak", "only 1.5 times")
	tell(pair(250, 10), "lens-pairs.warn_blurs", "magnifies 25.0 times, more than a single front lens of 250 mm")
	tell(pair(5000, 50), "tube-plan.too_near", "5.00 m away", "front lens, 5000 mm")
	tell(pair(900, 300), "tube-plan.weak_eye_lens", "An eye lens of 300 mm")
	// 2000 mm at 5 m: 3333.3 mm, and 50 / (1 − 0.2) = 62.5 for the eye, and an overlap of 50.
	tell(pair(2000, 50)+tube("T", 9, 50, 53, 330), "tube-plan.too_long", "needs 3446 mm", "of 330 mm and 330 mm")
	// 100 and 25 mm with eyes of +4 D: 100 + 25 / 1.1 = 122.7 mm.
	tell(pair(100, 25)+tube("T", 9, 120, 123, 330), "tube-plan.too_short", "at least 123 mm apart", "tubes 120 mm wide")
}

// A pair magnifies from 2 % above one; below twice it is weak. Both sides of each.
func TestVerdictsOnBothSides(t *testing.T) {
	for focal, want := range map[float64]string{
		97: "lens-pairs.warn_shrinks", 97.9: "lens-pairs.warn_shrinks", 98.1: "lens-pairs.warn_equal", 101.9: "lens-pairs.warn_equal",
		102.1: "lens-pairs.warn_weak", 199: "lens-pairs.warn_weak", 201: "",
	} {
		r := equipped(t, "lens-rays", "", fmt.Sprintf("front_lens_focal_mm = %g\neye_lens_focal_mm = 100\neye_lens_diameter_mm = 30\nfront_lens_diameter_mm = 40\n", focal))
		var got string
		if len(r.Warnings) > 0 {
			got = r.Warnings[0].Key
		}
		if got != want || len(r.Warnings) > 1 {
			t.Errorf("%g and 100 mm: %v", focal, r.Warnings)
		}
	}
}

// What the eye gets of a telescope of 400 and 80 mm, lenses 50 and 32 mm wide.
func TestViewByHand(t *testing.T) {
	stock := "front_lens_focal_mm = 400\neye_lens_focal_mm = 80\nfront_lens_diameter_mm = 50\neye_lens_diameter_mm = 32\n"
	r := equipped(t, "lens-rays", "", stock)
	const degree, minute = math.Pi / 180, math.Pi / 180 / 60
	hole := math.Sqrt(0.655 * 400) // 16.19 mm
	moon := 3474.8 / 384399        // radians
	blur := hole / 400 / 250
	detail := math.Sqrt(math.Pow(minute/5, 2) + blur*blur + math.Pow(1.22*555e-6/hole, 2))
	passes := math.Pow(0.96, 4)
	for name, want := range map[string]float64{
		"magnification": 5, "front_focal": 400, "eye_focal": 80, "front_power": 2.5, "eye_power": 12.5,
		"image_distance": 400, "separation": 480, "eye_relief": 80 * 480.0 / 400,
		"exit_pupil": 10, "mask": hole, "fringe": 5 * blur / minute,
		"fringe_open": 5 * (30.0 / 400 / 250) / minute, // a pupil of 6 mm uses 30 mm of the lens
		"brightness":  100 * passes, "brightness_open": 100 * passes, "star_gain": passes * 25,
		"field": 2 * math.Atan(16.0/480) / degree, "field_moons": 2 * math.Atan(16.0/480) / moon, "field_at_50_m": 100 * 16.0 / 480,
		"detail": detail / minute, "moon_detail": 384399 * math.Tan(detail),
		"moon_looks": 2 * math.Atan(5*math.Tan(moon/2)) / degree,
		"shake":      math.Atan(1.0/480) / degree, "shake_looks": 5 * math.Atan(1.0/480) / moon,
	} {
		entrytest.Near(t, name, entrytest.Fact(t, r, name).Number, want, 1e-6*math.Max(1, want))
	}
	entrytest.Tells(t, r.Working, "lens-rays.working_pupil", "= 50 mm ÷ 5.0 times = 10.0 mm")
	// 20 times takes less light through a hole: 16.19 / 20 mm of a pupil of 3 mm.
	r = equipped(t, "lens-rays", "", strings.Replace(stock, "= 80", "= 20", 1))
	entrytest.Near(t, "brightness with the mask", entrytest.Fact(t, r, "brightness").Number, 100*passes*math.Pow(hole/20/3, 2), 1e-6)
	entrytest.Near(t, "brightness without it", entrytest.Fact(t, r, "brightness_open").Number, 100*passes*math.Pow(50.0/20/3, 2), 1e-6)
	// A thing at 2 m: 400 · 2000 / 1600 = 500 mm behind the front lens.
	r = equipped(t, "lens-rays", "", stock, "object_m=2")
	entrytest.Near(t, "picture of a thing at 2 m", entrytest.Fact(t, r, "image_distance").Number, 500, 1e-9)
	entrytest.Near(t, "lens to lens", entrytest.Fact(t, r, "separation").Number, 580, 1e-9)
	entrytest.Near(t, "eye lens to the eye", entrytest.Fact(t, r, "eye_relief").Number, 80*580.0/500, 1e-9)
	// Turned round the lenses change places, and the page says so.
	r = equipped(t, "lens-rays", "", stock, "swapped=true")
	entrytest.Near(t, "swapped", entrytest.Fact(t, r, "magnification").Number, 0.2, 1e-12)
	entrytest.Tells(t, r.Notes, "lens-rays.swapped", "0.20 times their size")
	if got := entrytest.Shown(t, r, "front") + ", " + entrytest.Shown(t, r, "eye"); got != "lens of 80 mm, lens of 400 mm" {
		t.Error("swapped:", got)
	}
	// A narrow front lens needs no mask.
	r = equipped(t, "lens-rays", "", strings.Replace(stock, "= 50", "= 16", 1))
	if got := entrytest.Shown(t, r, "mask"); got != "not needed" {
		t.Error("a lens of 16 mm has a mask of", got)
	}
}

// The picture behind the front lens is upside down, where both beams meet; the
// drawing says how much wider it is than long.
func TestRaysMeetInThePicture(t *testing.T) {
	for _, given := range [][]string{{"across=1"}, {"across=3"}, {"across=3", "object_m=2"}} {
		r := equipped(t, "lens-rays", "", "front_lens_focal_mm = 400\neye_lens_focal_mm = 80\nfront_lens_diameter_mm = 50\neye_lens_diameter_mm = 40\n", given...)
		d := r.Drawings[0]
		axis := entrytest.Roled(d, "axis")[0].Points[0].Y
		arrow := entrytest.Roled(d, "image")[0].Points
		entrytest.Near(t, "foot of the picture", arrow[0].Y, axis, 1e-9)
		if arrow[1].Y <= axis {
			t.Errorf("%v: the picture is the right way up", given)
		}
		barbs := entrytest.Roled(d, "image")[1].Points
		if barbs[0].Y >= barbs[1].Y || barbs[2].Y >= barbs[1].Y || barbs[0].X >= barbs[2].X {
			t.Errorf("%v: the arrow points up", given)
		}
		eye := entrytest.Roled(d, "eye")[0].Points[0]
		lensAt := func(s drawing.Shape) float64 { return s.Points[0].X }
		glass := entrytest.Roled(d, "lens")
		front, back := lensAt(glass[0]), lensAt(glass[1])
		apart := entrytest.Fact(t, r, "separation").Number
		mm := (back - front) / apart
		entrytest.Near(t, "the picture on the drawing", (arrow[0].X-front)/mm, entrytest.Fact(t, r, "image_distance").Number, 1.5)
		entrytest.Near(t, "the eye on the drawing", (eye.X-front)/mm, apart+apart/3, 12+apart)
		if eye.X <= back {
			t.Errorf("%v: the eye is before its lens", given)
		}
		for _, role := range []string{"straight", "slanting"} {
			for _, s := range entrytest.Roled(d, role) {
				p := s.Points
				// from the front lens to the eye lens the ray passes the picture's foot or tip
				at := p[1].Y + (p[2].Y-p[1].Y)*(arrow[0].X-p[1].X)/(p[2].X-p[1].X)
				want := arrow[0].Y
				if role == "slanting" {
					want = arrow[1].Y
				}
				entrytest.Near(t, role+" ray in the picture", at, want, 1e-6)
				if role == "slanting" && p[0].Y >= p[1].Y {
					t.Errorf("%v: the slanting beam comes from below", given)
				}
			}
		}
		if given[0] == "across=1" {
			entrytest.Tells(t, r.Notes, "lens-rays.to_scale", "Drawn to scale")
		} else {
			entrytest.Tells(t, r.Notes, "lens-rays.stretched", "drawn 3 times larger")
		}
	}
}

// 1/f = 1/o + 1/i at both ends of the errors, and what labels can mean.
func TestFocalLengthsByHand(t *testing.T) {
	r := equipped(t, "lens-power", "", "", "object_m=1.2", "image_mm=300", "image_error_mm=4", "object_error_mm=30")
	least, most := 1170*296.0/(1170+296), 1230*304.0/(1230+304)
	for name, want := range map[string]float64{
		"focal": 240, "least": least, "most": most, "error": (most - least) / 2, "power": 1000.0 / 240,
		"times_plain": 250.0 / 240, "times_more": 250.0/240 + 1, "far_enough": 24,
	} {
		entrytest.Near(t, name, entrytest.Fact(t, r, name).Number, want, 1e-9)
	}
	entrytest.Tells(t, r.Working, "lens-power.working_distances", "1 ÷ 1200 mm + 1 ÷ 300 mm", "= 240.0 mm")
	entrytest.Tells(t, r.Working, "lens-power.working_power", "1000 ÷ 240 mm = 4.17")
	rows := r.Tables[0].Rows
	if len(rows) != 3 || !rows[0].Marked || rows[1].Marked || rows[2].Marked {
		t.Errorf("rows are %v", rows)
	}
	if got := strings.Join(entrytest.Texts(t, r, "lenses", "lens"), ", "); got != "as measured, front lens, eye lens" {
		t.Error(got)
	}
	// A label of 4 dioptres is rounded to quarters: 3.875 to 4.125. One of 3× is
	// 250 / 3 mm, or 250 / 2 where one was added.
	r = equipped(t, "lens-power", "", "", "power_dioptres=4", "magnifier_times=3")
	entrytest.Near(t, "label, least", entrytest.Fact(t, r, "least").Number, 1000/4.125, 1e-9)
	entrytest.Near(t, "label, most", entrytest.Fact(t, r, "most").Number, 1000/3.875, 1e-9)
	entrytest.Tells(t, r.Warnings, "lens-power.disagree", "label: 4.00", "gives 250 mm, label: 3.0× gives 83 mm")
	r = equipped(t, "lens-power", "", "", "image_mm=251")
	entrytest.Tells(t, r.Working, "lens-power.working_far", "itself: 251.0 mm")
	entrytest.Near(t, "far, least", entrytest.Fact(t, r, "least").Number, 248, 1e-9)
	// Of two in disagreement the limits just touch, or just do not: 255 ± 3 mm ends
	// at 258, the label of 4 dioptres at 258.06.
	for image, disagree := range map[string]bool{"261": false, "261.1": true, "239.5": false, "239.3": true} {
		r := equipped(t, "lens-power", "", "", "image_mm="+image, "power_dioptres=4")
		if entrytest.Says(r.Warnings, "lens-power.disagree") != disagree {
			t.Errorf("%s mm and 4 dioptres disagree: %v", image, !disagree)
		}
	}
}

// The table of pairs has its best first and alone marked; a pair too long for the
// class is not counted.
func TestPairsOnBothSides(t *testing.T) {
	stock := lensOf("F", 2, 50, 300) + lensOf("E", 1, 30, 60)
	for longest, usable := range map[string]float64{"359": 0, "360": 1, "361": 1} {
		r := equipped(t, "lens-pairs", "", stock, "longest_mm="+longest)
		if got := entrytest.Fact(t, r, "usable").Number; got != usable {
			t.Errorf("up to %s mm: %v usable", longest, got)
		}
		if usable == 0 {
			if !entrytest.Says(r.Warnings, "lens-pairs.no_pair") || entrytest.Shown(t, r, "best_front") != "none" {
				t.Errorf("up to %s mm: %v", longest, r.Warnings)
			}
			continue
		}
		entrytest.Near(t, "length", entrytest.Fact(t, r, "best_length").Number, 360, 1e-9)
		shows := strings.Join(entrytest.Texts(t, r, "pairs", "shows"), " | ")
		if !strings.HasPrefix(shows, "the Moon’s seas") || !strings.Contains(shows, "does not magnify") || !strings.HasSuffix(shows, "shrinks: the stronger lens is in front") {
			t.Error(shows)
		}
		for i, row := range r.Tables[0].Rows {
			if row.Marked != (i == 0) {
				t.Errorf("row %d is marked: %v", i, row.Marked)
			}
			if detail := row.Cells[5]; (detail.Kind == say.Nothing) != (i > 0) {
				t.Errorf("row %d has the detail %v", i, detail)
			}
		}
		// Letters that an eye reads are five details tall: at 50 m.
		detail := entrytest.Cells(t, r, "pairs", "detail")[0].Number * math.Pi / 180 / 60
		if want := fmt.Sprintf("letters of %.0f mm", 5*50e3*math.Tan(detail)); !strings.Contains(shows, want) {
			t.Errorf("%s, not %s", shows, want)
		}
		// Two details across 153.67 km at 384 400 km: 41″ each.
		if craters := strings.Contains(shows, "craters"); craters != (2*detail < 153.67/384400) {
			t.Errorf("a detail of %v rad shows craters: %v", detail, craters)
		}
	}
	seas, err := stocked(t, "lens-pairs", lensOf("F", 1, 50, 160)+lensOf("E", 1, 30, 75))
	if err != nil {
		t.Fatal(err)
	}
	if got := entrytest.Shown(t, seas, "best_shows"); strings.Contains(got, "craters") || !strings.Contains(got, "a chimney") {
		t.Error("a telescope of twice shows", got)
	}
}

// A focal length is as the box says within 2 %, in the wrong bag within 5 % of
// another lens, and worth a doubt when it was measured once or twice.
func TestLogOnBothSides(t *testing.T) {
	verdict := func(text string) result.Result {
		t.Helper()
		r, err := lensLog(t, text)
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	for focal, want := range map[string]string{"254.9": "as the box says", "255.1": "write the mean into unit.toml", "245.1": "as the box says", "244.9": "write the mean into unit.toml"} {
		r := verdict("lens,focal_mm\nA," + focal + "\n")
		if got := entrytest.Texts(t, r, "lenses", "verdict")[0]; got != want {
			t.Errorf("%s mm in the bag of 250 mm: %s", focal, got)
		}
	}
	for rows, few := range map[int]bool{1: true, 2: true, 3: false} {
		r := verdict("lens,focal_mm\n" + strings.Repeat("A,250\n", rows))
		if got := entrytest.Says(r.Notes, "lens-log.too_few"); got != few {
			t.Errorf("%d measurements are too few: %v", rows, got)
		}
	}
	for stray, bag := range map[string]bool{"52.4": true, "52.6": false, "47.6": true, "47.4": false} {
		r := verdict("lens,group,focal_mm\nA,h,250\nA,i,250\nA,j,251\nA,k," + stray + "\nB,h,50\nB,i,50\nB,j,50\n")
		key := "lens-log.misread"
		if bag {
			key = "lens-log.wrong_bag"
		}
		entrytest.Tells(t, r.Notes, key, fmt.Sprintf("k, line 5 of the file: %.0f mm", entrytest.Number(t, stray)), "for A, where the others have about 250 mm")
		if got := entrytest.Shown(t, r, "worst"); !strings.HasPrefix(got, "k, line 5") {
			t.Error("furthest off:", got)
		}
	}
	// Of two misread the one further off is named; nobody's is somebody's.
	r := verdict("lens,group,focal_mm\nA,h,250\nA,i,250\nA,j,250\nA,k,250\nA,l,250\nA,,330\nA,n,400\nA,o,300\n")
	if got := entrytest.Shown(t, r, "worst"); !strings.HasPrefix(got, "n, line 8") {
		t.Error("furthest off:", got)
	}
	entrytest.Tells(t, r.Notes, "lens-log.misread", "somebody, line 7")
	if none := verdict("lens,focal_mm\n"); !entrytest.Says(none.Notes, "lens-log.no_records") || entrytest.Shown(t, none, "worst") != "nothing" {
		t.Error("an empty log says nothing of it")
	}
}

// A strip longer than the paper comes in equal parts that are numbered, each but the
// last with a flap, and the marks for the rim stand on the part that they belong to:
// for lenses of 900 and 50 mm in tubes of 330 mm the inner tube is 765 mm,
// 1 part of 330 mm being the outer one.
func TestCuttingStripInParts(t *testing.T) {
	stock := lensOf("F", 9, 48, 900) + lensOf("E", 9, 28, 50) + tube("roll", 90, 50, 52, 330)
	r := equipped(t, "tube-plan", "", stock, "nearest_m=10", "eye_dioptres=2")
	// at most: 900 · 10 000 / 9100 + 50 / (1 − 2 · 0.05); with an overlap of 50 less 330, to 5 mm
	most := 900*10000.0/9100 + 50/0.9
	entrytest.Near(t, "outer tube", entrytest.Fact(t, r, "outer_tube").Number, 330, 1e-9)
	entrytest.Near(t, "inner tube", entrytest.Fact(t, r, "inner_tube").Number, 5*math.Ceil((most+50-330)/5), 1e-9)
	d := r.Sheets[0].Drawing
	type part struct {
		label     string
		at        drawing.Point
		long      float64
		left, top float64
		flap      bool
	}
	var parts []part
	var marks [][2]float64 // of the rim: x and y
	for _, s := range d.Shapes {
		switch {
		case s.Role == "strong":
			parts = append(parts, part{label: entrytest.Written(t, s.Text), at: s.Points[0]})
		case s.Role == "cut piece" && s.Closed:
			p := &parts[len(parts)-1]
			p.long, p.left, p.top = s.Points[1].X-s.Points[0].X, s.Points[0].X, s.Points[0].Y
		case s.Role == "cut flap":
			p := &parts[len(parts)-1]
			p.flap = true
			if s.Points[0].X != p.left+p.long || s.Points[1].X != p.left+p.long+10 || s.Points[3].X != p.left+p.long || s.Points[1].Y <= s.Points[0].Y || s.Points[2].Y >= s.Points[3].Y {
				t.Errorf("the flap of %q runs %v", p.label, s.Points)
			}
		case s.Role == "stop" && s.Points[0].X == s.Points[1].X && math.Abs(s.Points[1].Y-s.Points[0].Y) > 10:
			marks = append(marks, [2]float64{s.Points[0].X, s.Points[0].Y})
		}
	}
	lengths := map[string]float64{}
	last := 0.0
	for i, p := range parts {
		if strings.HasPrefix(p.label, "Mask") {
			continue
		}
		name := p.label[:strings.Index(p.label, ":")]
		lengths[name] += p.long
		n, of := 0, 1
		if _, rest, found := strings.Cut(p.label, ", part "); found {
			if _, err := fmt.Sscanf(rest, "%d of %d", &n, &of); err != nil {
				t.Fatal(p.label)
			}
			if p.flap != (n < of) {
				t.Errorf("%q has a flap: %v", p.label, p.flap)
			}
		}
		if p.at.Y >= p.top || p.at.Y < last || i > 0 && p.top <= last {
			t.Errorf("%q stands at %v, its piece at %v, the one above ends at %v", p.label, p.at.Y, p.top, last)
		}
		last = p.top + 16
		if p.left+p.long > d.Width {
			t.Errorf("%q leaves the sheet", p.label)
		}
	}
	for name, fact := range map[string]string{"Outer tube": "outer_tube", "Inner tube": "inner_tube", "Eye tube": "eye_tube"} {
		entrytest.Near(t, name, lengths[name], entrytest.Fact(t, r, fact).Number, 1e-6)
	}
	// Marks of the rim: separation less the outer tube, counted along the parts.
	inner := lengths["Inner tube"]
	var want []float64
	for _, v := range entrytest.Cells(t, r, "focus", "sticks_out") {
		if n := len(want); n == 0 || v.Number-want[n-1] >= 3.6 { // marks that are nearer lie on one another
			want = append(want, v.Number)
		}
	}
	var got []float64
	for _, m := range marks {
		before := 0.0
		for _, p := range parts {
			if !strings.HasPrefix(p.label, "Inner") {
				continue
			}
			if p.top == m[1] {
				got = append(got, before+m[0]-p.left)
			}
			before += p.long
		}
	}
	if len(got) != len(want) || inner < 700 {
		t.Fatalf("marks at %v of %v, want %v", got, inner, want)
	}
	for i := range want {
		entrytest.Near(t, "mark of the rim", got[i], want[i], 1e-6)
	}
	entrytest.Near(t, "mark of far things", got[0], 950-330, 1e-6)
	entrytest.Tells(t, []say.Phrase{d.Title}, "tube-plan.strip", "lenses of 900 mm and 50 mm")
	entrytest.Tells(t, []say.Phrase{r.Tables[0].Title}, "tube-plan.title", "Lenses of 900 mm and 50 mm")
}

// Distances on the ray drawing are those from the front lens to its picture and on
// to the eye lens, and on the section the glass stands at the tubes' ends.
func TestRaysAreMeasured(t *testing.T) {
	r := equipped(t, "lens-rays", "", "front_lens_focal_mm = 400\neye_lens_focal_mm = 80\nfront_lens_diameter_mm = 50\neye_lens_diameter_mm = 40\n", "object_m=2", "across=1")
	labels := entrytest.Labels(t, r.Drawings[0])
	first, second := labels["500 mm"], labels["80 mm"]
	image := entrytest.Roled(r.Drawings[0], "image")[0].Points[0]
	if first.X == 0 || second.X == 0 || first.X >= image.X || second.X <= image.X {
		t.Errorf("500 mm stand at %v, 80 mm at %v, the picture at %v", first, second, image)
	}
	entrytest.Tells(t, []say.Phrase{r.Drawings[0].Title}, "lens-rays.drawing", "front lens of 400 mm and an eye lens of 80 mm")
	if labels["front lens"].X >= labels["eye lens"].X || labels["eye"].X <= labels["eye lens"].X {
		t.Errorf("labels stand at %v", labels)
	}
}
