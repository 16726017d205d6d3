package dial_test

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"
	"time"

	"noonbook/compute/place"
)

// A referenceRow is a row of a table in testdata/reference whose columns begin with the
// place, its latitude and longitude, and the moment.
type referenceRow []string

func reference(t *testing.T, name string) []referenceRow {
	t.Helper()
	file, err := os.Open("../../testdata/reference/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	lines, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []referenceRow
	for _, line := range lines[1:] {
		rows = append(rows, line)
	}
	return rows
}

func (r referenceRow) number(t *testing.T, column int) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(r[column], 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// at is the moment and the place of the row.
func (r referenceRow) at(t *testing.T) (time.Time, place.Place) {
	t.Helper()
	at, err := time.Parse(time.RFC3339, r[3])
	if err != nil {
		t.Fatal(err)
	}
	return at, place.Place{Latitude: deg(r.number(t, 1)), Longitude: deg(r.number(t, 2)), Zone: time.UTC}
}
