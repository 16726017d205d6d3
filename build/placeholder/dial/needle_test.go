package dial_test

import (
	"math"
	"testing"
	"time"

	"noonbook/build/placeholder/entrytest"
	"noonbook/build/result"
)

// The worst of the year for a plate laid along the needle, while the Sun is 10° high
// or more, searched more finely than the program does. With the azimuth A from the
// south and the altitude a of a Sun of declination δ, tan H = sin A / (cos A sin φ +
// tan a cos φ) (Meeus, Astronomical Algorithms, 2nd ed. 1998, ch. 13, from memory); on a
// plate turned by τ it reads what A − τ gives. In the south north and south are
// exchanged, and so are the sides of a turn. In the Arctic lower Suns make it worse;
// elsewhere the noon of the shortest day is the worst.
func TestNeedleAtItsWorstOfTheYear(t *testing.T) {
	for _, w := range witnesses {
		if w.school == "line north" { // where shadows fall on both sides of the plate
			continue
		}
		phi, turn := math.Abs(w.latitude)*degree, math.Copysign(1, w.latitude)*w.variation*degree
		worst := map[float64]float64{10: 0, 0: 0} // by the least altitude
		for delta := -23.4 * degree; delta <= 23.4*degree; delta += 0.1 * degree {
			for h := -180.0; h < 180; h++ {
				up := math.Sin(phi)*math.Sin(delta) + math.Cos(phi)*math.Cos(delta)*math.Cos(h*degree)
				south := math.Sin(phi)*math.Cos(delta)*math.Cos(h*degree) - math.Cos(phi)*math.Sin(delta)
				altitude, azimuth := math.Asin(up), math.Atan2(math.Cos(delta)*math.Sin(h*degree), south)-turn
				shown := math.Atan2(math.Sin(azimuth), math.Cos(azimuth)*math.Sin(phi)+math.Tan(altitude)*math.Cos(phi)) / degree
				off := math.Remainder(shown-h, 360) * 240
				for least, most := range worst {
					if altitude >= least*degree && math.Abs(off) > math.Abs(most) {
						worst[least] = off
					}
				}
			}
		}
		got := entrytest.Fact(t, reckon(t, w.school, "dial-table", "2027-07-02"), "needle_most").Number
		// The program's steps of a degree of declination are worth 0.6 % in the Arctic,
		// magvar's rounded variation as much.
		entrytest.Near(t, w.school+": at its worst", got, worst[10], 0.02*math.Abs(worst[10]))
		if w.school == "arctic" && math.Abs(worst[0]) < 1.03*math.Abs(worst[10]) {
			t.Errorf("lower Suns make it %v s, no more than %v s: the bound is not seen", worst[0], worst[10])
		}
	}
}

// A compass shows what is left of a true bearing when the variation is taken off:
// shadows of erfa (shadow-bearings.csv), variation of magvar. Words stand in for a length
// beyond 50 heights, which is a Sun lower than atan(1/50) = 1.146°, and for none shorter.
func TestShadowsByCompass(t *testing.T) {
	rows := entrytest.Reference(t, "shadow-bearings.csv", "")
	beyond := 0
	for _, w := range witnesses {
		compared, long := 0, 0
		results := map[string]result.Result{}
		for _, row := range rows {
			if row["place"] != w.place {
				continue
			}
			at := entrytest.Instant(t, row["utc"])
			date := at.Add(time.Duration(w.meridian/15) * time.Hour).Format(time.DateOnly)
			r, ok := results[date]
			if !ok {
				r = reckon(t, w.school, "dial-day", date, "height_mm=250", "school.latitude="+row["latitude_deg"], "school.longitude="+row["longitude_deg"])
				results[date] = r
				altitudes := entrytest.Cells(t, r, "hours", "sun_altitude")
				for i, length := range entrytest.Cells(t, r, "hours", "shadow_length") {
					if got := entrytest.Written(t, length); (got == "very long") != (altitudes[i].Number < 1.146) {
						t.Errorf("%s on %s: the shadow of a Sun %v° high is printed %s", w.school, date, altitudes[i].Number, got)
					}
					if altitudes[i].Number < 11 {
						long++
					}
					if altitudes[i].Number < 1.146 {
						beyond++
					}
				}
			}
			for i, clock := range entrytest.Cells(t, r, "hours", "clock") {
				if !clock.Time.Equal(at) {
					continue
				}
				compared++
				want := entrytest.Number(t, row["erfa"])
				near := 0.1 / math.Max(0.05, math.Cos(entrytest.Number(t, row["altitude_deg"])*degree))
				entrytest.Near(t, w.school+" "+row["utc"]+": true bearing", math.Remainder(entrytest.Cells(t, r, "hours", "shadow_bearing")[i].Number-want, 360), 0, near)
				entrytest.Near(t, w.school+" "+row["utc"]+": by compass", math.Remainder(entrytest.Cells(t, r, "hours", "compass_bearing")[i].Number-(want-w.variation), 360), 0, near+0.15)
			}
		}
		if compared < 100 || long < 10 {
			t.Errorf("%s: %d bearings were compared, %d Suns were low", w.school, compared, long)
		}
	}
	if beyond < 3 {
		t.Errorf("%d shadows are longer than 50 heights", beyond)
	}
}

// The clock time of an hour line: mean time by the longitude, and what the Sun is ahead
// of it at that very hour of the day, not at noon. The equation of time is erfa's
// (equation-of-time.csv), between rows five days apart; in late December it changes by
// 30 s a day, so that 15 s lie between six o'clock and six o'clock.
func TestClockOfAnHourLine(t *testing.T) {
	equations := entrytest.Reference(t, "equation-of-time.csv", "erfa")
	for _, w := range witnesses {
		for _, date := range []string{"2027-12-22", "2027-12-27", "2027-09-18", "2027-03-27"} {
			r := reckon(t, w.school, "dial-table", date)
			lines := r.Tables[0].Name // of a level dial, or near the equator of a polar one
			for i, clock := range entrytest.Cells(t, r, lines, "clock_time") {
				// the Sun's hour angle is that of mean time and the equation
				at := clock.Time.UTC()
				mean := at.Sub(at.Truncate(24*time.Hour)).Hours()*15 - 180 + w.longitude
				sun := mean + equationOn(t, equations, at)/240
				off := math.Remainder(sun-entrytest.Cells(t, r, lines, "hour_angle")[i].Number, 360) * 240
				entrytest.Near(t, w.school+" on "+date+" at "+clock.Time.Format("15:04:05"), off, 0, 2.5)
			}
		}
	}
}
