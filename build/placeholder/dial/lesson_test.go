package dial_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"noonbook/build/placeholder/entrytest"
)

// Which hours a class draws. At the demo's school the Sun's noon of 20 April 2027 is at
// 13:17:58 by the clock (longitude 4.77° × 4 min and daylight saving, less 65 s of equation
// of time, astropy's table between its rows). A school day from nine to three is then 7:42 to
// 13:42 by the Sun, and minute 41 of a lesson from 9:10, at 9:51, is 8:33.
func TestDialLesson(t *testing.T) {
	nairobi := []string{"school.latitude=-1.29", "school.longitude=36.82", "school.time_zone=Africa/Nairobi"}
	for _, c := range []struct {
		name           string
		given          []string
		minute         int
		school, lesson [2]float64
		hour, shows    float64
	}{
		{"in the morning", nil, 41, [2]float64{7, 14}, [2]float64{7, 10}, 9.85, 8.55},
		{"just before nine by the Sun", nil, 67, [2]float64{7, 14}, [2]float64{7, 10}, 10 + 17.0/60, 8.98},
		{"just past it", nil, 75, [2]float64{7, 14}, [2]float64{8, 11}, 10 + 25.0/60, 9.12},
		{"with no line before those of school time", nil, 0, [2]float64{7, 14}, [2]float64{7, 9}, 9 + 10.0/60, 7.87},
		// Noon at 12:31:42 (longitude 8.18° × 4 min, less 61 s), so 9:51 is 9:19 by the Sun.
		{"on a polar dial", nairobi, 41, [2]float64{8, 15}, [2]float64{8, 11}, 9.85, 9.32},
		// A lesson at dusk: the last line of a polar dial is that of five o'clock.
		{"at the end of the face", append([]string{"term.lesson_times=17:00-17:50"}, nairobi...), 41, [2]float64{12, 17}, [2]float64{16, 17}, 17 + 41.0/60, 17.15},
	} {
		t.Run(c.name, func(t *testing.T) {
			given := append([]string{"lesson=1", fmt.Sprintf("minute=%d", c.minute), "term.first_day=2027-04-20"}, c.given...)
			if c.school[0] != 12 {
				given = append(given, "term.lesson_times=9:10-10:00,13:15-14:05")
			}
			r := reckon(t, "alder reach", "dial-lesson", "2027-04-20", given...)
			for name, want := range map[string][2]float64{"school_hours": c.school, "lesson_hours": c.lesson} {
				with := entrytest.Fact(t, r, name).Phrase.With
				if len(with) != 2 || with[0].Number != want[0] || with[1].Number != want[1] {
					t.Errorf("%s are %v, not %v", name, with, want)
				}
			}
			at := entrytest.Fact(t, r, "reading").Time
			entrytest.Near(t, "reading", float64(at.Hour())+float64(at.Minute())/60, c.hour, 1e-9)
			entrytest.Near(t, "shows", entrytest.Fact(t, r, "shows").Number, c.shows, 0.02)
		})
	}
	if r := reckon(t, "alder reach", "dial-lesson", "2027-04-20", "lesson=0"); entrytest.Fact(t, r, "lesson_hours").Phrase.Key != "dial-lesson.no_lesson" {
		t.Error("a page that is no lesson has hours")
	}
}

// Marks round an upright stick at the time of a lesson, in the morning, when those of three
// hours after noon say nothing of it. As in TestStickDrifts the azimuth of the Sun by the
// formula tan A = sin H/(cos H sin φ − tan δ cos φ) (Meeus, 2nd ed., equation 13.5) at the
// hour that the stick shows on the marking day is that of the reading on the later day.
// Declinations of 20 April and 15 June 2027, +11.5° and +23.3°, from memory.
func TestStickInALesson(t *testing.T) {
	given := []string{"lesson=1", "minute=20", "term.first_day=2027-06-15", "term.last_day=2027-06-30", "term.lesson_times=9:10-10:00", "marked=2027-04-20"}
	r := reckon(t, "alder reach", "dial-lesson", "2027-06-15", given...)
	rad := math.Pi / 180
	azimuth := func(hour, declination float64) float64 {
		return math.Atan2(math.Sin(hour*rad), math.Cos(hour*rad)*math.Sin(46.09*rad)-math.Tan(declination*rad)*math.Cos(46.09*rad)) / rad
	}
	drift := reckon(t, "alder reach", "dial-drift", "2027-06-15", "marked=2027-04-20")
	stick := entrytest.Fact(t, r, "stick").Number
	shown := (stick - entrytest.Fact(t, drift, "fast").Number) / 240
	hour := (entrytest.Fact(t, r, "shows").Number - 12) * 15
	entrytest.Near(t, "azimuth", azimuth(hour+shown, 11.5), azimuth(hour, 23.3), 0.3) // the time on the dial is to the minute
	if three := entrytest.Fact(t, drift, "stick").Number; !(stick < 0 && three > 0) {
		t.Errorf("in the morning the stick is off by %v s, in the afternoon by %v s", stick, three)
	}
}

// What a class works out, the clock's time of a line, a table for the face alone does not
// show: neither in its columns nor in its steps.
func TestDialTableForTheFaceAlone(t *testing.T) {
	for _, c := range []struct {
		where string
		given []string
		place string
	}{
		{"alder reach", nil, "line_angle"},
		{"alder reach", []string{"school.latitude=1"}, "distance"},
	} {
		whole := reckon(t, c.where, "dial-table", "2027-04-20", c.given...)
		face := reckon(t, c.where, "dial-table", "2027-04-20", append(slices.Clone(c.given), "show=face")...)
		table := face.Tables[0]
		if len(table.Columns) != 2 || table.Columns[0].Name != "sun_time" || table.Columns[1].Name != c.place {
			t.Errorf("columns %v", table.Columns)
		}
		want, got := entrytest.Column(t, whole, c.place), entrytest.Column(t, face, c.place)
		if !slices.Equal(want, got) || len(table.Rows) != len(whole.Tables[0].Rows) {
			t.Errorf("the lines are at %v, not %v", got, want)
		}
		for _, step := range face.Working {
			if step.Key == "dial-table.working_clock" {
				t.Error("the steps tell how to get the clock's time")
			}
		}
		if len(face.Working) != len(whole.Working)-1 {
			t.Errorf("%d steps of %d", len(face.Working), len(whole.Working))
		}
	}
}

// A single piece has nothing to be glued back to back with.
func TestSingleGnomonIsNotGluedToAnother(t *testing.T) {
	for latitude, pair := range map[string]string{"46": "dial-gnomon.note", "1": "dial-gnomon.polar_note"} {
		one := map[string]string{"dial-gnomon.note": "dial-gnomon.single_note", "dial-gnomon.polar_note": "dial-gnomon.polar_single_note"}[pair]
		for pieces, want := range map[string]string{"pair": pair, "single": one} {
			r := reckon(t, "alder reach", "dial-gnomon", "2027-04-20", "school.latitude="+latitude, "pieces="+pieces)
			if r.Notes[0].Key != want {
				t.Errorf("at %s° a %s has the note %s", latitude, pieces, r.Notes[0].Key)
			}
		}
	}
}
