package moon_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"noonbook/build/placeholder/entrytest"
	"noonbook/build/say"
)

const degree = math.Pi / 180

var fourSchools = map[string]struct{ latitude, longitude float64 }{
	"alder reach": {46.09, -64.77}, "south": {-45.87, 170.5}, "line north": {1.4, 103.8}, "arctic": {69.6, 18.95},
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

// East of the Sun the Moon grows, west of it it shrinks: sides and lit parts of the
// Swiss Ephemeris (aspects.csv), away from the quarters.
func TestWaxingAndWaning(t *testing.T) {
	names := map[string]int{}
	for _, row := range entrytest.Reference(t, "aspects.csv", "swisseph") {
		lit := 0.0
		if row["body"] == "moon" {
			lit = entrytest.Number(t, row["lit"])
		}
		if lit < 0.03 || lit > 0.97 || math.Abs(lit-0.5) < 0.15 { // within a day lit changes by 0.1, and a quarter has a name
			continue
		}
		want := map[string]string{"east": "waxing", "west": "waning"}[row["side"]] + map[bool]string{true: " gibbous", false: " crescent"}[lit > 0.5]
		for school, at := range fourSchools {
			date := row["utc"][:10]
			r := reckon(t, school, "moon-month", date)
			if got := entrytest.Shown(t, r, "phase"); got != want {
				t.Errorf("%s on %s, %s of the Sun and %v lit: %s", school, date, row["side"], lit, got)
			}
			names[want]++
			// The lit limb looks to the Sun: right while the Moon grows, seen from the north,
			// left from the south; near the line it may lie on its back.
			side := entrytest.Shown(t, r, "side")
			if math.Abs(at.latitude) < 10 || side == "below the horizon" || at.latitude > 60 {
				continue
			}
			wanted := map[bool]string{true: "right", false: "left"}[(row["side"] == "east") == (at.latitude > 0)]
			if other := map[string]string{"right": "left", "left": "right"}[wanted]; strings.Contains(side, other) {
				t.Errorf("%s on %s, %s: lit on the %s", school, date, want, side)
			}
		}
	}
	if len(names) != 4 {
		t.Errorf("phases that were tried: %v", names)
	}
}

// A growing Moon is drawn for sunset and stands in the west half or the south, a
// shrinking one for sunrise: times are those of the Sun's height.
func TestMoonsAreDrawnInTheEveningOrMorning(t *testing.T) {
	for school, at := range fourSchools {
		if school == "arctic" {
			continue
		}
		r := reckon(t, school, "moon-month", "2027-04-01")
		phases, drawn := entrytest.Texts(t, r, "days", "phase"), entrytest.Cells(t, r, "days", "drawn_at")
		evenings, mornings := 0, 0
		for i, phase := range phases {
			if drawn[i].Kind == say.Nothing || math.Abs(sunHeight(drawn[i].Time, at.latitude, at.longitude)+50.0/60) > 0.3 {
				continue // down at sunset or sunrise
			}
			hour := drawn[i].Time.Hour()
			switch {
			case strings.HasPrefix(phase, "waxing"):
				evenings++
				if hour < 12 {
					t.Errorf("%s: a %s is drawn for %d o'clock", school, phase, hour)
				}
			case strings.HasPrefix(phase, "waning"):
				mornings++
				if hour >= 12 {
					t.Errorf("%s: a %s is drawn for %d o'clock", school, phase, hour)
				}
			}
		}
		if evenings < 5 || mornings < 5 {
			t.Errorf("%s: %d evenings and %d mornings", school, evenings, mornings)
		}
		// The calendar has each Moon in the column of its weekday (Zeller: 1 April 2027 is
		// a Thursday).
		for starts, column := range map[string]float64{"monday": 3, "sunday": 4} {
			d := reckon(t, school, "moon-month", "2027-04-01", "week_starts="+starts).Drawings[0]
			labels := entrytest.Labels(t, d)
			entrytest.Near(t, "column of the first", labels["1"].X, 25*column+1.2, 1e-9)
			entrytest.Near(t, "column of the 8th", labels["8"].X, labels["1"].X, 1e-9)
			if labels["8"].Y <= labels["1"].Y {
				t.Error("weeks run upwards")
			}
			entrytest.Near(t, "column of Thursday", labels["Thursday"].X, 25*(column+0.5), 1e-9)
		}
	}
}

// What the diary takes for right, on both sides of each bound, about pyephem's Moon
// of 2027-04-13 16:00 at Alder Reach (entrytest.MoonAtAlderReach): 48.3 % lit at 33° from
// the top, azimuth 100.0°, altitude 42.6°. Lit parts to 15 %, heights to 15°, sides and
// directions to the next eighth.
func TestMoonLogOnBothSides(t *testing.T) {
	for _, c := range []struct {
		column, word string
		fits, not    []string
	}{
		{"lit_percent", "the lit part", []string{"34", "50", "63"}, []string{"33", "64", "0", "100"}},
		{"altitude_deg", "the height", []string{"28", "43", "57"}, []string{"27", "58", "0"}},
		{"lit_side", "the side", []string{"top", "upper_right", "right"}, []string{"lower_right", "bottom", "lower_left", "left", "upper_left"}},
		{"direction", "the direction", []string{"northeast", "east", "southeast"}, []string{"north", "south", "southwest", "west", "northwest"}},
	} {
		for verdict, values := range map[string][]string{"fits": c.fits, c.word: c.not} {
			for _, value := range values {
				r := reckonLog(t, "alder reach", "moon-log", "date,time,"+c.column+"\n2027-04-13,16:00,"+value+"\n")
				if got := entrytest.Texts(t, r, "looks", "verdict")[0]; got != verdict {
					t.Errorf("%s %s: %s", c.column, value, got)
				}
				finding := entrytest.Shown(t, r, "finding")
				if want := map[bool]string{true: "1 of 1 look", false: "0 of 1 look"}[verdict == "fits"]; !strings.HasPrefix(finding, want) {
					t.Errorf("%s %s: %s", c.column, value, finding)
				}
			}
		}
	}
	// Mirrored pictures are spoken of from three on, when more than half are.
	const head = "date,time,lit_side\n"
	row := func(side string, n int) string { return strings.Repeat("2027-04-13,16:00,"+side+"\n", n) }
	for text, told := range map[string]bool{
		row("left", 2): false, row("lower_left", 3): true, row("lower_left", 2) + row("upper_right", 1): true,
		row("lower_left", 2) + row("upper_right", 2): false, row("upper_right", 3): false, row("upper_left", 3): false,
	} {
		r := reckonLog(t, "alder reach", "moon-log", head+text)
		if got := entrytest.Says(r.Notes, "moon-log.mirrored"); got != told {
			t.Errorf("%q is called mirrored: %v", text, got)
		}
	}
	r := reckonLog(t, "alder reach", "moon-log", "date,time,lit_percent\n2027-04-13,16:00,50\n")
	entrytest.Tells(t, r.Working, "moon-log.working", "right to 15 %", "(45°)", "height to 15°")
	empty := reckon(t, "alder reach", "moon-log", "2027-04-20")
	if !entrytest.Says(empty.Notes, "moon-log.no_records") || entrytest.Shown(t, empty, "finding") != "nobody has seen the Moon yet" {
		t.Error("an empty diary finds something")
	}
	// Every kind of thing that a look without a Moon must not tell.
	for _, column := range []string{"lit_percent", "lit_side", "direction", "altitude_deg"} {
		value := map[string]string{"lit_percent": "40", "lit_side": "left", "direction": "south", "altitude_deg": "30"}[column]
		for _, seen := range []string{"no", "cloud"} {
			if _, err := tryLog(t, "alder reach", "moon-log", "date,time,seen,"+column+"\n2027-04-13,16:00,"+seen+","+value+"\n"); err == nil || !strings.Contains(err.Error(), `seen is not "yes"`) {
				t.Errorf("%s with %s: %v", column, seen, err)
			}
		}
	}
}

// The diary sends nobody out in school hours or an hour about them, says "by day"
// while the Sun is up and "with an adult" while it is down, and keeps to the height
// that is asked for.
func TestDiaryHoursBySunHeight(t *testing.T) {
	for school, at := range fourSchools {
		r := reckon(t, school, "moon-diary", "2027-04-05", "term.lesson_times=8:20-8:25,8:10-8:15", "earliest=6:30", "latest=18:30", "altitude_deg=20", "weeks=8")
		places, times, heights := entrytest.Texts(t, r, "days", "place"), entrytest.Cells(t, r, "days", "at"), entrytest.Cells(t, r, "days", "altitude")
		count := map[string]float64{}
		for i, place := range places {
			count[place]++
			if times[i].Kind == say.Nothing {
				if place != "too low or too late" && place != "too near the Sun" {
					t.Errorf("%s: no time %s", school, place)
				}
				continue
			}
			clock := float64(times[i].Time.Hour()) + float64(times[i].Time.Minute())/60
			inLesson := clock >= 8+10.0/60-0.01 && clock <= 8+25.0/60+0.01
			sun := sunHeight(times[i].Time, at.latitude, at.longitude) + 50.0/60
			switch place {
			case "at school":
				if weekday := times[i].Time.Weekday(); !inLesson || weekday == time.Saturday || weekday == time.Sunday {
					t.Errorf("%s: at school at %v", school, times[i].Time)
				}
			case "at home, by day", "with an adult":
				weekend := times[i].Time.Weekday() == time.Saturday || times[i].Time.Weekday() == time.Sunday
				if clock < 6.5 || clock > 18.5 || !weekend && clock > 7+10.0/60+0.01 && clock < 9+25.0/60-0.01 {
					t.Errorf("%s: %s at %v", school, place, times[i].Time)
				}
				if (sun > 0.1) && place == "with an adult" || sun < -0.1 && place != "with an adult" {
					t.Errorf("%s: %s at %v, with the Sun at %.1f°", school, place, times[i].Time, sun)
				}
			}
			if heights[i].Number < 20-1 { // the quarter of an hour lies in the stretch; a day before it may be cut
				t.Errorf("%s: the Moon at %v°", school, heights[i].Number)
			}
		}
		for fact, place := range map[string]string{"in_lessons": "at school", "by_day": "at home, by day", "after_sunset": "with an adult", "near_sun": "too near the Sun"} {
			entrytest.Near(t, school+": "+fact, entrytest.Fact(t, r, fact).Number, count[place], 0)
		}
		entrytest.Near(t, school+": chances", entrytest.Fact(t, r, "chances").Number, count["at school"]+count["at home, by day"]+count["with an adult"], 0)
		entrytest.Near(t, school+": days", entrytest.Fact(t, r, "days").Number, 56, 0)
		entrytest.Tells(t, r.Cautions, "caution.moon-by-day", "Never search for the Moon beside the Sun", "nearer to the Sun than 35°")
		entrytest.Tells(t, r.Cautions, "caution.at-home", "nobody goes out alone")
		// No evening look is later than is allowed, and some day comes that late.
		if school == "alder reach" {
			last := 0.0
			for i, place := range places {
				if (place == "at home, by day" || place == "with an adult") && times[i].Kind != say.Nothing {
					last = math.Max(last, float64(times[i].Time.Hour())+float64(times[i].Time.Minute())/60)
				}
			}
			if last < 18.25 {
				t.Errorf("%s: until %v", school, last)
			}
		}
		// The week's days stand in their columns.
		labels := entrytest.Labels(t, r.Sheets[0].Drawing)
		if len(r.Sheets) != 2 {
			t.Errorf("%s: %d sheets", school, len(r.Sheets))
		}
		if monday, sunday := labels["Monday"].X, labels["Sunday"].X; monday >= sunday { // 5 April 2027 is a Monday
			t.Errorf("%s: Monday at %v, Sunday at %v", school, monday, sunday)
		}
	}
	for weeks, days := range map[string]float64{"1": 7, "8": 56} {
		entrytest.Near(t, "days of "+weeks, entrytest.Fact(t, reckon(t, "alder reach", "moon-diary", "2027-04-05", "weeks="+weeks), "days").Number, days, 0)
	}
}

// Without lesson times the page says which hours stand in; cautions stand always.
func TestMoonSchoolSaysWhatItTook(t *testing.T) {
	r := reckon(t, "alder reach", "moon-school", "2027-04-20")
	entrytest.Tells(t, r.Warnings, "moon-school.no_lessons", "from 9:00 to 14:50")
	if r := reckon(t, "alder reach", "moon-school", "2027-04-20", "term.lesson_times=9:10-10:00"); len(r.Warnings) > 0 {
		t.Error("lesson times are missed:", entrytest.Lines(t, r.Warnings))
	}
	for altitude := 0; altitude <= 60; altitude += 15 {
		r := reckon(t, "alder reach", "moon-school", "2027-04-20", "term.lesson_times=9:00-15:00", fmt.Sprintf("altitude_deg=%d", altitude))
		entrytest.Tells(t, r.Cautions, "caution.moon-by-day", "nearer to the Sun than 35°")
		if len(r.Tables) == 0 {
			entrytest.Tells(t, r.Notes, "moon-school.no_chance", fmt.Sprintf("never %d° high", altitude))
			continue
		}
		for _, v := range entrytest.Cells(t, r, "chances", "altitude") {
			if v.Number < float64(altitude)-0.05 {
				t.Errorf("the Moon at %v°, at least %d° are wanted", v.Number, altitude)
			}
		}
	}
	// The lit part of the date from the phase angle: (1 + cos i) / 2, Swiss Ephemeris 2027-06-11
	// 0:00 UTC, 95.71° and 45.0 %.
	r = reckon(t, "alder reach", "moon-month", "2027-06-10", "time=21:00")
	entrytest.Tells(t, r.Working, "moon-month.working", "is 9", "= 0.4")
	entrytest.Near(t, "lit", entrytest.Fact(t, r, "lit").Number, 45.0, 1)
}
