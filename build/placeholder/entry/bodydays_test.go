package entry

import (
	"reflect"
	"testing"
	"time"

	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// A day that is remembered is the almanac's, for each body, place, date and altitude, and
// whoever changes it changes nobody else's.
func TestDaysAreTheAlmanacs(t *testing.T) {
	date := place.Date{Year: 2027, Month: time.April, Day: 20}
	here := place.Place{Latitude: quantity.Degrees(46), Longitude: quantity.Degrees(-64), Zone: time.UTC}
	higher, west := here, here
	higher.Elevation, west.Longitude = quantity.Metres(900), quantity.Degrees(-65)
	for range 2 { // the second time from memory
		for _, p := range []place.Place{here, higher, west} {
			for _, d := range []place.Date{date, date.Add(1)} {
				for name, c := range map[string]struct{ got, want almanac.Day }{
					"Sun":           {SunDay(p, d), almanac.SunDay(p, d)},
					"Moon":          {MoonDay(p, d), almanac.MoonDay(p, d)},
					"Sun past 0°":   {DayPast(almanac.Sun, p, d, 0), almanac.Sun.Past(p, d, 0)},
					"Sun past 10°":  {DayPast(almanac.Sun, p, d, quantity.Degrees(10)), almanac.Sun.Past(p, d, quantity.Degrees(10))},
					"Moon past 10°": {DayPast(almanac.Moon, p, d, quantity.Degrees(10)), almanac.Moon.Past(p, d, quantity.Degrees(10))},
				} {
					if !reflect.DeepEqual(c.got, c.want) {
						t.Errorf("%s on %s: %v, want %v", name, d, c.got, c.want)
					}
					clear(c.got.Rises)
					clear(c.got.Transits)
					clear(c.got.Sets)
				}
			}
		}
	}
}
