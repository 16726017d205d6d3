package placeholder_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"noonbook/build/form"
	"noonbook/build/placeholder"
	"noonbook/build/result"
	"noonbook/build/school"
	"noonbook/build/typeset"
)

// tryLog evaluates a log placeholder with the text of its CSV file; given are
// key=value pairs.
func tryLog(t *testing.T, where, name, text string, given ...string) (result.Result, error) {
	t.Helper()
	key := "records." + strings.ReplaceAll(name, "-", "_")
	field, ok := school.Settings().Field(key)
	if !ok {
		t.Fatalf("no setting %s", key)
	}
	records, faults := field.ReadRecords([]byte(text))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	records.File = "log.csv"
	values := form.Values{key: records}
	entry, _ := placeholder.Find(placeholder.Catalogue(), name)
	for _, pair := range given {
		key, value, _ := strings.Cut(pair, "=")
		v, complaint := entry.Form(school.Settings()).ParsePair(key, value)
		if complaint != "" {
			t.Fatal(complaint)
		}
		values[key] = v
	}
	return entry.Reckon(entry.Complete(settings(t, where), values, day(t, "2027-04-20")))
}

func reckonLog(t *testing.T, school, name, text string, given ...string) result.Result {
	t.Helper()
	r, err := tryLog(t, school, name, text, given...)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func english(t *testing.T) *typeset.Words {
	t.Helper()
	words, err := typeset.Language("en", false)
	if err != nil {
		t.Fatal(err)
	}
	return words
}

var sampleLogs = map[string]string{
	"moon-log":  moonAtAlderReach,
	"strip-log": "group,body,squares,past_cm\nA,earth,9,10.7\nB,earth,9,10\nA,jupiter,54,\n",
}

// moonAtAlderReach are looks whose lit part, direction and height are pyephem's
// (4.1.4, moon_phase, azimuth and altitude; the lit side is the direction from
// the Moon to the Sun, from its altitudes and azimuths), rounded as a pupil
// would, and looks that contradict them. pyephem, in UTC:
//
//	2027-04-13 19:00  48.3 % lit, azimuth 100.0°, altitude  42.6°, lit at  33° from the top
//	2027-04-16 22:00  81.4 %,             118.5°,           34.2°,          32°
//	2027-04-14 11:00  55.9 %,             359.2°,          −23.4°
//	2027-04-26 12:00  71.6 %,             222.0°,            5.2°,         304°
const moonAtAlderReach = `group,date,time,seen,lit_percent,lit_side,direction,altitude_deg
B,2027-04-16,19:00,yes,30,left,west,70
A,2027-04-13,16:00,yes,50,upper_right,east,40
A,2027-04-16,19:00,,80,upper_right,southeast,30
B,2027-04-14,8:00,yes,50,,,
C,2027-04-20,22:00,cloud,,,,
C,2027-04-26,9:00,no,,,,
C,2027-04-14,8:00,no,,,,
`

func TestMoonLogAgainstPyephem(t *testing.T) {
	r := reckonLog(t, "alder reach", "moon-log", moonAtAlderReach)
	var verdicts []string
	for _, row := range r.Tables[0].Rows {
		verdicts = append(verdicts, english(t).Text(row.Cells[len(row.Cells)-1]))
	}
	want := []string{
		"fits",
		"the Moon was down: wrong time or date",
		"it was down",
		"the lit part, the side, the direction and the height",
		"fits",
		"cloud",
		"it was up",
	}
	if !slices.Equal(verdicts, want) {
		t.Errorf("in the order of time the verdicts are\n%q, want\n%q", verdicts, want)
	}
	for name, want := range map[string]float64{"looks": 7, "seen": 4, "clouded": 1, "fit": 2} {
		if got := fact(t, r, name).Number; got != want {
			t.Errorf("%s is %v, want %v", name, got, want)
		}
	}
	// (|50 − 48.3| + |80 − 81.4| + |30 − 81.4|) / 3; pyephem gives the lit part for the
	// Earth's centre, 0.3 % from the school's at most for a Moon at 57 radii.
	near(t, "lit_off", fact(t, r, "lit_off").Number, (1.7+1.4+51.4)/3, 0.4)
}

// A Moon overhead has no side and no direction that two pupils would agree on: pyephem
// 4.1.4 for 1.4° N, 103.8° E has it 83.6° high at 2027-04-17 14:00 UTC, 86.8 % lit, and
// 74.6° high at 2027-04-15 13:00 UTC, azimuth 346.7°, where a wrong direction counts.
func TestMoonLogOverhead(t *testing.T) {
	const head = "date,time,lit_percent,lit_side,direction,altitude_deg\n"
	for row, fit := range map[string]float64{
		"2027-04-17,22:00,85,left,west,85\n": 1, "2027-04-17,22:00,85,right,south,85\n": 1, "2027-04-17,22:00,85,right,south,60\n": 0,
		"2027-04-15,21:00,70,,north,75\n": 1, "2027-04-15,21:00,70,,south,75\n": 0,
	} {
		if got := fact(t, reckonLog(t, "line north", "moon-log", head+row), "fit").Number; got != fit {
			t.Errorf("%q: %v fit, want %v", row, got, fit)
		}
	}
}

// South of the equator the same Moon is lit on the other side: pyephem for
// 45.87° S, 170.5° E at 2027-04-13 05:00 UTC has 41.6 % lit, azimuth 16.9°,
// altitude 15.7°, lit at 278° from the top.
func TestMoonLogInTheSouth(t *testing.T) {
	const head = "date,time,lit_percent,lit_side,direction,altitude_deg\n"
	if r := reckonLog(t, "south", "moon-log", head+"2027-04-13,17:00,40,left,north,15\n"); fact(t, r, "fit").Number != 1 {
		t.Errorf("a true look does not fit: %v", r.Tables[0].Rows)
	}
	north := reckonLog(t, "south", "moon-log", head+strings.Repeat("2027-04-13,17:00,40,right,north,15\n", 3))
	if fact(t, north, "fit").Number != 0 || len(north.Notes) != 1 || north.Notes[0].Key != "moon-log.mirrored" {
		t.Errorf("a diary of mirrored Moons is not told: %v", north.Notes)
	}
}

func TestMoonLogContradictsItself(t *testing.T) {
	_, err := tryLog(t, "alder reach", "moon-log", "date,time,seen,lit_percent\n2027-04-13,16:00,cloud,40\n")
	if err == nil || !strings.Contains(err.Error(), `log.csv, line 2: seen is not "yes"`) {
		t.Errorf("got %v", err)
	}
	_, err = tryLog(t, "alder reach", "moon-log", "date,time\n9000-04-13,16:00\n")
	if err == nil || !strings.Contains(err.Error(), "log.csv, line 2: ") {
		t.Errorf("got %v", err)
	}
}

// Places by hand: Earth 1.00000261 au, Jupiter 5.202887 au, Neptune 30.06992276
// au (Standish, approximate elements, table 1); 300 squares to Neptune put the
// Earth at 9.97677 and Jupiter at 51.9079 squares.
func TestStripLog(t *testing.T) {
	r := reckonLog(t, "alder reach", "strip-log",
		"group,body,squares,past_cm\nA,earth,9,10.7\nB,earth,9,10\n,jupiter,54,\n", "to=neptune")
	near(t, "Earth's mean", r.Tables[0].Rows[0].Cells[3].Number, 9+10.35/11, 1e-9)
	// the last digit of the place by hand is worth 0.0001 cm, the catalogue keeps a.u. to three digits more
	near(t, "Earth off", r.Tables[0].Rows[0].Cells[5].Number, (9+10.35/11-9.97677)*11, 0.001)
	near(t, "apart", r.Tables[0].Rows[0].Cells[4].Number, 0.7, 1e-9)
	near(t, "furthest", r.Tables[0].Rows[1].Cells[5].Number, (54-51.9079)*11, 0.001)
	if got := english(t).Text(fact(t, r, "worst")); got != "somebody, Jupiter: 23.0\u00a0cm off" {
		t.Errorf("the worst is %q", got)
	}
	if fact(t, r, "miscounted").Number != 1 || len(r.Notes) != 1 || r.Notes[0].Key != "strip-log.too_far" {
		t.Errorf("the miscounted seams are not told: %v", r.Notes)
	}
	if missing := english(t).Text(fact(t, r, "missing")); !strings.HasPrefix(missing, "Mercury, Venus, Mars") {
		t.Errorf("missing are %q", missing)
	}
}

// Bad rows are told with line and column, for every kind of record alike.
func TestLogsAreChecked(t *testing.T) {
	for _, c := range []struct{ key, text, want string }{
		{"moon_log", "date,time,lit_side\n2027-04-13,16:00,lft\n", `2:18 lit_side "lft" is unknown, want "top", "upper_right", "right", "lower_right", "bottom", "lower_left", "left" or "upper_left"; did you mean "left"?`},
		{"moon_log", "date,time\n2027-04-13,\n", `2:12 time is missing: a time of day such as "9:10"`},
		{"moon_log", "date,time,lit_percent\n2027-04-13,16:00,40,5\n", `2:21 the row has 4 cells under 3 columns; write a number with a decimal comma in quotes, or with a point`},
		{"strip_log", "body;squares;past_cm\nerath;9;3,5\n", `2:1 body "erath" is unknown, want "mercury", "venus", "earth", "mars", "ceres", "jupiter", "saturn", "uranus", "neptune" or "pluto"; did you mean "earth"?`},
		{"strip_log", "body,squares\nearth,\n", `2:7 squares is missing: a number from 0 to 100000`},
		{"strip_log", "body,squares\n" + strings.Repeat("mars,15\n", 100000), `502:1 more than 500 rows; records.strip_log takes no more`},
	} {
		field, _ := school.Settings().Field("records." + c.key)
		_, faults := field.ReadRecords([]byte(c.text))
		if len(faults) != 1 {
			t.Errorf("%.40q: %d faults: %v", c.text, len(faults), faults)
			continue
		}
		got := strings.TrimSpace(strings.Join([]string{fmt.Sprintf("%d:%d", faults[0].Line, faults[0].Column), faults[0].Text}, " "))
		if got != c.want {
			t.Errorf("%.40q:\n got %s\nwant %s", c.text, got, c.want)
		}
	}
	field, _ := school.Settings().Field("records.strip_log")
	records, faults := field.ReadRecords([]byte("group;body;squares;past_cm\nA;mars;15;3,5\n"))
	if len(faults) > 0 || records.Rows[0].Number("past_cm") != 3.5 {
		t.Errorf("a decimal comma is read as %v %v", records.Rows, faults)
	}
}
