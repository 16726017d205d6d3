package classroom

import (
	"math"
	"testing"
	"time"

	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

func placeIn(t *testing.T, latitude, longitude float64, zone string) place.Place {
	t.Helper()
	z, err := time.LoadLocation(zone)
	if err != nil {
		t.Fatal(err)
	}
	return place.Place{Latitude: quantity.Degrees(latitude), Longitude: quantity.Degrees(longitude), Zone: z}
}

// declination is the Sun's by the approximate coordinates of the Astronomical Almanac,
// good to 0.01° (section C; from memory).
func declination(d place.Date) float64 {
	rad := math.Pi / 180
	n := d.UTC().Add(12*time.Hour).Sub(time.Date(2000, 1, 1, 12, 0, 0, 0, time.UTC)).Hours() / 24
	g := (357.529 + 0.98560028*n) * rad
	l := (280.459 + 0.98564736*n + 1.915*math.Sin(g) + 0.020*math.Sin(2*g)) * rad
	return math.Asin(math.Sin(23.438*rad)*math.Sin(l)) / rad
}

// At 69.65° north a lesson round the Sun's noon first has the Sun at a height when its
// declination allows it: height = 90° − latitude + declination, and refraction lifts it
// by 0.09° at 10° and 0.04° at 20° (Sæmundsson's formula). The days are looked for
// far behind a term in December.
func TestNextDayWithTheSun(t *testing.T) {
	tromso := placeIn(t, 69.65, 18.96, "Europe/Oslo")
	term := Term{First: place.Date{Year: 2026, Month: 12, Day: 1}, Last: place.Date{Year: 2026, Month: 12, Day: 18},
		Weekdays: []time.Weekday{0, 1, 2, 3, 4, 5, 6}, Times: spans(t, "8:00-8:50 11:55-12:00")}
	for height, lift := range map[float64]float64{10: 0.09, 20: 0.04} {
		want := term.First
		for 90-69.65+declination(want)+lift < height {
			want = want.Add(1)
		}
		got, ok := term.Next(Lesson{Start: AnyTime}, Need{Kind: SunUp, Height: quantity.Degrees(height)}, Over(tromso), term.First.Add(-1), 400)
		if !ok || got != want {
			t.Errorf("the Sun is first at %g° on %s, want %s", height, got, want)
		}
	}
	if got, ok := term.Next(Lesson{Start: AnyTime}, Need{Kind: SunUp, Height: quantity.Degrees(45)}, Over(tromso), term.First, 400); ok {
		t.Errorf("the Sun is at 45° on %s; it is never higher than 43.8°", got)
	}
}

// A day without school, or without a time for the lesson, is passed over, and so is
// what comes too late.
func TestNextIsASchoolDay(t *testing.T) {
	term := Term{First: monday, Last: on(4, 16), Weekdays: fiveDays, DaysOff: []place.Date{on(4, 19)}, Times: spans(t, "9:00-9:50"),
		Weekly: map[time.Weekday][]Span{time.Tuesday: nil}}
	late := Sky{Meets: func(n Need, s Slot) bool { return s.Date.Day >= 17 }}
	for _, c := range []struct {
		days int
		want place.Date
		ok   bool
	}{{400, on(4, 21), true}, {9, on(4, 21), true}, {8, place.Date{}, false}} { // 17 and 18 a weekend, 19 off, 20 a Tuesday
		if got, ok := term.Next(Lesson{Start: clockOf(9, 0)}, Need{Kind: SunUp}, late, monday, c.days); got != c.want || ok != c.ok {
			t.Errorf("within %d days: %s, %v, want %s", c.days, got, ok, c.want)
		}
	}
}

// The one look at a day spares no day that would do.
func TestOneLookSparesNoDay(t *testing.T) {
	found := 0
	for _, p := range []place.Place{placeIn(t, 69.65, 18.96, "Europe/Oslo"), placeIn(t, 46.09, -64.77, "America/Moncton"), placeIn(t, -0.2, -78.5, "America/Guayaquil"),
		placeIn(t, -77.85, 166.67, "Antarctica/McMurdo"), placeIn(t, 89.9, 0, "UTC"), placeIn(t, -45.87, 170.5, "Pacific/Auckland")} {
		term := Term{First: on(1, 1), Last: on(1, 31), Weekdays: fiveDays, Times: spans(t, "7:00-7:50 12:00-12:50 17:00-17:50")}
		for _, n := range []Need{
			{Kind: SunUp, Height: quantity.Degrees(10)}, {Kind: SunUp, Height: quantity.Degrees(40), Window: 10 * time.Minute}, {Kind: SunUp, Height: quantity.Degrees(66)},
			{Kind: HourMarks, Height: quantity.Degrees(15), Marks: Span{9 * time.Hour, 14 * time.Hour}}, {Kind: Dark}, {Kind: DarkBy, By: 19 * time.Hour},
		} {
			quick := Over(p)
			slow := quick
			slow.could = nil
			for after := term.First; after.Before(on(12, 1)); after = after.Add(40) {
				got, ok := term.Next(Lesson{Start: AnyTime}, n, quick, after, 60)
				want, there := term.Next(Lesson{Start: AnyTime}, n, slow, after, 60)
				if got != want || ok != there {
					t.Errorf("at %v, %+v after %s: %s, want %s", p.Latitude.Degrees(), n, after, got, want)
				}
				if ok {
					found++
				}
			}
		}
	}
	if found < 50 {
		t.Errorf("only %d days are found", found)
	}
}
