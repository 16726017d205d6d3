package classroom

import (
	"testing"
	"time"
	_ "time/tzdata"

	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

func moncton(t *testing.T) place.Place {
	t.Helper()
	zone, err := time.LoadLocation("America/Moncton")
	if err != nil {
		t.Fatal(err)
	}
	return place.Place{Latitude: quantity.Degrees(46.09), Longitude: quantity.Degrees(-64.77), Zone: zone}
}

func slotOn(month time.Month, d, h, m int, minutes time.Duration) Slot {
	from := time.Duration(h)*time.Hour + time.Duration(m)*time.Minute
	return Slot{place.Date{Year: 2027, Month: month, Day: d}, Span{from, from + minutes*time.Minute}}
}

// The school's Sun on 13 April 2027 rises at 6:40 and sets at 20:05, and stands
// 53° high at noon (90° − latitude + declination 9°); the Moon is at its first
// quarter that night and new on 6 May (Astronomical Almanac phases, from memory).
func TestSky(t *testing.T) {
	sky := Over(moncton(t))
	ten := quantity.Degrees(10)
	for _, c := range []struct {
		name string
		need Need
		slot Slot
		want bool
	}{
		{"a morning", Need{Kind: SunUp, Height: ten}, slotOn(4, 13, 9, 10, 50), true},
		{"before sunrise", Need{Kind: SunUp, Height: ten}, slotOn(4, 13, 6, 0, 30), false},
		{"half of the lesson", Need{Kind: SunUp, Height: ten}, slotOn(4, 13, 7, 10, 60), false},
		{"twenty minutes of it", Need{Kind: SunUp, Height: ten, Window: 15 * time.Minute}, slotOn(4, 13, 7, 10, 60), true},
		{"higher than the noon", Need{Kind: SunUp, Height: quantity.Degrees(60)}, slotOn(4, 13, 13, 0, 50), false},
		{"quarter Moon in the afternoon", Need{Kind: MoonUp, Height: ten}, slotOn(4, 13, 15, 0, 50), true},
		{"quarter Moon in the morning", Need{Kind: MoonUp, Height: ten}, slotOn(4, 13, 9, 0, 50), false},
		{"new Moon beside the Sun", Need{Kind: MoonUp, Height: ten}, slotOn(5, 6, 12, 0, 50), false},
		{"an evening", Need{Kind: Dark}, slotOn(4, 13, 21, 0, 50), true},
		{"dusk", Need{Kind: Dark}, slotOn(4, 13, 20, 0, 90), false},
		{"dark by nine", Need{Kind: DarkBy, By: 21 * time.Hour}, slotOn(4, 13, 9, 0, 50), true},
		{"not by eight", Need{Kind: DarkBy, By: 20 * time.Hour}, slotOn(4, 13, 9, 0, 50), false},
		{"marks from nine to three", Need{Kind: HourMarks, Height: ten, Marks: Span{9 * time.Hour, 15 * time.Hour}}, slotOn(4, 13, 9, 0, 50), true},
		{"marks from seven", Need{Kind: HourMarks, Height: ten, Marks: Span{7 * time.Hour, 15 * time.Hour}}, slotOn(4, 13, 9, 0, 50), false},
		{"rain is not known", Need{Kind: Dry}, slotOn(4, 13, 9, 0, 50), true},
	} {
		if got := sky.Meets(c.need, c.slot); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}

// A height is as seen: on 13 April 2027 at Moncton the Sun stands 9.840° without air and
// is seen at 9.932° at 7:39; at 8:00 these are 13.484° and 13.552° (astronomy-engine
// 2.1.19, its refraction "normal").
func TestSunIsAsHighAsItIsSeen(t *testing.T) {
	sky := Over(moncton(t))
	at := func(clock time.Duration) Slot {
		return Slot{place.Date{Year: 2027, Month: time.April, Day: 13}, Span{clock, clock + time.Hour}}
	}
	hours := Span{8 * time.Hour, 9 * time.Hour}
	for _, c := range []struct {
		name string
		need Need
		slot Slot
		want bool
	}{
		{"seen high enough", Need{Kind: SunUp, Height: quantity.Degrees(9.90)}, at(7*time.Hour + 39*time.Minute), true},
		{"seen too low", Need{Kind: SunUp, Height: quantity.Degrees(9.96)}, at(7*time.Hour + 39*time.Minute), false},
		{"a mark seen high enough", Need{Kind: HourMarks, Height: quantity.Degrees(13.52), Marks: hours}, at(9 * time.Hour), true},
		{"a mark seen too low", Need{Kind: HourMarks, Height: quantity.Degrees(13.58), Marks: hours}, at(9 * time.Hour), false},
	} {
		if got := sky.Meets(c.need, c.slot); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}

// Clocks in New Brunswick go forward on 14 March 2027 and back on 7 November
// (IANA time zone database).
func TestClockChangesBetween(t *testing.T) {
	sky := Over(moncton(t))
	march, april, may, december := sky.Clock(slotOn(3, 12, 9, 0, 50)), sky.Clock(slotOn(4, 13, 9, 0, 50)), sky.Clock(slotOn(5, 13, 9, 0, 50)), sky.Clock(slotOn(12, 1, 9, 0, 50))
	if !(march < april && april == may && may < december) {
		t.Errorf("clocks since %d, %d, %d, %d", march, april, may, december)
	}
}

func TestFullHours(t *testing.T) {
	got := Span{9*time.Hour + 10*time.Minute, 12 * time.Hour}.FullHours()
	if len(got) != 3 || got[0] != 10*time.Hour || got[2] != 12*time.Hour {
		t.Errorf("full hours are %v", got)
	}
}

// By day the Moon must be 35° from the Sun, in twilight 20°, in the dark it may be
// anywhere. Distances as seen from Moncton by astronomy-engine 2.1.19: 36.7° and 24.4°
// by day, 19.995° in twilight.
func TestMoonTooNearTheSun(t *testing.T) {
	p := moncton(t)
	for _, c := range []struct {
		at   time.Time
		near bool
	}{
		{time.Date(2027, 5, 3, 14, 0, 0, 0, time.UTC), false},
		{time.Date(2027, 5, 4, 14, 0, 0, 0, time.UTC), true},
		{time.Date(2027, 5, 7, 23, 45, 0, 0, time.UTC), true},
		{time.Date(2027, 5, 8, 23, 45, 0, 0, time.UTC), false}, // two days old, in twilight
		{time.Date(2027, 5, 8, 17, 0, 0, 0, time.UTC), true},   // the same Moon by day
		{time.Date(2027, 5, 8, 1, 0, 0, 0, time.UTC), false},   // dark
	} {
		if got := MoonTooNear(p, c.at); got != c.near {
			t.Errorf("%v: too near is %v", c.at, got)
		}
	}
}
