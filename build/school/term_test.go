package school_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"
	_ "time/tzdata"

	"noonbook/build/form"
	"noonbook/build/school"
	"noonbook/compute/classroom"
	"noonbook/compute/place"
)

const moncton = `unit.title = "T"
school.name = "S"
school.latitude = 46.09
school.longitude = -64.77
school.elevation_m = 20
school.time_zone = "America/Moncton"
`

// settings reads what unit.toml would hold: the school and the lines of [term].
func settings(t *testing.T, term string) form.Values {
	t.Helper()
	values, faults, _ := school.Settings().Read([]byte(moncton + "[term]\n" + term))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	return school.Settings().Complete(values)
}

func clock(hour, minute int) time.Duration {
	return time.Duration(hour)*time.Hour + time.Duration(minute)*time.Minute
}

func on(year int, month time.Month, day int) place.Date {
	return place.Date{Year: year, Month: month, Day: day}
}

// The term is what its lines say, read one by one.
func TestTerm(t *testing.T) {
	fiveDays := []time.Weekday{1, 2, 3, 4, 5}
	guessed := []classroom.Span{ // five lessons of 50 minutes and a long break at noon, as the setting's own words promise
		{From: clock(9, 0), To: clock(9, 50)}, {From: clock(10, 0), To: clock(10, 50)}, {From: clock(11, 0), To: clock(11, 50)},
		{From: clock(13, 0), To: clock(13, 50)}, {From: clock(14, 0), To: clock(14, 50)},
	}
	for _, c := range []struct {
		name, lines string
		want        classroom.Term
	}{
		{"bare", "first_day = 2027-02-01\nlast_day = 2027-06-30", classroom.Term{Weekdays: fiveDays, Times: guessed, Open: true, Daily: 1}},
		{"back to back", `lesson_times = ["9:00-9:50", "9:50-10:40"]`, classroom.Term{Weekdays: fiveDays, Times: []classroom.Span{{From: clock(9, 0), To: clock(9, 50)}, {From: clock(9, 50), To: clock(10, 40)}}, Daily: 1}},
		{"out of order", `lesson_times = ["13:05-14:00", "8:10-9:05"]`, classroom.Term{Weekdays: fiveDays, Times: []classroom.Span{{From: clock(8, 10), To: clock(9, 5)}, {From: clock(13, 5), To: clock(14, 0)}}, Daily: 1}},
		{"one over another", `lesson_times = ["9:00-9:50", "9:49-10:40", "10:00-10:50"]`, classroom.Term{Weekdays: fiveDays, Times: []classroom.Span{{From: clock(9, 0), To: clock(9, 50)}, {From: clock(10, 0), To: clock(10, 50)}}, Daily: 1}},
		{"Sunday to Thursday", `school_days = ["sunday", "monday", "tuesday", "wednesday", "thursday"]`, classroom.Term{Weekdays: []time.Weekday{0, 1, 2, 3, 4}, Times: guessed, Open: true, Daily: 1}},
		{"Saturdays alone", `school_days = ["saturday"]`, classroom.Term{Weekdays: []time.Weekday{6}, Times: guessed, Open: true, Daily: 1}},
		{"days off", `days_off = [2027-02-01, 2027-06-30]`, classroom.Term{Weekdays: fiveDays, DaysOff: []place.Date{on(2027, 2, 1), on(2027, 6, 30)}, Times: guessed, Open: true, Daily: 1}},
		{"storm days are days off", "days_off = [2027-02-01]\nstorm_days = [2027-02-02]", classroom.Term{Weekdays: fiveDays, DaysOff: []place.Date{on(2027, 2, 1), on(2027, 2, 2)}, Times: guessed, Open: true, Daily: 1}},
		{"weekdays of their own", "times.tuesday = [\"9:50-10:40\", \"9:00-9:50\"]\ntimes.friday = []", classroom.Term{Weekdays: fiveDays, Times: guessed, Daily: 1,
			Weekly: map[time.Weekday][]classroom.Span{time.Tuesday: {{From: clock(9, 0), To: clock(9, 50)}, {From: clock(9, 50), To: clock(10, 40)}}, time.Friday: nil}}},
		{"a cycle", "cycle_days = 6\ncycle_first = 3\ncycle = [{ day = 2, times = [\"9:00-9:50\"] }, { day = 5, times = [] }]\nstorm_days = [2027-02-02]",
			classroom.Term{Weekdays: fiveDays, DaysOff: []place.Date{on(2027, 2, 2)}, Times: guessed, Daily: 1,
				Cycle: classroom.Cycle{Days: 6, First: 3, Lost: []place.Date{on(2027, 2, 2)}, Times: map[int][]classroom.Span{2: {{From: clock(9, 0), To: clock(9, 50)}}, 5: nil}}}},
		{"half days", "half_days = [2027-02-03, 2027-02-04]", classroom.Term{Weekdays: fiveDays, Times: guessed, Open: true, Daily: 1, Until: map[place.Date]time.Duration{on(2027, 2, 3): clock(12, 0), on(2027, 2, 4): clock(12, 0)}}},
		{"half days till eleven", "half_days = [2027-02-03]\nhalf_day_until = \"11:00\"", classroom.Term{Weekdays: fiveDays, Times: guessed, Open: true, Daily: 1, Until: map[place.Date]time.Duration{on(2027, 2, 3): clock(11, 0)}}},
		{"three a day", "lessons_a_day = 3", classroom.Term{Weekdays: fiveDays, Times: guessed, Open: true, Daily: 3}},
	} {
		t.Run(c.name, func(t *testing.T) {
			lines := c.lines
			if !strings.Contains(lines, "first_day") {
				lines = "first_day = 2027-02-01\nlast_day = 2027-06-30\n" + lines
			}
			c.want.First, c.want.Last = on(2027, 2, 1), on(2027, 6, 30)
			c.want.Outing = classroom.Outing{Length: 75 * time.Minute, EndsBy: clock(21, 30)}
			if got := school.Term(settings(t, lines)); fmt.Sprint(got) != fmt.Sprint(c.want) {
				t.Errorf("got  %+v\nwant %+v", got, c.want)
			}
		})
	}
}

// Whether times are the school's own, and what stands in for them.
func TestLessonTimes(t *testing.T) {
	times, entered := school.LessonTimes(settings(t, "first_day = 2027-02-01\nlast_day = 2027-06-30\n"))
	if entered || len(times) != 5 {
		t.Errorf("without times: %v, entered %v", times, entered)
	}
	times, entered = school.LessonTimes(settings(t, "first_day = 2027-02-01\nlast_day = 2027-06-30\nlesson_times = [\"8:00-8:45\"]\n"))
	if !entered || len(times) != 1 || times[0] != (form.TimeSpan{From: clock(8, 0), To: clock(8, 45)}) {
		t.Errorf("with a time: %v, entered %v", times, entered)
	}
}

// The calendar looks at the sky of the school's own place and clock. At this school
// the Sun rises at 5:32 by the clock on 30 June and at 8:00 on 9 January (08:31:41
// and 12:00:04 UTC: testdata/reference/sun-days.csv, erfa). A clock change within
// the term is seen.
func TestCalendarOfTheSchool(t *testing.T) {
	sun := []classroom.Need{{Kind: classroom.SunUp}}
	early := []classroom.Lesson{{Start: classroom.AnyTime, Needs: sun}}
	for _, c := range []struct {
		name, lines string
		lessons     []classroom.Lesson
		over        form.Values
		dates       string
		dropped     int
	}{
		{"the Sun is up in June", "first_day = 2027-06-21\nlast_day = 2027-06-25\nlesson_times = [\"7:10-7:40\"]\n", early, nil, "06-21", 0},
		{"not in January", "first_day = 2027-01-18\nlast_day = 2027-01-22\nlesson_times = [\"7:10-7:40\"]\n", early, nil, "01-18", 1},
		{"by another time it is", "first_day = 2027-01-18\nlast_day = 2027-01-22\nlesson_times = [\"7:10-7:40\", \"9:00-9:30\"]\n", early, nil, "01-18", 0},
		{"south of the line January is light", "first_day = 2027-01-18\nlast_day = 2027-01-22\nlesson_times = [\"7:10-7:40\"]\n", early, form.Values{"school.latitude": -46.09}, "01-18", 0},
		{"west of its zone it rises later", "first_day = 2027-06-21\nlast_day = 2027-06-25\nlesson_times = [\"7:10-7:40\"]\n", early, form.Values{"school.longitude": -110.0}, "06-21", 1},
		{"no clock change between two", "first_day = 2027-03-12\nlast_day = 2027-03-19\n", []classroom.Lesson{{Start: classroom.AnyTime}, {Start: classroom.AnyTime, After: classroom.Gap{Clock: true}}}, nil, "03-15 03-16", 0},
		{"a zone without a change", "first_day = 2027-03-12\nlast_day = 2027-03-19\n", []classroom.Lesson{{Start: classroom.AnyTime}, {Start: classroom.AnyTime, After: classroom.Gap{Clock: true}}}, form.Values{"school.time_zone": time.UTC}, "03-12 03-15", 0},
		{"a Sunday in the week of the change", "first_day = 2027-03-13\nlast_day = 2027-03-19\nschool_days = [\"sunday\", \"monday\"]\n", []classroom.Lesson{{Start: classroom.AnyTime}, {Start: classroom.AnyTime, After: classroom.Gap{Clock: true}}}, nil, "03-14 03-15", 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := school.Calendar(settings(t, c.lines).With(c.over), c.lessons)
			var dates []string
			for _, h := range got.Held {
				dates = append(dates, h.Date.String()[5:])
			}
			if strings.Join(dates, " ") != c.dates || len(got.Dropped) != c.dropped {
				t.Errorf("held on %v, dropped %+v; want %s, %d", dates, got.Dropped, c.dates, c.dropped)
			}
		})
	}
	// Without a zone there is no sky, and still a calendar: the zone is reported elsewhere.
	v := settings(t, "first_day = 2027-01-18\nlast_day = 2027-01-22\n")
	delete(v, "school.time_zone")
	if got := school.Calendar(v, early); !got.Held[0].Placed || len(got.Dropped) > 0 {
		t.Errorf("without a zone: %+v", got)
	}
}

// A calendar depends on no setting that CalendarSettings does not name, and on
// each that it names: an entry that reads lessons is evaluated again when one of
// them changes.
func TestCalendarSettings(t *testing.T) {
	var names []string
	for _, key := range school.CalendarSettings() {
		names = append(names, key.Name())
	}
	for _, want := range []string{
		"school.latitude", "school.longitude", "school.elevation_m", "school.time_zone",
		"term.first_day", "term.last_day", "term.school_days", "term.days_off", "term.lesson_times", "term.lessons_a_day",
		"term.times.monday", "term.times.tuesday", "term.times.wednesday", "term.times.thursday", "term.times.friday", "term.times.saturday", "term.times.sunday",
		"term.cycle_days", "term.cycle_first", "term.cycle", "term.storm_days", "term.half_days", "term.half_day_until",
		"evening.first_day", "evening.last_day", "evening.minutes", "evening.ends_by",
	} {
		if !slices.Contains(names, want) {
			t.Errorf("%s is not among them", want)
		}
	}
	if len(names) != 27 {
		t.Errorf("they are %v", names)
	}
}

// The place is the one of unit.toml, its signs included.
func TestPlace(t *testing.T) {
	v := settings(t, "first_day = 2027-01-18\nlast_day = 2027-01-22\n")
	p := school.Place(v)
	if p.Latitude.Degrees() != 46.09 || math.Abs(p.Longitude.Degrees()+64.77) > 1e-12 || p.Elevation.Metres() != 20 || p.Zone.String() != "America/Moncton" {
		t.Errorf("the place is %+v", p)
	}
}

// A field of 60 m by 40 m whose long side bears 0° lies north and east of its
// corner; at 90° it lies east and south. Corners of its own come first.
func TestOutline(t *testing.T) {
	corners := func(lines string) string {
		values, faults, _ := school.Settings().Read([]byte(moncton + "[term]\nfirst_day = 2027-02-01\nlast_day = 2027-06-30\n[field]\n" + lines))
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		var list []string
		for _, s := range school.Outline(school.Settings().Complete(values)) {
			list = append(list, fmt.Sprintf("%.0f,%.0f", s.East.Metres()+1e-9, s.North.Metres()+1e-9))
		}
		return strings.Join(list, " ")
	}
	for lines, want := range map[string]string{
		"length_m = 60\nwidth_m = 40\nbearing_deg = 0":                                                        "0,0 0,60 40,60 40,0",
		"length_m = 60\nwidth_m = 40\nbearing_deg = 90":                                                       "0,0 60,0 60,-40 0,-40",
		"outline = [{ east_m = 0, north_m = 0 }, { east_m = 30, north_m = 5 }, { east_m = 9, north_m = 44 }]": "0,0 30,5 9,44",
	} {
		if got := corners(lines); got != want {
			t.Errorf("%s: corners %s, want %s", lines, got, want)
		}
	}
}

// The evening is what the lines of [evening] say.
func TestOuting(t *testing.T) {
	got := school.Term(settings(t, "first_day = 2027-02-01\nlast_day = 2027-06-30\n[evening]\nfirst_day = 2027-02-10\nlast_day = 2027-03-01\nminutes = 60\nends_by = \"20:45\"\n")).Outing
	want := classroom.Outing{First: on(2027, 2, 10), Last: on(2027, 3, 1), Length: time.Hour, EndsBy: clock(20, 45)}
	if got != want {
		t.Errorf("got %+v, want %+v", got, want)
	}
}
