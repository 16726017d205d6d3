package rocket_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/quantity"
	"noonbook/compute/rocket"
)

// NASA's Altitude Tracking: 35° from 15 m is 10.5 m above the eye; the ground is
// the eye's height further down. A published classroom note: 85° from 33 ft is
// 377 ft, and one degree more adds almost 100 ft.
func TestRocketHeightPublishedRows(t *testing.T) {
	r := reckon(t, "alder reach", "rocket-height", "2027-04-28", "angle=35", "baseline_m=15", "class.eye_height_m=1.4")
	entrytest.Near(t, "above the eye", entrytest.Fact(t, r, "above_eye").Number, 10.5, 0.05)
	entrytest.Near(t, "above the ground", entrytest.Fact(t, r, "height").Number, entrytest.Fact(t, r, "above_eye").Number+1.4, 1e-9)
	const foot = 0.3048
	r = reckon(t, "alder reach", "rocket-height", "2027-04-28", "angle=85", "baseline_m=10.0584")
	entrytest.Near(t, "feet", entrytest.Fact(t, r, "above_eye").Number/foot, 377, 0.5)
	if more := entrytest.Fact(t, r, "by_angle").Number / foot; more < 90 || more >= 100 {
		t.Errorf("one degree more adds %.1f ft", more)
	}
	if !entrytest.Says(r.Notes, "rocket-height.steep") {
		t.Error("nothing is said of so steep an angle")
	}
	r = reckon(t, "alder reach", "rocket-height", "2027-04-28", "angle=89", "baseline_m=10", "angle_off=2")
	if v := entrytest.Fact(t, r, "spread"); v.Kind != say.Nothing {
		t.Errorf("89° ± 2° has the doubt %v", v)
	}
}

// The usual station is outside the clear zone, and the usual angle is that of
// the highest flight seen from there.
func TestStationsStandOutsideTheZone(t *testing.T) {
	zone := reckon(t, "alder reach", "rocket-zone", "2027-04-28")
	height := reckon(t, "alder reach", "rocket-height", "2027-04-28")
	if entrytest.Fact(t, zone, "station").Number <= entrytest.Fact(t, zone, "clear").Number {
		t.Error("the station is inside the clear zone")
	}
	expected, got := entrytest.Fact(t, height, "expected").Number, entrytest.Fact(t, height, "height").Number
	entrytest.Near(t, "height at the usual angle", got, expected, 0.5) // the angle is a whole degree
}

// At the angle, speed or drag that the page names, the zone does fit.
func TestZoneNamesWhatFits(t *testing.T) {
	tight := []string{"field.width_m=86", "field.length_m=90", "field.margin_percent=90"}
	r := reckon(t, "alder reach", "rocket-zone", "2027-04-28", tight...)
	if entrytest.Fact(t, r, "fits").Number != 0 || !entrytest.Says(r.Warnings, "rocket-zone.small") {
		t.Fatal("a field of 86 m is large enough")
	}
	number := func(name string) string { return format(entrytest.Fact(t, r, name).Number) }
	for name, way := range map[string]string{
		"angle": "least_angle=" + number("angle_inside"), "speed": "stock.launch_speed_m_s=" + number("speed_inside"), "drag": "drag_coefficient=" + number("drag_inside"),
	} {
		if entrytest.Fact(t, reckon(t, "alder reach", "rocket-zone", "2027-04-28", append(tight, way)...), "fits").Number != 1 {
			t.Errorf("%s: with %s the zone still does not fit", name, way)
		}
	}
	small := reckon(t, "alder reach", "rocket-zone", "2027-04-28", "field.width_m=3", "field.length_m=3")
	if !entrytest.Says(small.Warnings, "rocket-zone.other_field") {
		t.Error("a field of 3 m is not called too small for everything")
	}
	large := reckon(t, "alder reach", "rocket-zone", "2027-04-28", "field.width_m=200", "field.length_m=200")
	if entrytest.Fact(t, large, "fits").Number != 1 || len(large.Warnings) > 0 {
		t.Errorf("a field of 200 m: %v", large.Warnings)
	}
}

func format(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// Every pupil has a place, from none entered to a large class.
func TestEveryPupilHasAPlace(t *testing.T) {
	for _, pupils := range []string{"1", "7", "21", "27", "60"} {
		r := reckon(t, "alder reach", "rocket-zone", "2027-04-28", "class.pupils="+pupils)
		sum := 0.0
		for _, n := range entrytest.Column(t, r, "count") {
			sum += n
		}
		if got := format(sum); got != pupils {
			t.Errorf("%s pupils have %s places", pupils, got)
		}
	}
}

// A class of seven has a warden at each side of the zone before anybody measures.
func TestWardensComeBeforeMeasuring(t *testing.T) {
	jobs := entrytest.TextsOf(t, reckon(t, "alder reach", "rocket-zone", "2027-04-28", "class.pupils=7"), "people", "job")
	if last := jobs[len(jobs)-1]; !strings.HasPrefix(last, "Warden") {
		t.Errorf("seven pupils are %q", jobs)
	}
}

// The flight without air bounds the one with it; all three sizes on the pipes
// that are sold fly straight (21.3 mm: ASTM D1785; 20, 25, 32 mm: metric).
func TestRocketsFly(t *testing.T) {
	r := reckon(t, "alder reach", "rocket-path", "2027-04-28")
	if entrytest.Fact(t, r, "apogee").Number >= entrytest.Fact(t, r, "apogee_no_air").Number || entrytest.Fact(t, r, "reach").Number >= entrytest.Fact(t, r, "reach_no_air").Number {
		t.Error("the air lifts the rocket")
	}
	// OpenStax University Physics 1, example 4.7, with standard gravity (0.07 % more).
	r = reckon(t, "alder reach", "rocket-path", "2027-04-28", "stock.launch_speed_m_s=60", "angle=75", "pipe_end_m=0", "drag_coefficient=0")
	entrytest.Near(t, "scaled to 70 m/s", entrytest.Fact(t, r, "apogee").Number*49/36, 233, 0.5)
	for _, pipe := range []string{"20", "21.3", "25", "32"} {
		for _, size := range []string{"middle", "long"} {
			r := reckon(t, "alder reach", "rocket-wrap", "2027-04-28", "size="+size, "stock.pipe_outside_mm="+pipe)
			if n := entrytest.Fact(t, r, "calibres").Number; n < 1 || n > 5 {
				t.Errorf("%s on %s mm: %.2f diameters", size, pipe, n)
			}
		}
	}
	tiny := reckon(t, "alder reach", "rocket-wrap", "2027-04-28", "fin_span_mm=8", "fin_root_mm=15", "fin_tip_mm=5", "fin_sweep_mm=5")
	if !entrytest.Says(tiny.Warnings, "rocket-wrap.unstable") {
		t.Error("tiny fins are not warned of")
	}
}

// The drawn wrap goes once round the tube and the drawn cone closes: its arc is
// as long as the tube is round outside, its sides are equal, and they enclose the
// sector. Arcs are drawn with chords, 0.02 mm short at most.
func TestTemplateIsTrue(t *testing.T) {
	for _, c := range [][]string{{}, {"stock.pipe_outside_mm=32", "school.paper=Letter"}, {"size=short"}, {"size=long", "school.paper=Letter"}, {"stock.pipe_outside_mm=60", "nose_mm=30"}} {
		r := reckon(t, "alder reach", "rocket-wrap", "2027-04-28", c...)
		sheet := r.Sheets[0].Drawing
		round, body := entrytest.Fact(t, r, "wrap").Number, entrytest.Fact(t, r, "body").Number
		wrap := entrytest.Path(t, sheet, "wrap")
		entrytest.Near(t, "wrap and glue", entrytest.Apart(wrap[0], wrap[1]), round+10, 1e-9)
		entrytest.Near(t, "body", entrytest.Apart(wrap[1], wrap[2]), body, 1e-9)
		entrytest.Near(t, "overlap line", entrytest.Path(t, sheet, "overlap")[0].X-wrap[0].X, round, 1e-9)
		var cone drawing.Drawing
		for _, s := range r.Sheets {
			for _, shape := range s.Drawing.Shapes {
				if strings.HasSuffix(shape.Role, "cone-arc") {
					cone = s.Drawing
				}
			}
		}
		arc, side, seam := entrytest.Path(t, cone, "cone-arc"), entrytest.Path(t, cone, "cone-side"), entrytest.Path(t, cone, "cone-seam")
		long := 0.0
		for i := 1; i < len(arc); i++ {
			long += entrytest.Apart(arc[i-1], arc[i])
		}
		outside := rocket.Design{Pipe: quantity.Millimetres(entrytest.Fact(t, r, "pipe").Number), Play: quantity.Millimetres(0.8), Paper: quantity.Millimetres(0.1)}.Diameter()
		entrytest.Near(t, "arc", long, math.Pi*outside.Millimetres(), 0.02)
		entrytest.Near(t, "side", entrytest.Apart(side[0], side[1]), entrytest.Fact(t, r, "cone_slant").Number, 1e-9)
		entrytest.Near(t, "seam", entrytest.Apart(seam[0], seam[1]), entrytest.Apart(side[0], side[1]), 1e-9)
		if entrytest.Apart(arc[0], side[1]) > 1e-9 || entrytest.Apart(arc[len(arc)-1], seam[1]) > 1e-9 || side[0] != seam[0] {
			t.Error("arc and sides do not meet")
		}
		for i, s := range r.Sheets {
			w, h, _ := s.Area()
			for _, shape := range s.Drawing.Shapes {
				for _, p := range shape.Points {
					if s.Rows*s.Columns == 1 && (p.X < 0 || p.Y < 0 || p.X > w || p.Y > h) {
						t.Fatalf("%v, sheet %d: %s at %v is off the paper", c, i+1, shape.Role, p)
					}
				}
			}
		}
	}
}

// A body longer than the paper is laid over several sheets; every fin is there.
func TestLongRocketTakesMoreSheets(t *testing.T) {
	r := reckon(t, "alder reach", "rocket-wrap", "2027-04-28", "body_mm=400", "fins=6")
	if len(r.Sheets) < 3 || r.Sheets[0].Rows*r.Sheets[0].Columns < 2 {
		t.Errorf("%d sheets", len(r.Sheets))
	}
	fins := 0
	for _, s := range r.Sheets {
		for _, shape := range s.Drawing.Shapes {
			if shape.Role == "cut fin" {
				fins++
			}
		}
	}
	if fins != 6 {
		t.Errorf("%d fins are drawn", fins)
	}
}

// The clinometer's ticks stand at their angle from the plumb line of a level
// straw, and the scale reads elevation: at 90° the string lies along the straw
// towards the eye.
func TestClinometerReadsElevation(t *testing.T) {
	r := reckon(t, "alder reach", "rocket-clinometer", "2027-04-28")
	d := r.Sheets[0].Drawing
	hole := entrytest.Path(t, d, "hole")[0]
	straw := entrytest.Path(t, d, "straw")
	if straw[0].Y != hole.Y || straw[1].Y != hole.Y {
		t.Error("the hole is not on the straw's line")
	}
	n := -10.0
	for _, s := range d.Shapes {
		if !strings.HasPrefix(s.Role, "tick") {
			continue
		}
		for _, p := range s.Points {
			angle := math.Atan2(hole.X-p.X, p.Y-hole.Y) * 180 / math.Pi
			entrytest.Near(t, "tick", angle, n, 1e-9)
		}
		entrytest.Near(t, "radius", entrytest.Apart(hole, s.Points[1]), 120, 1e-9)
		n++
	}
	if n != 91 {
		t.Errorf("the last tick is at %v°", n-1)
	}
}

func TestRocketBadInput(t *testing.T) {
	for name, pairs := range map[string][]string{
		"rocket-wrap":       {"stock.pipe_outside_mm=0", "stock.pipe_outside_mm=500", "fins=2", "nose_mm=0", "stock.pipe_outside_mm=nan"},
		"rocket-height":     {"angle=0", "angle=90", "angle=-5", "baseline_m=0", "second_angle=100", "flight_s=0"},
		"rocket-zone":       {"field.width_m=0", "least_angle=95", "field.wind_m_s=40"},
		"rocket-path":       {"angle=0", "stock.launch_speed_m_s=0", "drag_coefficient=-1"},
		"rocket-clinometer": {"radius_mm=10"},
		"rocket-parts":      {"run_mm=10"},
	} {
		e, _ := entry.Find(entries(), name)
		for _, pair := range pairs {
			key, value, _ := strings.Cut(pair, "=")
			if _, complaint := e.Form(school.Settings()).ParsePair(key, value); complaint == "" {
				t.Errorf("%s %s: no complaint", name, pair)
			}
		}
	}
	e, _ := entry.Find(entries(), "rocket-zone")
	v := e.Complete(entrytest.Settings(t, "alder reach"), nil, entrytest.Day(t, "2027-04-28"))
	corner := func(east, north float64) form.Values { return form.Values{"east_m": east, "north_m": north} }
	v["field.outline"] = []form.Values{corner(0, 0), corner(10, 0)}
	if _, err := e.Reckon(v); err == nil {
		t.Error("a field of two corners")
	}
	// The circle inscribed in a right triangle of 400, 300 and 500 m: area over half
	// the perimeter, 100 m.
	v["field.outline"] = []form.Values{corner(0, 0), corner(400, 0), corner(0, 300)}
	r, err := e.Reckon(v)
	if err != nil {
		t.Fatal(err)
	}
	entrytest.Near(t, "room in a triangle", entrytest.Fact(t, r, "room").Number, 100, 0.05)
	e, _ = entry.Find(entries(), "rocket-height")
	v = e.Complete(entrytest.Settings(t, "alder reach"), nil, entrytest.Day(t, "2027-04-28"))
	v["flight_s"] = 20.0
	if _, err := e.Reckon(v); err == nil {
		t.Error("a flight of 20 s needs more than the highest speed")
	}
}
