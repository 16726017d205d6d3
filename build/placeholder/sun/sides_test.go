package sun_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"noonbook/build/drawing"
	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/say"
	"noonbook/compute/quantity"
)

const degree = math.Pi / 180

var witnesses = []struct {
	school, place       string // here, and in testdata/reference
	latitude, longitude float64
}{
	{"alder reach", "alder-reach", 46.09, -64.77}, {"south", "south-island", -45.87, 170.5}, {"line north", "equator-north", 1.4, 103.8}, {"arctic", "arctic", 69.6, 18.95},
}

// Declinations of the Sun in degrees, from memory.
var declinations = map[string]float64{"2027-01-20": -20.1, "2027-03-20": -0.1, "2027-04-20": 11.5, "2027-06-21": 23.4, "2027-09-20": 1.1, "2027-11-20": -19.7, "2027-12-21": -23.4}

// The Sun rises in the east and sets in the west, in summer toward the pole: cos A =
// (sin δ − sin φ sin h)/(cos φ cos h) with h = −50′, the altitude formula turned round.
// At noon it stands on the side of the smaller of latitude and declination.
func TestSunRisesInTheEast(t *testing.T) {
	for _, w := range witnesses {
		for date, declination := range declinations {
			r := reckon(t, w.school, "sun-path", date)
			entrytest.Tells(t, r.Cautions, "caution.sun", "Never look at the Sun")
			h := -50.0 / 60 * degree
			cos := (math.Sin(declination*degree) - math.Sin(w.latitude*degree)*math.Sin(h)) / (math.Cos(w.latitude*degree) * math.Cos(h))
			if math.Abs(cos) > 0.97 {
				continue // about the midnight Sun bearings run away
			}
			want := math.Acos(cos) / degree
			loose := 0.5 / math.Sqrt(1-cos*cos) / math.Cos(w.latitude*degree)
			entrytest.Near(t, w.school+" "+date+": rise", entrytest.Fact(t, r, "rise_bearing").Number, want, loose)
			entrytest.Near(t, w.school+" "+date+": set", entrytest.Fact(t, r, "set_bearing").Number, 360-want, loose)
			rise, set := entrytest.Shown(t, r, "rise_direction"), entrytest.Shown(t, r, "set_direction")
			if math.Abs(cos) < 0.9 && (!strings.Contains(rise, "east") || strings.Contains(rise, "west") || !strings.Contains(set, "west") || strings.Contains(set, "east")) {
				t.Errorf("%s on %s: it rises in the %s and sets in the %s", w.school, date, rise, set)
			}
			noon := map[bool]string{true: "south", false: "north"}[w.latitude > declination]
			if got := entrytest.Shown(t, r, "noon_direction"); got != noon {
				t.Errorf("%s on %s: at noon it stands in the %s", w.school, date, got)
			}
			high := 90 - math.Abs(w.latitude-declination)
			entrytest.Near(t, w.school+" "+date+": height at noon", entrytest.Fact(t, r, "noon_altitude").Number, high, 0.8)
			entrytest.Near(t, w.school+" "+date+": height at noon in words", entrytest.Fact(t, reckon(t, w.school, "sun-day", date), "noon_altitude").Number, high, 0.8)

			// The chart is what one sees who faces the noon Sun: east on the left of south,
			// on the right of north; the hours run from east to west.
			labels := entrytest.Labels(t, r.Drawings[0])
			early, late := labels["11"], labels["13"] // noon is between 11:40 and 13:20 by these clocks
			if w.school == "alder reach" || w.school == "line north" || w.school == "south" {
				early, late = labels["10"], labels["15"]
			} else if late == (drawing.Point{}) { // a short day
				late = labels["12"]
			}
			east, west := labels["east"].X, labels["west"].X
			if rightward := noon == "south"; rightward != (east < west) || rightward != (early.X < late.X) {
				t.Errorf("%s on %s, noon in the %s: east at %v, west at %v, the morning at %v, the afternoon at %v", w.school, date, noon, east, west, early.X, late.X)
			}
			curve := entrytest.Path(t, r.Drawings[0], "curve")
			top := curve[0]
			for _, p := range curve {
				if p.Y < top.Y {
					top = p
				}
			}
			if math.Abs(top.X-labels[noon].X) > 4 && high < 85 {
				t.Errorf("%s on %s: the highest point is at %v, %s at %v", w.school, date, top.X, noon, labels[noon].X)
			}
		}
	}
}

// Rise, noon, set and the day's length at all four schools by erfa (sun-days.csv): to a
// second, and a minute where the Sun grazes the horizon.
func TestSunDaysAgainstReference(t *testing.T) {
	compared := 0
	for _, row := range entrytest.Reference(t, "sun-days.csv", "erfa") {
		for _, w := range witnesses {
			if row["place"] != w.place || row["rise"] == "" || row["set"] == "" || strings.Contains(row["rise"]+row["set"], ";") {
				continue
			}
			r := reckon(t, w.school, "sun-day", row["date"], "school.longitude="+row["longitude_deg"], "school.elevation_m="+row["elevation_m"])
			compared++
			rise, set := entrytest.Instant(t, row["rise"]), entrytest.Instant(t, row["set"])
			for fact, want := range map[string]time.Time{"rise": rise, "noon": entrytest.Instant(t, row["transit"]), "set": set} {
				v := entrytest.Fact(t, r, fact)
				if v.Kind == say.Nothing {
					continue // on another date by this clock
				}
				off := math.Remainder(v.Time.Sub(want).Seconds(), 86400)
				loose := 1.5
				if w.school == "arctic" {
					loose = 10
				}
				if v.Time.Sub(want).Abs() > 12*time.Hour { // the same event of the day beside
					loose += 400
				}
				if math.Abs(off) > loose {
					t.Errorf("%s on %s: %s is %v s off", w.school, row["date"], fact, off)
				}
			}
			length := entrytest.Fact(t, r, "day_length").Number
			if want := math.Mod(set.Sub(rise).Seconds()+86400, 86400); math.Abs(length-want) > 500 {
				t.Errorf("%s on %s: a day of %v s, want %v", w.school, row["date"], length, want)
			}
			entrytest.Tells(t, []say.Phrase{entrytest.Fact(t, r, "in_words").Phrase}, "sun-day.day", "rises at "+entrytest.Shown(t, r, "rise"), "sets at "+entrytest.Shown(t, r, "set"), "a day of "+entrytest.Shown(t, r, "day_length"))
		}
	}
	if compared < 40 {
		t.Errorf("%d days", compared)
	}
}

// Days lengthen from the December to the June solstice in the north, and shorten in
// the south; the longest is in June there and in December here.
func TestDaysLengthenBySide(t *testing.T) {
	for _, w := range witnesses {
		for date, north := range map[string]float64{"2027-02-10": 1, "2027-04-20": 1, "2027-08-20": -1, "2027-10-20": -1} {
			// of cos H = −tan φ tan δ, by the change of δ in a day, ±0.38° at most
			r := reckon(t, w.school, "sun-year", date)
			want := north * math.Copysign(1, w.latitude)
			change := entrytest.Fact(t, r, "change")
			if w.school == "line north" && math.Abs(change.Number) > 10 || change.Number*want <= 0 {
				t.Errorf("%s on %s: the day is %v s longer", w.school, date, change.Number)
			}
			if got := entrytest.Written(t, change); math.Abs(change.Number) > 1 && !strings.HasPrefix(got, map[bool]string{true: "+", false: "-"}[want > 0]) {
				t.Errorf("%s on %s: %v s is printed %s", w.school, date, change.Number, got)
			}
		}
		r := reckon(t, w.school, "sun-year", "2027-04-20")
		longest, shortest := entrytest.Fact(t, r, "longest_on").Time.Month(), entrytest.Fact(t, r, "shortest_on").Time.Month()
		if w.school == "arctic" { // months of days of 24 h and of none
			if up, down := entrytest.Fact(t, r, "days_up").Number, entrytest.Fact(t, r, "days_down").Number; up < 60 || up > 75 || down < 40 || down > 60 {
				t.Errorf("%v days of midnight Sun, %v without it", up, down)
			}
		} else if want := map[bool]time.Month{true: time.June, false: time.December}[w.latitude > 0]; longest != want || shortest != 18-want {
			t.Errorf("%s: the longest day is in %s, the shortest in %s", w.school, longest, shortest)
		}
		if w.school != "line north" {
			highest, lowest := entrytest.Fact(t, r, "highest_noon").Number, entrytest.Fact(t, r, "lowest_noon").Number
			entrytest.Near(t, w.school+": highest noon", highest, 90-math.Abs(math.Abs(w.latitude)-23.44), 0.1)
			entrytest.Near(t, w.school+": lowest noon", lowest, 90-math.Abs(w.latitude)-23.44, 0.6)
			if got, want := entrytest.Fact(t, r, "highest_on").Time.Month(), map[bool]time.Month{true: time.June, false: time.December}[w.latitude > 0]; got != want {
				t.Errorf("%s: highest in %s", w.school, got)
			}
		}
		months := entrytest.Texts(t, reckon(t, w.school, "sun-year", "2027-04-20", "rows=monthly"), "year", "noon_direction")
		for i, got := range months {
			declination := -23.44 * math.Cos(2*math.Pi*(float64(i)*30.4+11)/365.25) // to 1°
			if math.Abs(w.latitude-declination) < 2 {
				continue
			}
			if want := map[bool]string{true: "south", false: "north"}[w.latitude > declination]; got != want {
				t.Errorf("%s in month %d: the noon Sun stands in the %s", w.school, i+1, got)
			}
		}
		if len(months) != 12 {
			t.Errorf("%d months", len(months))
		}
		// cos H = −tan φ tan δ for 20 April, δ = 11.6° at 15:00 UTC, from memory.
		if w.school == "alder reach" {
			half := math.Acos(-math.Tan(w.latitude*degree) * math.Tan(11.6*degree))
			entrytest.Tells(t, r.Working, "sun-year.working_length", "-tan (46.09°) × tan (11.58°)", fmt.Sprintf("%.0f", math.Floor(half/degree)), fmt.Sprintf("%.0f h ", math.Floor(2*half/degree/15)))
			entrytest.Tells(t, r.Working, "sun-year.working_noon", "latitude is 46.1°", "declination 11.6°", "= 55.5°")
		}
		if w.school == "south" {
			entrytest.Tells(t, r.Working, "sun-year.working_noon", "latitude is -45.87°", "declination 11.", "- (-45.87°) = 57.", "= 32.")
		}
	}
}

// Seasons by the moments of erfa (seasons.csv): in the north the March equinox
// begins spring, in the south autumn; a day before it is still the season before.
func TestSeasonsOnBothSides(t *testing.T) {
	north := map[string]string{"march-equinox": "spring", "june-solstice": "summer", "september-equinox": "autumn", "december-solstice": "winter"}
	opposite := map[string]string{"spring": "autumn", "autumn": "spring", "summer": "winter", "winter": "summer"}
	before := map[string]string{"spring": "winter", "summer": "spring", "autumn": "summer", "winter": "autumn"}
	for _, row := range entrytest.Reference(t, "seasons.csv", "erfa") {
		if !strings.HasPrefix(row["tt"], "2027") {
			continue
		}
		turn := entrytest.FromTT(t, row["tt"])
		for _, w := range witnesses {
			if entry.Tropical(quantity.Degrees(w.latitude)) {
				continue // TestSeasonNames
			}
			begins := north[row["season"]]
			if w.latitude < 0 {
				begins = opposite[begins]
			}
			for days, want := range map[int]string{-2: before[begins], 2: begins} {
				r := reckon(t, w.school, "season-dates", turn.AddDate(0, 0, days).Format(time.DateOnly))
				if got := entrytest.Shown(t, r, "season"); got != want {
					t.Errorf("%s, %d days from the %s: %s", w.school, days, row["season"], got)
				}
				if days < 0 {
					entrytest.Near(t, w.school+": next", entrytest.Fact(t, r, "next").Time.Sub(turn).Seconds(), 0, 20)
					if got := entrytest.Shown(t, r, "next_season"); got != begins {
						t.Errorf("%s before the %s: next is %s", w.school, row["season"], got)
					}
				}
				entrytest.Near(t, w.school+": "+begins, entrytest.Fact(t, r, begins+"_begins").Time.Sub(turn).Seconds(), 0, 20)
				entrytest.Near(t, w.school+": "+row["season"], entrytest.Fact(t, r, strings.ReplaceAll(row["season"], "-", "_")).Time.Sub(turn).Seconds(), 0, 20)
			}
		}
	}
	// Both sides of the tropic, 23.44°.
	for latitude, tropical := range map[string]bool{"23.4": true, "-23.4": true, "23.5": false, "-23.5": false} {
		r := reckon(t, "alder reach", "season-dates", "2027-04-20", "school.latitude="+latitude)
		if got := entrytest.Says(r.Notes, "season-dates.tropics"); got != tropical {
			t.Errorf("%s° lies between the tropics: %v", latitude, got)
		}
	}
}

// The lamp and the ball from above the north end: the ball goes round anticlockwise
// from March to June, its dark half away from the lamp, its north end always to the
// wall on the right; so it leans from the lamp in December and to it in June.
func TestLampFromAbove(t *testing.T) {
	r := reckon(t, "alder reach", "season-model", "2027-04-20")
	entrytest.Tells(t, r.Cautions, "caution.lamp", "Only the adult touches")
	d := r.Drawings[0]
	labels := entrytest.Labels(t, d)
	lamp := entrytest.Roled(d, "sun")[0].Points[0]
	wall := entrytest.Roled(d, "wall")[0].Points[0].X
	if wall <= lamp.X {
		t.Error("the wall is not on the right")
	}
	angle := func(p drawing.Point) float64 { return math.Atan2(lamp.Y-p.Y, p.X-lamp.X) / degree }
	names := []string{"March equinox", "June solstice", "September equinox", "December solstice"}
	balls, ends, darks := entrytest.Roled(d, "lit"), entrytest.Roled(d, "rod-end"), entrytest.Roled(d, "dark")
	for i, name := range names {
		ball := balls[i].Points[0]
		label, ok := labels[name]
		if !ok || math.Abs(label.X-ball.X) > 1e-6 {
			t.Fatalf("no ball of the %s: %v", name, labels)
		}
		next := balls[(i+1)%4].Points[0]
		if step := math.Remainder(angle(next)-angle(ball), 360); math.Abs(step-90) > 1e-6 { // anticlockwise is positive with y up
			t.Errorf("from the %s the ball goes on by %v°", name, step)
		}
		if ends[i].Points[0].X <= ball.X || math.Abs(ends[i].Points[0].Y-ball.Y) > 1e-6 {
			t.Errorf("%s: the north end leans to %v from %v", name, ends[i].Points[0], ball)
		}
		middle, _ := entrytest.Centroid(darks[i].Points)
		if math.Hypot(middle.X-lamp.X, middle.Y-lamp.Y) <= math.Hypot(ball.X-lamp.X, ball.Y-lamp.Y) {
			t.Errorf("%s: the dark half faces the lamp", name)
		}
	}
	if december, june := balls[3].Points[0].X, balls[1].Points[0].X; !(december > lamp.X && june < lamp.X) {
		t.Errorf("in December the ball stands at %v, in June at %v", december, june)
	}
	axis, ball := entrytest.Texts(t, r, "stations", "axis"), entrytest.Texts(t, r, "stations", "ball")
	if axis[1] != "north end toward the lamp" || axis[3] != "north end away from the lamp" || axis[0] != axis[2] || !strings.HasPrefix(axis[0], "neither") {
		t.Error(axis)
	}
	// Facing the wall on the right, left is up on the plan.
	if !strings.HasPrefix(ball[0], "left of") || balls[0].Points[0].Y >= lamp.Y || !strings.HasPrefix(ball[2], "right of") || balls[2].Points[0].Y <= lamp.Y || !strings.HasPrefix(ball[3], "between") || !strings.HasPrefix(ball[1], "behind") {
		t.Error(ball)
	}
	overhead := entrytest.Texts(t, r, "stations", "overhead")
	if overhead[0] != "over the equator" || !strings.HasPrefix(overhead[1], "23.4° ") || !strings.HasSuffix(overhead[1], "° N") || !strings.HasSuffix(overhead[3], "° S") {
		t.Error(overhead)
	}
}

// From the side: the lit part of a circle of latitude is (1 + tan φ tan δ)/2 of its
// line, from cos H = −tan φ tan δ; the school's mark is on the lit side, above the
// equator's line in the north.
func TestLampFromTheSide(t *testing.T) {
	for _, w := range witnesses {
		r := reckon(t, w.school, "season-model", "2027-04-20")
		d := r.Drawings[1]
		lamp := entrytest.Roled(d, "sun")[0].Points[0]
		labels := entrytest.Labels(t, d)
		lits, darks, marks := entrytest.Roled(d, "lit"), entrytest.Roled(d, "dark"), entrytest.Roled(d, "here")
		long := func(role string, ball drawing.Point) float64 {
			for _, s := range entrytest.Roled(d, role) {
				if math.Abs((s.Points[0].X+s.Points[1].X)/2-ball.X) < 40 {
					return entrytest.Apart(s.Points[0], s.Points[1])
				}
			}
			return 0
		}
		for i, name := range []string{"June solstice", "December solstice"} {
			ball := lits[i].Points[0]
			if math.Abs(labels[name].X-ball.X) > 1e-6 {
				t.Fatalf("%s is at %v, a ball at %v", name, labels[name], ball)
			}
			toward := math.Copysign(1, lamp.X-ball.X)
			middle, _ := entrytest.Centroid(darks[i].Points)
			if (middle.X-ball.X)*toward >= 0 {
				t.Errorf("%s: the dark half faces the lamp", name)
			}
			if (marks[i].Points[0].X-ball.X)*toward <= 0 && math.Abs(w.latitude) < 60 {
				t.Errorf("%s at %s: noon is on the dark side", name, w.school)
			}
			declination := 23.44
			if i == 1 {
				declination = -23.44
			}
			want := (1 + math.Tan(w.latitude*degree)*math.Tan(declination*degree)) / 2
			want = math.Max(0, math.Min(1, want))
			day, night := long("day", ball), long("night", ball)
			entrytest.Near(t, w.school+", "+name+": lit part", day/(day+night), want, 1e-6)
			// Both north ends lean to the right, so in June to the lamp.
			rods := entrytest.Roled(d, "rod")
			if up := rods[2*i].Points; up[1].Y >= up[0].Y || up[1].X <= up[0].X {
				t.Errorf("%s: the north end leans from %v to %v", name, up[0], up[1])
			}
			equator := entrytest.Roled(d, "equator")[i].Points
			across := (marks[i].Points[0].X - equator[0].X) / (equator[1].X - equator[0].X)
			if onLine := equator[0].Y + across*(equator[1].Y-equator[0].Y); (marks[i].Points[0].Y < onLine) != (w.latitude > 0) {
				t.Errorf("%s, %s: the school is on the wrong side of the equator", w.school, name)
			}
		}
		if (lits[0].Points[0].X < lamp.X) != true {
			t.Error("the June ball is not left of the lamp")
		}
		if got, south := entrytest.Says(r.Notes, "season-model.note_south"), w.latitude < -23.44; got != south {
			t.Errorf("%s: the south is spoken of: %v", w.school, got)
		}
		entrytest.Near(t, w.school+": from the nearer end", entrytest.Fact(t, r, "from_end").Number, 90-math.Abs(w.latitude), 1e-9)
		if got := entrytest.Shown(t, r, "latitude"); !strings.HasSuffix(got, map[bool]string{true: "° north", false: "° south"}[w.latitude > 0]) {
			t.Errorf("%s: %s", w.school, got)
		}
	}
	// The air lifts the Sun by 50′: polar days from 65.73° on, polar nights from 67.4°.
	for latitude, want := range map[string]string{"65.5": "no: ", "66": "polar days, and no polar night", "67.2": "polar days, and no polar night", "67.7": "polar days and polar nights", "-67.7": "polar days and polar nights", "-66": "polar days, and no polar night"} {
		if got := entrytest.Shown(t, reckon(t, "arctic", "season-model", "2027-04-20", "school.latitude="+latitude), "polar"); !strings.HasPrefix(got, want) {
			t.Errorf("at %s°: %s", latitude, got)
		}
	}
}

// The air lifts a Sun that is a few degrees high by some tenths of a degree (13.3′ at 4°,
// Sæmundsson's formula), and one that is high by next to nothing.
func TestAirLiftsTheNoonSun(t *testing.T) {
	for _, c := range []struct {
		latitude, declination, most, least float64
		date                               string
	}{{69.6, -17.2, 0.28, 0.16, "2027-02-01"}, {46.09, 23.4, 0.02, 0, "2027-06-21"}} {
		r := reckon(t, "arctic", "sun-day", c.date, fmt.Sprint("school.latitude=", c.latitude))
		path := reckon(t, "arctic", "sun-path", c.date, fmt.Sprint("school.latitude=", c.latitude))
		got := entrytest.Fact(t, r, "noon_altitude").Number
		entrytest.Near(t, "by another way", entrytest.Fact(t, path, "noon_altitude").Number, got, 1e-9)
		if lift := got - (90 - math.Abs(c.latitude-c.declination)); lift > c.most+0.06 || lift < c.least-0.06 { // a declination to 0.05°
			t.Errorf("on %s the noon Sun is lifted by %v°", c.date, lift)
		}
	}
}

// The table of the seasons has each turn once, with the day that is longest in the
// summer of the hemisphere, and the noon that goes with it.
func TestTableOfSeasons(t *testing.T) {
	for _, w := range witnesses[:2] {
		r := reckon(t, w.school, "season-dates", "2027-04-20")
		turns, seasons := entrytest.Texts(t, r, "year", "turn"), entrytest.Texts(t, r, "year", "season")
		lengths, noons := entrytest.Cells(t, r, "year", "day_length"), entrytest.Cells(t, r, "year", "noon_altitude")
		if len(turns) != 4 || !strings.Contains(strings.ToLower(turns[1]), "june") {
			t.Fatal(turns)
		}
		for i, season := range seasons {
			declination := []float64{0, 23.44, 0, -23.44}[i]
			entrytest.Near(t, w.school+": noon when "+season+" begins", noons[i].Number, 90-math.Abs(w.latitude-declination), 0.45)
			half := math.Acos((math.Sin(-50.0/60*degree) - math.Sin(w.latitude*degree)*math.Sin(declination*degree)) / (math.Cos(w.latitude*degree) * math.Cos(declination*degree)))
			entrytest.Near(t, w.school+": day when "+season+" begins", lengths[i].Number/3600, 2*half/degree/15, 0.06)
		}
	}
}

// Charts of the year: the curve is highest in the summer of the hemisphere, the date
// is marked on it, and the table's Sun rises before it sets.
func TestChartsOfTheYear(t *testing.T) {
	for _, w := range witnesses[:2] {
		r := reckon(t, w.school, "sun-year", "2027-04-20")
		for i, d := range r.Drawings {
			curve := entrytest.Path(t, d, "curve")
			june, december := curve[171], curve[354]
			if len(curve) != 365 || (june.Y < december.Y) != (w.latitude > 0) || june.X >= december.X {
				t.Errorf("%s, chart %d: June at %v, December at %v", w.school, i+1, june, december)
			}
			marks := entrytest.Roled(d, "sun")
			if len(marks) != 1 || entrytest.Apart(marks[0].Points[0], curve[109]) > 1e-9 { // 20 April is day 110
				t.Errorf("%s, chart %d: the date is marked at %v", w.school, i+1, marks)
			}
		}
		rises, sets, lengths := entrytest.Cells(t, r, "year", "rise"), entrytest.Cells(t, r, "year", "set"), entrytest.Cells(t, r, "year", "day_length")
		for i := range rises {
			if up := sets[i].Time.Sub(rises[i].Time).Seconds(); math.Abs(up-lengths[i].Number) > 2 {
				t.Errorf("%s, row %d: from rise to set %v s, a day of %v s", w.school, i, up, lengths[i].Number)
			}
		}
		entrytest.Tells(t, r.Notes, "sun-year.marked", "20 April 2027")
	}
}

// The arrows on the way round the lamp point anticlockwise, and the way goes through
// the balls.
func TestArrowsRoundTheLamp(t *testing.T) {
	d := reckon(t, "alder reach", "season-model", "2027-04-20").Drawings[0]
	lamp := entrytest.Roled(d, "sun")[0].Points[0]
	heads := entrytest.Roled(d, "head")
	if len(heads) != 4 {
		t.Fatalf("%d arrow heads", len(heads))
	}
	angle := func(p drawing.Point) float64 { return math.Atan2(lamp.Y-p.Y, p.X-lamp.X) / degree } // anticlockwise
	for i, h := range heads {
		tip, tail := h.Points[0], drawing.Point{X: (h.Points[1].X + h.Points[2].X) / 2, Y: (h.Points[1].Y + h.Points[2].Y) / 2}
		if step := math.Remainder(angle(tip)-angle(tail), 360); step <= 0 || step > 15 {
			t.Errorf("arrow %d runs by %v° anticlockwise", i+1, step)
		}
		entrytest.Near(t, "arrow on the way", entrytest.Apart(tip, lamp), 38, 1e-6)
		entrytest.Near(t, "arrow between the balls", math.Abs(math.Remainder(angle(tail), 90)), 45, 2)
	}
	way := entrytest.Roled(d, "orbit")[0].Points
	for _, ball := range entrytest.Roled(d, "lit") {
		nearest := math.Inf(1)
		for _, p := range way {
			nearest = math.Min(nearest, entrytest.Apart(p, ball.Points[0]))
		}
		entrytest.Near(t, "ball on the way", nearest, 0, 1e-6)
	}
	if len(entrytest.Roled(d, "rod")) != 4 {
		t.Error("a ball has no axis")
	}
}
