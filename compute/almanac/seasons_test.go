package almanac_test

import (
	"math"
	"testing"
	"time"

	"noonbook/compute/almanac"
)

func TestSeasons(t *testing.T) {
	for _, c := range []struct {
		season almanac.Season
		want   time.Time
		tol    float64 // seconds
		source string
	}{
		// JDE 2437837.39245 is 21:25:08 TD by a fit that the book calls good to a
		// minute.
		{almanac.JuneSolstice, dynamical(t, "1962-06-21T21:25:08Z"), 60, "Meeus ex. 27.a"},
		{almanac.MarchEquinox, dynamical(t, "2000-03-20T07:36:19Z"), seasonsLimit, "Meeus chapter 27, table"},
		// To the minute: 30 s of rounding and the promise.
		{almanac.MarchEquinox, utc(t, "2023-03-20T17:24:00-04:00"), 30 + seasonsLimit, "US Naval Observatory"},
		{almanac.JuneSolstice, utc(t, "2023-06-21T10:58:00-04:00"), 30 + seasonsLimit, "US Naval Observatory"},
		{almanac.SeptemberEquinox, utc(t, "2023-09-23T02:50:00-04:00"), 30 + seasonsLimit, "US Naval Observatory"},
		{almanac.DecemberSolstice, utc(t, "2023-12-21T22:27:00-05:00"), 30 + seasonsLimit, "US Naval Observatory"},
	} {
		all, err := almanac.Seasons(c.want.UTC().Year())
		if err != nil {
			t.Fatal(err)
		}
		if d := all[c.season].Sub(c.want).Seconds(); math.Abs(d) > c.tol {
			t.Errorf("%s %d: %.1f s off (%s)", c.season, c.want.Year(), d, c.source)
		}
	}
}

// Every season of the range stands at its longitude, in its month.
func TestSeasonsOfAllYears(t *testing.T) {
	for year := almanac.FirstYear; year <= almanac.LastYear; year++ {
		all, err := almanac.Seasons(year)
		if err != nil {
			t.Fatal(err)
		}
		for i, x := range all {
			off := math.Remainder(almanac.SunAt(x).Longitude.ArcSeconds()-float64(i)*90*3600, 360*3600)
			if math.Abs(off) > 0.01 || x.Year() != year || x.Month() != time.Month(3*i+3) {
				t.Errorf("%d %s: %s, %.3f″ off", year, almanac.Season(i), x, off)
			}
		}
	}
}
