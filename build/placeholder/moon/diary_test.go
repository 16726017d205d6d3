package moon_test

import (
	"reflect"
	"slices"
	"testing"
	"time"

	"noonbook/build/drawing"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/say"
)

// Where the Moon and the Sun stand at the times of the diary: pyephem 4.1.4 at
// Alder Reach, 1010 hPa and 10 °C. It prints heights to 0.1° here and bearings
// to a degree; half a step of each is the limit, and the air another 0.02°.
func TestMoonDiaryAtAlderReach(t *testing.T) {
	r := reckon(t, "alder reach", "moon-diary", "2027-04-12", "term.lesson_times=9:10-10:00,10:15-11:05,13:15-14:05")
	looked := map[string]int{}
	place, at, height, lit := entrytest.Cells(t, r, "days", "place"), entrytest.Cells(t, r, "days", "at"), entrytest.Cells(t, r, "days", "altitude"), entrytest.Cells(t, r, "days", "lit")
	for i, v := range at {
		if v.Kind == say.TimeOfDay {
			looked[v.Time.Format(time.RFC3339)] = i
		}
	}
	want := []struct {
		at               string
		height, lit, sun float64
		from             string
	}{
		{"2027-04-12T14:00:00-03:00", 34.4, 36.0, 52, "moon-diary.lesson"},
		{"2027-04-15T20:00:00-03:00", 53.0, 72.2, 1, "moon-diary.day"},
		{"2027-04-18T20:00:00-03:00", 18.7, 95.3, 1, "moon-diary.day"},
		{"2027-04-19T21:00:00-03:00", 15.5, 98.8, -9, "moon-diary.night"},
		{"2027-04-26T07:00:00-03:00", 15.0, 72.3, 7, "moon-diary.day"},
		{"2027-04-28T09:15:00-03:00", 18.1, 53.3, 31, "moon-diary.lesson"},
		{"2027-05-02T10:15:00-03:00", 43.4, 17.0, 41, "moon-diary.day"},
		{"2027-05-09T16:30:00-03:00", 70.3, 14.7, 41, "moon-diary.day"},
	}
	for _, w := range want {
		i, ok := looked[w.at]
		if !ok {
			t.Errorf("nobody looks at %s", w.at)
			continue
		}
		entrytest.Near(t, "height at "+w.at, height[i].Number, w.height, 0.07)
		entrytest.Near(t, "lit part at "+w.at, lit[i].Number, w.lit, 0.3) // seen from the school, a little more or less than from pyephem's centre of the Earth
		if got := place[i].Phrase.Key; got != w.from || (w.sun > 0) == (w.from == "moon-diary.night") {
			t.Errorf("at %s the class looks from %s, with the Sun %v° high", w.at, got, w.sun)
		}
	}
	// New Moon is on 6 May: at 11:00 on the 4th it stands 24.4° from the Sun, at 20:45 on
	// the 7th 19.995° (astronomy-engine 2.1.19, from the school): too near by day, and
	// too near in twilight.
	for _, i := range []int{22, 23, 24, 25} {
		if got := place[i].Phrase.Key; got != "moon-diary.near" {
			t.Errorf("day %d of the diary is %s", i+1, got)
		}
	}
	sum := 0.0
	for _, name := range []string{"in_lessons", "by_day", "after_sunset"} {
		sum += entrytest.Fact(t, r, name).Number
	}
	entrytest.Near(t, "chances", entrytest.Fact(t, r, "chances").Number, sum, 0)
	entrytest.Near(t, "chances", entrytest.Fact(t, r, "chances").Number, float64(len(looked)), 0)
}

// Wherever a school is, nobody looks at night hours, in lessons on a day off, or
// with the Moon near the Sun; and the table keeps back what pupils are to find.
func TestMoonDiaryEverywhere(t *testing.T) {
	for school := range entrytest.Schools {
		r := reckon(t, school, "moon-diary", "2027-06-14", "weeks=5", "term.lesson_times=9:00-12:00", "shape=false")
		if n := len(r.Tables[0].Columns); n != 5 {
			t.Errorf("%s: %d columns without the shape", school, n)
		}
		rows := entrytest.Cells(t, r, "days", "at")
		entrytest.Near(t, school+": days", float64(len(rows)), 35, 0)
		for i, v := range rows {
			if v.Kind != say.TimeOfDay {
				continue
			}
			clock := time.Duration(v.Time.Hour())*time.Hour + time.Duration(v.Time.Minute())*time.Minute
			if clock < 7*time.Hour || clock > 21*time.Hour {
				t.Errorf("%s: day %d looks at %s", school, i+1, v.Time)
			}
			if lesson := entrytest.Cells(t, r, "days", "place")[i].Phrase.Key == "moon-diary.lesson"; lesson != (i%7 < 5 && clock >= 9*time.Hour && clock <= 12*time.Hour) {
				t.Errorf("%s: day %d at %s is in a lesson: %v", school, i+1, v.Time, lesson)
			}
		}
		for _, paper := range []string{"Letter", "A4"} {
			sheets := reckon(t, school, "moon-diary", "2027-06-14", "school.paper="+paper).Sheets
			if len(sheets) != 1 || len(circles(sheets[0].Drawing)) != 28 {
				t.Errorf("%s on %s: %d sheets", school, paper, len(sheets))
			}
		}
	}
}

func circles(d drawing.Drawing) (list []drawing.Shape) {
	for _, s := range d.Shapes {
		if s.Role == "rim" {
			list = append(list, s)
		}
	}
	return list
}

// Heights that pupils are to measure are not in their table, and no note speaks of them as
// if they were; direction and time stay, so that nobody has to search.
func TestDiaryKeepsHeightsBack(t *testing.T) {
	r := reckon(t, "alder reach", "moon-diary", "2027-04-12", "shape=false", "height=false")
	var columns []string
	for _, c := range r.Tables[0].Columns {
		columns = append(columns, c.Name)
	}
	if want := []string{"date", "place", "at", "direction"}; !slices.Equal(columns, want) {
		t.Errorf("columns %v, want %v", columns, want)
	}
	for i, row := range r.Tables[0].Rows {
		if len(row.Cells) != len(columns) {
			t.Errorf("row %d has %d cells", i, len(row.Cells))
		}
	}
	if !entrytest.Says(r.Notes, "moon-diary.note_measure") || entrytest.Says(r.Notes, "moon-diary.note") {
		t.Error("the note speaks of heights:", entrytest.Lines(t, r.Notes))
	}
}

// The key has a row for each day on which the diary sends somebody to look, with the same
// moment and Moon (its own are held against pyephem above), and no sheet of its own.
func TestKeyToTheDiary(t *testing.T) {
	for school := range entrytest.Schools {
		diary, key := reckon(t, school, "moon-diary", "2027-04-12"), reckon(t, school, "moon-diary-key", "2027-04-12")
		if len(key.Sheets) > 0 {
			t.Errorf("%s: the key has a sheet", school)
		}
		entrytest.Near(t, school+": drawings", entrytest.Fact(t, key, "moons").Number, entrytest.Fact(t, diary, "chances").Number, 0)
		if len(key.Tables) == 0 {
			continue
		}
		for _, column := range []string{"at", "direction", "altitude", "lit", "lit_side"} {
			var want []say.Value
			for i, v := range entrytest.Cells(t, diary, "days", column) {
				if entrytest.Cells(t, diary, "days", "at")[i].Kind == say.TimeOfDay {
					want = append(want, v)
				}
			}
			if got := entrytest.Cells(t, key, "days", column); !reflect.DeepEqual(got, want) {
				t.Errorf("%s, %s: %v, want %v", school, column, got, want)
			}
		}
	}
}
