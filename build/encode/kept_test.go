package encode_test

import (
	"bytes"
	"math"
	"testing"
	"time"

	"noonbook/build/encode"
	"noonbook/build/result"
	"noonbook/build/say"
)

// A file for download keeps two digits more than are printed, and stretches of time to
// the second; the command line keeps every digit. Our own rule, no source.
func TestFilesKeepWhatIsPromised(t *testing.T) {
	both := say.Number(1.23456, "deg", 0)
	both.Also = []say.Value{say.Number(-0.00001, "deg", 0)}
	for _, c := range []struct {
		value      say.Value
		kept, full string
	}{
		{say.Number(-16.17123456789, "deg", 1), "-16.171", "-16.17123456789"},
		{say.Number(62.4987, "", 0), "62.5", "62.4987"},
		{say.Number(1234567.891, "km", 0), "1.23456789e+06", "1.234567891e+06"},
		{say.Number(-0.0004, "deg", 1), "0", "-0.0004"},
		{say.Number(math.Inf(1), "m", 1), "", ""},
		{say.Minutes(52703499 * time.Millisecond), "52703", "52703.499"},
		{say.Seconds(1999 * time.Millisecond), "2", "1.999"},
		{both, "1.23 0", "1.23456 -1e-05"},
		{say.Count(7), "7", "7"},
	} {
		table := result.Table{Name: "lines", Columns: []result.Column{{Name: "a"}}, Rows: []result.Row{{Cells: []say.Value{c.value}}}}
		var file, full bytes.Buffer
		if err := encode.TableFile(&file, table, english(t)); err != nil {
			t.Fatal(err)
		}
		if err := encode.CSV(&full, result.Result{Tables: []result.Table{table}}, english(t)); err != nil {
			t.Fatal(err)
		}
		if got, want := file.String(), "\ufeffa\r\n"+c.kept+"\r\n"; got != want {
			t.Errorf("the file of %v is %q, want %q", c.value, got, want)
		}
		if got, want := full.String(), "a\r\n"+c.full+"\r\n"; got != want {
			t.Errorf("the command line has %q of %v, want %q", got, c.value, want)
		}
	}
}
