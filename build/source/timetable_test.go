package source_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"noonbook/build/source"
)

// What a timetable says that does not go together, each with its place.
func TestTimetable(t *testing.T) {
	for _, c := range []struct{ name, lines, want string }{
		{"good", "lesson_times = [\"9:00-9:50\"]\ncycle_days = 6\ncycle_first = 6\ncycle = [{ day = 1, times = [\"9:00-9:50\", \"10:00-10:50\"] }]\nhalf_days = [2027-04-16]\n[term.times]\nmonday = []\n", ""},
		{"over one another", "[term.times]\nmonday = [\"9:00-9:50\", \"9:49-10:00\"]\n", "unit.toml:11:24: term.times.monday: this one begins before the one before it ends"},
		{"no school on Saturday", "[term.times]\nsaturday = [\"9:00-9:50\"]\n", "unit.toml:11:12: warning: term.times.saturday has lesson times, and term.school_days has no saturday"},
		{"no weekday", "[term.times]\nmoonday = []\n", "unit.toml:11:1: term.times.moonday is not a key; did you mean \"term.times.monday\"?"},
		{"no cycle", "[[term.cycle]]\nday = 1\ntimes = []\n", "unit.toml:10:1: term.cycle goes with term.cycle_days, which is missing"},
		{"no such day", "cycle_days = 4\n[[term.cycle]]\nday = 5\ntimes = []\n", "unit.toml:12:7: term.cycle: there is no day 5 in a cycle of 4 days"},
		{"a day twice", "cycle_days = 4\ncycle = [{ day = 2, times = [] }, { day = 2, times = [] }]\n", "unit.toml:11:43: term.cycle: day 2 is there twice; give it one list of times"},
		{"a cycle's times over one another", "cycle_days = 4\ncycle = [{ day = 2, times = [\"9:00-9:50\", \"9:00-9:20\"] }]\n", "unit.toml:11:43: term.cycle[0].times: this one begins before the one before it ends"},
		{"it begins behind its end", "cycle_days = 4\ncycle_first = 5\n", "unit.toml:11:15: term.cycle_first is 5, and the cycle has 4 days"},
		{"half a Sunday", "half_days = [2027-04-16, 2027-04-18]\n", "unit.toml:10:26: warning: term.half_days: 2027-04-18 is a Sunday, not a school day of the term"},
		{"half of what", "half_day_until = \"11:30\"\n", "unit.toml:10:18: warning: term.half_day_until goes with term.half_days, and there are none"},
		{"no lesson time", "cycle_days = 2\ncycle = [{ day = 1, times = [] }, { day = 2, times = [] }]\n", "unit.toml:8:13: the term has no lesson time on any of its 15 school days, with term.times, term.cycle and term.half_days as they are"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, problems, err := source.ReadSettings(fstest.MapFS{"unit.toml": {Data: []byte(settings + c.lines)}}, "")
			if err != nil {
				t.Fatal(err)
			}
			var got []string
			for _, p := range problems {
				got = append(got, p.Error())
			}
			if strings.Join(got, "\n") != c.want {
				t.Errorf("got  %s\nwant %s", strings.Join(got, "\n"), c.want)
			}
		})
	}
}
