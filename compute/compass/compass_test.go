package compass_test

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"strconv"
	"testing"
	"time"

	"noonbook/compute/compass"
	"noonbook/compute/quantity"
)

// moment returns the instant of a decimal year, as the model counts years.
func moment(year float64) time.Time {
	whole := int(math.Floor(year))
	begin := time.Date(whole, time.January, 1, 0, 0, 0, 0, time.UTC)
	length := time.Date(whole+1, time.January, 1, 0, 0, 0, 0, time.UTC).Sub(begin)
	return begin.Add(time.Duration((year - float64(whole)) * float64(length)))
}

func at(t *testing.T, lat, lon, metres float64, when time.Time) compass.Field {
	t.Helper()
	f, err := compass.At(quantity.Degrees(lat), quantity.Degrees(lon), quantity.Metres(metres), when)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func Example() {
	field, err := compass.At(quantity.Degrees(46.09), quantity.Degrees(-64.77), quantity.Metres(20),
		time.Date(2027, time.May, 1, 12, 0, 0, 0, time.UTC))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("needle %.1f° from true north, %v\n", field.Declination.Degrees(), field.Trust)
	// Output: needle -16.2° from true north, reliable
}

// The official WMM2025 test values at height 0 km: NOAA/NCEI test values file,
// printed to 0.01°.
func TestOfficialDeclination(t *testing.T) {
	for _, c := range []struct{ year, lat, lon, declination float64 }{
		{2025.0, 80, 0, 1.28},
		{2025.0, 0, 120, -0.16},
		{2025.0, -80, 240, 68.78},
		{2027.5, 80, 0, 2.59},
		{2027.5, 0, 120, -0.24},
		{2027.5, -80, 240, 68.49},
	} {
		got := at(t, c.lat, c.lon, 0, moment(c.year)).Declination.Degrees()
		if math.Abs(got-c.declination) > 0.01 {
			t.Errorf("%g at %g %g: %.3f°, want %.2f°", c.year, c.lat, c.lon, got, c.declination)
		}
	}
}

// testdata/reference/magnetic-values.csv: a hundred official test values of
// WMM2025 and points computed with the npm package magvar. Angles are printed to
// 0.01°, strengths to 0.1 nT; the limits are half of that, as doc.go promises, and
// what binary fractions add.
func TestReferenceValues(t *testing.T) {
	const angleLimit, strengthLimit = 0.005 + 1e-9, 0.05 + 1e-9
	file, err := os.Open("../../testdata/reference/magnetic-values.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var worstAngle, worstStrength float64
	for _, row := range rows[1:] {
		v := make([]float64, len(row))
		for i := 1; i < len(row); i++ {
			if v[i], err = strconv.ParseFloat(row[i], 64); err != nil {
				t.Fatal(err)
			}
		}
		got := at(t, v[3], v[4], 1000*v[2], moment(v[1]))
		angle := max(math.Abs((got.Declination - quantity.Degrees(v[11])).Signed().Degrees()),
			math.Abs(got.Inclination.Degrees()-v[10]))
		strength := max(math.Abs(float64(got.Horizontal)-v[8]), math.Abs(float64(got.Total)-v[9]))
		if angle > angleLimit || strength > strengthLimit || got.OutsideModel {
			t.Errorf("%v: %.4f° and %.3f nT off; outside the model: %v", row, angle, strength, got.OutsideModel)
		}
		worstAngle, worstStrength = max(worstAngle, angle), max(worstStrength, strength)
	}
	if len(rows) < 150 {
		t.Errorf("the table has %d rows only", len(rows))
	}
	t.Logf("%d rows, worst %.4f° (limit %g°), %.3f nT (limit %g nT)",
		len(rows)-1, worstAngle, angleLimit, worstStrength, strengthLimit)
}

// At a pole the field is that of a point beside it on the same meridian: 11 cm
// away it differs by far less than a millionth.
func TestPoles(t *testing.T) {
	for _, pole := range []float64{90, -90} {
		for _, lon := range []float64{-180, -64.77, 0, 45, 180, 540} {
			got := at(t, pole, lon, 0, moment(2027))
			want := at(t, pole*(1-1e-8), lon, 0, moment(2027))
			turn := (got.Declination - want.Declination).Signed().Degrees()
			if math.Abs(turn) > 1e-4 || math.Abs(float64(got.Total-want.Total)) > 1e-2 {
				t.Errorf("%g° at longitude %g°: %+v, beside it %+v", pole, lon, got, want)
			}
		}
	}
}

// Zones by the limits of the WMM2025 report: 2000 and 6000 nT. The north
// magnetic pole lay near 85.8° N 139° E in 2025 (NOAA, from memory).
func TestTrust(t *testing.T) {
	for _, c := range []struct {
		lat, lon float64
		want     compass.Trust
	}{
		{85.8, 139, compass.Blackout},
		{80, 0, compass.Reliable}, // 6523.2 nT: X 6521.6, Y 145.9 by the official test values of the WMM2025
		{84, 0, compass.Caution},
		{46.09, -64.77, compass.Reliable},
	} {
		f := at(t, c.lat, c.lon, 0, moment(2025))
		if f.Trust != c.want {
			t.Errorf("%g %g: H %.0f nT is %v, want %v", c.lat, c.lon, float64(f.Horizontal), f.Trust, c.want)
		}
	}
}

func TestYearsOfTheModel(t *testing.T) {
	for _, c := range []struct {
		when    time.Time
		outside bool
	}{
		{time.Date(2024, time.December, 31, 23, 59, 59, 0, time.UTC), true},
		{time.Date(2025, time.January, 1, 0, 0, 0, 0, time.UTC), false},
		{time.Date(2030, time.January, 1, 0, 0, 0, 0, time.UTC), false},
		{time.Date(2030, time.January, 1, 0, 0, 1, 0, time.UTC), true},
		{time.Date(2024, time.December, 31, 22, 0, 0, 0, time.FixedZone("", -4*3600)), false},
		{time.Time{}, true},
		{time.Unix(1<<60, 0), true},
	} {
		f := at(t, 46.09, -64.77, 20, c.when)
		if f.OutsideModel != c.outside {
			t.Errorf("%v: outside the model %v, want %v", c.when, f.OutsideModel, c.outside)
		}
		if math.IsNaN(f.Declination.Degrees()) {
			t.Errorf("%v: declination is not a number", c.when)
		}
	}
}

func TestBadInput(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		lat, lon, metres float64
		want             string
	}{
		{95, 0, 0, "latitude 95° is outside −90° to 90°"},
		{nan, 0, 0, "latitude NaN° is outside −90° to 90°"},
		{0, inf, 0, "longitude +Inf° is not an angle"},
		{0, 0, -2000, "elevation -2 km is outside −1 km to 850 km"},
		{0, 0, nan, "elevation NaN km is outside −1 km to 850 km"},
	} {
		_, err := compass.At(quantity.Degrees(c.lat), quantity.Degrees(c.lon), quantity.Metres(c.metres), moment(2027))
		if err == nil || err.Error() != c.want {
			t.Errorf("%g %g %g: %v, want %s", c.lat, c.lon, c.metres, err, c.want)
		}
	}
}

func TestNoAllocation(t *testing.T) {
	when := moment(2027)
	if n := testing.AllocsPerRun(100, func() { at(t, 46.09, -64.77, 20, when) }); n != 0 {
		t.Errorf("%g allocations a call", n)
	}
}

func BenchmarkAt(b *testing.B) {
	lat, lon, when := quantity.Degrees(46.09), quantity.Degrees(-64.77), moment(2027)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := compass.At(lat, lon, quantity.Metres(20), when); err != nil {
			b.Fatal(err)
		}
	}
}
