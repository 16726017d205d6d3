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
