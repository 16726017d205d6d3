package encode_test

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"strings"
	"testing"
	"time"
	"unicode"

	"noonbook/build/encode"
	"noonbook/build/result"
	"noonbook/build/say"
)

// The letters that begin a formula, and the apostrophe before them: OWASP, CSV
// Injection. A number is no formula whatever its sign (RFC 4180 knows no kinds;
// spreadsheets read what looks like a number as one).
func TestNoCellRuns(t *testing.T) {
	words := english(t)
	for text, want := range map[string]string{
		"=1+1":                         "'=1+1",
		"=HYPERLINK(\"x\",\"y\")":      "'=HYPERLINK(\"x\",\"y\")",
		"+1+1":                         "'+1+1",
		"-1+1":                         "'-1+1",
		"-cmd|' /C calc'!A0":           "'-cmd|' /C calc'!A0",
		"@SUM(A1)":                     "'@SUM(A1)",
		"\t=1":                         "'\t'=1",
		"\r=1":                         "'\ufffd'=1",
		"  =1+1":                       "  '=1+1",
		"＝1+1":                         "'＝1+1",
		"a;=1+1":                       "a;'=1+1",
		"a\n=1+1":                      "a\n'=1+1",
		"a\t@x":                        "a\t'@x",
		"-16.24":                       "-16.24",
		"−16.24":                       "−16.24",
		"+3":                           "+3",
		"-1,5":                         "-1,5",
		"-1e-05":                       "-1e-05",
		"−16.2°":                       "−16.2°",
		"a = b, c - d":                 "a = b, c - d",
		"later, much":                  "later, much",
		"a\x1b[31mb\u202ec\u009bd\x00": "a\ufffd[31mb\ufffdc\ufffdd\ufffd",
		"":                             "",
	} {
		table := result.Table{Name: "t", Columns: []result.Column{{Name: "a"}, {Name: "b"}}, Rows: []result.Row{{Cells: []say.Value{say.Text(text), say.Number(-16.24, "deg", 1)}}}}
		var file, terminal, facts bytes.Buffer
		if err := encode.TableFile(&file, table, words); err != nil {
			t.Fatal(err)
		}
		if err := encode.CSV(&terminal, result.Result{Tables: []result.Table{table}}, words); err != nil {
			t.Fatal(err)
		}
		if err := encode.CSV(&facts, result.Result{Facts: []result.Fact{{Name: "f", Value: say.Text(text)}}}, words); err != nil {
			t.Fatal(err)
		}
		for name, out := range map[string]string{"a file": file.String(), "a terminal": terminal.String()} {
			rows, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(out, "\ufeff"))).ReadAll()
			if err != nil || len(rows) != 2 || rows[1][0] != strings.ReplaceAll(want, "\r\n", "\n") || rows[1][1] != "-16.24" {
				t.Errorf("%q in %s: %q, %v; want %q", text, name, rows, err, want)
			}
		}
		rows, err := csv.NewReader(&facts).ReadAll()
		if err != nil || len(rows) != 2 || rows[1][1] != want || rows[1][3] != want {
			t.Errorf("%q as a fact: %q, %v; want %q twice", text, rows, err, want)
		}
	}
}

// Nothing that is written for a terminal holds what a terminal obeys, and JSON
// still carries it.
func TestTerminalsAreNotTold(t *testing.T) {
	const evil = "a\x1b[31m\u009b0m\x07\u202eb\u2066c\x7f"
	a := encode.Answer{Placeholder: "dial-table", Sources: []string{evil}, Result: result.Result{
		Facts:  []result.Fact{{Name: "angle", Value: say.Text(evil)}},
		Tables: []result.Table{{Name: "lines", Title: say.Line("dial-table.title", say.Text(evil)), Columns: []result.Column{{Name: "sun_time"}}, Rows: []result.Row{{Cells: []say.Value{say.Text(evil)}}}}},
	}}
	words := english(t)
	var text, table, object bytes.Buffer
	for _, err := range []error{encode.Text(&text, a, words), encode.CSV(&table, a.Result, words), encode.JSON(&object, a, words)} {
		if err != nil {
			t.Fatal(err)
		}
	}
	for name, out := range map[string]string{"text": text.String(), "CSV": table.String(), "JSON": object.String()} {
		for _, r := range out {
			if unicode.IsControl(r) && r != '\n' && r != '\r' || r >= 0x202A && r <= 0x202E || r >= 0x2066 && r <= 0x2069 {
				t.Errorf("%s holds %U", name, r)
			}
		}
	}
	if !strings.Contains(text.String(), "a\ufffd[31m\ufffd0m\ufffd\ufffdb\ufffdc\ufffd") {
		t.Errorf("the text is %q", text.String())
	}
	var o struct {
		Facts map[string]struct{ Value string }
	}
	if err := json.Unmarshal(object.Bytes(), &o); err != nil || o.Facts["angle"].Value != evil {
		t.Errorf("JSON carries %q, %v", o.Facts["angle"].Value, err)
	}
	if ics := string(encode.ICS("x", time.Unix(0, 0), []encode.Event{{UID: "u", Summary: evil}})); strings.ContainsAny(ics, "\x1b\u009b\x07\x7f") {
		t.Errorf("a calendar is %q", ics)
	}
}
