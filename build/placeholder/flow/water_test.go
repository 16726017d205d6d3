package flow_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"noonbook/build/drawing"
	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/typeset"
)

// The bottle of the lesson, 90 mm wide with a hole of 2 mm, filled to 180 mm, by pocket
// calculator: dry after T = 2025 × √(0.36 ÷ 9.80665) ÷ 0.61 = 636.04 s, and the marks at
// 180 (1 − t/T)². scipy (testdata/reference/flow-runs.csv) has 376.379 s for the run.
func TestWaterClock(t *testing.T) {
	r := reckon(t, "water-clock")
	entrytest.Near(t, "run", fact(t, r, "run"), 376.379, 0.01)
	entrytest.Near(t, "last", fact(t, r, "last"), 30, 1e-9)
	entrytest.Near(t, "step", fact(t, r, "step"), 1, 1e-9)
	heights := entrytest.Column(t, r, "height")
	if len(heights) != 7 {
		t.Fatalf("%d marks", len(heights))
	}
	for i, h := range heights {
		want := 180 * math.Pow(1-60*float64(i)/636.04, 2)
		entrytest.Near(t, fmt.Sprint("mark ", i), h, want, 0.01)
		entrytest.Near(t, fmt.Sprint("below the start ", i), entrytest.Column(t, r, "below_start")[i], 180-want, 0.01)
		if i > 0 {
			entrytest.Near(t, fmt.Sprint("gap ", i), entrytest.Column(t, r, "gap")[i], heights[i-1]-h, 1e-9)
		}
	}
	entrytest.Near(t, "first gap", fact(t, r, "first_gap"), 32.36, 0.01)
	entrytest.Near(t, "last gap", fact(t, r, "last_gap"), heights[5]-heights[6], 1e-9)
	// 0.61 × π mm² × √(2 × 9.80665 × 0.18) m/s, and √6 times less at 30 mm; π/4 × 81 cm² × 15 cm
	entrytest.Near(t, "flow at the start", fact(t, r, "flow_start"), 216.04, 0.05)
	entrytest.Near(t, "flow at the end", fact(t, r, "flow_end"), 216.04/math.Sqrt(6), 0.05)
	entrytest.Near(t, "water", fact(t, r, "water"), 954.26, 0.01)
	// An hour has 3600 ÷ 376.379 = 9.565 fillings, and wants √9.565 times the width.
	if got := entrytest.Lines(t, []say.Phrase{r.Tables[1].Title}); got != "After an hour, filled 9.6 times" {
		t.Errorf("the title is %q", got)
	}
	entrytest.Near(t, "width for an hour", fact(t, r, "hour_width"), 90*math.Sqrt(9.565), 0.05)
	// 150 mm hold 4.636 steps of 32.36 mm: a run shows 278.1 s, and an hour 44.3 min.
	entrytest.Near(t, "copied", fact(t, r, "copied"), (278.1/376.379-1)*3600, 3)
	entrytest.Near(t, "hole a tenth wider", fact(t, r, "hole_tenth"), (2.1*2.1/4-1)*3600, 1)
	for name, want := range map[string]string{"copied": "16 min slow", "hole_tenth": "6 min fast", "reckoned": "no time was measured", "run": "6 min 16 s"} {
		if got := entrytest.Shown(t, r, name); got != want {
			t.Errorf("%s is %q, want %q", name, got, want)
		}
	}
	if got := strings.Join(entrytest.TextsOf(t, r, "errors", "off"), ", "); strings.ReplaceAll(got, "\u00a0", " ") != "16 min slow, right to the minute, 6 min fast" {
		t.Errorf("after an hour clocks are %s", got)
	}
	if len(r.Warnings) > 0 {
		t.Errorf("it warns %v", r.Warnings)
	}
}

// A clock that was timed: from 160 mm to 40 mm in 4 min it passes 122.5, 90 and 62.5 mm,
// whatever the bottle and the hole. If the formula had said 5 min the clock would show 5
// where 4 are over.
func TestTimedWaterClock(t *testing.T) {
	for _, hole := range []string{"hole_mm=1.5", "hole_mm=2", "bottle_mm=70"} {
		r := reckon(t, "water-clock", "fill_mm=160", "last_mm=40", "timed_s=240", hole)
		heights := entrytest.Column(t, r, "height")
		for i, want := range []float64{160, 122.5, 90, 62.5, 40} {
			if 2*i < len(heights) {
				entrytest.Near(t, hole+", mark", heights[2*i], want, 1e-6)
			}
		}
		if len(heights) != 9 || fact(t, r, "step") != 0.5 {
			t.Errorf("%s: %d marks every %v min", hole, len(heights), fact(t, r, "step"))
		}
		if !entrytest.Says(r.Notes, "water-clock.note_timed") || entrytest.Says(r.Notes, "water-clock.note_reckoned") {
			t.Errorf("%s: it does not say that the marks are timed", hole)
		}
	}
	plain := reckon(t, "water-clock", "fill_mm=160", "last_mm=40")
	formula := fact(t, plain, "run")
	r := reckon(t, "water-clock", "fill_mm=160", "last_mm=40", "timed_s=240")
	entrytest.Near(t, "coefficient", fact(t, r, "coefficient"), 0.61*formula/240, 1e-6)
	entrytest.Near(t, "reckoned", fact(t, r, "reckoned"), (formula/240-1)*3600, 1e-3)
	if got := entrytest.Shown(t, r, "reckoned"); !strings.HasSuffix(got, "fast") {
		t.Errorf("marks for %.0f s on a run of 240 s are %s", formula, got)
	}
}

// A hole where a drop can carry 14.9 mm of water lets its clock end at 30 mm; one of 1 mm
// carries twice as much.
func TestWhereWaterClocksEnd(t *testing.T) {
	for hole, want := range map[string]float64{"1": 60, "2": 30, "3": 20, "5": 15} {
		entrytest.Near(t, hole+" mm", fact(t, reckon(t, "water-clock", "bottle_mm=150", "hole_mm="+hole), "last"), want, 1e-9)
	}
	r := reckon(t, "water-clock", "last_mm=20")
	entrytest.Tells(t, r.Warnings, "water-clock.warn_low", "only 20 mm above the hole", "Below 30 mm")
	r = reckon(t, "water-clock", "hole_mm=5")
	entrytest.Tells(t, r.Warnings, "water-clock.warn_short", "runs for 1 min 12 s only")
	r = reckon(t, "water-clock", "timed_s=1000")
	entrytest.Tells(t, r.Warnings, "water-clock.warn_misread", "0.23 of the hole counts", "from 0.5 to 1.0")
	if r = reckon(t, "water-clock", "timed_s=350"); len(r.Warnings) > 0 {
		t.Errorf("a usual time is doubted: %v", r.Warnings)
	}
}

// The strip is printed at true size: each mark is as far below the start as the table says,
// on both papers, and so is the hole.
func TestStripOfMarks(t *testing.T) {
	for _, paper := range []string{"Letter", "A4"} {
		r := reckon(t, "water-clock", "school.paper="+paper)
		if len(r.Sheets) != 1 {
			t.Fatalf("%s: %d sheets", paper, len(r.Sheets))
		}
		e, _ := entry.Find(entries(), "water-clock")
		values, _ := entrytest.Pairs(e, []string{"school.paper=" + paper})
		strips := e.OnSheet(e.Complete(entrytest.Settings(t, "alder reach"), values, entrytest.Day(t, "2027-04-20")))
		below := entrytest.Column(t, r, "below_start")
		var marks, holes []float64
		start := math.Inf(1)
		for _, s := range r.Sheets[0].Drawing.Shapes {
			switch {
			case strings.HasSuffix(s.Role, "hole-line"):
				holes = append(holes, s.Points[0].X)
			case strings.HasSuffix(s.Role, "mark"):
				marks = append(marks, s.Points[0].X)
				start = min(start, s.Points[0].X)
			}
		}
		if strips != 5 || len(holes) != strips || len(marks) != strips*len(below) {
			t.Fatalf("%s: %d strips, %d holes, %d marks", paper, strips, len(holes), len(marks))
		}
		for i, x := range marks {
			entrytest.Near(t, paper+" mark", x-start, below[i%len(below)], 1e-9)
		}
		for _, x := range holes {
			entrytest.Near(t, paper+" hole", x-start, 180, 1e-9)
		}
	}
}

// Every fill that is allowed goes on one sheet of either paper.
func TestLongestStripFits(t *testing.T) {
	for _, paper := range []string{"Letter", "A4"} {
		r := reckon(t, "water-clock", "fill_mm=240", "school.paper="+paper)
		if len(r.Sheets) != 1 || r.Sheets[0].Rows*r.Sheets[0].Columns != 1 {
			t.Errorf("%s: %d sheets", paper, len(r.Sheets))
		}
	}
}

// The picture is to scale: marks on the bottle are spaced like those of the table, and the
// jet lands where a fall over 25 mm takes it, 2 √(h y) away.
func TestBottleIsToScale(t *testing.T) {
	r := reckon(t, "water-clock")
	var marks []float64
	var jets [][]drawing.Point
	for _, s := range r.Drawings[0].Shapes {
		switch s.Role {
		case "ink mark":
			marks = append(marks, s.Points[0].Y)
		case "accent jet":
			jets = append(jets, s.Points)
		}
	}
	below := entrytest.Column(t, r, "below_start")
	scale := (marks[6] - marks[0]) / below[6]
	for i := range marks {
		entrytest.Near(t, "mark on the picture", (marks[i]-marks[0])/scale, below[i], 1e-6)
	}
	if len(jets) != 2 {
		t.Fatalf("%d jets", len(jets))
	}
	for i, head := range []float64{180, 30} {
		first, last := jets[i][0], jets[i][len(jets[i])-1]
		entrytest.Near(t, "fall", (last.Y-first.Y)/scale, 25, 1e-6)
		entrytest.Near(t, "reach", (last.X-first.X)/scale, 2*math.Sqrt(head*25), 1e-6)
	}
}

func TestWaterClocksRefused(t *testing.T) {
	for want, given := range map[string][]string{
		"the last mark is 60 mm above a hole of 1 mm, and the water starts at 50 mm": {"hole_mm=1", "fill_mm=50"},
		"step_min is 0.75; want whole or half minutes":                               {"step_min=0.75"},
		"step_min is 7, and the water runs for 6.3 min only":                         {"step_min=7"},
		"want at most 100 marks":                                                     {"bottle_mm=400", "hole_mm=1", "step_min=0.5"},
		"the water runs for 9 s only":                                                {"hole_mm=10", "fill_mm=60"},
		"hole_mm":                                                                    {"hole_mm=0.5"},
		"timed_s":                                                                    {"timed_s=0"},
		"the last mark is 100 mm above a hole":                                       {"fill_mm=100", "last_mm=100"},
	} {
		if got := entrytest.Complaint(t, entries(), "water-clock", "2027-04-20", given...); !strings.Contains(got, want) {
			t.Errorf("%v: %q, want %q", given, got, want)
		}
	}
}

// Where lengths are in inches the hole stays in millimetres, as drills are sold, and the
// marks are read off a ruler.
func TestWaterClockInInches(t *testing.T) {
	words, err := typeset.Language("en", true)
	if err != nil {
		t.Fatal(err)
	}
	r := reckon(t, "water-clock")
	title := strings.ReplaceAll(words.Line(r.Tables[0].Title), "\u00a0", " ")
	if !strings.Contains(title, "3 9/16 in") || !strings.Contains(title, "hole of 2 mm") {
		t.Errorf("the title is %q", title)
	}
	i := slices.IndexFunc(r.Tables[0].Columns, func(c result.Column) bool { return c.Name == "height" })
	if got := strings.ReplaceAll(words.Text(r.Tables[0].Rows[1].Cells[i]), "\u00a0", " "); got != "5 13/16 in" { // 147.64 mm
		t.Errorf("the first mark is at %s", got)
	}
}
