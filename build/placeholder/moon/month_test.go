package moon_test

import (
	"math"
	"testing"
	"time"

	"noonbook/build/drawing"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/school"
)

// Phases of April 2027 at Alder Reach to 20 s: pyephem's rows of
// testdata/reference/phases.csv, which are in TT, less the 69 s of TT − UT.
func TestMoonMonthAtAlderReach(t *testing.T) {
	r := reckon(t, "alder reach", "moon-month", "2027-02-01", "month=2027-04")
	for name, want := range map[string]string{
		"new_moon": "2027-04-06T20:51:10-03:00", "first_quarter": "2027-04-13T19:56:39-03:00",
		"full_moon": "2027-04-20T19:27:10-03:00", "last_quarter": "2027-04-28T17:17:52-03:00",
	} {
		got := entrytest.Fact(t, r, name).Time
		entrytest.Near(t, name, got.Sub(entrytest.Instant(t, want)).Seconds(), 0, 20)
		if _, offset := got.Zone(); offset != -3*3600 {
			t.Errorf("%s is not by the school's clock: %s", name, got)
		}
	}
}

// Every phase of ten years stands in the table of its month, within 10 s of the
// Swiss Ephemeris; the reference libraries differ among themselves by 5 s.
func TestMoonMonthAgainstReference(t *testing.T) {
	months := map[string][]time.Time{}
	worst := 0.0
	for _, row := range entrytest.Reference(t, "phases.csv", "swisseph") {
		if row["tt"] < "2026-02" || row["tt"] > "2035-12" {
			continue
		}
		want := entrytest.FromTT(t, row["tt"])
		local := want.In(school.TimeZone.Of(entrytest.Settings(t, "alder reach")))
		month := local.Format("2006-01")
		if months[month] == nil {
			for _, v := range entrytest.Cells(t, reckon(t, "alder reach", "moon-month", "2027-01-01", "month="+month), "phases", "at") {
				months[month] = append(months[month], v.Time)
			}
		}
		nearest := math.Inf(1)
		for _, got := range months[month] {
			nearest = min(nearest, got.Sub(want).Abs().Seconds())
		}
		worst = max(worst, nearest)
		entrytest.Near(t, row["phase"]+" "+row["tt"], nearest, 0, 10)
	}
	t.Logf("phases of 2026 to 2035: within %.1f s of the Swiss Ephemeris", worst)
}

// May 2026 has two full Moons, on the 1st and the 31st: U.S. Naval Observatory,
// Phases of the Moon 2026, from memory; February 2018 had none in UTC.
func TestMonthsWithTwoOfAPhaseAndWithNone(t *testing.T) {
	count := func(month string, given ...string) (n int) {
		for _, v := range entrytest.Cells(t, reckon(t, "alder reach", "moon-month", "2027-01-01", append(given, "month="+month)...), "phases", "phase") {
			if v.Phrase.Key == "phase.full_moon" {
				n++
			}
		}
		return n
	}
	if n := count("2026-05"); n != 2 {
		t.Errorf("May 2026 has %d full Moons", n)
	}
	if n := count("2018-02", "school.time_zone=UTC"); n != 0 {
		t.Errorf("February 2018 has %d full Moons", n)
	}
	full := entrytest.Fact(t, reckon(t, "alder reach", "moon-month", "2027-01-01", "month=2018-02", "school.time_zone=UTC"), "full_moon").Time
	if full.Month() != time.March {
		t.Errorf("the full Moon after the beginning of February 2018 is on %s", full)
	}
}

// The lit side, from pole to pole, is the direction from Moon to Sun of the
// reference tables, rounded to eighths; half a degree round the borders between
// eighths is left out, four times the accuracy that the almanac states.
func TestLitSideAgainstReference(t *testing.T) {
	sides := []string{"top", "upper_right", "right", "lower_right", "bottom", "lower_left", "left", "upper_left"}
	compared := 0
	for _, row := range entrytest.Reference(t, "moon-positions.csv", "swisseph") {
		lean := entrytest.Number(t, row["lit_limb_deg"])
		if border := math.Mod(lean, 45); entrytest.Number(t, row["altitude_deg"]) < 1 || math.Abs(border-22.5) < 0.5 {
			continue
		}
		at := entrytest.Instant(t, row["utc"])
		r := reckon(t, "alder reach", "moon-month", at.Format(time.DateOnly), "school.time_zone=UTC", "time="+at.Format("15:04"),
			"school.latitude="+row["latitude_deg"], "school.longitude="+row["longitude_deg"], "school.elevation_m="+row["elevation_m"])
		got, want := entrytest.Fact(t, r, "side").Phrase.Key, "side."+sides[int(math.Round(lean/45))%8]
		if lit := entrytest.Fact(t, r, "lit").Number; lit > 1 && lit < 99 {
			compared++
			if got != want {
				t.Errorf("%s at %s: %s, want %s (%v°)", row["place"], row["utc"], got, want, lean)
			}
		}
	}
	if compared < 25 {
		t.Errorf("only %d Moons were compared", compared)
	}
}

// The drawn lit part has the area that its number says and lies on the side
// that its words say: right in the north, left in the south while the Moon
// grows, and below near the equator, where the thin Moon lies on its back.
func TestDrawnMoons(t *testing.T) {
	for _, c := range []struct {
		school string
		day    int
		dx, dy float64 // direction of the lit part from the disc's centre, y down
	}{
		{"alder reach", 13, 1, 0}, {"south", 14, -1, 0},
		{"alder reach", 28, -1, 0}, {"south", 29, 1, 0},
		{"line south", 9, 0, 1}, {"line north", 9, 0, 1}, {"equator", 9, 0, 1},
	} {
		r := reckon(t, c.school, "moon-month", "2027-04-01")
		want := entrytest.Cells(t, r, "days", "lit")[c.day-1].Number / 100
		centre, lit := drawn(t, r.Drawings[0], c.day)
		middle, area := entrytest.Centroid(lit.Points)
		entrytest.Near(t, c.school+": lit area", area/(math.Pi*centre.Radius*centre.Radius), want, 0.01)
		x, y := middle.X-centre.Points[0].X, middle.Y-centre.Points[0].Y
		if along := (x*c.dx + y*c.dy) / math.Hypot(x, y); along < math.Cos(math.Pi/4) {
			t.Errorf("%s on the %dth: the lit part lies toward (%.2f, %.2f)", c.school, c.day, x, y)
		}
	}
}

// drawn returns the disc and the lit part of a day of a calendar.
func drawn(t *testing.T, d drawing.Drawing, day int) (disc, lit drawing.Shape) {
	t.Helper()
	for i, s := range d.Shapes {
		if s.Role == "figure" && s.Text.Number == float64(day) {
			return d.Shapes[i+1], d.Shapes[i+2]
		}
	}
	t.Fatalf("day %d is not drawn", day)
	return
}

// The Moon at least 15° high (as seen, 1010 hPa and 10 °C) in the lesson times
// of Alder Reach, April 2027: pyephem 4.1.4, Moon scanned every 10 s. Its times
// are met to 15 s (the lift of the air alone is worth 25 s), heights and bearings to 0.05°.
func TestMoonSchoolAtAlderReach(t *testing.T) {
	lessons := "term.lesson_times=9:10-10:00,10:15-11:05,13:15-14:05"
	r := reckon(t, "alder reach", "moon-school", "2027-04-20", lessons, "altitude_deg=15")
	want := []struct {
		from, to          string
		altitude, bearing float64
		direction         string
	}{
		{"2027-04-12T13:15:00-03:00", "2027-04-12T14:05:00-03:00", 35.20, 87.35, "toward.east"},
		{"2027-04-13T13:15:00-03:00", "2027-04-13T14:05:00-03:00", 23.58, 79.73, "toward.east"},
		{"2027-04-28T09:10:00-03:00", "2027-04-28T09:50:40-03:00", 18.48, 206.88, "toward.south_southwest"},
		{"2027-04-29T09:10:00-03:00", "2027-04-29T10:00:00-03:00", 25.36, 197.51, "toward.south_southwest"},
		{"2027-04-29T10:15:00-03:00", "2027-04-29T11:05:00-03:00", 20.83, 213.37, "toward.south_southwest"},
		{"2027-04-30T09:10:00-03:00", "2027-04-30T10:00:00-03:00", 31.72, 186.98, "toward.south"},
		{"2027-04-30T10:15:00-03:00", "2027-04-30T11:05:00-03:00", 28.93, 204.80, "toward.south_southwest"},
	}
	from, to := entrytest.Cells(t, r, "chances", "from"), entrytest.Cells(t, r, "chances", "to")
	altitude, bearing, direction := entrytest.Cells(t, r, "chances", "altitude"), entrytest.Cells(t, r, "chances", "bearing"), entrytest.Cells(t, r, "chances", "direction")
	if len(from) != len(want) {
		t.Fatalf("%d stretches, want %d", len(from), len(want))
	}
	for i, w := range want {
		entrytest.Near(t, w.from, from[i].Time.Sub(entrytest.Instant(t, w.from)).Seconds(), 0, 15)
		entrytest.Near(t, w.to, to[i].Time.Sub(entrytest.Instant(t, w.to)).Seconds(), 0, 15)
		entrytest.Near(t, "altitude at "+w.from, altitude[i].Number, w.altitude, 0.05)
		entrytest.Near(t, "bearing at "+w.from, bearing[i].Number, w.bearing, 0.05)
		if got := direction[i].Phrase.Key; got != w.direction {
			t.Errorf("direction at %s is %s", w.from, got)
		}
	}
	entrytest.Near(t, "days", entrytest.Fact(t, r, "days").Number, 5, 0)
	off := reckon(t, "alder reach", "moon-school", "2027-04-20", lessons, "altitude_deg=15", "term.days_off=2027-04-12,2027-04-28", "term.school_days=monday,wednesday,thursday")
	entrytest.Near(t, "days with days off", entrytest.Fact(t, off, "days").Number, 1, 0)
}

// Near the Sun the Moon is not to be searched for: new Moon on 6 April 2027.
func TestMoonSchoolKeepsAwayFromTheSun(t *testing.T) {
	r := reckon(t, "alder reach", "moon-school", "2027-04-20", "from=2027-04-05", "to=2027-04-09", "term.lesson_times=9:10-15:00")
	apart, safe := entrytest.Cells(t, r, "chances", "sun_distance"), entrytest.Cells(t, r, "chances", "safe")
	unsafe := 0
	for i := range apart {
		if (safe[i].Number == 1) != (apart[i].Number >= 35) {
			t.Errorf("%v° from the Sun is safe: %v", apart[i].Number, safe[i].Number)
		}
		if safe[i].Number == 0 {
			unsafe++
		}
	}
	if unsafe < 2 {
		t.Errorf("round new Moon %d days are marked as near the Sun", unsafe)
	}
	entrytest.Near(t, "near_sun", entrytest.Fact(t, r, "near_sun").Number, float64(unsafe), 0)
	if len(r.Cautions) == 0 {
		t.Error("no caution")
	}
}

// At Utqiagvik the Moon rises at 0:35:27 and again at 23:56:41 on 7 July 2026, and sets
// at 0:01:18 and 23:28:53 on the 19th (astronomy-engine 2.1.19): both are told.
func TestTwoMoonrisesOfADay(t *testing.T) {
	utqiagvik := []string{"school.latitude=71.29", "school.longitude=-156.79", "school.time_zone=America/Anchorage"}
	for date, want := range map[string][2]string{
		"2026-07-07": {"0:35 and 23:57", "16:42"},
		"2026-07-19": {"14:30", "0:01 and 23:29"},
	} {
		r := reckon(t, "alder reach", "moon-month", date, utqiagvik...)
		day := entrytest.Day(t, date).Day - 1
		for i, name := range []string{"rise", "set"} {
			if got := entrytest.Shown(t, r, name); got != want[i] {
				t.Errorf("%s, %s: %s, want %s", date, name, got, want[i])
			}
			if got := entrytest.Texts(t, r, "days", name)[day]; got != want[i] {
				t.Errorf("%s, %s in the table: %s, want %s", date, name, got, want[i])
			}
		}
	}
}
