package dial_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/say"
)

const degree = math.Pi / 180

// A witness is a school at which another library has looked.
type witness struct {
	school, place string  // here, and in testdata/reference
	latitude      float64 // north positive
	longitude     float64 // east positive
	meridian      float64 // of the clock's standard time, east positive
	variation     float64 // magvar (WMM2025) at 2027.5, east positive
}

// Variations are rows of testdata/reference/magnetic-values.csv: one far to the
// east, one far to the west, one small, one in the Arctic.
var witnesses = []witness{
	{"alder reach", "alder-reach", 46.09, -64.77, -60, -16.17},
	{"south", "south-island", -45.87, 170.5, 180, 26.47},
	{"line north", "equator-north", 1.4, 103.8, 120, 0.25},
	{"arctic", "arctic", 69.6, 18.95, 15, 11.41},
}

// side says which of two words a number calls for.
func side(x float64, positive, negative string) string {
	if x < 0 {
		return negative
	}
	return positive
}

// The needle points east of true north where the variation is positive; true
// north is then anticlockwise from it, and the ring of degrees shows less than 360.
func TestNeedleSides(t *testing.T) {
	for _, w := range witnesses {
		r := reckon(t, w.school, "dial-north", "2027-07-02")
		const near = 0.15 // degrees: magvar rounds, and the arctic row lies 0.05° aside
		entrytest.Near(t, w.school+": variation", entrytest.Fact(t, r, "magnetic_variation").Number, w.variation, near)
		printed := entrytest.Shown(t, r, "magnetic_variation")
		if !strings.HasSuffix(printed, side(w.variation, "° east", "° west")) || strings.Contains(printed, "-") {
			t.Errorf("%s: the variation is printed %s", w.school, printed)
		}
		entrytest.Near(t, w.school+": turn", entrytest.Fact(t, r, "needle_turn").Number, -w.variation, near)
		turn := entrytest.Shown(t, r, "needle_turn")
		if !strings.HasSuffix(turn, side(-w.variation, "° clockwise", "° anticlockwise")) || strings.Contains(turn, "-") {
			t.Errorf("%s: the turn is printed %s", w.school, turn)
		}
		ring := math.Mod(360-w.variation, 360)
		entrytest.Near(t, w.school+": ring", entrytest.Fact(t, r, "compass_for_true_north").Number, ring, near)
		entrytest.Tells(t, r.Notes, "dial-north.way_compass", "points "+printed+" of true north", "turn "+turn, "true north is at "+entrytest.Shown(t, r, "compass_for_true_north"))
		entrytest.Tells(t, r.Cautions, "caution.sun", "Never look at the Sun")
		entrytest.Tells(t, r.Working, "dial-north.working_compass", "0° - (", entrytest.Shown(t, r, "compass_for_true_north"))

		// On the card, north up, the needle's north end is right of true north where it
		// is east, and the arc with its arrow runs from there to the top.
		d := r.Drawings[0]
		needle := entrytest.Roled(d, "needle")[0].Points
		north := entrytest.Roled(d, "true-north")[0].Points[1]
		south := entrytest.Roled(d, "true-north")[0].Points[0]
		middle := drawing.Point{X: (needle[0].X + needle[2].X) / 2, Y: (needle[0].Y + needle[2].Y) / 2}
		bearing := func(p drawing.Point) float64 { return math.Atan2(p.X-middle.X, middle.Y-p.Y) / degree }
		if north.Y >= south.Y || north.X != south.X {
			t.Errorf("%s: true north runs from %v to %v", w.school, south, north)
		}
		entrytest.Near(t, w.school+": needle on the card", bearing(needle[0]), w.variation, near)
		arc := entrytest.Roled(d, "turn-arrow")[0].Points
		entrytest.Near(t, w.school+": start of the turn", bearing(arc[0]), w.variation, near)
		entrytest.Near(t, w.school+": end of the turn", bearing(arc[len(arc)-1]), 0, 1e-6)
		if heads := entrytest.Roled(d, "head"); len(heads) > 0 {
			tip, tail := heads[0].Points[0], heads[0].Points[1]
			if (tip.X-tail.X)*-w.variation <= 0 {
				t.Errorf("%s: the arrow head points from %v to %v", w.school, tail, tip)
			}
		}
		if _, ok := entrytest.Labels(t, d)["from the needle turn "+turn]; !ok {
			t.Errorf("%s: the card does not say %s", w.school, turn)
		}
		entrytest.Tells(t, []say.Phrase{d.Description}, "dial-north.description", "turn "+turn)
	}
}

// The noon shadow points north where the Sun is south, and the shadow before noon
// lies west; bearings are those of erfa in testdata/reference/shadow-bearings.csv.
func TestShadowSides(t *testing.T) {
	rows := entrytest.Reference(t, "shadow-bearings.csv", "")
	for _, w := range witnesses {
		compared := 0
		there := rows[slices.IndexFunc(rows, func(row map[string]string) bool { return row["place"] == w.place })]
		for _, date := range []string{"2027-02-03", "2027-03-31", "2027-04-28", "2027-06-23", "2027-09-15", "2027-11-10"} {
			declination := math.NaN()
			r := reckon(t, w.school, "dial-day", date, "height_mm=250", "school.latitude="+there["latitude_deg"], "school.longitude="+there["longitude_deg"])
			clocks, bearings := entrytest.Cells(t, r, "hours", "clock"), entrytest.Cells(t, r, "hours", "shadow_bearing")
			compass, lengths := entrytest.Cells(t, r, "hours", "compass_bearing"), entrytest.Cells(t, r, "hours", "shadow_length")
			altitudes := entrytest.Cells(t, r, "hours", "sun_altitude")
			for _, row := range rows {
				if row["place"] != w.place || !strings.HasPrefix(row["utc"], date) {
					continue
				}
				at := entrytest.Instant(t, row["utc"])
				for i, clock := range clocks {
					if !clock.Time.Equal(at) {
						continue
					}
					compared++
					altitude := entrytest.Number(t, row["altitude_deg"])
					want := entrytest.Number(t, row["erfa"])
					declination = math.Asin(math.Sin(w.latitude*degree)*math.Sin(altitude*degree)-
						math.Cos(w.latitude*degree)*math.Cos(altitude*degree)*math.Cos(want*degree)) / degree
					loose := 0.01/math.Cos(altitude*degree) + 0.01
					if math.Abs(math.Remainder(bearings[i].Number-want, 360)) > loose {
						t.Errorf("%s %s: the shadow bears %v, want %v", w.school, row["utc"], bearings[i].Number, want)
					}
					if off := math.Remainder(bearings[i].Number-compass[i].Number-w.variation, 360); math.Abs(off) > 0.3 {
						t.Errorf("%s %s: %v true is %v by compass", w.school, row["utc"], bearings[i].Number, compass[i].Number)
					}
					// The Sun as seen is lifted by refraction, 0.4° at 1° and less above.
					if lift := altitudes[i].Number - altitude; lift < -0.01 || lift > 0.45 {
						t.Errorf("%s %s: the Sun is %v° high, want %v", w.school, row["utc"], altitudes[i].Number, altitude)
					}
					entrytest.Near(t, "length", lengths[i].Number, 250/math.Tan(altitudes[i].Number*degree), 1e-3*lengths[i].Number+0.01)
					if (lengths[i].Phrase.Key == "dial-day.very_long") != (lengths[i].Number > 50*250) {
						t.Errorf("a shadow of %v mm is printed %s", lengths[i].Number, entrytest.Written(t, lengths[i]))
					}
				}
			}
			if math.IsNaN(declination) {
				t.Errorf("%s on %s: no shadow was compared", w.school, date)
			}
			// At noon the Sun stands 90° − |latitude − declination| high, to the side of
			// the smaller of the two. The declination is that of erfa's last shadow: its
			// bearing is the Sun's and half a turn.
			points := entrytest.Shown(t, r, "noon_shadow_points")
			if want := side(w.latitude-declination, "true north", "true south"); points != want && points != "no shadow" {
				t.Errorf("%s on %s: the noon shadow points to %s", w.school, date, points)
			}
			length := entrytest.Fact(t, r, "noon_shadow")
			if want := 250 * math.Tan(math.Abs(w.latitude-declination)*degree); length.Kind != say.Nothing && math.Abs(length.Number-want) > 0.01*want+3+want*want/2500 {
				t.Errorf("%s on %s: a noon shadow of %v mm, want %v", w.school, date, length.Number, want)
			}
			if !strings.Contains(entrytest.Printed(t, r.Working, "dial-day.working_compass"), side(w.variation, "° east", "° west")) {
				t.Errorf("%s: %s", w.school, entrytest.Lines(t, r.Working))
			}
		}
		if compared < 40 {
			t.Errorf("%s: only %d shadows were compared", w.school, compared)
		}
		// Of the two equal shadows the one before noon lies to the west: its bearing,
		// and its mark on the plan with north up.
		r := reckon(t, w.school, "dial-north", "2027-03-21")
		before, after := entrytest.Column(t, r, "before_bearing"), entrytest.Column(t, r, "after_bearing")
		for i := range before {
			if math.Sin(before[i]*degree) >= 0 || math.Sin(after[i]*degree) <= 0 {
				t.Errorf("%s: shadows bear %v before noon and %v after", w.school, before[i], after[i])
			}
		}
		foot := entrytest.Roled(r.Drawings[0], "stick")[0].Points[0]
		for i, line := range entrytest.Roled(r.Drawings[0], "shadow") {
			want := append(before, after...)[i/2+len(before)*(i%2)]
			at := math.Atan2(line.Points[1].X-foot.X, foot.Y-line.Points[1].Y) / degree
			entrytest.Near(t, w.school+": shadow on the plan", math.Remainder(at-want, 360), 0, 1e-6)
		}
	}
}

// A dial laid by the needle: with its face alone turned, the shadow of a true
// gnomon at noon lies τ from its noon line, which is the line of the hour h with
// tan τ = sin φ tan h. Turned to the west in the north, the shadow lies on the
// afternoon side, and the dial is fast; turned to the east in the south too, since
// there hours run the other way.
func TestNeedleFastOrSlow(t *testing.T) {
	for _, w := range witnesses {
		r := reckon(t, w.school, "dial-table", "2027-07-02")
		hour := math.Atan2(math.Sin(-w.variation*degree), math.Cos(w.variation*degree)*math.Sin(w.latitude*degree)) / degree / 15
		if w.latitude < 0 { // the noon line runs south, and south is where the angle is counted from
			hour = math.Atan(math.Tan(w.variation*degree)/math.Sin(-w.latitude*degree)) / degree / 15
		}
		got := entrytest.Fact(t, r, "needle_face")
		if w.school == "line north" { // a polar dial
			if got.Kind != say.Nothing {
				t.Errorf("%s: the face alone is %s", w.school, entrytest.Written(t, got))
			}
			continue
		}
		entrytest.Near(t, w.school+": face alone", got.Number, hour*3600, 60+300*math.Abs(hour)*0.15)
		if printed := entrytest.Written(t, got); !strings.HasSuffix(printed, side(hour, " fast", " slow")) || strings.Contains(printed, "-") {
			t.Errorf("%s: the face alone is %s", w.school, printed)
		}
		// Gnomon and plate together: −4 min a degree of turn × (sin φ − cos φ tan δ), a
		// fifth of it left for large turns; δ is 23.0° on 2 July (from memory).
		whole := -w.variation * 240 * (math.Sin(w.latitude*degree) - math.Cos(w.latitude*degree)*math.Tan(23.0*degree))
		noon := entrytest.Fact(t, r, "needle_noon")
		entrytest.Near(t, w.school+": plate and gnomon", noon.Number, whole, 0.2*math.Abs(whole)+10)
		if printed := entrytest.Written(t, noon); math.Abs(whole) > 60 && !strings.HasSuffix(printed, side(whole, " fast", " slow")) {
			t.Errorf("%s: plate and gnomon are %s", w.school, printed)
		}
		if most := entrytest.Fact(t, r, "needle_most").Number; math.Abs(most) < math.Abs(noon.Number)-1 {
			t.Errorf("%s: %v at worst, %v at noon", w.school, most, noon.Number)
		}
	}
}

// The noon line, the way the hours run, the sides of morning and afternoon, and
// the lines against erfa's shadows on a true dial (dial-shadows.csv).
func TestHourLineSides(t *testing.T) {
	shadows := entrytest.Reference(t, "dial-shadows.csv", "")
	for _, w := range witnesses {
		if w.school == "line north" { // a polar dial, which has tests of its own
			continue
		}
		r := reckon(t, w.school, "dial-table", "2027-04-20")
		pole, turns := side(w.latitude, "true north", "true south"), side(w.latitude, "clockwise", "anticlockwise")
		if got := entrytest.Shown(t, r, "noon_line") + ", " + entrytest.Shown(t, r, "turns"); got != pole+", "+turns {
			t.Errorf("%s: %s", w.school, got)
		}
		entrytest.Tells(t, r.Notes, "dial-table.sides", "points to "+pole, "morning hours carry a minus and lie on the west side", "run "+turns+".")
		if title := entrytest.Lines(t, []say.Phrase{r.Tables[0].Title}); !strings.HasSuffix(title, side(w.latitude, "° north", "° south")) {
			t.Error(w.school, title)
		}
		hours, lines, bearings := entrytest.Column(t, r, "hour_angle"), entrytest.Column(t, r, "line_angle"), entrytest.Column(t, r, "bearing")
		for i, h := range hours {
			if h == 0 || math.Abs(h) >= 180 {
				continue
			}
			if math.Signbit(lines[i]) != math.Signbit(h) {
				t.Errorf("%s: %v° past noon has the line %v", w.school, h, lines[i])
			}
			if east := math.Sin(bearings[i] * degree); east*h <= 0 && math.Abs(h) < 179 {
				t.Errorf("%s: %v° past noon bears %v", w.school, h, bearings[i])
			}
			if r.Tables[0].Rows[i].Marked {
				t.Errorf("%s: the row of %v° is marked", w.school, h)
			}
		}
		// dial-hours at the reference's moments.
		matched := 0
		hourly := reckon(t, w.school, "dial-hours", "2027-04-20", "from=6:00", "to=18:00")
		clocks, marks := entrytest.Cells(t, hourly, "hours", "clock"), entrytest.Cells(t, hourly, "hours", "line_angle")
		for _, row := range shadows {
			at := entrytest.Instant(t, row["utc"])
			for i, clock := range clocks {
				if row["stand"] != "true" || row["place"] != w.place || !clock.Time.Equal(at) {
					continue
				}
				matched++
				line := entrytest.Number(t, row["shadow_deg"])
				if w.latitude < 0 { // from south, and the other way round
					line = 180 - line
				}
				loose := 0.01 + math.Abs(w.longitude-entrytest.Number(t, row["longitude_deg"]))
				if off := math.Remainder(marks[i].Number-line, 360); math.Abs(off) > loose {
					t.Errorf("%s %s: the line lies at %v, want %v", w.school, row["utc"], marks[i].Number, math.Remainder(line, 360))
				}
			}
		}
		if matched < 6 {
			t.Errorf("%s: %d shadows of the reference", w.school, matched)
		}
	}
}

// On the paper the afternoon lies right of a noon line that runs up where hours
// run clockwise, and left of it south of the equator; a wall dial hangs with its
// noon line down, morning on the west side: left as one faces a wall that looks
// south, right on one that looks north.
func TestFacesAreNotMirrored(t *testing.T) {
	for _, w := range witnesses {
		for _, kind := range []string{"level", "wall", "equatorial"} {
			if kind == "wall" && w.school == "line north" {
				continue
			}
			r := reckon(t, w.school, "dial-face", "2027-04-20", "kind="+kind, "width_mm=150")
			if want := map[bool]int{true: 2, false: 1}[kind == "equatorial"]; len(r.Sheets) != want {
				t.Fatalf("%s, %s: %d sheets", w.school, kind, len(r.Sheets))
			}
			for n, sheet := range r.Sheets {
				if n > 0 && kind != "equatorial" {
					continue
				}
				d := sheet.Drawing
				toe := entrytest.Roled(d, "toe")[0].Points[0]
				labels := entrytest.Labels(t, d)
				noon := labels["12"]
				up := noon.Y < toe.Y
				if up != (kind == "level") {
					t.Errorf("%s, %s: noon is up: %v", w.school, kind, up)
				}
				clockwise := w.latitude > 0 // hours run with the Sun's shadow, seen from above
				if kind == "wall" {
					clockwise = !clockwise // seen from outside, the Sun passes the other way
				}
				if kind == "equatorial" && n == 1 {
					clockwise = !clockwise // the back, seen from the back
				}
				// The Sun is north of the equator from March to September, which is the summer of
				// the north; between the tropics that names no season.
				if name := []string{"summer side, toward the pole", "winter side, toward the equator"}[n]; kind == "equatorial" {
					note, says := "dial-face.set_equatorial", "The side toward the pole is lit in the summer half of the year, the other in the winter half"
					if math.Abs(w.latitude) < 23.44 {
						name = []string{"side toward the pole", "side toward the equator"}[n]
						note, says = "dial-face.set_equatorial_tropics", "The side toward the pole is lit for the half of the year in which the Sun is on our side of the equator"
					}
					if _, ok := labels["equatorial dial, "+name]; !ok {
						t.Errorf("%s: side %d is not called %q: %v", w.school, n+1, name, keys(labels))
					}
					entrytest.Tells(t, r.Notes, note, says)
				}
				// From noon, the hours of the afternoon lie to the right of one who looks
				// along the noon line where they run clockwise.
				for _, hour := range []int{10, 11, 13, 14} {
					p, ok := labels[fmt.Sprint(hour)]
					if !ok {
						continue
					}
					right := (p.X - toe.X) * (toe.Y - noon.Y) // along the noon line is up or down
					if afternoon := hour > 12; (right > 0) != (afternoon == clockwise) {
						t.Errorf("%s, %s, side %d: %d o'clock stands at %v from the toe at %v", w.school, kind, n+1, hour, p, toe)
					}
				}
			}
		}
	}
}

// The plate's compass: up is the way the noon line runs, and the needle points to
// magnetic north from there.
func TestCompassOnThePlate(t *testing.T) {
	for _, w := range witnesses {
		for _, name := range []string{"dial-face", "dial-blank"} {
			given := []string{"kind=level"}
			if name == "dial-blank" {
				given = nil
			}
			r := reckon(t, w.school, name, "2027-07-02", given...)
			d := r.Sheets[0].Drawing
			needle := entrytest.Roled(d, "needle")[0].Points
			at := math.Atan2(needle[1].X-needle[0].X, needle[0].Y-needle[1].Y) / degree
			want := w.variation
			if w.latitude < 0 {
				want += 180 // south is up
			}
			entrytest.Near(t, w.school+": needle on the plate", math.Remainder(at-want, 360), 0, 0.15)
			heads := entrytest.Roled(d, "head")
			if tip := heads[0].Points; tip[0].Y >= tip[1].Y {
				t.Errorf("%s: the arrow of the noon line points down", w.school)
			}
			tip := heads[1].Points[0]
			if math.Hypot(tip.X-needle[1].X, tip.Y-needle[1].Y) > 6 {
				t.Errorf("%s: the needle's head is at its other end", w.school)
			}
			said := ""
			for label := range entrytest.Labels(t, d) {
				if strings.Contains(label, "compass needle") {
					said = label
				}
			}
			if !strings.HasPrefix(said, side(w.latitude, "true north", "true south")) || !strings.HasSuffix(said, side(w.variation, "° east", "° west")) {
				t.Errorf("%s: the plate says %q", w.school, said)
			}
			if !strings.Contains(strings.Join(keys(entrytest.Labels(t, d)), "|"), side(w.latitude, "° north", "° south")) {
				t.Errorf("%s: the plate's latitude has the wrong side", w.school)
			}
		}
		r := reckon(t, w.school, "dial-blank", "2027-07-02")
		want := side(w.latitude, "right", "left")
		if got := entrytest.Shown(t, r, "after_side"); got != want {
			t.Errorf("%s: afternoon marks lie to the %s", w.school, got)
		}
		note := "dial-blank.note"
		if w.school == "line north" {
			note = "dial-blank.polar_note"
		}
		entrytest.Tells(t, r.Notes, note, "Afternoon marks lie to the "+want)
	}
}

func keys(m map[string]drawing.Point) []string {
	var list []string
	for key := range m {
		list = append(list, key)
	}
	return list
}

// Dial to clock = longitude west of the clock's meridian, 4 minutes a degree, and
// daylight saving, less the equation of time (erfa, equation-of-time.csv).
func TestDialToClockSides(t *testing.T) {
	equations := entrytest.Reference(t, "equation-of-time.csv", "erfa")
	saves := map[string][2]string{"alder reach": {"2027-03-14", "2027-11-07"}, "arctic": {"2027-03-28", "2027-10-31"}}
	for _, w := range witnesses {
		longitude := (w.meridian - w.longitude) * 240
		checked := 0
		for _, row := range equations {
			at := entrytest.Instant(t, row["utc"])
			if at.Year() != 2027 || at.YearDay()%60 > 4 {
				continue
			}
			checked++
			date := at.Format(time.DateOnly)
			r := reckon(t, w.school, "dial-clock", date)
			equation := entrytest.Number(t, row["apparent_minus_mean_s"])
			saving := 0.0
			switch span, ok := saves[w.school]; {
			case ok && date >= span[0] && date < span[1], w.school == "south" && (date < "2027-04-04" || date >= "2027-09-26"):
				saving = 3600
			}
			entrytest.Near(t, w.school+" "+date+": equation", entrytest.Fact(t, r, "equation_of_time").Number, equation, 20) // a third of a day of up to 30 s
			entrytest.Near(t, w.school+": longitude", entrytest.Fact(t, r, "longitude_part").Number, longitude, 0.5)
			entrytest.Near(t, w.school+" "+date+": saving", entrytest.Fact(t, r, "saving_part").Number, saving, 1e-9)
			total := longitude + saving - equation
			entrytest.Near(t, w.school+" "+date+": total", entrytest.Fact(t, r, "dial_to_clock").Number, total, 20)
			if got := entrytest.Shown(t, r, "dial_to_clock"); !strings.HasPrefix(got, side(total, "+", "-")) {
				t.Errorf("%s on %s: %v s is printed %s", w.school, date, total, got)
			}
			if got := entrytest.Shown(t, r, "longitude_part"); !strings.HasPrefix(got, side(longitude, "+", "-")) {
				t.Errorf("%s: a longitude part of %v s is printed %s", w.school, longitude, got)
			}
			if least, most := entrytest.Fact(t, r, "smallest").Number, entrytest.Fact(t, r, "largest").Number; least > total+20 || most < total-20 || least >= most {
				t.Errorf("%s: from %v to %v s", w.school, least, most)
			}
		}
		if checked < 6 {
			t.Errorf("%d dates", checked)
		}
		// The pocket strip: whole minutes without daylight saving, each under its month.
		r := reckon(t, w.school, "dial-clock", "2027-04-20")
		d := r.Sheets[0].Drawing // the strip is on it several times; the first is 42 mm high
		d.Shapes = slices.DeleteFunc(slices.Clone(d.Shapes), func(s drawing.Shape) bool { return s.Points[0].Y > 42 })
		labels := entrytest.Labels(t, d)
		cells := 0
		for _, s := range d.Shapes {
			if s.Role != "cell" {
				continue
			}
			cells++
			for m, name := range []string{"Jan", "Feb", "Mar", "Apr", "May", "June", "July", "Aug", "Sept", "Oct", "Nov", "Dec"} {
				if math.Abs(labels[name].X-s.Points[0].X) > 1 {
					continue
				}
				for _, day := range []int{1, 11, 21} {
					if math.Abs(labels[fmt.Sprintf("day %d", day)].Y-s.Points[0].Y) > 1 {
						continue
					}
					want := (longitude - equationOn(t, equations, time.Date(2027, time.Month(m+1), day, 12, 0, 0, 0, time.UTC))) / 60
					entrytest.Near(t, fmt.Sprintf("%s: strip of %d %s", w.school, day, name), s.Text.Number, want, 0.95)
					if printed := entrytest.Written(t, s.Text); s.Text.Number != 0 && !strings.HasPrefix(printed, side(s.Text.Number, "+", "-")) {
						t.Errorf("%s: %v min is printed %s", w.school, s.Text.Number, printed)
					}
				}
			}
		}
		if cells != 36 {
			t.Errorf("%s: %d cells", w.school, cells)
		}
	}
}

// equationOn is the equation of time at a moment, between the reference's rows.
func equationOn(t *testing.T, rows []map[string]string, at time.Time) float64 {
	t.Helper()
	for i := 1; i < len(rows); i++ {
		low, high := entrytest.Instant(t, rows[i-1]["utc"]), entrytest.Instant(t, rows[i]["utc"])
		if at.Before(low) || at.After(high) {
			continue
		}
		a, b := entrytest.Number(t, rows[i-1]["apparent_minus_mean_s"]), entrytest.Number(t, rows[i]["apparent_minus_mean_s"])
		return a + (b-a)*float64(at.Sub(low))/float64(high.Sub(low))
	}
	t.Fatalf("no equation of time on %v", at)
	return 0
}

// Marks made by the watch show later than the clock, fast, when the Sun has got
// ahead since, and an hour more when the clocks have gone back.
func TestMarksFastOrSlow(t *testing.T) {
	equations := entrytest.Reference(t, "equation-of-time.csv", "erfa")
	noon := func(date string) time.Time { return entrytest.Instant(t, date+"T12:00:00Z") }
	for _, c := range []struct {
		school, marked, date string
		clock                float64 // hours that the clocks have gone back
		longitude            float64
	}{
		{"alder reach", "2027-02-11", "2027-05-14", -1, -64.77}, {"alder reach", "2027-05-14", "2027-07-26", 0, -64.77}, {"alder reach", "2027-04-20", "2027-11-10", 1, -64.77},
		{"south", "2027-02-11", "2027-05-14", 1, 170.5}, {"south", "2027-05-14", "2027-10-20", -1, 170.5}, {"south", "2027-05-14", "2027-07-26", 0, 170.5},
		{"line north", "2027-02-11", "2027-05-14", 0, 103.8}, {"line north", "2027-05-14", "2027-07-26", 0, 103.8},
		{"arctic", "2027-02-11", "2027-05-14", -1, 18.95}, {"arctic", "2027-04-20", "2027-11-10", 1, 18.95},
	} {
		r := reckon(t, c.school, "dial-drift", c.date, "marked="+c.marked)
		part := equationOn(t, equations, noon(c.date)) - equationOn(t, equations, noon(c.marked))
		want := part + 3600*c.clock
		entrytest.Near(t, c.school+": equation part", entrytest.Fact(t, r, "equation_part").Number, part, 20)
		entrytest.Near(t, c.school+": clock part", entrytest.Fact(t, r, "clock_part").Number, 3600*c.clock, 1e-9)
		entrytest.Near(t, c.school+": fast", entrytest.Fact(t, r, "fast").Number, want, 20)
		if got := entrytest.Shown(t, r, "fast"); !strings.HasSuffix(got, side(want, " fast", " slow")) || strings.Contains(got, "-") {
			t.Errorf("%s from %s to %s: %v s is printed %s", c.school, c.marked, c.date, want, got)
		}
		if got := entrytest.Shown(t, r, "equation_part"); math.Abs(part) > 60 && !strings.HasPrefix(got, side(part, "+", "-")) {
			t.Errorf("%s: a part of %v s is printed %s", c.school, part, got)
		}
		// A fast shadow lies on the afternoon side of the mark of noon.
		name := "moved_noon"
		if c.school == "line north" {
			name = "moved_noon_mm"
		}
		if moved := entrytest.Fact(t, r, name).Number; moved*want <= 0 {
			t.Errorf("%s: the shadow of marks that are %v s off has moved by %v", c.school, want, moved)
		}
	}
}

// Causes, at the equinox noon, where the Sun is on the equator: a plate turned
// clockwise by a small τ is off by −4 min × τ sin φ (the rule that compute/dial
// derives), and one whose east side is low by +4 min × τ cos φ in the north: what
// leans east meets the Sun later, so its noon comes when ours is still ahead.
func TestCausesFastOrSlow(t *testing.T) {
	for _, w := range witnesses {
		if w.school == "line north" {
			continue
		}
		r := reckon(t, w.school, "dial-drift", "2027-04-20", "off_deg=2")
		seen := 0
		for _, row := range r.Tables[1].Rows {
			if row.Cells[1].Phrase.Key != "dial-drift.equinox" {
				continue
			}
			switch noon := row.Cells[4]; row.Cells[0].Phrase.Key {
			case "dial-drift.turned":
				want := -2 * 4 * math.Sin(w.latitude*degree)
				entrytest.Near(t, w.school+": turned", noon.Number/60, want, 0.15)
				if got := entrytest.Written(t, noon); !strings.HasPrefix(got, side(want, "+", "-")) {
					t.Errorf("%s: turned is printed %s", w.school, got)
				}
				seen++
			case "dial-drift.east_low":
				want := 2 * 4 * math.Cos(w.latitude*degree)
				entrytest.Near(t, w.school+": east low", noon.Number/60, want, 0.15)
				seen++
			case "dial-drift.steep":
				entrytest.Near(t, w.school+": steep at noon", noon.Number, 0, 1)
				seen++
			}
		}
		if seen != 3 {
			t.Errorf("%s: %d causes", w.school, seen)
		}
	}
}

// What marks tell, from erfa's shadows of stands that are out of place (dial-shadows.csv):
// turned 16.2° anticlockwise, and a style 10° too steep.
func TestMarksTellTheSides(t *testing.T) {
	shadows := entrytest.Reference(t, "dial-shadows.csv", "")
	records := func(w witness, stand string, watch time.Duration) string {
		text := "group,date,time,angle_deg\n"
		zone := map[string]string{"alder reach": "America/Moncton", "south": "Pacific/Auckland", "arctic": "Europe/Oslo"}[w.school]
		place, err := time.LoadLocation(zone)
		if err != nil {
			t.Fatal(err)
		}
		for _, row := range shadows {
			at := entrytest.Instant(t, row["utc"]).Add(watch).In(place)
			if row["place"] != w.place || row["stand"] != stand || at.Format(time.DateOnly) != "2027-04-20" && at.Format(time.DateOnly) != "2027-04-21" {
				continue
			}
			azimuth := 0.0
			if w.latitude < 0 {
				azimuth = 180
			}
			if stand == "turned" {
				azimuth -= 16.2
			}
			line := math.Remainder(entrytest.Number(t, row["shadow_deg"])-azimuth, 360)
			if w.latitude < 0 {
				line = -line
			}
			text += fmt.Sprintf("A,%s,%s,%.2f\n", at.Format(time.DateOnly), at.Format("15:04"), line)
		}
		return text
	}
	for _, w := range witnesses {
		if w.school == "line north" {
			continue
		}
		r := ReckonMarks(t, w.school, records(w, "turned", 0))
		entrytest.Near(t, w.school+": turn", entrytest.Fact(t, r, "turn").Number, -16.2, 0.5)
		if got := entrytest.Shown(t, r, "turn"); !strings.HasSuffix(got, "° anticlockwise") || strings.Contains(got, "-") {
			t.Errorf("%s: turned %s", w.school, got)
		}
		finding := entrytest.Shown(t, r, "finding")
		// Only at the first school that is what the needle does.
		if got := strings.Contains(finding, "It was laid along the needle"); got != (w.school == "alder reach") {
			t.Errorf("%s: %s", w.school, finding)
		}
		if !strings.Contains(finding, "turned 16° anticlockwise") || !strings.Contains(finding, "The gnomon’s slope is right") || !strings.Contains(finding, "The watch was right") {
			t.Errorf("%s: %s", w.school, finding)
		}
		r = ReckonMarks(t, w.school, records(w, "slope-10-more", 0))
		entrytest.Near(t, w.school+": gnomon", entrytest.Fact(t, r, "gnomon_off").Number, 10, 0.5)
		if got, finding := entrytest.Shown(t, r, "gnomon_off"), entrytest.Shown(t, r, "finding"); !strings.HasSuffix(got, "° too steep") || !strings.Contains(finding, "too steep (±") || !strings.Contains(finding, "The plate lay true") {
			t.Errorf("%s: %s; %s", w.school, got, finding)
		}
		for watch, words := range map[time.Duration]string{11 * time.Minute: " fast", -11 * time.Minute: " slow"} {
			e, _ := entry.Find(entries(), "dial-marks")
			fields := dialRecords(t, records(w, "true", watch))
			fields.File = "marks.csv"
			given := form.Values{"records.dial_marks": fields, "watch_within_min": 0.0, "find": []string{"watch"}}
			r, err := e.Reckon(e.Complete(entrytest.Settings(t, w.school), given, entrytest.Day(t, "2027-04-20")))
			if err != nil {
				t.Fatal(err)
			}
			entrytest.Near(t, w.school+": watch", entrytest.Fact(t, r, "watch_off").Number/60, watch.Minutes(), 0.5)
			if got, finding := entrytest.Shown(t, r, "watch_off"), entrytest.Shown(t, r, "finding"); !strings.HasSuffix(got, words) || !strings.Contains(finding, "The watch was 11 min"+words) {
				t.Errorf("%s: %s; %s", w.school, got, finding)
			}
		}
	}
}

// The needle corrected to the wrong side turns a plate by twice the variation:
// 32.4° anticlockwise at Alder Reach. Marks by vectors of the test: the Sun at
// 11.5° of declination (20 April, from memory) and by the clock's noon of 13:18;
// the style's tip throws its shadow where the ray through it meets the plate.
func TestMarksOfTheWrongSide(t *testing.T) {
	const phi, declination = 46.09 * degree, 11.5 * degree
	for turn, words := range map[float64]string{
		-32.4: "The needle was corrected to the wrong side", -16.2: "It was laid along the needle", 0: "The plate lay true",
		16.2: "The plate was turned 16° clockwise", 32.4: "The plate was turned 32° clockwise",
	} {
		text := "date,time,angle_deg\n"
		for clock := 8.0; clock <= 18; clock++ {
			h := (clock - 13.3) * 15 * degree
			// north, east, up
			up := math.Sin(phi)*math.Sin(declination) + math.Cos(phi)*math.Cos(declination)*math.Cos(h)
			north := math.Cos(phi)*math.Sin(declination) - math.Sin(phi)*math.Cos(declination)*math.Cos(h)
			east := -math.Cos(declination) * math.Sin(h)
			n, e := math.Cos(phi)*math.Cos(turn*degree), math.Cos(phi)*math.Sin(turn*degree)
			far := math.Sin(phi) / up
			line := math.Remainder(math.Atan2(e-far*east, n-far*north)/degree-turn, 360)
			text += fmt.Sprintf("2027-04-20,%.0f:00,%.2f\n", clock, line)
		}
		r := ReckonMarks(t, "alder reach", text)
		entrytest.Near(t, "turn", entrytest.Fact(t, r, "turn").Number, turn, 0.5)
		if got := entrytest.Shown(t, r, "finding"); !strings.Contains(got, words) || strings.Contains(got, "laid along the needle") != (turn == -16.2) || strings.Contains(got, "wrong side") != (turn == -32.4) {
			t.Errorf("a plate turned by %v°: %s", turn, got)
		}
	}
}

// dial-hours on its bounds: groups in turn where they do not divide, lesson times
// at their first and last minute, and what it warns of.
func TestHoursOnBothSides(t *testing.T) {
	e, _ := entry.Find(entries(), "dial-hours")
	values := entrytest.Settings(t, "alder reach").With(form.Values{"class.pupils": 10, "class.group_size": 4, "term.lesson_times": []form.TimeSpan{
		{From: span("9:00"), To: span("10:00")}, {From: span("10:15"), To: span("11:00")}, {From: span("11:00"), To: span("12:01")},
	}})
	r, err := e.Careful().Reckon(e.Complete(values, nil, entrytest.Day(t, "2027-04-20")))
	if err != nil {
		t.Fatal(err)
	}
	// 10 pupils in fours are three groups of 4, 3 and 3 (2.5, rounded). 12:01 wants 13:00.
	if got := strings.Join(entrytest.Texts(t, r, "hours", "group"), ", "); got != "group 1, group 2, group 3, group 1, group 2" {
		t.Error(got)
	}
	if got := strings.Join(entrytest.Texts(t, r, "hours", "during"), ", "); got != "in lesson time 1, outside the lesson times, in lesson time 3, in lesson time 3, outside the lesson times" {
		t.Error(got)
	}
	if n := entrytest.Fact(t, r, "in_lessons").Number; n != 3 {
		t.Error(n, "in lessons")
	}
	entrytest.Tells(t, r.Cautions, "caution.sun", "Never look at the Sun")
	entrytest.Tells(t, r.Cautions, "caution.hour-keepers", "in pairs")
	r = reckon(t, "alder reach", "dial-hours", "2027-04-20", "class.pupils=0")
	if got := entrytest.Texts(t, r, "hours", "group"); len(got) != 7 || got[0] != "two hour keepers" || entrytest.Shown(t, r, "first") != "9:00" || entrytest.Shown(t, r, "last") != "15:00" {
		t.Errorf("%v from %s to %s", got, entrytest.Shown(t, r, "first"), entrytest.Shown(t, r, "last"))
	}
	if dark := reckon(t, "arctic", "dial-hours", "2027-12-21"); !entrytest.Says(dark.Cautions, "caution.sun") || !entrytest.Says(dark.Warnings, "dial-hours.dark") {
		t.Error("nothing is said of the polar night")
	}
	// IANA: the clocks of Auckland go back on 4 April 2027, those of Oslo forward on 28 March.
	for school, date := range map[string]string{"south": "2027-04-04", "arctic": "2027-03-28"} {
		entrytest.Tells(t, reckon(t, school, "dial-hours", date).Warnings, "dial-hours.clock_change", "change by 1 h")
		before := entrytest.Day(t, date).Add(-1).String()
		if r := reckon(t, school, "dial-hours", before); len(r.Warnings) > 0 {
			t.Errorf("%s on %s: %v", school, before, r.Warnings)
		}
	}
}

// Warnings of a needle that is weak or of no use, after WMM2025's zones: weak
// below a horizontal field of 6000 nT, of no use below 2000 nT. By the official test
// values for 2025, 89° N 121° W has 1504 nT, 80° N 96° W 2164, 82° N 87° E 2302 nT.
func TestNeedleWarnings(t *testing.T) {
	for _, c := range []struct{ latitude, longitude, elevation, want string }{
		{"89", "-121", "28", "place-facts.no_compass"}, {"80", "-96", "48", "place-facts.weak_compass"}, {"82", "87", "54", "place-facts.weak_compass"},
		{"46.09", "-64.77", "20", ""}, {"-45.87", "170.5", "0", ""},
	} {
		for _, name := range []string{"dial-table", "dial-north", "dial-day"} {
			r := reckon(t, "alder reach", name, "2027-04-20", "school.latitude="+c.latitude, "school.longitude="+c.longitude, "school.elevation_m="+c.elevation)
			for _, key := range []string{"place-facts.no_compass", "place-facts.weak_compass"} {
				if got := entrytest.Says(r.Warnings, key); got != (key == c.want) {
					t.Errorf("%s at %s N %s E: %s is said: %v", name, c.latitude, c.longitude, key, got)
				}
			}
		}
	}
	for date, outside := range map[string]bool{"2024-12-30": true, "2025-01-02": false, "2029-12-30": false, "2030-01-02": true} {
		if got := entrytest.Says(reckon(t, "south", "dial-north", date).Warnings, "place-facts.outside_model"); got != outside {
			t.Errorf("on %s the model is said to be outside its years: %v", date, got)
		}
		if got := entrytest.Says(reckon(t, "line north", "dial-table", date).Warnings, "place-facts.outside_model"); got != outside {
			t.Errorf("on %s the model is said to be outside its years on a polar dial's page: %v", date, got)
		}
	}
}

// Both sides of 15° of latitude, where a level dial gets too shallow and a polar one is
// built, and a noon Sun almost overhead.
func TestShallowOnBothSides(t *testing.T) {
	for latitude, shallow := range map[string]bool{"14.9": true, "-14.9": true, "15.1": false, "-15.1": false} {
		r := reckon(t, "alder reach", "dial-face", "2027-04-20", "school.latitude="+latitude)
		if polar, level := entrytest.Shown(t, r, "polar"), entrytest.Shown(t, r, "level"); polar != map[bool]string{true: "yes", false: "no"}[shallow] || polar == level {
			t.Errorf("%s°: polar %s, level %s", latitude, polar, level)
		}
		r = reckon(t, "alder reach", "dial-face", "2027-04-20", "school.latitude="+latitude, "kind=level")
		first := math.Atan(math.Sin(math.Abs(entrytest.Number(t, latitude))*degree)*math.Tan(15*degree)) / degree
		if shallow {
			entrytest.Tells(t, r.Warnings, "dial-face.unreadable", "hard to build and to read", fmt.Sprintf("only %.1f° apart", first), "Choose another kind")
		} else if entrytest.Says(r.Warnings, "dial-face.unreadable") {
			t.Errorf("%s° is called shallow", latitude)
		}
		day := reckon(t, "alder reach", "dial-day", "2027-04-20", "school.latitude="+latitude)
		if got := entrytest.Fact(t, day, "tip_height").Number; (got == 100) != shallow {
			t.Errorf("%s°: a tip of %v mm", latitude, got)
		}
	}
	// A shadow shorter than a twentieth of the stick: the Sun within 2.9° of the
	// zenith. On 20 March its declination is 0.0° at most places (from memory).
	for latitude, overhead := range map[string]bool{"2.6": true, "-2.6": true, "3.2": false, "-3.2": false} {
		r := reckon(t, "equator", "dial-north", "2027-03-20", "school.latitude="+latitude)
		if got := entrytest.Says(r.Warnings, "dial-north.overhead"); got != overhead {
			t.Errorf("at %s° the noon shadow is too short: %v", latitude, got)
		}
	}
}

// The pair of gnomon halves is mirrored, its style rises from the toe, and the
// settings give its measures.
func TestGnomonByHand(t *testing.T) {
	for _, w := range witnesses[:2] {
		r := reckon(t, w.school, "dial-gnomon", "2027-04-20", "stock.style_mm=130")
		phi := math.Abs(w.latitude) * degree
		for name, want := range map[string]float64{"angle": math.Abs(w.latitude), "base": 130 * math.Cos(phi), "height": 130 * math.Sin(phi), "style": 130, "plate_slope": 0} {
			entrytest.Near(t, w.school+": "+name, entrytest.Fact(t, r, name).Number, want, 1e-9)
		}
		entrytest.Tells(t, r.Cautions, "caution.scissors", "scissors", "An adult cuts")
		entrytest.Tells(t, r.Cautions, "caution.tip", "tape over it")
		// A wall's dial has the colatitude for its style, and its plate stands.
		r = reckon(t, w.school, "dial-gnomon", "2027-04-20", "stock.style_mm=130", "kind=wall")
		entrytest.Near(t, w.school+": style of a wall", entrytest.Fact(t, r, "angle").Number, 90-math.Abs(w.latitude), 1e-9)
		entrytest.Near(t, w.school+": wall", entrytest.Fact(t, r, "plate_slope").Number, 90, 1e-9)
		// An equatorial plate leans by the colatitude.
		r = reckon(t, w.school, "dial-gnomon", "2027-04-20", "stock.style_mm=130", "kind=equatorial")
		entrytest.Near(t, w.school+": equatorial", entrytest.Fact(t, r, "plate_slope").Number, 90-math.Abs(w.latitude), 1e-9)
		if got := entrytest.Shown(t, r, "shape"); got != "an upright rod" {
			t.Errorf("%s: %s", w.school, got)
		}
		entrytest.Tells(t, r.Notes, "dial-gnomon.rod_note", "130 mm")
		table := reckon(t, w.school, "dial-table", "2027-04-20", "stock.style_mm=130")
		entrytest.Near(t, "height in the table", entrytest.Fact(t, table, "gnomon_height").Number, 130*math.Sin(phi), 1e-9)
		entrytest.Near(t, "base in the table", entrytest.Fact(t, table, "gnomon_base").Number, 130*math.Cos(phi), 1e-9)
		line := func(h float64) float64 {
			return math.Atan2(math.Sin(phi)*math.Sin(h*degree), math.Cos(h*degree)) / degree
		}
		entrytest.Near(t, "first hour", entrytest.Fact(t, table, "first_hour").Number, line(15), 1e-9)
		entrytest.Near(t, "five to six", entrytest.Fact(t, table, "uneven").Number, 90-line(75), 1e-9)
		entrytest.Tells(t, table.Working, "dial-table.working_gnomon", "130 mm × sin "+fmt.Sprintf("%.0f", math.Floor(math.Abs(w.latitude))), fmt.Sprintf("° = %.0f mm; base", 130*math.Sin(phi)), fmt.Sprintf("° = %.0f mm", 130*math.Cos(phi)))
	}
}
