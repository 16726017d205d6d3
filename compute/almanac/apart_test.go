package almanac_test

import (
	"testing"
	"time"

	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// The Moon from the Sun as a school sees it: astronomy-engine 2.1.19, topocentric
// places of date with aberration; from the Earth's centre the second and the last are
// 73.671° and 20.876°. Both libraries keep 0.01°.
func TestMoonFromTheSunAsAPlaceSeesIt(t *testing.T) {
	for _, c := range []struct {
		at                        string
		latitude, longitude, want float64
	}{
		{"2027-05-03T14:00:00Z", 46.09, -64.77, 36.683},
		{"2027-04-12T17:05:00Z", 46.09, -64.77, 74.314},
		{"2027-04-30T14:00:00Z", -0.2, -78.5, 71.297},
		{"2027-07-02T15:00:00Z", 1.4, 103.8, 21.553},
		{"2027-05-07T23:45:00Z", 46.09, -64.77, 19.995},
	} {
		at, err := time.Parse(time.RFC3339, c.at)
		if err != nil {
			t.Fatal(err)
		}
		p := place.Place{Latitude: quantity.Degrees(c.latitude), Longitude: quantity.Degrees(c.longitude), Zone: time.UTC}
		if got := almanac.Moon.SunApart(p, at).Degrees(); got < c.want-elongationLimit || got > c.want+elongationLimit {
			t.Errorf("%s: %.3f°, want %.3f°", c.at, got, c.want)
		}
	}
}
