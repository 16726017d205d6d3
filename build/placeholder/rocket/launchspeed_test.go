package rocket_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"noonbook/build/placeholder/entrytest"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/typeset"
)

// flown evaluates a placeholder with scipy's rocket and flights on record.
func flown(t *testing.T, name, records string, more ...string) result.Result {
	t.Helper()
	given := slices.Clone(scipys)
	return entrytest.ReckonLog(t, entries(), "alder reach", name, records, append(given, more...)...)
}

// angleFor is the angle, to 1e-9°, at which a station 41 m away reads so much that the
// height and its doubt (a degree and 0.1 m, as roots of squares) come to most.
func angleFor(most float64) float64 {
	tan := func(deg float64) float64 { return math.Tan(deg * math.Pi / 180) }
	low, high := 1.0, 60.0
	for high-low > 1e-9 {
		a := (low + high) / 2
		if 41*tan(a)+1.2+math.Hypot(41*(tan(a+1)-tan(a)), 0.1*tan(a)) < most {
			low = a
		} else {
			high = a
		}
	}
	return low
}

// The speed of the fastest flight on record, its doubt on top, against scipy's
// flights: 15 m straight up take 21.610 m/s and a flight of 3 s 17.360 m/s
// (rocket-searches.csv), 12.70171 m from a pipe at 75° take 20 m/s (rocket-flights.csv;
// straight up it were less). It is rounded up to 0.1 m/s, and counts where it is more
// than the 20 m/s that are set.
func TestLaunchSpeedOfTheRecord(t *testing.T) {
	fifteen, leaning, twelve := angleFor(15), angleFor(12.70171), angleFor(12)
	for name, c := range map[string]struct {
		records     string
		flown, used float64
		note        string
	}{
		"straight up":     {fmt.Sprintf("angle_deg,baseline_m\n9,41\n%.9f,41\n12,41\n", fifteen), 21.7, 21.7, "note_faster"},
		"from a pipe":     {fmt.Sprintf("angle_deg,baseline_m,pipe_deg\n%.9f,41,75\n", leaning), 20, 20, "note_slower"},
		"pipe that leans": {fmt.Sprintf("angle_deg,baseline_m,pipe_deg\n%.9f,41,75\n%.9f,41,\n", leaning, fifteen), 21.7, 21.7, "note_faster"},
		"by the time":     {"flight_s\n2.1\n2.8\n2.5\n", 17.4, 20, "note_slower"}, // and 0.2 s
		"no flights":      {"angle_deg,baseline_m\n", 0, 20, "note_unit"},
	} {
		r := flown(t, "rocket-zone", c.records, "field.margin_percent=30")
		entrytest.Near(t, name+": speed on record", entrytest.Fact(t, r, "speed_flown").Number, c.flown, 1e-9)
		entrytest.Near(t, name+": speed that counts", entrytest.Fact(t, r, "speed").Number, c.used, 1e-9)
		entrytest.Near(t, name+": speed of unit.toml", entrytest.Fact(t, r, "speed_set").Number, 20, 1e-9)
		if from := entrytest.Shown(t, r, "speed_from"); (from == "the class’s flights") != (c.note == "note_faster") {
			t.Errorf("%s: the speed is from %s", name, from)
		}
		if !entrytest.Says(r.Notes, "rocket-zone."+c.note) || len(r.Warnings) > 0 && entrytest.Says(r.Warnings, "rocket-zone.misread") {
			t.Errorf("%s: %s is not said", name, c.note)
		}
		// The zone is that of the speed that counts: v/g √(v² + 2 g h).
		free := c.used / 9.80665 * math.Sqrt(c.used*c.used+2*9.80665*0.3)
		entrytest.Near(t, name+": clear zone", entrytest.Fact(t, r, "clear").Number, math.Ceil(free), 1e-9)
		path := flown(t, "rocket-path", c.records)
		entrytest.Near(t, name+": speed of rocket-path", entrytest.Fact(t, path, "speed").Number, c.used, 1e-9)
		if entrytest.Says(path.Notes, "rocket-zone.note_faster") != (c.note == "note_faster") {
			t.Errorf("%s: rocket-path says %v", name, path.Notes)
		}
		height := flown(t, "rocket-height", c.records, "field.margin_percent=30")
		entrytest.Near(t, name+": highest and expected", entrytest.Fact(t, height, "expected").Number, entrytest.Fact(t, r, "highest").Number, 1e-9)
		unit := flown(t, "rocket-zone", c.records, "field.margin_percent=30", "speed_from=unit")
		entrytest.Near(t, name+": speed of unit.toml alone", entrytest.Fact(t, unit, "speed").Number, 20, 1e-9)
	}
	r := flown(t, "rocket-zone", fmt.Sprintf("angle_deg,baseline_m\n9,41\n%.9f,41\n12,41\n", fifteen))
	entrytest.Tells(t, r.Notes, "rocket-zone.note_faster", "in line 3 of log.csv", "14.2 m high, give or take 0.8 m", "at 21.7 m/s", "the 20.0 m/s of unit.toml")
	r = flown(t, "rocket-zone", fmt.Sprintf("angle_deg,baseline_m\n9,41\n%.9f,41\n", twelve))
	entrytest.Tells(t, r.Notes, "rocket-zone.note_slower", "20.0 m/s, is from unit.toml", "in line 3 of log.csv", "11.2 m high, give or take 0.8 m", "never make the zone smaller")
}

// A height that no launch reaches is a misreading: it is named and does not count,
// and the flights below it do.
func TestMisreadFlightsDoNotCount(t *testing.T) {
	r := flown(t, "rocket-zone", fmt.Sprintf("angle_deg,baseline_m\n80,41\n%.9f,41\n89,41\n", angleFor(15)))
	entrytest.Near(t, "speed", entrytest.Fact(t, r, "speed").Number, 21.7, 1e-9)
	var lines []string
	for _, w := range r.Warnings {
		if w.Key == "rocket-zone.misread" {
			lines = append(lines, entrytest.Printed(t, r.Warnings[len(lines):len(lines)+1], w.Key))
		}
	}
	if len(lines) != 2 || !strings.HasPrefix(lines[0], "Line 2 of log.csv") || !strings.HasPrefix(lines[1], "Line 4 of log.csv") || !strings.Contains(lines[0], "100 m/s") {
		t.Errorf("the page says %q", lines)
	}
	_, err := entrytest.TryLog(t, entries(), "alder reach", "rocket-zone", "angle_deg,baseline_m\n12,41\n,41\n")
	if err == nil || !strings.Contains(err.Error(), "log.csv, line 3: a flight needs") {
		t.Errorf("a flight without a reading: %v", err)
	}
}

// A flight without a baseline was read from the station of the speed that is set, in
// rocket-log as in rocket-zone: 44 m for the zone of 42 m. The station that its own
// speed would ask for does not come back into its height.
func TestFlightWithoutABaseline(t *testing.T) {
	tan := func(deg float64) float64 { return math.Tan(deg * math.Pi / 180) }
	log := flown(t, "rocket-log", "angle_deg\n20\n", "field.margin_percent=30")
	entrytest.Near(t, "height", entrytest.Cells(t, log, "flights", "height")[0].Number, 44*tan(20)+1.2, 1e-6)
	without, with := flown(t, "rocket-zone", "angle_deg\n20\n", "field.margin_percent=30"), flown(t, "rocket-zone", "angle_deg,baseline_m\n20,44\n", "field.margin_percent=30")
	if a, b := entrytest.Fact(t, without, "speed").Number, entrytest.Fact(t, with, "speed").Number; a != b || a <= 22 {
		t.Errorf("without a baseline the launch was at %v m/s, from 44 m at %v", a, b)
	}
	if !entrytest.Says(without.Notes, "rocket-zone.note_unplaced") || entrytest.Says(with.Notes, "rocket-zone.note_unplaced") {
		t.Error("the missing baseline is not spoken of, or one that is there is missed")
	}
	if entrytest.Fact(t, without, "station").Number <= 44 {
		t.Error("the faster launcher has no larger zone")
	}
}

// In feet a distance to keep is rounded up: 42 m are 137.80 ft, 44 m are 144.36 ft,
// 46 m are 150.92 ft, 27.265 m are 89.45 ft.
func TestZoneInFeet(t *testing.T) {
	words, err := typeset.Language("en", true)
	if err != nil {
		t.Fatal(err)
	}
	plain := strings.NewReplacer("\u00a0", " ")
	r := scipy(t, "rocket-zone", "field.margin_percent=30")
	for name, want := range map[string]string{"clear": "138 ft", "station": "145 ft"} {
		if got := plain.Replace(words.Text(entrytest.Fact(t, r, name))); got != want {
			t.Errorf("%s is %s, want %s", name, got, want)
		}
	}
	r = scipy(t, "rocket-zone", "field.margin_percent=60", "class.pupils=27")
	var said []string
	for _, p := range slices.Concat(r.Cautions, r.Notes, []say.Phrase{r.Drawings[0].Title, r.Drawings[0].Description}) {
		said = append(said, words.Line(p))
	}
	for _, s := range r.Drawings[0].Shapes {
		if s.Anchor != "" {
			said = append(said, words.Text(s.Text))
		}
	}
	for _, row := range r.Tables[0].Rows {
		said = append(said, words.Text(row.Cells[2]))
	}
	height := scipy(t, "rocket-height", "field.margin_percent=60")
	said = append(said, words.Line(height.Notes[0]), words.Text(height.Tables[0].Rows[0].Cells[1]))
	text := plain.Replace(strings.Join(said, "\n"))
	for want, times := range map[string]int{
		"within 145 ft of the launcher": 1, "clear zone, 145 ft": 8, "zone of 145 ft": 2, "farthest landing, 90 ft": 2,
		"145 ft or more from the launcher": 6, "151 ft from the launcher": 5, "151 ft away": 1, "144 ft": 0, "150 ft": 0, "89 ft": 0,
	} {
		if got := strings.Count(text, want); got != times {
			t.Errorf("%q is said %d times, not %d, in\n%s", want, got, times, text)
		}
	}
}
