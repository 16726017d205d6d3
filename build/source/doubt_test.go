package source_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"noonbook/build/source"
)

// A place that its clock belies, and a lesson at night, are warnings at their values.
func TestDoubtsAreWarnings(t *testing.T) {
	const file = `[unit]
title = "T"
[school]
name = "S"
longitude = 64.77
latitude = 46.09
time_zone = "America/Moncton"
[term]
first_day = 2027-04-12
last_day = 2027-05-14
lesson_times = ["9:10-10:00", "1:15-2:05"]
`
	read := func(text string) (warned []string) {
		_, problems, err := source.ReadSettings(fstest.MapFS{"unit.toml": {Data: []byte(text)}}, "u")
		if err != nil || problems.Faults() > 0 {
			t.Fatal(err, problems)
		}
		for _, p := range problems {
			warned = append(warned, p.Error())
		}
		return warned
	}
	got := strings.Join(read(file), "\n")
	const want = `u/unit.toml:5:13: warning: school.longitude: the Sun's noon is at 4:42 by the clock of America/Moncton here; with longitude -64.77° it would be at 13:20; is the sign of the longitude wrong?
u/unit.toml:11:31: warning: term.lesson_times: 1:15-2:05 is at night; is 13:15-14:05 meant?`
	if got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	right := strings.NewReplacer("= 64.77", "= -64.77", "1:15-2:05", "13:15-14:05").Replace(file)
	if got := read(right); len(got) > 0 {
		t.Errorf("of what is right it says %v", got)
	}
}
