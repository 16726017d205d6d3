package register

import (
	"fmt"
	"net/url"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"noonbook/build/form"
	"noonbook/build/problem"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/build/typeset"
)

// spareTables is how many empty rows the page has for each list of tables.
const spareTables = 2

// A grid is the cells of a list of tables as a person types them, by row and column.
type grid [][]string

// filled are the rows that are not empty, and where they are in the grid.
func (g grid) filled() (rows grid, at []int) {
	for i, row := range g {
		if strings.Join(row, "") != "" {
			rows, at = append(rows, row), append(at, i)
		}
	}
	return rows, at
}

func (g grid) same(other grid) bool {
	a, _ := g.filled()
	b, _ := other.filled()
	return slices.EqualFunc(a, b, slices.Equal)
}

// text tells what a grid holds, on one line.
func (g grid) text() string {
	rows, _ := g.filled()
	texts := make([]string, len(rows))
	for i, row := range rows {
		texts[i] = strings.Join(slices.DeleteFunc(slices.Clone(row), func(s string) bool { return s == "" }), ", ")
	}
	return strings.Join(texts, "; ")
}

// tableCell names a cell as the places of a text do: stock.lenses[0].focal_mm.
func tableCell(list form.Field, row int, column form.Field) string {
	return fmt.Sprintf("%s[%d].%s", list.Name(), row, column.Name())
}

var cellPattern = regexp.MustCompile(`^([a-z0-9_.]+)\[(\d+)\](?:\.([a-z0-9_]+).*)?$`)

// cellOf reads the name of a cell, or of a row, whose column is then empty. ok is false
// for what is in no list of tables.
func cellOf(name string) (list form.Field, row int, column form.Field, ok bool) {
	m := cellPattern.FindStringSubmatch(name)
	if m == nil {
		return list, 0, column, false
	}
	list, ok = school.Settings().Field(m[1])
	row, err := strconv.Atoi(m[2])
	column, _ = list.Fields.Field(m[3])
	return list, row, column, ok && err == nil && list.Kind() == form.Tables
}

// grid is what the file has of a list of tables.
func (u unit) grid(f form.Field) (g grid) {
	rows, _ := u.values[f.Name()].([]form.Values)
	for i, values := range rows {
		row := make([]string, len(f.Fields))
		for c, column := range f.Fields {
			name := tableCell(f, i, column)
			text, ok := column.Typed(values[column.Name()])
			if !ok || u.faulty(name) {
				text = u.literal(name)
			}
			row[c] = normal(text)
		}
		g = append(g, row)
	}
	return g
}

// faulty reports whether a cell of the file cannot be read, so that its row has the
// default there.
func (u unit) faulty(name string) bool {
	return slices.ContainsFunc(u.faults, func(fault form.Fault) bool {
		at := form.Place{Line: fault.Line, Column: fault.Column}
		if u.places[name] == at {
			return true
		}
		for i := 0; ; i++ {
			item, ok := u.places[fmt.Sprintf("%s[%d]", name, i)]
			if !ok || item == at {
				return ok
			}
		}
	})
}

// typedGrid is what was typed into a list of tables. A row that was not sent stays as it
// is.
func (u unit) typedGrid(f form.Field, typed url.Values) (g grid) {
	g = u.grid(f)
	for i := 0; ; i++ {
		row, sent := make([]string, len(f.Fields)), false
		for c, column := range f.Fields {
			texts, ok := typed[tableCell(f, i, column)]
			sent = sent || ok
			row[c] = normal(strings.Join(texts, " "))
		}
		switch {
		case sent && i < len(g):
			g[i] = row
		case sent:
			g = append(g, row)
		case i >= len(g):
			return g
		}
	}
}

// tables reads the rows of a list where they are other than those of the file.
// Complaints go to the draft.
func (u unit) tables(f form.Field, d draft) (rows []form.Values, changed bool) {
	g := d.grids[f.Name()]
	if g.same(u.grid(f)) {
		return nil, false
	}
	filled, at := g.filled()
	rows, changed = []form.Values{}, true
	for i, texts := range filled {
		row := form.Values{}
		for c, column := range f.Fields {
			v, complaint := takeCell(column, texts[c])
			if complaint != "" {
				d.wrong[tableCell(f, at[i], column)] = sentence(complaint, u.words)
				changed = false
			} else if v != nil {
				row[column.Name()] = v
			}
		}
		rows = append(rows, row)
	}
	return rows, changed
}

// takeCell reads a cell of a row that is not empty, nil for no value. A list that must
// be there may have no items.
func takeCell(column form.Field, text string) (v any, complaint string) {
	switch {
	case text != "":
		return column.Take(text)
	case !column.Required:
		return nil, ""
	case column.Kind() == form.Spans:
		return []form.TimeSpan{}, ""
	}
	return nil, "is missing: " + column.Allowed()
}

// cellAt finds the cell that a problem is about, by its place in the file or by what it
// begins with, and the rest of what it says.
func (u unit) cellAt(p problem.Problem) (name, text string, ok bool) {
	first, rest, _ := strings.Cut(p.Text, " ")
	names := []string{strings.TrimRight(first, ":,")}
	for name, at := range u.places {
		if at == (form.Place{Line: p.Line, Column: p.Column}) {
			names = append(names, name)
		}
	}
	for _, name := range names {
		list, row, column, ok := cellOf(name)
		if !ok || row >= len(u.grid(list)) { // as of a list that has too many
			continue
		}
		if named, known := list.Fields.Field(first); known {
			column = named
		}
		if column.Key == nil {
			column = list.Fields[0]
		}
		if text = p.Text; slices.Contains([]string{list.Name(), column.Name(), name}, strings.TrimRight(first, ":,")) {
			text = rest
		}
		return tableCell(list, row, column), text, true
	}
	return "", "", false
}

// typedCell is a cell of the file with the changes as it is on the page, where rows may
// be empty.
func (d draft) typedCell(name string, changes form.Values) string {
	list, row, column, ok := cellOf(name)
	if !ok || changes[list.Name()] == nil {
		return name
	}
	if _, at := d.grids[list.Name()].filled(); row < len(at) {
		row = at[row]
	}
	return tableCell(list, row, column)
}

// table makes the rows of a list of tables, and some that are empty.
func (u unit) table(f form.Field, d draft) (t typeset.Table) {
	for _, column := range f.Fields {
		t.Columns = append(t.Columns, typeset.Column{ID: id(f.Name() + "." + column.Name()), Name: column.Name(), Label: columnLabel(column, u.words), Help: columnHelp(column, u.words)})
	}
	g := slices.Clone(d.grids[f.Name()])
	for len(g) > 0 && strings.Join(g[len(g)-1], "") == "" {
		g = g[:len(g)-1]
	}
	there := len(u.grid(f))
	for range spareTables {
		g = append(g, make([]string, len(f.Fields)))
	}
	for i, texts := range g {
		row := typeset.Row{ID: id(fmt.Sprintf("%s[%d]", f.Name(), i)), Label: u.words.Say("form.new_row")}
		if i < there {
			row.Label = u.words.Say("form.row", say.Count(i+1))
		}
		for c, column := range f.Fields {
			name := tableCell(f, i, column)
			row.Cells = append(row.Cells, cell(column, id(name), name, row.ID+" "+t.Columns[c].ID, texts[c], d.wrong[name], u.words))
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// mistakes are those of the cells of a table.
func mistakes(label string, t typeset.Table) (list []typeset.Mistake) {
	for _, row := range t.Rows {
		for c, one := range row.Cells {
			if one.Wrong != "" {
				list = append(list, typeset.Mistake{Anchor: one.ID, Label: label + ", " + row.Label + ", " + t.Columns[c].Label, Text: one.Wrong})
			}
		}
	}
	return list
}
