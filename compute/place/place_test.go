package place_test

import (
	"testing"
	"time"
	_ "time/tzdata" // the test must not depend on the machine's zones

	"noonbook/compute/place"
)

func in(t *testing.T, zone string) place.Place {
	t.Helper()
	z, err := time.LoadLocation(zone)
	if err != nil {
		t.Fatal(err)
	}
	return place.Place{Zone: z}
}

func date(t *testing.T, s string) place.Date {
	t.Helper()
	d, err := place.ParseDate(s)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// The lengths of days round clock changes, as the IANA time zone database
// states the changes: Moncton springs forward on 14 March 2027 and falls back
// on 7 November 2027; Beirut changed at midnight on 30 March 2025, so that day
// began at 1:00; Lord Howe shifts by half an hour; Apia had no 30 December 2011.
func TestDay(t *testing.T) {
	for _, c := range []struct {
		name, zone, date, from string
		hours                  float64
	}{
		{"ordinary", "America/Moncton", "2027-04-20", "2027-04-20T00:00:00-03:00", 24},
		{"spring", "America/Moncton", "2027-03-14", "2027-03-14T00:00:00-04:00", 23},
		{"autumn", "America/Moncton", "2027-11-07", "2027-11-07T00:00:00-03:00", 25},
		{"no midnight", "Asia/Beirut", "2025-03-30", "2025-03-30T01:00:00+03:00", 23},
		{"half hour", "Australia/Lord_Howe", "2026-10-04", "2026-10-04T00:00:00+10:30", 23.5},
		{"skipped", "Pacific/Apia", "2011-12-30", "2011-12-31T00:00:00+14:00", 0},
		{"quarter hours", "Asia/Kathmandu", "2026-06-01", "2026-06-01T00:00:00+05:45", 24},
	} {
		t.Run(c.name, func(t *testing.T) {
			from, to := in(t, c.zone).Day(date(t, c.date))
			if got := from.Format(time.RFC3339); got != c.from {
				t.Errorf("begins %s, want %s", got, c.from)
			}
			if got := to.Sub(from).Hours(); got != c.hours {
				t.Errorf("lasts %g h, want %g h", got, c.hours)
			}
		})
	}
}

// The first of the two is the one before the change (IANA time zone database), west
// of Greenwich and east, where time.Date answers the second.
func TestClockInRepeatedHourIsTheFirst(t *testing.T) {
	for _, c := range []struct {
		zone, date string
		hour       int
		want       string
	}{
		{"America/Moncton", "2027-11-07", 1, "2027-11-07T01:30:00-03:00"},
		{"Europe/London", "2027-10-31", 1, "2027-10-31T01:30:00+01:00"},
		{"Europe/Bucharest", "2027-10-31", 3, "2027-10-31T03:30:00+03:00"},
		{"Pacific/Auckland", "2027-04-04", 2, "2027-04-04T02:30:00+13:00"},
	} {
		if got := in(t, c.zone).Clock(date(t, c.date), c.hour, 30).Format(time.RFC3339); got != c.want {
			t.Errorf("%s: got %s, want %s", c.zone, got, c.want)
		}
	}
}

func TestNextChange(t *testing.T) {
	p := in(t, "America/Moncton")
	at, jump, ok := p.NextChange(p.Clock(date(t, "2027-04-20"), 12, 0))
	if got := at.Format(time.RFC3339); !ok || got != "2027-11-07T01:00:00-04:00" || jump != -time.Hour {
		t.Errorf("got %s %v %v", got, jump, ok)
	}
	if _, _, ok := in(t, "Asia/Kathmandu").NextChange(at); ok {
		t.Error("Kathmandu has no clock change")
	}
}

func TestDate(t *testing.T) {
	d := date(t, "2028-02-28")
	if got := d.Add(2).String(); got != "2028-03-01" {
		t.Errorf("two days on: %s", got)
	}
	if got := d.DaysUntil(date(t, "2029-02-28")); got != 366 {
		t.Errorf("to the next year %d days", got)
	}
	if _, err := place.ParseDate("2027-02-30"); err == nil {
		t.Error("30 February was taken")
	}
}
