package class_test

import (
	"testing"

	"noonbook/build/placeholder/entrytest"
)

// The Moon of a lesson counts as up by day when it passes 10° while the lesson lasts: at
// Tromsø on 13 April 2027 it rises from 8.3° at 9:00 to 13.4° at 10:30 (pyephem 4.1.4, as
// in TestSkyOfALesson), which a lesson that ends at 9:10 does not see. Near the equator it
// rises at 12:19, straight up and a degree in four minutes, so that it is 7° high half an
// hour later and 22° at 13:49. Elsewhere it is below the horizon. On the day of the first lesson the Moon is 43 % lit, far from the Sun.
func TestTheMoonInALesson(t *testing.T) {
	for _, c := range []struct {
		school, times string
		want          float64
	}{
		{"arctic", "9:00-10:30", 1},
		{"arctic", "9:00-9:10", 0},
		{"south", "9:00-10:30", 0},
		{"far east", "9:00-10:30", 0},
		{"line south", "12:19-13:49", 1},
		{"line south", "12:19-12:49", 0},
	} {
		r := reckon(t, c.school, "lesson-sky", "2027-04-20", "term.lesson_times="+c.times)
		if got := entrytest.Fact(t, r, "moon_by_day").Number; got != c.want {
			t.Errorf("%s, %s: %v, want %v", c.school, c.times, got, c.want)
		}
	}
}

// For a ball in sunshine beside the Moon the Sun must be up too. On 13 April 2027 it is up
// in the morning at Tromsø, and at Quito it sets at about 18:20 all year, while the Moon,
// which rises at 12:19, is up until after midnight.
func TestTheMoonInSunshine(t *testing.T) {
	for _, c := range []struct {
		school, times string
		want          float64
	}{
		{"arctic", "9:00-10:30", 1},
		{"arctic", "9:00-9:10", 0},
		{"line south", "12:19-13:49", 1},
		{"line south", "20:00-21:30", 0},
	} {
		r := reckon(t, c.school, "lesson-sky", "2027-04-20", "term.lesson_times="+c.times)
		if got := entrytest.Fact(t, r, "moon_in_sunshine").Number; got != c.want {
			t.Errorf("%s, %s: %v, want %v", c.school, c.times, got, c.want)
		}
		if c.times == "20:00-21:30" && entrytest.Fact(t, r, "moon_by_day").Number != 1 {
			t.Error("the Moon of the evening is not up")
		}
	}
}
