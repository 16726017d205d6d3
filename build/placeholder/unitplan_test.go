package placeholder_test

import (
	"slices"
	"strings"
	"testing"
	"time"

	"noonbook/build/placeholder"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/typeset"
	"noonbook/compute/classroom"
)

// cellsOf returns what a column of a table says.
func textsOf(t *testing.T, r result.Result, table, column string) []string {
	t.Helper()
	words, err := typeset.Language("en", false)
	if err != nil {
		t.Fatal(err)
	}
	var texts []string
	for _, one := range r.Tables {
		i := slices.IndexFunc(one.Columns, func(c result.Column) bool { return c.Name == column })
		if one.Name != table || i < 0 {
			continue
		}
		for _, row := range one.Rows {
			texts = append(texts, words.Text(row.Cells[i]))
		}
	}
	return texts
}

// The calendar of the small unit: every lesson has its day, the starry one at
// 20:00 in April can not be dark and says so.
func TestUnitPlan(t *testing.T) {
	r := reckon(t, "alder reach", "unit-plan", "2027-04-12")
	want := []string{"Monday 12 April", "Tuesday 13 April", "Wednesday 14 April", "Thursday 15 April"}
	if got := textsOf(t, r, "plan", "date"); !slices.Equal(got, want) {
		t.Errorf("dates are %q, want %q", got, want)
	}
	got := textsOf(t, r, "conflicts", "what")
	if len(got) != 1 || !strings.HasPrefix(got[0], "it needs darkness, and at 20:00 on 15 April 2027 the Sun stands at") {
		t.Errorf("conflicts are %q", got)
	}
	if len(r.Sheets) != 1 || !r.Sheets[0].Paper.Fits(r.Sheets[0].Drawing) {
		t.Errorf("%d sheets", len(r.Sheets))
	}
	crowded := reckon(t, "alder reach", "unit-plan", "2027-04-12", "term.last_day=2027-04-13")
	got = textsOf(t, crowded, "conflicts", "what")
	if len(got) < 2 || !strings.Contains(got[0], "2 more school days would make room for all lessons") {
		t.Errorf("a term of two days says %q", got)
	}
}

// A lesson that asks for a Saturday, and one for a day after the term, keep their
// days and are told.
func TestUnitPlanDaysAstray(t *testing.T) {
	entry, _ := placeholder.Find(placeholder.Catalogue(), "unit-plan")
	values := entry.Complete(settings(t, "alder reach"), nil, day(t, "2027-04-12"))
	values["term.last_day"] = day(t, "2027-05-14")
	unit := []classroom.Lesson{
		{Title: "Early", Start: classroom.AnyTime},
		{Title: "Saturday", Start: classroom.AnyTime, Date: day(t, "2027-04-17")},
		{Title: "Late", Start: classroom.AnyTime, Date: day(t, "2027-05-20")},
	}
	r, err := entry.Reckon(entry.WithLessons(values, unit, placeholder.Calendar(values, unit), 0))
	if err != nil {
		t.Fatal(err)
	}
	want := []string{
		"its page asks for Saturday 17 April, which is no school day",
		"its page asks for Thursday 20 May, which is outside the term",
	}
	if got := textsOf(t, r, "conflicts", "what"); !slices.Equal(got, want) {
		t.Errorf("conflicts are %q, want %q", got, want)
	}
}

// A lesson in a polar night has no Sun anywhere in the term.
func TestUnitPlanInThePolarNight(t *testing.T) {
	r := reckon(t, "arctic", "unit-plan", "2027-01-04", "term.first_day=2027-01-04", "term.last_day=2027-01-15")
	got := textsOf(t, r, "conflicts", "what")
	if len(got) != 2 || !strings.Contains(got[0], "none is better") {
		t.Errorf("conflicts are %q", got)
	}
}

// The list for 27 pupils in groups of three: card is used up, so lessons add.
func TestKitList(t *testing.T) {
	entry, _ := placeholder.Find(placeholder.Catalogue(), "kit-list")
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
	values := entry.Complete(settings(t, "alder reach"), nil, day(t, "2027-04-12"))
	values["class.pupils"], values["class.group_size"], values["supplies.currency"] = 27, 3, "dollars"
	r, err := entry.Reckon(entry.WithLessons(values, unit, placeholder.Calendar(values, unit), 0))
	if err != nil {
		t.Fatal(err)
	}
	for column, want := range map[string][]string{
		"thing": {"card", "bottle", "scissors"},
		"count": {"20", "27", "14"}, // 9 + 2 and 9; 27; half of 27 rounded up
		"by":    {"12 Apr", "9 Apr", "12 Apr"},
		"cost":  {"9\u00a0dollars", "–", "–"}, // two packs of ten
	} {
		if got := textsOf(t, r, "list", column); !slices.Equal(got, want) {
			t.Errorf("%s: %q, want %q", column, got, want)
		}
	}
	if note := fact(t, r, "note_by"); note.Kind != say.CalendarDay || note.Time.Format(time.DateOnly) != "2027-03-26" {
		t.Errorf("the note goes out on %v", note.Time)
	}
}

// A shower is looked for at its best hour nearest to the peak: half a day and a few
// minutes away at most, wherever the peak falls by the clock. Moments at which the
// Sun's longitude for J2000 is that of the International Meteor Organization's list (as
// in the code, from memory): pyephem 4.1.4, to the minute.
func TestShowersAreNearTheirPeaks(t *testing.T) {
	peaks := map[string]string{
		"Quadrantids": "2027-01-04T03:25:00Z", "Lyrids": "2027-04-23T01:41:00Z", "Eta Aquariids": "2027-05-06T15:11:00Z",
		"Southern Delta Aquariids": "2027-07-31T19:37:00Z", "Perseids": "2027-08-13T08:11:00Z", "Orionids": "2027-10-22T00:37:00Z",
		"Leonids": "2027-11-18T05:59:00Z", "Geminids": "2027-12-14T19:53:00Z", "Ursids": "2027-12-23T04:21:00Z",
	}
	for _, longitude := range []string{"-157", "-65", "13", "85", "175"} {
		r := reckon(t, "alder reach", "sky-alerts", "2027-01-01", "from=2027-01-01", "to=2027-12-31",
			"school.latitude=20", "school.longitude="+longitude, "school.time_zone=UTC")
		found, at := 0, cells(t, r, "days", "time")
		for i, what := range textsOf(t, r, "days", "what") {
			if name, ok := strings.CutSuffix(what, ": shooting stars"); ok {
				found++
				near(t, name+" at "+longitude+"°, hours from the peak", at[i].Time.Sub(instant(t, peaks[name])).Hours(), 0, 12.3)
			}
		}
		if found != len(peaks) {
			t.Errorf("%d showers at %s°", found, longitude)
		}
	}
}

// The dial is at its most ahead or behind on a turn of the equation of time, about 11
// February, 14 May, 26 July and 3 November (Meeus, Astronomical Algorithms, 2nd ed. 1998,
// ch. 28), and not on the first of April because that is where somebody begins.
func TestDialDayIsATurn(t *testing.T) {
	for _, c := range []struct {
		from, to string
		want     []string // two dates: time zones, and turns are flat
	}{
		{"2027-04-01", "2027-04-30", nil}, {"2027-04-01", "2027-06-30", []string{"Friday 14 May", "Saturday 15 May"}},
		{"2027-06-01", "2027-09-30", []string{"Monday 26 July", "Tuesday 27 July"}},
		{"2027-01-01", "2027-12-31", []string{"Wednesday 3 November", "Thursday 4 November"}},
	} {
		for _, school := range []string{"alder reach", "south", "far east"} {
			r := reckon(t, school, "sky-alerts", c.from, "from="+c.from, "to="+c.to)
			i := slices.IndexFunc(textsOf(t, r, "days", "what"), func(s string) bool { return strings.HasPrefix(s, "the dial") })
			switch {
			case i < 0 && c.want != nil:
				t.Errorf("%s, %s to %s: no dial day", school, c.from, c.to)
			case i >= 0 && !slices.Contains(c.want, textsOf(t, r, "days", "date")[i]):
				t.Errorf("%s, %s to %s: the dial day is %s, want %q", school, c.from, c.to, textsOf(t, r, "days", "date")[i], c.want)
			}
		}
	}
}

// Clocks that change at midnight: in Chile from Saturday to Sunday, 4 April and 5
// September 2027 (IANA time zone database, rule Chile: Apr Sun>=2 3:00u, Sep Sun>=2
// 4:00u). By the old clock it is 0:00 of the Sunday: the alerts have it there, and so
// have the facts of the place.
func TestClocksThatChangeAtMidnight(t *testing.T) {
	santiago := []string{"school.latitude=-33.45", "school.longitude=-70.67", "school.time_zone=America/Santiago"}
	for sunday, want := range map[string]string{
		"2027-04-04": "on 4 April 2027 at 0:00 the clocks go back by 1\u00a0h",
		"2027-09-05": "on 5 September 2027 at 0:00 the clocks go forward by 1\u00a0h",
	} {
		r := reckon(t, "alder reach", "sky-alerts", sunday, append([]string{"from=" + sunday, "to=" + sunday}, santiago...)...)
		i := slices.IndexFunc(textsOf(t, r, "days", "what"), func(s string) bool { return strings.HasPrefix(s, "clocks go") })
		if i < 0 {
			t.Errorf("%s: no clock change in %q", sunday, textsOf(t, r, "days", "what"))
			continue
		}
		if day, clock := textsOf(t, r, "days", "date")[i], textsOf(t, r, "days", "time")[i]; !strings.HasPrefix(day, "Sunday") || clock != "0:00" {
			t.Errorf("%s: the clocks change on %s at %s", sunday, day, clock)
		}
		facts := reckon(t, "alder reach", "place-facts", sunday[:8]+"01", santiago...)
		if got := english(t).Text(fact(t, facts, "next_clock_change")); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// What the sky does: the Moon's shadow crosses the Atlantic on 12
// August 2026 (NASA eclipse catalogue), daylight-saving time in New Brunswick begins on
// the second Sunday of March (IANA), the Perseids peak on 12 or 13 August (IMO),
// and Saturn is opposite the Sun on 4 October 2026 (from memory).
func TestSkyAlerts(t *testing.T) {
	r := reckon(t, "alder reach", "sky-alerts", "2026-08-01", "from=2026-08-01", "to=2027-03-31")
	dates, what := textsOf(t, r, "days", "date"), textsOf(t, r, "days", "what")
	find := func(part string, want ...string) {
		t.Helper()
		for i, w := range what {
			if strings.Contains(w, part) {
				if !slices.Contains(want, dates[i]) {
					t.Errorf("%s is on %s, want %s", part, dates[i], want)
				}
				return
			}
		}
		t.Errorf("no %s in %q", part, what)
	}
	find("clocks go forward", "Sunday 14 March")
	find("clocks go back", "Sunday 1 November")
	find("Perseids", "Wednesday 12 August", "Thursday 13 August")
	find("Geminids", "Sunday 13 December", "Monday 14 December")
	find("Saturn opposite", "Saturday 3 October", "Sunday 4 October", "Monday 5 October")
	find("eclipse of the Sun", "Wednesday 12 August")
	find("December solstice", "Monday 21 December")
	if len(r.Cautions) == 0 {
		t.Error("an eclipse of the Sun without its caution")
	}
	find("the dial at its most ahead", "Tuesday 3 November")
}

// Two lessons with dates of their own need not be held in their order; a thing
// is wanted for the earlier day, in the list and in the note to families.
func TestThingsForTheEarlierDay(t *testing.T) {
	rolls := []classroom.Thing{{Item: "card rolls", Count: 1, Share: classroom.PerPupil, Source: classroom.FromHome}}
	unit := []classroom.Lesson{
		{Title: "A", Date: day(t, "2027-04-20"), Start: 9 * time.Hour, Kit: rolls},
		{Title: "B", Date: day(t, "2027-04-14"), Start: 9 * time.Hour, Kit: rolls},
	}
	for name, want := range map[string]struct{ table, fact, day string }{
		"kit-list":    {"list", "home_by", "11 Apr"},
		"family-note": {"things", "first_by", "Sunday 11 April"},
	} {
		entry, _ := placeholder.Find(placeholder.Catalogue(), name)
		values := entry.Complete(settings(t, "alder reach"), nil, day(t, "2027-04-12"))
		values["class.pupils"], values["supplies.home_days"] = 27, 3
		r, err := entry.Reckon(entry.WithLessons(values, unit, placeholder.Calendar(values, unit), 0))
		if err != nil {
			t.Fatal(err)
		}
		if got := textsOf(t, r, want.table, "by"); !slices.Equal(got, []string{want.day}) {
			t.Errorf("%s: by %q, want %q", name, got, want.day)
		}
		if got := fact(t, r, want.fact).Time.Format(time.DateOnly); got != "2027-04-11" {
			t.Errorf("%s: %s is %s", name, want.fact, got)
		}
	}
}

// The last day of the almanac's years is looked at too, east and west of Greenwich,
// where it ends in the next year.
func TestSkyAlertsOnTheLastDay(t *testing.T) {
	for school := range schools {
		if facts := reckon(t, school, "sky-alerts", "2100-12-01", "from=2100-12-01", "to=2100-12-31").Facts; len(facts) != 4 {
			t.Errorf("%s: %d facts", school, len(facts))
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
		if got := cells(t, r, "moments", "clock")[c.row].Time; !got.Equal(instant(t, c.at)) {
			t.Errorf("%s: the lesson has %s", name, got)
		}
		near(t, name+": Sun", cells(t, r, "moments", "sun_altitude")[c.row].Number, c.sun, 0.025)
		near(t, name+": shadow", cells(t, r, "moments", "shadow_length")[c.row].Number, c.shadow, 0.007)
		sixteenth := [...]string{"north", "north-north-east", "north-east", "east-north-east", "east", "east-south-east", "south-east", "south-south-east",
			"south", "south-south-west", "south-west", "west-south-west", "west", "west-north-west", "north-west", "north-north-west"}[int(c.to/22.5+0.5)%16]
		if got := textsOf(t, r, "moments", "shadow_to")[c.row]; got != sixteenth {
			t.Errorf("%s: the shadow points %s, want %s", name, got, sixteenth)
		}
		if got := textsOf(t, r, "moments", "moon")[c.row]; got != c.moon {
			t.Errorf("%s: the Moon is %q, want %q", name, got, c.moon)
		}
	}
}
