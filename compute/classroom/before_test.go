package classroom

import (
	"testing"
	"time"

	"noonbook/compute/place"
)

// Days before a day, counted on a wall calendar of 2027: 12 April is a Monday, and
// Good Friday was 26 March, Easter Monday the 29th.
func TestSchoolDaysBefore(t *testing.T) {
	easter := []place.Date{on(time.March, 26), on(time.March, 29)}
	for _, c := range []struct {
		name string
		off  []place.Date
		from place.Date
		days int
		want place.Date
	}{
		{"within a week", nil, on(time.April, 15), 2, on(time.April, 13)},
		{"over a weekend", nil, on(time.April, 13), 3, on(time.April, 8)},
		{"two weeks", nil, on(time.April, 16), 10, on(time.April, 2)},
		{"over Easter", easter, on(time.April, 2), 5, on(time.March, 24)},
		{"the day itself", nil, on(time.April, 12), 0, on(time.April, 12)},
		{"a Saturday itself", nil, on(time.April, 17), 0, on(time.April, 16)},
		{"before a Saturday", nil, on(time.April, 17), 1, on(time.April, 16)},
		{"Good Friday itself", easter, on(time.March, 26), 0, on(time.March, 25)},
	} {
		term := Term{First: on(time.April, 12), Last: on(time.May, 14), Weekdays: fiveDays, DaysOff: c.off}
		if got := term.Before(c.from, c.days); got != c.want {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
	if got := (Term{}).Before(on(time.April, 12), 3); got != on(time.April, 12) {
		t.Errorf("without a school day: %v", got)
	}
}
