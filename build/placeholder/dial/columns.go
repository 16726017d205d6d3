package dial

import (
	"slices"

	"noonbook/build/form"
	"noonbook/build/result"
	"noonbook/build/say"
)

// showsAll is what a table of hour lines can say of each.
var showsAll = []string{"face", "sun", "bearing", "clock"}

// columnsOf are the columns that each of showsAll brings.
var columnsOf = map[string][]string{
	"face":    {"line_angle", "distance"},
	"sun":     {"hour_angle"},
	"bearing": {"bearing"},
	"clock":   {"clock_time"},
}

// shown keeps of a table of hour lines the columns that the author asks for, and always
// the Sun time. A class that works out the clock's time must not be shown it.
func shown(v form.Values, t result.Table) result.Table {
	keep := []string{"sun_time"}
	for _, name := range argShow.Of(v) {
		keep = append(keep, columnsOf[name]...)
	}
	kept := result.Table{Name: t.Name, Title: t.Title}
	for i, column := range t.Columns {
		if slices.Contains(keep, column.Name) {
			kept.Columns = append(kept.Columns, t.Columns[i])
		}
	}
	for _, row := range t.Rows {
		cells := []say.Value{}
		for i, column := range t.Columns {
			if slices.Contains(keep, column.Name) {
				cells = append(cells, row.Cells[i])
			}
		}
		kept.Rows = append(kept.Rows, result.Row{Marked: row.Marked, Cells: cells})
	}
	return kept
}

// withClockRule adds the rule of the last column where the table has it.
func withClockRule(v form.Values, r result.Result) result.Result {
	if slices.Contains(argShow.Of(v), "clock") {
		r.Working = append(r.Working, say.Line("dial-table.working_clock"))
	}
	return r
}
