package typeset

import (
	"strings"

	"noonbook/build/result"
)

// heads are the names of a table's columns.
func (w *Words) heads(name string, t result.Table) []string {
	heads := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		heads[i] = w.Say(name + "." + t.Name + "." + c.Name)
	}
	return heads
}

// cells are the texts of a table's rows.
func (w *Words) cells(t result.Table) [][]string {
	rows := make([][]string, len(t.Rows))
	for n, row := range t.Rows {
		rows[n] = make([]string, len(row.Cells))
		for i, cell := range row.Cells {
			rows[n][i] = w.Cell(cell, t.Columns[i].Unit)
		}
	}
	return rows
}

// columnUnits returns for each column the unit that its head names, "" for none: that of
// its bare numbers, or the one in which all its cells end. From these it is taken away.
func (w *Words) columnUnits(t result.Table, worded []bool, texts [][]string) []string {
	units := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		switch {
		case t.Bare(i):
			units[i] = w.Unit(c.Unit)
		case i > 0 && !worded[i]:
			units[i] = sharedUnit(texts, i)
		}
		if t.Bare(i) || units[i] == "" {
			continue
		}
		for _, row := range texts {
			row[i], _, _ = strings.Cut(row[i], hard)
		}
	}
	return units
}

// sharedUnit is the unit in which every cell of a column ends, each with one number before
// it; "" where they are of several, or of one alone.
func sharedUnit(texts [][]string, column int) string {
	shared := ""
	for _, row := range texts {
		number, unit, ok := strings.Cut(row[column], hard)
		if !ok || !units[unit] || strings.Trim(number, "+−0123456789.,"+narrow) != "" || shared != "" && unit != shared {
			return ""
		}
		shared = unit
	}
	if len(texts) < 2 {
		return ""
	}
	return shared
}
