package starter_test

import (
	"math"
	"strings"
	"testing"

	"noonbook/build/starter"
)

// One place in the ways in which people and maps write it; the minutes are sixtieths
// and the seconds sixtieths of those.
func TestPlace(t *testing.T) {
	for _, c := range []struct {
		text     string
		lat, lon float64
	}{
		{"46.09 -64.77", 46.09, -64.77},
		{"46.09, -64.77", 46.09, -64.77},
		{"46.09,-64.77", 46.09, -64.77},
		{"46.09, −64.77", 46.09, -64.77},
		{" 46.09;−64.77 ", 46.09, -64.77},
		{"46,09 -64,77", 46.09, -64.77},
		{"46,09, -64,77", 46.09, -64.77},
		{"46,09; −64,77", 46.09, -64.77},
		{"46, -64", 46, -64},
		{"46,-64", 46, -64},
		{"46 -64", 46, -64},
		{"46 64", 46, 64},
		{"-45.87 +170.50", -45.87, 170.5},
		{"46.09° -64.77°", 46.09, -64.77},
		{"46.09°, -64.77°", 46.09, -64.77},
		{"46°05′N 64°46′W", 46 + 5/60., -64 - 46/60.},
		{"46° 5' 30\" N, 64° 46' W", 46 + 5/60. + 30/3600., -64 - 46/60.},
		{"46º5’30”n 64º46’0”w", 46 + 5/60. + 30/3600., -64 - 46/60.},
		{"46°5'30''N 64°46'W", 46 + 5/60. + 30/3600., -64 - 46/60.},
		{"N 46° 05.5' W 64° 46.2'", 46 + 5.5/60, -64 - 46.2/60},
		{"N46.09 W64.77", 46.09, -64.77},
		{"46.09N, 64.77W", 46.09, -64.77},
		{"46,09 N 64,77 W", 46.09, -64.77},
		{"64°46′W 46°05′N", 46 + 5/60., -64 - 46/60.},
		{"46 05 30 N 64 46 12 W", 46 + 5/60. + 30/3600., -64 - 46/60. - 12/3600.},
		{"46°05' -64°46'", 46 + 5/60., -64 - 46/60.},
		{"-0°30' 0°15'", -0.5, 0.25},
		{"45° 52′ S 170° 30′ E", -45 - 52/60., 170.5},
		{"45,87 sud 170,5 est", -45.87, 170.5},
		{"46,09 Nord, 64,77 Ouest", 46.09, -64.77},
		{"46.09 north 64.77 west", 46.09, -64.77},
		{"0 0", 0, 0},
		{"90S 0E", -90, 0},
		{"1.87 N 157.43 W", 1.87, -157.43},
	} {
		lat, lon, err := starter.Place(c.text, false)
		if err != nil || math.Abs(lat-c.lat) > 1e-12 || math.Abs(lon-c.lon) > 1e-12 {
			t.Errorf("%s: %v %v, want %v %v (%v)", c.text, lat, lon, c.lat, c.lon, err)
		}
	}
}

// O is west in French alone.
func TestPlaceInFrench(t *testing.T) {
	for _, text := range []string{"46°05′N 64°46′O", "46,09 N, 64,77 O", "N 46,09 O 64,77"} {
		lat, lon, err := starter.Place(text, true)
		if err != nil || lat < 46 || lon > -64 {
			t.Errorf("%s: %v %v %v", text, lat, lon, err)
		}
		if _, _, err := starter.Place(text, false); err == nil || !strings.Contains(err.Error(), "has an O, which is west in French and east in other languages") {
			t.Errorf("%s in English: %v", text, err)
		}
	}
}

// What cannot be told is not guessed.
func TestPlaceRefuses(t *testing.T) {
	for text, want := range map[string]string{
		"":                      "has 0 numbers",
		"46.09":                 "has one number",
		"46,64":                 "has one number",
		"46,09,64,77":           "is not a place",
		"1 2 3":                 "has 3 numbers",
		"Moncton":               `has "moncton", which is no direction`,
		"46°05′N":               "has a direction at one number only",
		"46°05′N 64°46′":        "has a direction at one number only",
		"46°05′N 64°46′S":       "has two of one kind",
		"46 E 64 W":             "has two of one kind",
		"-46 S 170 E":           "has a sign beside a direction",
		"46°75′N 64°46′W":       "minutes and seconds cannot be read",
		"46.5°30′N 64°46′W":     "minutes and seconds cannot be read",
		"46 N 64 Z":             `has "z", which is no direction`,
		"46 N 64 Ost":           `has "ost", which is no direction`,
		"170.5 -45.87":          "the latitude 170.5° is outside -90° to 90°",
		"46 N 190 W":            "the longitude -190° is outside -180° to 180°",
		"46 N 64 W of here":     `has "of", which is no direction`,
		"46 N 64 W 20 E":        "has more than two directions",
		"46 N 64 W 3":           "has something behind the last direction",
		"46 05 30 12 N 64 46 W": "which is no angle",
		"46°05′N\x00 64°46′W":   "which is no angle",
	} {
		lat, lon, err := starter.Place(text, false)
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v %v %v, want %s", text, lat, lon, err, want)
		}
	}
}
