package rocket_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"noonbook/compute/rocket"
)

// table reads a reference table; each row is its numbers by column.
func table(t *testing.T, name string) []map[string]float64 {
	t.Helper()
	file, err := os.Open("../../testdata/reference/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	records, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []map[string]float64
	for _, record := range records[1:] {
		row := map[string]float64{}
		for i, text := range record {
			if row[records[0][i]], err = strconv.ParseFloat(text, 64); err != nil {
				t.Fatal(err)
			}
		}
		rows = append(rows, row)
	}
	return rows
}

func rocketOf(row map[string]float64) rocket.Rocket {
	return rocket.Rocket{Mass: grams(row["mass_g"]), Diameter: mm(row["diameter_mm"]), Drag: row["drag"]}
}

// scipy's DOP853 at a tolerance of 1e-13, made by testdata/reference/rocket.py:
// 1e-6 of each value, as doc.go promises, or 1e-7 of a metre, second or metre a
// second for those that are nearly 0.
func TestFlightsAgainstScipy(t *testing.T) {
	worst, where, rows := 0.0, "", table(t, "rocket-flights.csv")
	for _, row := range rows {
		f := fly(t, rocketOf(row),
			rocket.Launch{Speed: speed(row["speed_m_s"]), Elevation: deg(row["elevation_deg"]), Height: m(row["height_m"])},
			rocket.Air{Density: dense(row["density_kg_m3"]), Along: speed(row["along_m_s"]), Across: speed(row["across_m_s"])})
		for column, got := range map[string]float64{
			"apogee_m": f.Apogee.Up.Metres(), "apogee_along_m": f.Apogee.Along.Metres(), "apogee_s": f.Apogee.Time.Seconds(),
			"landing_along_m": f.Landing.Along.Metres(), "landing_across_m": f.Landing.Across.Metres(), "landing_s": f.Landing.Time.Seconds(),
			"impact_m_s": float64(f.Impact),
		} {
			want := row[column]
			near(t, column, got, want, math.Max(1e-6*math.Abs(want), 1e-7))
			if off := math.Abs(got-want) / math.Max(math.Abs(want), 0.1); off > worst {
				worst, where = off, column
			}
		}
	}
	t.Logf("worst of %d flights: %.2g of %s", len(rows), worst, where)
	if len(rows) < 16 {
		t.Errorf("only %d flights", len(rows))
	}
}

// scipy's minimize_scalar and brentq on the same flights, as the functions promise:
// speeds to 1e-9 of themselves (brentq stops at 1e-11), the farthest reach to 1e-7
// and its angle to 0.01°.
func TestSearchesAgainstScipy(t *testing.T) {
	for _, row := range table(t, "rocket-searches.csv") {
		r := rocketOf(row)
		air := rocket.Air{Density: dense(row["density_kg_m3"]), Along: speed(row["along_m_s"])}
		l := rocket.Launch{Speed: speed(row["speed_m_s"]), Height: m(row["height_m"])}
		far, angle, err := rocket.Farthest(r, l, air, 0, deg(90))
		if err != nil {
			t.Fatal(err)
		}
		near(t, "farthest", far.Metres(), row["farthest_m"], 1e-7*row["farthest_m"])
		near(t, "its angle", angle.Degrees(), row["farthest_deg"], 0.01)
		l.Elevation = deg(row["climb_deg"])
		v, err := rocket.SpeedForHeight(r, l, air, m(row["climbs_m"]))
		if err != nil {
			t.Fatal(err)
		}
		near(t, "speed for a height", float64(v), row["climb_speed_m_s"], 1e-9*float64(v))
		l.Elevation = deg(90)
		v, err = rocket.SpeedForTime(r, l, air, sec(row["lasts_s"]))
		if err != nil {
			t.Fatal(err)
		}
		near(t, "speed for a time", float64(v), row["lasts_speed_m_s"], 1e-9*float64(v))
	}
}
