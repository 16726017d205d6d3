package placeholder_test

import (
	"fmt"
	"strings"
	"testing"

	"noonbook/build/school"
)

// Bad rows are told with line and column, for every kind of record alike.
func TestLogsAreChecked(t *testing.T) {
	for _, c := range []struct{ key, text, want string }{
		{"moon_log", "date,time,lit_side\n2027-04-13,16:00,lft\n", `2:18 lit_side "lft" is unknown, want "top", "upper_right", "right", "lower_right", "bottom", "lower_left", "left" or "upper_left"; did you mean "left"?`},
		{"moon_log", "date,time\n2027-04-13,\n", `2:12 time is missing: a time of day such as "9:10"`},
		{"moon_log", "date,time,lit_percent\n2027-04-13,16:00,40,5\n", `2:21 the row has 4 cells under 3 columns; write a number with a decimal comma in quotes, or with a point`},
		{"strip_log", "body;squares;past_cm\nerath;9;3,5\n", `2:1 body "erath" is unknown, want "mercury", "venus", "earth", "mars", "ceres", "jupiter", "saturn", "uranus", "neptune" or "pluto"; did you mean "earth"?`},
		{"strip_log", "body,squares\nearth,\n", `2:7 squares is missing: a number from 0 to 100000`},
		{"strip_log", "body,squares\n" + strings.Repeat("mars,15\n", 100000), `502:1 more than 500 rows; records.strip_log takes no more`},
	} {
		field, _ := school.Settings().Field("records." + c.key)
		_, faults := field.ReadRecords([]byte(c.text))
		if len(faults) != 1 {
			t.Errorf("%.40q: %d faults: %v", c.text, len(faults), faults)
			continue
		}
		got := strings.TrimSpace(strings.Join([]string{fmt.Sprintf("%d:%d", faults[0].Line, faults[0].Column), faults[0].Text}, " "))
		if got != c.want {
			t.Errorf("%.40q:\n got %s\nwant %s", c.text, got, c.want)
		}
	}
	field, _ := school.Settings().Field("records.strip_log")
	records, faults := field.ReadRecords([]byte("group;body;squares;past_cm\nA;mars;15;3,5\n"))
	if len(faults) > 0 || school.StripLogPastCM.Of(records.Rows[0]) != 3.5 {
		t.Errorf("a decimal comma is read as %v %v", records.Rows, faults)
	}
}
