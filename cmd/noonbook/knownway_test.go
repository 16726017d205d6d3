package main

import (
	"math"
	"testing"

	"noonbook/build/school"
	"noonbook/build/source"
	"noonbook/compute/quantity"
	"noonbook/compute/space"
	"noonbook/content"
)

// The demo's way to Halifax is the straight line on a sphere of 6371 km. Halifax is at
// 44°39′ N, 63°36′ W (zone.tab of the IANA time zone database), which is good to a minute
// of arc, so to 2 km.
func TestKnownWayOfTheDemo(t *testing.T) {
	v, problems, err := source.ReadSettings(content.Files(), "content")
	if err != nil || problems.Faults() > 0 {
		t.Fatal(problems, err)
	}
	here := school.Place(v)
	from := space.At(here.Longitude, here.Latitude, 1)
	to := space.At(quantity.Degrees(-63.6), quantity.Degrees(44.65), 1)
	want := 6371 * from.Angle(to).Radians()
	if got := school.WayKm.Of(v); school.WayTo.Of(v) != "Halifax" || math.Abs(got-want) > 2 {
		t.Errorf("%v km to %s, want %.1f km to Halifax", got, school.WayTo.Of(v), want)
	}
}
