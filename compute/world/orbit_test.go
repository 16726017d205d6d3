package world_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"
	"time"

	"noonbook/compute/almanac"
	"noonbook/compute/quantity"
)

// Ceres on 174 dates from 1950 to 2100 by the Swiss Ephemeris's numerical
// integration (testdata/reference/ceres.csv), between the dates of our table.
func TestCeresAgainstSwissEphemeris(t *testing.T) {
	file, err := os.Open("../../testdata/reference/ceres.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil || len(rows) < 100 {
		t.Fatal(err, len(rows))
	}
	ceres := find(t, "ceres")
	var worst, worstSun, worstAngle float64
	for _, row := range rows[1:] {
		tt, err := time.Parse("2006-01-02T15:04:05", row[0])
		if err != nil {
			t.Fatal(err)
		}
		at := tt.Add(-almanac.DeltaT(tt))
		number := func(i int) float64 {
			x, err := strconv.ParseFloat(row[i], 64)
			if err != nil {
				t.Fatal(err)
			}
			return x
		}
		s, ok := ceres.At(at)
		if !ok {
			t.Fatalf("no place at %v", at)
		}
		au := func(l quantity.Length) float64 { return float64(l / quantity.AstronomicalUnit) }
		worstSun = max(worstSun, math.Abs(au(s.SunDistance)-number(3)))
		worst = max(worst, math.Abs(au(s.Distance)-number(4)))
		if h, ok := ceres.Heliocentric(at); ok {
			days := tt.Sub(time.Date(2000, 1, 1, 12, 0, 0, 0, time.UTC)).Hours() / 24
			lon := h.Longitude - quantity.ArcSeconds(50.29*days/365.25) - quantity.Degrees(number(1))
			worstAngle = max(worstAngle, math.Abs(lon.Signed().Degrees()))
		}
	}
	t.Logf("worst: %.4f au from the Sun, %.4f au from the Earth, %.3f°", worstSun, worst, worstAngle)
	if worst > 0.01 || worstSun > 0.01 || worstAngle > 0.3 { // as At says
		t.Errorf("worst: %v au, %v au, %v°", worstSun, worst, worstAngle)
	}
}

// 67P passed the Sun at 1.211 au on 2 November 2021 and the Earth at 0.418 au on 12
// November (JPL and ESA, from memory), and comes back to the Sun on 9 April 2028.
// 0.01 au is what three digits of the elements leave on the day of the passage.
func TestCometPassages(t *testing.T) {
	comet := find(t, "comet")
	au := func(l quantity.Length) float64 { return float64(l / quantity.AstronomicalUnit) }
	s, ok := comet.At(time.Date(2021, 11, 2, 0, 0, 0, 0, time.UTC))
	if !ok {
		t.Fatal("no place")
	}
	near(t, "perihelion", au(s.SunDistance), 1.211, 0.001)
	s, _ = comet.At(time.Date(2021, 11, 12, 0, 0, 0, 0, time.UTC))
	near(t, "nearest to the Earth", au(s.Distance), 0.418, 0.01)
	nearest, day := math.Inf(1), time.Time{}
	for d := time.Date(2028, 1, 1, 0, 0, 0, 0, time.UTC); d.Year() == 2028; d = d.AddDate(0, 0, 1) {
		if s, ok := comet.At(d); ok && au(s.SunDistance) < nearest {
			nearest, day = au(s.SunDistance), d
		}
	}
	if off := day.Sub(time.Date(2028, 4, 9, 0, 0, 0, 0, time.UTC)).Hours() / 24; math.Abs(off) > 10 {
		t.Errorf("the next perihelion is on %v", day) // Jupiter moves it by some days, see At
	}
	if _, ok := comet.At(time.Date(2035, 1, 1, 0, 0, 0, 0, time.UTC)); ok {
		t.Error("the comet is known in 2035")
	}
}
