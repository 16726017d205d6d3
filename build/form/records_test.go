package form_test

import (
	"reflect"
	"strings"
	"testing"
	"time"

	"noonbook/build/form"
	"noonbook/compute/place"
)

var marks = form.Field{Key: form.Key[form.Records]("records.marks"), Max: 4, Fields: form.Form{
	{Key: form.Key[string]("group"), Default: "all"},
	{Key: form.Key[place.Date]("date")},
	{Key: form.Key[time.Duration]("time"), Required: true},
	{Key: form.Key[float64]("angle_deg"), Unit: "deg", Min: -180, Max: 180},
}}

// RFC 4180: quoted cells, CRLF or LF, a last line with or without an end; and
// what spreadsheets make of it where numbers have a comma.
func TestReadRecords(t *testing.T) {
	want := []form.Values{
		{"group": `the "owls"`, "date": place.Date{Year: 2027, Month: time.April, Day: 14}, "time": 9 * time.Hour, "angle_deg": -45.5},
		{"group": "all", "time": 13*time.Hour + 5*time.Minute, "angle_deg": 3.0},
	}
	for name, text := range map[string]string{
		"commas":            "group,date,time,angle_deg\n\"the \"\"owls\"\"\",2027-04-14,9:00,-45.5\n,,13:05,3\n",
		"CRLF, no last end": "time,group,angle_deg,date\r\n9:00,\"the \"\"owls\"\"\",-45.5,2027-04-14\r\n13:05,,3",
		"semicolons":        "group;date;time;angle_deg\n\"the \"\"owls\"\"\";2027-04-14;9:00;-45,5\n;;13:05;3,0\n;;;\n\n",
		"decimal comma":     "group,date,time,angle_deg\n\"the \"\"owls\"\"\",2027-04-14,09:00,\"−45,5\"\n,,13:05,\"3,0\"\n,,,\n",
		"short rows":        "time , angle_deg,group,date\n 9:00,-45.5,\"the \"\"owls\"\"\",2027-04-14\n13:05,3\n",
	} {
		got, faults := marks.ReadRecords([]byte(text))
		if len(faults) > 0 || !reflect.DeepEqual(got.Rows, want) || !reflect.DeepEqual(got.Line, []int{2, 3}) {
			t.Errorf("%s: %v\n%v", name, got, faults)
		}
	}
}

// Expected places stand before the text of each fault.
func TestReadRecordsFindsFaults(t *testing.T) {
	for _, c := range []struct {
		text string
		want []form.Fault
	}{
		{"", []form.Fault{{1, 1, "the file is empty; its first line names the columns: group, date, time, angle_deg"}}},
		{"tme,angel_deg\n", []form.Fault{
			{1, 1, `"tme" is not a column; did you mean "time"?`},
			{1, 5, `"angel_deg" is not a column; did you mean "angle_deg"?`},
			{1, 1, `the column time is missing: a time of day such as "9:10"`},
		}},
		{"time,time\n", []form.Fault{{1, 6, "the column time is there twice"}}},
		{"time,angle_deg\n25:00,200\n,3\n9:00,12,5\n", []form.Fault{
			{2, 1, `time is "25:00", want a time of day such as "9:10"`},
			{2, 7, "angle_deg 200° is outside −180° to 180°"},
			{3, 1, `time is missing: a time of day such as "9:10"`},
			{4, 9, "the row has 3 cells under 2 columns; write a number with a decimal comma in quotes, or with a point"},
		}},
		{"time\n9:00\n\"10:00\n", []form.Fault{{3, 8, `not valid CSV: extraneous or missing " in quoted-field`}}},
		{"time\n9:00\n9:00\n9:00\n9:00\n9:00\n9:00\n", []form.Fault{{6, 1, "more than 4 rows; records.marks takes no more"}}},
	} {
		if _, got := marks.ReadRecords([]byte(c.text)); !reflect.DeepEqual(got, c.want) {
			t.Errorf("%q:\ngot  %v\nwant %v", c.text, got, c.want)
		}
	}
}

func TestCSVField(t *testing.T) {
	f := form.Form{marks}
	values, faults, _ := f.Read([]byte(`records.marks = "a.csv"`))
	if got := form.Key[form.Records]("records.marks").Of(values); len(faults) > 0 || got.File != "a.csv" || got.Rows != nil {
		t.Errorf("%v %v", got, faults)
	}
	if _, faults, _ := f.Read([]byte(`records.marks = 3`)); len(faults) != 1 || !strings.Contains(faults[0].Text, "with the columns group, date, time, angle_deg, up to 4 rows") {
		t.Errorf("%v", faults)
	}
	if v, complaint := f.ParsePair("records.marks", "b.csv"); complaint != "" || v.(form.Records).File != "b.csv" {
		t.Errorf("%v %s", v, complaint)
	}
}

// Whatever a file holds, its faults have places and its rows fit the columns.
func FuzzReadRecords(f *testing.F) {
	for _, seed := range []string{
		"group,date,time,angle_deg\nA,2027-04-14,9:00,-45.5\n", "time;angle_deg\n9:00;-45,5\n;\n", "time\n\"9:00\n", ",,\n,\n", "time,\n9:00,x,y\n", "\x00;\r\r\n\"\"\"",
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, src []byte) {
		records, faults := marks.ReadRecords(src)
		for _, fault := range faults {
			if fault.Line < 1 || fault.Column < 1 || fault.Text == "" {
				t.Errorf("%+v", fault)
			}
		}
		if len(records.Rows) != len(records.Line) || len(records.Rows) > 4 {
			t.Errorf("%d rows, %d lines", len(records.Rows), len(records.Line))
		}
	})
}
