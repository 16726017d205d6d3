package dial_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"noonbook/build/placeholder/entrytest"
	"noonbook/build/say"
)

// A tropic is a school that builds a polar dial, with what its page must say.
type tropic struct {
	latitude     string
	pole         string // that the upper edge points to
	west         string // side of the plate on the paper, upper edge up
	slope        float64
	edge         string // words at the upper edge
	raised, prop bool
}

// On paper with the upper edge at the top, one looks along the noon line to the pole
// that is up: facing north, west is left; facing south, it is right.
var tropics = []tropic{
	{"7.4", "true north", "left", 7.4, "this edge up, to true north; plate tilted 7.4°", true, true},
	{"-12", "true south", "right", 12, "this edge up, to true south; plate tilted 12.0°", true, true},
	{"0", "true north", "left", 0, "this edge to true north; plate level", false, false},
	{"-0.9", "true south", "right", 0.9, "this edge to true south; plate level", false, false},
	{"1.1", "true north", "left", 1.1, "this edge up, to true north; plate tilted 1.1°", true, true},
}

// Distances of the lines of a style 20 mm high, by a table of tangents: tan 15° =
// 0.26795, tan 30° = 0.57735, tan 45° = 1, tan 60° = 1.73205, tan 75° = 3.73205.
var polarLines = map[int]float64{7: -74.641, 8: -34.641, 9: -20, 10: -11.547, 11: -5.359, 12: 0, 13: 5.359, 14: 11.547, 15: 20, 16: 34.641, 17: 74.641}

// The face of a polar dial: parallel lines at their distances, the noon line in the
// middle, morning on the west side, and the words at the edges. Before noon the Sun is
// in the east, so the shadow falls to the west, in either hemisphere.
func TestPolarFaceByHand(t *testing.T) {
	for _, c := range tropics {
		r := reckon(t, "line north", "dial-face", "2027-04-20", "school.latitude="+c.latitude)
		if len(r.Sheets) != 1 || len(r.Warnings) != 0 {
			t.Fatalf("%s: %d sheets, warnings %s", c.latitude, len(r.Sheets), entrytest.Lines(t, r.Warnings))
		}
		d := r.Sheets[0].Drawing
		labels := entrytest.Labels(t, d)
		middle := d.Width / 2
		east := 1.0
		if c.west == "right" {
			east = -1
		}
		if west := labels["west"].X; west == 0 || (west < middle) != (c.west == "left") || (labels["east"].X-middle)*east <= 0 {
			t.Errorf("%s: west is at %v, east at %v on a plate %v wide", c.latitude, labels["west"], labels["east"], d.Width)
		}
		for hour, far := range polarLines {
			figure, ok := labels[fmt.Sprint(hour)]
			if !ok {
				t.Errorf("%s: no figure for %d", c.latitude, hour)
			}
			entrytest.Near(t, fmt.Sprintf("%s: %d o'clock", c.latitude, hour), (figure.X-middle)*east, far, 0.001)
		}
		lines := append(entrytest.Roled(d, "hour"), entrytest.Roled(d, "noon")[0])
		if len(lines) != len(polarLines) {
			t.Errorf("%s: %d lines", c.latitude, len(lines))
		}
		for _, l := range lines {
			if l.Points[0].X != l.Points[1].X {
				t.Errorf("%s: a line from %v to %v", c.latitude, l.Points[0], l.Points[1])
			}
			nearest := math.Inf(1)
			for _, far := range polarLines {
				nearest = min(nearest, math.Abs(l.Points[0].X-middle-far))
			}
			entrytest.Near(t, c.latitude+": a line", nearest, 0, 0.001)
		}
		// The style's foot: on the noon line, 120 mm long by the settings.
		foot := entrytest.Roled(d, "toe")
		entrytest.Near(t, "foot", entrytest.Apart(foot[0].Points[0], foot[1].Points[0]), 120, 1e-9)
		entrytest.Near(t, "foot on the noon line", foot[0].Points[0].X, middle, 1e-9)
		if head := labels[c.edge]; head.Y == 0 || head.Y > foot[0].Points[0].Y {
			t.Errorf("%s: the upper edge does not say %q: %v", c.latitude, c.edge, keys(labels))
		}
		if got := entrytest.Shown(t, r, "first_line") + "-" + entrytest.Shown(t, r, "last_line"); got != "7:00-17:00" {
			t.Errorf("%s: hours %s", c.latitude, got)
		}
		entrytest.Near(t, c.latitude+": tilt", entrytest.Fact(t, r, "tilt").Number, c.slope, 1e-9)
		height := entrytest.Fact(t, r, "plate_height").Number
		entrytest.Near(t, "plate", d.Height, height, 1e-9)
		if got := entrytest.Shown(t, r, "tilted") == "yes"; got != c.raised {
			t.Errorf("%s: tilted is %v", c.latitude, got)
		}
		if c.raised {
			entrytest.Near(t, c.latitude+": lift", entrytest.Fact(t, r, "lift").Number, height*math.Sin(c.slope*degree), 1e-9)
			if got := entrytest.Shown(t, r, "upper_edge"); got != c.pole {
				t.Errorf("%s: the upper edge points to %s", c.latitude, got)
			}
			entrytest.Tells(t, r.Notes, "dial-face.tilt_polar", fmt.Sprintf("Tilt the plate by %.1f°, its upper edge to %s", c.slope, c.pole), "Morning hours are on the west side")
		} else {
			entrytest.Tells(t, r.Notes, "dial-face.lay_polar", "Lay the plate level", "edge to "+c.pole, "Morning hours are on the west side")
			for _, name := range []string{"lift", "upper_edge"} {
				if v := entrytest.Fact(t, r, name); v.Kind != say.Nothing || entrytest.Written(t, v) != "none: the plate is level" {
					t.Errorf("%s: %s is %s", c.latitude, name, entrytest.Written(t, v))
				}
			}
		}
		if angle := entrytest.Fact(t, r, "style_angle"); angle.Kind != say.Nothing {
			t.Errorf("%s: a style at %v", c.latitude, angle.Number)
		}
		entrytest.Near(t, "style", entrytest.Fact(t, r, "style_height").Number, 20, 1e-9)
		// A figure is close to no other.
		for i, a := range entrytest.Roled(d, "numeral") {
			for _, b := range entrytest.Roled(d, "numeral")[i+1:] {
				if p, q := a.Points[0], b.Points[0]; math.Abs(p.X-q.X) < 7 && math.Abs(p.Y-q.Y) < 5 {
					t.Errorf("%s: figures at %v and %v", c.latitude, p, q)
				}
			}
		}
	}
}

// Which dial it is, where an author asks for one: lessons choose their words by it.
func TestWhichDial(t *testing.T) {
	for _, c := range []struct{ school, kind, polar, level string }{
		{"alder reach", "auto", "no", "yes"}, {"south", "auto", "no", "yes"}, {"north pole", "auto", "no", "yes"}, {"equator", "auto", "yes", "no"}, {"far east", "auto", "yes", "no"},
		{"alder reach", "polar", "yes", "no"}, {"equator", "level", "no", "yes"}, {"alder reach", "wall", "no", "no"}, {"alder reach", "equatorial", "no", "no"},
	} {
		r := reckon(t, c.school, "dial-face", "2027-04-20", "kind="+c.kind)
		if polar, level := entrytest.Shown(t, r, "polar"), entrytest.Shown(t, r, "level"); polar != c.polar || level != c.level {
			t.Errorf("%s, %s: polar %s, level %s", c.school, c.kind, polar, level)
		}
		if got := entrytest.Fact(t, r, "style_height").Kind == say.Nothing; got == (c.polar == "yes") {
			t.Errorf("%s, %s: has a height: %v", c.school, c.kind, !got)
		}
	}
	// Slopes by hand: a wall is upright, a polar plate slopes by the latitude, an
	// equatorial one by the colatitude.
	for kind, want := range map[string]float64{"level": 0, "polar": 46.09, "wall": 90, "equatorial": 43.91} {
		entrytest.Near(t, kind, entrytest.Fact(t, reckon(t, "alder reach", "dial-face", "2027-04-20", "kind="+kind), "tilt").Number, want, 1e-9)
	}
}

// The plate's width decides which hours it holds: 50 mm less the margin of 6 reach
// past 34.6 mm and not to 74.6 mm. A thick gnomon's lines start 3 mm further out.
func TestPolarWidthAndThickness(t *testing.T) {
	r := reckon(t, "equator", "dial-face", "2027-04-20", "width_mm=100")
	if got := entrytest.Shown(t, r, "first_line") + "-" + entrytest.Shown(t, r, "last_line"); got != "8:00-16:00" {
		t.Errorf("hours %s", got)
	}
	r = reckon(t, "equator", "dial-face", "2027-04-20", "width_mm=80", "stock.polar_height_mm=300")
	if got := entrytest.Shown(t, r, "first_line"); got != "12:00" {
		t.Errorf("on a narrow plate the first hour is %s", got)
	}
	r = reckon(t, "equator", "dial-face", "2027-04-20", "stock.gnomon_mm=6")
	d := r.Sheets[0].Drawing
	noon := entrytest.Roled(d, "noon")
	entrytest.Near(t, "noon lines", math.Abs(noon[0].Points[0].X-noon[1].Points[0].X), 6, 1e-9)
	labels := entrytest.Labels(t, d)
	entrytest.Near(t, "nine", labels["9"].X-d.Width/2, -23, 1e-6)
	entrytest.Near(t, "three", labels["15"].X-d.Width/2, 23, 1e-6)
	// Lines of the clock at 103.8° E by the clock of 120° E, 64.8 minutes ahead: 13:00
	// comes 4.8 minutes before the Sun's noon, at 20 mm × tan 1.2° = 0.42 mm west.
	r = reckon(t, "line north", "dial-face", "2027-04-20", "lines=clock")
	d = r.Sheets[0].Drawing
	entrytest.Near(t, "folded in", entrytest.Fact(t, r, "folded_in").Number, 64.8*60, 1e-6)
	entrytest.Near(t, "13:00", entrytest.Labels(t, d)["13"].X-d.Width/2, -0.419, 0.001)
	if len(entrytest.Roled(d, "meridian")) != 1 {
		t.Error("no meridian on a face of clock lines")
	}
}

// The gnomon is a rectangle, 120 mm by 20 mm, and the props are right triangles whose
// angle is the latitude, high end to the pole that is up; under a degree there are none.
func TestPolarGnomonByHand(t *testing.T) {
	for _, c := range tropics {
		r := reckon(t, "line north", "dial-gnomon", "2027-04-20", "school.latitude="+c.latitude)
		for name, want := range map[string]float64{"base": 120, "height": 20, "style": 120, "plate_slope": c.slope} {
			entrytest.Near(t, c.latitude+": "+name, entrytest.Fact(t, r, name).Number, want, 1e-9)
		}
		if got := entrytest.Shown(t, r, "shape"); got != "a rectangle" {
			t.Errorf("%s: %s", c.latitude, got)
		}
		d := r.Sheets[0].Drawing
		d = firstSet(d, "style-edge", 2)
		styles, folds := entrytest.Roled(d, "style-edge"), entrytest.Roled(d, "fold")
		if len(styles) != 2 {
			t.Fatalf("%s: %d styles", c.latitude, len(styles))
		}
		for i, s := range styles {
			entrytest.Near(t, "style", entrytest.Apart(s.Points[0], s.Points[1]), 120, 1e-9)
			for end := range 2 { // parallel to its foot, 20 mm above it
				entrytest.Near(t, "height", folds[i].Points[end].Y-s.Points[end].Y, 20, 1e-9)
				entrytest.Near(t, "upright", folds[i].Points[end].X, s.Points[end].X, 1e-9)
			}
		}
		props := entrytest.Roled(d, "prop")
		if want := map[bool]int{true: 2}[c.prop]; len(props) != want {
			t.Fatalf("%s: %d props", c.latitude, len(props))
		}
		for _, s := range props {
			low, high, foot := s.Points[0], s.Points[1], s.Points[2]
			entrytest.Near(t, "slope of a prop", math.Atan2(foot.Y-high.Y, foot.X-low.X)/degree, c.slope, 1e-9)
			entrytest.Near(t, "its upright side", foot.X, high.X, 1e-9)
			entrytest.Near(t, "its base", foot.Y, low.Y, 1e-9)
		}
		if c.prop {
			entrytest.Tells(t, r.Notes, "dial-gnomon.prop_note", "high ends to "+c.pole, fmt.Sprintf("slopes %.1f°", c.slope))
			if _, ok := entrytest.Labels(t, d)[fmt.Sprintf("prop, plate slopes %.1f°; high end to %s", c.slope, c.pole)]; !ok {
				t.Errorf("%s: the prop says something else: %v", c.latitude, keys(entrytest.Labels(t, d)))
			}
		} else {
			entrytest.Tells(t, r.Notes, "dial-gnomon.no_prop", "No prop is needed")
		}
		entrytest.Tells(t, r.Cautions, "caution.scissors", "scissors")
		for _, s := range d.Shapes {
			for _, p := range s.Points {
				if p.X < 0 || p.Y < 0 || p.X > d.Width || p.Y > d.Height {
					t.Errorf("%s: %s at %v leaves the sheet", c.latitude, s.Role, p)
				}
			}
		}
	}
	// Single pieces are on a sheet as often as it has room, each with its two props.
	for _, school := range []string{"line north", "far east"} {
		one := reckon(t, school, "dial-gnomon", "2027-04-20", "kind=polar", "pieces=single").Sheets[0].Drawing
		pair := reckon(t, school, "dial-gnomon", "2027-04-20", "kind=polar").Sheets[0].Drawing
		styles, props := len(entrytest.Roled(one, "style-edge")), len(entrytest.Roled(one, "prop"))
		if props > 0 && props != 2*styles || styles < 1 || len(entrytest.Roled(pair, "style-edge"))%2 != 0 {
			t.Errorf("%s: %d pieces and %d props", school, styles, props)
		}
	}
	// Far from the equator the plate leans against something.
	entrytest.Tells(t, reckon(t, "arctic", "dial-gnomon", "2027-04-20", "kind=polar").Notes, "dial-gnomon.lean_note", "slopes 69.6°", "its upper edge to true north")
}

// The table of a polar dial gives distances, and says nothing of angles that are not
// there.
func TestPolarTableByHand(t *testing.T) {
	for _, c := range tropics {
		r := reckon(t, "line north", "dial-table", "2027-04-20", "school.latitude="+c.latitude)
		hours, far := entrytest.Cells(t, r, "distances", "sun_time"), entrytest.Column(t, r, "distance")
		if len(hours) != len(polarLines) {
			t.Errorf("%s: %d rows", c.latitude, len(hours))
		}
		for i, h := range hours {
			entrytest.Near(t, c.latitude+": "+entrytest.Written(t, h), far[i], polarLines[int(math.Round(h.Number))], 0.001)
			if r.Tables[0].Rows[i].Marked != (h.Number == 12) {
				t.Errorf("%s: the row of %s is marked: %v", c.latitude, entrytest.Written(t, h), h.Number != 12)
			}
		}
		for name, want := range map[string]float64{"gnomon_base": 120, "gnomon_height": 20, "gnomon_style": 120, "first_distance": 5.359, "last_distance": 40} {
			entrytest.Near(t, c.latitude+": "+name, entrytest.Fact(t, r, name).Number, want, 0.001)
		}
		for name, want := range map[string]string{
			"noon_line": c.pole, "turns": "from west to east", "gnomon_angle": "none: the style is parallel to the plate",
			"first_hour": "no angle: the lines are parallel", "uneven": "no angle: the lines are parallel", "needle_face": "not for a polar dial",
		} {
			if got := entrytest.Shown(t, r, name); got != want {
				t.Errorf("%s: %s is %s", c.latitude, name, got)
			}
		}
		entrytest.Tells(t, r.Notes, "dial-table.polar_sides", "Morning hours carry a minus and are on the west side", "upper end of the noon line points to "+c.pole)
		entrytest.Tells(t, r.Working, "dial-table.working_polar", "20 mm × 1.732 = 34.6 mm")
		// Laid by the needle, east positive, at noon: −4 min a degree × (sin φ − cos φ tan δ),
		// for a Sun 11.5° north on 20 April (from memory).
		phi := entrytest.Number(t, c.latitude) * degree
		turn := entrytest.Fact(t, reckon(t, "line north", "dial-north", "2027-04-20", "school.latitude="+c.latitude), "magnetic_variation").Number
		want := -turn * 240 * (math.Sin(phi) - math.Cos(phi)*math.Tan(11.5*degree))
		entrytest.Near(t, c.latitude+": by the needle", entrytest.Fact(t, r, "needle_noon").Number, want, 4)
	}
	level := reckon(t, "alder reach", "dial-table", "2027-04-20")
	for _, name := range []string{"first_distance", "last_distance"} {
		if got := entrytest.Shown(t, level, name); got != "no distance: the lines meet" {
			t.Errorf("on a level dial %s is %s", name, got)
		}
	}
}

// The blank plate counts millimetres from the noon line. Looking along it from the lower
// edge, east is right where one faces north and left where one faces south.
func TestPolarBlankByHand(t *testing.T) {
	for _, c := range tropics {
		r := reckon(t, "line north", "dial-blank", "2027-04-20", "school.latitude="+c.latitude)
		side := map[string]string{"left": "right", "right": "left"}[c.west]
		if got := entrytest.Shown(t, r, "after_side"); got != side {
			t.Errorf("%s: afternoon marks lie to the %s", c.latitude, got)
		}
		entrytest.Tells(t, r.Notes, "dial-blank.polar_note", "Afternoon marks lie to the "+side, "seen from the lower edge", "x_mm, with a minus before noon")
		d := r.Sheets[0].Drawing
		for _, role := range []string{"tick", "quarter"} {
			for _, l := range entrytest.Roled(d, role) {
				far := l.Points[0].X - d.Width/2
				entrytest.Near(t, "a whole millimetre", far, math.Round(far), 1e-9)
			}
		}
		if n := len(entrytest.Roled(d, "tick")) + len(entrytest.Roled(d, "quarter")); n != 2*169 {
			t.Errorf("%s: %d ticks", c.latitude, n)
		}
		if at := entrytest.Labels(t, d)["80"]; math.Abs(math.Abs(at.X-d.Width/2)-80) > 1e-9 {
			t.Errorf("%s: 80 is at %v", c.latitude, at)
		}
		if _, ok := entrytest.Labels(t, d)[c.edge]; !ok {
			t.Errorf("%s: the upper edge says something else", c.latitude)
		}
		if len(entrytest.Roled(d, "hour")) > 0 {
			t.Errorf("%s: a blank plate has hours", c.latitude)
		}
	}
}

// The marking day and the drift of marks in millimetres: 20 mm × tan of the Sun's hour
// angle, and past a quarter past five off the plate.
func TestPolarHoursAndDrift(t *testing.T) {
	r := reckon(t, "line north", "dial-hours", "2027-04-20", "from=7:00", "to=20:00")
	sun, far := entrytest.Cells(t, r, "hours", "sun_time"), entrytest.Cells(t, r, "hours", "distance")
	beyond := 0
	for i, h := range sun {
		if math.Abs(h.Number-12) > 5.25 {
			beyond++
			if got := entrytest.Written(t, far[i]); got != "off the plate" {
				t.Errorf("at %v h the mark is at %s", h.Number, got)
			}
			continue
		}
		entrytest.Near(t, fmt.Sprint(h.Number, " h"), far[i].Number, 20*math.Tan((h.Number-12)*15*degree), 1e-6)
	}
	if beyond != 1 || len(sun) < 11 { // 19:00 is 17:56 by the Sun
		t.Errorf("%d of %d marks are off the plate", beyond, len(sun))
	}
	// From 11 February to 14 May the Sun gets ahead by 17.9 minutes (erfa), 4.5°: 20 mm ×
	// tan 4.5° = 1.6 mm at noon, and 20 × (tan 49.5° − 1) = 3.4 mm at three.
	r = reckon(t, "line north", "dial-drift", "2027-05-14", "marked=2027-02-11", "weeks=14")
	entrytest.Near(t, "moved", entrytest.Fact(t, r, "moved_noon_mm").Number, 1.57, 0.05)
	moved := entrytest.Column(t, r, "moved_three_mm")
	entrytest.Near(t, "moved at three", moved[13], 3.4, 0.1)
	for _, c := range tropics {
		r := reckon(t, "line north", "dial-drift", "2027-04-20", "off_deg=2", "school.latitude="+c.latitude)
		phi := entrytest.Number(t, c.latitude) * degree
		entrytest.Near(t, c.latitude+": turned", entrytest.Fact(t, r, "turned_at_noon").Number/60, -4*math.Sin(phi), 0.01)
		entrytest.Near(t, c.latitude+": leaning", entrytest.Fact(t, r, "leaning_at_noon").Number/60, 4*math.Cos(phi), 0.01)
		entrytest.Near(t, c.latitude+": steep", entrytest.Fact(t, r, "steep_at_three").Number, 0, 1)
		// That the errors a degree belong to a clockwise turn and to a low east side is
		// TestPolarDialOutOfPlace of compute/dial.
		entrytest.Tells(t, r.Notes, "dial-drift.rule_polar", "plate turned clockwise, "+entrytest.Shown(t, r, "turned_at_noon"), "east side low, "+entrytest.Shown(t, r, "leaning_at_noon"), "plate too steep, nothing")
		// A lean is a turn about the axis, alike at every hour and season; a turn shows by the
		// tangent of the declination, which is nothing at an equinox.
		entrytest.Tells(t, r.Notes, "dial-drift.rule_polar_signs", "by one amount: one side is low", "not at the equinoxes: turned", "Right at noon and wrong to opposite sides in the morning and the afternoon: the slope of the plate")
		// At an equinox this is −4 min a degree × sin φ, as above.
		entrytest.Tells(t, r.Working, "dial-drift.working_turn", "turned clockwise", "fast at noon by 4 min × τ × (cos latitude × tan declination - sin latitude); a minus means slow")
		// A plate too steep by 2° on a day when the Sun is 23.44° toward the upper edge: 4 min
		// × 2 × tan δ × sin 60° = 3.0 minutes ahead at four o'clock, toward six.
		for _, row := range r.Tables[1].Rows {
			if row.Cells[0].Phrase.Key != "dial-drift.plate_steep" {
				continue
			}
			want := 4 * 2 * math.Tan(23.44*degree) * math.Sin(60*degree)
			switch season := row.Cells[1].Phrase.Key; {
			case season == "dial-drift.equinox":
				want = 0
			case (season == "dial-drift.june") != (c.pole == "true north"):
				want = -want
			}
			entrytest.Near(t, c.latitude+": too steep", row.Cells[6].Number/60, want, 0.2)
		}
	}
}

// Marks by the test's own vectors, of a plate that was turned 14° clockwise: by their
// distances the fit finds it. On 30 June noon is at 13:08 by this clock: 64.8 minutes for
// the longitude, and 3.6 for the equation of time (from memory).
func TestPolarMarksByDistance(t *testing.T) {
	const declination, slope = 23.2 * degree, 1.4 * degree // on 30 June, from memory
	for _, turn := range []float64{0, 14, -14} {
		text := "date,time,x_mm\n"
		for clock := 9.0; clock <= 17; clock++ {
			h := (clock - 12 - (64.8+3.6)/60) * 15 * degree
			sin, cos := math.Sincos(slope)
			// the Sun in east, north, up
			east := -math.Cos(declination) * math.Sin(h)
			north := math.Sin(declination)*cos - math.Cos(declination)*math.Cos(h)*sin
			up := math.Sin(declination)*sin + math.Cos(declination)*math.Cos(h)*cos
			e, n := math.Sincos(turn * degree)
			across := n*east - e*north              // along the plate's own east
			square := cos*up - sin*(e*east+n*north) // out of the plate
			text += fmt.Sprintf("2027-06-30,%.0f:00,%.1f\n", clock, -20*across/square)
		}
		r := ReckonMarks(t, "line north", text)
		entrytest.Near(t, "turn", entrytest.Fact(t, r, "turn").Number, turn, 1.5)
		if got := entrytest.Shown(t, r, "finding"); !strings.Contains(got, "The plate’s slope is right") || turn != 0 && !strings.Contains(got, side(turn, "° clockwise", "° anticlockwise")) {
			t.Errorf("turned %v°: %s", turn, got)
		}
		if turn == 0 {
			marked, right := entrytest.Column(t, r, "marked_mm"), entrytest.Column(t, r, "true_dial_mm")
			for i := range marked {
				entrytest.Near(t, "a mark of a plate that is right", marked[i], right[i], 0.1+0.01*math.Abs(right[i]))
			}
		}
		if len(r.Drawings) != 1 || len(entrytest.Roled(r.Drawings[0], "mark")) != 9 {
			t.Errorf("%d drawings", len(r.Drawings))
		}
	}
	// An angle says nothing on a polar plate, and the page says so.
	r := ReckonMarks(t, "line north", "date,time,x_mm,y_mm,angle_deg\n2027-06-30,10:00,,,-30\n2027-06-30,11:00,-12,,\n2027-06-30,12:00,,,-3\n")
	entrytest.Tells(t, r.Warnings, "dial-marks.no_distance", "2 marks have no x_mm and do not count")
	if n := entrytest.Fact(t, r, "marks").Number; n != 1 {
		t.Errorf("%v marks count", n)
	}
	if r := reckon(t, "line north", "dial-marks", "2027-04-20"); !entrytest.Says(r.Notes, "dial-marks.no_polar_records") || len(r.Warnings) > 0 {
		t.Error("without marks:", entrytest.Lines(t, r.Notes), entrytest.Lines(t, r.Warnings))
	} else {
		entrytest.Tells(t, r.Notes, "dial-marks.no_polar_records", "x_mm, the distance from the noon line, with a minus before noon")
	}
}

// Sheets of every polar dial hold all their marks, on both papers.
func TestPolarSheetsHoldTheirMarks(t *testing.T) {
	for _, latitude := range []string{"14.9", "-14.9", "0", "46"} {
		for _, paper := range []string{"A4", "Letter"} {
			for _, stock := range []string{"stock.polar_height_mm=5", "stock.polar_height_mm=60", "stock.gnomon_mm=20", "stock.style_mm=20"} {
				for _, name := range []string{"dial-face", "dial-gnomon"} {
					if name == "dial-gnomon" && strings.HasPrefix(stock, "stock.gnomon_mm") {
						continue // it is cut from whatever is there
					}
					r := reckon(t, "line north", name, "2027-04-20", "school.latitude="+latitude, "school.paper="+paper, "kind=polar", stock)
					for _, s := range r.Sheets {
						for _, shape := range s.Drawing.Shapes {
							for _, p := range shape.Points {
								if !(p.X > -0.01 && p.X < s.Drawing.Width+0.01 && p.Y > -0.01 && p.Y < s.Drawing.Height+0.01) {
									t.Fatalf("%s at %s with %s: %s at %v is off the sheet", name, latitude, stock, shape.Role, p)
								}
							}
						}
					}
				}
			}
		}
	}
	for _, paper := range []string{"A4", "Letter"} { // what the settings give goes on one sheet
		for _, name := range []string{"dial-face", "dial-gnomon", "dial-blank"} {
			if r := reckon(t, "line north", name, "2027-04-20", "school.latitude=14.9", "school.paper="+paper, "stock.style_mm=150"); len(r.Sheets) != 1 {
				t.Errorf("%s on %s takes %d sheets", name, paper, len(r.Sheets))
			}
		}
	}
}
