package placeholder_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"noonbook/build/form"
	"noonbook/build/placeholder"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/build/typeset"
	"noonbook/compute/dial"
	"noonbook/compute/place"
)

// dialRecords reads a CSV text as the setting records.dial_marks is read.
func dialRecords(t *testing.T, text string) form.Records {
	t.Helper()
	field, _ := school.Settings().Field("records.dial_marks")
	records, faults := field.ReadRecords([]byte(text))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	return records
}

func tryMarks(t *testing.T, school, text string, given form.Values) (result.Result, error) {
	t.Helper()
	entry, _ := placeholder.Find(placeholder.Catalogue(), "dial-marks")
	records := dialRecords(t, text)
	records.File = "marks.csv"
	given = given.With(form.Values{"records.dial_marks": records})
	return entry.Reckon(entry.Complete(settings(t, school), given, day(t, "2027-04-20")))
}

func reckonMarks(t *testing.T, school, text string) result.Result {
	t.Helper()
	r, err := tryMarks(t, school, text, nil)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// twoGroups are marks of 20 April 2027 at Alder Reach, from the shadows that
// testdata/reference/dial-shadows.csv has for the stand "turned" (ERFA's Sun,
// another geometry): plate and gnomon turned 16.2° anticlockwise. Angles are from
// the plate's noon line, read to a tenth of a degree; the second group measured
// points 100 mm from the toe.
const twoGroups = `group,date,time,angle_deg,x_mm,y_mm
A,2027-04-20,10:00,-30.2,,
A,2027-04-20,11:00,-18.0,,
A,2027-04-20,12:00,-7.1,,
A,2027-04-20,13:00,3.5,,
A,2027-04-20,14:00,14.5,,
A,2027-04-20,15:00,26.5,,
A,2027-04-20,16:00,40.6,,
B,2027-04-20,10:00,,-50.2,86.5
B,2027-04-20,11:00,,-31.0,95.1
B,2027-04-20,12:00,,-12.3,99.2
B,2027-04-20,13:00,,6.2,99.8
B,2027-04-20,14:00,,25.0,96.8
B,2027-04-20,15:00,,44.6,89.5
B,2027-04-20,16:00,,65.1,75.9
`

// What the reference cast is found, by angles and by points, with the compass
// as its cause.
func TestMarksTellTheTurn(t *testing.T) {
	for _, given := range []form.Values{nil, {"group": "A"}, {"group": "B"}} {
		r, err := tryMarks(t, "alder reach", twoGroups, given)
		if err != nil {
			t.Fatal(err)
		}
		margin := fact(t, r, "turn_margin").Number
		near(t, "turn", fact(t, r, "turn").Number, -16.2, min(margin, 1.5))
		near(t, "gnomon", fact(t, r, "gnomon_off").Number, 0, fact(t, r, "gnomon_margin").Number)
		near(t, "watch", fact(t, r, "watch_off").Number, 0, fact(t, r, "watch_margin").Number)
		if got := words(t, r); !strings.Contains(got, "turned 16° anticlockwise") || !strings.Contains(got, "as far as the compass differs from true north here") {
			t.Errorf("finding: %s", got)
		}
		if margin > 2 || margin <= 0 {
			t.Errorf("margin of %v°", margin)
		}
	}
}

func words(t *testing.T, r result.Result) string {
	t.Helper()
	en, err := typeset.Language("en", false)
	if err != nil {
		t.Fatal(err)
	}
	return en.Text(fact(t, r, "finding"))
}

// A watch an hour out is named, where nothing is known of the watch but the
// marks of midsummer tell; marks by the pencil of compute/dial.
func TestMarksTellAForgottenClockChange(t *testing.T) {
	text := "date,time,angle_deg\n"
	p := placeholder.Place(settings(t, "alder reach"))
	for hour := 8; hour <= 18; hour++ {
		at := p.Clock(place.Date{Year: 2027, Month: time.June, Day: 21}, hour-1, 0) // the watch shows an hour more
		h, declination := dial.SunAt(p, at)
		line, _ := dial.True(p.Latitude).Line(dial.SunDirection(p.Latitude, declination, h))
		text += fmt.Sprintf("2027-06-21,%d:00,%.2f\n", hour, line.Degrees())
	}
	r, err := tryMarks(t, "alder reach", text, form.Values{"watch_within_min": 0.0})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "watch", fact(t, r, "watch_off").Number/60, 60, 1)
	if got := words(t, r); !strings.Contains(got, "an hour, as if a clock change was forgotten") || !strings.Contains(got, "lay true") {
		t.Errorf("finding: %s", got)
	}
}

// Too few, contradictory and undecided marks give words and no number.
func TestMarksThatAnswerNothing(t *testing.T) {
	head := "date,time,angle_deg\n"
	for text, want := range map[string]string{
		head: "No marks are entered",
		head + "2027-04-20,10:00,-30\n2027-04-20,11:00,-18\n": "2 marks are too few; 5 are needed",
		head + strings.Repeat("2027-04-20,10:00,-30\n", 8):    "many answers",
		head + "2027-04-20,10:00,-30\n2027-04-20,11:00,60\n2027-04-20,12:00,-70\n2027-04-20,13:00,40\n2027-04-20,14:00,-20\n2027-04-20,15:00,5\n": "contradict",
	} {
		r := reckonMarks(t, "alder reach", text)
		if got := words(t, r); !strings.Contains(got, want) {
			t.Errorf("%q: %s", text, got)
		}
		for _, name := range []string{"turn", "turn_margin", "gnomon_off", "watch_off", "scatter"} {
			if v := fact(t, r, name); v.Kind != say.Nothing || v.Number != 0 {
				t.Errorf("%q: %s is %v", text, name, v)
			}
		}
	}
}

func TestMarksThatAreNoMarks(t *testing.T) {
	for text, want := range map[string]string{
		"date,time,angle_deg,x_mm\n2027-04-20,10:00,3,5\n": "marks.csv, line 2: a mark has angle_deg, or x_mm and y_mm, not both",
		"date,time,x_mm\n2027-04-20,10:00,3\n":             "marks.csv, line 2: a mark needs angle_deg, or both x_mm and y_mm",
		"date,time,x_mm,y_mm\n\n2027-04-20,10:00,3,4\n":    "marks.csv, line 3: a mark within 10 mm of the toe tells no angle",
	} {
		if _, err := tryMarks(t, "alder reach", text, nil); err == nil || err.Error() != want {
			t.Errorf("%q: %v", text, err)
		}
	}
	if _, err := tryMarks(t, "alder reach", twoGroups, form.Values{"group": "C"}); err == nil || !strings.Contains(err.Error(), `"C"`) {
		t.Errorf("a group that is not there: %v", err)
	}
}
