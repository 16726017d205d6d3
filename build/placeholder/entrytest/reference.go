package entrytest

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"
	"time"
)

// Reference reads a table of testdata/reference, whose README names the
// libraries, as rows by column name.
func Reference(t *testing.T, name, library string) []map[string]string {
	t.Helper()
	f, err := os.Open("../../../testdata/reference/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	lines, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []map[string]string
	for _, line := range lines[1:] {
		row := map[string]string{}
		for i, name := range lines[0] {
			row[name] = line[i]
		}
		if library == "" || row["library"] == library {
			rows = append(rows, row)
		}
	}
	if len(rows) == 0 {
		t.Fatalf("%s has no rows of %s", name, library)
	}
	return rows
}

// Number reads a number of a reference table.
func Number(t *testing.T, s string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// Instant reads a moment of a reference table.
func Instant(t *testing.T, s string) time.Time {
	t.Helper()
	at, err := time.Parse(time.RFC3339, s)
	if err != nil {
		t.Fatal(err)
	}
	return at
}

// FromTT reads an instant in TT of 2026 to 2035, where TT − UTC is 69.184 s.
func FromTT(t *testing.T, s string) time.Time {
	return Instant(t, s+"Z").Add(-69184 * time.Millisecond)
}
