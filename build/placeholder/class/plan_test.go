package class_test

import (
	"slices"
	"strings"
	"testing"
	"time"

	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/classroom"
	"noonbook/compute/place"
)

// The calendar of the small unit: every lesson has its day, the starry one at
// 20:00 in April cannot be dark and says so.
func TestUnitPlan(t *testing.T) {
	r := reckon(t, "alder reach", "unit-plan", "2027-04-12")
	want := []string{"Monday 12 April", "Tuesday 13 April", "Wednesday 14 April", "Thursday 15 April"}
	if got := entrytest.TextsOf(t, r, "plan", "date"); !slices.Equal(got, want) {
		t.Errorf("dates are %q, want %q", got, want)
	}
	got := entrytest.TextsOf(t, r, "conflicts", "what")
	if len(got) != 1 || !strings.HasPrefix(got[0], "it needs darkness, and at 20:00 on 15 April 2027 the Sun stands at") {
		t.Errorf("conflicts are %q", got)
	}
	if len(r.Sheets) != 1 || !r.Sheets[0].Paper.Fits(r.Sheets[0].Drawing) {
		t.Errorf("%d sheets", len(r.Sheets))
	}
	crowded := reckon(t, "alder reach", "unit-plan", "2027-04-12", "term.last_day=2027-04-13")
	got = entrytest.TextsOf(t, crowded, "conflicts", "what")
	if len(got) < 2 || !strings.Contains(got[0], "2 more school days would make room for all lessons") {
		t.Errorf("a term of two days says %q", got)
	}
}

// A lesson that asks for a Saturday, and one for a day after the term, keep their
// days and are told.
func TestUnitPlanDaysAstray(t *testing.T) {
	e, _ := entry.Find(entries(), "unit-plan")
	values := e.Complete(entrytest.Settings(t, "alder reach"), nil, entrytest.Day(t, "2027-04-12"))
	values["term.last_day"] = entrytest.Day(t, "2027-05-14")
	unit := []classroom.Lesson{
		{Title: "Early", Start: classroom.AnyTime},
		{Title: "Saturday", Start: classroom.AnyTime, Date: entrytest.Day(t, "2027-04-17")},
		{Title: "Late", Start: classroom.AnyTime, Date: entrytest.Day(t, "2027-05-20")},
	}
	r, err := e.Reckon(e.WithLessons(values, unit, school.Calendar(values, unit), 0))
	if err != nil {
		t.Fatal(err)
	}
	want := []string{
		"its page asks for Saturday 17 April, which is not a school day",
		"its page asks for Thursday 20 May, which is outside the term",
	}
	if got := entrytest.TextsOf(t, r, "conflicts", "what"); !slices.Equal(got, want) {
		t.Errorf("conflicts are %q, want %q", got, want)
	}
}

// What is told of a Sun that stands too low does not contradict itself: at 7:39 on 13
// April 2027 it is seen at 9.93°, at 7:35 at 9.24° (astronomy-engine 2.1.19).
// From day to day the Sun then stands 0.3° higher at the same time by the clock
// (declination +0.36° a day in mid April), which is three days to 10° and one.
func TestUnitPlanOfALowSun(t *testing.T) {
	e, _ := entry.Find(entries(), "unit-plan")
	values := e.Complete(entrytest.Settings(t, "alder reach"), nil, entrytest.Day(t, "2027-04-12"))
	for clock, want := range map[time.Duration]string{
		7*time.Hour + 39*time.Minute: "it needs the Sun at 10° or higher, and at 7:39 on 13 April 2027 the Sun stands at 9.9°; the next school day that is better is 14 April 2027",
		7*time.Hour + 35*time.Minute: "it needs the Sun at 10° or higher, and at 7:35 on 13 April 2027 the Sun stands at 9°; the next school day that is better is 16 April 2027",
	} {
		unit := []classroom.Lesson{{Title: "Early", Start: clock, Date: entrytest.Day(t, "2027-04-13"), Needs: []classroom.Need{{Kind: classroom.SunUp, Height: classroom.SunLeast}}}}
		r, err := e.Reckon(e.WithLessons(values, unit, school.Calendar(values, unit), 0))
		if err != nil {
			t.Fatal(err)
		}
		if got := entrytest.TextsOf(t, r, "conflicts", "what"); !slices.Equal(got, []string{want}) {
			t.Errorf("conflicts are %q, want %q", got, want)
		}
	}
}

// A lesson in a polar night has no Sun anywhere in the term. At noon it then stands at
// 10° when its declination is −10.5°, with the air's 0.09°: on 21 February (the
// Astronomical Almanac's approximate Sun, as in compute/classroom's tests), a Sunday.
func TestUnitPlanInThePolarNight(t *testing.T) {
	r := reckon(t, "arctic", "unit-plan", "2027-01-04", "term.first_day=2027-01-04", "term.last_day=2027-01-15")
	got := entrytest.TextsOf(t, r, "conflicts", "what")
	if len(got) != 2 || !strings.HasSuffix(got[1], "no school day of this term is better, and the first one that is comes on 22 February 2027") {
		t.Errorf("conflicts are %q", got)
	}
}

// The list for 27 pupils in groups of three: card is used up, so lessons add.
func TestKitList(t *testing.T) {
	e, _ := entry.Find(entries(), "kit-list")
	unit := []classroom.Lesson{
		{Title: "A", Start: classroom.AnyTime, Kit: []classroom.Thing{
			{Item: "card", Count: 1, Share: classroom.PerGroup, Spare: 2, Source: classroom.ToBuy, UsedUp: true, Price: 4.5, Pack: 10},
			{Item: "scissors", Count: 1, Share: classroom.PerGroup},
			{Item: "bottle", Count: 1, Share: classroom.PerPupil, Source: classroom.FromHome, UsedUp: true},
		}},
		{Title: "B", Start: classroom.AnyTime, Kit: []classroom.Thing{
			{Item: "card", Count: 1, Share: classroom.PerGroup, Source: classroom.ToBuy, UsedUp: true},
			{Item: "scissors", Count: 0.5, Share: classroom.PerPupil},
		}},
	}
	values := e.Complete(entrytest.Settings(t, "alder reach"), nil, entrytest.Day(t, "2027-04-12"))
	values["class.pupils"], values["class.group_size"], values["supplies.currency"] = 27, 3, "dollars"
	r, err := e.Reckon(e.WithLessons(values, unit, school.Calendar(values, unit), 0))
	if err != nil {
		t.Fatal(err)
	}
	for column, want := range map[string][]string{
		"thing": {"card", "bottle", "scissors"},
		"count": {"20", "27", "14"},            // 9 + 2 and 9; 27; half of 27 rounded up
		"by":    {"12 Apr", "7 Apr", "12 Apr"}, // three school days before Monday the 12th
		"cost":  {"9\u00a0dollars", "–", "–"},  // two packs of ten
	} {
		if got := entrytest.TextsOf(t, r, "list", column); !slices.Equal(got, want) {
			t.Errorf("%s: %q, want %q", column, got, want)
		}
	}
	if note := entrytest.Fact(t, r, "note_by"); note.Kind != say.CalendarDay || note.Time.Format(time.DateOnly) != "2027-03-24" {
		t.Errorf("the note goes out on %v", note.Time)
	}
}

// Two lessons with dates of their own need not be held in their order; a thing
// is wanted for the earlier day, in the list and in the note to families.
func TestThingsForTheEarlierDay(t *testing.T) {
	rolls := []classroom.Thing{{Item: "card rolls", Count: 1, Share: classroom.PerPupil, Source: classroom.FromHome}}
	unit := []classroom.Lesson{
		{Title: "A", Date: entrytest.Day(t, "2027-04-20"), Start: 9 * time.Hour, Kit: rolls},
		{Title: "B", Date: entrytest.Day(t, "2027-04-14"), Start: 9 * time.Hour, Kit: rolls},
	}
	for name, want := range map[string]struct{ table, fact, day string }{
		"kit-list":    {"list", "home_by", "9 Apr"},
		"family-note": {"things", "first_by", "Friday 9 April"},
	} {
		e, _ := entry.Find(entries(), name)
		values := e.Complete(entrytest.Settings(t, "alder reach"), nil, entrytest.Day(t, "2027-04-12"))
		values["class.pupils"], values["supplies.home_days"] = 27, 3
		r, err := e.Reckon(e.WithLessons(values, unit, school.Calendar(values, unit), 0))
		if err != nil {
			t.Fatal(err)
		}
		if got := entrytest.TextsOf(t, r, want.table, "by"); !slices.Equal(got, []string{want.day}) {
			t.Errorf("%s: by %q, want %q", name, got, want.day)
		}
		if got := entrytest.Fact(t, r, want.fact).Time.Format(time.DateOnly); got != "2027-04-09" {
			t.Errorf("%s: %s is %s", name, want.fact, got)
		}
	}
}

// Sun, shadow and Moon at both ends of a lesson of 90 minutes: pyephem 4.1.4, 1010 hPa
// and 10 °C, to the digits that it was printed with; the air makes another 0.02°. At 12:19
// on the line the Moon's middle is 0.1° below the horizon and its rim above: the Moon is
// down, and not so many degrees "high".
func TestSkyOfALesson(t *testing.T) {
	for _, c := range []struct {
		school, times, at string
		row               int
		sun, shadow, to   float64
		moon              string
	}{
		{"south", "9:00-10:30", "2027-04-12T21:00:00Z", 0, 16.75, 3.32, 237.3, "below the horizon"},
		{"south", "9:00-10:30", "2027-04-12T22:30:00Z", 2, 28.17, 1.87, 216.6, "below the horizon"},
		{"arctic", "9:00-10:30", "2027-04-13T07:00:00Z", 0, 19.80, 2.78, 299.3, "8.3° high, north-east, 43\u00a0% lit"},
		{"arctic", "9:00-10:30", "2027-04-13T08:30:00Z", 2, 25.71, 2.08, 322.5, "13.4° high, north-east, 43\u00a0% lit"},
		{"far east", "9:00-10:30", "2027-04-12T19:00:00Z", 0, 37.25, 1.32, 260.3, "below the horizon"},
		{"half hour", "9:00-10:30", "2027-04-13T04:45:00Z", 2, 60.90, 0.56, 305.6, "below the horizon"},
		{"line south", "12:19-13:49", "2027-04-13T17:19:00Z", 0, 80.59, 0.17, 173.3, "below the horizon"},
	} {
		r := reckon(t, c.school, "lesson-sky", "2027-04-20", "term.lesson_times="+c.times)
		name := c.school + " at " + c.at
		if got := entrytest.Cells(t, r, "moments", "clock")[c.row].Time; !got.Equal(entrytest.Instant(t, c.at)) {
			t.Errorf("%s: the lesson has %s", name, got)
		}
		entrytest.Near(t, name+": Sun", entrytest.Cells(t, r, "moments", "sun_altitude")[c.row].Number, c.sun, 0.025)
		entrytest.Near(t, name+": shadow", entrytest.Cells(t, r, "moments", "shadow_length")[c.row].Number, c.shadow, 0.007)
		sixteenth := [...]string{"north", "north-north-east", "north-east", "east-north-east", "east", "east-south-east", "south-east", "south-south-east",
			"south", "south-south-west", "south-west", "west-south-west", "west", "west-north-west", "north-west", "north-north-west"}[int(c.to/22.5+0.5)%16]
		if got := entrytest.TextsOf(t, r, "moments", "shadow_to")[c.row]; got != sixteenth {
			t.Errorf("%s: the shadow points %s, want %s", name, got, sixteenth)
		}
		if got := entrytest.TextsOf(t, r, "moments", "moon")[c.row]; got != c.moon {
			t.Errorf("%s: the Moon is %q, want %q", name, got, c.moon)
		}
	}
}

// Whatever is asked of families is asked on a day with school: over a term with the
// days off of Easter 2026 (Good Friday 3 April, Easter Monday 6 April, Gregorian
// computus) and any number of days, no due day is a weekend's or a day off.
func TestDueDaysAreSchoolDays(t *testing.T) {
	box := []classroom.Thing{{Item: "box", Count: 1, Share: classroom.PerGroup, Source: classroom.FromHome}}
	off := []place.Date{entrytest.Day(t, "2026-04-03"), entrytest.Day(t, "2026-04-06")}
	for home := 0; home <= 9; home++ {
		for day := 30; day <= 50; day++ {
			unit := []classroom.Lesson{{Title: "A", Date: place.Date{Year: 2026, Month: time.March, Day: 1}.Add(day), Start: 19 * time.Hour, Kit: box}}
			e, _ := entry.Find(entries(), "family-note")
			values := e.Complete(entrytest.Settings(t, "alder reach"), nil, unit[0].Date)
			values["class.pupils"], values["supplies.home_days"], values["supplies.note_days"] = 27, home, 10-home
			values["term.first_day"], values["term.last_day"] = entrytest.Day(t, "2026-03-16"), entrytest.Day(t, "2026-05-15")
			values["term.days_off"] = off
			r, err := e.Reckon(e.WithLessons(values, unit, school.Calendar(values, unit), 0))
			if err != nil {
				t.Fatal(err)
			}
			for _, fact := range []string{"first_by", "send_by"} {
				due := entrytest.Fact(t, r, fact)
				if due.Kind != say.CalendarDay {
					t.Fatalf("%s: %v", fact, due)
				}
				at := due.Time
				if date := (place.Date{Year: at.Year(), Month: at.Month(), Day: at.Day()}); at.Weekday() == time.Saturday || at.Weekday() == time.Sunday || slices.Contains(off, date) {
					t.Errorf("%d school days before %v: %s is %v", home, unit[0].Date, fact, at.Format(time.RFC1123))
				}
			}
		}
	}
}
