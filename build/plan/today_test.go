package plan

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"noonbook/build/school"
	"noonbook/compute/almanac"
	"noonbook/compute/compass"
	"noonbook/compute/place"
)

// The numbers of the day on a day sheet are what their labels say: those of
// compute, which reference tables hold, on the day of the lesson.
func TestNumbersOfTheDayAreWhatTheySay(t *testing.T) {
	unit, words := read(t, smallUnit(), "unit")
	_, staff := pressings(t, unit, words, unit.Settings)
	sheet := staff["day-alpha.html"]
	shown := func(label string) string {
		m := regexp.MustCompile(`<dt>` + regexp.QuoteMeta(label) + `</dt>\s*<dd>.*?(?:value|datetime)="([^"]*)"`).FindStringSubmatch(sheet)
		if m == nil {
			t.Fatalf("the day sheet does not tell %q", label)
		}
		return m[1]
	}
	p, day := school.Place(unit.Settings), place.Date{Year: 2027, Month: time.April, Day: 12}
	sun, moon := almanac.SunDay(p, day), almanac.MoonDay(p, day)
	for label, want := range map[string]time.Time{
		words.Say("day-sheet.sunrise"): sun.Rises[0], words.Say("day-sheet.noon"): sun.Transits[0], words.Say("day-sheet.sunset"): sun.Sets[0],
		words.Say("day-sheet.moonrise"): moon.Rises[0], words.Say("day-sheet.moonset"): moon.Sets[0],
	} {
		got := shown(label)
		if clock := want.In(p.Zone).Format("T15:04:"); !strings.Contains(got, clock) {
			t.Errorf("%s is %s, want %s", label, got, clock)
		}
	}
	field, err := compass.At(p.Latitude, p.Longitude, p.Elevation, p.Clock(day, 12, 0))
	if err != nil {
		t.Fatal(err)
	}
	for label, want := range map[string]float64{
		words.Say("day-sheet.true_north"):    (-field.Declination).Bearing().Degrees(),
		words.Say("day-sheet.noon_altitude"): 90 - 46.09 + almanac.SunAt(sun.Transits[0]).Declination.Degrees(),
	} {
		got, err := strconv.ParseFloat(shown(label), 64)
		if err != nil || math.Abs(got-want) > 0.03 { // the air lifts the noon Sun by 0.01°
			t.Errorf("%s is %v, want %.2f", label, got, want)
		}
	}
}
