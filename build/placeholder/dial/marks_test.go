package dial_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/entrytest"
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
	e, _ := entry.Find(entries(), "dial-marks")
	records := dialRecords(t, text)
	records.File = "marks.csv"
	given = given.With(form.Values{"records.dial_marks": records})
	return e.Reckon(e.Complete(entrytest.Settings(t, school), given, entrytest.Day(t, "2027-04-20")))
}

func ReckonMarks(t *testing.T, school, text string) result.Result {
	t.Helper()
	r, err := tryMarks(t, school, text, nil)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// What the reference cast is found, by angles and by points, with the compass
// as its cause.
func TestMarksTellTheTurn(t *testing.T) {
	for _, given := range []form.Values{nil, {"group": "A"}, {"group": "B"}} {
		r, err := tryMarks(t, "alder reach", entrytest.TwoGroups, given)
		if err != nil {
			t.Fatal(err)
		}
		margin := entrytest.Fact(t, r, "turn_margin").Number
		entrytest.Near(t, "turn", entrytest.Fact(t, r, "turn").Number, -16.2, min(margin, 1.5))
		entrytest.Near(t, "gnomon", entrytest.Fact(t, r, "gnomon_off").Number, 0, entrytest.Fact(t, r, "gnomon_margin").Number)
		entrytest.Near(t, "watch", entrytest.Fact(t, r, "watch_off").Number, 0, entrytest.Fact(t, r, "watch_margin").Number)
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
	return en.Text(entrytest.Fact(t, r, "finding"))
}

// A watch an hour out is named, where nothing is known of the watch but the
// marks of midsummer tell; marks by the pencil of compute/dial.
func TestMarksTellAForgottenClockChange(t *testing.T) {
	text := "date,time,angle_deg\n"
	p := school.Place(entrytest.Settings(t, "alder reach"))
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
	entrytest.Near(t, "watch", entrytest.Fact(t, r, "watch_off").Number/60, 60, 1)
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
		r := ReckonMarks(t, "alder reach", text)
		if got := words(t, r); !strings.Contains(got, want) {
			t.Errorf("%q: %s", text, got)
		}
		for _, name := range []string{"turn", "turn_margin", "gnomon_off", "watch_off", "scatter"} {
			if v := entrytest.Fact(t, r, name); v.Kind != say.Nothing || v.Number != 0 {
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
	if _, err := tryMarks(t, "alder reach", entrytest.TwoGroups, form.Values{"group": "C"}); err == nil || !strings.Contains(err.Error(), `"C"`) {
		t.Errorf("a group that is not there: %v", err)
	}
}
