package sun_test

import (
	"math"
	"slices"
	"testing"
	"time"

	"noonbook/build/placeholder/entrytest"
	"noonbook/build/result"
	"noonbook/build/say"
)

// The Sun's bearing at each hour against the shadow bearings of ERFA, within
// 0.01°, and its height as seen, lifted by at most 0.5°.
func TestSunPathAgainstReference(t *testing.T) {
	paths := map[string]result.Result{}
	compared := 0
	for _, row := range entrytest.Reference(t, "shadow-bearings.csv", "") {
		at := entrytest.Instant(t, row["utc"])
		date := at.Format(time.DateOnly)
		given := []string{"school.time_zone=UTC", "school.latitude=" + row["latitude_deg"], "school.longitude=" + row["longitude_deg"]}
		r, ok := paths[row["place"]+date]
		if !ok {
			r = reckon(t, "alder reach", "sun-path", date, given...)
			paths[row["place"]+date] = r
		}
		i := slices.IndexFunc(entrytest.Cells(t, r, "hours", "clock"), func(v say.Value) bool { return v.Time.Equal(at) })
		if i < 0 {
			t.Errorf("%s lacks %s", row["place"], row["utc"])
			continue
		}
		compared++
		altitude := entrytest.Number(t, row["altitude_deg"])
		off := math.Remainder(entrytest.Cells(t, r, "hours", "bearing")[i].Number-entrytest.Number(t, row["erfa"])-180, 360)
		entrytest.Near(t, row["place"]+" "+row["utc"], off*math.Cos(altitude*math.Pi/180), 0, 0.01)
		if lift := entrytest.Cells(t, r, "hours", "altitude")[i].Number - altitude; lift < -0.005 || lift > 0.5 {
			t.Errorf("%s %s: the Sun is lifted by %v°", row["place"], row["utc"], lift)
		}
	}
	if compared < 100 {
		t.Errorf("only %d hours were compared", compared)
	}
}

// The Sun has one height at its noon, on every page: as seen, and without the air where
// it stays down. By hand with the Sun 23.44° south, 90° − 69.6° − 23.44° = −3.04° on
// 21 December 2027; the air would make −2.4° of it (Meeus, equation 16.4).
func TestOneHeightOfOneSun(t *testing.T) {
	for where := range entrytest.Schools {
		for _, date := range []string{"2027-01-21", "2027-04-21", "2027-11-21", "2027-12-21"} {
			day, path := reckon(t, where, "sun-day", date), reckon(t, where, "sun-path", date)
			height := entrytest.Fact(t, day, "noon_altitude")
			if got, want := entrytest.Shown(t, path, "noon_altitude"), entrytest.Written(t, height); got != want {
				t.Errorf("%s on %s: sun-path has %s, sun-day %s", where, date, got, want)
			}
			year := reckon(t, where, "sun-year", date)
			row := slices.IndexFunc(entrytest.Cells(t, year, "year", "date"), func(v say.Value) bool { return v.Time.Format(time.DateOnly) == date })
			if got, want := entrytest.Texts(t, year, "year", "noon_altitude")[row], entrytest.Written(t, height); got != want {
				t.Errorf("%s on %s: sun-year has %s, sun-day %s", where, date, got, want)
			}
			if down := height.Kind == say.Quantity && height.Number < 0; entrytest.Says(day.Notes, "sun-path.below") != down || entrytest.Says(path.Notes, "sun-path.below") != down {
				t.Errorf("%s on %s: a height of %v is told wrongly", where, date, height.Number)
			}
		}
	}
	entrytest.Near(t, "Tromsø's noon", entrytest.Fact(t, reckon(t, "arctic", "sun-day", "2027-12-21"), "noon_altitude").Number, -3.04, 0.03)
}
