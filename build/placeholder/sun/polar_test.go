package sun_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"noonbook/build/placeholder/entrytest"
	"noonbook/build/say"
)

// risen reports whether the Sun is above the rising altitude of −50′, to some hundredths
// of a degree: Meeus, Astronomical Algorithms, 2nd ed. 1998, ch. 25, the low accuracy,
// and ch. 13.
func risen(at time.Time, latitude, longitude float64) bool {
	days := at.Sub(time.Date(2000, 1, 1, 12, 0, 0, 0, time.UTC)).Hours() / 24
	m := (357.52911 + 0.98560028*days) * degree
	l := (280.46646 + 0.98564736*days + 1.9146*math.Sin(m) + 0.02*math.Sin(2*m)) * degree
	const eps = 23.437 * degree
	declination := math.Asin(math.Sin(eps) * math.Sin(l))
	ra := math.Atan2(math.Cos(eps)*math.Sin(l), math.Cos(l))
	hour := (280.46062+360.98564737*days+longitude)*degree - ra
	return math.Asin(math.Sin(latitude*degree)*math.Sin(declination)+math.Cos(latitude*degree)*math.Cos(declination)*math.Cos(hour)) > -50.0/60*degree
}

// After the midnight Sun there is a day on which the Sun sets twice: shortly past
// midnight, and, each day being shorter than the one before, again before the next. Its
// sunset is the evening's, the last.
func TestSunsetOfADayWithTwo(t *testing.T) {
	oslo, err := time.LoadLocation("Europe/Oslo")
	if err != nil {
		t.Fatal(err)
	}
	twice := 0
	for longitude := 14.0; longitude <= 24; longitude++ {
		for day := 22; day <= 31; day++ {
			midnight := time.Date(2027, 7, day, 0, 0, 0, 0, oslo)
			var sets []float64 // minutes
			for m := 1.0; m <= 24*60; m++ {
				at := midnight.Add(time.Duration(m) * time.Minute)
				if risen(at.Add(-time.Minute), 69.6, longitude) && !risen(at, 69.6, longitude) {
					sets = append(sets, m-0.5)
				}
			}
			// A hundredth of a degree is worth some minutes there.
			if len(sets) != 2 || sets[0] < 4 || sets[1] > 24*60-4 {
				continue
			}
			twice++
			date := fmt.Sprintf("2027-07-%d", day)
			set := entrytest.Fact(t, reckon(t, "arctic", "sun-day", date, fmt.Sprintf("school.longitude=%g", longitude)), "set")
			if len(set.Phrase.With) != 2 {
				t.Errorf("%g° on %s: %d of two sunsets are told", longitude, date, len(set.Phrase.With))
				continue
			}
			for i, told := range set.Phrase.With {
				entrytest.Near(t, fmt.Sprintf("minutes to sunset %d at %g° on %s", i+1, longitude, date), told.Time.Sub(midnight).Minutes(), sets[i], 4)
			}
		}
	}
	if twice < 2 {
		t.Errorf("%d days with two sunsets", twice)
	}
}

// Of several days that are as long or as short the first is named: in a polar night that
// lasts over New Year the first of January, in one about June the day on which it
// begins; the first day of 24 hours in the midnight Sun.
func TestFirstOfTheDaysThatAreAsShort(t *testing.T) {
	for _, latitude := range []float64{69.6, 72, -69.6, -75} {
		r := reckon(t, "arctic", "sun-year", "2027-04-20", fmt.Sprintf("school.latitude=%g", latitude))
		var night, day time.Time // the first without sunrise, the first without sunset
		for d := time.Date(2027, 1, 1, 0, 0, 0, 0, time.UTC); d.Year() == 2027; d = d.AddDate(0, 0, 1) {
			noon := d.Add(time.Duration((12 - 18.95/15) * float64(time.Hour)))
			ever, always := false, true
			for h := -12.0; h < 12; h += 0.1 {
				up := risen(noon.Add(time.Duration(h*float64(time.Hour))), latitude, 18.95)
				ever, always = ever || up, always && up
			}
			if !ever && night.IsZero() {
				night = d
			}
			if always && day.IsZero() {
				day = d
			}
		}
		for name, want := range map[string]time.Time{"shortest_on": night, "longest_on": day} {
			got := entrytest.Fact(t, r, name)
			near := 1.0 // days: the clock's midnight is not the Sun's
			if want.YearDay() == 1 {
				near = 0
			}
			if got.Kind == say.Nothing {
				t.Fatalf("%g°: no %s", latitude, name)
			}
			entrytest.Near(t, fmt.Sprintf("%g°: %s, day of the year", latitude, name), float64(got.Time.YearDay()), float64(want.YearDay()), near)
		}
	}
}
