package class_test

import (
	"strings"
	"testing"

	"noonbook/build/placeholder/entrytest"
	"noonbook/compute/classroom"
)

// taughtUnit is a unit whose lessons say different things of themselves, for counting by
// hand.
var taughtUnit = []classroom.Lesson{
	{Title: "Dial", Start: classroom.AnyTime, Question: "Why does it lean?", Goals: []string{"draw an angle", "say why it leans"}, Evidence: []string{"the face", "a sentence"}, Codes: []string{"S 6.10", "M 1", "S 6.10"}, Absent: "Draw one at home."},
	{Title: "Strip", Start: classroom.AnyTime, Question: "How far?", Goals: []string{"count squares"}, Codes: []string{"S 6.10", "S 6.2"}},
	{Title: "Rest", Start: classroom.AnyTime},
}

// Each lesson has a row; what a lesson does not say is an empty cell and is counted.
func TestUnitMap(t *testing.T) {
	r := withUnit(t, "unit-map", taughtUnit, nil)
	for name, want := range map[string]float64{"lessons": 3, "goals": 3, "no_goals": 1, "no_evidence": 2, "no_absent": 2} {
		if got := entrytest.Fact(t, r, name).Number; got != want {
			t.Errorf("%s is %v, want %v", name, got, want)
		}
	}
	for column, want := range map[string]string{
		"lesson": "1 Dial|2 Strip|3 Rest", "question": "Why does it lean?|How far?|", "goals": "draw an angle; say why it leans|count squares|", "evidence": "the face; a sentence||",
	} {
		if got := strings.Join(entrytest.Texts(t, r, "map", column), "|"); got != want {
			t.Errorf("%s: %q, want %q", column, got, want)
		}
	}
	if got := strings.Join(entrytest.Texts(t, r, "absent", "instead"), "|"); got != "Draw one at home." {
		t.Errorf("for the absent: %q", got)
	}
	if !entrytest.Says(r.Notes, "unit-map.write") {
		t.Errorf("it is not said that cells are left empty: %v", r.Notes)
	}
	if r := withUnit(t, "unit-map", taughtUnit[:1], nil); len(r.Notes) > 0 {
		t.Errorf("nothing is left empty: %v", r.Notes)
	}
	if r := withUnit(t, "unit-map", nil, nil); len(r.Tables) > 0 || !entrytest.Says(r.Notes, "unit-map.no_lessons") {
		t.Errorf("no lessons: %v %v", r.Tables, r.Notes)
	}
}
