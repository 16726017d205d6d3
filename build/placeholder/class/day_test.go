package class_test

import (
	"testing"

	"noonbook/build/placeholder/entrytest"
)

// Weekdays: 20 April 2027 is a Tuesday, 1 January 2028 a Saturday, 31 December 2026 a
// Thursday (any calendar). Days are counted by hand.
func TestDay(t *testing.T) {
	for _, c := range []struct {
		date                                 string
		given                                []string
		written, month, weekday, away, clock string
	}{
		{"2027-04-20", nil, "Tuesday 20 April", "April", "Tuesday", "0", "no time is given"},
		{"2027-04-12", []string{"date=2027-04-20", "time=15:00"}, "Tuesday 20 April", "April", "Tuesday", "8", "15:00"},
		{"2027-04-12", []string{"date=2028-01-01", "time=9:05"}, "Saturday 1 January 2028", "January", "Saturday", "264", "9:05"},
		{"2027-04-12", []string{"date=2026-12-31", "time=0:00"}, "Thursday 31 December 2026", "December", "Thursday", "-102", "0:00"},
		{"2027-04-12", []string{"date=2027-04-20", "counted_from=2027-04-27"}, "Tuesday 20 April", "April", "Tuesday", "-7", "no time is given"},
		{"2027-03-14", []string{"time=2:30"}, "Sunday 14 March", "March", "Sunday", "0", "2:30"}, // the hour that is skipped
	} {
		r := reckon(t, "alder reach", "day", c.date, c.given...)
		for name, want := range map[string]string{"date": c.written, "month": c.month, "weekday": c.weekday, "days_away": c.away, "time": c.clock} {
			if got := entrytest.Written(t, entrytest.Fact(t, r, name)); got != want {
				t.Errorf("%s %v: %s is %q, want %q", c.date, c.given, name, got, want)
			}
		}
	}
}
