package class

import (
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/classroom"
)

func unitMap() entry.Entry {
	return entry.Entry{
		Name:     "unit-map",
		Summary:  "The unit at a glance: each lesson with its question, what pupils learn, what shows it, and what to do instead. For staff alone.",
		ForStaff: true,
		Settings: school.CalendarSettings(),
		Lessons:  true,
		Facts: []entry.Fact{
			{Name: "lessons", Doc: "number of lessons"},
			{Name: "goals", Doc: "how many things pupils learn to do"},
			{Name: "no_goals", Doc: "how many lessons do not say what pupils learn to do"},
			{Name: "no_evidence", Doc: "how many do not say what shows it"},
			{Name: "no_absent", Doc: "how many do not say what a pupil does instead who was away"},
		},
		Sources:  []string{"Questions, goals, evidence: the lessons' own"},
		Harmless: "A plan of the lessons, to read; each lesson tells its own care.",
		Reckon:   reckonMap,
	}
}

func reckonMap(v form.Values) (result.Result, error) {
	lessons := entry.Lessons(v)
	goals, without := 0, map[string]int{}
	lesson := result.Table{
		Name: "map", Title: say.Line("unit-map.title"),
		Columns: []result.Column{{Name: "lesson"}, {Name: "question"}, {Name: "goals"}, {Name: "evidence"}},
	}
	away := result.Table{
		Name: "absent", Title: say.Line("unit-map.absent_title"),
		Columns: []result.Column{{Name: "lesson"}, {Name: "instead"}},
	}
	for i, l := range lessons {
		goals += len(l.Goals)
		lesson.Rows = append(lesson.Rows, result.Row{Cells: []say.Value{numbered(i+1, l), say.Text(l.Question), inRow(l.Goals), inRow(l.Evidence)}})
		if l.Absent != "" {
			away.Rows = append(away.Rows, result.Row{Cells: []say.Value{numbered(i+1, l), say.Text(l.Absent)}})
		}
		for name, empty := range map[string]bool{"goals": len(l.Goals) == 0, "evidence": len(l.Evidence) == 0, "absent": l.Absent == ""} {
			if empty {
				without[name]++
			}
		}
	}
	r := result.Result{Facts: []result.Fact{
		{Name: "lessons", Value: say.Count(len(lessons))},
		{Name: "goals", Value: say.Count(goals)},
		{Name: "no_goals", Value: say.Count(without["goals"])},
		{Name: "no_evidence", Value: say.Count(without["evidence"])},
		{Name: "no_absent", Value: say.Count(without["absent"])},
	}}
	for _, table := range []result.Table{lesson, away} {
		if len(table.Rows) > 0 {
			r.Tables = append(r.Tables, table)
		}
	}
	switch {
	case len(lessons) == 0:
		r.Notes = []say.Phrase{say.Line("unit-map.no_lessons")}
	case len(without) > 0:
		r.Notes = []say.Phrase{say.Line("unit-map.write")}
	}
	return r, nil
}

// inRow are texts in one cell, which is empty, to be written in, where there are none.
func inRow(list []string) say.Value {
	if len(list) == 0 {
		return say.Text("")
	}
	row := say.Text(list[0])
	for _, one := range list[1:] {
		row = say.Words("unit-map.also", row, say.Text(one))
	}
	return row
}

// taught are the lessons that a paper is about: the one of that number, or all for 0.
func taught(lessons []classroom.Lesson, number int) ([]classroom.Lesson, error) {
	switch {
	case number > len(lessons):
		return nil, entry.LessonRange(number, len(lessons))
	case number > 0:
		return lessons[number-1 : number], nil
	}
	return lessons, nil
}
