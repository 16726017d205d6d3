package typeset_test

import (
	"encoding/csv"
	"os"
	"strings"
	"testing"
	"time"

	"noonbook/build/say"
	"noonbook/build/typeset"
	"noonbook/compute/place"
)

func inManner(t *testing.T, code string, m typeset.Manner) *typeset.Words {
	t.Helper()
	return language(t, code, false).In(m)
}

func at(t *testing.T, clock string) say.Value {
	t.Helper()
	d, err := time.Parse("15:04", clock)
	if err != nil {
		t.Fatal(err)
	}
	return say.Clock(time.Date(2027, 4, 13, d.Hour(), d.Minute(), 0, 0, time.UTC))
}

// clockTimes are the rows of testdata/reference/clock-times.csv: kind, locale, from, to
// and text, by CLDR.
func clockTimes(t *testing.T) [][]string {
	t.Helper()
	f, err := os.Open("../../testdata/reference/clock-times.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil || len(rows) != 1+96+7+1+18 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	return rows[1:]
}

func plainSpaces(s string) string { return strings.ReplaceAll(s, "\u00a0", " ") }

// English as Canada writes it, and dates as the United Kingdom writes them: CLDR 48,
// en-CA, en-GB and fr-CA. Where CLDR writes 12:00 p.m. and 12:00 a.m. we say noon and
// midnight, which are among its day periods of English, because half of all readers take
// the two for one another (common practice, no source).
func TestMannersAgainstCLDR(t *testing.T) {
	monthFirst := map[string]*typeset.Words{
		"en-CA": inManner(t, "en", typeset.Manner{TwelveHour: true, MonthFirst: true}),
		"en-GB": inManner(t, "en", typeset.Manner{}),
		"fr-CA": inManner(t, "fr", typeset.Manner{TwelveHour: true, MonthFirst: true}),
	}
	tried := map[string]int{}
	for _, row := range clockTimes(t) {
		kind, from, to, want := row[0], row[2], row[3], row[4]
		w, got := monthFirst[row[1]], ""
		tried[kind]++
		switch kind {
		case "time":
			got = w.Text(at(t, from))
			switch want {
			case "12:00 p.m.":
				want = "noon"
			case "12:00 a.m.":
				want = "midnight"
			}
		case "range":
			got = strings.Replace(w.Say("page.lesson_time", say.Text("-"), at(t, from), at(t, to)), " to ", "–", 1)
			got = strings.TrimPrefix(got, "-, ")
		case "period":
			got = "12 " + w.Text(at(t, from))
		default:
			day, err := time.Parse(time.DateOnly, from)
			if err != nil {
				t.Fatal(err)
			}
			got = map[string]func(time.Time) string{"weekday": w.Weekday, "day": w.DayMonth, "date": func(d time.Time) string {
				return w.Text(say.Date(place.Date{Year: d.Year(), Month: d.Month(), Day: d.Day()}))
			}}[kind](day)
			got = strings.Replace(got, "1er\u00a0", "1 ", 1) // CLDR leaves the ordinal to who asks for it
		}
		if plainSpaces(got) != want {
			t.Errorf("%s %s %s %s: %q, want %q", kind, row[1], from, to, got, want)
		}
	}
	if len(tried) != 6 {
		t.Errorf("kinds: %v", tried)
	}
}

func TestTwelveHourClock(t *testing.T) {
	w := inManner(t, "en", typeset.Manner{TwelveHour: true})
	for clock, want := range map[string]string{
		"00:00": "midnight", "00:05": "12:05\u00a0a.m.", "09:10": "9:10\u00a0a.m.", "12:00": "noon",
		"12:05": "12:05\u00a0p.m.", "13:20": "1:20\u00a0p.m.", "23:59": "11:59\u00a0p.m.",
	} {
		if got := w.Text(at(t, clock)); got != want {
			t.Errorf("%s: %q, want %q", clock, got, want)
		}
	}
	// A sunset at 23:59:40 keeps its day, so it is not at midnight.
	if got := w.Text(say.Clock(time.Date(2027, 6, 1, 23, 59, 40, 0, time.UTC))); got != "11:59\u00a0p.m." {
		t.Error(got)
	}
	for _, c := range [][3]string{
		{"09:10", "10:00", "9:10 to 10:00\u00a0a.m."},
		{"11:30", "12:20", "11:30\u00a0a.m. to 12:20\u00a0p.m."},
		{"11:05", "12:00", "11:05\u00a0a.m. to noon"},
		{"12:00", "13:00", "noon to 1:00\u00a0p.m."},
		{"22:00", "00:00", "10:00\u00a0p.m. to midnight"},
		{"00:00", "01:00", "midnight to 1:00\u00a0a.m."},
		{"22:30", "01:10", "10:30\u00a0p.m. to 1:10\u00a0a.m."},
		{"23:00", "22:00", "11:00\u00a0p.m. to 10:00\u00a0p.m."}, // of the next evening
	} {
		if got := w.Say("page.lesson_time", say.Text("-"), at(t, c[0]), at(t, c[1])); got != "-, "+c[2] {
			t.Errorf("%s to %s: %q, want %q", c[0], c[1], got, c[2])
		}
	}
}

// In a column below "11:30 a.m. to 12:20 p.m." the halves of the day need not be said.
func TestShortClock(t *testing.T) {
	for clock, want := range map[string][2]string{"11:30": {"11:30", "11:30"}, "12:00": {"noon", "12:00"}, "12:05": {"12:05", "12:05"}, "13:20": {"1:20", "13:20"}, "00:00": {"midnight", "0:00"}, "00:05": {"12:05", "0:05"}} {
		twelve, whole := inManner(t, "en", typeset.Manner{TwelveHour: true}), inManner(t, "en", typeset.Manner{})
		if got := [2]string{twelve.ShortClock(at(t, clock).Time), whole.ShortClock(at(t, clock).Time)}; got != want {
			t.Errorf("%s: %q, want %q", clock, got, want)
		}
	}
}

// On the wall calendar the end of a lesson says which half its begin is in.
func TestTimesOnTheWall(t *testing.T) {
	for _, c := range [][4]string{
		{"09:10", "10:00", "9:10–10:00\u00a0a.m., dark", "9:10–10:00, dark"},
		{"11:30", "12:20", "11:30–12:20\u00a0p.m., dark", "11:30–12:20, dark"},
		{"12:00", "13:00", "noon–1:00\u00a0p.m., dark", "12:00–13:00, dark"},
	} {
		for i, twelve := range []bool{true, false} {
			got := inManner(t, "en", typeset.Manner{TwelveHour: twelve}).Say("unit-plan.times", at(t, c[0]), at(t, c[1]), say.Words("unit-plan.dark"))
			if got != c[2+i] {
				t.Errorf("%q, want %q", got, c[2+i])
			}
		}
	}
}

// The stop of p.m. ends the sentence too.
func TestNoSecondStop(t *testing.T) {
	day, clock := say.Text("1 June"), at(t, "13:20")
	for _, c := range []struct {
		w    *typeset.Words
		want string
	}{
		{inManner(t, "en", typeset.Manner{TwelveHour: true}), "seen from here at 1:20\u00a0p.m., by"},
		{inManner(t, "en", typeset.Manner{}), "seen from here at 13:20, by"},
	} {
		if got := c.w.Say("moon-month.drawn_at", clock); !strings.Contains(got, c.want) {
			t.Errorf("%q has no %q", got, c.want)
		}
		if got := c.w.Say("sun-day.sets_first", day, clock, clock, clock); strings.Contains(got, "..") || !strings.HasSuffix(got, "day.") {
			t.Error(got)
		}
	}
	w := inManner(t, "en", typeset.Manner{TwelveHour: true})
	if got := w.Say("dial-table.working_line", say.Text("a.m."), say.Text("b"), say.Text("c"), clock); !strings.HasSuffix(got, "1:20\u00a0p.m.") {
		t.Error(got)
	}
}

// Hours where there is little room. A dial's figures run twice to twelve, also on the
// face of 24 hours that a polar day needs.
func TestWholeHours(t *testing.T) {
	twelve, whole := inManner(t, "en", typeset.Manner{TwelveHour: true}), inManner(t, "en", typeset.Manner{})
	for _, c := range []struct {
		hour                               int
		face, scale, axis, face24, scale24 string
		axis24                             string
	}{
		{0, "12", "midnight", "midnight", "0", "0", "0:00"},
		{5, "5", "5\u00a0a.m.", "5\u00a0a.m.", "5", "5", "5:00"},
		{12, "12", "noon", "noon", "12", "12", "12:00"},
		{13, "1", "1\u00a0p.m.", "1\u00a0p.m.", "13", "13", "13:00"},
		{23, "11", "11\u00a0p.m.", "11\u00a0p.m.", "23", "23", "23:00"},
		{24, "12", "midnight", "midnight", "24", "24", "0:00"},
	} {
		got := []string{
			twelve.Text(say.HourOnFace(c.hour)), twelve.Text(say.HourOnScale(c.hour)), twelve.Text(say.HourOnAxis(c.hour)),
			whole.Text(say.HourOnFace(c.hour)), whole.Text(say.HourOnScale(c.hour)), whole.Text(say.HourOnAxis(c.hour)),
		}
		for i, want := range []string{c.face, c.scale, c.axis, c.face24, c.scale24, c.axis24} {
			if got[i] != want {
				t.Errorf("hour %d, way %d: %q, want %q", c.hour, i, got[i], want)
			}
		}
	}
}

// A date with the month first has a comma behind its year where the sentence goes on
// (The Canadian Style, 2nd ed. 1997, ch. 7, "Comma", from memory).
func TestYearInASentence(t *testing.T) {
	w := inManner(t, "en", typeset.Manner{MonthFirst: true})
	from, to := say.Date(place.Date{Year: 2027, Month: 4, Day: 12}), say.Date(place.Date{Year: 2027, Month: 5, Day: 14})
	for key, want := range map[string]string{
		"sky-alerts.title":       "What the sky does from April 12, 2027, to May 14, 2027",
		"sun-day.polar_night":    "On April 12, 2027, the Sun does not rise here",
		"sun-path.title":         "The Sun's way on April 12, 2027",
		"dial-drift.working":     "From April 12, 2027, to May 14, 2027, the equation",
		"kit-list.before_term":   "Days before April 12, 2027, are counted",
		"moon-month.working":     "On April 12, 2027, at May 14, 2027, the angle",
		"calendar.sun":           "it needs the Sun at D or higher, and at May 14, 2027, on C the Sun stands at April 12, 2027",
		"world-cards.note_moons": "April 12, 2027",
	} {
		if got := w.Say(key, from, to, say.Text("C"), say.Text("D"), say.Text("E")); !strings.Contains(strings.ReplaceAll(got, "’", "'"), want) {
			t.Errorf("%q, want %q", got, want)
		}
	}
	if got := inManner(t, "en", typeset.Manner{}).Say("sky-alerts.title", from, to); got != "What the sky does from 12 April 2027 to 14 May 2027" {
		t.Error(got)
	}
}

// What a language does not write it leaves as it is.
func TestFrenchKeepsItsManner(t *testing.T) {
	w := inManner(t, "fr", typeset.Manner{TwelveHour: true, MonthFirst: true})
	if got := plainSpaces(w.Text(at(t, "13:20"))); got != "13 h 20" {
		t.Error(got)
	}
	if got := plainSpaces(w.Weekday(time.Date(2027, 4, 13, 0, 0, 0, 0, time.UTC))); got != "mardi 13 avril" {
		t.Error(got)
	}
}
