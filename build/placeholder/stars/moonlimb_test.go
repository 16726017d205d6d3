package stars_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"noonbook/build/placeholder/entrytest"
)

// sunPlace is the Sun's azimuth and altitude in degrees to some hundredths, without air:
// Meeus, Astronomical Algorithms, 2nd ed. 1998, ch. 25, the low accuracy, and ch. 13.
func sunPlace(at time.Time, latitude, longitude float64) (azimuth, altitude float64) {
	days := at.Sub(time.Date(2000, 1, 1, 12, 0, 0, 0, time.UTC)).Hours() / 24
	m := (357.52911 + 0.98560028*days) * degree
	l := (280.46646 + 0.98564736*days + 1.9146*math.Sin(m) + 0.02*math.Sin(2*m)) * degree
	const eps = 23.437 * degree
	delta := math.Asin(math.Sin(eps) * math.Sin(l))
	h := (280.46062+360.98564737*days+longitude)*degree - math.Atan2(math.Cos(eps)*math.Sin(l), math.Cos(l))
	phi := latitude * degree
	up := math.Sin(phi)*math.Sin(delta) + math.Cos(phi)*math.Cos(delta)*math.Cos(h)
	north := math.Cos(phi)*math.Sin(delta) - math.Sin(phi)*math.Cos(delta)*math.Cos(h)
	return math.Atan2(-math.Cos(delta)*math.Sin(h), north) / degree, math.Asin(up) / degree
}

// The Moon of the chart is lit from where the Sun is. Up in the sky is toward the middle
// of the chart, and the way to the Sun leans from up, clockwise as one looks at the Moon
// and as one holds the chart overhead, by q with tan q = sin ΔA cos s / (sin s cos m −
// cos s sin m cos ΔA): the spherical triangle of zenith, Moon and Sun, of altitudes m and s.
func TestMoonOfTheChartIsLitFromTheSun(t *testing.T) {
	aside := 0
	for school, place := range map[string]struct{ latitude, longitude float64 }{"alder reach": {46.09, -64.77}, "south": {-45.87, 170.5}, "line north": {1.4, 103.8}, "arctic": {69.6, 18.95}} {
		for day := time.Date(2027, 1, 3, 0, 0, 0, 0, time.UTC); day.Year() == 2027; day = day.AddDate(0, 0, 13) {
			for _, clock := range []string{"20:30", "5:00"} {
				r := reckon(t, school, "sky-map", day.Format(time.DateOnly), "time="+clock)
				chart := r.Drawings[0]
				dome := entrytest.Roled(chart, "dome")[0]
				lit, nights := entrytest.Roled(chart, "lit"), entrytest.Roled(chart, "night")
				middle, moon := dome.Points[0], nights[0].Points[0]
				if entrytest.Apart(middle, moon) > dome.Radius {
					continue // that of the key alone: the Moon is down
				}
				altitude, bearing := cell(t, r, "bodies", "body.moon", "altitude")*degree, cell(t, r, "bodies", "body.moon", "bearing")
				sunAzimuth, sunAltitude := sunPlace(entrytest.Fact(t, r, "time").Time, place.latitude, place.longitude)
				turn, s := (sunAzimuth-bearing)*degree, sunAltitude*degree
				toward, beside := math.Sin(s)*math.Cos(altitude)-math.Cos(s)*math.Sin(altitude)*math.Cos(turn), math.Sin(turn)*math.Cos(s)
				if math.Hypot(toward, beside) < 0.5 || altitude > 75*degree {
					continue // nearly full or new, or so high that up is hard to tell
				}
				up := math.Atan2(middle.X-moon.X, moon.Y-middle.Y)
				want := (up + math.Atan2(beside, toward)) / degree
				centroid, _ := entrytest.Centroid(lit[0].Points)
				got := math.Atan2(centroid.X-moon.X, moon.Y-centroid.Y) / degree
				entrytest.Near(t, fmt.Sprintf("%s on %s at %s: lit limb", school, day.Format(time.DateOnly), clock), math.Remainder(got-want, 360), 0, 3)
				if math.Abs(math.Sin(2*up)) > 0.5 {
					aside++
				}
			}
		}
	}
	if aside < 20 {
		t.Errorf("%d Moons stood aside of the chart's meridian and its prime vertical", aside)
	}
}
