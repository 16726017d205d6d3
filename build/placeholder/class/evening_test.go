package class_test

import (
	"strings"
	"testing"
	"time"

	"noonbook/build/placeholder/entrytest"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/classroom"
)

// toMay is the term of the demo, through which the Moon is twice at its first quarter.
var toMay = []string{"term.last_day=2027-05-14", "class.pupils=27"}

// where is a cell of the stations: how high the thing is and in which direction.
func where(t *testing.T, r result.Result, row int) (direction string, height float64) {
	t.Helper()
	cell := entrytest.Cells(t, r, "stations", "where")[row]
	with := cell.Phrase.With
	return entrytest.Written(t, with[0]), with[len(with)-1].Number
}

// The evening at three schools by pyephem 4.1.4 (/testdata/reference/evenings.py has its
// rules): the Sun's centre at −50′ and −9° without air, Moon and Jupiter through air of
// 1010 mbar, halfway through their stations. In local time:
//
//	Alder Reach 2027-04-15  sunset 20:06:02  −9° 20:56:14  Moon 72.5 % 55.47° at 158.2°  Jupiter 60.47° at 172.7°
//	Dunedin     2027-05-13  17:19:48         18:10:14      50.9 % 29.51° at 10.8°        27.88° at 1.8°
//	Nairobi     2027-05-13  18:30:52         19:05:18      55.5 % 77.57° at 8.9°         69.25° at 328.1°
func TestEveningAgainstPyephem(t *testing.T) {
	nairobi := append([]string{"school.latitude=-1.29", "school.longitude=36.82", "school.time_zone=Africa/Nairobi"}, toMay...)
	for _, c := range []struct {
		school, night, reserve, begins, ends string
		given                                []string
		sunset, dusk                         string
		lit, moon, planet                    float64
		moonTo, planetTo                     string
	}{
		{"alder reach", "Thursday 15 April", "Friday 16 April", "20:15", "21:30", toMay, "20:06", "20:56", 72.5, 55.47, 60.47, "south-south-east", "south"},
		{"south", "Thursday 13 May", "Friday 14 May", "18:00", "19:15", toMay, "17:20", "18:10", 50.9, 29.51, 27.88, "north", "north"},
		{"alder reach", "Thursday 13 May", "Friday 14 May", "18:45", "20:00", nairobi, "18:31", "19:05", 55.5, 77.57, 69.25, "north", "north-north-west"},
	} {
		r := reckon(t, c.school, "evening-plan", "2027-04-12", c.given...)
		for fact, want := range map[string]string{"night": c.night, "reserve": c.reserve, "begins": c.begins, "ends": c.ends, "sunset": c.sunset, "dusk": c.dusk, "planet": "Jupiter", "stands": "yes", "moon": "yes", "planet_up": "yes", "has_reserve": "yes"} {
			if got := entrytest.Shown(t, r, fact); got != want {
				t.Errorf("%s %s: %s is %q, want %q", c.school, c.night, fact, got, want)
			}
		}
		entrytest.Near(t, c.night+": lit", entrytest.Fact(t, r, "moon_lit").Number, c.lit, 0.1)
		for row, want := range map[int]struct {
			height float64
			to     string
		}{1: {c.moon, c.moonTo}, 2: {c.planet, c.planetTo}} {
			direction, height := where(t, r, row)
			entrytest.Near(t, c.night+": height", height, want.height, 0.06)
			if direction != want.to {
				t.Errorf("%s: station %d is in the %s, want %s", c.night, row, direction, want.to)
			}
		}
		if len(r.Warnings) > 0 {
			t.Errorf("%s: %s", c.night, entrytest.Lines(t, r.Warnings))
		}
	}
}

// The minutes of the stations are those of an evening of 75 and of 60 minutes by hand, and
// the adults one for each eight pupils, with one who is free, never fewer than two and one.
func TestEveningMinutesAndAdults(t *testing.T) {
	for _, c := range []struct {
		minutes, pupils, begins, adults string
	}{
		{"75", "27", "20:15 20:25 20:40 20:55 21:10 21:25", "5 4 4 4 4 5"},
		{"60", "0", "20:30 20:38 20:50 21:02 21:14 21:26", "3 2 2 2 2 3"},
	} {
		r := reckon(t, "alder reach", "evening-plan", "2027-04-12", "evening.minutes="+c.minutes, "class.pupils="+c.pupils)
		if got := strings.Join(entrytest.Texts(t, r, "stations", "begins"), " "); got != c.begins {
			t.Errorf("%s minutes: %s, want %s", c.minutes, got, c.begins)
		}
		if got := strings.Join(entrytest.Texts(t, r, "stations", "adults"), " "); got != c.adults {
			t.Errorf("%s pupils: adults %s, want %s", c.pupils, got, c.adults)
		}
	}
}

// Where it never gets dark in time the evening does not stand, and says when it first does:
// in Tromsø in September, as the Sun must be 12° down by 21:17:30, halfway through the counting
// of an evening that ends at 21:30 (by pyephem −10.84° on 17 September 2027, a Friday, and
// −12.03° on the 20th). A term in June at
// Alder Reach has none either: nautical dusk is after 22:00.
func TestNoEvening(t *testing.T) {
	for _, c := range []struct {
		school, next string
		given        []string
	}{
		{"arctic", "20 September 2027", toMay},
		{"alder reach", "", []string{"term.first_day=2027-06-01", "term.last_day=2027-06-18"}},
		{"north pole", "", toMay},
	} {
		r := reckon(t, c.school, "evening-plan", "2027-04-12", c.given...)
		if got := entrytest.Shown(t, r, "stands"); got != "no" || len(r.Tables) > 0 {
			t.Errorf("%s: stands %q with %d tables", c.school, got, len(r.Tables))
		}
		if next := entrytest.Shown(t, r, "next"); c.next != "" && next != c.next {
			t.Errorf("%s: next %q, want %q", c.school, next, c.next)
		}
		entrytest.Tells(t, r.Warnings, "evening-plan.none", "No evening of this term will do", "21:30")
		if note := reckon(t, c.school, "evening-note", "2027-04-12", c.given...); len(note.Notes) > 0 || !entrytest.Warned(note, "evening-plan.none") {
			t.Errorf("%s: a letter without an evening", c.school)
		}
	}
}

// What a night lacks is said, and something else is at its station: in the second half of a
// month with no Moon in the evening, where no planet is up.
func TestEveningWithoutMoonOrPlanet(t *testing.T) {
	r := reckon(t, "alder reach", "evening-plan", "2027-09-20", "term.first_day=2027-09-20", "term.last_day=2027-10-01", "evening.last_day=2027-09-24")
	for _, key := range []string{"evening-plan.no_moon", "evening-plan.no_planet"} {
		if !entrytest.Warned(r, key) {
			t.Errorf("no warning %s in %s", key, entrytest.Lines(t, r.Warnings))
		}
	}
	for row, want := range []string{"evening-plan.see_arrive", "evening-plan.see_first", "evening-plan.see_colour"} {
		if got := entrytest.Cells(t, r, "stations", "what")[row].Phrase.Key; got != want {
			t.Errorf("station %d is %s, want %s", row, got, want)
		}
	}
	if got := entrytest.Shown(t, r, "moon_lit"); got != "not that evening" {
		t.Errorf("the Moon is lit by %q", got)
	}
}

// The table to count by and its picture have the same stars in the same order, each number
// beside its star.
func TestCountTableAndPicture(t *testing.T) {
	for _, school := range []string{"alder reach", "south", "equator", "far east"} {
		r := reckon(t, school, "evening-plan", "2027-04-12", toMay...)
		if entrytest.Shown(t, r, "counts") != "yes" {
			t.Errorf("%s: no figure to count in on %s", school, entrytest.Shown(t, r, "night"))
			continue
		}
		var magnitudes []float64
		for _, cell := range entrytest.Cells(t, r, "count", "magnitude") {
			magnitudes = append(magnitudes, cell.Number)
		}
		for i := 1; i < len(magnitudes); i++ {
			if magnitudes[i] < magnitudes[i-1] {
				t.Errorf("%s: star %d is brighter than the one before it", school, i+1)
			}
		}
		d := r.Drawings[0]
		dots := entrytest.Roled(d, "dot")
		if len(dots) != len(magnitudes) || float64(len(dots)) != entrytest.Fact(t, r, "count_stars").Number {
			t.Errorf("%s: %d dots, %d rows", school, len(dots), len(magnitudes))
		}
		for i := 1; i < len(dots); i++ {
			if dots[i].Radius > dots[i-1].Radius {
				t.Errorf("%s: dot %d is larger than the one before it", school, i+1)
			}
		}
	}
}

// The evening is in the calendar, with its reserve, and in the note to families, whose row
// says when it is and that an adult comes along; the evening at home is another matter.
func TestEveningInTheLists(t *testing.T) {
	unit := []classroom.Lesson{{Title: "Out", Start: classroom.AnyTime}, {Title: "Evening", Start: classroom.AnyTime, Evening: true}, {Title: "After", Start: classroom.AnyTime}}
	r := withUnit(t, "unit-plan", unit, nil)
	if got := strings.Join(entrytest.Texts(t, r, "plan", "date"), ", "); got != "Monday 12 April, Thursday 15 April, Tuesday 13 April" {
		t.Errorf("days %s", got)
	}
	if got := entrytest.Texts(t, r, "plan", "wet")[1]; !strings.Contains(got, "Friday 16 April") {
		t.Errorf("reserve %q", got)
	}
	note := withUnit(t, "family-note", unit, nil)
	entrytest.Near(t, "evenings", entrytest.Fact(t, note, "evenings").Number, 1, 0)
	if got := entrytest.Texts(t, note, "days", "wear")[1]; !strings.Contains(got, "20:15") || !strings.Contains(got, "brought and fetched by an adult") {
		t.Errorf("the note says %q", got)
	}
	if !entrytest.Says(note.Cautions, "caution.family-evening") || entrytest.Says(note.Notes, "family-note.evenings") {
		t.Errorf("cautions %v, notes %v", note.Cautions, note.Notes)
	}
	none := withUnit(t, "unit-plan", unit, map[string]any{"evening.ends_by": 20 * time.Hour})
	if got := entrytest.Texts(t, none, "conflicts", "what"); len(got) != 1 || !strings.Contains(got[0], "on no evening of the term") {
		t.Errorf("conflicts %q", got)
	}
}

// The letter names both evenings, what to wear and the way home; the slip goes out in time and
// asks for both, for help, and who fetches the child.
func TestEveningNote(t *testing.T) {
	r := reckon(t, "alder reach", "evening-note", "2027-04-12", "supplies.home_days=3", "supplies.note_days=10")
	entrytest.Tells(t, r.Notes, "evening-note.dear", "Thursday 15 April", "20:15", "21:30")
	entrytest.Tells(t, r.Notes, "evening-note.reserve", "Friday 16 April")
	entrytest.Tells(t, r.Notes, "evening-note.seen", "the Moon, Jupiter and the first stars")
	entrytest.Tells(t, r.Notes, "evening-note.way", "nobody goes home alone")
	entrytest.Tells(t, r.Notes, "evening-note.wear", "closed shoes")
	if got := entrytest.Shown(t, r, "slip_by"); got != "12 April 2027" { // three school days before
		t.Errorf("slip by %s", got)
	}
	if got := entrytest.Shown(t, r, "send_by"); got != "29 March 2027" { // ten before that
		t.Errorf("letter by %s", got)
	}
	var keys []string
	for _, s := range r.Sheets[0].Drawing.Shapes {
		if s.Writing != nil && s.Text.Kind == say.Wording {
			keys = append(keys, s.Text.Phrase.Key)
		}
	}
	for _, want := range []string{"slip_night", "slip_reserve", "slip_help", "slip_fetched", "slip_phone"} {
		if n := strings.Count(strings.Join(keys, " ")+" ", "evening-note."+want+" "); n != 1 {
			t.Errorf("%s is on the sheet %d times, want once", want, n)
		}
	}
}
