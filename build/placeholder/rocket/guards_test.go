package rocket_test

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/result"
	"noonbook/build/say"
)

// scipys is the rocket of the second row of testdata/reference/rocket-searches.csv:
// 5 g, 23 mm (a pipe of 22.1 mm, a play of 0.7 mm, paper of 0.1 mm twice), drag 0.6,
// 20 m/s from a pipe that ends 0.3 m up, air of 1.225 kg/m³. By scipy it lands
// 27.265 m away at most in a wind of 4 m/s, launched at 43.13°. Straight up in still
// air it rises to 13.545 m and lasts 3.314 s (rocket-flights.csv).
var scipys = []string{
	"stock.rocket_mass_g=5", "stock.pipe_outside_mm=22.1", "stock.pipe_play_mm=0.7", "stock.rocket_paper_g_m2=80",
	"stock.launch_speed_m_s=20", "drag_coefficient=0.6", "pipe_end_m=0.3", "school.elevation_m=0", "celsius=15",
	"field.wind_m_s=4", "class.eye_height_m=1.2",
}

func scipy(t *testing.T, name string, more ...string) result.Result {
	t.Helper()
	given := slices.Clone(scipys)
	if name == "rocket-path" { // it reads no eye and no field
		given = slices.DeleteFunc(given, func(pair string) bool { return strings.HasPrefix(pair, "field.") || strings.HasPrefix(pair, "class.") })
	}
	return reckon(t, "alder reach", name, "2027-04-28", append(given, more...)...)
}

// The clear zone is the larger of two reaches, rounded up to a whole metre: scipy's
// farthest landing with the school's margin on top, and the landing without air,
// v/g √(v² + 2 g h) = 41.087 m (any textbook of mechanics). The stations stand 2 m
// outside.
func TestClearZoneAgainstScipy(t *testing.T) {
	free := 20 / 9.80665 * math.Sqrt(400+2*9.80665*0.3)
	for _, c := range []struct {
		margin, clear string
		want          float64
		from          string
	}{
		{"30", "42 m", 42, "rocket-zone.from_no_air"}, // 27.2651 × 1.3 = 35.44
		{"0", "42 m", 42, "rocket-zone.from_no_air"},
		{"50.6", "42 m", 42, "rocket-zone.from_no_air"}, // 41.06
		{"50.8", "42 m", 42, "rocket-zone.from_air"},    // 41.116
		{"60", "44 m", 44, "rocket-zone.from_air"},      // 43.62
		{"76", "48 m", 48, "rocket-zone.from_air"},      // 47.99
		{"77", "49 m", 49, "rocket-zone.from_air"},      // 48.26: down would be the nearest metre
		{"120", "60 m", 60, "rocket-zone.from_air"},     // 59.98
	} {
		r := scipy(t, "rocket-zone", "field.margin_percent="+c.margin)
		share, err := strconv.ParseFloat(c.margin, 64)
		if err != nil {
			t.Fatal(err)
		}
		entrytest.Near(t, "reach", entrytest.Fact(t, r, "reach").Number, 27.2651464, 0.01)
		entrytest.Near(t, "angle of the reach", entrytest.Fact(t, r, "reach_angle").Number, 43.133, 0.3)
		entrytest.Near(t, "margin", entrytest.Fact(t, r, "margin").Number, 27.2651464*share/100, 0.01)
		entrytest.Near(t, "reach with the margin", entrytest.Fact(t, r, "reach_with_margin").Number, 27.2651464*(1+share/100), 0.02)
		entrytest.Near(t, "reach without air", entrytest.Fact(t, r, "reach_no_air").Number, free, 1e-6)
		entrytest.Near(t, "clear with a margin of "+c.margin, entrytest.Fact(t, r, "clear").Number, c.want, 1e-9)
		if got := entrytest.Fact(t, r, "zone_from").Phrase.Key; got != c.from {
			t.Errorf("with a margin of %s %% the zone is %s", c.margin, got)
		}
		entrytest.Near(t, "station", entrytest.Fact(t, r, "station").Number, c.want+2, 1e-9)
		entrytest.Near(t, "station's angle", entrytest.Fact(t, r, "station_angle").Number, math.Atan2(13.54545-1.2, c.want+2)*180/math.Pi, 0.01)
		if got := entrytest.Shown(t, r, "clear"); got != c.clear {
			t.Errorf("a clear zone of %v m is printed %s", c.want, got)
		}
		entrytest.Tells(t, r.Cautions, "caution.clear-zone", "within "+c.clear+" of the launcher", "wind stronger than 4.0 m/s")
		note := map[string]string{"rocket-zone.from_air": "rocket-zone.note_air", "rocket-zone.from_no_air": "rocket-zone.note_no_air"}[c.from]
		entrytest.Tells(t, r.Notes, note, fmt.Sprintf("%.1f m", 27.26515*(1+share/100)), "41.1 m", "the zone of "+c.clear)
		if !entrytest.Says(r.Notes, "rocket-zone.note_unit") || entrytest.Shown(t, r, "speed_from") != "unit.toml" || entrytest.Shown(t, r, "speed_flown") != "no flights on record" {
			t.Error("without flights on record the speed is not that of unit.toml")
		}
	}
	r := scipy(t, "rocket-zone", "field.margin_percent=30")
	entrytest.Near(t, "highest", entrytest.Fact(t, r, "highest").Number, 13.5454470303, 0.005)
	entrytest.Near(t, "longest", entrytest.Fact(t, r, "longest").Number, 3.31400099222, 0.005)
	entrytest.Tells(t, r.Working, "rocket-zone.working_reach", "At 20.0 m/s", "wind of 4.0 m/s", "at 43°", "27.27 m")
	entrytest.Tells(t, r.Working, "rocket-zone.working_margin", "= 27.265 m × 1.30 = 35.4 m")
	entrytest.Tells(t, r.Working, "rocket-zone.working_free", "= 20.0 m/s ÷ 9.81 m/s² × √((20.0 m/s)² + 2 × 9.81 m/s² × 0.3 m) = "+fmt.Sprintf("%.1f m", free))
	entrytest.Tells(t, r.Working, "rocket-zone.working_clear", "the larger of the two, 35.4 m and 41.1 m", ": 42 m.")
	for _, note := range []string{"rocket-zone.authority", "rocket-zone.note_people"} {
		if !entrytest.Says(r.Notes, note) {
			t.Errorf("%s is not said", note)
		}
	}
	// The first row: no wind, 22.457 m at 39.9°.
	still := scipy(t, "rocket-zone", "field.wind_m_s=0", "field.margin_percent=90")
	entrytest.Near(t, "reach in still air", entrytest.Fact(t, still, "reach").Number, 22.45663335, 0.01)
	if entrytest.Fact(t, still, "clear").Number != 43 { // 42.67
		t.Error("in still air the zone is", entrytest.Shown(t, still, "clear"))
	}
	// A pipe that stands steeper cannot throw so far: at 75° the flight of
	// rocket-flights.csv in still air lands 10.785 m away.
	steep := scipy(t, "rocket-zone", "field.wind_m_s=0", "least_angle=75", "field.margin_percent=30")
	entrytest.Near(t, "reach at 75° and more", entrytest.Fact(t, steep, "reach").Number, 10.7846895, 0.01)
	// Without air it lands v cos a (v sin a + √((v sin a)² + 2 g h)) / g away.
	sin, cos := math.Sincos(75 * math.Pi / 180)
	free = 20 * cos / 9.80665 * (20*sin + math.Sqrt(400*sin*sin+2*9.80665*0.3))
	entrytest.Near(t, "reach without air at 75° and more", entrytest.Fact(t, steep, "reach_no_air").Number, free, 1e-6)
	entrytest.Near(t, "clear at 75° and more", entrytest.Fact(t, steep, "clear").Number, 21, 1e-9) // 20.474
	entrytest.Tells(t, steep.Working, "rocket-zone.working_free_fixed", "stands at 75° or steeper", "cos 75°", "= 20.5 m")
}

// A field holds a zone of 44 m from 88 m on, whichever side is called its width.
func TestFieldJustHoldsTheZone(t *testing.T) {
	for _, c := range []struct {
		width, length, room string
		fits                bool
	}{
		{"88", "200", "44 m", true}, {"200", "88", "44 m", true},
		{"87.8", "200", "43.9 m", false}, {"200", "87.8", "43.9 m", false}, {"87", "87", "43.5 m", false},
	} {
		r := scipy(t, "rocket-zone", "field.margin_percent=60", "field.width_m="+c.width, "field.length_m="+c.length)
		if got := entrytest.Fact(t, r, "fits").Number == 1; got != c.fits {
			t.Errorf("%s × %s m: fits is %v", c.width, c.length, got)
		}
		if got := entrytest.Shown(t, r, "room"); got != c.room {
			t.Errorf("%s × %s m have a room of %s, want %s", c.width, c.length, got, c.room)
		}
		shown := entrytest.Shown(t, r, "fits")
		if c.fits {
			if len(r.Warnings) > 0 || shown != "yes" || entrytest.Shown(t, r, "angle_inside") != "not needed" {
				t.Errorf("%s × %s m: %s, %v", c.width, c.length, shown, r.Warnings)
			}
			continue
		}
		if !strings.HasPrefix(shown, "no: ") {
			t.Errorf("%s × %s m: %s", c.width, c.length, shown)
		}
		entrytest.Tells(t, r.Warnings, "rocket-zone.small", "reaches 44 m from the launcher", "to its edge it is "+c.room)
		entrytest.Tells(t, r.Warnings, "rocket-zone.way_angle", entrytest.Shown(t, r, "angle_inside"))
		entrytest.Tells(t, r.Warnings, "rocket-zone.way_speed", entrytest.Shown(t, r, "speed_inside"))
		entrytest.Tells(t, r.Warnings, "rocket-zone.way_drag", "coefficient of "+entrytest.Shown(t, r, "drag_inside")+" instead of 0.6")
		if entrytest.Says(r.Warnings, "rocket-zone.other_field") {
			t.Errorf("%s × %s m: another field is wanted", c.width, c.length)
		}
	}
}

// What brings the zone inside is the least that does: a degree lower, 0.1 m/s
// faster or a tenth less drag does not. It is so at fields where the reach with air
// decides, where the one without air does, and where the pipe cannot lie flat.
func TestWaysToFitAreNoMoreThanNeeded(t *testing.T) {
	seen := map[string]int{}
	for _, field := range [][]string{
		{"field.margin_percent=45", "field.width_m=53", "field.length_m=80"},
		{"field.margin_percent=130", "field.width_m=97", "field.length_m=101"},
		{"field.margin_percent=180", "field.width_m=90.5", "field.length_m=120", "stock.launch_speed_m_s=19.4"},
		{"field.margin_percent=15", "field.width_m=61", "field.length_m=44.4", "stock.launch_speed_m_s=17.7"},
		{"field.margin_percent=95", "field.width_m=31", "field.length_m=66", "least_angle=58"},
		{"field.margin_percent=20", "field.width_m=30", "field.length_m=31", "least_angle=71", "stock.launch_speed_m_s=27.3"},
	} {
		r := scipy(t, "rocket-zone", field...)
		if entrytest.Fact(t, r, "fits").Number != 0 {
			t.Fatalf("%v: the zone fits already", field)
		}
		fits := func(key string, x float64) bool {
			given := slices.DeleteFunc(slices.Clone(field), func(pair string) bool { return strings.HasPrefix(pair, key+"=") })
			return entrytest.Fact(t, scipy(t, "rocket-zone", append(given, key+"="+format(x))...), "fits").Number == 1
		}
		for _, way := range []struct {
			fact, key, warning string
			worse              float64
		}{
			{"angle_inside", "least_angle", "rocket-zone.way_angle", -1},
			{"speed_inside", "stock.launch_speed_m_s", "rocket-zone.way_speed", 0.1},
			{"drag_inside", "drag_coefficient", "rocket-zone.way_drag", -0.1},
		} {
			v := entrytest.Fact(t, r, way.fact)
			if (v.Kind == say.Nothing) == entrytest.Says(r.Warnings, way.warning) {
				t.Errorf("%v: %s is %s, and the page offers it: %v", field, way.fact, entrytest.Written(t, v), r.Warnings)
			}
			if v.Kind == say.Nothing {
				continue
			}
			seen[way.fact]++
			x := v.Number
			if !fits(way.key, x) {
				t.Errorf("%v: the zone does not fit with %s %v", field, way.key, x)
			}
			if fits(way.key, x+way.worse) {
				t.Errorf("%v: the zone fits with %s %v already, not from %v on", field, way.key, x+way.worse, x)
			}
		}
	}
	if seen["angle_inside"] != 6 || seen["speed_inside"] != 6 || seen["drag_inside"] < 2 {
		t.Errorf("ways were found %v times", seen)
	}
}

// More drag is no way where the landing without air is too far: no drag coefficient
// brings the zone inside, and none is offered.
func TestDragIsNoWayWithoutAir(t *testing.T) {
	field := []string{"field.margin_percent=45", "field.width_m=80", "field.length_m=80"} // 41.09 m against 40 m
	r := scipy(t, "rocket-zone", field...)
	if v := entrytest.Fact(t, r, "drag_inside"); v.Kind != say.Nothing || entrytest.Says(r.Warnings, "rocket-zone.way_drag") {
		t.Errorf("drag_inside is %s", entrytest.Written(t, v))
	}
	for _, drag := range []string{"0.6", "1.5", "3"} {
		if entrytest.Fact(t, scipy(t, "rocket-zone", append(field, "drag_coefficient="+drag)...), "fits").Number != 0 {
			t.Errorf("with a drag coefficient of %s it fits", drag)
		}
	}
	// On 40 m the throw without air is R² g² = v⁴ + 2 g h v²: 19.73 m/s and less.
	entrytest.Near(t, "speed inside", entrytest.Fact(t, r, "speed_inside").Number, 19.7, 1e-9)
	entrytest.Near(t, "by the formula", math.Sqrt(-9.80665*0.3+math.Hypot(9.80665*0.3, 9.80665*40)), 19.73, 0.005)
}

// Where nothing helps, no number is given for it, and another field is asked for.
// No way is a launch below 5 m/s, which rises to 1.3 m (v²/2g).
func TestFieldTooSmallForAnyLaunch(t *testing.T) {
	small := scipy(t, "rocket-zone", "field.width_m=3", "field.length_m=3")
	for fact, want := range map[string]string{"angle_inside": "no angle", "speed_inside": "no speed", "drag_inside": "no paper rocket"} {
		if got := entrytest.Shown(t, small, fact); got != want {
			t.Errorf("on 3 m %s is %q, want %q", fact, got, want)
		}
	}
	// The zone of 5 m/s exactly, and of a field a metre narrower.
	zone := entrytest.Fact(t, scipy(t, "rocket-zone", "stock.launch_speed_m_s=5"), "clear").Number
	just := scipy(t, "rocket-zone", "field.width_m="+format(2*zone), "field.length_m=100")
	if v := entrytest.Fact(t, just, "speed_inside"); v.Kind == say.Nothing || v.Number < 5 {
		t.Errorf("a field that holds the zone of 5 m/s: %v", v)
	}
	less := scipy(t, "rocket-zone", "field.width_m="+format(2*zone-2), "field.length_m=100")
	if v := entrytest.Fact(t, less, "speed_inside"); v.Kind != say.Nothing || entrytest.Says(less.Warnings, "rocket-zone.way_speed") {
		t.Errorf("a field smaller than the zone of 5 m/s: %v", v)
	}
	for width := 2 * zone; width < 70; width += 21 {
		r := scipy(t, "rocket-zone", "field.width_m="+format(width), "field.length_m=100")
		if none := !entrytest.Says(r.Warnings, "rocket-zone.way_angle") && !entrytest.Says(r.Warnings, "rocket-zone.way_speed") && !entrytest.Says(r.Warnings, "rocket-zone.way_drag"); none || entrytest.Says(r.Warnings, "rocket-zone.other_field") {
			t.Errorf("a field of %v m: %v", width, r.Warnings)
		}
	}
}

// Jobs are given out in the order that a launch needs, wardens before anybody who
// measures; 21 of them make a full crew, and a class of unknown size is shown that
// crew. The Sun of shadow-bearings.csv (erfa) is at 126.86° at 11:00 on 28 April.
func TestJobsGoByNeed(t *testing.T) {
	for pupils, want := range map[string]string{
		"0":  "stamper 1, loader 1, caller 1, warden 4, sighter 2, reader 2, recorder 2, timer 3, wind 1, retriever 2, inspector 2",
		"1":  "stamper 1",
		"4":  "stamper 1, loader 1, caller 1, warden 1",
		"16": "stamper 1, loader 1, caller 1, warden 4, sighter 2, reader 2, recorder 2, timer 3",
		"21": "stamper 1, loader 1, caller 1, warden 4, sighter 2, reader 2, recorder 2, timer 3, wind 1, retriever 2, inspector 2",
		"27": "stamper 1, loader 1, caller 1, warden 4, sighter 2, reader 2, recorder 2, timer 3, wind 1, retriever 2, inspector 2, next 6",
	} {
		r := scipy(t, "rocket-zone", "class.pupils="+pupils, "field.margin_percent=60", "day=2027-04-28", "time=11:00")
		var got []string
		for _, row := range r.Tables[0].Rows {
			job := strings.TrimPrefix(row.Cells[0].Phrase.Key, "rocket-zone.job_")
			got = append(got, fmt.Sprintf("%s %v", job, row.Cells[1].Number))
			place := "outside the clear zone, 44 m or more from the launcher, at a bearing of 127° between the stations"
			switch job {
			case "stamper", "loader", "caller":
				place = "at the bottle, behind it, never over the nose"
			case "sighter", "reader", "recorder":
				place = "46 m from the launcher, with the Sun behind: one at a bearing of 172°, one at 82°"
			case "warden", "wind":
				place = "outside the clear zone, 44 m or more from the launcher"
			}
			if where := entrytest.Written(t, row.Cells[2]); where != place {
				t.Errorf("the %s stands %s", job, where)
			}
		}
		if list := strings.Join(got, ", "); list != want {
			t.Errorf("%s pupils: %s", pupils, list)
		}
	}
}

// On the plan of a rectangle, whose directions nobody knows, up is away from the Sun:
// the stations are half left and half right below the launcher, the class between
// them, the Sun at the foot; nobody stands inside the zone, and no warden on the Sun's
// side.
func TestPlanOfTheZone(t *testing.T) {
	r := scipy(t, "rocket-zone", "field.margin_percent=60", "field.width_m=150", "field.length_m=110", "day=2027-04-28", "time=11:00")
	d := r.Drawings[0]
	clear, reach, launcher := entrytest.Roled(d, "clear")[0], entrytest.Roled(d, "reach")[0], entrytest.Roled(d, "launcher")[0].Points[0]
	metre := clear.Radius / 44
	entrytest.Near(t, "reach on the plan", reach.Radius/metre, 27.2651, 0.01)
	field := entrytest.Roled(d, "field")[0].Points
	entrytest.Near(t, "long side", entrytest.Apart(field[0], field[1])/metre, 150, 1e-6)
	entrytest.Near(t, "short side", entrytest.Apart(field[1], field[2])/metre, 110, 1e-6)
	entrytest.Near(t, "other long side", entrytest.Apart(field[2], field[3])/metre, 150, 1e-6)
	entrytest.Near(t, "launcher to a corner", entrytest.Apart(launcher, field[0])/metre, math.Hypot(75, 55), 1e-6)
	entrytest.Near(t, "launcher to the corner across", entrytest.Apart(launcher, field[2])/metre, math.Hypot(75, 55), 1e-6)
	stations := entrytest.Roled(d, "station")
	if len(stations) != 2 {
		t.Fatalf("%d stations", len(stations))
	}
	for i, want := range []drawing.Point{{X: -46 / math.Sqrt2, Y: 46 / math.Sqrt2}, {X: 46 / math.Sqrt2, Y: 46 / math.Sqrt2}} {
		entrytest.Near(t, "station to the right", (stations[i].Points[0].X-launcher.X)/metre, want.X, 1e-6)
		entrytest.Near(t, "station down the page", (stations[i].Points[0].Y-launcher.Y)/metre, want.Y, 1e-6)
	}
	sun, beam := entrytest.Roled(d, "sun")[0].Points[0], entrytest.Roled(d, "beam")[0].Points
	entrytest.Near(t, "the Sun, to the right", sun.X, launcher.X, 1e-6)
	if sun.Y <= field[2].Y || sun.Y > d.Height || beam[1].Y >= beam[0].Y {
		t.Errorf("the Sun is at %v, its light from %v", sun, beam)
	}
	if len(entrytest.Roled(d, "wind")) > 0 || len(entrytest.Roled(d, "compass")) > 0 {
		t.Error("a plan by the Sun has an arrow for the wind or for north")
	}
	class := entrytest.Roled(d, "class")[0].Points[0]
	if math.Abs(class.X-launcher.X) > 1e-6 || class.Y <= launcher.Y {
		t.Errorf("the class waits at %v, the launcher is at %v", class, launcher)
	}
	wardens := entrytest.Roled(d, "warden")
	if len(wardens) != 4 {
		t.Errorf("%d wardens at the edge", len(wardens))
	}
	for _, w := range wardens {
		if w.Points[0].Y > launcher.Y+1e-6 {
			t.Errorf("a warden at %v faces the Sun", w.Points[0])
		}
	}
	for _, p := range append(wardens, drawing.Shape{Points: []drawing.Point{class}}) {
		if away := entrytest.Apart(launcher, p.Points[0]) / metre; away <= 44 {
			t.Errorf("somebody stands %.1f m from the launcher", away)
		}
	}
	entrytest.Tells(t, []say.Phrase{d.Description}, "rocket-zone.description", "landing, 28 m", "zone, 44 m", "46 m from", "bearing of 127°, station 1 at 172°, station 2 at 82°")
	labels := entrytest.Labels(t, d)
	for _, want := range []string{"clear zone, 44 m", "farthest landing, 28 m", "the class", "launcher", "warden", "station 1", "station 2", "the Sun, 11:00; turn the page until it fits"} {
		if _, ok := labels[want]; !ok {
			t.Errorf("no label %q", want)
		}
	}
	if labels["station 1"].X > labels["station 2"].X || labels["clear zone, 44 m"].Y > labels["farthest landing, 28 m"].Y {
		t.Error("labels stand at the wrong place")
	}

	// By night there is no side of the Sun: stations and wind as the page is turned.
	r = scipy(t, "rocket-zone", "field.margin_percent=60", "day=2027-04-28", "time=2:00")
	d = r.Drawings[0]
	launcher = entrytest.Roled(d, "launcher")[0].Points[0]
	stations = entrytest.Roled(d, "station")
	if stations[0].Points[0].X >= launcher.X || stations[1].Points[0].X <= launcher.X {
		t.Errorf("the stations stand at %v, not one up and one down the wind", stations)
	}
	entrytest.Near(t, "height of station 1 on the page", stations[0].Points[0].Y, launcher.Y, 1e-6)
	wind := entrytest.Roled(d, "wind")
	from, tip := wind[0].Points[0], wind[0].Points[1]
	if from.X >= tip.X || from.Y != tip.Y || wind[1].Points[1] != tip || wind[1].Points[0].X >= tip.X {
		t.Errorf("the wind's arrow runs from %v to %v", from, tip)
	}
	if class := entrytest.Roled(d, "class")[0].Points[0]; class.X >= launcher.X {
		t.Error("the class is down the wind")
	}
	if len(entrytest.Roled(d, "sun")) > 0 || entrytest.Fact(t, r, "sun_side").Kind != say.Nothing || entrytest.Fact(t, r, "station_one").Kind != say.Nothing {
		t.Error("by night the Sun has a side")
	}
	entrytest.Tells(t, r.Notes, "rocket-zone.note_no_sun", "At 2:00 the Sun is not up", "46 m from the launcher")
	entrytest.Tells(t, []say.Phrase{d.Description}, "rocket-zone.description_wind", "one up and one down the wind")
	if got := entrytest.Written(t, r.Tables[0].Rows[4].Cells[2]); got != "46 m from the launcher, one up the wind, one down" {
		t.Errorf("by night the sighters stand %s", got)
	}

	// An outline is drawn with north up and east to the right, round its roomiest
	// spot: of a right triangle of 400, 300 and 500 m the centre of the inscribed
	// circle, 100 m from each side.
	e, _ := entry.Find(entries(), "rocket-zone")
	v := e.Complete(entrytest.Settings(t, "alder reach"), nil, entrytest.Day(t, "2027-04-28"))
	v["field.outline"] = []form.Values{{"east_m": 0.0, "north_m": 0.0}, {"east_m": 400.0, "north_m": 0.0}, {"east_m": 0.0, "north_m": 300.0}}
	v["day"], v["time"] = entrytest.Day(t, "2027-04-28"), 11*time.Hour
	r, err := e.Reckon(v)
	if err != nil {
		t.Fatal(err)
	}
	d = r.Drawings[0]
	metre = entrytest.Roled(d, "clear")[0].Radius / entrytest.Fact(t, r, "clear").Number
	launcher = entrytest.Roled(d, "launcher")[0].Points[0]
	field = entrytest.Roled(d, "field")[0].Points
	for i, want := range []drawing.Point{{X: -100, Y: 100}, {X: 300, Y: 100}, {X: -100, Y: -200}} {
		entrytest.Near(t, "corner to the right", (field[i].X-launcher.X)/metre, want.X, 0.5)
		entrytest.Near(t, "corner down the page", (field[i].Y-launcher.Y)/metre, want.Y, 0.5)
	}
	// East is right and south is down: a bearing of 126.86° (erfa) is down to the right.
	bearing := func(p drawing.Point) float64 {
		return math.Mod(math.Atan2(p.X-launcher.X, launcher.Y-p.Y)*180/math.Pi+360, 360)
	}
	entrytest.Near(t, "the Sun on the map", bearing(entrytest.Roled(d, "sun")[0].Points[0]), 126.856, 0.01)
	entrytest.Near(t, "station 1 on the map", bearing(entrytest.Roled(d, "station")[0].Points[0]), 171.856, 0.01)
	entrytest.Near(t, "station 2 on the map", bearing(entrytest.Roled(d, "station")[1].Points[0]), 81.856, 0.01)
	entrytest.Near(t, "the class on the map", bearing(entrytest.Roled(d, "class")[0].Points[0]), 126.856, 0.01)
	if north := entrytest.Roled(d, "compass"); len(north) != 2 || north[0].Points[1].Y >= north[0].Points[0].Y {
		t.Error("north is not shown up")
	}
}

// Height = distance × tan angle + eye; a mistake of the angle does more upwards.
func TestHeightByHand(t *testing.T) {
	tan := func(deg float64) float64 { return math.Tan(deg * math.Pi / 180) }
	r := scipy(t, "rocket-height", "angle=33", "baseline_m=17", "angle_off=2", "baseline_off_m=0.4")
	entrytest.Near(t, "height", entrytest.Fact(t, r, "height").Number, 17*tan(33)+1.2, 1e-6)
	entrytest.Near(t, "above the eye", entrytest.Fact(t, r, "above_eye").Number, 17*tan(33), 1e-6)
	entrytest.Near(t, "by angle", entrytest.Fact(t, r, "by_angle").Number, 17*(tan(35)-tan(33)), 1e-6)
	entrytest.Near(t, "by baseline", entrytest.Fact(t, r, "by_baseline").Number, 0.4*tan(33), 1e-6)
	entrytest.Near(t, "together", entrytest.Fact(t, r, "spread").Number, math.Hypot(17*(tan(35)-tan(33)), 0.4*tan(33)), 1e-6)
	if got := entrytest.Shown(t, r, "eye_height"); got != "1.20 m" {
		t.Error("the eye's height is", got)
	}
	entrytest.Tells(t, r.Working, "rocket-height.working", "= 17.0 m × tan 33° = 17.0 m × 0.649 = 11.0 m.", "11.0 m + 1.20 m = 12.2 m above the ground")
	entrytest.Tells(t, r.Notes, "rocket-height.note_marks", "17.0 m from", "an eye 1.20 m above")
	entrytest.Tells(t, r.Notes, "rocket-height.note_care", "2.0° in the angle and 0.4 m in the distance")

	// The table of heights has 5° to 70° and the angle itself, from the station and
	// from 5, 10, 20 and 30 m further back.
	rows := r.Tables[0].Rows
	if len(rows) != 1+14+1 {
		t.Fatalf("%d rows", len(rows))
	}
	back := []float64{17, 22, 27, 37, 47}
	for i, d := range back {
		entrytest.Near(t, "distance", rows[0].Cells[i+1].Number, d, 1e-9)
	}
	for i, row := range rows[1:] {
		a := row.Cells[0].Number
		for n, d := range back {
			entrytest.Near(t, "height in the table", row.Cells[n+1].Number, d*tan(a)+1.2, 1e-6)
		}
		if row.Marked != (math.Abs(a-33) < 1e-9) {
			t.Errorf("%v°: marked is %v", a, row.Marked)
		}
		care := r.Tables[1].Rows[i]
		if care.Marked != row.Marked {
			t.Errorf("%v°: the second table is marked %v", a, care.Marked)
		}
		for n, want := range []float64{a, 17*tan(a) + 1.2, 17 * (tan(a+2) - tan(a)), 0.4 * tan(a), math.Hypot(17*(tan(a+2)-tan(a)), 0.4*tan(a))} {
			entrytest.Near(t, "what a mistake does", care.Cells[n].Number, want, 1e-6)
		}
	}
	if first, last := rows[1].Cells[0].Number, rows[len(rows)-1].Cells[0].Number; math.Abs(first-5) > 1e-9 || math.Abs(last-70) > 1e-9 {
		t.Errorf("the table runs from %v° to %v°", first, last)
	}

	// Above 75° the page says so.
	if entrytest.Says(scipy(t, "rocket-height", "angle=75", "baseline_m=10").Notes, "rocket-height.steep") {
		t.Error("75° is called steep")
	}
	steep := scipy(t, "rocket-height", "angle=75.5", "baseline_m=10")
	entrytest.Tells(t, steep.Notes, "rocket-height.steep", "At 76°", fmt.Sprintf("by %.1f m", 10*(tan(76.5)-tan(75.5))))
}

// Without an angle or a baseline the station is that of the zone, and the angle
// that of scipy's highest flight, 13.545 m, to a whole degree.
func TestUsualStation(t *testing.T) {
	r := scipy(t, "rocket-height", "field.margin_percent=60")
	entrytest.Near(t, "above the eye", entrytest.Fact(t, r, "above_eye").Number, 46*math.Tan(15*math.Pi/180), 1e-6) // atan(12.345/46) is 15.02°
	r = scipy(t, "rocket-height", "field.margin_percent=60", "baseline_m=20")
	entrytest.Near(t, "above the eye, from 20 m", entrytest.Fact(t, r, "above_eye").Number, 20*math.Tan(32*math.Pi/180), 1e-6) // 31.69°
	r = scipy(t, "rocket-height", "field.margin_percent=60", "angle=10")
	entrytest.Near(t, "above the eye at 10°", entrytest.Fact(t, r, "above_eye").Number, 46*math.Tan(10*math.Pi/180), 1e-6)
	// From 1 m it is seen at 85.4°, which is 85°; from 0.1 m below the eye it is not
	// below 1°.
	r = scipy(t, "rocket-height", "baseline_m=1")
	entrytest.Near(t, "from 1 m", entrytest.Fact(t, r, "above_eye").Number, math.Tan(85*math.Pi/180), 1e-6)
	r = scipy(t, "rocket-height", "baseline_m=1", "stock.launch_speed_m_s=60", "drag_coefficient=0", "field.wind_m_s=0")
	entrytest.Near(t, "from 1 m, very high", entrytest.Fact(t, r, "above_eye").Number, math.Tan(89*math.Pi/180), 1e-6)
	r = scipy(t, "rocket-height", "baseline_m=50", "stock.launch_speed_m_s=1")
	entrytest.Near(t, "lower than the eye", entrytest.Fact(t, r, "above_eye").Number, 50*math.Tan(math.Pi/180), 1e-6)

	entrytest.Near(t, "expected", entrytest.Fact(t, r, "expected").Number, 0.3+0.05, 0.01) // 1 m/s rises by 51 mm
	for i, want := range []float64{(13.54545 - 1.2) / math.Tan(math.Pi/3), (0.6*13.54545 - 1.2) / math.Tan(math.Pi/6)} {
		name := []string{"baseline_from", "baseline_to"}[i]
		entrytest.Near(t, name, entrytest.Fact(t, scipy(t, "rocket-height"), name).Number, want, 0.02)
	}
	// scipy: 15 m take 21.610 m/s.
	r = scipy(t, "rocket-height", "angle=45", "baseline_m=13.8")
	entrytest.Near(t, "launch speed for 15 m", entrytest.Fact(t, r, "launch_speed").Number, 21.61006753, 0.005)
	if got := entrytest.Shown(t, scipy(t, "rocket-height", "angle=85", "baseline_m=400"), "launch_speed"); !strings.HasPrefix(got, "more than ") {
		t.Errorf("a height of 4.6 km takes %s", got)
	}
}

// Two stations find the rocket that the test puts there: station 1 at 0, station 2
// at 64 m, the rocket 20 m along and 9 m aside, 31 m above the eyes.
func TestTwoStationsByHand(t *testing.T) {
	deg := 180 / math.Pi
	const along, aside, up, apart = 20.0, 9.0, 31.0, 64.0
	given := []string{
		"angle=" + format(math.Atan2(up, math.Hypot(along, aside))*deg), "bearing=" + format(math.Atan2(aside, along)*deg),
		"second_angle=" + format(math.Atan2(up, math.Hypot(apart-along, aside))*deg), "second_bearing=" + format(math.Atan2(aside, apart-along)*deg),
		"baseline_m=20",
	}
	r := scipy(t, "rocket-height", append(given, "apart_m=64")...)
	entrytest.Near(t, "height from both", entrytest.Fact(t, r, "two_stations").Number, 31+1.2, 1e-6)
	entrytest.Near(t, "disagreement", entrytest.Fact(t, r, "disagreement").Number, 0, 1e-6)
	if spread := entrytest.Fact(t, r, "two_stations_spread").Number; spread < 0.5 || spread > 3 {
		t.Errorf("one degree makes a doubt of %v m", spread) // h / sin 2a × 2° is 1.2 m for each
	}
	// Without apart_m the launcher is midway: 40 m instead of 64.
	r = scipy(t, "rocket-height", given...)
	entrytest.Near(t, "height from both, 40 m apart", entrytest.Fact(t, r, "two_stations").Number, 31*40.0/64+1.2, 1e-6)
	// The second station reads 10 % too high a tangent: 2 × 0.1 / 2.1 between them.
	given[2] = "second_angle=" + format(math.Atan2(1.1*up, math.Hypot(apart-along, aside))*deg)
	r = scipy(t, "rocket-height", append(given, "apart_m=64")...)
	entrytest.Near(t, "disagreement", entrytest.Fact(t, r, "disagreement").Number, 100*0.2/2.1, 1e-4)
	r = scipy(t, "rocket-height", "angle=40", "second_angle=42")
	if got := entrytest.Shown(t, r, "disagreement"); got != "needs bearings" {
		t.Error("with the launcher on the line they disagree by", got)
	}
	r = scipy(t, "rocket-height", "angle=40")
	for _, name := range []string{"two_stations", "two_stations_spread", "disagreement"} {
		if got := entrytest.Shown(t, r, name); got != "no second station" {
			t.Errorf("%s without a second station: %s", name, got)
		}
	}
}

// Without air a flight from the ground of t seconds rises to g t²/8.
func TestHeightFromTimeWithoutAir(t *testing.T) {
	r := scipy(t, "rocket-height", "flight_s=3.2", "time_off_s=0.3", "drag_coefficient=0", "pipe_end_m=0")
	entrytest.Near(t, "from time", entrytest.Fact(t, r, "from_time").Number, 9.80665*3.2*3.2/8, 0.005)
	entrytest.Near(t, "from time without air", entrytest.Fact(t, r, "from_time_no_air").Number, 9.80665*3.2*3.2/8, 1e-6)
	entrytest.Near(t, "its doubt", entrytest.Fact(t, r, "from_time_spread").Number, 9.80665*(3.5*3.5-3.2*3.2)/8, 0.005)
	// With air, scipy's flight of 3.314 s reaches 13.545 m.
	r = scipy(t, "rocket-height", "flight_s=3.314001")
	entrytest.Near(t, "from time with air", entrytest.Fact(t, r, "from_time").Number, 13.5454470303, 0.01)
	if got := entrytest.Shown(t, scipy(t, "rocket-height"), "from_time"); got != "no time given" {
		t.Error("without a time:", got)
	}
}

// The rows of testdata/reference/rocket-flights.csv with a wind along or none,
// through the placeholder, and what its chart draws of them.
func TestPathAgainstScipy(t *testing.T) {
	for _, row := range []struct {
		given                       []string
		apogee, reach, time, impact float64
		free, airy                  float64 // greatest heights: v² sin²/2g + pipe
	}{
		{[]string{"angle=75"}, 12.7017134984, 10.7846895047, 3.20501293943, 13.2765461698, 75, 20},
		{[]string{"angle=45"}, 7.3434697456, 22.1970032532, 2.41477303485, 12.0996546414, 45, 20},
		// 21 °C at sea level are 101 325 Pa / (287.053 J/kg K × 294.15 K) = 1.2 kg/m³.
		{[]string{"angle=60", "stock.launch_speed_m_s=25", "stock.rocket_mass_g=3", "drag_coefficient=0.8", "celsius=21", "tail_wind_m_s=5"}, 10.6246988655, 24.5518126951, 2.93323102485, 12.3470708017, 60, 25},
		{[]string{"angle=60", "stock.launch_speed_m_s=25", "stock.rocket_mass_g=3", "drag_coefficient=0.8", "celsius=21", "tail_wind_m_s=-5"}, 9.40650371066, 4.89235487527, 2.7269868629, 10.2674048458, 60, 25},
	} {
		r := scipy(t, "rocket-path", row.given...)
		sin, cos := math.Sincos(row.free * math.Pi / 180)
		free := 0.3 + math.Pow(row.airy*sin, 2)/(2*9.80665)
		entrytest.Near(t, "apogee", entrytest.Fact(t, r, "apogee").Number, row.apogee, 0.005)
		entrytest.Near(t, "reach", entrytest.Fact(t, r, "reach").Number, row.reach, 0.01)
		entrytest.Near(t, "time", entrytest.Fact(t, r, "flight_time").Number, row.time, 0.003)
		entrytest.Near(t, "impact", entrytest.Fact(t, r, "impact_speed").Number, row.impact, 0.01)
		entrytest.Near(t, "apogee without air", entrytest.Fact(t, r, "apogee_no_air").Number, free, 1e-4)
		up := row.airy * sin
		far := row.airy * cos * (up + math.Sqrt(up*up+2*9.80665*0.3)) / 9.80665
		entrytest.Near(t, "reach without air", entrytest.Fact(t, r, "reach_no_air").Number, far, 1e-3)
		entrytest.Near(t, "lost", entrytest.Fact(t, r, "lost").Number, 100*(free-row.apogee)/free, 0.05)

		d := r.Drawings[0]
		air, none := entrytest.Path(t, d, "curve"), entrytest.Path(t, d, "airless")
		metre := (none[len(none)-1].X - none[0].X) / far
		entrytest.Near(t, "landing on the chart", (air[len(air)-1].X-air[0].X)/metre, row.reach, 0.02)
		for name, c := range map[string]struct {
			points []drawing.Point
			top    float64
		}{"with air": {air, row.apogee}, "without air": {none, free}} {
			high, low := math.Inf(1), math.Inf(-1)
			for _, p := range c.points {
				high, low = math.Min(high, p.Y), math.Max(low, p.Y)
			}
			entrytest.Near(t, "top on the chart, "+name, (low-high)/metre, c.top, 0.08)
			if first, last := c.points[0].Y, c.points[len(c.points)-1].Y; first > last {
				t.Errorf("%s: the curve ends above its start", name)
			}
		}
	}
	r := scipy(t, "rocket-path", "angle=60", "stock.launch_speed_m_s=25", "stock.rocket_mass_g=3", "drag_coefficient=0.8", "celsius=21")
	entrytest.Near(t, "air", entrytest.Fact(t, r, "air_density").Number, 1.2, 1e-3)
	entrytest.Tells(t, r.Notes, "rocket-path.note", "coefficient of 0.80", "mass of 3.0 g")
	entrytest.Tells(t, r.Working, "rocket-path.working_free", "25.0 m/s × sin 60° = 21.65 m/s", "0.3 m + (21.65 m/s)² ÷ (2 × 9.807 m/s²) = 24.2 m")
	if got := entrytest.Texts(t, r, "ways", "way"); strings.Join(got, ", ") != "with air, without air" {
		t.Error(got)
	}
	// At 1000 m the pressure is 89 874.6 Pa (ISO 2533:1975): 1.0866 kg/m³ at 15 °C.
	r = scipy(t, "rocket-path", "school.elevation_m=1000")
	entrytest.Near(t, "air at 1000 m", entrytest.Fact(t, r, "air_density").Number, 89874.6/(287.05287*288.15), 2e-4)
}

// The wrap goes once round along the middle of the paper: π (pipe + play + paper).
// Paper of 120 g/m² is taken as 0.15 mm. Fins stand out as the size says up to a
// pipe of 20 mm, and in proportion to a thicker one.
func TestWrapByHand(t *testing.T) {
	for _, c := range []struct{ pipe, thicker float64 }{{18, 1}, {19.9, 1}, {20, 1}, {30, 1.5}, {21, 1.05}} {
		for size, m := range map[string][6]float64{"short": {160, 36, 46, 25, 32, 26}, "middle": {200, 45, 52, 28, 34, 28}, "long": {240, 54, 60, 32, 38, 32}} {
			r := reckon(t, "alder reach", "rocket-wrap", "2027-04-28", "size="+size, "stock.pipe_outside_mm="+format(c.pipe), "stock.pipe_play_mm=0.7", "stock.rocket_paper_g_m2=120")
			entrytest.Near(t, "wrap", entrytest.Fact(t, r, "wrap").Number, math.Pi*(c.pipe+0.7+0.15), 1e-6)
			entrytest.Near(t, "wrap and strip", entrytest.Fact(t, r, "wrap_width").Number, math.Pi*(c.pipe+0.7+0.15)+10, 1e-6)
			entrytest.Near(t, "inside", entrytest.Fact(t, r, "inside").Number, c.pipe+0.7, 1e-9)
			entrytest.Near(t, "body", entrytest.Fact(t, r, "body").Number, m[0], 1e-9)
			entrytest.Near(t, "length", entrytest.Fact(t, r, "length").Number, m[0]+m[1], 1e-9)
			base := (c.pipe + 0.7 + 0.3) / 2
			slant := math.Hypot(base, m[1])
			entrytest.Near(t, "slant", entrytest.Fact(t, r, "cone_slant").Number, slant, 1e-6)
			entrytest.Near(t, "sector", entrytest.Fact(t, r, "cone_angle").Number, 360*base/slant, 1e-6)
			entrytest.Tells(t, r.Working, "rocket-wrap.working_wrap", fmt.Sprintf("(%.1f mm + 0.7 mm + 0.15 mm) = %.1f mm", c.pipe, math.Pi*(c.pipe+0.85)))
			entrytest.Tells(t, r.Working, "rocket-wrap.working_slant", fmt.Sprintf("√((%.2f mm)² + (%.0f mm)²) = %.0f.", base, m[1], math.Floor(slant)))
			entrytest.Tells(t, r.Working, "rocket-wrap.working_sector", fmt.Sprintf("360° × %.2f mm ÷ %.0f.", base, math.Floor(slant)), fmt.Sprintf("mm = %.1f°", 360*base/slant))
			// The template's fin: its root runs down the tube, and its outer edge lies a
			// sweep further down, towards the open end.
			var tips, roots [][]drawing.Point
			for _, s := range r.Sheets {
				for _, shape := range entrytest.Roled(s.Drawing, "fin-tip") {
					tips = append(tips, shape.Points)
				}
				for _, shape := range entrytest.Roled(s.Drawing, "fin-root") {
					roots = append(roots, shape.Points)
				}
			}
			if len(tips) != 3 || len(roots) != 6 {
				t.Fatalf("%d tips and %d roots", len(tips), len(roots))
			}
			for i, tip := range tips {
				one, two := roots[2*i], roots[2*i+1]
				entrytest.Near(t, "root", entrytest.Apart(one[0], one[1]), m[2], 1e-6)
				entrytest.Near(t, "other root", entrytest.Apart(two[0], two[1]), m[2], 1e-6)
				entrytest.Near(t, "tip", entrytest.Apart(tip[0], tip[1]), m[3], 1e-6)
				entrytest.Near(t, "span", tip[0].X-one[0].X, m[4]*c.thicker, 1e-6)
				entrytest.Near(t, "other span", two[0].X-tip[0].X, m[4]*c.thicker, 1e-6)
				entrytest.Near(t, "sweep", tip[0].Y-one[0].Y, m[5]*c.thicker, 1e-6)
			}
		}
	}
}

// On the wrap the fins' lines stand at the open end, evenly round the tube, and
// the nose at the other end; the arrow rolls towards the strip for glue.
func TestWrapIsTheRightWayUp(t *testing.T) {
	for _, fins := range []int{3, 4, 6} {
		r := reckon(t, "alder reach", "rocket-wrap", "2027-04-28", fmt.Sprintf("fins=%d", fins))
		d := r.Sheets[0].Drawing
		wrap := entrytest.Path(t, d, "wrap")
		lines := entrytest.Roled(d, "fin-line")
		if len(lines) != fins {
			t.Fatalf("%d lines for %d fins", len(lines), fins)
		}
		round := entrytest.Fact(t, r, "wrap").Number
		for i, line := range lines {
			entrytest.Near(t, "foot of the line", line.Points[1].Y, wrap[2].Y, 1e-9)
			entrytest.Near(t, "length of the line", line.Points[1].Y-line.Points[0].Y, 52, 1e-9)
			if i > 0 {
				entrytest.Near(t, "from line to line", line.Points[0].X-lines[i-1].Points[0].X, round/float64(fins), 1e-9)
			}
		}
		// and on from the last to the first, once round
		entrytest.Near(t, "from the last to the first", lines[0].Points[0].X-lines[fins-1].Points[0].X+round, round/float64(fins), 1e-9)
		labels := entrytest.Labels(t, d)
		if top, foot := labels["top: the nose goes here"].Y, labels["bottom: open"].Y; !(top > wrap[0].Y && top < foot && foot < wrap[2].Y && foot > (wrap[0].Y+wrap[2].Y)/2) {
			t.Errorf("the nose is at %v, the open end at %v", top, foot)
		}
		for i := range fins {
			if _, ok := labels[fmt.Sprintf("fin %d", i+1)]; !ok {
				t.Errorf("no fin %d", i+1)
			}
		}
		overlap := entrytest.Path(t, d, "overlap")[0].X
		if strip := labels["glue: the other edge goes over this strip"]; strip.X < overlap || strip.X > wrap[1].X {
			t.Error("the strip for glue is not where its words are")
		}
		arrow := false
		for _, s := range entrytest.Roled(d, "mark") {
			if len(s.Points) == 3 && s.Points[1].X > s.Points[0].X && s.Points[1].X > s.Points[2].X && s.Points[1].X < overlap {
				arrow = true
			}
		}
		if !arrow {
			t.Error("no arrow rolls towards the strip")
		}
	}
}

// Both sides of what the wrap warns of: a play below 0.4 mm, and an air's push
// less than one diameter behind the balance (it tumbles) or more than five (it
// turns into the wind).
func TestWrapWarnings(t *testing.T) {
	for play, tight := range map[string]string{"0.3": "A play of 0.3 mm", "0.39": "A play of 0.39 mm, less than 0.4 mm, is tight:", "0.3999": "A play of 0.3999 mm, less than 0.4 mm, is tight:", "0.4": "", "0.41": "", "0.8": ""} {
		r := reckon(t, "alder reach", "rocket-wrap", "2027-04-28", "stock.pipe_play_mm="+play)
		if got := entrytest.Printed(t, r.Warnings, "rocket-wrap.tight"); !strings.HasPrefix(got, tight) || (tight == "") != (got == "") {
			t.Errorf("a play of %s mm: %q", play, got)
		}
	}
	seen, fine := map[string]bool{}, 0
	var rockets [][]string
	for span := 8; span <= 40; span++ {
		rockets = append(rockets, []string{fmt.Sprintf("fin_span_mm=%d", span)})
	}
	for body := 200; body <= 600; body += 10 {
		rockets = append(rockets, []string{fmt.Sprintf("body_mm=%d", body), "nose_mm=100", "tape_g=0", "fins=6", "fin_tip_mm=5", "fin_root_mm=60", "fin_sweep_mm=60", "fin_span_mm=60"})
	}
	for _, given := range rockets {
		r := reckon(t, "alder reach", "rocket-wrap", "2027-04-28", given...)
		balance, pressure := entrytest.Fact(t, r, "balance").Number, entrytest.Fact(t, r, "pressure").Number
		calibres := (pressure - balance) / (21.3 + 0.8 + 0.2)
		entrytest.Near(t, "diameters between", entrytest.Fact(t, r, "calibres").Number, calibres, 1e-6)
		printed := fmt.Sprintf("%.1f", calibres) // with more digits where these would stand on the limit
		if printed == "1.0" && calibres < 1 || printed == "5.0" && calibres > 5 {
			printed = fmt.Sprintf("%.2f", calibres)
			fine++
		}
		want := "flies straight"
		switch {
		case calibres < 1:
			want = "tumbles"
			entrytest.Tells(t, r.Warnings, "rocket-wrap.unstable", "only "+printed+" diameters")
		case calibres > 5:
			want = "turns into the wind"
		}
		if (want == "tumbles") != entrytest.Says(r.Warnings, "rocket-wrap.unstable") || entrytest.Shown(t, r, "stable") != want {
			t.Errorf("%.2f diameters: %s, %v", calibres, entrytest.Shown(t, r, "stable"), r.Warnings)
		}
		entrytest.Tells(t, r.Working, "rocket-wrap.working_balance", "mm) ÷ 22.3 mm = "+printed+" diameters")
		for _, step := range r.Working { // with as many digits as the quotient needs
			if step.Key == "rocket-wrap.working_balance" {
				entrytest.Near(t, "pressure in the working", step.With[0].Number, pressure, 1e-9)
				entrytest.Near(t, "balance in the working", step.With[1].Number, balance, 1e-9)
			}
		}
		if calibres > 0.9 && calibres < 1.1 || calibres > 4.75 && calibres < 5.25 {
			seen[want] = true
		}
	}
	if len(seen) != 3 || fine < 2 {
		t.Errorf("no spans near both bounds: %v, %d printed finer", seen, fine)
	}
}

// Pieces of a template do not lie on one another.
func TestTemplatePiecesKeepApart(t *testing.T) {
	for _, given := range [][]string{{"fins=6"}, {"fins=6", "school.paper=Letter", "size=long"}, {"fins=4", "stock.pipe_outside_mm=32"}} {
		r := reckon(t, "alder reach", "rocket-wrap", "2027-04-28", given...)
		for n, s := range r.Sheets {
			var covered []entrytest.Covered
			for _, shape := range s.Drawing.Shapes {
				if words := strings.Fields(shape.Role); shape.Anchor != "" || len(words) < 2 || words[0] != "cut" || words[1] == "cone-side" {
					continue
				}
				box := entrytest.Covered{Left: math.Inf(1), Top: math.Inf(1), Right: math.Inf(-1), Bottom: math.Inf(-1)}
				for _, p := range shape.Points {
					box = entrytest.Covered{Left: math.Min(box.Left, p.X), Top: math.Min(box.Top, p.Y), Right: math.Max(box.Right, p.X), Bottom: math.Max(box.Bottom, p.Y)}
				}
				for _, other := range covered {
					if box.Meets(other) {
						t.Errorf("%v: %s on sheet %d lies on another piece", given, shape.Role, n+1)
					}
				}
				covered = append(covered, box)
			}
		}
	}
}

// Lengths to cut, added up by hand: the tube less 10 mm to the nose, 40 mm for
// fins and fingers, and what goes into the joints.
func TestPartsByHand(t *testing.T) {
	r := reckon(t, "alder reach", "rocket-parts", "2027-04-28", "run_mm=900", "socket_mm=25", "neck_mm=50", "body_mm=220", "stock.pipe_outside_mm=24")
	for name, want := range map[string]float64{
		"pipe": 24, "upright": 220 - 10 + 40 + 25, "run": 900 + 25 + 50, "pipe_total": 275 + 975,
		"away": 900 + 330/2, "pipe_end": 250 + 25 + 12,
	} {
		entrytest.Near(t, name, entrytest.Fact(t, r, name).Number, want, 1e-9)
	}
	want := []string{"–", "120 mm", "975 mm", "–", "275 mm", "400 mm", "–", "100 mm"}
	if got := entrytest.Texts(t, r, "parts", "length"); strings.Join(got, " ") != strings.Join(want, " ") {
		t.Errorf("lengths %v, want %v", got, want)
	}
	if got := entrytest.Texts(t, r, "parts", "count"); strings.Join(got, " ") != "1 1 1 1 1 1 2 2" {
		t.Errorf("counts %v", got)
	}
	joints := strings.Join(entrytest.Texts(t, r, "parts", "joint"), "|")
	if !strings.Contains(joints, "the other 25 mm deep") || !strings.Contains(joints, "|25 mm deep in the elbow") {
		t.Error(joints)
	}
	entrytest.Tells(t, r.Working, "rocket-parts.working_upright", "= 220 mm - 10 mm + 40 mm + 25 mm = 275 mm")
	entrytest.Tells(t, r.Working, "rocket-parts.working_run", "= 900 mm + 25 mm + 50 mm = 975 mm")
	entrytest.Tells(t, r.Cautions, "caution.launcher", "never pumped up", "Never cap or block the pipe")
	if !entrytest.Says(r.Notes, "rocket-parts.note") {
		t.Error("nothing is said of cracked pipes")
	}
	// What keeps the pipe from tipping is out of the way of the rocket, which slides down
	// until its fins are 40 mm above the elbow.
	block := entrytest.Roled(r.Drawings[0], "block")
	if len(block) != 1 {
		t.Fatalf("%d blocks", len(block))
	}
	for _, fin := range entrytest.Roled(r.Drawings[0], "fin") {
		for _, corner := range fin.Points {
			if corner.Y >= block[0].Points[2].Y { // its upper edge
				t.Errorf("a fin at %v reaches down to the block at %v", corner, block[0].Points)
			}
		}
	}
	// Seen from the side the bottle lies on the ground on the left, and the rocket
	// stands over the pipe's upper end on the right.
	d := r.Drawings[0]
	bottle, ground := entrytest.Path(t, d, "bottle"), entrytest.Path(t, d, "ground")[0].Y
	low, left, right := math.Inf(-1), math.Inf(1), math.Inf(-1)
	for _, p := range bottle {
		low, left, right = max(low, p.Y), min(left, p.X), max(right, p.X)
	}
	entrytest.Near(t, "the bottle's underside", low, ground, 1e-6)
	body, nose := entrytest.Path(t, d, "rocket body"), entrytest.Path(t, d, "rocket nose")
	if body[0].X <= right || body[0].Y >= ground {
		t.Errorf("bottle %v, rocket %v, ground %v", bottle, body, ground)
	}
	if nose[2].Y >= nose[0].Y || math.Abs(nose[0].Y-body[2].Y) > 1e-9 || body[2].Y >= body[0].Y {
		t.Errorf("the nose points to %v from %v", nose[2], nose[0])
	}
	upright := entrytest.Path(t, d, "pipe upright")
	mm := (right - left) / 330
	entrytest.Near(t, "from the pipe's end to the nose", (upright[2].Y-body[2].Y)/mm, 10, 1e-6)
	entrytest.Near(t, "upright pipe in sight", (upright[0].Y-upright[2].Y)/mm, 250, 1e-6)
	// The foot comes from above the middle of the bottle and does not reach the sleeve.
	for _, p := range entrytest.Path(t, d, "foot") {
		if p.Y >= bottle[len(bottle)-2].Y || p.X < left || p.X > right {
			t.Errorf("the foot is at %v", p)
		}
	}
}

// The clinometer's figures stand at their angle and its string reaches beyond the
// scale; tens have the longest ticks, and the arc of good angles is 30° to 60°.
func TestClinometerScale(t *testing.T) {
	for _, radius := range []float64{60, 90, 150} {
		r := reckon(t, "alder reach", "rocket-clinometer", "2027-04-28", "radius_mm="+format(radius))
		entrytest.Near(t, "a degree", entrytest.Fact(t, r, "degree").Number, radius*math.Pi/180, 1e-9)
		if entrytest.Fact(t, r, "string").Number < radius+40 {
			t.Error("the string is too short for a weight below the scale")
		}
		d := r.Sheets[0].Drawing
		hole := entrytest.Path(t, d, "hole")[0]
		at := func(p drawing.Point) float64 { return math.Atan2(hole.X-p.X, p.Y-hole.Y) * 180 / math.Pi }
		labels := entrytest.Labels(t, d)
		for e := -10; e <= 80; e += 10 {
			p, ok := labels[fmt.Sprintf("%d°", e)]
			if !ok {
				t.Fatalf("no figure for %d°", e)
			}
			if math.Abs(at(p)-float64(e)) > 2.5 {
				t.Errorf("the figure of %d° stands at %.1f°", e, at(p))
			}
		}
		if p := labels["90°"]; p.X > labels["80°"].X || math.Abs(at(p)-90) > 8 {
			t.Errorf("the figure of 90° stands at %v", p)
		}
		e := -10
		for _, s := range entrytest.Roled(d, "tick") {
			long := entrytest.Apart(s.Points[0], s.Points[1])
			want, ten := 4.0, strings.HasSuffix(s.Role, "ten")
			switch {
			case e%10 == 0:
				want = 11
			case e%5 == 0:
				want = 7
			}
			if math.Abs(long-want) > 1e-9 || ten != (e%10 == 0) {
				t.Errorf("the tick of %d° is %v mm long, ten %v", e, long, ten)
			}
			e++
		}
		var best []drawing.Point
		for _, s := range entrytest.Roled(d, "mark") {
			if s.Role == "mark" && len(s.Points) == 2 {
				best = append(best, s.Points...)
			}
		}
		for i, want := range []float64{30, 60, 30, 30, 60, 60} {
			entrytest.Near(t, "arc of good angles", at(best[i]), want, 1e-6)
		}
		for _, s := range d.Shapes {
			if s.Closed {
				for _, p := range s.Points {
					if p.X < 0 || p.Y < 0 || p.X > d.Width || p.Y > d.Height {
						t.Errorf("the outline leaves the drawing at %v", p)
					}
				}
				if s.Points[2].X < hole.X+20 || s.Points[2].Y < hole.Y+radius {
					t.Errorf("the card ends at %v", s.Points[2])
				}
			}
		}
		if eye := labels["eye here"]; eye.X > hole.X-radius || labels["pinch the string, then read"].Y < hole.Y {
			t.Error("the eye is not at the end of the scale's 90°")
		}
		if len(entrytest.Roled(d, "rim")) != 1 || len(entrytest.Roled(d, "rim")[0].Points) != 101 {
			t.Error("the rim is not drawn from -10° to 90°")
		}
	}
}

// Of three groups each has its own line: what it changed, whether that was fair, and
// what it shows; rockets stand in the order of their numbers, the highest mean alone
// marked.
func TestLogGroupByGroup(t *testing.T) {
	text := "group,fins,nose_mm,stamp,angle_deg,baseline_m\n" +
		"A,10,,2,20,40\nA,3,,1,10,40\nA,10,,1,20.2,40\nA,3,,2,10.2,40\n" +
		"B,3,40,1,12,40\nB,4,50,1,13,40\n" +
		"C,5,,1,11,40\n"
	r := ReckonFlights(t, text)
	if got := strings.Join(entrytest.Texts(t, r, "groups", "group"), " "); got != "A B C" {
		t.Error(got)
	}
	if got := strings.Join(entrytest.Texts(t, r, "groups", "changed"), " | "); got != "fins | fins and nose | nothing" {
		t.Error(got)
	}
	fair, finding := entrytest.Texts(t, r, "groups", "fair"), entrytest.Texts(t, r, "groups", "finding")
	for i, want := range []string{"fair: only this was changed: fins", "not fair: more than one thing was changed, fins and nose", "nothing was changed"} {
		if fair[i] != want {
			t.Errorf("group %d: %s", i+1, fair[i])
		}
	}
	for i, want := range []string{"10 fins went higher than 3 fins, by ", "No flight was repeated", "There is only one rocket"} {
		if !strings.HasPrefix(finding[i], want) {
			t.Errorf("group %d: %s", i+1, finding[i])
		}
	}
	if !entrytest.Says(r.Notes, "rocket-log.note_groups") || !entrytest.Says(r.Notes, "rocket-log.note_doubt") {
		t.Error("nothing is said of groups and doubts")
	}
	rockets := entrytest.Texts(t, r, "rockets", "rocket")
	if got := strings.Join(rockets, ", "); got != "3 fins, 4 fins, 5 fins, 10 fins" {
		t.Error(got)
	}
	tan := func(deg float64) float64 { return math.Tan(deg * math.Pi / 180) }
	means, spreads := entrytest.Cells(t, r, "rockets", "mean"), entrytest.Cells(t, r, "rockets", "spread")
	entrytest.Near(t, "mean of 3 fins", means[0].Number, 40*(tan(10)+tan(10.2)+tan(12))/3+1.35, 1e-6)
	entrytest.Near(t, "spread of 3 fins", spreads[0].Number, 40*(tan(12)-tan(10)), 1e-6)
	if got := entrytest.Written(t, spreads[1]); got != "not repeated" {
		t.Error("one flight is spread by", got)
	}
	for i, row := range r.Tables[0].Rows {
		if row.Marked != (i == 3) {
			t.Errorf("%s is marked: %v", rockets[i], row.Marked)
		}
	}
	if got := strings.Join(entrytest.Texts(t, r, "rockets", "stamps"), " | "); got != "1, 2 | 1 | 1 | 1, 2" {
		t.Error(got)
	}
	if got := strings.Join(entrytest.Texts(t, r, "flights", "flight"), " "); got != "1 2 3 4 5 6 7" {
		t.Error(got)
	}
	if got := entrytest.Texts(t, r, "flights", "rocket"); got[4] != "3 fins and nose 40 mm" || got[0] != "10 fins" {
		t.Error(got)
	}
	entrytest.Near(t, "difference", entrytest.Fact(t, r, "difference").Number, 40*(tan(20)+tan(20.2))/2+1.35-means[0].Number, 1e-6)
	if got := entrytest.Shown(t, r, "best"); got != "10 fins" {
		t.Error("the best is", got)
	}
	// One group, one rocket: no line is marked, and no table of groups stands there.
	one := ReckonFlights(t, "group,angle_deg\nA,12\nA,13\n")
	if len(one.Tables) != 2 || one.Tables[0].Rows[0].Marked || entrytest.Texts(t, one, "rockets", "rocket")[0] != "rocket" {
		t.Error("one rocket is compared with itself")
	}
	// Compared by the nose where that is asked for.
	by, err := tryFlights(t, text, form.Values{"by": "nose_mm"})
	if err != nil {
		t.Fatal(err)
	}
	if got := strings.Join(entrytest.Texts(t, by, "rockets", "rocket"), ", "); got != "rocket, nose 40 mm, nose 50 mm" {
		t.Error(got)
	}
	// Dots of one rocket stand beside each other, higher flights above lower ones.
	dots := entrytest.Roled(r.Drawings[0], "mark")
	if len(dots) != 7 {
		t.Fatalf("%d dots", len(dots))
	}
	for i, a := range dots {
		for _, b := range dots[:i] {
			if entrytest.Apart(a.Points[0], b.Points[0]) < 0.5 {
				t.Error("dots lie on each other")
			}
		}
	}
	labels := entrytest.Labels(t, r.Drawings[0])
	if three, ten := labels["3 fins"], labels["10 fins"]; three.X >= ten.X {
		t.Errorf("3 fins stand at %v, 10 at %v", three, ten)
	}
	lowest, highest := dots[0].Points[0], dots[0].Points[0]
	for _, s := range dots {
		if s.Points[0].Y > lowest.Y {
			lowest = s.Points[0]
		}
		if s.Points[0].Y < highest.Y {
			highest = s.Points[0]
		}
	}
	if math.Abs(lowest.X-labels["3 fins"].X) > 20 || math.Abs(highest.X-labels["10 fins"].X) > 20 {
		t.Errorf("the lowest flight is drawn at %v, the highest at %v", lowest, highest)
	}
}
