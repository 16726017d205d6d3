package class

import (
	"fmt"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
)

// What the entry takes.
const (
	argTitle          form.Key[string]        = "title"
	argLevels         form.Key[[]string]      = "levels"
	argCriteria       form.Key[[]form.Values] = "criteria"
	argCriteriaName   form.Key[string]        = "name"
	argCriteriaLevels form.Key[[]string]      = "levels"
)

// mostLevels is how many levels a rubric may have: more cannot be told apart in
// marking, common practice, no source.
const mostLevels = 4

func rubric() entry.Entry {
	return entry.Entry{
		Name:    "rubric",
		Summary: "What good work is, criterion by criterion and level by level, with boxes for the pupil and for the teacher.",
		Arguments: form.Form{
			{Key: argTitle, Default: "", Doc: "What is marked."},
			levelsField(),
			{Key: argCriteria, Assumed: "three that fit most work of the unit", Doc: "What is looked at, each with a text for every level.", Fields: form.Form{
				{Key: argCriteriaName, Required: true, Doc: "What is looked at."},
				{Key: argCriteriaLevels, Required: true, Doc: "What it looks like at each level, from the lowest."},
			}},
		},
		Facts: []entry.Fact{
			{Name: "criteria", Doc: "how many things are looked at"},
			{Name: "levels", Doc: "how many levels there are"},
			{Name: "most", Doc: "the most points that can be had: a point a level above the lowest, over all criteria"},
		},
		Sources:  []string{"Criteria and levels: the unit's own; those without any are common practice, no source"},
		Harmless: "Words for marking, to read.",
		Reckon:   reckonRubric,
	}
}

func reckonRubric(v form.Values) (result.Result, error) {
	levels, err := levelsOf(v)
	if err != nil {
		return result.Result{}, err
	}
	rows := [][]say.Value{
		{say.Words("rubric.measures"), say.Words("rubric.measures_not_yet"), say.Words("rubric.measures_with_help"), say.Words("rubric.measures_yes"), say.Words("rubric.measures_more")},
		{say.Words("rubric.explains"), say.Words("rubric.explains_not_yet"), say.Words("rubric.explains_with_help"), say.Words("rubric.explains_yes"), say.Words("rubric.explains_more")},
		{say.Words("rubric.together"), say.Words("rubric.together_not_yet"), say.Words("rubric.together_with_help"), say.Words("rubric.together_yes"), say.Words("rubric.together_more")},
	}
	if !argCriteria.In(v) && len(levels) != mostLevels {
		return result.Result{}, fmt.Errorf("levels has %d names; give criteria with as many texts, since those that stand in have %d", len(levels), mostLevels)
	}
	if argCriteria.In(v) {
		rows = nil
		for _, c := range argCriteria.Of(v) {
			rows = append(rows, append([]say.Value{say.Text(argCriteriaName.Of(c))}, texts(argCriteriaLevels.Of(c))...))
		}
	}
	table := result.Table{Name: "criteria", Title: say.Line("rubric.name"), Columns: []result.Column{{Name: "criterion"}}}
	if title := argTitle.Of(v); title != "" {
		table.Title = say.Line("rubric.title", say.Text(title))
	}
	for i := range levels {
		table.Columns = append(table.Columns, result.Column{Name: fmt.Sprint("points", i)})
	}
	table.Columns = append(table.Columns, result.Column{Name: "mine"}, result.Column{Name: "teacher"})
	blank := say.Text("")
	table.Rows = []result.Row{{Marked: true, Cells: append(append([]say.Value{blank}, levels...), blank, blank)}}
	for _, row := range rows {
		if len(row)-1 != len(levels) {
			return result.Result{}, fmt.Errorf("criteria: %q has %d texts for %d levels", row[0].Plain, len(row)-1, len(levels))
		}
		table.Rows = append(table.Rows, result.Row{Cells: append(row, blank, blank)})
	}
	return result.Result{
		Facts: []result.Fact{
			{Name: "criteria", Value: say.Count(len(rows))}, {Name: "levels", Value: say.Count(len(levels))},
			{Name: "most", Value: say.Count(len(rows) * (len(levels) - 1))},
		},
		Tables: []result.Table{table},
		Notes:  []say.Phrase{say.Line("rubric.note", say.Count(len(rows)*(len(levels)-1)))},
	}, nil
}

// levelsField is the argument of what marks by levels.
func levelsField() form.Field {
	return form.Field{Key: argLevels, Assumed: `"not yet", "with help", "yes" and "more than that"`, Doc: "Names of the levels, from the lowest, two to four."}
}

// levelsOf are the names of the levels, those that stand in where none are given.
func levelsOf(v form.Values) ([]say.Value, error) {
	levels := []say.Value{say.Words("rubric.not_yet"), say.Words("rubric.with_help"), say.Words("rubric.yes"), say.Words("rubric.more")}
	if argLevels.In(v) {
		levels = texts(argLevels.Of(v))
	}
	if n := len(levels); n < 2 || n > mostLevels {
		return nil, fmt.Errorf("levels has %d names, want two to %d", n, mostLevels)
	}
	return levels, nil
}

func texts(list []string) []say.Value {
	values := make([]say.Value, len(list))
	for i, s := range list {
		values[i] = say.Text(s)
	}
	return values
}
