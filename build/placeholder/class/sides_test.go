package class_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/classroom"
)

const degree = math.Pi / 180

var witnesses = []struct {
	school              string
	latitude, longitude float64
	variation           float64 // magvar (WMM2025) at 2027.5, testdata/reference/magnetic-values.csv
	clock               float64 // hours ahead of UTC on 2 July 2027 (IANA)
	saves               bool
	change              string // the next one after that day
}{
	{"alder reach", 46.09, -64.77, -16.17, -3, true, "on 7 November 2027 at 2:00 the clocks go back by 1 h"},
	{"south", -45.87, 170.5, 26.47, 12, false, "on 26 September 2027 at 2:00 the clocks go forward by 1 h"},
	{"line north", 1.4, 103.8, 0.25, 8, false, "no clock change is due"},
	{"arctic", 69.6, 18.95, 11.41, 2, true, "on 31 October 2027 at 3:00 the clocks go back by 1 h"},
}

func side(x float64, positive, negative string) string {
	if x < 0 {
		return negative
	}
	return positive
}

// North or south, east or west, ahead or behind, forward or back, clockwise or
// anticlockwise: by the numbers of the zone database and of another magnetic model.
func TestPlaceBySide(t *testing.T) {
	for _, w := range witnesses {
		r := reckon(t, w.school, "place-facts", "2027-07-02")
		for fact, want := range map[string]string{
			"latitude":           fmt.Sprintf("%.2f° ", math.Abs(w.latitude)) + side(w.latitude, "north", "south"),
			"longitude":          fmt.Sprintf("%.2f° ", math.Abs(w.longitude)) + side(w.longitude, "east", "west"),
			"utc_offset":         fmt.Sprintf("%.0f h ", math.Abs(w.clock)) + side(w.clock, "ahead of UTC", "behind UTC"),
			"daylight_saving":    map[bool]string{true: "on daylight-saving time", false: "on standard time"}[w.saves],
			"next_clock_change":  w.change,
			"magnetic_variation": "",
			"needle_turn":        "",
		} {
			got := entrytest.Shown(t, r, fact)
			switch fact {
			case "magnetic_variation":
				want = got
				if !strings.HasSuffix(got, side(w.variation, "° east", "° west")) {
					want = side(w.variation, "east", "west")
				}
			case "needle_turn":
				want = got
				if !strings.HasSuffix(got, side(-w.variation, "° clockwise", "° anticlockwise")) {
					want = side(-w.variation, "clockwise", "anticlockwise")
				}
			}
			if got != want && !(fact == "utc_offset" && strings.Contains(got, want[:3]) && strings.HasSuffix(got, want[len(want)-6:])) {
				t.Errorf("%s: %s is %q, want %q", w.school, fact, got, want)
			}
		}
		entrytest.Near(t, w.school+": variation", entrytest.Fact(t, r, "magnetic_variation").Number, w.variation, 0.15)
		entrytest.Near(t, w.school+": turn", entrytest.Fact(t, r, "needle_turn").Number, -w.variation, 0.15)
		entrytest.Near(t, w.school+": on the ring", entrytest.Fact(t, r, "compass_for_true_north").Number, math.Mod(360-w.variation, 360), 0.15)
		// The Sun's noon is 12:00 by the Sun: 4 minutes a degree, the clock's own hours,
		// and −4.2 min of the equation of time on 2 July (from memory).
		after := w.clock*60 - w.longitude*4 + 4.2
		entrytest.Near(t, w.school+": noon", entrytest.Fact(t, r, "noon_after_twelve").Number/60, after, 0.5)
	}
}

// Groups differ by one at most, also of one pupil and of none.
func TestGroupsThatDoNotDivide(t *testing.T) {
	for _, c := range []struct{ pupils, size, groups, largest int }{
		{0, 3, 0, 0}, {1, 3, 1, 1}, {2, 3, 1, 2}, {10, 4, 3, 4}, {26, 4, 7, 4}, {27, 4, 7, 4}, {29, 3, 10, 3}, {7, 2, 4, 2}, {31, 30, 1, 31},
	} {
		r := reckon(t, "alder reach", "class-facts", "2027-04-20", fmt.Sprint("class.pupils=", c.pupils), fmt.Sprint("class.group_size=", c.size))
		for fact, want := range map[string]int{"pupils": c.pupils, "groups": c.groups, "group_size": c.largest} {
			if got := entrytest.Fact(t, r, fact).Number; got != float64(want) {
				t.Errorf("%d pupils by %d: %s is %v, want %d", c.pupils, c.size, fact, got, want)
			}
		}
	}
}

func withUnit(t *testing.T, name string, unit []classroom.Lesson, given map[string]any) result.Result {
	t.Helper()
	e, _ := entry.Find(entries(), name)
	values := e.Complete(entrytest.Settings(t, "alder reach"), nil, entrytest.Day(t, "2027-04-12"))
	for key, v := range given {
		values[key] = v
	}
	r, err := e.Careful().Reckon(e.WithLessons(values, unit, school.Calendar(values, unit), 0))
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// Counts by hand: parts of a thing are rounded up once, spare ones come on top,
// and a class without pupils needs what it shares only, and is told so.
func TestKitByHand(t *testing.T) {
	unit := []classroom.Lesson{
		{Title: "A", Start: classroom.AnyTime, Kit: []classroom.Thing{
			{Item: "tape", Count: 0.25, Share: classroom.PerGroup, Spare: 1, Source: classroom.ToBuy, UsedUp: true, Price: 3, Pack: 2},
			{Item: "straw", Count: 1, Share: classroom.PerPupil, Spare: 3, Source: classroom.ToBuy, UsedUp: true, Price: 2, Pack: 25},
			{Item: "lamp", Count: 1, Share: classroom.PerClass},
			{Item: "ruler", Count: 1, Share: classroom.PerGroup},
		}},
		{Title: "B", Start: classroom.AnyTime, Kit: []classroom.Thing{
			{Item: "ruler", Count: 0.5, Share: classroom.PerPupil},
			{Item: "tape", Count: 0.25, Share: classroom.PerGroup, Source: classroom.ToBuy, UsedUp: true},
		}},
	}
	for _, c := range []struct {
		pupils, size int
		want         map[string]float64
		cost         float64
	}{
		// 26 by 4 are 7 groups: ⌈1.75⌉ + 1 and ⌈1.75⌉; 26 + 3; 13 for half of 26 against 7.
		{26, 4, map[string]float64{"tape": 5, "straw": 29, "lamp": 1, "ruler": 13}, 3*3 + 2*2},
		{1, 4, map[string]float64{"tape": 3, "straw": 4, "lamp": 1, "ruler": 1}, 2*3 + 2},
		{5, 2, map[string]float64{"tape": 3, "straw": 8, "lamp": 1, "ruler": 3}, 2*3 + 2}, // 2.5 are three groups
		{0, 4, map[string]float64{"tape": 0, "straw": 0, "lamp": 1, "ruler": 0}, 0},
	} {
		r := withUnit(t, "kit-list", unit, map[string]any{"class.pupils": c.pupils, "class.group_size": c.size})
		things, counts := entrytest.Texts(t, r, "list", "thing"), entrytest.Cells(t, r, "list", "count")
		for i, thing := range things {
			if got := counts[i].Number; got != c.want[thing] {
				t.Errorf("%d pupils by %d: %v of %s, want %v", c.pupils, c.size, got, thing, c.want[thing])
			}
		}
		if cost := entrytest.Fact(t, r, "cost"); cost.Kind != say.Nothing && cost.Number != c.cost || cost.Kind == say.Nothing && c.cost > 0 {
			t.Errorf("%d pupils: it costs %s, want %v", c.pupils, entrytest.Written(t, cost), c.cost)
		}
		if told := entrytest.Says(r.Warnings, "kit-list.no_pupils"); told != (c.pupils == 0) {
			t.Errorf("%d pupils: it is said that none are entered: %v", c.pupils, told)
		}
	}
}

// A note speaks of the Sun always, of going out and of the evening where some
// lesson of it does.
func TestFamiliesAreToldWhatIsDone(t *testing.T) {
	for kinds, want := range map[string]struct{ outside, evening bool }{
		"": {}, "sun": {true, false}, "marks": {true, false}, "dark": {false, true}, "dark by": {false, true}, "dry": {false, false}, "sun dark": {true, true},
	} {
		l := classroom.Lesson{Title: "L", Start: classroom.AnyTime}
		for word, need := range map[string]classroom.Need{
			"sun": {Kind: classroom.SunUp, Height: classroom.SunLeast}, "dry": {Kind: classroom.Dry}, "dark": {Kind: classroom.Dark},
			"dark by": {Kind: classroom.DarkBy, By: 22 * time.Hour}, "marks": {Kind: classroom.HourMarks},
		} {
			if kinds == word || kinds == "sun dark" && (word == "sun" || word == "dark") {
				l.Needs = append(l.Needs, need)
			}
		}
		r := withUnit(t, "family-note", []classroom.Lesson{l}, nil)
		for key, said := range map[string]bool{"caution.family-sun": true, "caution.family-outside": want.outside, "caution.family-evening": want.evening} {
			if got := entrytest.Says(r.Cautions, key); got != said {
				t.Errorf("needs %q: %s is said: %v", kinds, key, got)
			}
		}
		wear := entrytest.Texts(t, r, "days", "wear")[0]
		part := map[string]string{"": "–", "sun": "in the Sun", "marks": "in the Sun", "dark": "in the dark", "dark by": "in the dark", "dry": "a coat for the weather", "sun dark": "in the dark"}[kinds]
		if !strings.Contains(wear, part) {
			t.Errorf("needs %q: wear %s", kinds, wear)
		}
	}
}

// sunHeight is the Sun's altitude in degrees to some hundredths, without air: Meeus,
// Astronomical Algorithms, 2nd ed. 1998, ch. 25, the low accuracy, and ch. 13.
func sunHeight(at time.Time, latitude, longitude float64) float64 {
	days := at.Sub(time.Date(2000, 1, 1, 12, 0, 0, 0, time.UTC)).Hours() / 24
	m := (357.52911 + 0.98560028*days) * degree
	l := (280.46646 + 0.98564736*days + 1.9146*math.Sin(m) + 0.02*math.Sin(2*m)) * degree
	eps := 23.437 * degree
	declination := math.Asin(math.Sin(eps) * math.Sin(l))
	ra := math.Atan2(math.Cos(eps)*math.Sin(l), math.Cos(l))
	hour := (280.46062+360.98564737*days+longitude)*degree - ra
	return math.Asin(math.Sin(latitude*degree)*math.Sin(declination)+math.Cos(latitude*degree)*math.Cos(declination)*math.Cos(hour)) / degree
}

// What the plan says of the sky follows from the Sun's height at both ends of the
// lesson: up, dark below −6°, or twilight.
func TestPlanSaysHowDarkItIs(t *testing.T) {
	said := map[string]int{}
	for _, w := range witnesses {
		for hour := 4; hour <= 23; hour++ {
			e, _ := entry.Find(entries(), "unit-plan")
			unit := []classroom.Lesson{{Title: "L", Start: time.Duration(hour) * time.Hour, Length: 40 * time.Minute}}
			values := e.Complete(entrytest.Settings(t, w.school), nil, entrytest.Day(t, "2027-04-12"))
			r, err := e.Careful().Reckon(e.WithLessons(values, unit, school.Calendar(values, unit), 0))
			if err != nil {
				t.Fatal(err)
			}
			begins, ends := entrytest.Cells(t, r, "plan", "begins")[0], entrytest.Cells(t, r, "plan", "ends")[0]
			if begins.Kind == say.Nothing {
				continue
			}
			from, to := sunHeight(begins.Time, w.latitude, w.longitude), sunHeight(ends.Time, w.latitude, w.longitude)
			if math.Abs(from+50.0/60) < 0.2 || math.Abs(to+50.0/60) < 0.2 || math.Abs(from+6) < 0.2 || math.Abs(to+6) < 0.2 {
				continue
			}
			want := "twilight"
			switch {
			case from > -50.0/60 && to > -50.0/60:
				want = "Sun "
			case from < -6 && to < -6:
				want = "dark"
			}
			said[want]++
			if got := entrytest.Texts(t, r, "plan", "sky")[0]; !strings.HasPrefix(got, want) {
				t.Errorf("%s at %d:00, the Sun at %.1f° and %.1f°: %s", w.school, hour, from, to, got)
			}
		}
	}
	if len(said) != 3 {
		t.Errorf("words that were tried: %v", said)
	}
}

// In the morning a stick's shadow points west, in the afternoon east; to the north
// where the noon Sun is south, and the other way about.
func TestLessonShadowsBySide(t *testing.T) {
	for _, w := range witnesses {
		for hour, way := range map[int]string{9: "west", 16: "east"} {
			e, _ := entry.Find(entries(), "lesson-sky")
			unit := []classroom.Lesson{{Title: "L", Start: time.Duration(hour) * time.Hour, Length: 30 * time.Minute}}
			values := e.Complete(entrytest.Settings(t, w.school), nil, entrytest.Day(t, "2027-04-12"))
			r, err := e.Careful().Reckon(e.WithLessons(values, unit, school.Calendar(values, unit), 1))
			if err != nil {
				t.Fatal(err)
			}
			to := entrytest.Shown(t, r, "shadow_start_to")
			if !strings.Contains(to, way) {
				t.Errorf("%s at %d:00: the shadow points %s", w.school, hour, to)
			}
			if math.Abs(w.latitude) > 40 {
				if pole := side(w.latitude, "north", "south"); !strings.Contains(to, pole) && to != way {
					t.Errorf("%s at %d:00: the shadow points %s", w.school, hour, to)
				}
			}
			at := entrytest.Cells(t, r, "moments", "clock")[0].Time
			h := sunHeight(at, w.latitude, w.longitude)
			entrytest.Near(t, w.school+": Sun", entrytest.Fact(t, r, "sun_start").Number, h, 0.3)
			entrytest.Near(t, w.school+": shadow", entrytest.Fact(t, r, "shadow_start").Number, 1/math.Tan(entrytest.Fact(t, r, "sun_start").Number*degree), 0.01)
		}
	}
}
