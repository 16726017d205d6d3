package sky_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"noonbook/build/placeholder/entrytest"
	"noonbook/build/placeholder/moon"
	"noonbook/build/say"
)

// zones are the clocks of fourSchools.
var zones = map[string]string{"alder reach": "America/Moncton", "south": "Pacific/Auckland", "line north": "Asia/Singapore", "arctic": "Europe/Oslo"}

// A contact across midnight from the greatest moment, whose date the row bears, says so,
// and on which side: moments of the Swiss Ephemeris (lunar-eclipses.csv), dates by the
// time zone database.
func TestContactsOfTheDayBeforeAndAfter(t *testing.T) {
	said := map[string]int{}
	for school, name := range zones {
		zone, err := time.LoadLocation(name)
		if err != nil {
			t.Fatal(err)
		}
		r := reckon(t, school, "eclipse-list", "2026-01-01", "years=14")
		middles := entrytest.Cells(t, r, "moon", "greatest")
		for _, row := range entrytest.Reference(t, "lunar-eclipses.csv", "swisseph") {
			middle := entrytest.Instant(t, row["greatest"])
			for i, v := range middles {
				if v.Time.Sub(middle).Abs() > time.Hour {
					continue
				}
				columns := map[string]string{"begins": "u1", "total_begins": "u2", "total_ends": "u3", "ends": "u4"}
				if row["kind"] == "penumbral" {
					columns = map[string]string{"begins": "p1", "ends": "p4"}
				}
				for column, contact := range columns {
					if row[contact] == "" {
						continue
					}
					at := entrytest.Instant(t, row[contact]).In(zone)
					if near := at.Add(3 * time.Minute); near.Day() != at.Add(-3*time.Minute).Day() {
						continue // to which side of midnight is a matter of seconds
					}
					want := ""
					switch own, day := at.Format(time.DateOnly), middle.In(zone).Format(time.DateOnly); {
					case own < day:
						want = " the day before"
					case own > day:
						want = " the day after"
					}
					said[want]++
					_, got, _ := strings.Cut(entrytest.Written(t, entrytest.Cells(t, r, "moon", column)[i])+" ", " ")
					if got = strings.TrimSuffix(" "+got, " "); got != want {
						t.Errorf("%s: %s of the eclipse of %s is %s, want %q", school, column, row["greatest"], entrytest.Written(t, entrytest.Cells(t, r, "moon", column)[i]), want)
					}
				}
			}
		}
	}
	if said[""] == 0 || said[" the day before"] == 0 || said[" the day after"] == 0 {
		t.Errorf("dates that were tried: %v", said)
	}
}

// What is lost in the glare is looked for where it would be: in the evening east of the
// Sun, which it follows down, in the morning west of it. Sides are the Swiss Ephemeris'
// (aspects.csv); evening is when the Sun goes down, by Meeus' low accuracy.
func TestPlanetsInTheGlareBySide(t *testing.T) {
	seen := map[string]int{}
	for _, row := range entrytest.Reference(t, "aspects.csv", "swisseph") {
		names := map[string]string{"mercury": "Mercury", "venus": "Venus", "mars": "Mars", "jupiter": "Jupiter", "saturn": "Saturn"}
		apart := entrytest.Number(t, row["elongation_deg"])
		if names[row["body"]] == "" || apart < 4 || apart > 27 { // Mercury changes by up to 2° a day
			continue
		}
		for school, at := range fourSchools {
			if at.latitude > 60 { // where there may be no dusk
				continue
			}
			r := reckon(t, school, "planets-week", row["utc"][:10])
			planets := entrytest.Texts(t, r, "planets", "planet")
			for i, name := range planets {
				if name != names[row["body"]] || entrytest.Cells(t, r, "planets", "when")[i].Phrase.Key != "planets-week.in_glare" {
					continue
				}
				moment := entrytest.Cells(t, r, "planets", "at")[i].Time
				side := "west"
				if sunHeight(moment.Add(5*time.Minute), at.latitude, at.longitude) < sunHeight(moment.Add(-5*time.Minute), at.latitude, at.longitude) {
					side = "east"
				}
				seen[side]++
				if side != row["side"] {
					t.Errorf("%s at %s, %s of the Sun, is looked for at %s", name, school, row["side"], moment)
				}
			}
		}
	}
	if seen["east"] < 4 || seen["west"] < 4 {
		t.Errorf("planets in the glare: %v", seen)
	}
}

// Nobody looks for a planet while the Sun is up: it is 3° below the horizon for Venus, 6°
// for a planet that outshines Sirius (−1.46), 9° for others, as the page says; its height
// by Meeus' low accuracy.
func TestSunIsDownWhenPlanetsAreLookedFor(t *testing.T) {
	looked := map[string]int{}
	for month := 1; month <= 24; month++ {
		date := time.Date(2026, time.Month(month), 15, 0, 0, 0, 0, time.UTC).Format(time.DateOnly)
		for school, at := range fourSchools {
			r := reckon(t, school, "planets-week", date)
			magnitudes, moments := entrytest.Column(t, r, "magnitude"), entrytest.Cells(t, r, "planets", "at")
			for i, when := range entrytest.Cells(t, r, "planets", "when") {
				key := strings.TrimPrefix(when.Phrase.Key, "planets-week.")
				if key != "in_evening" && key != "in_morning" && key != "both_ends" {
					continue
				}
				depth := 9.0
				switch {
				case magnitudes[i] < -3.5:
					depth = 3
				case magnitudes[i] < -1.46:
					depth = 6
				}
				looked[fmt.Sprint(depth)]++
				name := entrytest.Texts(t, r, "planets", "planet")[i]
				if height := sunHeight(moments[i].Time, at.latitude, at.longitude); math.Abs(height+depth) > 0.1 {
					t.Errorf("%s at %s on %s is looked for with the Sun at %.1f°, want −%v°", name, school, date, height, depth)
				}
			}
		}
	}
	if len(looked) != 3 {
		t.Errorf("depths that were tried: %v", looked)
	}
}

// The Moon by day begins where it stands in a lesson and far enough from the Sun to be
// looked for, which leaves thin crescents out too. Days and safety are those of the list
// of the Moon in lessons.
func TestDayMoonsAreThoseToLookFor(t *testing.T) {
	lessons := "term.lesson_times=9:10-10:00,10:15-11:05,13:15-14:05"
	begins, unsafe := 0, 0
	for _, school := range []string{"alder reach", "south", "line north"} {
		r := reckon(t, school, "sky-alerts", "2027-01-04", "from=2027-01-04", "to=2027-12-17", lessons)
		list := entrytest.Reckon(t, moon.Entries(), school, "moon-school", "2027-01-04", "from=2027-01-04", "to=2027-12-17", "altitude_deg=10", lessons)
		plain := map[string]bool{}
		dates, safe := entrytest.Cells(t, list, "chances", "date"), entrytest.Cells(t, list, "chances", "safe")
		for i, d := range dates {
			switch {
			case safe[i].Kind != say.Truth || safe[i].Number == 0:
				unsafe++
			default:
				plain[d.Time.Format(time.DateOnly)] = true
			}
		}
		var want, got []string
		before := false
		for d := time.Date(2027, 1, 4, 0, 0, 0, 0, time.UTC); !d.After(time.Date(2027, 12, 17, 0, 0, 0, 0, time.UTC)); d = d.AddDate(0, 0, 1) {
			if d.Weekday() == time.Saturday || d.Weekday() == time.Sunday {
				continue
			}
			day := d.Format(time.DateOnly)
			if plain[day] && !before {
				want = append(want, day)
			}
			before = plain[day]
		}
		for i, what := range entrytest.Cells(t, r, "days", "what") {
			if strings.HasPrefix(what.Phrase.Key, "sky-alerts.day_moon") {
				got = append(got, entrytest.Cells(t, r, "days", "date")[i].Time.Format(time.DateOnly))
			}
		}
		begins += len(want)
		if fmt.Sprint(got) != fmt.Sprint(want) {
			t.Errorf("%s: the Moon by day begins on %v, want %v", school, got, want)
		}
	}
	if begins < 12 || unsafe < 6 {
		t.Errorf("%d beginnings, %d not to be looked for", begins, unsafe)
	}
}
