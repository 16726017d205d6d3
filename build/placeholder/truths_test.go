package placeholder_test

import (
	"testing"

	"noonbook/build/placeholder"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/result"
	"noonbook/build/say"
)

// A fact that is documented as yes or no is one of the two everywhere and on every kind
// of day, with records or without; and one that always is, is documented so, since
// lessons may ask for no other.
func TestTruthsAreYesOrNo(t *testing.T) {
	for _, e := range placeholder.Catalogue() {
		always := map[string]bool{}
		for where := range entrytest.Schools {
			for _, date := range []string{"2027-01-01", "2027-03-20", "2027-06-21", "2027-12-21"} {
				r := reckon(t, where, e.Name, date)
				for _, f := range e.Facts {
					value, _ := r.Fact(f.Name)
					is := value.Kind == say.Truth
					if f.Truth && !is {
						t.Errorf("%s, %s: %s.%s is of kind %d", where, date, e.Name, f.Name, value.Kind)
					}
					if before, asked := always[f.Name]; !asked || before {
						always[f.Name] = is
					}
				}
			}
		}
		for _, f := range e.Facts {
			if always[f.Name] && !f.Truth {
				t.Errorf("%s.%s is yes or no and is not documented so", e.Name, f.Name)
			}
		}
	}
}

// What is true of places. Latitudes decide the first five: the tropics are at 23°26′, the
// polar circles at 66°34′. That clocks change in New Brunswick, New Zealand, Norway and
// at McMurdo, and not in Ecuador, Nigeria, Singapore, Nepal, Kiribati and by UTC, is the
// IANA database's. In the caution zones of the World Magnetic Model 2025 round the
// magnetic poles a compass errs: Resolute, in Nunavut, lies in the northern one.
func TestWhatIsTrueOfPlaces(t *testing.T) {
	truths := []string{"south", "north", "tropics", "polar", "warm_and_cold", "saving", "compass_works"}
	for where, want := range map[string]string{
		"alder reach": "nynnyyy",
		"south":       "ynnnyyy",
		"line south":  "ynynnny",
		"equator":     "nnynnny",
		"line north":  "nyynnny",
		"arctic":      "nynyyyy",
		"half hour":   "nynnyny",
		"far east":    "nyynnny",
		"north pole":  "nynyynn",
		"south pole":  "ynnyyyy",
	} {
		if got := yes(t, truths, where, "place-facts", "2027-04-20"); got != want {
			t.Errorf("%s: %s, want %s", where, got, want)
		}
	}
	for latitude, want := range map[string]string{"school.latitude=23.4": "yn", "school.latitude=-23.5": "ny"} {
		if got := yes(t, []string{"tropics", "warm_and_cold"}, "alder reach", "place-facts", "2027-04-20", latitude); got != want {
			t.Errorf("%s: %s, want %s", latitude, got, want)
		}
	}
	if got := yes(t, []string{"compass_works"}, "alder reach", "place-facts", "2027-04-20", "school.latitude=74.72", "school.longitude=-94.97"); got != "n" {
		t.Errorf("a compass works in Resolute")
	}
	// Variations of the World Magnetic Model 2025 in 2027: 16° W at Alder Reach, 0.2° E in
	// Nairobi (from the model's own test points' neighbourhood, from memory).
	for _, c := range [][]string{{"y"}, {"n", "school.latitude=-1.29", "school.longitude=36.82"}} {
		if got := yes(t, []string{"needle_off"}, "alder reach", "place-facts", "2027-04-20", c[1:]...); got != c[0] {
			t.Errorf("%v: the needle is off: %s", c[1:], got)
		}
	}
}

// What the Sun does: at Tromsø's latitude it stays up from 20 May to 22 July and down
// from 27 November to 15 January (published there); on the equator it stands overhead
// at the equinoxes, and to the north in June; at a pole the one day lasts half a year,
// and every way is to the other.
func TestWhatIsTrueOfTheSun(t *testing.T) {
	truths := []string{"rises_and_sets", "stays_up", "stays_down", "north_noon", "overhead"}
	for _, c := range []struct{ where, date, want string }{
		{"alder reach", "2027-06-21", "ynnnn"},
		{"south", "2027-06-21", "ynnyn"},
		{"south", "2027-12-21", "ynnyn"},
		{"equator", "2027-03-20", "ynny"},
		{"equator", "2027-06-21", "ynnyn"},
		{"equator", "2027-12-21", "ynnnn"},
		{"line north", "2027-06-21", "ynnyn"},
		{"arctic", "2027-06-21", "nynnn"},
		{"arctic", "2027-12-21", "nnynn"},
		{"arctic", "2027-04-20", "ynnnn"},
		{"south pole", "2027-12-21", "nynyn"},
		{"south pole", "2027-06-21", "nnynn"},
		{"north pole", "2027-06-21", "nynnn"},
	} {
		got := yes(t, truths, c.where, "sun-day", c.date)
		if c.where == "equator" && c.date == "2027-03-20" { // overhead, to either side
			got = got[:3] + got[4:]
		}
		if got != c.want {
			t.Errorf("%s, %s: %s, want %s", c.where, c.date, got, c.want)
		}
	}
	if got := yes(t, truths[4:], "alder reach", "sun-day", "2027-06-21", "school.latitude=23.0"); got != "y" {
		t.Error("at 23° north the Sun is not overhead on the longest day, 0.44° from the zenith")
	}
	if got := yes(t, truths[4:], "alder reach", "sun-day", "2027-06-21", "school.latitude=22.0"); got != "n" {
		t.Error("at 22° north the Sun is overhead on the longest day, 1.44° from the zenith")
	}
}

// The Moon stays up for days each month beyond the polar circles, and down for others:
// at a pole half of each month, when its declination is to that side.
func TestTheMoonStaysUpAtThePoles(t *testing.T) {
	for _, where := range []string{"north pole", "south pole", "alder reach"} {
		up, down := 0, 0
		for day := range 27 {
			got := yes(t, []string{"stays_up", "stays_down"}, where, "moon-month", "2027-02-"+string([]byte{byte('0' + (day+1)/10), byte('0' + (day+1)%10)}))
			switch got {
			case "yn":
				up++
			case "ny":
				down++
			case "yy":
				t.Errorf("%s: up and down at once", where)
			}
		}
		if poles := where != "alder reach"; poles && (up < 11 || down < 11) || !poles && up+down > 0 {
			t.Errorf("%s: the Moon stays up on %d days and down on %d", where, up, down)
		}
	}
}

// A strip reaches a planet when it has the squares: with 5 million km a square, Neptune
// at 4498 million km (NASA's fact sheets) is 900 squares away and Uranus, at 2867, 573.
func TestStripsReach(t *testing.T) {
	truths := []string{"reaches_uranus", "reaches_neptune"}
	for squares, want := range map[string]string{"stock.strip_squares=910": "yy", "stock.strip_squares=600": "yn", "stock.strip_squares=500": "nn"} {
		if got := yes(t, truths, "alder reach", "strip-table", "2027-04-20", squares, "million_km_a_square=5"); got != want {
			t.Errorf("%s: %s, want %s", squares, got, want)
		}
	}
}

// yes writes a y for each fact that is yes and an n for each that is no.
func yes(t *testing.T, facts []string, where, name, date string, arguments ...string) string {
	t.Helper()
	return told(t, reckon(t, where, name, date, arguments...), name, facts...)
}

func told(t *testing.T, r result.Result, name string, facts ...string) string {
	t.Helper()
	got := ""
	for _, f := range facts {
		value, ok := r.Fact(f)
		if !ok || value.Kind != say.Truth {
			t.Fatalf("%s has no yes or no %s", name, f)
		}
		got += map[bool]string{true: "y", false: "n"}[value.Number == 1]
	}
	return got
}

// Logs without a row are not kept, whatever else they lack.
func TestEmptyRecordsAreNotKept(t *testing.T) {
	for _, name := range []string{"dial-marks", "lens-log", "moon-log", "rocket-log", "strip-log"} {
		if got := yes(t, []string{"kept"}, "alder reach", name, "2027-04-20"); got != "n" {
			t.Errorf("%s is kept without a row", name)
		}
	}
	for date, want := range map[string]string{"2027-04-12": "yy", "2027-04-30": "yy", "2027-04-11": "yn", "2027-05-01": "yn"} {
		r := reckonLog(t, "alder reach", "moon-log", "date,time,seen\n"+date+",18:00,no\n")
		if got := told(t, r, "moon-log", "kept", "this_term"); got != want {
			t.Errorf("a look on %s: %s, want %s", date, got, want)
		}
	}
}
