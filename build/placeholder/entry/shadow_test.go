package entry

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"
	"time"

	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// The bearing of a shadow at six places, hourly through 2027, against ERFA, the
// Swiss Ephemeris, pyephem and astronomy-engine (testdata/reference). Where the
// Sun stands near the zenith a bearing hangs on nothing; there the difference
// counts by how far the shadow's tip moves, cos altitude times the angle.
func TestShadowBearingsAgainstLibraries(t *testing.T) {
	file, err := os.Open("../../../testdata/reference/shadow-bearings.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	number := func(s string) float64 {
		x, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
	const limit = 0.01 // degrees
	worst, compared := 0.0, 0
	for _, row := range rows[1:] {
		at, err := time.Parse(time.RFC3339, row[3])
		if err != nil {
			t.Fatal(err)
		}
		p := place.Place{Latitude: quantity.Degrees(number(row[1])), Longitude: quantity.Degrees(number(row[2])), Zone: time.UTC}
		s, ok := ShadowAt(p, at, quantity.Millimetres(100))
		if !ok {
			t.Fatalf("%s at %s: no shadow", row[0], row[3])
		}
		for _, bearing := range row[5:] {
			off := math.Abs((s.Bearing - quantity.Degrees(number(bearing))).Signed().Degrees()) * s.Altitude.Cos()
			worst = max(worst, off)
			compared++
			if off > limit {
				t.Errorf("%s at %s: %.4f°, a library says %s°", row[0], row[3], s.Bearing.Degrees(), bearing)
			}
		}
	}
	if compared < 3000 {
		t.Errorf("only %d bearings were compared", compared)
	}
	t.Logf("worst difference %.5f° of %d", worst, compared)
}
