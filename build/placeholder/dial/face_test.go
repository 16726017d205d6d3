package dial_test

import (
	"fmt"
	"math"
	"testing"

	"noonbook/build/placeholder/entrytest"
)

// A published worked dial for 54.8° N, drawn: 12.35, 25.26, 39.25, 54.76, 71.85
// and 90° from noon, the same to the other side, mirrored below the equator.
func TestFaceIsThePublishedDial(t *testing.T) {
	for latitude, side := range map[string]float64{"54.8": 1, "-54.8": -1} {
		r := reckon(t, "alder reach", "dial-face", "2027-04-20", "school.latitude="+latitude)
		var angles []float64
		for _, l := range entrytest.LinesOf(r.Sheets, "hour") {
			angles = append(angles, entrytest.Angle(l)*side)
		}
		for _, want := range []float64{12.35, 25.26, 39.25, 54.76, 71.85, 90} {
			for _, x := range []float64{want, -want} {
				nearest := 180.0
				for _, a := range angles {
					nearest = min(nearest, math.Abs(a-x))
				}
				entrytest.Near(t, fmt.Sprintf("%s: line at %v°", latitude, x), nearest, 0, 0.005) // half of the last digit
			}
		}
		if n := len(entrytest.LinesOf(r.Sheets, "noon")); n != 2 { // the line, and the compass's
			t.Errorf("%d noon lines", n)
		}
	}
}

// A thick gnomon has two noon lines as far apart as it is thick, and the lines
// before noon start from the one centre, those after it from the other.
func TestNoonGap(t *testing.T) {
	r := reckon(t, "alder reach", "dial-face", "2027-04-20", "stock.gnomon_mm=8")
	entrytest.Near(t, "fact", entrytest.Fact(t, r, "noon_gap").Number, 8, 0)
	noons := entrytest.LinesOf(r.Sheets, "noon")
	entrytest.Near(t, "gap", math.Abs(noons[0].Points[0].X-noons[1].Points[0].X), 8, 1e-9)
	middle := (noons[0].Points[0].X + noons[1].Points[0].X) / 2
	for _, l := range entrytest.LinesOf(r.Sheets, "hour") {
		a := entrytest.Angle(l) * math.Pi / 180
		// Carried back to the height of the toe, the line starts 4 mm from the middle.
		start := l.Points[0].X - (noons[0].Points[0].Y-l.Points[0].Y)*math.Tan(a)
		want := math.Copysign(4, math.Sin(a)*math.Cos(a))
		if math.Abs(math.Cos(a)) > 1e-6 {
			entrytest.Near(t, "centre", start-middle, want, 1e-6)
		}
	}
	if thin := reckon(t, "alder reach", "dial-face", "2027-04-20"); entrytest.Fact(t, thin, "noon_gap").Number != 0 {
		t.Error("thin card has a gap")
	}
}

// On a face with clock lines the line of the clock time at which the Sun stands
// at noon, less the equation of time, is the meridian: at Alder Reach 13:19.1 in
// summer (4.77° × 4 min and an hour).
func TestClockFace(t *testing.T) {
	r := reckon(t, "alder reach", "dial-face", "2027-04-20", "lines=clock")
	entrytest.Near(t, "folded in", entrytest.Fact(t, r, "folded_in").Number, 3600+4.77*240, 1e-6)
	sin := math.Sin(46.09 * math.Pi / 180)
	want := math.Atan(sin*math.Tan((14-13-4.77*4/60)*15*math.Pi/180)) * 180 / math.Pi // 14:00
	nearest := 180.0
	for _, l := range entrytest.LinesOf(r.Sheets, "hour") {
		nearest = min(nearest, math.Abs(entrytest.Angle(l)-want))
	}
	entrytest.Near(t, "line of 14:00", nearest, 0, 1e-6)
	if len(entrytest.LinesOf(r.Sheets, "meridian")) != 1 {
		t.Error("no meridian on a face of clock lines")
	}
}

// Every kind at every school: the sheets hold the drawing, every mark lies on
// the plate, equatorial dials have two sides but at a pole, and near the equator
// auto is polar.
func TestEveryFace(t *testing.T) {
	for school := range entrytest.Schools {
		for _, kind := range []string{"auto", "level", "polar", "wall", "equatorial"} {
			for _, lines := range []string{"sun", "clock"} {
				r := reckon(t, school, "dial-face", "2027-06-21", "kind="+kind, "lines="+lines, "figures=roman", "stock.gnomon_mm=5")
				if len(r.Sheets) == 0 {
					t.Errorf("%s, %s: no sheets", school, kind)
				}
				for _, s := range r.Sheets {
					for _, shape := range s.Drawing.Shapes {
						for _, p := range shape.Points {
							if !(p.X > -0.01 && p.X < s.Drawing.Width+0.01 && p.Y > -0.01 && p.Y < s.Drawing.Height+0.01) {
								t.Fatalf("%s, %s: %s at %v is off the plate", school, kind, shape.Role, p)
							}
						}
					}
				}
			}
		}
	}
	for school, want := range map[string]int{"alder reach": 2, "equator": 2, "north pole": 1, "south": 2} {
		if got := len(reckon(t, school, "dial-face", "2027-06-21", "kind=equatorial").Sheets); got != want {
			t.Errorf("%s: %d sides of an equatorial dial", school, got)
		}
	}
	if got := entrytest.Fact(t, reckon(t, "line north", "dial-face", "2027-06-21"), "face").Phrase.Key; got != "dial-face.polar" {
		t.Errorf("near the equator auto is %s", got)
	}
	if got := reckon(t, "equator", "dial-face", "2027-06-21", "kind=level").Warnings; len(got) != 1 {
		t.Errorf("a level dial on the equator has %d warnings", len(got))
	}
}

// The triangle as drawn: sides of 150 mm · cos φ and sin φ, the style 150 mm long
// at the latitude, twice and mirrored; The Boy Mechanic's style heights on a base
// of 5 inches (vol. 1, 1913, table 1: 2.89 in at 30°, 8.66 in at 60°).
func TestGnomonAsDrawn(t *testing.T) {
	r := reckon(t, "alder reach", "dial-gnomon", "2027-04-20", "stock.style_mm=150")
	styles := entrytest.LinesOf(r.Sheets, "style-edge")
	if len(styles) != 2 {
		t.Fatalf("%d styles", len(styles))
	}
	entrytest.Near(t, "one", entrytest.Angle(styles[0]), 90-46.09, 1e-9)
	entrytest.Near(t, "mirrored", entrytest.Angle(styles[1]), -(90 - 46.09), 1e-9)
	for _, s := range styles {
		entrytest.Near(t, "length", math.Hypot(s.Points[1].X-s.Points[0].X, s.Points[1].Y-s.Points[0].Y), 150, 1e-9)
	}
	for latitude, height := range map[string]float64{"30": 2.89, "60": 8.66} {
		r := reckon(t, "alder reach", "dial-gnomon", "2027-04-20", "school.latitude="+latitude)
		entrytest.Near(t, latitude, 5*entrytest.Fact(t, r, "height").Number/entrytest.Fact(t, r, "base").Number, height, 0.005)
	}
	for school, want := range map[string]string{"north pole": "dial-gnomon.rod", "equator": "dial-gnomon.rectangle", "line south": "dial-gnomon.rectangle"} {
		if got := entrytest.Fact(t, reckon(t, school, "dial-gnomon", "2027-04-20"), "shape").Phrase.Key; got != want {
			t.Errorf("%s: %s", school, got)
		}
	}
}

// The blank plate's scale counts degrees from the noon line.
func TestBlankPlate(t *testing.T) {
	r := reckon(t, "alder reach", "dial-blank", "2027-04-20")
	found := 0
	for _, l := range append(entrytest.LinesOf(r.Sheets, "quarter"), entrytest.LinesOf(r.Sheets, "tick")...) {
		degree := entrytest.Angle(l)
		entrytest.Near(t, "a whole degree", degree, math.Round(degree), 1e-6)
		found++
	}
	if found != 360 {
		t.Errorf("%d ticks", found)
	}
	for school, want := range map[string]string{"alder reach": "dial-blank.right", "south": "dial-blank.left"} {
		if got := entrytest.Fact(t, reckon(t, school, "dial-blank", "2027-04-20"), "after_side").Phrase.Key; got != want {
			t.Errorf("%s: %s", school, got)
		}
	}
}
