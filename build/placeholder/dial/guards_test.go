package dial_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/say"
)

// Each kind of dial comes with its own advice, and a wall's dial is not told to lie
// level. Where a face cannot be read the page says so.
func TestAdviceForEachKind(t *testing.T) {
	for kind, words := range map[string]string{"level": "Lay the plate level", "wall": "Hang the plate upright", "equatorial": "Push the rod square"} {
		r := reckon(t, "alder reach", "dial-face", "2027-04-20", "kind="+kind)
		told := entrytest.Lines(t, r.Notes)
		for _, other := range []string{"Lay the plate level", "Hang the plate upright", "Push the rod square"} {
			if got := strings.Contains(told, other); got != (other == words) {
				t.Errorf("%s: %q is said: %v", kind, other, got)
			}
		}
		// A wall is lit about noon where it faces the Sun's noon side.
		if kind == "wall" && !strings.Contains(told, "a wall that faces due south (below the equator due north)") {
			t.Errorf("the wall is to face: %s", told)
		}
		if len(r.Warnings) > 0 {
			t.Errorf("%s at 46°: %s", kind, entrytest.Lines(t, r.Warnings))
		}
	}
	// tan X = sin φ tan 15°; a wall has the colatitude for φ.
	first := math.Atan(math.Sin(4*degree)*math.Tan(15*degree)) / degree
	entrytest.Tells(t, reckon(t, "equator", "dial-face", "2027-04-20", "school.latitude=4", "kind=level").Warnings, "dial-face.unreadable", "level dial", fmt.Sprintf("only %.1f° apart", first))
	entrytest.Tells(t, reckon(t, "arctic", "dial-gnomon", "2027-04-20", "school.latitude=86", "kind=wall").Warnings, "dial-face.unreadable", "dial for a wall", fmt.Sprintf("only %.1f° apart", first))
}

// Roman figures are those of the same hours, and the meridian is drawn besides
// where the lines are those of the clock.
func TestRomanFigures(t *testing.T) {
	arabic := entrytest.Labels(t, reckon(t, "alder reach", "dial-face", "2027-04-20").Sheets[0].Drawing)
	roman := entrytest.Labels(t, reckon(t, "alder reach", "dial-face", "2027-04-20", "figures=roman").Sheets[0].Drawing)
	for hour, figure := range map[string]string{"12": "XII", "13": "I", "14": "II", "15": "III", "16": "IV", "9": "IX", "10": "X", "11": "XI"} {
		if a, b := arabic[hour], roman[figure]; a.X == 0 || math.Hypot(a.X-b.X, a.Y-b.Y) > 1e-9 {
			t.Errorf("%s stands at %v, %s at %v", hour, a, figure, b)
		}
	}
	if n := len(entrytest.Roled(reckon(t, "alder reach", "dial-face", "2027-04-20").Sheets[0].Drawing, "meridian")); n != 0 {
		t.Errorf("%d meridians beside a noon line", n)
	}
}

// The worst of the weeks is the largest of the table, on its day, whichever side it
// lies on.
func TestWorstOfTheWeeks(t *testing.T) {
	for _, marked := range []string{"2027-02-11", "2027-05-14", "2027-09-01"} {
		r := reckon(t, "line north", "dial-drift", marked, "marked="+marked, "weeks=20")
		fast, dates := entrytest.Cells(t, r, "weeks", "fast"), entrytest.Cells(t, r, "weeks", "date")
		worst, on := 0.0, ""
		for i, v := range fast {
			if math.Abs(v.Number) > math.Abs(worst) {
				worst, on = v.Number, dates[i].Time.Format(time.DateOnly)
			}
		}
		entrytest.Near(t, marked+": worst", entrytest.Fact(t, r, "worst").Number, worst, 1e-9)
		if got := entrytest.Fact(t, r, "worst_on").Time.Format(time.DateOnly); got != on {
			t.Errorf("%s: worst on %s, by the table on %s", marked, got, on)
		}
		if len(fast) != 21 {
			t.Errorf("%d rows", len(fast))
		}
		for i := 1; i < len(dates); i++ {
			if dates[i].Time.Sub(dates[i-1].Time) != 7*24*time.Hour {
				t.Error("rows are not weeks apart")
			}
		}
	}
	// From 11 February to 14 May the Sun gets ahead by 17.9 minutes (erfa): fast.
	r := reckon(t, "line north", "dial-drift", "2027-05-14", "marked=2027-02-11", "accuracy_min=18.5")
	if got := entrytest.Shown(t, r, "mark_again"); strings.HasPrefix(got, "2027-05") {
		t.Error("18 minutes are more than 18.5:", got)
	}
	entrytest.Tells(t, r.Working, "dial-drift.working", "From 11 February 2027 to 14 May 2027", "changed by +17 min", "clocks’ part is 0 min", "sum: (+17 min", "+ (0 min) = +17 min")
	// Marks that are made again fall on the first day that is past the accuracy.
	for _, limit := range []float64{3, 8, 14} {
		again := entrytest.Fact(t, reckon(t, "line north", "dial-drift", "2027-02-11", "marked=2027-02-11", fmt.Sprint("accuracy_min=", limit)), "mark_again").Time
		off := func(d time.Time) float64 {
			v := entrytest.Fact(t, reckon(t, "line north", "dial-drift", d.Format(time.DateOnly), "marked=2027-02-11"), "fast").Number
			return math.Abs(v) / 60
		}
		if off(again) <= limit || off(again.AddDate(0, 0, -1)) > limit {
			t.Errorf("marks that may be %v min off are made again on %s, %v min off and %v the day before", limit, again.Format(time.DateOnly), off(again), off(again.AddDate(0, 0, -1)))
		}
	}
	// The chart runs up where the marks run fast.
	d := reckon(t, "line north", "dial-drift", "2027-02-11", "marked=2027-02-11").Drawings[0]
	curve := entrytest.Path(t, d, "curve")
	if curve[22].Y >= curve[0].Y || curve[22].X <= curve[0].X { // 13 weeks later
		t.Errorf("after 13 weeks the curve is at %v, from %v", curve[22], curve[0])
	}
}

// The sums behind a correction name longitude, daylight saving and the equation of
// time in their places.
func TestClockWorkingInItsOrder(t *testing.T) {
	r := reckon(t, "alder reach", "dial-clock", "2027-07-26") // −6.5 min (NPL FAQ), 19.1 min west, an hour of daylight saving
	entrytest.Tells(t, r.Working, "dial-clock.working", "On 26 July 2027: longitude +19 min 5 s", "daylight saving +1 h", "equation of time -6 min", "= +1 h 25 min")
}

// Which of three pairs of shadows the facts are about: the one about two hours
// from noon, where there are so many.
func TestPairAboutTwoHours(t *testing.T) {
	for _, school := range []string{"alder reach", "south", "line north"} {
		r := reckon(t, school, "dial-north", "2027-04-20")
		noon := entrytest.Fact(t, r, "noon").Time
		before, after := entrytest.Fact(t, r, "before").Time, entrytest.Fact(t, r, "after").Time
		if gap := noon.Sub(before).Hours(); math.Abs(gap-2) > 0.05 {
			t.Errorf("%s: the first shadow is %v h before noon", school, gap)
		}
		if gap := after.Sub(noon).Hours(); math.Abs(gap-2) > 0.1 {
			t.Errorf("%s: the second shadow is %v h after noon", school, gap)
		}
		entrytest.Near(t, school+": ring", entrytest.Fact(t, r, "ring").Number, entrytest.Column(t, r, "length")[1], 1e-9)
		off := entrytest.Fact(t, r, "middle_off")
		if got := entrytest.Written(t, off); !strings.HasSuffix(got, side(off.Number, "clockwise", "anticlockwise")) {
			t.Errorf("%s: %v° is printed %s", school, off.Number, got)
		}
		entrytest.Near(t, school+": middle", off.Number, entrytest.Column(t, r, "middle_off")[1], 1e-9)
		// The middle moves by the change of declination ÷ (2 cos φ sin 30°), about 1.4′ an
		// hour in April: toward the afternoon's shorter shadows, in the north to the west of
		// true north when the Sun goes north.
		entrytest.Tells(t, r.Notes, "dial-north.way_noon", "at "+entrytest.Shown(t, r, "noon"), "points to "+entrytest.Shown(t, r, "noon_shadow_points"))
		if !entrytest.Says(r.Notes, "dial-north.way_equal") {
			t.Errorf("%s: equal shadows are not explained", school)
		}
	}
	if r := reckon(t, "arctic", "dial-north", "2027-12-21"); entrytest.Says(r.Notes, "dial-north.way_noon") || entrytest.Says(r.Notes, "dial-north.way_equal") {
		t.Error("in the polar night shadows are explained")
	}
}

// Marks on both sides: within 10 mm of the toe none counts, and a mark that lies
// far from its place stands out.
func TestMarksOnBothSides(t *testing.T) {
	head := "date,time,x_mm,y_mm\n"
	for _, c := range []struct{ x, y, want string }{
		{"6", "7.9", "within 10 mm"}, {"6", "8.1", ""}, {"-6", "7.9", "within 10 mm"}, {"-6", "8.1", ""}, {"0", "9.9", "within 10 mm"}, {"0", "10.1", ""},
	} {
		_, err := tryMarks(t, "alder reach", head+"2027-04-20,10:00,"+c.x+","+c.y+"\n", nil)
		if c.want == "" && err != nil || c.want != "" && (err == nil || !strings.Contains(err.Error(), "marks.csv, line 2") || !strings.Contains(err.Error(), c.want)) {
			t.Errorf("a mark at %s, %s: %v", c.x, c.y, err)
		}
	}
	text := strings.Replace(entrytest.TwoGroups, "A,2027-04-20,13:00,3.5,,", "A,2027-04-20,13:00,9.5,,", 1)
	r := ReckonMarks(t, "alder reach", text)
	for _, row := range r.Tables[0].Rows {
		odd := entrytest.Written(t, row.Cells[0]) == "A" && row.Cells[2].Time.Hour() == 13
		if row.Marked != odd {
			t.Errorf("the mark of %s at %s stands out: %v", entrytest.Written(t, row.Cells[0]), entrytest.Written(t, row.Cells[2]), row.Marked)
		}
	}
	if len(r.Tables) != 2 || len(r.Drawings) != 1 || len(entrytest.Roled(r.Drawings[0], "mark")) != 14 {
		t.Errorf("%d tables, %d drawings", len(r.Tables), len(r.Drawings))
	}
	if odd := entrytest.Roled(r.Drawings[0], "odd"); len(odd) != 1 || r.Drawings[0].Finding.Key != "dial-marks.finding_odd" {
		t.Errorf("%d marks stand out on the chart, and below it is %v", len(odd), r.Drawings[0].Finding)
	}
	for name, c := range map[string]struct{ text, key string }{
		"no marks":       {head, "dial-marks.finding_true"},
		"two marks":      {head + "2027-04-20,10:00,-50,86\n2027-04-20,11:00,-31,95\n", "dial-marks.finding_none"},
		"marks that fit": {entrytest.TwoGroups, "dial-marks.finding_even"},
	} {
		if got := ReckonMarks(t, "alder reach", c.text).Drawings[0].Finding.Key; got != c.key {
			t.Errorf("below the chart of %s is %s", name, got)
		}
	}
	// On the chart afternoon angles are up, later hours to the right.
	marks := entrytest.Roled(r.Drawings[0], "mark")
	if first, last := marks[0].Points[0], marks[6].Points[0]; first.X >= last.X || first.Y <= last.Y {
		t.Errorf("marks run from %v to %v", first, last)
	}
	one := ReckonMarks(t, "alder reach", "date,time,angle_deg\n2027-04-20,10:00,-30\n")
	if len(one.Tables) != 1 || len(one.Drawings) != 0 {
		t.Errorf("of one mark there are %d tables and %d drawings", len(one.Tables), len(one.Drawings))
	}
	if got := entrytest.Written(t, one.Tables[0].Rows[0].Cells[0]); got != "the class" {
		t.Error("nobody's mark is that of", got)
	}
	empty := reckon(t, "alder reach", "dial-marks", "2027-04-20")
	if !entrytest.Says(empty.Notes, "dial-marks.no_records") || len(empty.Tables[0].Rows) < 12 || len(empty.Tables[0].Rows) > 14 {
		t.Errorf("without records: %d rows", len(empty.Tables[0].Rows)) // 13 h 40 min of Sun
	}
	// A turn clockwise is printed so, in its fact as in the finding.
	for turn, word := range map[float64]string{20: "clockwise", -20: "anticlockwise"} {
		text := "date,time,angle_deg\n"
		for clock := 9.0; clock <= 17; clock++ {
			// near the pole a level dial is a clock: turned by τ its lines lie τ back
			text += fmt.Sprintf("2027-04-20,%.0f:00,%.2f\n", clock, (clock-12)*15-turn)
		}
		e, _ := entry.Find(entries(), "dial-marks")
		records := dialRecords(t, text)
		records.File = "marks.csv"
		r, err := e.Reckon(e.Complete(entrytest.Settings(t, "north pole"), form.Values{"records.dial_marks": records, "find": []string{"turn"}}, entrytest.Day(t, "2027-04-20")))
		if err != nil {
			t.Fatal(err)
		}
		entrytest.Near(t, "turn at the pole", entrytest.Fact(t, r, "turn").Number, turn, 0.7)
		if got := entrytest.Shown(t, r, "turn"); !strings.HasSuffix(got, "° "+word) || strings.Contains(got, "-") {
			t.Errorf("turned %v° is printed %s", turn, got)
		}
	}
}

// The hours that are marked reach from the whole hour before the first lesson to the
// one after the last, whatever their order.
func TestMarkingHoursOnBothSides(t *testing.T) {
	e, _ := entry.Find(entries(), "dial-hours")
	for _, c := range []struct {
		spans, given string
		first, last  int
	}{
		{"9:00-10:00", "", 9, 10}, {"9:01-10:00", "", 9, 10}, {"8:59-10:00", "", 8, 10}, {"9:00-10:01", "", 9, 11},
		{"13:15-14:05,9:10-10:00", "", 9, 15}, {"10:00-11:00", "from=9:01", 10, 11}, {"10:00-11:00", "from=9:00", 9, 11}, {"10:00-11:00", "to=12:59", 10, 12},
	} {
		var spans []form.TimeSpan
		for _, s := range strings.Split(c.spans, ",") {
			from, to, _ := strings.Cut(s, "-")
			spans = append(spans, form.TimeSpan{From: span(from), To: span(to)})
		}
		values := entrytest.Settings(t, "alder reach").With(form.Values{"term.lesson_times": spans})
		given := form.Values{}
		if key, clock, ok := strings.Cut(c.given, "="); ok {
			given[key] = span(clock)
		}
		r, err := e.Reckon(e.Complete(values, given, entrytest.Day(t, "2027-04-20")))
		if err != nil {
			t.Fatal(err)
		}
		first, last := entrytest.Fact(t, r, "first").Time.Hour(), entrytest.Fact(t, r, "last").Time.Hour()
		if first != c.first || last != c.last {
			t.Errorf("%s %s: from %d to %d, want %d to %d", c.spans, c.given, first, last, c.first, c.last)
		}
	}
}

// The gnomon's outline closes: the upright side stands on the base's end, and four
// tabs hang below the base, clear of the sharp corner; the two halves do not overlap.
func TestGnomonOutlineCloses(t *testing.T) {
	for _, given := range [][]string{{}, {"stock.style_mm=80"}, {"school.latitude=70"}, {"school.latitude=25", "stock.style_mm=200"}} {
		r := reckon(t, "alder reach", "dial-gnomon", "2027-04-20", given...)
		d := r.Sheets[0].Drawing
		styles, folds := entrytest.Roled(d, "style-edge"), entrytest.Roled(d, "fold")
		if len(styles) != 2 || len(folds) != 2 {
			t.Fatalf("%v: %d halves", given, len(styles))
		}
		base := entrytest.Fact(t, r, "base").Number
		type box struct{ left, top, right, bottom float64 }
		var boxes []box
		edges := entrytest.Roled(d, "edge")
		for i, fold := range folds {
			toe, end, tip := fold.Points[0], fold.Points[1], styles[i].Points[1]
			entrytest.Near(t, "base", entrytest.Apart(toe, end), base, 1e-9)
			if styles[i].Points[0] != toe || math.Abs(tip.X-end.X) > 1e-9 || tip.Y >= toe.Y {
				t.Errorf("%v: style from %v to %v on a base from %v to %v", given, styles[i].Points[0], tip, toe, end)
			}
			upright, tabs := false, 0
			own := box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
			for _, e := range edges[len(edges)/2*i : len(edges)/2*(i+1)] {
				for _, p := range e.Points {
					own = box{math.Min(own.left, p.X), math.Min(own.top, p.Y), math.Max(own.right, p.X), math.Max(own.bottom, p.Y)}
				}
				first, last := e.Points[0], e.Points[len(e.Points)-1]
				if len(e.Points) == 2 && first == tip && math.Abs(last.X-end.X) < 1e-9 && math.Abs(last.Y-end.Y) < 1e-9 {
					upright = true
				}
				if len(e.Points) == 4 {
					tabs++
					if math.Abs(first.Y-toe.Y) > 1e-9 || math.Abs(last.Y-toe.Y) > 1e-9 || math.Abs(e.Points[1].Y-toe.Y-14) > 1e-9 || math.Abs(e.Points[2].Y-toe.Y-14) > 1e-9 {
						t.Errorf("%v: a tab runs %v", given, e.Points)
					}
					if entrytest.Apart(first, toe) < math.Min(10, base/4)-1e-9 || entrytest.Apart(last, toe) > base+1e-9 {
						t.Errorf("%v: a tab from %v to %v of the toe", given, entrytest.Apart(first, toe), entrytest.Apart(last, toe))
					}
				}
			}
			if !upright || tabs != 4 {
				t.Errorf("%v: upright side %v, %d tabs", given, upright, tabs)
			}
			boxes = append(boxes, own)
		}
		if a, b := boxes[0], boxes[1]; a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom {
			t.Errorf("%v: the halves overlap, %v and %v", given, a, b)
		}
		for _, s := range d.Shapes {
			for _, p := range s.Points {
				if p.X < 0 || p.Y < 0 || p.X > d.Width || p.Y > d.Height {
					t.Errorf("%v: %s at %v leaves the sheet", given, s.Role, p)
				}
			}
		}
	}
}

// firstSet leaves the first of the sets on a sheet, each of which has so many shapes of a role.
func firstSet(d drawing.Drawing, role string, each int) drawing.Drawing {
	if sets := len(entrytest.Roled(d, role)) / each; sets > 1 {
		d.Shapes = d.Shapes[:len(d.Shapes)/sets]
	}
	return d
}

// A prop leans its plate by the slope: the triangle's angle is the colatitude.
func TestPropsHoldTheSlope(t *testing.T) {
	r := reckon(t, "alder reach", "dial-gnomon", "2027-04-20", "kind=equatorial", "stock.style_mm=100")
	d := firstSet(r.Sheets[0].Drawing, "cut", 5) // a gauge, and two props with their tabs
	rod := entrytest.Roled(d, "cut")[0].Points
	entrytest.Near(t, "gauge", entrytest.Apart(rod[0], rod[1]), 100, 1e-9)
	var props []drawing.Shape
	for _, s := range entrytest.Roled(d, "edge") {
		if len(s.Points) == 3 {
			props = append(props, s)
		}
	}
	if len(props) != 2 {
		t.Fatalf("%d props", len(props))
	}
	for i, s := range props {
		toe, top, foot := s.Points[0], s.Points[1], s.Points[2]
		slope := math.Atan2(foot.Y-top.Y, math.Abs(foot.X-toe.X)) / degree
		entrytest.Near(t, "slope of a prop", slope, 90-46.09, 1e-9)
		entrytest.Near(t, "upright side", foot.X, top.X, 1e-9)
		if mirrored := foot.X < toe.X; mirrored != (i == 1) {
			t.Errorf("prop %d is mirrored: %v", i+1, mirrored)
		}
	}
	// A level plate and one that stands almost upright take none.
	for _, given := range [][]string{{"kind=equatorial", "school.latitude=83"}, {"kind=equatorial", "school.latitude=7"}} {
		for _, s := range entrytest.Roled(reckon(t, "alder reach", "dial-gnomon", "2027-04-20", given...).Sheets[0].Drawing, "edge") {
			if len(s.Points) == 3 {
				t.Errorf("%v: a prop", given)
			}
		}
	}
	if v := entrytest.Fact(t, r, "shape"); v.Kind != say.Wording {
		t.Error(v)
	}
}
