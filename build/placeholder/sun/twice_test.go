package sun_test

import (
	"fmt"
	"testing"
	"time"

	"noonbook/build/placeholder/entrytest"
	"noonbook/build/say"
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

// Rises and sets in the last half minute before midnight are printed on the day on which
// they happen, by every placeholder of the Sun's day: 23:59, where the nearest minute is
// the next day's 0:00. Held against the moments, which carry fractions of a second;
// TestDaysThatBeginWithASunset holds one of them, 23:59:35, against another library.
func TestClocksKeepTheirDay(t *testing.T) {
	edges := 0
	for _, c := range []struct {
		latitude, longitude float64
		zone, date          string
	}{
		{69.6, 18.95, "Europe/Oslo", "2027-07-27"},
		{67.8, 18.95, "Europe/Oslo", "2027-05-25"},
		{66.7, -156.79, "America/Anchorage", "2027-08-01"},
		{76.5, 27, "Europe/Helsinki", "2027-08-21"},
		{65.2, 31.1, "Etc/GMT-1", "2027-06-29"},
		{70.1, 31.1, "Etc/GMT-1", "2027-05-12"},
	} {
		school := []string{fmt.Sprint("school.latitude=", c.latitude), fmt.Sprint("school.longitude=", c.longitude), "school.time_zone=" + c.zone}
		zone, err := time.LoadLocation(c.zone)
		if err != nil {
			t.Fatal(err)
		}
		day, path := reckon(t, "alder reach", "sun-day", c.date, school...), reckon(t, "alder reach", "sun-path", c.date, school...)
		for _, name := range []string{"rise", "set"} {
			value := entrytest.Fact(t, day, name)
			want := ""
			for i, one := range append([]say.Value{value}, value.Also...) {
				at := one.Time.In(zone)
				if at.Format(time.DateOnly) != c.date {
					t.Errorf("%v: %s at %v, not on that day", c, name, at)
				}
				near := at.Add(30 * time.Second) // cut to the minute, that is the nearest
				if near.Day() != at.Day() {
					near = at
					edges++
				}
				if i > 0 {
					want += " and "
				}
				want += fmt.Sprintf("%d:%02d", near.Hour(), near.Minute())
			}
			if got := entrytest.Shown(t, day, name); got != want {
				t.Errorf("%v, sun-day: %s at %s, want %s", c, name, got, want)
			}
			if got := entrytest.Shown(t, path, name); got != want {
				t.Errorf("%v, sun-path: %s at %s, want %s", c, name, got, want)
			}
		}
	}
	if edges != 6 {
		t.Errorf("%d moments in the last half minute of a day, want 6", edges)
	}
}

// A row of the Sun's year says what the Sun's day says of that date, both sunsets of a
// day included, printed and for other programs.
func TestYearTellsWhatTheDayTells(t *testing.T) {
	twice := 0
	for _, latitude := range []float64{65.6, 68.3, 70.8, 73.5, 76.8} {
		school := []string{fmt.Sprint("school.latitude=", latitude), "school.longitude=18.95", "school.time_zone=Europe/Oslo"}
		year := reckon(t, "alder reach", "sun-year", "2027-07-01", school...)
		for i, date := range entrytest.Cells(t, year, "year", "date") {
			day := reckon(t, "alder reach", "sun-day", date.Time.Format(time.DateOnly), school...)
			for _, name := range []string{"rise", "set"} {
				cell, fact := entrytest.Cells(t, year, "year", name)[i], entrytest.Fact(t, day, name)
				twice += len(cell.Also)
				got, want := entrytest.Written(t, cell), entrytest.Written(t, fact)
				if got != want || len(cell.Also) != len(fact.Also) {
					t.Errorf("%g° on %s: %s at %s in the year, %s on the day", latitude, date.Time.Format(time.DateOnly), name, got, want)
				}
				for k := range cell.Also {
					if !cell.Also[k].Time.Equal(fact.Also[k].Time) {
						t.Errorf("%g°: %v in the year, %v on the day", latitude, cell.Also[k].Time, fact.Also[k].Time)
					}
				}
			}
		}
	}
	if twice != 5 {
		t.Errorf("%d days with two sunsets, want 5", twice)
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
