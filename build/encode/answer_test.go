package encode_test

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"math"
	"strings"
	"testing"
	"time"

	"noonbook/build/encode"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/typeset"
)

func english(t *testing.T) *typeset.Words {
	t.Helper()
	words, err := typeset.Language("en", false)
	if err != nil {
		t.Fatal(err)
	}
	return words
}

// answer has one of every kind of value, a caution, a warning and two tables.
func answer() encode.Answer {
	moment := time.Date(2027, 4, 20, 13, 18, 9, 6e8, time.FixedZone("", -3*3600))
	return encode.Answer{Placeholder: "dial-table", Sources: []string{"a source", "another"}, Result: result.Result{
		Facts: []result.Fact{
			{Name: "angle", Value: say.Number(-16.17123456789, "deg", 1)},
			{Name: "unbounded", Value: say.Number(math.Inf(1), "m", 1)},
			{Name: "below", Value: say.Number(math.Inf(-1), "m", 1)},
			{Name: "unknown", Value: say.Number(math.NaN(), "m", 1)},
			{Name: "lasting", Value: say.Minutes(-90 * time.Minute)},
			{Name: "clock", Value: say.Clock(moment)},
			{Name: "day", Value: say.Value{Kind: say.CalendarDay, Time: time.Date(2027, 4, 20, 0, 0, 0, 0, time.UTC)}},
			{Name: "yes", Value: say.Yes(true, "place-facts.dst_on", "place-facts.dst_off")},
			{Name: "no", Value: say.Yes(false, "place-facts.dst_on", "place-facts.dst_off")},
			{Name: "none", Value: say.None("dial-table.no_shadow")},
			{Name: "word", Value: say.Words("compass.true_north")},
			{Name: "name", Value: say.Text(`Ærø & "Co", <b>`)},
		},
		Tables: []result.Table{
			{Name: "lines", Title: say.Line("dial-table.title", say.Text("here")), Columns: []result.Column{{Name: "sun_time", Unit: "h"}, {Name: "line_angle", Unit: "deg"}},
				Rows: []result.Row{{Cells: []say.Value{say.Text("noon"), say.Number(1.5, "deg", 1)}}, {Cells: []say.Value{say.Text("later, much"), say.Number(100.25, "deg", 1)}}}},
			{Name: "lines", Title: say.Line("dial-table.title", say.Text("there")), Columns: []result.Column{{Name: "line_angle_deg", Unit: "deg"}}, Rows: []result.Row{{Cells: []say.Value{say.Number(-2, "deg", 0)}}}},
		},
		Notes:    []say.Phrase{say.Line("sky.fist")},
		Cautions: []say.Phrase{say.Line("caution.sun")},
		Warnings: []say.Phrase{say.Line("dial-north.overhead")},
		Working:  []say.Phrase{say.Line("dial-table.working_clock")},
	}}
}

// Other programs get numbers as they are, what has no value as null, and every
// caution and warning.
func TestJSONHoldsEverything(t *testing.T) {
	var b bytes.Buffer
	words := english(t)
	if err := encode.JSON(&b, answer(), words); err != nil {
		t.Fatal(err)
	}
	var o struct {
		Placeholder string
		Facts       map[string]struct {
			Value any
			Unit  string
			Text  string
		}
		Tables []struct {
			Name, Title string
			Columns     []struct{ Name, Unit string }
			Rows        [][]any
		}
		Working, Sources, Warnings, Cautions, Notes []string
	}
	if err := json.Unmarshal(b.Bytes(), &o); err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]any{
		"angle": -16.17123456789, "unbounded": nil, "below": nil, "unknown": nil, "lasting": -5400.0, "clock": "2027-04-20T13:18:10-03:00", "day": "2027-04-20",
		"yes": true, "no": false, "none": nil, "word": "true north", "name": `Ærø & "Co", <b>`,
	} {
		if got := o.Facts[name].Value; got != want {
			t.Errorf("%s is %v, want %v", name, got, want)
		}
	}
	if o.Facts["angle"].Unit != "deg" || o.Facts["angle"].Text != "−16.2°" || o.Facts["none"].Text != "no shadow" || o.Facts["yes"].Text != "on daylight-saving time" {
		t.Errorf("facts are %v", o.Facts)
	}
	if len(o.Cautions) != 1 || !strings.HasPrefix(o.Cautions[0], "Never look at the Sun") || len(o.Warnings) != 1 || !strings.Contains(o.Warnings[0], "overhead") || len(o.Working) != 1 || len(o.Sources) != 2 {
		t.Errorf("cautions %v, warnings %v, working %v, sources %v", o.Cautions, o.Warnings, o.Working, o.Sources)
	}
	if len(o.Notes) != 1 || o.Notes[0] != words.Line(say.Line("sky.fist")) {
		t.Errorf("notes are %v", o.Notes)
	}
	if len(o.Tables) != 2 || len(o.Tables[0].Columns) != 2 || len(o.Tables[0].Rows) != 2 || o.Tables[0].Rows[1][1] != 100.25 || o.Tables[0].Columns[1].Unit != "deg" || o.Tables[0].Title == "" || o.Placeholder != "dial-table" {
		t.Errorf("tables are %v", o.Tables)
	}
	if !strings.Contains(b.String(), "<b>") || !strings.Contains(b.String(), "\n  \"facts\": {") {
		t.Error("the text is not written to be read")
	}
	// Nothing is null that is a list.
	b.Reset()
	encode.JSON(&b, encode.Answer{Placeholder: "x"}, words)
	for _, list := range []string{"tables", "working", "sources", "warnings", "cautions", "notes"} {
		if !strings.Contains(b.String(), `"`+list+`": []`) {
			t.Errorf("without %s: %s", list, b.String())
		}
	}
}

// Other programs are told the day and the place that an answer is for, or that none
// counts; south and west are negative, as ISO 6709 has it.
func TestJSONSaysWhenAndWhere(t *testing.T) {
	latitude, longitude, height, zone := -45.87, -170.5, 20.0, "Pacific/Auckland"
	at := encode.Place{Name: "Harbour School", Latitude: &latitude, Longitude: &longitude, ElevationM: &height, TimeZone: &zone}
	for _, c := range []struct {
		answer encode.Answer
		want   string
	}{
		{encode.Answer{Placeholder: "x", Date: "2027-04-20", Place: &at},
			`"placeholder":"x","date":"2027-04-20","place":{"name":"Harbour School","latitude":-45.87,"longitude":-170.5,"elevation_m":20,"time_zone":"Pacific/Auckland"},`},
		{encode.Answer{Placeholder: "x", Place: &encode.Place{Name: "Harbour School", ElevationM: &height}},
			`"place":{"name":"Harbour School","latitude":null,"longitude":null,"elevation_m":20,"time_zone":null},`},
		{encode.Answer{Placeholder: "x"}, `"placeholder":"x","date":null,"place":null,`},
	} {
		var b, plain bytes.Buffer
		if err := encode.JSON(&b, c.answer, english(t)); err != nil {
			t.Fatal(err)
		}
		if err := json.Compact(&plain, b.Bytes()); err != nil || !strings.Contains(plain.String(), c.want) {
			t.Errorf("it is %s, want %s", &plain, c.want)
		}
	}
}

// A terminal shows cautions first, then warnings, then facts; numbers stand to the
// right, words to the left.
func TestTextBeginsWithCautions(t *testing.T) {
	var b bytes.Buffer
	if err := encode.Text(&b, answer(), english(t)); err != nil {
		t.Fatal(err)
	}
	out := b.String()
	lines := strings.Split(out, "\n")
	if !strings.HasPrefix(lines[0], "! Never look at the Sun") || !strings.HasPrefix(lines[1], "! On this date the Sun stands almost overhead") {
		t.Errorf("it begins %q, %q", lines[0], lines[1])
	}
	at := -1
	for _, want := range []string{
		"\nangle      −16.2°\n", "\nunbounded  ", "\nno         on standard time\n", "\nnone       no shadow\n", "\nname       Ærø & “Co”, <b>\n",
		"\nHour lines for here\n",
	} {
		i := strings.Index(out, want)
		if i <= at {
			t.Errorf("%q does not stand in its place in\n%s", want, out)
		}
		at = i
	}
	var first, second string
	for _, line := range lines {
		if strings.HasPrefix(line, "  noon") {
			first = line
		}
		if strings.HasPrefix(line, "  later, much") {
			second = line
		}
	}
	if len([]rune(first)) != len([]rune(second)) || !strings.HasSuffix(first, "1.5") || !strings.HasSuffix(second, "100.2") && !strings.HasSuffix(second, "100.3") {
		t.Errorf("rows are %q and %q", first, second)
	}
	for _, want := range []string{"\n\nClock time of a line = ", " a source\n", " another\n"} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is missing", want)
		}
	}
	if strings.Contains(out, " \n") {
		t.Error("a line ends in a space")
	}
}

// RFC 4180: CRLF, a heading row, cells with a comma in quotes. The facts come first;
// tables have an empty line between them, and a unit is named once. Each part reads
// back by itself, with as many cells in each row.
func TestCSVReadsBack(t *testing.T) {
	words := english(t)
	var b bytes.Buffer
	if err := encode.CSV(&b, answer().Result, words); err != nil {
		t.Fatal(err)
	}
	parts := strings.Split(b.String(), "\r\n\r\n")
	if len(parts) != 3 || !strings.HasPrefix(parts[0], "fact,value,unit,text\r\nangle,-16.17123456789,deg,") {
		t.Errorf("with facts it is %q", b.String())
	}
	for i, rows := range []int{13, 3, 2} {
		if read, err := csv.NewReader(strings.NewReader(parts[i])).ReadAll(); err != nil || len(read) != rows {
			t.Errorf("part %d has %d rows, want %d: %v", i+1, len(read), rows, err)
		}
	}
	b.Reset()
	if err := encode.CSV(&b, result.Result{Tables: answer().Tables}, words); err != nil {
		t.Fatal(err)
	}
	want := "sun_time_h,line_angle_deg\r\nnoon,1.5\r\n\"later, much\",100.25\r\n\r\nline_angle_deg\r\n-2\r\n"
	if b.String() != want {
		t.Errorf("it is %q, want %q", b.String(), want)
	}
	b.Reset()
	if err := encode.CSV(&b, result.Result{Facts: answer().Facts}, words); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(strings.NewReader(b.String())).ReadAll()
	if err != nil || len(rows) != 13 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	for _, row := range [][]string{
		{"fact", "value", "unit", "text"}, {"angle", "-16.17123456789", "deg", "−16.2°"}, {"no", "false", "", "on standard time"}, {"none", "", "", "no shadow"}, {"name", `Ærø & "Co", <b>`, "", `Ærø & "Co", <b>`},
	} {
		found := false
		for _, got := range rows {
			found = found || strings.Join(got, "|") == strings.Join(row, "|")
		}
		if !found {
			t.Errorf("%v is not among %v", row, rows)
		}
	}
	b.Reset()
	if err := encode.TableFile(&b, answer().Tables[1], words); err != nil {
		t.Fatal(err)
	}
	if b.String() != "\ufeffline_angle_deg\r\n-2\r\n" {
		t.Errorf("a table's file is %q", b.String())
	}
}

// Calendar files: what RFC 5545 wants of every entry, in its order, and what says
// that an entry takes up nobody's time.
func TestICSEntries(t *testing.T) {
	at := time.Date(2027, 4, 13, 9, 10, 0, 0, time.FixedZone("", -3*3600))
	out := string(encode.ICS("Our unit", at, []encode.Event{
		{UID: "one", From: at, To: at.Add(50 * time.Minute), Summary: "A"},
		{UID: "two", From: at, To: at, Summary: "B", Free: true, Description: "a\r\nb\rc"},
	}))
	want := "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//noonbook//unit calendar//EN\r\nCALSCALE:GREGORIAN\r\nMETHOD:PUBLISH\r\nX-WR-CALNAME:Our unit\r\n" +
		"BEGIN:VEVENT\r\nUID:one\r\nDTSTAMP:20270413T121000Z\r\nDTSTART:20270413T121000Z\r\nDTEND:20270413T130000Z\r\nSUMMARY:A\r\nSTATUS:CONFIRMED\r\nEND:VEVENT\r\n" +
		"BEGIN:VEVENT\r\nUID:two\r\nDTSTAMP:20270413T121000Z\r\nDTSTART:20270413T121000Z\r\nSUMMARY:B\r\nDESCRIPTION:a\\nb\\nc\r\nSTATUS:CONFIRMED\r\nTRANSP:TRANSPARENT\r\nEND:VEVENT\r\n" +
		"END:VCALENDAR\r\n"
	if out != want {
		t.Errorf("it is\n%s", out)
	}
	if bad := string(encode.ICS("x", at, []encode.Event{{UID: "u", From: at, To: at, Summary: "a\xffb"}})); !strings.Contains(bad, "SUMMARY:a\uFFFDb\r\n") {
		t.Errorf("what is not UTF-8 is %q", bad)
	}
}

// Of a day with two sunsets other programs get both, as a list in JSON and one behind
// the other in CSV; the text is as on the page. A moment keeps its day, to the second.
func TestTwoOfADay(t *testing.T) {
	zone := time.FixedZone("", 2*3600)
	both := say.Clock(time.Date(2027, 7, 1, 0, 2, 26, 0, zone)).As("sky.list_end", say.Text("0:02"), say.Text("23:59"))
	both.Also = []say.Value{say.Clock(time.Date(2027, 7, 1, 23, 59, 59, 7e8, zone))}
	a := encode.Answer{Placeholder: "sun-year", Result: result.Result{
		Facts:  []result.Fact{{Name: "set", Value: both}},
		Tables: []result.Table{{Name: "year", Columns: []result.Column{{Name: "set"}}, Rows: []result.Row{{Cells: []say.Value{both}}}}},
	}}
	const first, second = "2027-07-01T00:02:26+02:00", "2027-07-01T23:59:59+02:00"
	var b bytes.Buffer
	if err := encode.JSON(&b, a, english(t)); err != nil {
		t.Fatal(err)
	}
	var o struct {
		Facts map[string]struct {
			Value []string
			Text  string
		}
		Tables []struct{ Rows [][][]string }
	}
	if err := json.Unmarshal(b.Bytes(), &o); err != nil {
		t.Fatal(err)
	}
	set := o.Facts["set"]
	if strings.Join(set.Value, " ") != first+" "+second || set.Text != "0:02 and 23:59" {
		t.Errorf("JSON, fact: %v, %q", set.Value, set.Text)
	}
	if got := strings.Join(o.Tables[0].Rows[0][0], " "); got != first+" "+second {
		t.Errorf("JSON, cell: %s", got)
	}
	b.Reset()
	if err := encode.TableFile(&b, a.Tables[0], english(t)); err != nil {
		t.Fatal(err)
	}
	if want := "\ufeffset\r\n" + first + " " + second + "\r\n"; b.String() != want {
		t.Errorf("CSV: %q, want %q", b.String(), want)
	}
}

// What can be chosen on a drawing is there with what its cards say; without it an answer is
// as it always was, and the text for a terminal has the tables alone.
func TestJSONHasWalks(t *testing.T) {
	a, words := answer(), english(t)
	a.Walks = []result.Walk{{Drawing: "map", Stops: []result.Stop{{Key: "tycho", Name: say.Text("Tycho"), Reach: 3, Says: []say.Phrase{say.Line("sky.fist")}}}}}
	var with, without, terminal bytes.Buffer
	for _, err := range []error{encode.JSON(&with, a, words), encode.JSON(&without, answer(), words), encode.Text(&terminal, a, words)} {
		if err != nil {
			t.Fatal(err)
		}
	}
	var o struct {
		Walks []struct {
			Drawing string
			Stops   []struct {
				Key, Name string
				Says      []string
			}
		}
	}
	if err := json.Unmarshal(with.Bytes(), &o); err != nil {
		t.Fatal(err)
	}
	if len(o.Walks) != 1 || o.Walks[0].Drawing != "map" || len(o.Walks[0].Stops) != 1 || o.Walks[0].Stops[0].Key != "tycho" ||
		o.Walks[0].Stops[0].Name != "Tycho" || !strings.HasPrefix(o.Walks[0].Stops[0].Says[0], "To measure heights") {
		t.Errorf("%+v", o.Walks)
	}
	if strings.Contains(without.String(), "walks") || strings.Contains(terminal.String(), "Tycho") {
		t.Error("walks where none are expected")
	}
}
