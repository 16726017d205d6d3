package source_test

import (
	"slices"
	"testing"
	"testing/fstest"

	"noonbook/build/placeholder"
	"noonbook/build/school"
	"noonbook/build/source"
)

// A CSV file that settings or a block name is read with the unit; what is wrong
// in it stands with its own file, line and column.
func TestRecordsAreRead(t *testing.T) {
	lesson := "```lesson\ntitle = \"A\"\n```\n```compute dial-marks\nrecords.dial_marks = \"b.csv\"\n```\n"
	files := fstest.MapFS{
		"unit.toml": {Data: []byte(settings + "[records]\ndial_marks = \"a.csv\"\n")},
		"1-a.md":    {Data: []byte(lesson)},
		"a.csv":     {Data: []byte("\ufeffdate,time,angle_deg\r\n2027-04-20,10:00,-30\r\n")},
		"b.csv":     {Data: []byte("date;time;angle_deg\n2027-04-20;11:00;-18,5\n2027-04-20;12:00;-7\n")},
	}
	unit, problems, err := source.Read(files, "u", own(t), placeholder.Catalogue())
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	if got := school.RecordsDialMarks.Of(unit.Settings); len(got.Rows) != 1 || school.DialMarksAngleDeg.Of(got.Rows[0]) != -30 || got.File != "a.csv" {
		t.Errorf("settings hold %v", got)
	}
	found := false
	for c := unit.Lessons[0].Tree.FirstChild(); c != nil; c = c.NextSibling() {
		if b, ok := c.(*source.Block); ok {
			got := school.RecordsDialMarks.Of(b.Given)
			found = len(got.Rows) == 2 && school.DialMarksAngleDeg.Of(got.Rows[0]) == -18.5
		}
	}
	if !found {
		t.Error("the block does not hold its own records")
	}
}

func TestRecordsHavePlaces(t *testing.T) {
	for _, c := range []struct{ name, csv, want string }{
		{"a.csv", "date,time,angle_deg\n2027-04-20,10:00,soon\n", `u/a.csv:2:18: angle_deg is "soon", want a number from −180° to 180°`},
		{"a.csv", "date,tiem\n", `u/a.csv:1:6: "tiem" is not a column; did you mean "time"?`},
		{"a.csv", "date,time\n2027-04-20,1\xff:00\n", "u/a.csv:2:13: byte 0xff is not UTF-8; save the file with the encoding UTF-8"},
		{"b.csv", "", "u/unit.toml:11:14: records.dial_marks: file a.csv is not in the content folder"},
	} {
		_, problems, err := source.Read(fstest.MapFS{
			"unit.toml": {Data: []byte(settings + "[records]\ndial_marks = \"a.csv\"\n")},
			"1-a.md":    {Data: []byte("```lesson\ntitle = \"A\"\n```\n")},
			c.name:      {Data: []byte(c.csv)},
		}, "u", own(t), placeholder.Catalogue())
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, p := range problems {
			got = append(got, p.Error())
		}
		if !slices.Contains(got, c.want) {
			t.Errorf("%q: got %q, want %q", c.csv, got, c.want)
		}
	}
	_, problems, _ := source.Read(fstest.MapFS{
		"unit.toml": {Data: []byte(settings + "[records]\ndial_marks = \"../a.csv\"\n")},
		"1-a.md":    {Data: []byte("```lesson\ntitle = \"A\"\n```\n")},
	}, "u", own(t), placeholder.Catalogue())
	if want := "u/unit.toml:11:14: records.dial_marks: ../a.csv leads outside the content folder; want a path within it"; len(problems) != 1 || problems[0].Error() != want {
		t.Errorf("got %v", problems)
	}
}
