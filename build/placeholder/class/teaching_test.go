package class_test

import (
	"slices"
	"strings"
	"testing"
	"time"

	"noonbook/build/drawing"
	"noonbook/build/placeholder/class"
	"noonbook/build/placeholder/entry"
	"noonbook/build/placeholder/entrytest"
	"noonbook/build/say"
	"noonbook/build/typeset"
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

// The grid has a column for each goal of the unit or of one lesson and a row for each
// pupil, on as many sheets as that takes: A4 leaves 190 mm by 263 mm for a drawing.
func TestMarkingGrid(t *testing.T) {
	many := classroom.Lesson{Title: "Many", Start: classroom.AnyTime}
	for range 13 {
		many.Goals = append(many.Goals, "say in a great many words why the hours of a dial are not all the same and what would have to be otherwise for them to be so")
	}
	for _, c := range []struct {
		name                string
		unit                []classroom.Lesson
		lesson, pupils      int
		goals, rows, sheets int
	}{
		{"the whole unit", taughtUnit, 0, 24, 3, 24, 1},
		{"one lesson", taughtUnit, 1, 24, 2, 24, 1},
		{"a lesson without goals", taughtUnit, 3, 24, 0, 24, 1},
		{"an empty class", taughtUnit, 0, 0, 3, 30, 1},
		{"no lessons", nil, 0, 0, 0, 30, 1},
		{"a large class", taughtUnit, 0, 31, 3, 31, 2},
		{"many goals", []classroom.Lesson{many}, 0, 30, 13, 30, 2}, // 142 mm hold 12 columns of 11 mm
		{"many of both", []classroom.Lesson{many}, 0, 31, 13, 31, 4},
	} {
		r := withUnit(t, "marking-grid", c.unit, map[string]any{"class.pupils": c.pupils, "lesson": c.lesson})
		for name, want := range map[string]int{"goals": c.goals, "rows": c.rows, "sheets": c.sheets} {
			if got := entrytest.Fact(t, r, name).Number; got != float64(want) {
				t.Errorf("%s: %s is %v, want %d", c.name, name, got, want)
			}
		}
		rows, columns := 0, map[string]bool{}
		for _, s := range r.Sheets {
			if !s.Paper.Fits(s.Drawing) {
				t.Errorf("%s: a sheet of %v by %v mm", c.name, s.Drawing.Width, s.Drawing.Height)
			}
			for _, shape := range s.Drawing.Shapes {
				for _, p := range shape.Points {
					if p.X < 0 || p.X > s.Drawing.Width || p.Y < 0 || p.Y > s.Drawing.Height {
						t.Errorf("%s: %s is at %v", c.name, shape.Role, p)
					}
				}
				if shape.Role == "small" && shape.Anchor == drawing.End {
					rows = max(rows, int(shape.Text.Number))
				}
				if shape.Role == "strong" && shape.Anchor == drawing.Middle && shape.Text.Plain != "" {
					columns[shape.Text.Plain] = true
				}
			}
			for _, l := range entrytest.English(t).Place(&s.Drawing, typeset.OnPaper) {
				low, high := l.Corners()[0].Y, l.Corners()[1].Y // of letters that run upward
				if l.Turn != 0 && (high < 13 || low > 13+66 || len(l.Lines) > 4) {
					t.Errorf("%s: %q is longer than the head of a column", c.name, l.Lines)
				}
			}
		}
		if rows != c.rows || len(columns) != c.goals {
			t.Errorf("%s: %d rows and %d columns, want %d and %d", c.name, rows, len(columns), c.rows, c.goals)
		}
		if told := entrytest.Says(r.Notes, "marking-grid.no_goals"); told != (c.goals == 0) || !entrytest.Says(r.Notes, "marking-grid.names") {
			t.Errorf("%s: %v", c.name, r.Notes)
		}
	}
}

// Each goal has a sentence for each level: the usual ones, or those that are given.
func TestSentencesForReports(t *testing.T) {
	r := withUnit(t, "marking-grid", taughtUnit, map[string]any{"lesson": 2})
	for column, want := range map[string]string{
		"goal": "|2.1", "points0": "Not yet|______ is still learning to count squares.", "points1": "With help|With help, ______ can count squares.",
		"points2": "Yes|______ can count squares.", "points3": "More than that|______ can count squares, and helps others with it.",
	} {
		if got := strings.Join(entrytest.Texts(t, r, "sentences", column), "|"); got != want {
			t.Errorf("%s: %q, want %q", column, got, want)
		}
	}
	r = withUnit(t, "marking-grid", taughtUnit, map[string]any{"lesson": 2, "levels": []string{"begins", "has it"}})
	if got := strings.Join(entrytest.Texts(t, r, "sentences", "points1"), "|"); got != "has it|______: count squares (has it)." || len(r.Tables[0].Columns) != 3 {
		t.Errorf("levels of its own: %q in %d columns", got, len(r.Tables[0].Columns))
	}
	for given, want := range map[string]string{"lesson=9": "lesson 9 is not in the unit, which has 0", `levels=["one"]`: "levels has 1 names"} {
		if got := entrytest.Complaint(t, entries(), "marking-grid", "2027-04-12", given); !strings.Contains(got, want) {
			t.Errorf("%s: %q", given, got)
		}
	}
}

// Codes are counted once a lesson and sorted by their numbers; wanted ones that no lesson
// has are there too, and lessons without any are listed.
func TestCodeList(t *testing.T) {
	r := withUnit(t, "code-list", taughtUnit, map[string]any{"wanted": []string{"S 6.10", "S 7"}})
	for name, want := range map[string]float64{"codes": 3, "missing": 1, "once": 2, "lessons": 2, "without": 1} {
		if got := entrytest.Fact(t, r, name).Number; got != want {
			t.Errorf("%s is %v, want %v", name, got, want)
		}
	}
	for column, want := range map[string]string{"code": "M 1|S 6.2|S 6.10|S 7", "times": "1|1|2|0", "lessons": "1 Dial|2 Strip|1 Dial and 2 Strip|no lesson yet"} {
		if got := strings.Join(entrytest.Texts(t, r, "codes", column), "|"); got != want {
			t.Errorf("%s: %q, want %q", column, got, want)
		}
	}
	if got := strings.Join(entrytest.Texts(t, r, "without", "lesson"), "|"); got != "3 Rest" || !entrytest.Says(r.Notes, "code-list.write") {
		t.Errorf("without a code: %q, %v", got, r.Notes)
	}
	if r := withUnit(t, "code-list", taughtUnit[2:], nil); entrytest.Fact(t, r, "codes").Number != 0 || len(r.Tables) != 1 {
		t.Errorf("no codes: %v", r.Tables)
	}
	if r := withUnit(t, "code-list", nil, nil); len(r.Tables) != 0 || !entrytest.Says(r.Notes, "code-list.no_lessons") {
		t.Errorf("no lessons: %v", r.Notes)
	}
	unit := []classroom.Lesson{{Title: "L", Start: classroom.AnyTime, Codes: []string{"b", "É2", "a10", " a2 ", "a", "a02b", "10", "9", "", "a2b"}}}
	if got := strings.Join(entrytest.Texts(t, withUnit(t, "code-list", unit, nil), "codes", "code"), "|"); got != "9|10|a|a2|a02b|a2b|a10|b|É2" {
		t.Errorf("in order: %s", got)
	}
}

// The slip asks for a yes or a no to what the lessons of the note do, in each case on a
// slip of its own, three of them on a sheet.
func TestSlips(t *testing.T) {
	with := func(kinds ...classroom.NeedKind) []classroom.Lesson {
		l := classroom.Lesson{Title: "L", Start: classroom.AnyTime}
		for _, kind := range kinds {
			l.Needs = append(l.Needs, classroom.Need{Kind: kind, By: 22 * time.Hour})
		}
		return []classroom.Lesson{l}
	}
	const out, night, photo = "may come along to lessons outside", "may take part after dark, with an adult", "may be in photographs of the class at work"
	for _, c := range []struct {
		name  string
		unit  []classroom.Lesson
		given map[string]any
		want  []string
	}{
		{"indoors", with(), nil, []string{photo}},
		{"no photographs", with(), map[string]any{"photographs": false}, nil},
		{"in the Sun", with(classroom.SunUp), nil, []string{out, photo}},
		{"on the field", with(classroom.Dry), nil, []string{out, photo}},
		{"under the Moon", with(classroom.MoonUp), nil, []string{out, photo}},
		{"in the dark", with(classroom.Dark), nil, []string{night, photo}},
		{"at home in the evening", with(classroom.DarkBy), nil, []string{night, photo}},
		{"a diary of the Moon", with(), map[string]any{"evenings": true}, []string{night, photo}},
		{"no lessons", nil, nil, []string{photo}},
	} {
		r := withUnit(t, "family-note", c.unit, c.given)
		if len(r.Sheets) != 1 || !r.Sheets[0].Paper.Fits(r.Sheets[0].Drawing) {
			t.Fatalf("%s: %d sheets", c.name, len(r.Sheets))
		}
		d := r.Sheets[0].Drawing
		said, boxes := map[string]int{}, 0
		for _, s := range d.Shapes {
			for _, p := range s.Points {
				if p.X < 0 || p.X > d.Width || p.Y < 0 || p.Y > d.Height {
					t.Errorf("%s: %s is at %v", c.name, s.Role, p)
				}
			}
			if s.Role == "tick-box" {
				boxes++
			} else if s.Anchor != "" {
				said[entrytest.Written(t, s.Text)]++
			}
		}
		for _, line := range []string{out, night, photo} {
			want := 0
			if slices.Contains(c.want, line) {
				want = 3
			}
			if said[line] != want {
				t.Errorf("%s: %q %d times, want %d", c.name, line, said[line], want)
			}
		}
		if boxes != 6*len(c.want) || said["yes"] != 3*len(c.want) || said["no"] != 3*len(c.want) {
			t.Errorf("%s: %d boxes, %d yes, %d no", c.name, boxes, said["yes"], said["no"])
		}
		if told := entrytest.Says(r.Notes, "family-note.photographs"); told != slices.Contains(c.want, photo) {
			t.Errorf("%s: photographs are spoken of: %v", c.name, told)
		}
		evening := slices.Contains(c.want, night)
		if entrytest.Says(r.Notes, "family-note.evenings") != evening || entrytest.Says(r.Cautions, "caution.family-evening") != evening {
			t.Errorf("%s: evenings: %v %v", c.name, r.Notes, r.Cautions)
		}
		if told := entrytest.Says(r.Notes, "family-note.dark_by"); told != (c.name == "at home in the evening") {
			t.Errorf("%s: a time by which it is dark: %v", c.name, told)
		}
		back := entrytest.Fact(t, r, "slip_by")
		if c.unit == nil {
			if back.Kind != say.Nothing || said["Please send back by ______"] != 3 {
				t.Errorf("%s: the slip is due %v", c.name, said)
			}
			continue
		}
		// Three school days before Monday 12 April 2027, the first of the term, by a wall
		// calendar.
		if got := entrytest.Written(t, back); got != "7 April 2027" || said["Please send back by 7 April 2027"] != 3 {
			t.Errorf("%s: the slip is due %s: %v", c.name, got, said)
		}
	}
}

// The school's rules are the first row, then each danger once with its lessons, in the
// order of the cautions, and last what lessons say in words of their own.
func TestRiskNotes(t *testing.T) {
	unit := []classroom.Lesson{
		{Title: "A", Start: classroom.AnyTime, Care: []classroom.Care{{Words: "Mind the step."}, {Names: []string{"lamp"}}, {Names: []string{"sun"}}, {Words: "Ours."}}},
		{Title: "A", Start: classroom.AnyTime, Care: []classroom.Care{{Names: []string{"sun"}}, {Names: []string{"clear-zone"}}, {Names: []string{"family-sun"}}, {Names: []string{"lamp", "dark-room"}, Words: "Two steps back."}}},
		{Title: "C", Start: classroom.AnyTime, Care: []classroom.Care{{Names: []string{"family-evening"}}}},
	}
	r := withUnit(t, "risk-notes", unit, map[string]any{"lesson": 0})
	for name, want := range map[string]float64{"hazards": 6, "lessons": 2, "own": 3} {
		if got := entrytest.Fact(t, r, name).Number; got != want {
			t.Errorf("%s is %v, want %v", name, got, want)
		}
	}
	for column, want := range map[string]string{
		"hazard":  "Everything|Looking at the Sun|A hot lamp, glare, cables|A hot lamp, glare, cables and Moving in the dark, sticks near eyes, flicker|Being hit by a rocket|Named in the lesson|Named in the lesson",
		"lessons": "all|1 A and 2 A|1 A|2 A|2 A|1 A|1 A",
		"who":     "||||||",
	} {
		if got := strings.Join(entrytest.Texts(t, r, "hazards", column), "|"); got != want {
			t.Errorf("%s: %q, want %q", column, got, want)
		}
	}
	done := entrytest.Texts(t, r, "hazards", "done")
	for i, want := range []string{"The school’s own rules, the rules of the place and local codes come first", "Never look at the Sun", "A lamp without a shade", "Two steps back.", "is within ______ of the launcher", "Mind the step.", "Ours."} {
		if !strings.Contains(done[i], want) {
			t.Errorf("row %d: %q lacks %q", i, done[i], want)
		}
	}
	if got := strings.Join(entrytest.Texts(t, r, "signed", "role"), "|"); got != "Teacher|Second adult|For the school" {
		t.Errorf("to be signed by %q", got)
	}
	if !entrytest.Says(r.Notes, "risk-notes.gathered") || entrytest.Says(r.Notes, "risk-notes.none") {
		t.Errorf("%v", r.Notes)
	}
	if r := withUnit(t, "risk-notes", unit, map[string]any{"lesson": 2}); entrytest.Fact(t, r, "hazards").Number != 3 {
		t.Errorf("one lesson: %v", entrytest.Texts(t, r, "hazards", "hazard"))
	}
	for name, none := range map[string][]classroom.Lesson{"a unit without dangers": unit[2:], "no lessons": nil} {
		if r := withUnit(t, "risk-notes", none, nil); len(r.Tables[0].Rows) != 1 || !entrytest.Says(r.Notes, "risk-notes.none") {
			t.Errorf("%s: %v", name, r.Tables[0].Rows)
		}
	}
}

// Every caution that is not for families has a danger with a name.
func TestEveryDangerHasAName(t *testing.T) {
	for _, code := range typeset.Languages() {
		words, err := typeset.Language(code, false)
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range entry.Cautions() {
			if words.Has(class.HazardKey(name)) == strings.HasPrefix(name, "family-") {
				t.Errorf("%s in %s", name, code)
			}
		}
	}
}
