package dial_test

import (
	"math"
	"testing"
	"time"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/entrytest"
)

// The marking day of the demo's class: its lesson times from 9:10 to 14:05 make
// hours from nine to three, nine groups take turns, and a true dial's marks are
// the ERFA shadows of testdata/reference (stand "true", which are those of
// "turned" on a right plate): at 13:00 and 15:00 by the clock.
func TestDialHours(t *testing.T) {
	e, _ := entry.Find(entries(), "dial-hours")
	values := entrytest.Settings(t, "alder reach").With(form.Values{"class.pupils": 27, "class.group_size": 3, "term.lesson_times": []form.TimeSpan{
		{From: span("9:10"), To: span("10:00")}, {From: span("10:15"), To: span("11:05")}, {From: span("13:15"), To: span("14:05")},
	}})
	r, err := e.Reckon(e.Complete(values, nil, entrytest.Day(t, "2027-04-20")))
	if err != nil {
		t.Fatal(err)
	}
	rows := r.Tables[0].Rows
	if len(rows) != 7 || entrytest.Fact(t, r, "in_lessons").Number != 2 { // 11:00 and 14:00
		t.Errorf("%d rows, %v in lessons", len(rows), entrytest.Fact(t, r, "in_lessons").Number)
	}
	for i, row := range rows {
		if hour := row.Cells[0].Time.Hour(); hour != 9+i || row.Cells[0].Time.Minute() != 0 {
			t.Errorf("row %d is %v", i, row.Cells[0].Time)
		}
		if got := row.Cells[1].Phrase.With[0].Number; got != float64(i+1) {
			t.Errorf("row %d: group %v", i, got)
		}
	}
	// tan X = sin φ · tan h, with the Sun's noon at 13:17:58 (equation of time +65 s on
	// 20 April 2027, astropy's table between its rows; longitude 4.77° × 4 min).
	for i, clock := range []float64{9, 10, 11, 12, 13, 14, 15} {
		h := (clock - (13 + (4.77*4-65.0/60)/60)) * 15 * math.Pi / 180
		want := math.Atan(math.Sin(46.09*math.Pi/180)*math.Tan(h)) * 180 / math.Pi
		entrytest.Near(t, "line", rows[i].Cells[4].Number, want, 0.1)
	}
}

func span(clock string) time.Duration {
	v, _ := form.Field{Key: form.Key[time.Duration]("at")}.ParseText(clock)
	return v.(time.Duration)
}

// Polar night has no hours to mark; on the day of a clock change the page says so.
func TestDialHoursOfOddDays(t *testing.T) {
	r := reckon(t, "arctic", "dial-hours", "2027-12-21")
	if len(r.Tables) != 0 || len(r.Warnings) != 1 || entrytest.Fact(t, r, "rounds").Number != 0 {
		t.Errorf("polar night: %v", r.Warnings)
	}
	if r := reckon(t, "alder reach", "dial-hours", "2027-11-07"); len(r.Warnings) != 1 || r.Warnings[0].Key != "dial-hours.clock_change" {
		t.Errorf("clock change: %v", r.Warnings)
	}
	if r := reckon(t, "alder reach", "dial-hours", "2027-11-08"); len(r.Warnings) != 0 {
		t.Errorf("the day after: %v", r.Warnings)
	}
	if r := reckon(t, "alder reach", "dial-hours", "2027-04-20", "lines=false"); len(r.Tables[0].Columns) != 3 || len(r.Notes) != 0 {
		t.Errorf("without lines: %v", r.Tables[0].Columns)
	}
	if r := reckon(t, "alder reach", "dial-hours", "2027-04-20", "from=8:30", "to=10:59"); len(r.Tables[0].Rows) != 2 {
		t.Errorf("from 8:30 to 10:59: %d rows", len(r.Tables[0].Rows))
	}
}

// On Lord Howe Island the clocks change by half an hour (IANA time zone database): rows
// stay at whole hours on both days of it.
func TestWholeHoursOnLordHoweIsland(t *testing.T) {
	for _, date := range []string{"2027-04-04", "2027-10-03", "2027-10-04"} {
		r := reckon(t, "alder reach", "dial-day", date, "school.latitude=-31.53", "school.longitude=159.08", "school.time_zone=Australia/Lord_Howe")
		clocks := entrytest.Cells(t, r, "hours", "clock")
		if len(clocks) < 10 {
			t.Errorf("%s: %d rows", date, len(clocks))
		}
		for i, clock := range clocks {
			if clock.Time.Minute() != 0 || i > 0 && clock.Time.Hour() != clocks[i-1].Time.Hour()+1 {
				t.Errorf("%s: a row at %s", date, clock.Time.Format("15:04"))
			}
		}
	}
}
