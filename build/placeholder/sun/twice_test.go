package sun_test

import (
	"testing"
	"time"

	"noonbook/build/placeholder/entrytest"
)

var (
	fairbanks = []string{"school.latitude=64.84", "school.longitude=-147.72", "school.time_zone=America/Anchorage"}
	utqiagvik = []string{"school.latitude=71.29", "school.longitude=-156.79", "school.time_zone=America/Anchorage"}
	tromso    = []string{"school.latitude=69.6", "school.longitude=18.95", "school.time_zone=Europe/Oslo"}
)

// Days on which the Sun is up at midnight, with astronomy-engine 2.1.19: Fairbanks
// sets 0:40:39 and rises 3:08:35; Utqiagvik sets 0:04:28, rises 5:00:37, sets
// 23:57:53; Tromsø sets 0:13:49, rises 1:28:34, sets 23:59:35; in the directions 343°,
// 324° and 323°, 351° and 348°. The time that the Sun is up is the sum by hand.
func TestDaysThatBeginWithASunset(t *testing.T) {
	for _, c := range []struct {
		name, date           string
		school               []string
		rise, set, direction string
		up                   float64
		words                string
	}{
		{"Fairbanks", "2027-06-30", fairbanks, "3:09", "0:41", "north-north-west", 86400 - (3*3600 + 8*60 + 35) + (40*60 + 39),
			"On 30 June 2027 the Sun, still up at midnight, sets at 0:41 and rises again at 3:09; it is up for 21 h 32 min of this day."},
		{"Utqiagvik", "2026-08-14", utqiagvik, "5:01", "0:04 and 23:58", "north-west", 4*60 + 28 + (23*3600 + 57*60 + 53) - (5*3600 + 37),
			"On 14 August 2026 the Sun, still up at midnight, sets at 0:04, rises at 5:01 and sets again at 23:58; it is up for 19 h 2 min of this day."},
		{"Tromsø", "2027-07-27", tromso, "1:29", "0:14 and 23:59", "north and north-north-west", 13*60 + 49 + (23*3600 + 59*60 + 35) - (3600 + 28*60 + 34),
			"On 27 July 2027 the Sun, still up at midnight, sets at 0:14, rises at 1:29 and sets again at 23:59; it is up for 22 h 45 min of this day."},
	} {
		day, path := reckon(t, "alder reach", "sun-day", c.date, c.school...), reckon(t, "alder reach", "sun-path", c.date, c.school...)
		for _, r := range []struct{ fact, want string }{{"rise", c.rise}, {"set", c.set}} {
			if got := entrytest.Shown(t, day, r.fact); got != r.want {
				t.Errorf("%s, sun-day, %s: %s, want %s", c.name, r.fact, got, r.want)
			}
			if got := entrytest.Shown(t, path, r.fact); got != r.want {
				t.Errorf("%s, sun-path, %s: %s, want %s", c.name, r.fact, got, r.want)
			}
		}
		if got := entrytest.Shown(t, path, "set_direction"); got != c.direction {
			t.Errorf("%s: sets %s, want %s", c.name, got, c.direction)
		}
		entrytest.Near(t, c.name+": up", entrytest.Fact(t, day, "day_length").Number, c.up, 2)
		if got := entrytest.Shown(t, day, "in_words"); got != c.words {
			t.Errorf("%s: %s", c.name, got)
		}
		if !entrytest.Says(day.Working, "sun-day.working_in_all") || entrytest.Says(day.Working, "sun-day.working") {
			t.Errorf("%s: the working counts from rise to set", c.name)
		}
	}
	if day := reckon(t, "alder reach", "sun-day", "2027-04-20"); !entrytest.Says(day.Working, "sun-day.working") {
		t.Error("at Alder Reach the working has no way from rise to set")
	}
}

// On Lord Howe Island the clocks change by half an hour, on 4 April 2027 back from 2:00
// to 1:30 and on 3 October forward from 2:00 to 2:30 (IANA time zone database). Rows
// stay at whole hours; the Sun at 7:00 stands 10.50° and 12.04° high, bearing 76.9° and
// 87.0° (astronomy-engine 2.1.19, with its own refraction).
func TestWholeHoursOnLordHoweIsland(t *testing.T) {
	for date, want := range map[string]struct{ altitude, bearing float64 }{"2027-04-04": {10.50, 76.91}, "2027-10-03": {12.04, 87.02}} {
		r := reckon(t, "alder reach", "sun-path", date, "school.latitude=-31.53", "school.longitude=159.08", "school.time_zone=Australia/Lord_Howe")
		found := false
		for i, clock := range entrytest.Cells(t, r, "hours", "clock") {
			if clock.Time.Minute() != 0 {
				t.Errorf("%s: a row at %s", date, clock.Time.Format(time.TimeOnly))
			}
			if clock.Time.Hour() == 7 {
				found = true
				entrytest.Near(t, date+": height", entrytest.Cells(t, r, "hours", "altitude")[i].Number, want.altitude, 0.03)
				entrytest.Near(t, date+": bearing", entrytest.Cells(t, r, "hours", "bearing")[i].Number, want.bearing, 0.01)
			}
		}
		if !found {
			t.Errorf("%s: no row at 7:00", date)
		}
	}
}
